// Gap filler pads. 20 to 45 % and bleeding beyond: a pad maker's tutorial at a distributor (slides 13 and 16,
// secondary). The chain of one real pad: a distributor's forum (thermal pad thickness tolerance, 61355), which writes
// the area as 0.9 mm2 where its answers need 9.0 cm2.
#include "support/check_mm.h"
#include "support/check_ratio.h"
#include "thermal/pad.h"

#include <doctest/doctest.h>

using namespace baywright;
using namespace baywright::thermal;
using test::check_ratio;

TEST_CASE("a real pad, 10 W, the warm side at 30 C, at each of its limits") {
  struct Row {
    double thickness, resistance, page, cold;  // m, K/W, C
  };
  for (const Row& row : {Row{2.032e-3, 0.451556, 25.484, 25.4844}, Row{1.829e-3, 0.406444, 25.936, 25.9356},
                         Row{2.235e-3, 0.496667, 25.033, 25.0333}}) {
    const double resistance = layer_resistance(row.thickness, 5.0, 9.0e-4);
    check_ratio(resistance, row.resistance, 1e-4);
    const double cold = 30.0 - 10.0 * resistance;
    CHECK(std::abs(cold - row.page) <= 0.0006);
    check_ratio(cold, row.cold, 1e-4);
  }
}

TEST_CASE("a pad of 1.5 mm pressed by 30 % under a heatsink of 80 x 22 mm") {
  check_ratio(layer_resistance(1.5e-3 * 0.7, 6.0, 80e-3 * 22e-3), 0.0994318, 1e-6);
  check_ratio(layer_resistance(1.5e-3, 6.0, 80e-3 * 22e-3), 0.142045, 1e-5);
}

TEST_CASE("the gaps that keep a pad within 20 to 45 %") {
  const auto one = window(0.9, 1.1);
  REQUIRE(one);
  test::check_mm(one->low, 0.605, 1e-12);
  test::check_mm(one->high, 0.720, 1e-12);
  const auto thicker = window(1.35, 1.65);
  REQUIRE(thicker);
  test::check_mm(thicker->low, 0.9075, 1e-12);
  test::check_mm(thicker->high, 1.0800, 1e-12);
  // Limits too wide for the range: no gap holds every such pad.
  CHECK(!window(0.6, 1.4));
}

TEST_CASE("a gap of 0.56, 0.54 and 0.85 under a pad of 1.0: held, bleeding, loose") {
  CHECK(compression(0.56, 1.0) > 0.4399);
  const auto at = [](double gap) { return contact(gap, gap, 1.0, 1.0); };
  CHECK(!at(0.56).too_tight);
  CHECK(!at(0.56).too_loose);
  CHECK(at(0.54).too_tight);
  CHECK(at(0.85).too_loose);
  // Worst case: the window's own ends are held, a hair beyond either is not.
  CHECK(!contact(0.605, 0.720, 0.9, 1.1).too_tight);
  CHECK(!contact(0.605, 0.720, 0.9, 1.1).too_loose);
  CHECK(contact(0.604, 0.720, 0.9, 1.1).too_tight);
  CHECK(contact(0.605, 0.721, 0.9, 1.1).too_loose);
}
