// What must hold of every pair, on random pairs with fixed seeds. The mix of apart and overlapping is checked, so that
// no property can hold for want of cases.
#include "gap_scenes.h"
#include "support/check_mm.h"

#include <algorithm>
#include <doctest/doctest.h>

namespace baywright::geometry {
namespace {

using namespace scenes;
using test::check_mm;

constexpr double allowed = 1e-9;

double separation_along(const Placed& a, const Placed& b, const Vec3& d) {
  return separation(a.solid.pieces()[0], a.pose, b.solid.pieces()[0], b.pose, d);
}

/// How far a world point is outside of a box, prism or cylinder of one piece, by its definition; 0 inside.
double outside(const Placed& placed, const Vec3& world) {
  const Vec3 p = placed.pose.inverse().point(world);
  double out = std::max(-p.z, p.z - placed.solid.height());
  if (placed.solid.diameter() > 0.0) {
    out = std::max(out, std::hypot(p.x, p.y) - 0.5 * placed.solid.diameter());
    out = std::max(out, 0.5 * placed.solid.bore() - std::hypot(p.x, p.y));
  }
  const Outline& outline = placed.solid.outline();
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Vec2 side = outline[(i + 1) % outline.size()] - outline[i];
    const Vec2 normal = Vec2{side.y, -side.x} / glm::length(side);
    out = std::max(out, glm::dot(Vec2{p.x, p.y} - outline[i], normal));
  }
  return std::max(0.0, out);
}

struct Mix {
  int apart = 0;
  int overlapping = 0;
  void count(const Gap& found) {
    apart += found.relation == Relation::apart ? 1 : 0;
    overlapping += found.relation == Relation::overlapping ? 1 : 0;
  }
  void check() const {
    const double share = overlapping / static_cast<double>(apart + overlapping);
    CHECK(share > 0.3);
    CHECK(share < 0.7);
  }
};

TEST_CASE("gap: both bounds meet, and the points lie on the solids") {
  Random random(1);
  Mix mix;
  for (int i = 0; i < 4000; ++i) {
    const Placed a{any_convex(random), any_pose(random, 12.0)};
    const Placed b{any_convex(random), any_pose(random, 12.0)};
    const Gap found = gap(a, b);
    mix.count(found);
    CHECK(found.error <= allowed);
    CHECK(outside(a, found.on_a) <= allowed);
    CHECK(outside(b, found.on_b) <= allowed);
    check_mm(separation_along(a, b, found.direction), found.mm, allowed);    // a lower bound of any gap
    check_mm(found.on_b - found.on_a, found.direction * found.mm, allowed);  // apart, an upper bound
    const Gap back = gap(b, a);
    check_mm(back.mm, found.mm, 1e-12);
    check_mm(back.direction, -found.direction, allowed);
  }
  mix.check();
}

TEST_CASE("gap: moving out by the depth along the direction touches, a little more frees") {
  Random random(2);
  int tried = 0;
  for (int i = 0; i < 3000; ++i) {
    const Placed a{any_convex(random), any_pose(random, 10.0)};
    const Placed b{any_convex(random), any_pose(random, 10.0)};
    const Gap found = gap(a, b);
    if (found.relation != Relation::overlapping) continue;
    ++tried;
    check_mm(gap(a, shifted(b, found.direction * -found.mm)).mm, 0.0, allowed);
    check_mm(gap(a, shifted(b, found.direction * (0.5 - found.mm))).mm, 0.5, allowed);
    check_mm(gap(a, shifted(b, found.direction * (-0.5 * found.mm))).mm, 0.5 * found.mm, allowed);
  }
  CHECK(tried > 1000);
}

/// Uphill on the sphere by a shrinking pattern of steps; knows nothing of shapes but their separation.
double best_from(const Placed& a, const Placed& b, Vec3 d, double step) {
  double best = separation_along(a, b, d);
  while (step > 1e-7) {
    const Vec3 right = square_to(d);
    const Vec3 up = glm::cross(d, right);
    bool better = false;
    for (int k = 0; k < 12 && !better; ++k) {
      const double angle = k * std::numbers::pi / 6.0;
      const Vec3 next = glm::normalize(d + (right * std::cos(angle) + up * std::sin(angle)) * step);
      const double value = separation_along(a, b, next);
      better = value > best;
      if (better) {
        best = value;
        d = next;
      }
    }
    if (!better) step *= 0.5;
  }
  return best;
}

TEST_CASE("gap: no direction out of a dense set leads out sooner") {
  // 20,000 directions on a spherical Fibonacci lattice (A. Gonzalez, Mathematical Geosciences 42, 2010), the best of
  // them refined. The separation along a direction is a scan of the corners and needs none of the routines under test.
  constexpr int lattice = 20000;
  std::vector<Vec3> directions;
  for (int i = 0; i < lattice; ++i) {
    const double z = 1.0 - (2.0 * i + 1.0) / lattice;
    const double turn = i * std::numbers::pi * (3.0 - std::sqrt(5.0));
    directions.push_back({std::sqrt(1.0 - z * z) * std::cos(turn), std::sqrt(1.0 - z * z) * std::sin(turn), z});
  }
  Random random(3);
  int tried = 0;
  std::vector<std::pair<double, Vec3>> seen;
  while (tried < 150) {
    Placed a{any_convex(random), any_pose(random, 8.0)};
    Placed b{any_convex(random), any_pose(random, 8.0)};
    if (tried % 5 == 0) {  // cylinders crossing: the one pair without a closed form
      const Vec3 of_a = any_sides(random, 1, 30);
      const Vec3 of_b = any_sides(random, 1, 30);
      a.solid = cylinder(of_a.x, of_a.y);
      b.solid = cylinder(of_b.x, of_b.y);
    }
    if (tried % 7 == 0) b.pose.turn = a.pose.turn;
    const Gap found = gap(a, b);
    if (found.relation != Relation::overlapping) continue;
    ++tried;
    seen.clear();
    for (const Vec3& d : directions) seen.emplace_back(separation_along(a, b, d), d);
    std::partial_sort(seen.begin(), seen.begin() + 20, seen.end(),
                      [](const auto& p, const auto& q) { return p.first > q.first; });
    double best = best_from(a, b, found.direction, 0.01);
    for (int i = 0; i < 20; ++i) best = std::max(best, best_from(a, b, seen[static_cast<std::size_t>(i)].second, 0.02));
    CAPTURE(tried);
    CHECK(best <= found.mm + allowed);
  }
}

TEST_CASE("gap: no faster than the motion") {
  Random random(4);
  Mix mix;
  for (int i = 0; i < 3000; ++i) {
    Placed a{any_convex(random), any_pose(random, 12.0)};
    if (i % 6 == 0) {
      const Vec3 sides = any_sides(random, 0.0, 1.0);
      a.solid = tube(20 + 20 * sides.x, 4 + 14 * sides.y, 1 + 19 * sides.z);
    }
    const Placed b{any_convex(random), any_pose(random, 12.0)};
    const Gap before = gap(a, b);
    if (i % 6 != 0) mix.count(before);
    const double size = std::pow(10.0, uniform(random, -9.0, 0.5));
    const Placed slid = shifted(b, any_direction(random) * size);
    const Gap after = gap(a, slid);
    // A sure way out need not be the shortest, and may change faster.
    const bool known = before.bound == Bound::exact && after.bound == Bound::exact;
    if (known) CHECK(std::abs(after.mm - before.mm) <= size + before.error + after.error);
    // Turned about its own origin, no point moves farther than its distance times the angle.
    const double angle = std::pow(10.0, uniform(random, -9.0, -1.0));
    Placed turned = b;
    turned.pose.turn = rotation(any_direction(random), angle * 180.0 / std::numbers::pi) * b.pose.turn;
    const Gap then = gap(a, turned);
    if (before.bound == Bound::exact && then.bound == Bound::exact) {
      CHECK(std::abs(then.mm - before.mm) <= 60.0 * angle + before.error + then.error + 1e-12);
    }
  }
  mix.check();
}

/// An angle, a channel, a frame or a tube, to stand for what is not convex.
Solid any_hollow(Random& random) {
  const double w = uniform(random, 8, 30);
  const double t = uniform(random, 0.15, 0.4) * w;
  const double h = uniform(random, 1, 20);
  switch (random() % 4) {
    case 0:
      return prism({{0, 0}, {w, 0}, {w, t}, {t, t}, {t, w}, {0, w}}, {}, h);
    case 1:
      return prism({{0, 0}, {w, 0}, {w, w}, {w - t, w}, {w - t, t}, {t, t}, {t, w}, {0, w}}, {}, h);
    case 2:
      return prism({{0, 0}, {w, 0}, {w, w}, {0, w}}, {{{t, t}, {w - t, t}, {w - t, w - t}, {t, w - t}}}, h);
    default:
      return tube(w, w - 2 * t, h);
  }
}

TEST_CASE("gap: the way out of what is not convex is sure") {
  Random random(6);
  Mix mix;
  int found_exact = 0;
  for (int i = 0; i < 1500; ++i) {
    const Placed a{any_hollow(random), any_pose(random, 9.0)};
    const Placed b{i % 2 == 0 ? any_hollow(random) : any_convex(random), any_pose(random, 9.0)};
    const Gap found = gap(a, b);
    mix.count(found);
    check_mm(glm::length(found.direction), 1.0, 1e-9);
    const Gap back = gap(b, a);
    CHECK(back.relation == found.relation);
    if (found.relation == Relation::apart) {
      check_mm(back.mm, found.mm, 1e-9 + found.error + back.error);
      check_mm(glm::length(found.on_b - found.on_a), found.mm, 1e-9 + found.error);
      continue;
    }
    if (found.relation != Relation::overlapping) continue;
    found_exact += found.bound == Bound::exact ? 1 : 0;
    CHECK(gap(a, shifted(b, found.direction * (1e-6 - found.mm))).relation == Relation::apart);
    if (found.bound == Bound::exact) {  // nothing shorter frees: half way it still overlaps
      CHECK(gap(a, shifted(b, found.direction * (-0.5 * found.mm))).relation == Relation::overlapping);
    }
  }
  mix.check();
  CHECK(found_exact > 100);
}

TEST_CASE("gap: a tube against random solids agrees with a walk over its surface") {
  // Apart: the distance from each point of a grid on the tube's surface to the solid, which is a clamp for a box. No
  // grid point may be nearer than the gap, and the grid's spacing bounds how much farther the best one can be.
  Random random(5);
  int through = 0;
  int tried = 0;
  for (int i = 0; i < 400; ++i) {
    const double outer = uniform(random, 15, 30);
    const double bore = uniform(random, 0.4, 0.9) * outer;
    const double height = uniform(random, 1, 10);
    const Placed ring{tube(outer, bore, height), {}};
    const Vec3 size{uniform(random, 1, 5), uniform(random, 1, 5), uniform(random, 1, 60)};
    const Placed rod{box(size.x, size.y, size.z), any_pose(random, 8.0)};
    const Gap found = gap(ring, rod);
    if (found.relation != Relation::apart) continue;
    ++tried;
    CHECK(found.error <= allowed);
    CHECK(outside(ring, found.on_a) <= allowed);
    CHECK(outside(rod, found.on_b) <= allowed);
    check_mm(glm::length(found.on_b - found.on_a), found.mm, allowed);
    through += gap(Placed{cylinder(outer, height), {}}, rod).mm < 0.0 ? 1 : 0;
    double least = 1e9;
    const Pose back = rod.pose.inverse();
    constexpr int around = 400;
    constexpr int up = 8;
    const auto look = [&](double radius, double angle, double z) {
      const Vec3 p = back.point({radius * std::cos(angle), radius * std::sin(angle), z});
      least = std::min(least, glm::length(p - glm::clamp(p, Vec3{0.0}, size)));
    };
    for (int k = 0; k < around; ++k) {
      const double angle = 2.0 * std::numbers::pi * k / around;
      for (int j = 0; j <= up; ++j) {
        look(0.5 * bore, angle, height * j / up);
        look(0.5 * outer, angle, height * j / up);
        look(0.5 * (bore + (outer - bore) * j / up), angle, 0.0);
        look(0.5 * (bore + (outer - bore) * j / up), angle, height);
      }
    }
    CHECK(found.mm <= least + allowed);
    CHECK(found.mm >= least - 0.5 * std::hypot(std::numbers::pi * outer / around, std::max(height, outer - bore) / up));
  }
  CHECK(tried > 100);
  CHECK(through > 20);
}

}  // namespace
}  // namespace baywright::geometry
