// The edges of the three kinds of fit: ISO 286-1 (definitions from memory; the widths at 25 mm from two published
// tables of standard tolerances, IT6 13 µm and IT7 21 µm for 18 to 30 mm).
#include "fit/verdict.h"

#include <doctest/doctest.h>
#include <limits>

namespace {

using baywright::fit::Verdict;
using baywright::fit::verdict_of;

TEST_CASE("ISO 286-1 fits at 25 mm: clearance, its edge, transition, interference") {
  // gap = hole - shaft in mm; asked 0
  CHECK(verdict_of(0.007, 0.041, 0.0) == Verdict::fits);            // H7/g6
  CHECK(verdict_of(0.000, 0.034, 0.0) == Verdict::fits);            // H7/h6: least clearance zero counts as clearance
  CHECK(verdict_of(-0.015, 0.019, 0.0) == Verdict::marginal);       // H7/k6
  CHECK(verdict_of(-0.035, -0.001, 0.0) == Verdict::does_not_fit);  // H7/p6
}

TEST_CASE("a gap that is at most just what is asked does not fit, unless it is never less") {
  CHECK(verdict_of(0.4, 0.5, 0.5) == Verdict::does_not_fit);
  CHECK(verdict_of(0.5, 0.5, 0.5) == Verdict::fits);
  CHECK(verdict_of(0.5, 0.6, 0.5) == Verdict::fits);
}

TEST_CASE("an open side never makes a verdict worse or better than what is known") {
  const double open = std::numeric_limits<double>::infinity();
  CHECK(verdict_of(0.5, open, 0.5) == Verdict::fits);
  CHECK(verdict_of(0.4, open, 0.5) == Verdict::marginal);  // never "does not fit" by a one-sided figure alone
  CHECK(verdict_of(-open, 0.4, 0.5) == Verdict::does_not_fit);
  CHECK(verdict_of(-open, 0.6, 0.5) == Verdict::marginal);
}

TEST_CASE("rounding does not flip an edge, and what is no figure is undecided") {
  CHECK(verdict_of(0.1 + 0.2 - 0.3, 1.0, 0.0) == Verdict::fits);
  CHECK(verdict_of(0.5 - 4e-10, 1.0, 0.5) == Verdict::fits);
  CHECK(verdict_of(0.5 - 2e-9, 1.0, 0.5) == Verdict::marginal);
  CHECK(verdict_of(std::numeric_limits<double>::quiet_NaN(), 1.0, 0.0) == Verdict::undecided);
}

}  // namespace
