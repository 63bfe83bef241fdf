// Triangles of flat areas against what makes any triangulation right: Euler's count, each side of the outline once,
// each other side twice, and the outlines' own area by the shoelace formula.
#include "geometry/triangulation.h"

#include "geometry/outline.h"
#include "support/random_turn.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <limits>
#include <map>
#include <numbers>

using namespace baywright::geometry;
using baywright::test::Random;
using baywright::test::uniform;

namespace {

using Side = std::pair<std::pair<double, double>, std::pair<double, double>>;

Side side(const Vec2& a, const Vec2& b) {
  return {{a.x, a.y}, {b.x, b.y}};
}

double area(const std::vector<Vec2>& corners) {
  double sum = 0.0;
  for (std::size_t i = 0; i + 2 < corners.size(); i += 3)
    sum += signed_area({corners[i], corners[i + 1], corners[i + 2]});
  return sum;
}

Outline circle(const Vec2& centre, double radius, int sides, double turn = 0.0) {
  Outline out;
  for (int i = 0; i < sides; ++i) {
    const double angle = turn + 2.0 * std::numbers::pi * i / sides;
    out.push_back(centre + radius * Vec2{std::cos(angle), std::sin(angle)});
  }
  return out;
}

Outline reversed(Outline ring) {
  std::reverse(ring.begin(), ring.end());
  return ring;
}

/// Outlines that do not meet: `outline` counter-clockwise, holes too. Lengths of the size `scale`.
void check_whole(const Outline& outline, const std::vector<Outline>& holes, double scale = 1.0) {
  const std::vector<Vec2> cut = triangles(outline, holes);
  std::map<Side, int> sides;
  for (std::size_t i = 0; i < cut.size(); ++i) ++sides[side(cut[i], cut[i % 3 == 2 ? i - 2 : i + 1])];
  std::map<Side, int> border;
  std::size_t corners = 0;
  double want = 0.0;
  const auto add = [&](const Outline& ring) {
    corners += ring.size();
    want += signed_area(ring);
    for (std::size_t i = 0; i < ring.size(); ++i) ++border[side(ring[i], ring[(i + 1) % ring.size()])];
  };
  add(outline);
  for (const Outline& hole : holes) add(reversed(hole));
  // Triangles of a polygon with n corners in all and h holes: n + 2 h - 2.
  REQUIRE(cut.size() / 3 == corners + 2 * holes.size() - 2);
  bool once = true;
  for (const auto& [each, count] : sides) {
    const bool outer = border.contains(each);
    const bool back = sides.contains({each.second, each.first});
    once = once && count == 1 && outer != back;
  }
  for (const auto& [each, count] : border) once = once && count == 1 && sides.contains(each);
  CHECK(once);
  for (std::size_t i = 0; i < cut.size(); i += 3)
    if (!(signed_area({cut[i], cut[i + 1], cut[i + 2]}) >= -1e-15 * scale * scale)) FAIL("a triangle is turned over");
  CHECK(std::abs(area(cut) - want) <= 1e-9 * want);
}

/// A star about the origin: simple whatever its radii, between 20 and 60.
Outline star(Random& random, int corners, double scale) {
  Outline out;
  for (int k = 0; k < corners; ++k) {
    const double angle = 2 * std::numbers::pi * k / corners;
    out.push_back(scale * uniform(random, 20, 60) * Vec2{std::cos(angle), std::sin(angle)});
  }
  return out;
}

/// Corners between those given, on the lines or within rounding of them.
Outline with_more_corners(const Outline& given, Random& random) {
  Outline out;
  for (std::size_t i = 0; i < given.size(); ++i) {
    const Vec2& to = given[(i + 1) % given.size()];
    out.push_back(given[i]);
    const int more = static_cast<int>(random() % 4);
    for (int k = 1; k <= more; ++k) out.push_back(given[i] + (to - given[i]) * (static_cast<double>(k) / (more + 1)));
  }
  return out;
}

}  // namespace

TEST_CASE("triangles use each side of random outlines with holes once, and cover their area") {
  Random random(82);
  int many = 0;
  int flat = 0;
  int near = 0;
  for (int round = 0; round < 600; ++round) {
    CAPTURE(round);
    const double scale = std::pow(10.0, static_cast<double>(round % 7) - 4.0);  // 1e-4 to 100: 0.006 to 6000 mm
    Outline outline = star(random, 3 + static_cast<int>(random() % 60), scale);
    if (outline.size() < 8)
      outline = {{-60 * scale, -60 * scale}, {0, -60 * scale}, {60 * scale, -60 * scale}, {0, 60 * scale}};
    if (round % 3 == 0) outline = with_more_corners(outline, random), ++flat;
    std::vector<Outline> holes;
    const int wanted = static_cast<int>(random() % 6);
    for (int k = 0; k < wanted;
         ++k) {  // within the 20 that are sure (of the triangle 13), in a row that almost touches
      const double gap = round % 2 == 0 ? 1e-6 : 0.3;
      near += round % 2 == 0 && k > 0 ? 1 : 0;
      holes.push_back(
          circle(scale * Vec2{(k - 2.5) * 4.0, 0.5 * (round % 3)}, scale * (2.0 - 0.5 * gap), 4 + 4 * (k % 3)));
      if (round % 5 == 0) holes.back() = with_more_corners(holes.back(), random);
    }
    many += wanted > 3 ? 1 : 0;
    check_whole(outline, holes, scale);
  }
  CHECK(many > 150);
  CHECK(flat == 200);
  CHECK(near > 400);
}

