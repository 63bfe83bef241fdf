#include "tolerance/stack.h"

#include <cmath>

namespace baywright::tolerance {

namespace {

/// What one term can add to the gap at most, and take from it at most, mm; infinite on an open side.
Spread reach(const Term& term) {
  const double a = term.sensitivity;
  const Dimension& d = *term.dimension;
  // A subtracted length swaps sides: the gap is largest where the length is least.
  if (a < 0.0) return {.down = -a * d.plus, .up = -a * d.minus};
  return {.down = a * d.minus, .up = a * d.plus};
}

}  // namespace

Spread spread(std::span<const Term> terms, Method method) {
  Spread sum;
  double middle = 0.0;
  double squares = 0.0;
  for (const Term& term : terms) {
    if (term.sensitivity == 0.0) continue;  // else 0 times an open side is not a number
    const Spread one = reach(term);
    if (chain_method(method) == Method::worst || term.dimension->open()) {
      sum.down += one.down;
      sum.up += one.up;
    } else {
      const double half = (one.up + one.down) / 2.0;
      middle += (one.up - one.down) / 2.0;
      squares += half * half;
    }
  }
  const double root = std::sqrt(squares);
  return {.down = sum.down + (root - middle), .up = sum.up + (root + middle)};
}

}  // namespace baywright::tolerance
