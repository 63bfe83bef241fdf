#pragma once
// Checks with an absolute allowance in mm. doctest's own approximate comparison is relative and lets 1e-3 mm through on
// a 110 mm card, so no test uses it (tests/layering holds that).
#include <glm/vec3.hpp>
#include <source_location>

namespace baywright::test {

/// Fails unless |got - want| <= allowed, at the caller's line, with all figures. NaN fails. All in mm. There is no
/// default allowance on purpose: each check says how close is close enough.
void check_mm(double got, double want, double allowed,
              std::source_location here = std::source_location::current());

/// The same for points and vectors: the largest component of the difference counts.
void check_mm(const glm::dvec3& got, const glm::dvec3& want, double allowed,
              std::source_location here = std::source_location::current());

}  // namespace baywright::test
