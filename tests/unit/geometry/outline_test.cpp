#include "geometry/outline.h"

#include "geometry/convex_parts.h"
#include "geometry/orientation.h"
#include "support/check_mm.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <numbers>
#include <random>

using namespace baywright::geometry;
using baywright::test::check_mm;

namespace {

struct Base {
  Outline outline;
  std::vector<Outline> holes;
};

Outline reversed(Outline ring) {
  std::reverse(ring.begin(), ring.end());
  return ring;
}

double area_of(const Base& base) {
  double sum = signed_area(base.outline);
  for (const Outline& hole : base.holes) sum += signed_area(hole);
  return sum;
}

bool in_base(const Base& base, const Vec2& p) {
  return contains(base.outline, p) &&
         std::none_of(base.holes.begin(), base.holes.end(), [&](const Outline& hole) { return contains(hole, p); });
}

/// Strictly convex all round: each side has every other corner on its left, without rounding.
bool strictly_convex(const Outline& part) {
  const std::size_t n = part.size();
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = 2; j < n; ++j) {
      if (orientation(part[i], part[(i + 1) % n], part[(i + j) % n]) <= 0) return false;
    }
  }
  return n >= 3;
}

/// Parts are convex, their areas make up the base, and random points of the base are in just one of them, others in
/// none.
void check_split(const Base& base, std::mt19937_64& random) {
  REQUIRE_FALSE(fault(base.outline, base.holes).has_value());
  const std::vector<Outline> parts = convex_parts(base.outline, base.holes);
  double sum = 0.0;
  for (const Outline& part : parts) {
    CHECK(strictly_convex(part));
    sum += signed_area(part);
  }
  const double area = area_of(base);
  check_mm(sum / area, 1.0, 1e-12);
  Vec2 low = base.outline.front();
  Vec2 high = low;
  for (const Vec2& p : base.outline) {
    low = glm::min(low, p);
    high = glm::max(high, p);
  }
  std::uniform_real_distribution<double> unit(0, 1);
  int wrong = 0;
  for (int i = 0; i < 200; ++i) {
    const Vec2 p = low + Vec2{unit(random), unit(random)} * (high - low);
    const auto holding =
        std::count_if(parts.begin(), parts.end(), [&](const Outline& part) { return contains(part, p); });
    if (holding != (in_base(base, p) ? 1 : 0)) ++wrong;
  }
  CHECK(wrong == 0);
}

Outline star(std::mt19937_64& random, const Vec2& centre, double least, double most, int corners) {
  std::uniform_real_distribution<double> radius(least, most);
  Outline ring;
  for (int i = 0; i < corners; ++i) {
    const double angle = 2.0 * std::numbers::pi * i / corners;
    ring.push_back(centre + radius(random) * Vec2{std::cos(angle), std::sin(angle)});
  }
  return ring;
}

Base turned(Base base, double degrees, const Vec2& shift) {
  const Mat3 turn = rotation({0, 0, 1}, degrees);
  const auto move = [&](Outline& ring) {
    for (Vec2& p : ring) p = Vec2{turn * Vec3{p, 0.0}} + shift;
  };
  move(base.outline);
  for (Outline& hole : base.holes) move(hole);
  return base;
}

}  // namespace

TEST_CASE("orientation does not round") {
  // (0.5, 0.5), (12, 12), (24, 24) lie on x = y; the next double u up from 0.5 on either axis does not. By hand the
  // determinant is then 11.5 * (23.5 - u) - (11.5 - u) * 23.5 = 12 u. A plain determinant calls many such points
  // collinear (L. Kettner et al., "Classroom examples of robustness problems in geometric computations", Computational
  // Geometry 40 (2008), on this very line).
  const double up = std::nextafter(0.5, 1.0);
  CHECK(orientation({0.5, 0.5}, {12, 12}, {24, 24}) == 0);
  CHECK(orientation({0.5, up}, {12, 12}, {24, 24}) == 1);
  CHECK(orientation({up, 0.5}, {12, 12}, {24, 24}) == -1);
  // The products 2^106 and 2^106 - 4 are equal as doubles; the exact difference is 4.
  const double big = 9007199254740992.0;
  CHECK(orientation({0, 0}, {big, big + 2}, {big - 2, big}) == 1);
}

