#include "viewer/measurements.h"

#include "support/check_mm.h"

#include <doctest/doctest.h>
#include <variant>
#include <vector>

using namespace baywright;
using viewer::Measurements;

namespace {

/// The top of a block whose top is so high.
viewer::Picked top(double z) {
  auto made = geometry::Solid::box({10.0, 10.0, 2.0});
  auto* solid = std::get_if<geometry::Solid>(&made);
  REQUIRE(solid != nullptr);
  const geometry::Placed block{*solid, {geometry::Mat3(1.0), {-5.0, -5.0, z - 2.0}}};
  const auto found = viewer::pick(block, {{0.0, 0.0, z + 100.0}, {0.0, 0.0, -1.0}, 0.0}, 0.0);
  REQUIRE(found);
  return *found;
}

void measure(Measurements& to, double from, double until) {
  CHECK(to.pick(top(from), "lower"));
  CHECK(to.pick(top(until), "upper"));
}

std::vector<int> numbers(const Measurements& of) {
  std::vector<int> out;
  for (const auto& each : of.kept()) out.push_back(each.number);
  return out;
}

}  // namespace

TEST_CASE("three measurements are kept, each with its number, and cleared one by one") {
  Measurements all;
  measure(all, 0.0, 3.0);
  measure(all, 0.0, 5.0);
  CHECK(all.pick(top(1.0), "first of the third"));
  CHECK(all.first());
  CHECK(all.pick(top(8.0), "second of the third"));
  CHECK_FALSE(all.first());
  CHECK(numbers(all) == std::vector{1, 2, 3});
  CHECK(all.looked_at() == 3);
  test::check_mm(all.kept()[0].measurement.distance, 3.0, 1e-4);  // a face is a sheet of 2e-6 mm
  test::check_mm(all.kept()[2].measurement.distance, 7.0, 1e-4);
  CHECK(all.kept()[2].names[0] == "first of the third");
  CHECK_FALSE(all.pick(top(2.0), "one too many"));
  CHECK_FALSE(all.first());
  CHECK(numbers(all) == std::vector{1, 2, 3});

  all.clear(2);
  CHECK(numbers(all) == std::vector{1, 3});  // those that stay keep their numbers
  measure(all, 0.0, 6.0);
  CHECK(numbers(all) == std::vector{1, 2, 3});
  test::check_mm(all.kept()[1].measurement.distance, 6.0, 1e-4);
  all.back();  // the newest, whatever its number
  CHECK(numbers(all) == std::vector{1, 3});
  CHECK(all.looked_at() == 3);
  CHECK(all.pick(top(2.0), "begun"));
  all.back();  // what was begun goes first
  CHECK_FALSE(all.first());
  CHECK(numbers(all) == std::vector{1, 3});
  for (int i = 0; i < 3; ++i) all.back();
  CHECK(all.kept().empty());
  CHECK(all.looked_at() == 0);
  all.clear(7);
}
