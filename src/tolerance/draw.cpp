#include "tolerance/draw.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace baywright::tolerance {

namespace {

constexpr double cut = 3.0;  // limits stand at so many sigma

/// The whole normal's probability below the cut.
double below_the_cut() {
  static const double mass = 0.5 * std::erfc(cut / std::numbers::sqrt2);
  return mass;
}

/// A polynomial, its coefficients from the constant on.
template <std::size_t count>
double sum_of_powers(const std::array<double, count>& coefficients, double x) {
  double sum = 0.0;
  for (std::size_t i = count; i > 0; --i) sum = sum * x + coefficients[i - 1];
  return sum;
}

// The three pairs of AS 241: near the middle, in the tails, and beyond exp(-25).
constexpr std::array middle_over = {3.3871328727963666080e0, 1.3314166789178437745e2, 1.9715909503065514427e3,
                                    1.3731693765509461125e4, 4.5921953931549871457e4, 6.7265770927008700853e4,
                                    3.3430575583588128105e4, 2.5090809287301226727e3};
constexpr std::array middle_under = {1.0,
                                     4.2313330701600911252e1,
                                     6.8718700749205790830e2,
                                     5.3941960214247511077e3,
                                     2.1213794301586595867e4,
                                     3.9307895800092710610e4,
                                     2.8729085735721942674e4,
                                     5.2264952788528545610e3};
constexpr std::array tail_over = {1.42343711074968357734e0,  4.63033784615654529590e0, 5.76949722146069140550e0,
                                  3.64784832476320460504e0,  1.27045825245236838258e0, 2.41780725177450611770e-1,
                                  2.27238449892691845833e-2, 7.74545014278341407640e-4};
constexpr std::array tail_under = {1.0,
                                   2.05319162663775882187e0,
                                   1.67638483018380384940e0,
                                   6.89767334985100004550e-1,
                                   1.48103976427480074590e-1,
                                   1.51986665636164571966e-2,
                                   5.47593808499534494600e-4,
                                   1.05075007164441684324e-9};
constexpr std::array far_over = {6.65790464350110377720e0,  5.46378491116411436990e0,  1.78482653991729133580e0,
                                 2.96560571828504891230e-1, 2.65321895265761230930e-2, 1.24266094738807843860e-3,
                                 2.71155556874348757815e-5, 2.01033439929228813265e-7};
constexpr std::array far_under = {1.0,
                                  5.99832206555887937690e-1,
                                  1.36929880922735805310e-1,
                                  1.48753612908506148525e-2,
                                  7.86869131145613259100e-4,
                                  1.84631831751005468180e-5,
                                  1.42151175831644588870e-7,
                                  2.04426310338993978564e-15};

}  // namespace

std::array<std::uint32_t, 4> philox(std::array<std::uint32_t, 4> counter, std::array<std::uint32_t, 2> key) {
  constexpr std::uint64_t first_factor = 0xD2511F53;
  constexpr std::uint64_t second_factor = 0xCD9E8D57;
  constexpr int rounds = 10;
  for (int round = 0; round < rounds; ++round) {
    const std::uint64_t first = first_factor * counter[0];
    const std::uint64_t second = second_factor * counter[2];
    counter = {static_cast<std::uint32_t>(second >> 32) ^ counter[1] ^ key[0], static_cast<std::uint32_t>(second),
               static_cast<std::uint32_t>(first >> 32) ^ counter[3] ^ key[1], static_cast<std::uint32_t>(first)};
    key[0] += 0x9E3779B9;  // the golden ratio and the square root of three, as the paper has them
    key[1] += 0xBB67AE85;
  }
  return counter;
}

std::array<double, 2> chances(std::uint64_t seed, std::uint64_t build, std::uint32_t pair) {
  const auto low = [](std::uint64_t word) { return static_cast<std::uint32_t>(word); };
  const auto high = [](std::uint64_t word) { return static_cast<std::uint32_t>(word >> 32); };
  const auto words = philox({low(build), high(build), pair, 0}, {low(seed), high(seed)});
  const auto chance = [](std::uint64_t a, std::uint64_t b) {
    const std::uint64_t bits = (a << 32 | b) >> 12;  // 52 of them, so that the half behind them is kept as well
    return (static_cast<double>(bits) + 0.5) * 0x1p-52;
  };
  return {chance(words[0], words[1]), chance(words[2], words[3])};
}

double normal_below(double p) {
  if (!(p > 0.0 && p < 1.0)) return std::numeric_limits<double>::quiet_NaN();
  const double q = p - 0.5;
  if (std::abs(q) <= 0.425) {
    const double r = 0.180625 - q * q;
    return q * sum_of_powers(middle_over, r) / sum_of_powers(middle_under, r);
  }
  const double r = std::sqrt(-std::log(std::min(p, 1.0 - p)));
  const double z = r <= 5.0 ? sum_of_powers(tail_over, r - 1.6) / sum_of_powers(tail_under, r - 1.6)
                            : sum_of_powers(far_over, r - 5.0) / sum_of_powers(far_under, r - 5.0);
  return q < 0.0 ? -z : z;
}

double drawn(const Dimension& dimension, double chance) {
  if (dimension.open()) return std::numeric_limits<double>::quiet_NaN();
  const double middle = dimension.nominal + 0.5 * (dimension.plus - dimension.minus);
  const double half = 0.5 * (dimension.plus + dimension.minus);
  if (dimension.uniform) return middle + half * (2.0 * chance - 1.0);
  const double below = below_the_cut();
  const double z = normal_below(below + chance * (1.0 - 2.0 * below));
  return middle + half * std::clamp(z / cut, -1.0, 1.0);
}

double variance(const Dimension& dimension) {
  const double half = 0.5 * (dimension.plus + dimension.minus);
  if (dimension.uniform) return half * half / 3.0;
  // A normal cut at -+c sigma has 1 - 2 c f(c) / (F(c) - F(-c)) of its variance left (Johnson, Kotz and Balakrishnan,
  // Continuous Univariate Distributions 1, 1994, on truncated normals; section number not at hand).
  const double density = std::exp(-0.5 * cut * cut) / std::sqrt(2.0 * std::numbers::pi);
  const double sigma = half / cut;
  return sigma * sigma * (1.0 - 2.0 * cut * density / (1.0 - 2.0 * below_the_cut()));
}

}  // namespace baywright::tolerance
