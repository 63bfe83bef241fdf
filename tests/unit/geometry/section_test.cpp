#include "geometry/section.h"

#include "cuts.h"
#include "geometry/outline.h"
#include "support/check_mm.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <numbers>
#include <random>

using namespace baywright::geometry;
using namespace baywright::geometry::cuts;
using baywright::test::check_mm;

namespace {

const double root2 = std::sqrt(2.0);
const double root3 = std::sqrt(3.0);

Solid box(double x, double y, double z) {
  return std::get<Solid>(Solid::box({x, y, z}));
}
Solid prism(Outline outline, std::vector<Outline> holes, double height) {
  return std::get<Solid>(Solid::prism(std::move(outline), std::move(holes), height));
}
Solid cylinder(double diameter, double bore, double height) {
  return std::get<Solid>(Solid::cylinder(diameter, bore, height));
}

bool in_region(const Region& region, const Vec2& p) {
  return contains(region.outline, p) &&
         std::none_of(region.holes.begin(), region.holes.end(), [&](const Outline& hole) { return contains(hole, p); });
}

Vec3 random_direction(std::mt19937_64& random) {
  std::normal_distribution<double> normal;
  return glm::normalize(Vec3{normal(random), normal(random), normal(random)});
}

Pose random_pose(std::mt19937_64& random) {
  std::uniform_real_distribution<double> angle(0, 360);
  return {rotation(random_direction(random), angle(random)), 100.0 * random_direction(random)};
}

const Outline ell{{0, 0}, {6, 0}, {6, 2}, {2, 2}, {2, 6}, {0, 6}};
const Outline you{{0, 0}, {9, 0}, {9, 6}, {7, 6}, {7, 2}, {2, 2}, {2, 6}, {0, 6}};

}  // namespace

TEST_CASE("a cube of 20 mm, square and at a slant") {
  const Solid cube = box(20, 20, 20);
  check_mm(area_cut(cube, {5, 5, 10}, {0, 0, 1}), 400, 1e-9);
  check_mm(area_cut(cube, {5, 5, 10}, {-1, 0, 0}), 400, 1e-9);
  check_mm(area_cut(cube, {0, 0, 0}, {1, 0, -1}), 400 * root2, 1e-9);    // through two opposite edges
  check_mm(area_cut(cube, {10, 10, 10}, {1, 1, 1}), 300 * root3, 1e-9);  // a regular hexagon of side 10 sqrt(2)
  check_mm(area_cut(cube, {20, 0, 0}, {1, 1, 1}), 200 * root3, 1e-9);    // a regular triangle of side 20 sqrt(2)
  CHECK(section({cube, {}}, facing_plane({10, 10, 10}, {1, 1, 1})).front().outline.size() == 6);
}

TEST_CASE("a face in the plane counts when the solid is behind the plane, in any pose") {
  std::mt19937_64 random(20240511);
  for (int round = 0; round < 50; ++round) {
    const Pose pose = round == 0 ? Pose{} : random_pose(random);
    const auto cut = [&pose](const Solid& solid, const Vec3& point, const Vec3& normal) {
      return section({solid, pose}, facing_plane(pose.point(point), pose.direction(normal)));
    };
    const Solid cube = box(20, 20, 20);
    for (int axis = 0; axis < 3; ++axis) {
      Vec3 out{0.0};
      out[axis] = 1.0;
      check_mm(area_of(cut(cube, {20, 20, 20}, out)), 400, 1e-9);
      CHECK(cut(cube, {20, 20, 20}, -out).empty());
      CHECK(cut(cube, {0, 0, 0}, out).empty());
      check_mm(area_of(cut(cube, {0, 0, 0}, -out)), 400, 1e-9);
    }
    // The floor of a slot: the whole width below it, the two arms above it.
    const Solid slotted = prism(you, {}, 4);
    CHECK(cut(slotted, {0, 2, 0}, {0, 1, 0}).size() == 1);
    check_mm(area_of(cut(slotted, {0, 2, 0}, {0, 1, 0})), 36, 1e-9);
    CHECK(cut(slotted, {0, 2, 0}, {0, -1, 0}).size() == 2);
    check_mm(area_of(cut(slotted, {0, 2, 0}, {0, -1, 0})), 16, 1e-9);
    // The tip of a notch in the plane splits nothing, from either side.
    const Solid notched = prism({{0, 0}, {10, 0}, {10, 10}, {5, 5}, {0, 10}}, {}, 4);
    for (const double sign : {1.0, -1.0}) {
      CHECK(cut(notched, {0, 5, 0}, {0, sign, 0}).size() == 1);
      check_mm(area_of(cut(notched, {0, 5, 0}, {0, sign, 0})), 40, 1e-9);
    }
  }
}

