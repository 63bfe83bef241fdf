// The share of builds by drawing them: against closed forms, against integration, and against the chains that explain
// prints.
#include "fit/sampling.h"

#include "build/build.h"
#include "fit/clearance.h"
#include "fit/connect.h"
#include "fit/replay.h"
#include "fit/seat.h"
#include "geometry/gap.h"
#include "support/check_mm.h"
#include "tolerance/draw.h"
#include "tolerance/proportion.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <filesystem>
#include <initializer_list>
#include <limits>
#include <numbers>
#include <random>

namespace {

using namespace baywright;
using tolerance::Dimension;
using tolerance::Method;

build::Build demo(const std::string& name) {
  auto read = build::read(std::string(BAYWRIGHT_SOURCE) + "/models/builds/" + name + ".build.toml");
  REQUIRE(std::holds_alternative<build::Build>(read));
  return std::get<build::Build>(std::move(read));
}

fit::Options sampled(std::int64_t builds, std::uint64_t seed = 1, int threads = 2) {
  fit::Options options;
  options.method = Method::sampled;
  options.sampling = {builds, seed};
  options.threads = threads;
  return options;
}

Dimension about_zero(const std::string& name, double half, bool uniform) {
  return {.name = name, .nominal = 0.0, .minus = half, .plus = half, .source = "", .uniform = uniform};
}

fit::AskedGap sum(double base, std::vector<std::pair<int, double>> terms) {
  fit::AskedGap gap;
  gap.sum = fit::Sum{base, std::move(terms), 0.0, {}};
  return gap;
}

void check_holds(const fit::Sampled& got, double want) {
  CAPTURE(got.fit);
  CAPTURE(want);
  const auto sure = tolerance::sure_to_95(got.fit, got.builds);
  CHECK(sure.low <= want);
  CHECK(want <= sure.high);
  CHECK(got.unsettled == 0);
}

double normal_share(double z) {
  return 0.5 * std::erfc(-z / std::numbers::sqrt2);
}
double cut_normal_share(double x) {
  const double below = normal_share(-3.0);
  return std::clamp((normal_share(3.0 * x) - below) / (1.0 - 2.0 * below), 0.0, 1.0);
}

}  // namespace