TEST_CASE("contains counts the boundary") {
  const Outline ell{{0, 0}, {6, 0}, {6, 2}, {2, 2}, {2, 6}, {0, 6}};
  CHECK(contains(ell, {1, 5}));
  CHECK_FALSE(contains(ell, {3, 3}));
  CHECK(contains(ell, {2, 2}));
  CHECK(contains(ell, {6, 1}));
  CHECK(contains(ell, {2, 4}));
  CHECK_FALSE(contains(ell, {-1, 2}));  // level with corners
  CHECK_FALSE(contains(ell, {7, 2}));
  CHECK(contains(reversed(ell), {1, 5}));
}

TEST_CASE("hull of points with doubles and lines") {
  CHECK(hull({}).empty());
  CHECK(hull({{1, 2}, {1, 2}}) == Outline{{1, 2}});
  CHECK(hull({{2, 2}, {0, 0}, {1, 1}, {3, 3}}) == Outline{{0, 0}, {3, 3}});
  CHECK(hull({{1, 1}, {2, 0}, {0, 0}, {1, 0}, {0, 2}, {2, 2}, {0, 1}, {2, 2}}) ==
        Outline{{0, 0}, {2, 0}, {2, 2}, {0, 2}});
}

TEST_CASE("outlines with a known least number of parts") {
  const Outline ell{{0, 0}, {6, 0}, {6, 2}, {2, 2}, {2, 6}, {0, 6}};
  CHECK(convex_parts(ell, {}).size() == 2);
  const Outline you{{0, 0}, {9, 0}, {9, 6}, {7, 6}, {7, 2}, {2, 2}, {2, 6}, {0, 6}};
  CHECK(convex_parts(you, {}).size() == 3);
  // A square frame needs four parts at least (each part sees at most one corner of the hole); the promise is four
  // times.
  const std::size_t frame = convex_parts({{0, 0}, {9, 0}, {9, 9}, {0, 9}}, {{{3, 3}, {3, 6}, {6, 6}, {6, 3}}}).size();
  CHECK(frame >= 4);
  CHECK(frame <= 6);
}

