// The 95 % interval of a share: what defines it, and a published table.
#include "tolerance/proportion.h"

#include <cmath>
#include <doctest/doctest.h>
#include <initializer_list>
#include <utility>

using namespace baywright::tolerance;

namespace {

/// P(at most k of n), term by term.
double at_most(std::int64_t k, std::int64_t n, double share) {
  double sum = 0.0;
  for (std::int64_t i = 0; i <= k; ++i) {
    const auto a = static_cast<double>(i);
    const auto b = static_cast<double>(n);
    sum += std::exp(std::lgamma(b + 1.0) - std::lgamma(a + 1.0) - std::lgamma(b - a + 1.0) + a * std::log(share) +
                    (b - a) * std::log1p(-share));
  }
  return sum;
}

}  // namespace

TEST_CASE("intervals of Newcombe's four worked examples") {
  // R. G. Newcombe, "Two-sided confidence intervals for the single proportion: comparison of seven methods", Statistics
  // in Medicine 17 (1998), Table I, row Clopper-Pearson; the figures are from memory, the case below holds what defines
  // them.
  struct Row {
    std::int64_t hits, of;
    double low, high;
  };
  for (const Row& row : {Row{81, 263, 0.2527, 0.3676}, Row{15, 148, 0.0578, 0.1617}, Row{0, 20, 0.0, 0.1684},
                         Row{1, 29, 0.0009, 0.1776}}) {
    CAPTURE(row.hits);
    const Interval got = sure_to_95(row.hits, row.of);
    CHECK(std::abs(got.low - row.low) <= 0.00005 + 1e-12);
    CHECK(std::abs(got.high - row.high) <= 0.00005 + 1e-12);
  }
}

TEST_CASE("beyond each end the count that was seen comes with 2.5 %") {
  // The definition by Clopper and Pearson (1934), the tails summed term by term.
  for (const auto& [hits, of] :
       {std::pair<std::int64_t, std::int64_t>{1, 2}, {7, 10}, {98'765, 100'000}, {3, 100'000}}) {
    CAPTURE(hits);
    const Interval got = sure_to_95(hits, of);
    CHECK(std::abs(1.0 - at_most(hits - 1, of, got.low) - 0.025) < 1e-6);
    CHECK(std::abs(at_most(hits, of, got.high) - 0.025) < 1e-6);
  }
}

TEST_CASE("none and all of the trials: closed forms, up to the most builds") {
  for (const std::int64_t of : {1L, 20L, 100'000L, 100'000'000L}) {
    const double tail = std::exp(std::log(0.025) / static_cast<double>(of));
    CHECK(std::abs(sure_to_95(of, of).low - tail) < 1e-7);
    CHECK(sure_to_95(of, of).high == 1.0);
    CHECK(sure_to_95(0, of).low == 0.0);
    CHECK(std::abs(sure_to_95(0, of).high - (1.0 - tail)) < 1e-7);
  }
  CHECK(sure_to_95(0, 0).low == 0.0);
  CHECK(sure_to_95(0, 0).high == 1.0);
}
