// Parts per million beyond a limit, as tables of process capability give them.
#include "tolerance/stack.h"

#include <array>
#include <cmath>
#include <doctest/doctest.h>

using namespace baywright::tolerance;

TEST_CASE("one normal dimension beyond one and two sigma: the capability table, less what the cut takes off") {
  // isixsigma.com, "Where can I locate a Cpk calculator": 1350 parts per million beyond one side at Cpk 1, 2700 beyond
  // both. At Cpk 1/3 and 2/3: 158655.25 and 22750.13, derived (complementary error function, Python's math.erfc).
  // Parts beyond three sigma are taken to be sorted out, so every count loses the 1350 and is of all but the 2700.
  constexpr double beyond_limit = 1349.898;
  struct Row {
    double sigmas, ppm;
  };
  constexpr std::array<Row, 3> table{{{1.0, 158655.25}, {2.0, 22750.13}, {3.0, 1349.898}}};
  const Dimension d{.name = "any", .nominal = 0.0, .minus = 0.3, .plus = 0.3, .source = ""};  // sigma 0.1
  const std::array terms{Term{1.0, &d}};
  for (const Row& row : table) {
    CAPTURE(row.sigmas);
    const double want = (row.ppm - beyond_limit) / (1e6 - 2.0 * beyond_limit);
    const double got = share_at_least(10.0, terms, 10.0 + 0.1 * row.sigmas).value_or(-1.0);
    CHECK(std::abs(got - want) < 1e-8);
  }
}
