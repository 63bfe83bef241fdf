// The share of builds whose gap is at least what is asked.
//
// The variation of a gap lies between its worst-case limits, so its density is a Fourier series over that stretch, with
// the characteristic function at w_k = pi k / L as coefficients: exact, without aliasing (Abate and Whitt, "The
// Fourier-series method for inverting transforms of probability distributions", Queueing Systems 10, 1992). Only the
// speed at which it converges is ours to arrange, and what slows it down is a jump in a density. So:
//   1. The widest term is taken out. A uniform one is integrated in closed form over the sum Y of all others, which
//      leaves E max(Y - c, 0), whose series falls as 1/k^2 times the characteristic function of Y.
//   2. A normal one, cut at three sigma, is a mixture of a uniform pedestal (step 1) and of a hump that falls to zero
//   at
//      the cut; the hump has no jump and its series is summed as it stands.
//   3. Both sums end where a bound on all that is left falls below `series_error`.
#include "tolerance/stack.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>
#include <vector>

namespace baywright::tolerance {

namespace {

// A thirtieth of what the header promises (1e-6), since the bound is met twice and the digits of the sums come on top.
// Two equal uniform terms converge slowest, in some 1500 steps; ten times smaller would take three times the steps.
constexpr double series_error = 3e-8;
// Only a guard: no mix of terms needs as many steps (the bound below falls at least as 1/k^2).
constexpr int most_steps = 200'000;
// The bound costs about as much as a step of the series, so it is looked at once in so many steps.
constexpr int steps_between_bounds = 8;

constexpr double cut = 3.0;  // limits stand at so many sigma

// Parts so much narrower than the widest move no share by more than this, and only cost steps.
constexpr double negligible = 1e-12;

/// A term about its middle: a symmetric distribution on [-half, half].
struct Part {
  double half = 0.0;  // in half ranges of the widest part, once that is known
  bool uniform = false;
};

double inside_the_cut() {
  static const double mass = std::erf(cut / std::numbers::sqrt2);  // 0.9973
  return mass;
}

/// Height of the cut normal density at its cut, for half range 1.
double density_at_cut() {
  static const double height = cut / std::sqrt(2.0 * std::numbers::pi) * std::exp(-cut * cut / 2.0) / inside_the_cut();
  return height;
}

/// sin(z)/z.
double uniform_transform(double z) {
  return z == 0.0 ? 1.0 : std::sin(z) / z;
}

/// Characteristic function of a normal cut at +-1 = three sigma: that of the whole normal less its two tails. The tails
/// are exp(-9/2) Re(exp(iz) F(q)), F(q) = exp(q^2) erfc(q), q = (3 - i z/3)/sqrt 2, with F by Laplace's continued
/// fraction (Abramowitz and Stegun 7.1.14), which converges fast as |q| >= 2.12.
double normal_transform(double z) {
  constexpr int depth = 12;  // leaves less than 1e-9 at z = 0, where it converges slowest (measured)
  const double re = cut / std::numbers::sqrt2;
  const double im = -z / (cut * std::numbers::sqrt2);
  double x = re;
  double y = im;
  for (int k = depth; k >= 1; --k) {
    const double scale = 0.5 * k / (x * x + y * y);
    x = re + scale * x;
    y = im - scale * y;
  }
  const double size = x * x + y * y;
  const double tails =
      std::exp(-cut * cut / 2.0) / std::sqrt(std::numbers::pi) * (std::cos(z) * x + std::sin(z) * y) / size;
  return (std::exp(-z * z / (2.0 * cut * cut)) - tails) / inside_the_cut();
}

double transform(const Part& part, double w) {
  const double z = part.half * w;
  return part.uniform ? uniform_transform(z) : normal_transform(z);
}

/// Not below |transform| at w or at any larger frequency. The tails of the normal are bounded by four times their
/// height at the cut over z (second mean value theorem).
double transform_bound(const Part& part, double w) {
  const double z = part.half * w;
  if (z <= 1.0) return 1.0;
  if (part.uniform) return 1.0 / z;
  const double whole = std::exp(-z * z / (2.0 * cut * cut)) / inside_the_cut();
  return std::min(1.0, whole + 4.0 * density_at_cut() / z);
}

double product_of_transforms(const std::vector<Part>& parts, double w) {
  double product = 1.0;
  for (const Part& part : parts) product *= transform(part, w);
  return product;
}

double product_of_bounds(const std::vector<Part>& parts, double w) {
  double product = 1.0;
  for (const Part& part : parts) product *= transform_bound(part, w);
  return product;
}

double sum_of_halves(const std::vector<Part>& parts) {
  double sum = 0.0;
  for (const Part& part : parts) sum += part.half;
  return sum;
}

/// P(part >= u) for one part alone of half range 1, |u| <= 1.
double share_of_one(bool uniform, double u) {
  if (uniform) return (1.0 - u) / 2.0;
  return (1.0 - std::erf(cut * u / std::numbers::sqrt2) / inside_the_cut()) / 2.0;
}

/// P(U + Y >= d), U uniform on [-1, 1], Y the sum of `rest` (at least one): the mean over Y of U's own share, which is
/// (E max(Y - d + 1, 0) - E max(Y - d - 1, 0)) / 2.
double share_with_uniform(const std::vector<Part>& rest, double d) {
  const double length = sum_of_halves(rest);
  const double near = d - 1.0;
  const double far = d + 1.0;
  const auto outside = [length](double c) { return !(std::abs(c) < length); };
  const auto steady = [&](double c) {  // all but the series; beyond the reach of Y it is the whole answer
    if (outside(c)) return c < 0.0 ? -c : 0.0;
    return (length - c) * (length - c) / (4.0 * length);
  };
  double sum = steady(near) - steady(far);
  if (!outside(near) || !outside(far)) {
    double series = 0.0;
    for (int k = 1; k <= most_steps; ++k) {
      const double w = std::numbers::pi * k / length;
      const double end = k % 2 == 0 ? 1.0 : -1.0;
      const double weight =
          (outside(near) ? 0.0 : end - std::cos(w * near)) - (outside(far) ? 0.0 : end - std::cos(w * far));
      series += product_of_transforms(rest, w) * weight / (w * w);
      if (k % steps_between_bounds == 0) {
        // What is left: |weight| <= 2 on each side, the sum of 1/j^2 beyond k is below 1/k.
        const double left = 4.0 * product_of_bounds(rest, w) / (w * w) * k / length / 2.0;
        if (!(left > series_error)) break;
      }
    }
    sum += series / length;
  }
  return sum / 2.0;
}

/// The share of the hump of a normal cut at -1 and 1, as far as it is not pedestal: its mass times P(hump + Y >= d).
double share_with_hump(const std::vector<Part>& rest, double d) {
  const double length = 1.0 + sum_of_halves(rest);
  const double pedestal = 2.0 * density_at_cut();
  double share = (1.0 - pedestal) * (0.5 - d / (2.0 * length));
  for (int k = 1; k <= most_steps; ++k) {
    const double w = std::numbers::pi * k / length;
    const double hump = normal_transform(w) - pedestal * uniform_transform(w);
    share -= hump * product_of_transforms(rest, w) * std::sin(w * d) / (std::numbers::pi * k);
    if (k % steps_between_bounds == 0) {
      // The hump's transform is that of the whole normal and 2/w times the integral of the slope beyond the cut, which
      // starts there at 9 times the height (second mean value theorem again); the sum of 1/j^3 beyond k is below
      // 1/(2 k^2).
      const double whole = std::exp(-w * w / (2.0 * cut * cut)) / inside_the_cut();
      const double hump_bound = std::min(1.0, whole + 4.0 * cut * cut * density_at_cut() / (w * w));
      const double left = hump_bound * product_of_bounds(rest, w) / (2.0 * std::numbers::pi);
      if (!(left > series_error)) break;
    }
  }
  return share;
}

/// P(sum >= d), d in the unit of `parts`, which holds at least one part and none of them zero.
double share_of_sum(std::vector<Part> parts, double d) {
  const auto widest =
      std::max_element(parts.begin(), parts.end(), [](const Part& a, const Part& b) { return a.half < b.half; });
  const auto [unit, uniform] = *widest;
  parts.erase(widest);
  for (Part& part : parts) part.half /= unit;
  std::erase_if(parts, [](const Part& part) { return part.half < negligible; });
  const double u = d / unit;
  if (parts.empty()) return share_of_one(uniform, u);
  if (uniform) return share_with_uniform(parts, u);
  return 2.0 * density_at_cut() * share_with_uniform(parts, u) + share_with_hump(parts, u);
}

}  // namespace

std::optional<double> share_at_least(double nominal, std::span<const Term> terms, double asked) {
  std::vector<Part> parts;
  double middle = nominal;
  for (const Term& term : terms) {
    if (term.sensitivity == 0.0) continue;
    const Dimension& d = *term.dimension;
    if (d.open()) return std::nullopt;
    middle += term.sensitivity * (d.plus - d.minus) / 2.0;
    const double half = std::abs(term.sensitivity) * (d.plus + d.minus) / 2.0;
    if (half != 0.0) parts.push_back({.half = half, .uniform = d.uniform});
  }
  const Spread limits = spread(terms, Method::worst);
  // In this order, so that an exact gap of just what is asked counts as one that fits.
  if (nominal - limits.down >= asked) return 1.0;
  if (nominal + limits.up <= asked) return 0.0;
  const double d = asked - middle;
  if (!std::isfinite(d) || !std::isfinite(sum_of_halves(parts)) || parts.empty()) return std::nullopt;

  return std::clamp(share_of_sum(std::move(parts), d), 0.0, 1.0);
}

}  // namespace baywright::tolerance
