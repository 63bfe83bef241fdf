#include "tolerance/proportion.h"

#include <cmath>

namespace baywright::tolerance {

namespace {

/// The continued fraction of the incomplete beta function (NIST Digital Library of Mathematical Functions, 8.17.22),
/// evaluated from the front (Lentz). Converges fast for x below (a + 1) / (a + b + 2).
double beta_fraction(double x, double a, double b) {
  constexpr int most_steps = 100'000;  // it takes about the root of a or b; 1e8 trials need some thousand
  constexpr double tiny = 1e-300;
  const auto kept = [](double value) { return std::abs(value) < tiny ? tiny : value; };
  double d = 1.0 / kept(1.0 - (a + b) * x / (a + 1.0));
  double c = 1.0;
  double value = d;
  for (int m = 1; m <= most_steps; ++m) {
    const double even = m * (b - m) * x / ((a + 2.0 * m - 1.0) * (a + 2.0 * m));
    d = 1.0 / kept(1.0 + even * d);
    c = kept(1.0 + even / c);
    value *= d * c;
    const double odd = -(a + m) * (a + b + m) * x / ((a + 2.0 * m) * (a + 2.0 * m + 1.0));
    d = 1.0 / kept(1.0 + odd * d);
    c = kept(1.0 + odd / c);
    value *= d * c;
    if (std::abs(d * c - 1.0) < 1e-15) break;
  }
  return value;
}

/// P(at least k of n) for the share x, 0 < k <= n: the incomplete beta function I_x(k, n - k + 1) (DLMF 8.17.5).
double at_least(double k, double n, double x) {
  const double a = k;
  const double b = n - k + 1.0;
  const double front =
      std::exp(std::lgamma(a + b) - std::lgamma(a) - std::lgamma(b) + a * std::log(x) + b * std::log1p(-x));
  if (x < (a + 1.0) / (a + b + 2.0)) return front * beta_fraction(x, a, b) / a;
  return 1.0 - front * beta_fraction(1.0 - x, b, a) / b;
}

/// The share at which at least k of n come with probability p: it rises with the share.
double share_for(double k, double n, double p) {
  double low = 0.0;
  double high = 1.0;
  for (int step = 0; step < 60; ++step) {
    const double middle = 0.5 * (low + high);
    (at_least(k, n, middle) < p ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

}  // namespace

Interval sure_to_95(std::int64_t hits, std::int64_t of) {
  constexpr double left_out = 0.025;  // on each side
  if (!(of > 0)) return {};
  const auto k = static_cast<double>(hits);
  const auto n = static_cast<double>(of);
  return {.low = hits > 0 ? share_for(k, n, left_out) : 0.0,
          .high = hits < of ? share_for(k + 1.0, n, 1.0 - left_out) : 1.0};
}

}  // namespace baywright::tolerance
