// Washers ISO 7089 and 7092, nuts ISO 4032: FastenersWB (GPL-2) and BOLTS (LGPL, CC-BY-SA), two data sets made apart,
// agree on every figure unless a case says otherwise. Lower limits of outside and thickness: from memory.
#include "standards/fasteners.h"
#include "support/check_mm.h"

#include <array>
#include <doctest/doctest.h>
#include <string_view>

using namespace baywright::standards;
using baywright::test::check_mm;

namespace {

constexpr double exactly = 1e-12;

const fasteners::Washer& washer(std::string_view standard, std::string_view thread) {
  static const fasteners::Washer none{};
  for (const fasteners::Washer& one : fasteners::washers()) {
    if (one.standard == standard && one.thread == thread) return one;
  }
  FAIL("no such washer");
  return none;
}

}  // namespace

TEST_CASE("washers of ISO 7089 and ISO 7092") {
  struct Row {
    std::string_view standard, thread;
    double bore, outside, thickness;  // both data sets
    double thickest;                  // FastenersWB
    double thinnest, least_outside;   // from memory
  };
  constexpr std::array<Row, 10> rows{{
      {"ISO 7089", "M1.6", 1.7, 4.0, 0.3, 0.35, 0.25, 3.7},
      {"ISO 7089", "M2", 2.2, 5.0, 0.3, 0.35, 0.25, 4.7},
      {"ISO 7089", "M2.5", 2.7, 6.0, 0.5, 0.55, 0.45, 5.7},
      {"ISO 7089", "M3", 3.2, 7.0, 0.5, 0.55, 0.45, 6.64},
      {"ISO 7089", "M4", 4.3, 9.0, 0.8, 0.90, 0.70, 8.64},
      {"ISO 7092", "M1.6", 1.7, 3.5, 0.3, 0.35, 0.25, 3.2},
      {"ISO 7092", "M2", 2.2, 4.5, 0.3, 0.35, 0.25, 4.2},
      {"ISO 7092", "M2.5", 2.7, 5.0, 0.5, 0.55, 0.45, 4.7},
      {"ISO 7092", "M3", 3.2, 6.0, 0.5, 0.55, 0.45, 5.7},
      {"ISO 7092", "M4", 4.3, 8.0, 0.5, 0.55, 0.45, 7.64},
  }};
  CHECK(fasteners::washers().size() == rows.size());
  for (const Row& row : rows) {
    CAPTURE(row.standard);
    CAPTURE(row.thread);
    const fasteners::Washer& one = washer(row.standard, row.thread);
    check_mm(one.bore.low(), row.bore, exactly);
    check_mm(one.outside.high(), row.outside, exactly);
    check_mm(one.outside.low(), row.least_outside, exactly);
    check_mm(one.thickness.nominal, row.thickness, exactly);
    check_mm(one.thickness.high(), row.thickest, exactly);
    check_mm(one.thickness.low(), row.thinnest, exactly);
  }
}

TEST_CASE("nuts of ISO 4032") {
  struct Row {
    std::string_view thread;
    double across_flats, height;  // both data sets; the Mechanical Engineer's Data Handbook, 8.2.4, too, but for M3.5
    double corners;               // BOLTS
    double corners_up;            // FastenersWB, which rounds up
  };
  constexpr std::array<Row, 6> rows{{
      {"M1.6", 3.2, 1.3, 3.41, 3.4},  // corners from memory: BOLTS has the 3.48 of DIN 934
      {"M2", 4.0, 1.6, 4.32, 4.4},
      {"M2.5", 5.0, 2.0, 5.45, 5.5},
      {"M3", 5.5, 2.4, 6.01, 6.1},
      {"M3.5", 6.0, 2.8, 6.58, 6.6},
      {"M4", 7.0, 3.2, 7.66, 7.7},
  }};
  REQUIRE(fasteners::nuts().size() == rows.size());
  for (std::size_t i = 0; i < rows.size(); ++i) {
    CAPTURE(rows[i].thread);
    const fasteners::Nut& one = fasteners::nuts()[i];
    CHECK(one.thread == rows[i].thread);
    check_mm(one.across_flats.high(), rows[i].across_flats, exactly);
    check_mm(one.height.high(), rows[i].height, exactly);
    check_mm(one.corners.low(), rows[i].corners, exactly);
    check_mm(one.corners.low(), rows[i].corners_up, 0.1);
    // A hexagon of so much across flats has at most 1.1547 of it across corners.
    CHECK(one.corners.low() < 1.1547005 * one.across_flats.high());
  }
  CHECK(fasteners::nuts()[0].corners.low() < 3.45);
}