TEST_CASE("triangles of a perforated sheet keep every hole") {
  for (const double pitch : {1e-3, 5.0, 400.0}) {
    std::vector<Outline> holes;
    for (int i = 0; i < 24; ++i)  // in rows: corners of all share heights, and bridges would run along them
      for (int k = 0; k < 15; ++k) holes.push_back(circle(pitch * Vec2{i + 1.0, k + 1.0}, 0.45 * pitch, 12));
    check_whole({{0, 0}, {25 * pitch, 0}, {25 * pitch, 16 * pitch}, {0, 16 * pitch}}, holes, pitch);
  }
}

TEST_CASE("triangles of a comb, a spiral and slivers") {
  Outline comb;
  for (int i = 0; i < 200; ++i)
    comb.insert(comb.end(), {{i * 1.0, 0.0}, {i + 0.4, 0.0}, {i + 0.4, 50.0}, {i + 0.9, 50.0}});
  comb.insert(comb.end(), {{200.0, 0.0}, {200.0, 60.0}, {0.0, 60.0}});
  check_whole(comb, {});
  Outline spiral;
  for (int i = 0; i < 400; ++i) spiral.push_back((10.0 + i * 0.1) * Vec2{std::cos(i * 0.1), std::sin(i * 0.1)});
  for (int i = 399; i >= 0; --i) spiral.push_back((12.0 + i * 0.1) * Vec2{std::cos(i * 0.1), std::sin(i * 0.1)});
  check_whole(reversed(spiral), {}, 50.0);
  check_whole({{0, 0}, {1e5, 0}, {1e5, 1e-6}, {0, 1e-6}}, {}, 1e5);
  check_whole({{0, 0}, {100, 0}, {100, 10}, {0, 10}},
              {{{1, 5}, {99, 5}, {99, 5 + 1e-6}}, {{1, 5.1}, {99, 5.1}, {50, 5.2}}});
}

TEST_CASE("outlines that are no areas give no triangles, and none hangs") {
  const double none = std::numeric_limits<double>::quiet_NaN();
  CHECK(triangles({}, {}).empty());
  CHECK(triangles({{1, 1}, {2, 2}}, {}).empty());
  CHECK(triangles({{0, 0}, {1, 1}, {2, 2}, {3, 3}}, {}).empty());
  CHECK(triangles({{1, 1}, {1, 1}, {1, 1}}, {}).empty());
  CHECK(area(triangles({{0, 0}, {none, 5}, {10, 0}, {10, 10}, {0, 10}, {0, 0}}, {{}, {{1, 1}}})) == 100.0);
  // Either sense, a hole that is elsewhere, ones that touch the outline at a corner and along a side.
  CHECK(area(triangles({{0, 10}, {10, 10}, {10, 0}, {0, 0}}, {})) == 100.0);
  CHECK(area(triangles({{0, 0}, {10, 0}, {10, 10}, {0, 10}}, {circle({50, 5}, 2, 12)})) == 100.0);
  CHECK(std::abs(area(triangles({{0, 0}, {10, 0}, {10, 10}, {0, 10}}, {{{4, 4}, {4, 6}, {10, 5}}})) - 94.0) < 1e-12);
  CHECK(area(triangles({{0, 0}, {10, 0}, {10, 10}, {0, 10}}, {{{8, 4}, {10, 4}, {10, 6}, {8, 6}}})) == 96.0);
}

TEST_CASE("where outlines cross, triangles cover about the area") {
  // A bow tie, which has none.
  CHECK(triangles({{0, 0}, {10, 10}, {10, 0}, {0, 10}}, {}).size() % 3 == 0);
  // A hole of many corners half out of a disc: 100 pi less the lens of both, 2 r² acos(d/2r) - d/2 sqrt(4 r² - d²).
  const double lens = 200.0 * std::acos(0.5) - 5.0 * std::sqrt(300.0);
  const std::vector<Vec2> cut = triangles(circle({0, 0}, 10, 400), {circle({10, 0}, 10, 400, 0.003)});
  CHECK(std::abs(area(cut) - (100.0 * std::numbers::pi - lens)) < 0.02 * 100.0 * std::numbers::pi);
  Random random(83);
  for (int i = 0; i < 300; ++i) {
    Outline noise;
    const bool huge = i % 3 == 1;
    for (int k = 0; k < 60; ++k) {
      noise.push_back({uniform(random, 0, 8), uniform(random, 0, 8)});
      if (i % 3 == 0) noise.back() = {std::floor(noise.back().x), std::floor(noise.back().y)};
      if (huge) noise.back() *= std::pow(10.0, uniform(random, -308, 308));
    }
    const std::vector<Vec2> got = triangles(noise, {noise, circle({4, 4}, 3, 12)});
    CHECK(got.size() % 3 == 0);
    for (const Vec2& p : got) CHECK((std::isfinite(p.x) && std::isfinite(p.y)));
  }
}
