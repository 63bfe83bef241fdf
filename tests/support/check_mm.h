#pragma once
// Checks with an absolute allowance in mm. doctest's own approximate comparison is relative and lets 1e-3 mm through on
// a 110 mm card, so no test uses it (tests/layering holds that).
#include <glm/vec3.hpp>

namespace baywright::test {

/// Fails unless |got - want| <= allowed, at the caller's line, with all figures. NaN fails. All in mm. There is no
/// default allowance on purpose: each check says how close is close enough. (The builtins and not std::source_location,
/// which clang 14 cannot use with this standard library.)
void check_mm(double got, double want, double allowed, const char* file = __builtin_FILE(),
              int line = __builtin_LINE());

/// The same for points and vectors: the largest component of the difference counts.
void check_mm(const glm::dvec3& got, const glm::dvec3& want, double allowed, const char* file = __builtin_FILE(),
              int line = __builtin_LINE());

}  // namespace baywright::test
