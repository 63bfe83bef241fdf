// What is drawn: the generator against its authors' known answers, the inverse normal against erfc, the draws against
// their exact distributions.
#include "tolerance/draw.h"

#include "support/check_mm.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <doctest/doctest.h>
#include <numbers>
#include <vector>

using namespace baywright::tolerance;
using baywright::test::check_mm;

namespace {

constexpr int builds = 100'000;

Dimension dimension(double nominal, double minus, double plus, bool uniform) {
  return {.name = "any", .nominal = nominal, .minus = minus, .plus = plus, .source = "", .uniform = uniform};
}

std::vector<double> many(const Dimension& d, std::uint32_t pair, std::size_t which) {
  std::vector<double> values;
  for (int i = 0; i < builds; ++i) values.push_back(drawn(d, chances(1, static_cast<std::uint64_t>(i), pair)[which]));
  return values;
}

double normal_share(double z) {
  return 0.5 * std::erfc(-z / std::numbers::sqrt2);
}

/// The normal cut at -3 and 3, on [-1, 1].
double cut_normal_share(double x) {
  const double below = normal_share(-3.0);
  return std::clamp((normal_share(3.0 * x) - below) / (1.0 - 2.0 * below), 0.0, 1.0);
}

/// Kolmogorov's distance between what was drawn and a distribution.
template <typename Share>
double farthest_off(std::vector<double> values, const Share& share) {
  std::sort(values.begin(), values.end());
  double most = 0.0;
  const auto count = static_cast<double>(values.size());
  for (std::size_t i = 0; i < values.size(); ++i) {
    const double want = share(values[i]);
    most = std::max(
        {most, std::abs(want - static_cast<double>(i) / count), std::abs(want - static_cast<double>(i + 1) / count)});
  }
  return most;
}

// Kolmogorov: a distance of 1.95 / sqrt(n) is passed once in a thousand (exp(-2 x^2) twice, x = 1.95).
const double kolmogorov_limit = 1.95 / std::sqrt(static_cast<double>(builds));

}  // namespace

TEST_CASE("the generator gives its authors' known answers") {
  // Random123, tests/kat_vectors, philox4x32 with 10 rounds (as quoted in public test files of several libraries).
  using Four = std::array<std::uint32_t, 4>;
  CHECK(philox({0, 0, 0, 0}, {0, 0}) == Four{0x6627e8d5, 0xe169c58d, 0xbc57ac4c, 0x9b00dbd8});
  CHECK(philox({0xffffffff, 0xffffffff, 0xffffffff, 0xffffffff}, {0xffffffff, 0xffffffff}) ==
        Four{0x408f276d, 0x41c83b0e, 0xa20bc7c6, 0x6d5451fd});
  CHECK(philox({0x243f6a88, 0x85a308d3, 0x13198a2e, 0x03707344}, {0xa4093822, 0x299f31d0}) ==
        Four{0xd16cfe09, 0x94fdcceb, 0x5001e420, 0x24126ea1});
}

TEST_CASE("seed, build and pair each change what is drawn, and nothing else does") {
  const auto first = chances(1, 2, 3);
  CHECK(chances(1, 2, 3) == first);
  CHECK(chances(2, 2, 3) != first);
  CHECK(chances(1, 3, 3) != first);
  CHECK(chances(1, 2, 4) != first);
  CHECK(chances(1, std::uint64_t{2} + (std::uint64_t{1} << 32), 3) != first);
  CHECK(chances(std::uint64_t{1} + (std::uint64_t{1} << 32), 2, 3) != first);
  CHECK(first[0] != first[1]);
}

TEST_CASE("the inverse normal, put into the normal, gives the probability back") {
  // Wichura promises 1 part in 1e16; erfc, the pow and the tail cost some digits more.
  for (double p = 1e-300; p < 0.5; p *= 1.7) {
    CAPTURE(p);
    CHECK(std::abs(normal_share(normal_below(p)) / p - 1.0) < 1e-12);
  }
  for (double p = 0.001; p < 1.0; p += 0.001) {
    CAPTURE(p);
    CHECK(std::abs(normal_share(normal_below(p)) - p) < 1e-15);
    check_mm(normal_below(p), -normal_below(1.0 - p), 1e-12);
  }
  // The published check values of AS 241 for PPND16.
  check_mm(normal_below(0.25), -0.6744897501960817, 1e-15);
  check_mm(normal_below(0.001), -3.090232306167814, 1e-14);
  check_mm(normal_below(1e-20), -9.262340089798408, 1e-13);
  CHECK(std::isnan(normal_below(0.0)));
  CHECK(std::isnan(normal_below(1.0)));
}

TEST_CASE("uniform and cut normal draws have their distributions") {
  const auto uniform = many(dimension(0.0, 1.0, 1.0, true), 7, 0);
  CHECK(farthest_off(uniform, [](double x) { return 0.5 * (x + 1.0); }) < kolmogorov_limit);
  const auto normal = many(dimension(0.0, 1.0, 1.0, false), 7, 1);
  CHECK(farthest_off(normal, cut_normal_share) < kolmogorov_limit);
  // And the test can tell them apart.
  CHECK(farthest_off(uniform, cut_normal_share) > 10.0 * kolmogorov_limit);
  CHECK(*std::min_element(normal.begin(), normal.end()) >= -1.0);
  CHECK(*std::max_element(normal.begin(), normal.end()) <= 1.0);
}

TEST_CASE("mean and variance of what is drawn, with limits that are not alike") {
  for (const bool uniform : {false, true}) {
    CAPTURE(uniform);
    const Dimension d = dimension(10.0, 0.1, 0.5, uniform);
    const auto values = many(d, 11, 0);
    double mean = 0.0;
    for (const double value : values) mean += value / builds;
    double spread = 0.0;
    for (const double value : values) spread += (value - mean) * (value - mean) / (builds - 1);
    const double half = 0.3;
    // A third of the squared half range; of a normal cut at three sigma 0.973337 of sigma squared, by integration of
    // x^2 over its density (1 - 6 f(3) / (F(3) - F(-3)), f(3) = 0.00443185, F(3) - F(-3) = 0.9973002).
    const double want = uniform ? half * half / 3.0 : 0.973337 * half * half / 9.0;
    check_mm(mean, 10.2, 5.0 * std::sqrt(want / builds));
    check_mm(variance(d), want, 1e-6 * want);
    check_mm(spread, want, 5.0 * want * std::sqrt(2.0 / builds));
  }
}

TEST_CASE("two numbers of a pair and neighbouring pairs do not hang together") {
  double within = 0.0;
  double across = 0.0;
  double next = 0.0;
  for (int i = 0; i < builds; ++i) {
    const auto at = static_cast<std::uint64_t>(i);
    const auto a = chances(1, at, 0);
    within += (a[0] - 0.5) * (a[1] - 0.5) * 12.0 / builds;
    across += (a[0] - 0.5) * (chances(1, at, 1)[0] - 0.5) * 12.0 / builds;
    next += (a[0] - 0.5) * (chances(1, at + 1, 0)[0] - 0.5) * 12.0 / builds;
  }
  const double five_sigma = 5.0 / std::sqrt(static_cast<double>(builds));
  CHECK(std::abs(within) < five_sigma);
  CHECK(std::abs(across) < five_sigma);
  CHECK(std::abs(next) < five_sigma);
}

TEST_CASE("a dimension with an open side is not drawn") {
  CHECK(std::isnan(drawn(dimension(1.0, open_side, 0.0, false), 0.5)));
  CHECK(std::isnan(drawn(dimension(1.0, 0.0, open_side, true), 0.5)));
}
