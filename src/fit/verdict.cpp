#include "fit/verdict.h"

#include "geometry/limits.h"

#include <algorithm>
#include <cmath>

namespace baywright::fit {

Verdict verdict_of(double low, double high, double asked) {
  if (std::isnan(low) || std::isnan(high) || std::isnan(asked)) return Verdict::undecided;
  if (low >= asked - geometry::touch_mm) return Verdict::fits;
  if (high <= asked + geometry::touch_mm) return Verdict::does_not_fit;
  return Verdict::marginal;
}

Verdict worse(Verdict a, Verdict b) {
  return std::max(a, b);
}

}  // namespace baywright::fit
