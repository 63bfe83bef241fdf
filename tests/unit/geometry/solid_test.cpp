#include "geometry/solid.h"

#include "geometry/limits.h"
#include "support/check_mm.h"

#include <cmath>
#include <doctest/doctest.h>
#include <limits>
#include <numbers>

using namespace baywright::geometry;
using baywright::test::check_mm;

namespace {

constexpr double no_number = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();
const Outline square{{0, 0}, {10, 0}, {10, 10}, {0, 10}};

Outline square_at(double x, double y, double side) {
  return {{x, y}, {x + side, y}, {x + side, y + side}, {x, y + side}};
}

std::string reason(const std::variant<Solid, Refusal>& made) {
  const auto* refusal = std::get_if<Refusal>(&made);
  return refusal ? refusal->reason : "not refused";
}

void check_refused(const std::variant<Solid, Refusal>& made, std::initializer_list<const char*> words) {
  const std::string why = reason(made);
  CAPTURE(why);
  for (const char* word : words) {
    CAPTURE(word);
    CHECK(why.find(word) != std::string::npos);
  }
}

}  // namespace

TEST_CASE("a box is one convex piece and keeps its outline") {
  const Solid box = std::get<Solid>(Solid::box({30, 20, 5}));
  CHECK(box.convex());
  CHECK(box.volume() == 3000.0);
  CHECK(box.outline() == Outline{{0, 0}, {30, 0}, {30, 20}, {0, 20}});
  CHECK(box.pieces().front().corners == box.outline());
  CHECK(box.height() == 5.0);
  CHECK(box.diameter() == 0.0);
}

TEST_CASE("cylinders, solid and hollow") {
  const Solid pin = std::get<Solid>(Solid::cylinder(4, 0, 10));
  CHECK(pin.convex());
  check_mm(pin.volume(), 40 * std::numbers::pi, 1e-13);
  const Solid spacer = std::get<Solid>(Solid::cylinder(6, 4, 10));
  CHECK_FALSE(spacer.convex());
  CHECK(spacer.pieces().front().base == Piece::Base::ring);
  CHECK(spacer.pieces().front().bore == 2.0);
  check_mm(spacer.volume(), 50 * std::numbers::pi, 1e-13);
}

TEST_CASE("either sense and a closing point are accepted") {
  const Outline closed_clockwise{{0, 0}, {0, 2}, {3, 2}, {3, 0}, {0, 0}};
  const Outline hole{{1, 0.5}, {2, 0.5}, {2, 1}, {1, 1}, {1, 0.5}};
  const Solid solid = std::get<Solid>(Solid::prism(closed_clockwise, {hole}, 2));
  CHECK(solid.outline() == Outline{{3, 0}, {3, 2}, {0, 2}, {0, 0}});
  CHECK(solid.holes().front() == Outline{{1, 1}, {2, 1}, {2, 0.5}, {1, 0.5}});
  CHECK(solid.volume() == 11.0);
}

TEST_CASE("corners on a line stay in the outline and leave the piece") {
  const Solid solid = std::get<Solid>(Solid::prism({{0, 0}, {5, 0}, {10, 0}, {10, 4}, {3, 4}, {0, 4}}, {}, 1));
  CHECK(solid.convex());
  CHECK(solid.outline().size() == 6);
  CHECK(solid.pieces().front().corners.size() == 4);
}

TEST_CASE("bounds of a turned solid are those of its corners") {
  const Solid ell = std::get<Solid>(Solid::prism({{0, 0}, {6, 0}, {6, 2}, {2, 2}, {2, 6}, {0, 6}}, {}, 3));
  REQUIRE(ell.pieces().size() == 2);
  // A quarter turn about x takes (x, y, z) to (x, -z, y).
  const Bounds turned = bounds(Placed{ell, {rotation({1, 0, 0}, 90), {1, 1, 1}}});
  CHECK(turned.low == Vec3{1, -2, 1});
  CHECK(turned.high == Vec3{7, 1, 7});
  // By 45 degrees about z the tips (0, 6) and (6, 0) reach -6 / sqrt(2) and 6 / sqrt(2), (6, 2) and (2, 6) 8 / sqrt(2).
  const Bounds slanted = bounds(Placed{ell, {rotation({0, 0, 1}, 45), {0, 0, 0}}});
  check_mm(slanted.low, {-6 / std::sqrt(2.0), 0, 0}, 1e-12);
  check_mm(slanted.high, {6 / std::sqrt(2.0), 8 / std::sqrt(2.0), 3}, 1e-12);
}

TEST_CASE("sizes that are refused") {
  check_refused(Solid::box({1, 0, 1}), {"size along y", "0 mm", "no thickness"});
  check_refused(Solid::box({1, 1, -3}), {"size along z", "-3 mm"});
  check_refused(Solid::box({no_number, 1, 1}), {"size along x", "not a number"});
  check_refused(Solid::box({1e308, 1, 1}), {"size along x", "1e+308", "more than"});
  check_refused(Solid::box({1, infinity, 1}), {"size along y", "more than"});
  check_refused(Solid::box({1, 1, 0.9e-6}), {"no thickness"});
  check_refused(Solid::prism(square, {}, -1), {"height", "-1 mm"});
  check_refused(Solid::prism(square, {}, no_number), {"height", "not a number"});
  check_refused(Solid::cylinder(0, 0, 1), {"diameter"});
  check_refused(Solid::cylinder(5, no_number, 1), {"bore", "not a number"});
  check_refused(Solid::cylinder(5, -1, 1), {"bore", "-1 mm"});
  check_refused(Solid::cylinder(5, 5, 1), {"no wall", "5 mm"});
  check_refused(Solid::cylinder(5, 7, 1), {"no wall"});
  check_refused(Solid::cylinder(5, 4.999999, 1), {"no wall"});  // half of 1e-6 on each side
  check_refused(Solid::cylinder(5, 1, 1e308), {"height"});
  CHECK(std::holds_alternative<Solid>(Solid::box({largest_mm, thinnest_mm, 1})));
}