TEST_CASE("a plane that is along the axis to a hair ends at the caps") {
  // The area is 20 x 20 over the cosine of the slant, which differs from 1 by less than 1e-9 here.
  std::mt19937_64 random(20240512);
  std::uniform_real_distribution<double> place(8, 12);
  for (const double slant : {1e-5, 1e-7, 1e-9, 1e-10}) {
    CAPTURE(slant);
    for (int round = 0; round < 20; ++round) {
      const Vec3 point{place(random), place(random), place(random)};
      check_mm(area_cut(box(20, 20, 20), point, {1, 0.3, slant}), 400 * std::sqrt(1.09), 1e-6);
      check_mm(area_cut(box(20, 20, 20), point, {slant, 0.3 * slant, 1}), 400, 1e-6);
    }
  }
}

TEST_CASE("a plane that only touches cuts nothing") {
  const Solid cube = box(20, 20, 20);
  CHECK(section({cube, {}}, facing_plane({20, 0, 0}, {1, -1, 0})).empty());   // an edge along the axis
  CHECK(section({cube, {}}, facing_plane({20, 0, 0}, {-1, 1, 0})).empty());   // seen from the other side
  CHECK(section({cube, {}}, facing_plane({0, 0, 20}, {-1, 0, 1})).empty());   // an edge of a cap
  CHECK(section({cube, {}}, facing_plane({20, 20, 20}, {1, 1, 1})).empty());  // a corner
  CHECK(section({cube, {}}, facing_plane({0, 0, 20.001}, {0, 0, 1})).empty());
  const Solid pin = cylinder(10, 0, 30);
  CHECK(section({pin, {}}, facing_plane({5, 0, 0}, {1, 0, 0})).empty());
  CHECK(section({pin, {}}, facing_plane({3, 4, 0}, {-3, -4, 0})).empty());
  CHECK(section({pin, {}}, facing_plane({5, 0, 30}, {1, 0, 1})).empty());  // its rim
}

TEST_CASE("round holes and cylinders") {
  // A cube with a bore of radius 5, drawn with 200 corners. By the area of a regular polygon, 1/2 n r² sin(2 pi / n),
  // the bore has 78.526897695 mm²; 25 pi is 0.0129 more.
  Outline bore;
  for (int i = 0; i < 200; ++i) {
    const double angle = std::numbers::pi * i / 100;
    bore.emplace_back(10 + 5 * std::cos(angle), 10 + 5 * std::sin(angle));
  }
  const Solid cube = prism({{0, 0}, {20, 0}, {20, 20}, {0, 20}}, {bore}, 20);
  check_mm(area_cut(cube, {0, 0, 7}, {0, 0, 1}), 321.473102305, 1e-8);
  check_mm(area_cut(cube, {0, 0, 7}, {0, 0, 1}), 400 - 25 * std::numbers::pi, 0.013);
  CHECK(section({cube, {}}, facing_plane({0, 0, 7}, {0, 0.3, 1})).front().holes.size() == 1);
  check_mm(area_cut(cube, {0, 10, 0}, {0, 1, 0}), 200, 1e-9);  // two walls of 5 x 20

  // A chord strays by 0.001 mm, so an area by less than 0.001 mm times the length of the curve.
  const Solid tube = cylinder(20, 10, 30);
  const auto annulus = section({tube, {}}, facing_plane({0, 0, 30}, {0, 0, 1}));
  REQUIRE(annulus.size() == 1);
  CHECK(annulus.front().holes.size() == 1);
  check_mm(area_of(annulus), 75 * std::numbers::pi, 1e-3 * 30 * std::numbers::pi);
  CHECK(area_of(annulus) != 75 * std::numbers::pi);
  check_mm(area_cut(cylinder(20, 0, 30), {0, 0, 3}, {1, 2, 0}), 600, 1e-9);  // through the axis: diameter x height
  CHECK(section({tube, {}}, facing_plane({0, 0, 3}, {1, 2, 0})).size() == 2);
  check_mm(area_cut(tube, {0, 0, 3}, {1, 2, 0}), 300, 1e-9);
  check_mm(area_cut(tube, {3, 0, 0}, {1, 0, 0}), 30 * 2 * (std::sqrt(91.0) - 4), 1e-9);
  check_mm(area_cut(tube, {6, 0, 0}, {1, 0, 0}), 30 * 16, 1e-9);  // beside the bore: chord 2 sqrt(100 - 36)
}