TEST_CASE("the same answer bit for bit on one, two, three and seven threads") {
  const build::Build build = demo("thin-desktop");
  const fit::Check one = fit::check(build, sampled(10'001, 5, 1));
  for (const int threads : {2, 3, 7}) {
    CAPTURE(threads);
    const fit::Check other = fit::check(build, sampled(10'001, 5, threads));
    int drawn = 0;
    for (std::size_t i = 0; i < one.seatings.size(); ++i) {
      CHECK(one.seatings[i].share == other.seatings[i].share);
      REQUIRE(one.seatings[i].findings.size() == other.seatings[i].findings.size());
      for (std::size_t k = 0; k < one.seatings[i].findings.size(); ++k) {
        const fit::Finding& a = one.seatings[i].findings[k];
        const fit::Finding& b = other.seatings[i].findings[k];
        if (!a.gap) continue;
        drawn += a.drawn ? 1 : 0;
        CHECK(a.gap->min == b.gap->min);
        CHECK(a.gap->max == b.gap->max);
        CHECK(a.share == b.share);
      }
    }
    CHECK(drawn >= 10);
  }
  CHECK(fit::check(build, sampled(10'001, 6, 1)).seatings[1].share != one.seatings[1].share);
}

TEST_CASE("uniform terms: the Irwin-Hall sum lies in the interval") {
  // P(sum of three uniform on [-1, 1] >= -1) = 1 - P(sum of three on [0, 1] < 1) = 1 - 1/6 (Irwin 1927, Hall 1927).
  fit::Trial trial;
  for (const char* name : {"a", "b", "c"}) trial.dimensions.push_back(about_zero(name, 1.0, true));
  trial.gaps = {sum(1.0, {{0, 1.0}, {1, -1.0}, {2, 1.0}})};
  check_holds(fit::sample(trial, sampled(200'000)), 5.0 / 6.0);
}

TEST_CASE("one normal term: its own distribution, and its limits at three sigma less what the cut takes") {
  fit::Trial trial;
  trial.dimensions = {about_zero("a", 0.3, false)};
  trial.gaps = {sum(0.1, {{0, 2.0}})};  // 0.1 + 2 a >= 0 as a >= -0.05
  const fit::Sampled got = fit::sample(trial, sampled(200'000));
  check_holds(got, 1.0 - cut_normal_share(-0.05 / 0.3));
  // The 0.135 % point of the cut normal: P(x) = 0.00135. Its density there is 3 f(2.78) / 0.9973 = 0.0248 a unit of x;
  // 270 of 200,000 builds place it to sqrt(270) / 200000 / 0.0248 = 0.0033 (one sigma).
  double low = -1.0;
  double high = 0.0;
  for (int i = 0; i < 60; ++i) {
    const double middle = 0.5 * (low + high);
    (cut_normal_share(middle) < 0.00135 ? low : high) = middle;
  }
  test::check_mm(got.gaps[0].low, 0.1 + 0.6 * low, 4.0 * 0.0033 * 0.6);
  test::check_mm(got.gaps[0].high, 0.1 - 0.6 * low, 4.0 * 0.0033 * 0.6);
}

TEST_CASE("gaps that share a dimension fit together as often as the harder of them, not as the product") {
  fit::Trial trial;
  trial.dimensions = {about_zero("a", 1.0, true), about_zero("b", 1.0, true)};
  // Each alone in half of the builds. The same dimension, the same way: together in half; against each other: in none.
  trial.gaps = {sum(0.0, {{0, 1.0}}), sum(0.0, {{0, 2.0}})};
  check_holds(fit::sample(trial, sampled(100'000)), 0.5);
  trial.gaps = {sum(0.0, {{0, 1.0}}), sum(0.0, {{0, -1.0}})};
  CHECK(fit::sample(trial, sampled(100'000)).fit == 0);
  // Two dimensions: the product.
  trial.gaps = {sum(0.0, {{0, 1.0}}), sum(0.0, {{1, 1.0}})};
  check_holds(fit::sample(trial, sampled(100'000)), 0.25);
}

TEST_CASE("holes that may be off either way miss on both sides") {
  // Play 0.5, off uniform on [-1, 1]: |off| <= 0.5 in half of the builds.
  fit::Trial trial;
  trial.dimensions = {about_zero("off", 1.0, true)};
  fit::AskedGap gap;
  gap.sum = fit::Sum{0.5, {}, 0.0, {{0, 1.0}}};
  trial.gaps = {gap};
  check_holds(fit::sample(trial, sampled(100'000)), 0.5);
}

TEST_CASE("the 95 % interval holds the true share in about 95 of 100 runs") {
  fit::Trial trial;
  trial.dimensions = {about_zero("a", 1.0, true), about_zero("b", 1.0, true)};
  trial.gaps = {sum(1.2, {{0, 1.0}, {1, 1.0}})};
  const double want = 1.0 - 0.8 * 0.8 / 8.0;  // the triangle below -1.2
  int held = 0;
  for (std::uint64_t seed = 1; seed <= 200; ++seed) {
    const fit::Sampled got = fit::sample(trial, sampled(3'000, seed, 1));
    const auto sure = tolerance::sure_to_95(got.fit, got.builds);
    held += sure.low <= want && want <= sure.high ? 1 : 0;
  }
  CHECK(held >= 180);
  CHECK(held <= 198);
}

TEST_CASE("a plate that only tilts: the true geometry against integration") {
  // A plate 80 long and 2 thick turns about its near lower edge by atan(h / 80) under a ceiling at 3. Its highest
  // corner stands at 80 sin + 2 cos for h >= 0, else at 2 cos.
  fit::Scene scene;
  const int h = scene.add(about_zero("h", 1.5, false));
  fit::Frame frame;
  frame.go(scene.values, [h](const geometry::Pose& before, std::span<const double> values) -> geometry::Pose {
    const double angle = std::atan(values[static_cast<std::size_t>(h)] / 80.0) * 180.0 / std::numbers::pi;
    return {before.turn * geometry::rotation({1, 0, 0}, angle), before.shift};
  });
  frame.motions.push_back(fit::rigid(h, {0, 0, 0}, {1.0 / 80.0, 0, 0}, {0, 0, 0}));
  parts::Part plate;
  plate.bodies = {parts::box_body("plate", {0.0, 0.0, 0.0}, {20.0, 80.0, 2.0})};
  parts::Part ceiling;
  ceiling.bodies = {parts::box_body("ceiling", {-50.0, -50.0, 3.0}, {150.0, 150.0, 4.0})};
  const int a = fit::put(scene, frame, plate, 0, "plate");
  const int b = fit::put(scene, {}, ceiling, 0, "ceiling");
  const double asked = 0.4;
  fit::Trial trial;
  trial.scene = &scene;
  trial.dimensions = scene.dimensions;
  trial.gaps.push_back({{{a, b, asked, 0.0, 0.0, false}}, std::nullopt});
  // By the midpoint rule over the density.
  double want = 0.0;
  constexpr int steps = 200'000;
  for (int i = 0; i < steps; ++i) {
    const double from = -1.0 + 2.0 * i / steps;
    const double to = -1.0 + 2.0 * (i + 1) / steps;
    const double angle = std::atan(1.5 * 0.5 * (from + to) / 80.0);
    const double top = std::max(0.0, 80.0 * std::sin(angle)) + 2.0 * std::cos(angle);
    if (3.0 - top >= asked) want += cut_normal_share(to) - cut_normal_share(from);
  }
  check_holds(fit::sample(trial, sampled(100'000)), want);
  CHECK(want > 0.5);  // the half that tilts away always fits
  CHECK(want < 0.95);
}

struct Met {
  int gaps = 0;
  int overlaps = 0;
};

/// Every drive of the build at every place, put anew at values drawn within the limits, and seated anew at these.
void check_put_anew(const build::Build& build, std::mt19937& random, Met& met) {
  const fit::Host host = fit::compile(build);
  for (const build::Drive& drive : build.drives)
    for (std::size_t place = 0; place < build.places.size(); ++place) {
      const int at = static_cast<int>(place);
      if (build.places[place].holds >= 0) continue;
      if (!fit::seats(drive, fit::connect(drive, build.places[place]).questions)) continue;
      const fit::Seated seated = fit::seat(host, build, drive, at);
      std::vector<fit::Near> near;
      (void)fit::clearances(host, build, seated, drive, {}, &near);
      std::vector<int> all;
      for (int i = 0; i < seated.scene.element_count(); ++i) all.push_back(i);
      fit::Replay replay(seated.scene, all);
      for (int repeat = 0; repeat < 2; ++repeat) {
        std::vector<double> values = seated.scene.values;
        for (const fit::Near& pair : near)
          for (const int index : {pair.a, pair.b})
            for (const fit::Motion& motion : seated.scene.element(index).motions) {
              const Dimension& d = seated.scene.dimension(motion.dimension);
              const double chance = (static_cast<double>(random()) + 0.5) / 4294967296.0;
              if (!d.open()) values[static_cast<std::size_t>(motion.dimension)] = tolerance::drawn(d, chance);
            }
        replay.put(values);
        const fit::Host there = fit::compile(build, values);
        const fit::Seated anew = fit::seat(there, build, drive, at, values);
        REQUIRE(anew.scene.element_count() == seated.scene.element_count());
        for (const fit::Near& pair : near) {
          const fit::Element& one = anew.scene.element(pair.a);
          const fit::Element& other = anew.scene.element(pair.b);
          if (one.placed.solid.mesh() != nullptr || other.placed.solid.mesh() != nullptr) continue;
          double want = std::numeric_limits<double>::infinity();
          for (const geometry::Piece& p : one.placed.solid.pieces())
            for (const geometry::Piece& q : other.placed.solid.pieces())
              want = std::min(want, geometry::gap(p, one.placed.pose, q, other.placed.pose).mm);
          CAPTURE(one.part);
          CAPTURE(one.body);
          CAPTURE(other.part);
          CAPTURE(other.body);
          const fit::Measured got = replay.gap(pair.a, pair.b);
          // Where an outline is cut into other pieces the deepest one differs: an overlap is one all the same.
          if (want < 0.0)
            CHECK(got.mm < 0.0);
          else
            test::check_mm(got.mm, want, 1e-9);
          met.overlaps += want < 0.0 ? 1 : 0;
          ++met.gaps;
        }
      }
    }
}

TEST_CASE("what is put anew stands where seating the whole build puts it") {
  std::mt19937 random(7);
  Met met;
  for (const auto& entry : std::filesystem::directory_iterator(std::string(BAYWRIGHT_SOURCE) + "/models/builds")) {
    const std::string file = entry.path().filename();
    if (!file.ends_with(".build.toml")) continue;
    CAPTURE(file);
    check_put_anew(demo(file.substr(0, file.size() - 11)), random, met);
  }
  CHECK(met.gaps >= 500);
  CHECK(met.overlaps >= 4);
}

// The spacers of what sits there already stood as high as they nominally are, whatever was drawn.
TEST_CASE("spacers under a drive that a place holds are put anew as high as they are drawn") {
  const auto read = build::read_text(R"(title = "two on a panel"
[[part]]
name = "panel"
solid = { plate = [200, 220, 1.5] }
[[panel]]
name = "taken"
on = { part = "panel", at = [40, 60], toward = "+x" }
takes = "2.5in"
spacers = "5.0 ±0.4"
bus = "sata 6"
holds = { name = "old drive", use = "2.5in/7" }
fixing = { holes = [[14, -30.86], [14, 30.86], [90.6, -30.86], [90.6, 30.86]], diameter = 3.4, screw = "M3", length = 8, sheet = 1.5 }
[[panel]]
name = "beside"
on = { part = "panel", at = [40, 130.5], toward = "+x" }
takes = "2.5in"
spacers = "8.0 ±0.4"
bus = "sata 6"
fixing = { holes = [[14, -30.86], [14, 30.86], [90.6, -30.86], [90.6, 30.86]], diameter = 3.4, screw = "M3", length = 12, sheet = 1.5 }
[[drive]]
name = "new drive"
use = "2.5in/7"
bus = "sata 6"
)",
                                     "two.build.toml");
  REQUIRE(std::holds_alternative<build::Build>(read));
  std::mt19937 random(8);
  Met met;
  for (int i = 0; i < 20; ++i) check_put_anew(std::get<build::Build>(read), random, met);
  CHECK(met.gaps >= 20);
}

TEST_CASE("the share of a single gap agrees with the convolution of its chain") {
  const build::Build build = demo("thin-desktop");
  fit::Options worst;
  worst.drive = "card with low fins";
  fit::Options drawn = sampled(200'000);
  drawn.drive = worst.drive;
  const fit::Seating chain = fit::check(build, worst).seatings[0];
  const fit::Seating got = fit::check(build, drawn).seatings[0];
  REQUIRE(got.sure.has_value());
  REQUIRE(got.sure->low < got.sure->high);
  // The chain is linear; the tilt's second order is worth 0.002 mm at the most, at a density of 0.3 builds a mm there.
  CHECK(*chain.share > got.sure->low - 0.001);
  CHECK(*chain.share < got.sure->high + 0.001);
  CHECK(*chain.share < 0.999);
}

TEST_CASE("each dimension's share of the variation, drawn, is what its sensitivity says") {
  const build::Build build = demo("thin-desktop");
  const build::Drive& drive = build.drives[1];
  const fit::Host host = fit::compile(build);
  const fit::Seated seated = fit::seat(host, build, drive, 0);
  std::vector<fit::Near> near;
  (void)fit::clearances(host, build, seated, drive, {}, &near);
  std::erase_if(near, [&](const fit::Near& pair) {
    return seated.scene.element(pair.a).part != "low fin heatsink" || seated.scene.element(pair.b).part != "tray";
  });
  REQUIRE(near.size() == 9);  // its fins
  const fit::GapLimits chain =
      fit::limits(seated.scene, seated.scene.element(near[0].a), seated.scene.element(near[0].b), Method::worst);
  std::vector<int> elements;
  for (const fit::Near& pair : near) elements.push_back(pair.a);
  elements.push_back(near[0].b);
  fit::Replay replay(seated.scene, elements);
  constexpr int builds = 20'000;
  std::vector<double> gaps;
  std::vector<std::vector<double>> drawn(chain.terms.size());
  for (int i = 0; i < builds; ++i) {
    std::vector<double> values = seated.scene.values;
    for (std::size_t k = 0; k < values.size(); ++k) {
      const Dimension& d = seated.scene.dimension(static_cast<int>(k));
      const auto chances = tolerance::chances(9, static_cast<std::uint64_t>(i), static_cast<std::uint32_t>(k / 2));
      if (!d.open()) values[k] = tolerance::drawn(d, chances[k % 2]);
    }
    replay.put(values);
    double least = std::numeric_limits<double>::infinity();
    for (int fin = 0; fin < 9; ++fin) least = std::min(least, replay.gap(fin, 9).mm);
    gaps.push_back(least);
    for (std::size_t t = 0; t < chain.terms.size(); ++t)
      drawn[t].push_back(values[static_cast<std::size_t>(chain.terms[t].first)]);
  }
  const auto mean = [](const std::vector<double>& x) {
    double total = 0.0;
    for (const double each : x) total += each / builds;
    return total;
  };
  const auto product = [&](const std::vector<double>& x, const std::vector<double>& y) {
    const double middle_x = mean(x);
    const double middle_y = mean(y);
    double total = 0.0;
    for (std::size_t i = 0; i < x.size(); ++i) total += (x[i] - middle_x) * (y[i] - middle_y) / builds;
    return total;
  };
  // A taller stand-off brings the far end of the fins to the tray, a lower one the near end: the chain has the far one,
  // which decides at worst, and the line through both halves has the middle.
  const parts::Body& fin = *seated.scene.element(near[0].a).made_from;
  const double length = fin.high[1].at(seated.scene.values) - fin.low[1].at(seated.scene.values);
  std::vector<double> slopes;
  int bent = 0;
  for (const auto& [dimension, sensitivity] : chain.terms) {
    const bool tilts = seated.scene.dimension(dimension).name == "stand-off height";
    bent += tilts ? 1 : 0;
    slopes.push_back(tilts ? sensitivity + 0.5 * length / seated.length : sensitivity);
  }
  CHECK(bent == 1);
  double whole = 0.0;
  for (std::size_t t = 0; t < slopes.size(); ++t)
    whole += slopes[t] * slopes[t] * tolerance::variance(seated.scene.dimension(chain.terms[t].first));
  const double variation = product(gaps, gaps);
  CHECK(std::abs(variation / whole - 1.0) < 5.0 * std::sqrt(2.0 / builds));
  for (std::size_t t = 0; t < slopes.size(); ++t) {
    const Dimension& d = seated.scene.dimension(chain.terms[t].first);
    CAPTURE(d.name);
    const double share = slopes[t] * slopes[t] * tolerance::variance(d) / whole;
    // A correlation r of n pairs is known to (1 - r^2) / sqrt(n), its square to 2 r times that; a slope to the root of
    // what is left of the variation over n and the dimension's own.
    const double r = product(gaps, drawn[t]) / std::sqrt(variation * product(drawn[t], drawn[t]));
    CHECK(std::abs(r * r - share) < 5.0 * (2.0 * std::sqrt(share) + 0.01) * (1.0 - share) / std::sqrt(builds));
    const double slope = product(gaps, drawn[t]) / product(drawn[t], drawn[t]);
    CHECK(std::abs(slope - slopes[t]) < 5.0 * std::sqrt(whole * (1.0 - share) / tolerance::variance(d) / builds));
  }
}

TEST_CASE("an open side leaves the share unknown, and too few builds leave the limits worst case") {
  auto text = build::read_text(R"(title = "open"
clearance = 0.5
[[part]]
name = "board"
use = "board/mini-itx"
[[part]]
name = "tray"
solid = { plate = [150, 120, 1.2] }
under = { part = "board", by = "max 9.5" }
removable = true
[[slot]]
name = "slot"
on = { part = "board", face = "back", at = [45.0, -70.0], toward = "+x" }
socket = "m2/M/H4.2"
lengths = [2280]
bus = "pcie 4.0 x4"
[[drive]]
name = "card"
use = "m2/2280-S3-M"
bus = "pcie 4.0 x4"
wears = [ { pad = "1.0 ±0.1", compress = "30 %" }, { heatsink = "fin-heatsink-3", name = "fins" } ]
)",
                               "open.build.toml");
  REQUIRE(std::holds_alternative<build::Build>(text));
  const fit::Seating open = fit::check(std::get<build::Build>(text), sampled(5'000)).seatings[0];
  CHECK(open.verdict == fit::Verdict::marginal);
  CHECK_FALSE(open.share.has_value());
  CHECK_FALSE(open.sure.has_value());

  const build::Build build = demo("thin-desktop");
  const fit::Seating few = fit::check(build, sampled(100)).seatings[1];
  const fit::Seating worst = fit::check(build, {}).seatings[1];
  REQUIRE(few.deciding.has_value());
  CHECK(few.findings[*few.deciding].gap->min == worst.findings[*worst.deciding].gap->min);
  CHECK_FALSE(few.findings[*few.deciding].drawn);
  CHECK(few.sure->high - few.sure->low > 0.01);
}