TEST_CASE("outlines that are refused") {
  check_refused(Solid::prism({}, {}, 1), {"outline", "0 corners", "at least 3"});
  check_refused(Solid::prism({{0, 0}, {1, 0}, {0, 0}}, {}, 1), {"2 corners"});
  check_refused(Solid::prism({{0, 0}, {5, 0}, {9, 0}, {3, 0}}, {}, 1), {"no area", "one line"});
  check_refused(Solid::prism({{0, 0}, {5, 5e-8}, {9, 0}}, {}, 1), {"no area"});
  check_refused(Solid::prism({{0, 0}, {1, 0}, {no_number, 1}}, {}, 1), {"corner 3", "nan"});
  check_refused(Solid::prism({{0, 0}, {1e308, 0}, {1, 1}}, {}, 1), {"corner 2", "1e+308", "100000"});
  check_refused(Solid::prism({{0, -infinity}, {1, 0}, {1, 1}}, {}, 1), {"corner 1", "-inf"});
  check_refused(Solid::prism({{-6e4, 0}, {6e4, 0}, {0, 5}}, {}, 1), {"measures 120000 x 5"});
  check_refused(Solid::prism({{0, 0}, {4, 0}, {4, 3}, {4, 3}, {0, 3}}, {}, 1), {"side 3", "shorter", "(4.00, 3.00)"});
  check_refused(Solid::prism({{0, 0}, {4, 0}, {4, 3}, {4, 3.0000005}, {0, 4}}, {}, 1), {"side 3", "corners 3 and 4"});
  // A bow tie whose halves are equal, so that its signed area is 0, not its width.
  check_refused(Solid::prism({{0, 0}, {6, 9}, {6, 0}, {0, 9}}, {}, 1), {"crosses itself", "(3.00, 4.50)"});
  // A corner on another side, a corner on another corner, a side along another side, a side that folds back.
  check_refused(Solid::prism({{0, 0}, {8, 0}, {8, 4}, {4, 0}, {0, 4}}, {}, 1), {"touches itself", "(4.00, 0.00)"});
  check_refused(Solid::prism({{0, 0}, {2, 2}, {4, 0}, {4, 4}, {2, 2}, {0, 4}}, {}, 1),
                {"touches itself", "(2.00, 2.00)"});
  check_refused(Solid::prism({{0, 0}, {9, 0}, {9, 2}, {6, 2}, {6, 0}, {3, 0}, {3, 2}, {0, 2}}, {}, 1),
                {"touches itself"});
  check_refused(Solid::prism({{0, 0}, {9, 0}, {5, 0}, {5, 5}, {0, 5}}, {}, 1), {"touches itself"});
  // A slot that leaves a wall of 1e-7 mm.
  check_refused(Solid::prism({{0, 0}, {8, 0}, {8, 4}, {5, 4}, {5, 1e-7}, {3, 1e-7}, {3, 4}, {0, 4}}, {}, 1),
                {"touches itself"});
}

TEST_CASE("holes that are refused") {
  const auto with = [](std::vector<Outline> holes) { return Solid::prism(square, std::move(holes), 1); };
  check_refused(with({square_at(2, 2, 1), square_at(8, 8, 4)}), {"hole 2", "crosses the outline"});
  check_refused(with({square_at(0, 2, 1)}), {"hole 1", "touches the outline"});
  check_refused(with({{{1, 1}, {10, 5}, {1, 9}}}), {"hole 1", "touches the outline", "(10.00, 5.00)"});
  check_refused(with({square_at(20, 2, 1)}), {"hole 1", "outside the outline"});
  check_refused(with({square_at(-5, -5, 30)}), {"hole 1", "outside the outline"});
  check_refused(with({square_at(1, 1, 4), square_at(3, 3, 4)}), {"hole 2", "crosses hole 1"});
  check_refused(with({square_at(1, 1, 2), square_at(3, 1, 2)}), {"hole 2", "touches hole 1"});
  check_refused(with({square_at(1, 1, 4), square_at(2, 2, 1)}), {"hole 2", "within hole 1"});
  check_refused(with({square_at(2, 2, 1), square_at(1, 1, 4)}), {"hole 1", "within hole 2"});
  check_refused(with({square_at(2, 2, 1), square_at(2, 2, 1)}), {"hole 2", "touches hole 1"});
  check_refused(with({square}), {"hole 1", "touches the outline"});
  check_refused(with({{{1, 1}, {2, 1}}}), {"hole 1", "2 corners"});
  check_refused(with({{{1, 1}, {4, 4}, {4, 1}, {1, 4}}}), {"hole 1", "crosses itself", "(2.50, 2.50)"});
  check_refused(with({{{1, 1}, {4, 1}, {4, no_number}}}), {"hole 1", "corner 3", "nan"});
  CHECK(std::holds_alternative<Solid>(with({square_at(1e-5, 1e-5, 1), square_at(1.00002, 1e-5, 1)})));
}
