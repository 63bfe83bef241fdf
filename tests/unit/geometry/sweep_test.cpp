// Motion with no pose left out, held against closed forms and against poses taken one by one.
#include "geometry/sweep.h"

#include "geometry/gap.h"
#include "support/check_mm.h"
#include "support/random_turn.h"

#include <algorithm>

#include <cmath>
#include <doctest/doctest.h>
#include <numbers>
#include <variant>

using namespace baywright::geometry;
using baywright::test::any_turn;
using baywright::test::check_mm;
using baywright::test::Random;
using baywright::test::uniform;

namespace {

Solid box(double x, double y, double z) {
  return std::get<Solid>(Solid::box({x, y, z}));
}

Movement shift(const Vec3& by) {
  Movement movement;
  movement.shift = by;
  return movement;
}

Placed at(Solid solid, const Vec3& corner) {
  return {std::move(solid), {Mat3{1.0}, corner}};
}

}  // namespace

TEST_CASE("a wall a thousandth thick is not stepped over") {
  const Placed drive = at(box(10, 10, 10), {0, 0, 0});
  for (const double where : {20.0, 57.3, 480.0}) {
    const Placed wall = at(box(0.001, 100, 100), {where, -50, -50});
    const Closest met = closest(drive, wall, shift({500, 0, 0}), 0.0);
    CHECK(met.met);
    CHECK(met.sure);
    // The shortest way out of a sheet that stands in the middle of a 10 mm cube is at most 5 mm and the sheet.
    CHECK(met.mm < 0.0);
    CHECK(gap({drive.solid, shift({500, 0, 0}).at(met.t).after(drive.pose)}, wall).relation == Relation::overlapping);
  }
}

TEST_CASE("a box that passes beside another comes as near as it ever is") {
  const Placed moving = at(box(10, 10, 10), {0, 0, 0});
  const Placed post = at(box(4, 4, 40), {50, 10.25, -10});
  const Closest met = closest(moving, post, shift({100, 0, 0}), 1e9);
  CHECK(met.sure);
  check_mm(met.mm, 0.25, fine_mm);
  // Square to the motion the gap is 0.25 along the whole overlap of the two, and never less.
  CHECK(met.mm >= 0.25 - 1e-9);
}

TEST_CASE("faces that slide along each other touch and do not overlap") {
  const Placed drive = at(box(100, 70, 7), {0, 0, 0});
  const Placed floor = at(box(400, 100, 1), {-50, -10, -1});
  CHECK_FALSE(closest(drive, floor, shift({250, 0, 0}), -1e-6).met);
  CHECK(closest(drive, floor, shift({250, 0, -0.01}), -1e-6).met);
}

TEST_CASE("a bar that turns up meets a ceiling at the angle that its length gives") {
  // Underside hinged at the origin, length l along y, thickness h: its far top corner rises to l sin a + h cos a.
  constexpr double l = 80.0;
  constexpr double h = 2.0;
  const Placed bar = at(box(22, l, h), {-11, 0, 0});
  Movement turn;
  turn.axis = {1, 0, 0};
  turn.degrees = 20.0;
  const double a = 20.0 * std::numbers::pi / 180.0;
  const double top = l * std::sin(a) + h * std::cos(a);
  for (const double room : {top + 0.5, top + 0.02}) {
    const Closest met = closest(bar, at(box(200, 300, 1), {-100, -100, room}), turn, 1e9);
    check_mm(met.mm, room - top, fine_mm);
    CHECK(met.mm >= room - top - 1e-9);
  }
  const Closest met = closest(bar, at(box(200, 300, 1), {-100, -100, top - 0.5}), turn, -1e-6);
  CHECK(met.met);
}

TEST_CASE("a disc that turns about its own axis comes no nearer") {
  const Placed disc{std::get<Solid>(Solid::cylinder(30, 0, 5)), {}};
  Movement turn;
  turn.axis = {0, 0, 1};
  turn.degrees = 180.0;
  const Closest met = closest(disc, at(box(2, 2, 2), {15.5, -1, 1}), turn, 1e9);
  check_mm(met.mm, 0.5, fine_mm);
}

TEST_CASE("a bar passes through a bore that it fits, and not through one that it does not") {
  const Placed bar{std::get<Solid>(Solid::cylinder(3.0, 0, 20)), {Mat3{1.0}, {0, 0, -30}}};
  const auto tube = [](double bore) { return Placed{std::get<Solid>(Solid::cylinder(12, bore, 5)), {}}; };
  const Closest fits = closest(bar, tube(3.4), shift({0, 0, 60}), 1e9);
  check_mm(fits.mm, 0.2, fine_mm);
  CHECK(closest(bar, tube(2.9), shift({0, 0, 60}), -1e-6).met);
}

TEST_CASE("what is called free is free at ten thousand poses, what is called met overlaps where it says so") {
  Random random(51);
  int free = 0;
  int met = 0;
  for (int scene = 0; scene < 60; ++scene) {
    const Placed moving{
        box(uniform(random, 1, 30), uniform(random, 1, 30), uniform(random, 1, 30)),
        {any_turn(random), {uniform(random, -60, 0), uniform(random, -20, 20), uniform(random, -20, 20)}}};
    const Placed fixed{
        scene % 3 == 0 ? std::get<Solid>(Solid::cylinder(uniform(random, 1, 30), 0, uniform(random, 1, 30)))
                       : box(uniform(random, 1, 30), uniform(random, 1, 30), uniform(random, 0.01, 30)),
        {any_turn(random), {uniform(random, 10, 60), uniform(random, -20, 20), uniform(random, -20, 20)}}};
    Movement movement = shift({uniform(random, 20, 120), uniform(random, -20, 20), 0});
    movement.axis = any_turn(random)[0];
    movement.pivot = {uniform(random, -50, 50), 0, uniform(random, -10, 10)};
    movement.degrees = uniform(random, -90, 90);
    const Closest found = closest(moving, fixed, movement, -1e-6);
    REQUIRE(found.sure);
    if (found.met) {
      ++met;
      const Gap there = gap({moving.solid, movement.at(found.t).after(moving.pose)}, fixed);
      CHECK(there.relation == Relation::overlapping);
      continue;
    }
    ++free;
    double least = 1e9;
    for (int i = 0; i <= 10000; ++i)
      least = std::min(least, gap({moving.solid, movement.at(i / 10000.0).after(moving.pose)}, fixed).mm);
    CHECK(least >= -1e-6 - 1e-9);
  }
  CHECK(free >= 18);
  CHECK(met >= 12);
}

TEST_CASE("the box around a motion holds every pose of it") {
  Random random(52);
  for (int scene = 0; scene < 200; ++scene) {
    const Placed moving{box(5, uniform(random, 1, 80), 3), {any_turn(random), {uniform(random, -20, 20), 0, 0}}};
    Movement movement = shift({uniform(random, -50, 50), uniform(random, -50, 50), 0});
    movement.axis = any_turn(random)[1];
    movement.pivot = {uniform(random, -30, 30), 0, 5};
    movement.degrees = uniform(random, -180, 180);
    const Bounds all = swept(bounds(moving), movement);
    double out = 0.0;
    for (int i = 0; i <= 100; ++i) {
      const Bounds here = bounds({moving.solid, movement.at(i / 100.0).after(moving.pose)});
      for (int axis = 0; axis < 3; ++axis)
        out = std::max({out, all.low[axis] - here.low[axis], here.high[axis] - all.high[axis]});
    }
    CHECK(out <= 1e-9);
  }
}
