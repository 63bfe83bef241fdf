// What a dragged hole comes to rest at, by hand from the figures of the demo panel: 165 x 260, places at x 50 and y 45,
// 130, 215; the drive's rows as SFF-8201 has them, as others quote it: 14.00 and 90.60, 30.86 to each side.
#include "viewer/snapping.h"

#include "support/check_mm.h"
#include "viewer/document.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <string>

using namespace baywright;
using test::check_mm;
using viewer::HoleMark;
using viewer::Vec2;

namespace {

struct Open {
  viewer::Document document;
  std::shared_ptr<const viewer::Shown> shown;
  viewer::HolePlan plan;
};

Open open(const std::string& place) {
  auto opened = viewer::Document::open(BAYWRIGHT_SOURCE "/models/builds/panel.build.toml");
  REQUIRE(std::holds_alternative<viewer::Document>(opened));
  auto document = std::get<viewer::Document>(std::move(opened));
  fit::Options options;
  options.quick = true;
  auto shown = viewer::show(*document.build(), {"archive disk", place}, options);
  auto plan = viewer::hole_plan(*shown);
  REQUIRE(plan);
  return {std::move(document), std::move(shown), std::move(*plan)};
}

const HoleMark& hole(const viewer::HolePlan& plan, int number) {
  const auto found =
      std::find_if(plan.marks.begin(), plan.marks.end(), [&](const HoleMark& each) { return each.number == number; });
  REQUIRE(found != plan.marks.end());
  return *found;
}

}  // namespace

TEST_CASE("with nothing near, the grid: whole millimetres, or tenths") {
  viewer::SnapTargets none;
  none.size = {100.0, 100.0};
  const auto coarse = viewer::snapped({12.44, 7.51}, none, 1.0, 2.0);
  check_mm(coarse.at.x, 12.0, 1e-12);
  check_mm(coarse.at.y, 8.0, 1e-12);
  CHECK(coarse.words == "on whole mm");
  CHECK(!coarse.x);
  const auto fine = viewer::snapped({12.44, 7.51}, none, 0.1, 0.1);
  check_mm(fine.at.x, 12.4, 1e-12);
  check_mm(fine.at.y, 7.5, 1e-12);
}

TEST_CASE("a point wins over a line, a line over the grid, and neither beyond reach") {
  viewer::SnapTargets targets;
  targets.size = {100.0, 100.0};
  targets.points = {{{30.25, 40.75}, "row 1"}};
  targets.xs = {{30.6, "in line with hole 2"}};
  CHECK(viewer::snapped({30.7, 41.0}, targets, 1.0, 1.0).words == "on row 1");
  const auto lined = viewer::snapped({30.7, 45.2}, targets, 1.0, 1.0);
  check_mm(lined.at.x, 30.6, 1e-12);
  check_mm(lined.at.y, 45.0, 1e-12);
  CHECK(lined.words == "x in line with hole 2; y on whole mm");
  CHECK(viewer::snapped({32.2, 45.2}, targets, 1.0, 1.0).words == "on whole mm");
}

TEST_CASE("as far from one edge as from the next") {
  viewer::SnapTargets targets;
  targets.size = {100.0, 60.0};
  targets.corners = true;
  targets.ys = {{7.25, "in line with hole 2"}};
  const auto low = viewer::snapped({7.6, 7.0}, targets, 1.0, 0.5);
  check_mm(low.at.x, 7.25, 1e-12);
  CHECK(low.words == "x as far from the left edge as from the lower; y in line with hole 2");
  check_mm(viewer::snapped({92.5, 7.0}, targets, 1.0, 0.5).at.x, 92.75, 1e-12);  // the right edge: 100 - 7.25
}

TEST_CASE("a hole that was pulled off its row finds it again, and the row of a hole that is there is taken") {
  const Open it = open("hand drilled");
  HoleMark first = hole(it.plan, 1);  // 14.0 along and 30.86 to the left of the drive, toward +x: x 64, y 75.86
  check_mm(first.at.x, 64.0, 1e-9);
  check_mm(first.at.y, 75.86, 1e-9);
  const auto targets = viewer::snap_targets(it.plan, first, *it.shown);
  const auto rests = viewer::snapped(first.at + Vec2(0.8, -0.7), targets, 1.0, 1.5);
  check_mm(rests.at.x, 64.0, 1e-9);
  check_mm(rests.at.y, 75.855, 1e-9);  // half of 69.85 less 4.07 from the drive's edge
  CHECK(rests.words == "on row 1 of archive disk");
  const Vec2 second = hole(it.plan, 2).at;
  CHECK(std::none_of(targets.points.begin(), targets.points.end(),
                     [&](const viewer::SnapPoint& each) { return glm::distance(each.at, second) < 0.1; }));
}

TEST_CASE("a place comes to rest with its holes in the middle, and in line with another place's") {
  const Open it = open("hand drilled");
  const auto place = std::find_if(it.plan.marks.begin(), it.plan.marks.end(), [](const HoleMark& each) {
    return each.kind == HoleMark::Kind::place && each.chosen;
  });
  REQUIRE(place != it.plan.marks.end());
  const auto targets = viewer::snap_targets(it.plan, *place, *it.shown);
  // Holes 14 and 90.6 behind it: in the middle of 165 when it stands at 82.5 - 52.3.
  check_mm(viewer::snapped({30.4, 60.3}, targets, 1.0, 0.5).at.x, 30.2, 1e-9);
  check_mm(viewer::snapped({50.3, 60.3}, targets, 1.0, 0.5).at.x, 50.0, 1e-9);
  CHECK(viewer::snapped({50.3, 60.3}, targets, 1.0, 0.5).words.find("in line with hole") != std::string::npos);
}
