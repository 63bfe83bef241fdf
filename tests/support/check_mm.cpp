#include "support/check_mm.h"

#include <cmath>
#include <doctest/doctest.h>
#include <iomanip>
#include <sstream>

namespace baywright::test {

void check_mm(double got, double want, double allowed, const char* file, int line) {
  const double off = std::abs(got - want);
  if (off <= allowed) {  // NaN takes the other branch
    CHECK(true);
    return;
  }
  std::ostringstream say;
  say << std::setprecision(15) << "got " << got << " mm, want " << want << " mm: off by " << off << " mm, allowed "
      << allowed << " mm";
  ADD_FAIL_CHECK_AT(file, line, say.str());
}

void check_mm(const glm::dvec3& got, const glm::dvec3& want, double allowed, const char* file, int line) {
  for (int axis = 0; axis < 3; ++axis) check_mm(got[axis], want[axis], allowed, file, line);
}

}  // namespace baywright::test
