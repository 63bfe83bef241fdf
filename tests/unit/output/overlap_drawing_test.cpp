// What two parts both claim: on the sheet, and of what figures.
#include "output/projection.h"
#include "output/svg.h"
#include "support/check_mm.h"
#include "unit/output/demos.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>

using namespace baywright;
using namespace baywright::output;
using baywright::test::check_mm;

TEST_CASE("a seating that overlaps says how large what would have to go is") {
  int overlapping = 0;
  int clear = 0;
  for (const Demo& demo : demos("thin-desktop")) {
    const std::string drawn = to_svg(demo.sheet());
    const auto closest = std::find_if(demo.seating.findings.begin(), demo.seating.findings.end(),
                                      [](const fit::Finding& finding) { return finding.kind == fit::Kind::clearance; });
    REQUIRE(closest != demo.seating.findings.end());
    const bool says = drawn.find("mm at nominal") != std::string::npos;
    CHECK(closest->shared.has_value() == (closest->gap->nominal < 0.0));
    CHECK(says == closest->shared.has_value());
    if (!closest->shared) {
      ++clear;
      continue;
    }
    ++overlapping;
    // The heatsink is 70 by 22 mm, flat below a tray that is wider: as deep as the gap is short, over all of it.
    const geometry::Vec3 size = closest->shared->high - closest->shared->low;
    check_mm(size, {70.0, 22.0, -closest->gap->nominal}, 1e-6);
    CHECK(drawn.find("overlap 0.30 x 22.00 x 70.00 mm") != std::string::npos);
  }
  CHECK(overlapping == 1);
  CHECK(clear == 2);
}

TEST_CASE("a surface without an inside is drawn as a line where it is cut") {
  // A box of 20 mm without its lid.
  const std::vector<geometry::Vec3> corners = {{0, 0, 0},  {20, 0, 0},  {20, 20, 0},  {0, 20, 0},
                                               {0, 0, 20}, {20, 0, 20}, {20, 20, 20}, {0, 20, 20}};
  const std::vector<geometry::Mesh::Triangle> triangles = {{0, 2, 1}, {0, 3, 2}, {0, 1, 5}, {0, 5, 4}, {1, 2, 6},
                                                           {1, 6, 5}, {2, 3, 7}, {2, 7, 6}, {3, 0, 4}, {3, 4, 7}};
  const auto solid = geometry::Solid::mesh(std::get<geometry::Mesh>(geometry::Mesh::make(corners, triangles)));
  fit::Scene scene;
  fit::Element element{"shell", "shell", {solid, {}}, geometry::bounds({solid, {}}), geometry::Vec3{0.0}, {}};
  scene.elements.push_back(element);
  const std::vector<Seen> seen = cut_scene(scene, {{0, 10, 0}, {1, 0, 0}, {0, 0, 1}}, {{-5, -5}, {25, 25}}, 1.0, true);
  double length = 0.0;
  for (const Seen& each : seen) {
    CHECK(each.cut == each.outlines.empty());  // what is behind is seen as an area
    if (each.cut)
      for (const auto& edge : each.edges) length += glm::distance(edge.front(), edge.back());
  }
  CHECK(seen.size() == 2);
  check_mm(length, 60.0, 1e-9);  // two walls and the floor
}
