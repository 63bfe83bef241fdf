// Limits of gaps against brute force: every corner of all dimension limits, each seated anew with its true pose (tilt
// included) and measured. By construction; no outside source is needed for it.
#include "fit/limits.h"

#include "build/build.h"
#include "fit/check.h"
#include "fit/connect.h"
#include "fit/seat.h"
#include "geometry/gap.h"
#include "support/check_mm.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <limits>

namespace {

using namespace baywright;
using fit::Element;
using geometry::Gap;

build::Build demo(const std::string& name) {
  auto read = build::read(std::string(BAYWRIGHT_SOURCE) + "/models/builds/" + name + ".build.toml");
  REQUIRE(std::holds_alternative<build::Build>(read));
  return std::get<build::Build>(std::move(read));
}

/// The gap between the least pieces of two elements, at given values of all dimensions.
Gap measured(const build::Build& build, const build::Drive& drive, int slot, int a, int b,
             const std::vector<double>& values) {
  const fit::Host host = fit::compile(build, values);
  const fit::Seated seated = fit::seat(host, build, drive, slot, values);
  const Element& one = seated.scene.element(a);
  const Element& other = seated.scene.element(b);
  Gap least;
  least.mm = std::numeric_limits<double>::infinity();
  for (const geometry::Piece& p : one.placed.solid.pieces())
    for (const geometry::Piece& q : other.placed.solid.pieces()) {
      const Gap gap = geometry::gap(p, one.placed.pose, q, other.placed.pose);
      if (gap.mm < least.mm) least = gap;
    }
  return least;
}

// Chains are linear in their dimensions. What they leave out is the product of two variations: a side that is 0.075
// wider on a card that is turned by 0.53 in 42 stands 0.0009 farther out.
constexpr double second_order = 2e-3;  // mm

struct Tally {
  int pairs = 0;
  int tilting = 0;  // pairs whose gap depends on the stand-off, in part
  int overlapping = 0;
};

void hold_pair(const build::Build& build, const build::Drive& drive, int slot, const fit::Seated& seated, int a, int b,
               Tally& tally) {
  const fit::Scene& scene = seated.scene;
  const fit::GapLimits found = fit::limits(scene, scene.element(a), scene.element(b), tolerance::Method::worst);
  if (found.min > 3.0) return;
  CAPTURE(scene.element(a).part);
  CAPTURE(scene.element(a).body);
  CAPTURE(scene.element(b).part);
  CAPTURE(scene.element(b).body);
  // Every dimension that moves either, at both ends; an open side stays at its nominal value.
  std::vector<int> moving;
  for (const auto* element : {&scene.element(a), &scene.element(b)})
    for (const fit::Motion& motion : element->motions) {
      const tolerance::Dimension& d = scene.dimension(motion.dimension);
      const bool moves = (d.minus > 0.0 && std::isfinite(d.minus)) || (d.plus > 0.0 && std::isfinite(d.plus));
      if (moves && std::find(moving.begin(), moving.end(), motion.dimension) == moving.end())
        moving.push_back(motion.dimension);
    }
  // Corners that do not touch the gap to first order are left at nominal where the list is long.
  if (moving.size() > 11) {
    std::erase_if(moving, [&](int d) {
      return std::none_of(found.terms.begin(), found.terms.end(), [d](const auto& term) { return term.first == d; });
    });
  }
  REQUIRE(moving.size() <= 12);
  double least = std::numeric_limits<double>::infinity();
  double most = -std::numeric_limits<double>::infinity();
  for (unsigned corner = 0; corner < (1u << moving.size()); ++corner) {
    std::vector<double> values = scene.values;
    for (std::size_t i = 0; i < moving.size(); ++i) {
      const tolerance::Dimension& d = scene.dimension(moving[i]);
      const double side = (corner >> i & 1u) != 0 ? d.plus : -d.minus;
      if (std::isfinite(side)) values[static_cast<std::size_t>(moving[i])] += side;
    }
    const double gap = measured(build, drive, slot, a, b, values).mm;
    least = std::min(least, gap);
    most = std::max(most, gap);
  }
  CHECK(least >= found.min - second_order);  // safe: nothing comes closer
  CHECK(most <= found.max + second_order);
  // And sharp where the two face each other; a diagonal gap is only bounded.
  const bool facing = std::abs(measured(build, drive, slot, a, b, scene.values).mm - found.nominal) < 1e-9;
  const geometry::Vec3 n = found.direction;
  const bool square = std::max({std::abs(n.x), std::abs(n.y), std::abs(n.z)}) > 1.0 - 1e-9;
  if (facing && square) test::check_mm(found.min, least, second_order);
  ++tally.pairs;
  if (found.min < 0.0) ++tally.overlapping;
  for (const auto& [dimension, sensitivity] : found.terms)
    if (scene.dimension(dimension).name == "stand-off height" && std::abs(sensitivity) > 0.1 &&
        std::abs(sensitivity) < 0.999)
      ++tally.tilting;
}

void hold_build(const build::Build& build, Tally& tally) {
  const fit::Host host = fit::compile(build);
  for (const build::Drive& drive : build.drives)
    for (std::size_t slot = 0; slot < build.places.size(); ++slot) {
      const int at = static_cast<int>(slot);
      if (!fit::seats(drive, fit::connect(drive, build.places[slot]).questions)) continue;
      const fit::Seated seated = fit::seat(host, build, drive, at);
      for (int a = seated.scene.first_element(); a < seated.scene.element_count(); ++a)
        for (int b = 0; b < seated.scene.first_element(); ++b)
          if (!seated.mates.contains({b, a})) hold_pair(build, drive, at, seated, a, b, tally);
    }
}

TEST_CASE("limits of every near gap of the thin desktop equal brute force over all corners") {
  Tally tally;
  hold_build(demo("thin-desktop"), tally);
  CHECK(tally.pairs >= 20);
  CHECK(tally.tilting >= 10);
  CHECK(tally.overlapping >= 1);
}

TEST_CASE("limits of every near gap of the laptop equal brute force over all corners") {
  Tally tally;
  hold_build(demo("laptop"), tally);
  CHECK(tally.pairs >= 10);
}

TEST_CASE("limits of every near gap of the tower equal brute force over all corners") {
  Tally tally;
  hold_build(demo("tower"), tally);
  CHECK(tally.pairs >= 8);
}

TEST_CASE("sensitivities equal finite differences of the true gap at the worst corner") {
  const build::Build build = demo("thin-desktop");
  const fit::Host host = fit::compile(build);
  int checked = 0;
  for (const build::Drive& drive : build.drives) {
    const fit::Seated seated = fit::seat(host, build, drive, 0);
    const fit::Scene& scene = seated.scene;
    const int tray = fit::find_element(host.scene, "tray", "tray");
    for (int a = scene.first_element(); a < scene.element_count(); ++a) {
      const fit::GapLimits found = fit::limits(scene, scene.element(a), scene.element(tray), tolerance::Method::worst);
      std::vector<double> worst = scene.values;
      for (const auto& [dimension, sensitivity] : found.terms) {
        const tolerance::Dimension& d = scene.dimension(dimension);
        const double side = sensitivity > 0.0 ? -d.minus : d.plus;
        if (std::isfinite(side)) worst[static_cast<std::size_t>(dimension)] += side;
      }
      for (const auto& [dimension, sensitivity] : found.terms) {
        constexpr double h = 1e-3;  // mm
        std::vector<double> up = worst;
        std::vector<double> down = worst;
        up[static_cast<std::size_t>(dimension)] += h;
        down[static_cast<std::size_t>(dimension)] -= h;
        const double slope =
            (measured(build, drive, 0, a, tray, up).mm - measured(build, drive, 0, a, tray, down).mm) / (2.0 * h);
        CAPTURE(scene.dimension(dimension).name);
        test::check_mm(sensitivity, slope, 5e-4);  // per mm; the rest is the second order of the tilt
        ++checked;
      }
    }
  }
  CHECK(checked >= 100);
}

TEST_CASE("root sum square is never wider than the worst case, for any near pair of the demos") {
  int checked = 0;
  for (const char* name : {"thin-desktop", "laptop", "tower"}) {
    const build::Build build = demo(name);
    const fit::Host host = fit::compile(build);
    for (const build::Drive& drive : build.drives) {
      if (!fit::seats(drive, fit::connect(drive, build.places[0]).questions)) continue;
      const fit::Seated seated = fit::seat(host, build, drive, 0);
      for (int a = seated.scene.first_element(); a < seated.scene.element_count(); ++a)
        for (int b = 0; b < seated.scene.first_element(); ++b) {
          const auto worst =
              fit::limits(seated.scene, seated.scene.element(a), seated.scene.element(b), tolerance::Method::worst);
          const auto rss =
              fit::limits(seated.scene, seated.scene.element(a), seated.scene.element(b), tolerance::Method::rss);
          CHECK(rss.min >= worst.min - 1e-9);
          ++checked;
        }
    }
  }
  CHECK(checked > 100);
}

}  // namespace