TEST_CASE("splits of named shapes, as they are and turned") {
  std::mt19937_64 random(7);
  const Base ell{{{0, 0}, {6, 0}, {6, 2}, {2, 2}, {2, 6}, {0, 6}}, {}};
  // Four holes in one line with each other and with corners, one of them 1e-5 mm from a side.
  Base plate{{{0, 0}, {40, 0}, {40, 10}, {0, 10}}, {}};
  for (const double x : {1e-5, 10.0, 20.0, 30.0}) {
    plate.holes.push_back({{x, 4}, {x, 6}, {x + 2, 6}, {x + 2, 4}});
  }
  // 30 teeth 100 mm long and 0.01 mm wide.
  Base comb;
  for (int i = 0; i < 30; ++i) {
    const double x = 0.02 * i;
    comb.outline.insert(comb.outline.end(), {{x, 0.01}, {x, -100}, {x + 0.01, -100}, {x + 0.01, 0.01}});
  }
  comb.outline.insert(comb.outline.end(), {{0.6, 0.02}, {-0.1, 0.02}});
  comb.outline = reversed(comb.outline);
  if (signed_area(comb.outline) < 0) comb.outline = reversed(comb.outline);
  // A spiral slot of constant width.
  Base spiral;
  for (int side = -1; side <= 1; side += 2) {
    Outline bank;
    for (int i = 0; i <= 120; ++i) {
      const double angle = 0.15 * i;
      bank.push_back((5.0 + angle + 0.8 * side) * Vec2{std::cos(angle), std::sin(angle)});
    }
    if (side > 0) bank = reversed(bank);
    spiral.outline.insert(spiral.outline.end(), bank.begin(), bank.end());
  }
  if (signed_area(spiral.outline) < 0) spiral.outline = reversed(spiral.outline);
  // Rounding of the turned corners makes no more parts: sides stay straight.
  for (const double degrees : {0.0, 33.3, 71.0}) {
    CHECK(convex_parts(turned(ell, degrees, {700, -300}).outline, {}).size() == 2);
    std::size_t corners = 0;
    const auto teeth = convex_parts(turned(comb, degrees, {700, -300}).outline, {});
    CHECK(teeth.size() == 31);  // 30 teeth and the bar, four corners each
    for (const Outline& part : teeth) corners += part.size();
    CHECK(corners == 124);
    Base long_side{{{0, 0}}, {}};  // the same angle, its longest side in 200 steps
    for (int i = 1; i <= 200; ++i) long_side.outline.emplace_back(0.03 * i, 0);
    long_side.outline.insert(long_side.outline.end(), {{6, 2}, {2, 2}, {2, 6}, {0, 6}});
    CHECK(convex_parts(turned(long_side, degrees, {700, -300}).outline, {}).size() == 2);
    const Base bar{{{0, 0}, {3, 0}, {7, 0}, {9, 0}, {9, 4}, {5, 4}, {4, 4}, {0, 4}}, {}};
    const auto parts = convex_parts(turned(bar, degrees, {700, -300}).outline, {});
    REQUIRE(parts.size() == 1);
    CHECK(parts.front().size() == 4);
  }
  for (const Base& base : {ell, plate, comb, spiral}) {
    check_split(base, random);
    check_split(turned(base, 90, {0, 0}), random);
    check_split(turned(base, 33.3, {700, -300}), random);
  }
}

TEST_CASE("splits of random stars with star-shaped holes") {
  std::mt19937_64 random(20240502);
  std::uniform_int_distribution<int> corners(3, 60);
  int with_holes = 0;
  for (int round = 0; round < 300; ++round) {
    Base base{star(random, {0, 0}, 30, 60, std::max(12, corners(random) * 3)), {}};
    // Seats 10 mm apart within radius 28 hold holes of up to 4.9 mm: as near as 0.2 mm.
    for (int x = -20; x <= 20; x += 10) {
      for (int y = -10; y <= 10; y += 10) {
        if (corners(random) % 2 == 0) {
          base.holes.push_back(reversed(star(random, {x, y}, 0.5, 4.9, corners(random))));
        }
      }
    }
    if (!base.holes.empty()) ++with_holes;
    check_split(base, random);
  }
  CHECK(with_holes > 250);
}

TEST_CASE("splits on a coarse grid, where corners line up") {
  // Skylines of whole heights with square windows: many corners on common lines, many bridges past other corners.
  std::mt19937_64 random(20240503);
  std::uniform_int_distribution<int> height(3, 6);
  std::uniform_int_distribution<int> coin(0, 1);
  for (int round = 0; round < 200; ++round) {
    Base base{{{12, 0}, {12, 2}}, {}};
    int last = 2;
    for (int x = 11; x >= 1; --x) {
      const int next = height(random);
      if (next != last) base.outline.insert(base.outline.end(), {{x, last}, {x, next}});
      last = next;
    }
    base.outline.insert(base.outline.end(), {{0, last}, {0, 0}});
    for (int x = 1; x < 11; ++x) {
      if (coin(random)) base.holes.push_back({{x + 0.25, 1}, {x + 0.25, 1.5}, {x + 0.75, 1.5}, {x + 0.75, 1}});
    }
    if (signed_area(base.outline) < 0) base.outline = reversed(base.outline);
    check_split(base, random);
    check_split(turned(base, 17.0, {40, 40}), random);
  }
}