TEST_CASE("a slanted cut of a cylinder is an ellipse, cut off by the caps") {
  const Solid pin = cylinder(10, 0, 30);
  const View view = facing_plane({0, 0, 15}, {1, 0, 1});
  const auto ellipse = section({pin, {}}, view);
  REQUIRE(ellipse.size() == 1);
  check_mm(area_of(ellipse), 25 * root2 * std::numbers::pi, 1e-3 * 38);  // half axes 5 and 5 sqrt(2)
  // Through the middle of the top cap: half of the ellipse, closed by a side of 10 mm on the cap.
  const auto half = section({pin, {}}, facing_plane({0, 0, 30}, {1, 0, 1}));
  check_mm(area_of(half), 12.5 * root2 * std::numbers::pi, 1e-3 * 20);
  // So steep that the plane runs from cap to cap: nearly the rectangle 10 x 30 / cos, wider than a rectangle's ends.
  // Exactly: integral over z of 2 sqrt(25 - (z - 15)² tan²) / cos, with tan = 0.1: from z = 0 to 30.
  const double tangent = 0.1;
  const double reach = 15 * tangent;
  const double exact =
      (reach * std::sqrt(25 - reach * reach) + 25 * std::asin(reach / 5)) / tangent * std::sqrt(1 + tangent * tangent);
  check_mm(area_cut(pin, {0, 0, 15}, {1, 0, tangent}), 2 * exact, 1e-3 * 61);
  // A tube cut from cap to cap falls into two strips, cut through one cap only it keeps one region with a notch.
  const Solid tube = cylinder(10, 4, 30);
  CHECK(section({tube, {}}, facing_plane({0, 0, 15}, {1, 0, 0.01})).size() == 2);
  const auto notched = section({tube, {}}, facing_plane({0, 0, 30}, {1, 0, 1}));
  REQUIRE(notched.size() == 1);
  CHECK(notched.front().holes.empty());
  check_mm(area_of(notched), 10.5 * root2 * std::numbers::pi, 1e-3 * 30);
}

TEST_CASE("a long ellipse is drawn within the chord error") {
  // Half axes 5 and 5 sqrt(101), about 50.2. With f = sqrt((u/a)² + (v/b)²), which is 1 on the ellipse, a point near it
  // is (1 - f) / |grad f| away from it.
  const double a = 5 * std::sqrt(101.0);
  const View view{{0, 0, 60}, glm::normalize(Vec3{-0.1, 0, 1}), {0, 1, 0}};
  const auto cut = section({cylinder(10, 0, 120), {}}, view);
  REQUIRE(cut.size() == 1);
  const Outline& ring = cut.front().outline;
  const auto away = [a](const Vec2& p) {
    const double f = std::hypot(p.x / a, p.y / 5);
    return (1 - f) * f / std::hypot(p.x / (a * a), p.y / 25);
  };
  double most = 0.0;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    check_mm(away(ring[i]), 0, 1e-9);
    most = std::max(most, away(0.5 * (ring[i] + ring[(i + 1) % ring.size()])));
  }
  CAPTURE(most);
  CHECK(most < 1.01e-3);
  CHECK(most > 0.5e-3);
  CHECK(ring.size() < 2000);
}

TEST_CASE("no seam between pieces shows") {
  const Solid angle = prism(ell, {}, 10);
  const auto cut = section({angle, {}}, facing_plane({0, 0, 5}, {1, 2, 8}));
  REQUIRE(cut.size() == 1);
  CHECK(cut.front().outline.size() == 6);
  check_mm(area_of(cut), 20 * std::sqrt(69.0) / 8, 1e-9);  // the base's 20 mm² over the cosine of the slant
  CHECK(section({angle, {}}, facing_plane({0, 1, 5}, {0, 1, 0})).size() == 1);
  CHECK(section({angle, {}}, facing_plane({0, 1, 5}, {0, 1, 0})).front().outline.size() == 4);
  const auto arms = section({prism(you, {}, 10), {}}, facing_plane({0, 4, 5}, {0, 1, 0.01}));
  CHECK(arms.size() == 2);
}

