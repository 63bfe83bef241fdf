// PCI-SIG, PCI Express M.2 Specification, Revision 1.0, November 1, 2013: sizes, height codes and the card's own
// features.
#include "standards/m2.h"
#include "support/check_mm.h"
#include "tolerance/stack.h"

#include <array>
#include <doctest/doctest.h>
#include <string_view>

using namespace baywright::standards;
using baywright::test::check_mm;
using baywright::tolerance::Dimension;

namespace {

constexpr double printed = 1e-9;  // sums of printed figures come out to the last digit

const m2::Width& width(int code) {
  for (const m2::Width& row : m2::widths()) {
    if (row.code == code) return row;
  }
  FAIL("no such width");
  return m2::widths()[0];
}

const m2::Length& length(int code) {
  for (const m2::Length& row : m2::lengths()) {
    if (row.code == code) return row;
  }
  FAIL("no such length");
  return m2::lengths()[0];
}

void check_limits(const Dimension& row, double low, double high) {
  CAPTURE(row.name);
  check_mm(row.low(), low, printed);
  check_mm(row.high(), high, printed);
}

}  // namespace

TEST_CASE("Section 2.2, Figures 2, 3 and Table 2: widths and lengths, general limits 0.15") {
  check_limits(width(12).across, 11.85, 12.15);
  check_limits(width(16).across, 16.35, 16.65);  // Type 1630 is 16.5 wide
  check_limits(width(22).across, 21.85, 22.15);
  check_limits(width(30).across, 29.85, 30.15);
  for (const int code : {16, 26, 30, 42, 60, 80, 110}) check_limits(length(code).along, code - 0.15, code + 0.15);
}

TEST_CASE("widths and lengths of later revisions are without limits") {
  // Press pages and a drive maker's guide, not the specification.
  check_limits(width(25).across, 25.0, 25.0);
  check_limits(length(38).along, 38.0, 38.0);
}

TEST_CASE("Table 2 and Figures 15 to 18: limits of the card's edge") {
  check_limits(m2::card_thickness(), 0.72, 0.88);
  check_limits(m2::tab_width(), 19.75, 19.95);
  check_limits(m2::shoulder(), 3.85, 4.15);
  check_limits(m2::notch_width(), 1.15, 1.25);
  check_limits(m2::notch_depth(), 3.35, 3.65);
  check_limits(m2::screw_hole(), 3.42, 3.58);
  check_limits(m2::top_pad(), 5.40, 5.60);
  check_limits(m2::bottom_pad(), 5.90, 6.10);
}

TEST_CASE("Figure 3: the maximum of a height code is its nominal of Figures 40 to 61 and 0.10") {
  struct Row {
    std::string_view code;
    double top_nominal, top_max, bottom_max;  // 0: single sided
  };
  constexpr std::array<Row, 8> table{{{"S1", 1.10, 1.20, 0},
                                      {"S2", 1.25, 1.35, 0},
                                      {"S3", 1.40, 1.50, 0},
                                      {"D1", 1.10, 1.20, 1.35},
                                      {"D2", 1.25, 1.35, 1.35},
                                      {"D3", 1.40, 1.50, 1.35},
                                      {"D4", 1.40, 1.50, 0.70},
                                      {"D5", 1.40, 1.50, 1.50}}};
  CHECK(m2::height_codes().size() == table.size());
  for (const Row& row : table) {
    CAPTURE(row.code);
    const m2::HeightCode* const code = m2::height_code(row.code);
    REQUIRE(code != nullptr);
    check_mm(code->top.nominal, row.top_nominal, printed);
    check_mm(code->top.high(), row.top_max, printed);
    REQUIRE(code->bottom.has_value() == (row.bottom_max > 0.0));
    if (code->bottom) check_mm(code->bottom->high(), row.bottom_max, printed);
  }
}

TEST_CASE("Figure 3 and Table 2: the whole card at its thickest") {
  // Derived: 0.88 and the maxima of the code.
  struct Row {
    std::string_view code;
    double worst;
  };
  constexpr std::array<Row, 3> table{{{"S3", 2.38}, {"D3", 3.73}, {"D5", 3.88}}};
  for (const Row& row : table) {
    CAPTURE(row.code);
    const m2::HeightCode& code = *m2::height_code(row.code);
    const double bottom = code.bottom ? code.bottom->high() : 0.0;
    check_mm(m2::card_thickness().high() + code.top.high() + bottom, row.worst, printed);
  }
}

TEST_CASE("Sections 2.3.3.1 and 2.3.4.1: room for parts along the card") {
  struct Row {
    int length;
    double top, bottom;
  };
  constexpr std::array<Row, 2> table{{{30, 26.0, 24.8}, {42, 38.0, 36.8}}};
  for (const Row& row : table) {
    CAPTURE(row.length);
    const double along = length(row.length).along.nominal;
    check_mm(along - m2::top_parts_start().nominal, row.top, printed);
    check_mm(along - m2::bottom_parts_start().nominal, row.bottom, printed);
  }
}

TEST_CASE("Figures 5 and 9: room for parts in front of the antenna connectors, in brackets there") {
  const double taken = m2::top_parts_start().nominal + m2::antenna_strip().nominal;
  check_mm(length(30).along.nominal - taken, 22.20, printed);
  check_mm(length(42).along.nominal - taken, 34.20, printed);
}

TEST_CASE("Figure 7: the tab of Type 1630, cut flush with the board") {
  // Its pin-1 edge stands where that of a 22 wide card does, 11 from the centre line.
  const double cut = width(16).across.nominal - width(22).across.nominal / 2.0;
  check_mm(m2::tab_width().nominal / 2.0 + cut, 15.425, printed);
}

TEST_CASE("Figure 17: the bottom ground pad reaches 4.0 from the screw end, 3.0 to each side") {
  check_mm(m2::bottom_pad_inset().nominal + m2::bottom_pad().nominal / 2.0, 4.0, printed);
  check_mm(m2::bottom_pad().nominal / 2.0, 3.0, printed);
}

TEST_CASE("Figures 66 to 71: the screw's head") {
  check_mm(m2::screw_head_height().high(), 1.20, printed);
  check_mm(m2::screw_head_diameter().high(), 5.20, printed);
}

TEST_CASE("Table 1: listed types") {
  CHECK(m2::listed_type({22, 80, "D2", "M"}));
  CHECK(m2::listed_type({22, 80, "D2", "BM"}));
  CHECK(m2::listed_type({22, 110, "D5", "M"}));
  CHECK(m2::listed_type({22, 30, "S2", "BM"}));
  CHECK(m2::listed_type({16, 30, "S1", "AE"}));
  CHECK(m2::listed_type({30, 42, "S3", "B"}));
  CHECK(!m2::listed_type({22, 30, "S2", "M"}));  // common practice, and not in the table
  CHECK(!m2::listed_type({22, 80, "D2", "B"}));
  CHECK(!m2::listed_type({22, 80, "D2", "E"}));
  CHECK(!m2::listed_type({25, 110, "?", "M"}));
}
