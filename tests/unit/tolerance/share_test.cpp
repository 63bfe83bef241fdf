// The share of builds that fit, against exact sums and independent quadrature.
#include "support/check_mm.h"
#include "tolerance/stack.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <doctest/doctest.h>
#include <limits>
#include <random>
#include <vector>

using namespace baywright::tolerance;
using baywright::test::check_mm;

namespace {

struct Half {
  double range;
  bool uniform;
};
constexpr bool uniform = true;
constexpr bool normal = false;

/// Share of a sum of symmetric terms about zero.
double share(const std::vector<Half>& halves, double asked) {
  std::vector<Dimension> dimensions;
  for (const Half& half : halves) {
    dimensions.push_back({.name = "any",
                          .minus = half.range,
                          .plus = half.range,
                          .source = "",
                          .known = Known::measured,
                          .uniform = half.uniform});
  }
  std::vector<Term> terms;
  for (const Dimension& d : dimensions) terms.push_back({1.0, &d});
  const auto got = share_at_least(0.0, terms, asked);
  REQUIRE(got.has_value());
  return *got;
}

void check_share(double got, double want, double allowed) {
  CAPTURE(got);
  CAPTURE(want);
  CHECK(std::abs(got - want) <= allowed);
}

}  // namespace

TEST_CASE("equal uniform terms outside the root sum square: the Irwin-Hall sums") {
  // Derived: exact Irwin-Hall sums (Irwin 1927, Hall 1927), n uniform terms of half range 1, in rational arithmetic.
  struct Row {
    std::size_t terms;
    double outside, outside_one_and_a_half;
  };
  constexpr std::array<Row, 6> rows{{{2, 0.0857864, 0.0},  // (2 - sqrt 2)^2 / 4
                                     {3, 0.0849365, 0.00270533},
                                     {4, 0.0833333, 0.00520833},
                                     {5, 0.0833333, 0.00629091},
                                     {6, 0.0833301, 0.00686900},
                                     {10, 0.0832792, 0.00794782}}};
  for (const Row& row : rows) {
    CAPTURE(row.terms);
    const std::vector<Half> halves(row.terms, {1.0, uniform});
    const double root = std::sqrt(static_cast<double>(row.terms));
    // To the digits of the table. The sum is symmetric, so both sides are twice one.
    check_share(2.0 * (1.0 - share(halves, -root)), row.outside, 0.6e-7);
    check_share(2.0 * share(halves, 1.5 * root), row.outside_one_and_a_half, 0.6e-7);
  }
}

TEST_CASE("uniform terms at single points: exact fractions") {
  // Irwin-Hall in exact rational arithmetic, and its form for unequal widths by inclusion and exclusion.
  constexpr double allowed = 1e-7;
  check_share(share({3, {1.0, uniform}}, 1.0), 1.0 / 6.0, allowed);
  check_share(share({4, {1.0, uniform}}, 1.5), 0.10107421875, allowed);
  check_share(share({6, {1.0, uniform}}, 2.0), 0.08055555555555556, allowed);
  check_share(share({12, {1.0, uniform}}, 2.5), 0.10707028013870645, allowed);
  check_share(share({{1.0, uniform}, {0.5, uniform}, {0.1, uniform}}, 0.2), 0.4, allowed);
  check_share(share({{0.1, uniform}, {1.0, uniform}, {0.5, uniform}}, 1.2), 0.023333333333333334, allowed);
  // One term that dwarfs the others, in the corner that they round off.
  check_share(share({{1.0, uniform}, {1e-3, uniform}, {1e-5, uniform}}, 0.9995), 0.0002812541666666667, allowed);
}

TEST_CASE("a normal term is cut at its limits, three sigma") {
  // Standard normal distribution function from mpmath 1.3 (ncdf): (P(3) - P(z)) / (P(3) - P(-3)).
  constexpr double allowed = 1e-11;
  const std::vector<Half> one{{3.0, normal}};
  check_share(share(one, 0.0), 0.5, allowed);
  check_share(share(one, 0.5), 0.308019229798, allowed);
  check_share(share(one, 1.0), 0.157731197967, allowed);
  check_share(share(one, 2.0), 0.0214581665902, allowed);
  check_share(share(one, -2.5), 1.0 - 0.004872923193, allowed);
}

TEST_CASE("sums with normal terms: quadrature of the convolution") {
  // Derived: mpmath 1.3, adaptive quadrature of the convolution integral at 20 digits.
  constexpr double allowed = 1e-7;
  check_share(share({{1.0, normal}, {1.0, normal}}, 0.25), 0.296862696242, allowed);
  check_share(share({{1.0, normal}, {1.0, normal}}, 1.0), 0.015395151004, allowed);
  check_share(share({{1.0, normal}, {1.0, normal}}, 1.9), 1.62714555542e-6, allowed);
  check_share(share({{1.0, normal}, {0.3, normal}}, 0.25), 0.235331065453, allowed);
  check_share(share({{0.3, normal}, {1.0, normal}}, 1.0), 0.000982944431275, allowed);
  check_share(share({{1.0, normal}, {0.3, normal}}, 1.25), 1.44847186802e-6, allowed);
  check_share(share({{1.0, normal}, {0.5, uniform}}, 0.25), 0.291748540032, allowed);
  check_share(share({{1.0, normal}, {0.5, uniform}}, 0.75), 0.0426977729406, allowed);
  check_share(share({{1.0, normal}, {0.5, uniform}}, 1.25), 0.000949232908953, allowed);
  check_share(share({{0.2, normal}, {1.0, uniform}}, 0.25), 0.375, allowed);
  check_share(share({{0.2, normal}, {1.0, uniform}}, 0.9), 0.0508990870984, allowed);
  check_share(share({{0.2, normal}, {1.0, uniform}}, 1.1), 0.000899087098413, allowed);
  check_share(share({{1.0, normal}, {0.5, normal}, {0.25, uniform}}, 0.25), 0.265312480706, allowed);
  check_share(share({{1.0, normal}, {0.5, normal}, {0.25, uniform}}, -0.9), 1.0 - 0.010791477791, allowed);
}

