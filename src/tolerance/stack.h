#pragma once
// Sums of dimensions: G = sum a_i x_i, with limits. After the usual chain mathematics: half range t = (plus + minus)/2,
// midpoint shift m = (plus - minus)/2; mid M = sum a (nominal + m); worst case W = sum |a| t; root sum square
// R = sqrt(sum (a t)^2). Limits are M -+ W or M -+ R, never nominal -+.
#include "tolerance/dimension.h"

#include <optional>
#include <span>
#include <vector>

namespace baywright::tolerance {

enum class Method { worst, rss, sampled };

/// By which a chain's limits are taken before builds are sampled, or where they cannot be.
[[nodiscard]] constexpr Method chain_method(Method method) {
  return method == Method::rss ? Method::rss : Method::worst;
}

struct Term {
  double sensitivity = 0.0;              // mm of the gap per mm of the dimension, signed
  const Dimension* dimension = nullptr;  // never null
};

/// The variation of a gap about its nominal. An open side of any term with a sensitivity opens one side of the gap:
/// -infinity or +infinity. RSS with an open side: the closed terms as usual, the open side infinite, the other side
/// taken at the open term's limit. Nothing is sampled here: `sampled` gives the worst case.
struct Spread {
  double down =
      0.0;  // limits are nominal - down .. nominal + up, both may be negative (a one-sided limit shifts the middle)
  double up = 0.0;
};

[[nodiscard]] Spread spread(std::span<const Term> terms, Method method);

/// The probability that nominal + variation >= asked, for independent dimensions, each normal with its limits at three
/// sigma and cut there, or uniform where it says so. Exact 0 and 1 outside the worst case limits. By numerical
/// convolution: absolute error below 1e-6 (held in tests against Irwin-Hall sums). None where a term has an open side.
[[nodiscard]] std::optional<double> share_at_least(double nominal, std::span<const Term> terms, double asked);

}  // namespace baywright::tolerance
