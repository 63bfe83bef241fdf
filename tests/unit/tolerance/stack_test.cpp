// Limits of sums. Published stacks are in tests/published/stackups_test.cpp; here are the edges of the contract.
#include "tolerance/stack.h"

#include "support/check_mm.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <doctest/doctest.h>
#include <random>
#include <vector>

using namespace baywright::tolerance;
using baywright::test::check_mm;

namespace {

constexpr double exactly = 1e-12;

Dimension limits(double minus, double plus) {
  return {.name = "any", .nominal = 0.0, .minus = minus, .plus = plus, .source = ""};
}

}  // namespace

TEST_CASE("a limit on a subtracted length swaps sides") {
  const Dimension thicker = limits(0.0, 0.3);
  const std::array added{Term{1.0, &thicker}};
  const std::array subtracted{Term{-2.0, &thicker}};
  check_mm(spread(added, Method::worst).up, 0.3, exactly);
  check_mm(spread(added, Method::worst).down, 0.0, exactly);
  check_mm(spread(subtracted, Method::worst).up, 0.0, exactly);
  check_mm(spread(subtracted, Method::worst).down, 0.6, exactly);
}

TEST_CASE("one-sided limits shift the middle, and the root sum square stands about it") {
  // Halves 0.3 and 0.4: middles +0.3 and +0.4, root sum square 0.5 (the 3 4 5 triangle).
  const Dimension a = limits(0.0, 0.6);
  const Dimension b = limits(0.0, 0.8);
  const std::array terms{Term{1.0, &a}, Term{1.0, &b}};
  check_mm(spread(terms, Method::rss).up, 1.2, exactly);
  check_mm(spread(terms, Method::rss).down, -0.2, exactly);  // the whole band lies above the nominal
  check_mm(spread(terms, Method::worst).up, 1.4, exactly);
  check_mm(spread(terms, Method::worst).down, 0.0, exactly);
}

TEST_CASE("an open side opens one side of the gap, the other as the sign tells") {
  const Dimension at_most = limits(open_side, 0.1);
  const Dimension plain = limits(0.2, 0.2);
  const std::array added{Term{1.0, &at_most}, Term{1.0, &plain}};
  const std::array subtracted{Term{-1.0, &at_most}, Term{1.0, &plain}};
  for (const Method method : {Method::worst, Method::rss}) {
    CHECK(spread(added, method).down == open_side);
    check_mm(spread(added, method).up, 0.3, exactly);
    check_mm(spread(subtracted, method).down, 0.3, exactly);
    CHECK(spread(subtracted, method).up == open_side);
  }
}

TEST_CASE("an open term without sensitivity opens nothing") {
  const Dimension open = limits(open_side, open_side);
  const Dimension plain = limits(0.2, 0.1);
  const std::array terms{Term{0.0, &open}, Term{1.0, &plain}};
  for (const Method method : {Method::worst, Method::rss}) {
    check_mm(spread(terms, method).down, 0.2, exactly);
    check_mm(spread(terms, method).up, 0.1, exactly);
  }
}

TEST_CASE("no terms, no variation") {
  check_mm(spread({}, Method::worst).up, 0.0, 0.0);
  check_mm(spread({}, Method::rss).down, 0.0, 0.0);
}

TEST_CASE("root sum square never exceeds worst case, and equals it only for a single term") {
  std::mt19937_64 random(20260103);
  std::uniform_real_distribution<double> limit(0.01, 1.0);
  std::uniform_real_distribution<double> sensitivity(-3.0, 3.0);
  for (int round = 0; round < 2000; ++round) {
    std::vector<Dimension> dimensions;
    for (std::size_t i = 0; i <= random() % 8; ++i) dimensions.push_back(limits(limit(random), limit(random)));
    std::vector<Term> terms;
    for (const Dimension& d : dimensions) terms.push_back({sensitivity(random), &d});
    const Spread worst = spread(terms, Method::worst);
    const Spread rss = spread(terms, Method::rss);
    // Same middle, and a half range that is smaller.
    check_mm(rss.up - rss.down, worst.up - worst.down, 1e-9);
    if (terms.size() == 1) {
      check_mm(rss.up, worst.up, exactly);
    } else {
      CHECK(rss.up + rss.down < worst.up + worst.down);
    }
    std::reverse(terms.begin(), terms.end());
    check_mm(spread(terms, Method::worst).up, worst.up, 1e-9);
  }
}