TEST_CASE("nothing and all are exact at the worst-case limits") {
  const Dimension a{.name = "a", .nominal = 0.0, .minus = 0.1, .plus = 0.3, .source = ""};
  const Dimension b{.name = "b", .nominal = 0.0, .minus = 0.0, .plus = 0.2, .source = ""};
  const std::array terms{Term{1.0, &a}, Term{-1.0, &b}};  // 5 - 0.3 .. 5 + 0.3
  CHECK(share_at_least(5.0, terms, 4.7) == 1.0);
  CHECK(share_at_least(5.0, terms, 5.3) == 0.0);
  const double nearly = share_at_least(5.0, terms, 4.75).value_or(-1.0);
  CHECK(nearly > 0.999);
  CHECK(nearly < 1.0);
  // Nothing varies: it fits or not, and just what is asked fits.
  CHECK(share_at_least(5.0, {}, 5.0) == 1.0);
  CHECK(share_at_least(5.0, {}, 5.1) == 0.0);
  CHECK(share_at_least(5.0, {}, -std::numeric_limits<double>::infinity()) == 1.0);
}

TEST_CASE("one-sided limits: the middle counts, not the nominal") {
  // Uniform on 10 .. 10.4: a share of three quarters lies above 10.1.
  const Dimension d{
      .name = "d", .nominal = 0.0, .minus = 0.0, .plus = 0.4, .source = "", .known = Known::measured, .uniform = true};
  const std::array added{Term{1.0, &d}};
  check_share(share_at_least(10.0, added, 10.1).value_or(-1.0), 0.75, 1e-12);
  // Subtracted, with sensitivity 2: uniform on 9.2 .. 10.
  const std::array subtracted{Term{-2.0, &d}};
  check_share(share_at_least(10.0, subtracted, 9.4).value_or(-1.0), 0.75, 1e-12);
}

TEST_CASE("no share with an open side or without a number") {
  const Dimension open{.name = "open", .nominal = 0.0, .minus = open_side, .plus = 0.0, .source = ""};
  const Dimension plain{.name = "plain", .nominal = 0.0, .minus = 0.1, .plus = 0.1, .source = ""};
  const double nan = std::nan("");
  CHECK(!share_at_least(5.0, std::array{Term{1.0, &open}}, 1.0).has_value());
  CHECK(share_at_least(5.0, std::array{Term{0.0, &open}}, 1.0) == 1.0);  // it does not count
  CHECK(!share_at_least(nan, std::array{Term{1.0, &plain}}, 1.0).has_value());
  CHECK(!share_at_least(5.0, std::array{Term{1.0, &plain}}, nan).has_value());
  CHECK(!share_at_least(5.0, std::array{Term{nan, &plain}}, 5.0).has_value());
}

TEST_CASE("mixed chains agree with sampling") {
  std::mt19937_64 random(20260104);
  std::normal_distribution<double> bell(0.0, 1.0 / 3.0);
  std::uniform_real_distribution<double> flat(-1.0, 1.0);
  constexpr int samples = 40'000;
  int between = 0;
  for (int round = 0; round < 40; ++round) {
    std::vector<Half> halves(1 + random() % 12);
    double root = 0.0;
    for (Half& half : halves) {
      half = {std::pow(10.0, flat(random)), random() % 2 == 0};  // 0.1 to 10
      root = std::hypot(root, half.range);
    }
    const double asked = flat(random) * 0.8 * root;
    int hits = 0;
    for (int i = 0; i < samples; ++i) {
      double sum = 0.0;
      for (const Half& half : halves) {
        double x = half.uniform ? flat(random) : bell(random);
        while (std::abs(x) > 1.0) x = bell(random);
        sum += half.range * x;
      }
      if (sum >= asked) ++hits;
    }
    const double want = static_cast<double>(hits) / samples;
    CAPTURE(halves.size());
    check_share(share(halves, asked), want, 5.0 * 0.5 / std::sqrt(static_cast<double>(samples)));
    if (want > 0.02 && want < 0.98) ++between;
  }
  CHECK(between > 20);  // else the loop has only seen certainties
}

TEST_CASE("the order of the terms moves no digit that counts, and a larger ask no larger share") {
  std::mt19937_64 random(20260105);
  std::uniform_real_distribution<double> exponent(-4.0, 0.0);
  std::uniform_real_distribution<double> place(-1.0, 1.0);
  for (int round = 0; round < 300; ++round) {
    std::vector<Half> halves(2 + random() % 11);
    double worst = 0.0;
    for (Half& half : halves) {
      half = {std::pow(10.0, exponent(random)), random() % 2 == 0};
      worst += half.range;
    }
    const double asked = place(random) * worst;
    const double got = share(halves, asked);
    CHECK(share(halves, asked + 0.05 * worst) <= got + 1e-7);
    std::shuffle(halves.begin(), halves.end(), random);
    check_share(share(halves, asked), got, 1e-7);
    // The sum is symmetric.
    check_share(share(halves, -asked), 1.0 - got, 1e-7);
  }
}