TEST_CASE("a sweep of planes adds up to the volume") {
  std::mt19937_64 random(20240507);
  const std::vector<Solid> solids{prism(you, {{{3, 0.5}, {3, 1.5}, {6, 1.5}, {6, 0.5}}}, 5), cylinder(8, 5, 7),
                                  prism(ell, {}, 3), box(4, 5, 6)};
  for (std::size_t round = 0; round < 12; ++round) {
    const Solid& solid = solids[round % solids.size()];
    const Placed placed{solid, random_pose(random)};
    const Vec3 normal = random_direction(random);
    const Bounds around = bounds(placed);
    const Vec3 middle = 0.5 * (around.low + around.high);
    const double reach = 0.5 * glm::length(around.high - around.low);
    const int slices = 1000;
    double sum = 0.0;
    for (int i = 0; i < slices; ++i) {
      const double at = reach * (2.0 * (i + 0.5) / slices - 1.0);
      sum += area_of(section(placed, facing_plane(middle + at * normal, normal))) * 2.0 * reach / slices;
    }
    // The area over a sweep is a chain of parabolas. A midpoint sum of 1000 slices is off by a share of a slice squared
    // on each; 9e-6 at most on these twelve (measured). A tube besides loses up to two thirds of 0.001 mm along the
    // difference of its circumferences, 9.4 mm, out of 30.6 mm²: 2.1e-4.
    check_mm(sum / solid.volume(), 1.0, solid.bore() > 0 ? 2.2e-4 : 2e-5);
  }
}

TEST_CASE("points of the plane are in the section when they are in the solid, whatever the pose") {
  std::mt19937_64 random(20240508);
  std::uniform_real_distribution<double> unit(0, 1);
  Outline star;
  for (int i = 0; i < 40; ++i) {
    const double angle = std::numbers::pi * i / 20;
    star.push_back((i % 2 == 0 ? 10.0 : 5.0 + unit(random)) * Vec2{std::cos(angle), std::sin(angle)});
  }
  const std::vector<Outline> holes{{{1, 1}, {1, 3}, {3, 1}}, {{-3, -3}, {-3, 2}, {-2.5, 2}, {-2.5, -3}}};
  const Solid solid = prism(star, holes, 6);
  int inside = 0;
  int wrong = 0;
  int regions = 0;
  const int rounds = 500;
  for (int round = 0; round < rounds; ++round) {
    const Placed placed{solid, random_pose(random)};
    Vec3 normal = random_direction(random);
    if (round % 5 == 0) normal.z *= 1e-7;  // nearly along the axis
    if (round % 5 == 1) normal = glm::normalize(normal * Vec3{1e-7, 1e-7, 1});
    const View view = facing_plane(placed.pose.point({2 * unit(random), 2 * unit(random), 6 * unit(random)}),
                                   placed.pose.direction(glm::normalize(normal)));
    const auto cut = section(placed, view);
    regions += static_cast<int>(cut.size());
    for (int i = 0; i < 40; ++i) {
      const Vec2 p{16 * unit(random) - 8, 16 * unit(random) - 8};
      const Vec3 at = placed.pose.inverse().point(view.point + p.x * view.right + p.y * view.up);
      const bool in_solid = at.z >= 0 && at.z <= 6 && contains(solid.outline(), Vec2{at}) &&
                            !contains(solid.holes()[0], Vec2{at}) && !contains(solid.holes()[1], Vec2{at});
      const auto found =
          std::count_if(cut.begin(), cut.end(), [&](const Region& region) { return in_region(region, p); });
      if (in_solid) ++inside;
      if (found != (in_solid ? 1 : 0)) ++wrong;
    }
  }
  CAPTURE(regions);
  CAPTURE(inside);
  CHECK(wrong == 0);
  CHECK(inside > rounds * 40 * 3 / 10);
  CHECK(inside < rounds * 40 * 7 / 10);
  CHECK(regions > rounds);
}

