#pragma once
// Checks of figures that are no lengths, by their ratio: |got - want| <= share |want|. NaN fails. There is no default
// share on purpose. (doctest's own approximate comparison is relative as well, and no test uses it: see check_mm.h.)
#include <cmath>
#include <doctest/doctest.h>

namespace baywright::test {

inline void check_ratio(double got, double want, double share) {
  CAPTURE(got);
  CAPTURE(want);
  CHECK(std::abs(got - want) <= share * std::abs(want));
}

}  // namespace baywright::test
