// Mounting holes of the ATX family from two transcriptions that were made apart: a table in inches from the board's
// rear and CPU-side edges, and offsets in mm from hole B. Letters of each board: microATX Motherboard Interface
// Specification 1.2, Figure 2. Holes R and S: three public files that agree, no standard read. All coordinates are
// secondary.
#include "standards/boards.h"
#include "support/check_mm.h"

#include <array>
#include <doctest/doctest.h>
#include <string>
#include <string_view>

using namespace baywright::standards;
using baywright::test::check_mm;

namespace {

constexpr double exactly = 1e-9;
constexpr double inch = 25.4;

struct Row {
  char letter;
  double rear_in, cpu_side_in;  // the table in inches
  double du, dv;                // the table about hole B, mm; v away from the CPU side
};
constexpr std::array<Row, 12> rows{{
    {'A', 0.40, 11.35, 0.0, 78.74},
    {'B', 0.40, 8.25, 0.0, 0.0},
    {'C', 0.40, 6.45, 0.0, -45.72},
    {'F', 1.30, 0.25, 22.86, -203.20},
    {'G', 6.50, 11.35, 154.94, 78.74},
    {'H', 6.50, 6.45, 154.94, -45.72},
    {'J', 6.50, 0.25, 154.94, -203.20},
    {'K', 9.35, 11.35, 227.33, 78.74},
    {'L', 9.35, 6.45, 227.33, -45.72},
    {'M', 9.35, 0.25, 227.33, -203.20},
    {'R', 6.50, 9.05, 154.94, 20.32},
    {'S', 6.50, 8.25, 154.94, 0.0},
}};

const Row& row(char letter) {
  for (const Row& one : rows) {
    if (one.letter == letter) return one;
  }
  FAIL("no such letter");
  return rows[0];
}

const boards::Hole& hole(std::string_view board, char letter) {
  static const boards::Hole none{};
  REQUIRE(boards::find(board) != nullptr);
  for (const boards::Hole& one : boards::find(board)->holes) {
    if (one.letter == letter) return one;
  }
  FAIL("no such hole");
  return none;
}

std::string letters(std::string_view board) {
  std::string all;
  for (const boards::Hole& one : boards::find(board)->holes) all += one.letter;
  return all;
}

}  // namespace

TEST_CASE("microATX specification 1.2, Figure 2: which holes a board has") {
  CHECK(letters("atx") == "ACFGHJKLM");
  CHECK(letters("micro-atx") == "BCFHJLMRS");
  CHECK(letters("mini-itx") == "CFHJ");  // Mini-ITX Addendum 1.1
}

TEST_CASE("ATX and microATX holes: the table in inches") {
  for (const std::string_view board : {"atx", "micro-atx"}) {
    for (const char letter : letters(board)) {
      CAPTURE(board);
      CAPTURE(letter);
      check_mm(hole(board, letter).x, row(letter).rear_in * inch, exactly);
      check_mm(hole(board, letter).y, -row(letter).cpu_side_in * inch, exactly);
    }
  }
}

TEST_CASE("all three boards: offsets between holes, from the table about hole B") {
  for (const std::string_view board : {"atx", "micro-atx", "mini-itx"}) {
    for (const char letter : letters(board)) {
      CAPTURE(board);
      CAPTURE(letter);
      check_mm(hole(board, letter).x - hole(board, 'C').x, row(letter).du - row('C').du, exactly);
      check_mm(hole(board, letter).y - hole(board, 'C').y, -(row(letter).dv - row('C').dv), exactly);
    }
  }
}

TEST_CASE("Mini-ITX holes from the rear and the slot-side edge") {
  // A public model of the board after the Mini-ITX Addendum 1.1; the board is 170 x 170 (its Table 1).
  struct Corner {
    char letter;
    double rear, slot_side;
  };
  constexpr std::array<Corner, 4> corners{
      {{'C', 10.16, 6.35}, {'F', 33.02, 163.83}, {'H', 165.10, 6.35}, {'J', 165.10, 163.83}}};
  for (const Corner& corner : corners) {
    CAPTURE(corner.letter);
    check_mm(hole("mini-itx", corner.letter).x, corner.rear, exactly);
    check_mm(hole("mini-itx", corner.letter).y + 170.0, corner.slot_side, exactly);
  }
}

TEST_CASE("distances between ATX holes") {
  // A to C, C to F across, B to C; steps from the first row; A to K and F to J along.
  check_mm(hole("atx", 'C').y - hole("atx", 'A').y, 124.46, exactly);
  check_mm(hole("atx", 'F').y - hole("atx", 'C').y, 157.48, exactly);
  check_mm(hole("micro-atx", 'C').y - hole("micro-atx", 'B').y, 45.72, exactly);
  check_mm(hole("atx", 'F').x - hole("atx", 'A').x, 22.86, exactly);
  check_mm(hole("atx", 'G').x - hole("atx", 'A').x, 154.94, exactly);
  check_mm(hole("atx", 'K').x - hole("atx", 'A').x, 227.33, exactly);
  check_mm(hole("atx", 'J').x - hole("atx", 'F').x, 132.08, exactly);
}

TEST_CASE("microATX specification 1.2, Table 3, and Mini-ITX Addendum 1.1, Table 1: sizes") {
  struct Size {
    std::string_view board;
    double along, across;
  };
  constexpr std::array<Size, 3> sizes{
      {{"atx", 243.84, 304.80}, {"micro-atx", 243.84, 243.84}, {"mini-itx", 170.0, 170.0}}};
  for (const Size& size : sizes) {
    CAPTURE(size.board);
    check_mm(boards::find(size.board)->along_x.high(), size.along, exactly);
    check_mm(boards::find(size.board)->across_y.high(), size.across, exactly);
  }
  // Hole A's margin to the slot-side edge.
  check_mm(hole("atx", 'A').y + boards::find("atx")->across_y.high(), 16.51, exactly);
  check_mm(boards::thickness().nominal, 1.57, exactly);      // Figure 4, note: typical 0.062 in
  check_mm(boards::hole_diameter().nominal, 3.96, exactly);  // secondary: 0.156 in
}

TEST_CASE("ATX and microATX have six holes in common, nine each") {
  int common = 0;
  for (const char letter : letters("micro-atx")) {
    if (letters("atx").find(letter) != std::string::npos) ++common;
  }
  CHECK(common == 6);
  CHECK(letters("atx").size() == 9);
  CHECK(letters("micro-atx").size() == 9);
}

TEST_CASE("Mini-ITX height zones") {
  // A public model of the board after the Mini-ITX Addendum 1.1, Figure 4: secondary. Read at one point in each zone,
  // given from the rear and from the slot-side edge.
  struct Point {
    double rear, slot_side, height;
  };
  constexpr std::array<Point, 6> points{
      {{5, 5, 16}, {160, 14.9, 16}, {26.9, 15.1, 39}, {27.1, 100, 57}, {139.9, 169, 57}, {140.1, 100, 38}}};
  for (const Point& point : points) {
    int found = 0;
    for (const boards::Zone& zone : boards::find("mini-itx")->zones) {
      const double y = point.slot_side - 170.0;
      if (point.rear > zone.x0 && point.rear < zone.x1 && y > zone.y0 && y < zone.y1) {
        ++found;
        check_mm(zone.height.high(), point.height, exactly);
      }
    }
    CHECK(found == 1);
  }
}