TEST_CASE("the section moves with solid and view") {
  std::mt19937_64 random(20240509);
  for (int round = 0; round < 50; ++round) {
    const Placed placed{prism(ell, {}, 5), random_pose(random)};
    const View view = facing_plane(placed.pose.point({1, 1, 2}), random_direction(random));
    const Pose move = random_pose(random);
    const View moved{move.point(view.point), move.direction(view.right), move.direction(view.up)};
    const auto here = section(placed, view);
    const auto there = section({placed.solid, move.after(placed.pose)}, moved);
    REQUIRE(here.size() == there.size());
    for (std::size_t i = 0; i < here.size(); ++i) {
      REQUIRE(here[i].outline.size() == there[i].outline.size());
      for (std::size_t k = 0; k < here[i].outline.size(); ++k) {
        check_mm(glm::distance(here[i].outline[k], there[i].outline[k]), 0, 1e-9);
      }
    }
  }
}

TEST_CASE("shadows") {
  const Solid angle = prism(ell, {{{0.5, 0.5}, {0.5, 1.5}, {1.5, 1.5}, {1.5, 0.5}}}, 10);
  const auto seen = [](const Solid& solid, const Vec3& normal) {
    return shadow({solid, {}}, facing_plane({0, 0, 0}, normal));
  };
  const auto from_top = seen(angle, {0, 0, 1});
  REQUIRE(from_top.size() == 1);
  check_mm(area_of(from_top), 19, 1e-9);
  check_mm(area_of(seen(angle, {0, 0, -1})), 19, 1e-9);
  check_mm(area_of(seen(angle, {0, 1, 0})), 60, 1e-9);
  check_mm(area_of(seen(angle, {1, 1, 0})), 10 * 12 / root2, 1e-9);  // across the two tips
  CHECK(seen(angle, {1, 1, 1}).size() == 1);                         // no seam between the shadows of its pieces
  check_mm(area_of(seen(box(20, 20, 20), {1, 1, 1})), 400 * root3, 1e-9);
  check_mm(area_of(seen(cylinder(20, 10, 30), {0, 1, 0})), 600, 1e-9);
  check_mm(area_of(seen(cylinder(20, 10, 30), {0, 0, -1})), 75 * std::numbers::pi, 1e-3 * 30 * std::numbers::pi);
  // At a slant of 45 degrees: the ellipse of a cap and the side's diameter x height, both by 1 / sqrt(2).
  check_mm(area_of(seen(cylinder(20, 0, 30), {0, 1, 1})), (100 * std::numbers::pi + 600) / root2, 1e-3 * 100);
  // Through a bore of radius 5 and height 2 tan^-1 slant of 3 on 1 one sees the lens of two circles 6 apart, by the
  // cosine 1 / sqrt(10) of the slant: 2 (25 acos(3/5) - 3 * 4).
  const auto slanted = seen(cylinder(20, 10, 2), {3, 0, 1});
  REQUIRE(slanted.front().holes.size() == 1);
  const double lens = 2 * (25 * std::acos(0.6) - 12) / std::sqrt(10.0);
  check_mm(-signed_area(slanted.front().holes.front()), lens, 1e-3 * 20);
  CHECK(seen(cylinder(20, 10, 4), {3, 0, 1}).front().holes.empty());
}

TEST_CASE("common part of two convex outlines") {
  const Outline square{{0, 0}, {10, 0}, {10, 10}, {0, 10}};
  const Outline clockwise{{5, 5}, {5, 15}, {15, 15}, {15, 5}};
  const Outline shared = common(square, clockwise);
  CHECK(shared.size() == 4);
  check_mm(signed_area(shared), 25, 1e-12);
  check_mm(signed_area(common(clockwise, square)), 25, 1e-12);
  CHECK(common(square, {{10, 0}, {20, 0}, {20, 10}, {10, 10}}).empty());  // a common side
  CHECK(common(square, {{10, 10}, {20, 10}, {20, 20}}).empty());          // a common corner
  CHECK(common(square, {{11, 0}, {20, 0}, {20, 10}}).empty());
  CHECK(common(square, square).size() == 4);
  check_mm(signed_area(common(square, {{2, 2}, {3, 2}, {3, 3}})), 0.5, 1e-12);
  check_mm(signed_area(common(square, {{-5, 5}, {5, -5}, {15, 5}, {5, 15}})), 100, 1e-12);
  check_mm(signed_area(common(square, {{-2, 5}, {5, -2}, {12, 5}, {5, 12}})), 82,
           1e-12);  // four corners of 3 x 3 / 2 off
}
