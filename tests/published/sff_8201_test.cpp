// 2.5-inch drives: SFF-8201 rev 3.4, Table 3-1. The table was not read itself: its figures come from public files that
// transcribe it, and the features and datums from its Figures 3-1 and 3-2.
#include "standards/drives.h"
#include "support/check_mm.h"

#include <array>
#include <cmath>
#include <doctest/doctest.h>
#include <string_view>

using namespace baywright::standards;
using baywright::test::check_mm;
using baywright::tolerance::Known;

namespace {

constexpr double exactly = 1e-9;

const drives::Family& drive() {
  REQUIRE(drives::family("2.5in") != nullptr);
  return *drives::family("2.5in");
}

const drives::Height& height(std::string_view code) {
  REQUIRE(drives::height(drive(), code) != nullptr);
  return *drives::height(drive(), code);
}

}  // namespace

TEST_CASE("SFF-8201, Table 3-1: heights and their limits") {
  // A1 with A2 +0.00 and A3 -0.50, but for the exceptions of the table's comments: 5.00, 7.00 and 9.50.
  struct Row {
    std::string_view code;
    double low, high;
  };
  constexpr std::array<Row, 9> rows{{
      {"5", 4.80, 5.20},
      {"7", 6.50, 7.20},
      {"8.47", 7.97, 8.47},
      {"9.5", 9.30, 9.70},
      {"10.5", 10.00, 10.50},
      {"12.7", 12.20, 12.70},
      {"15", 14.50, 15.00},
      {"17", 16.50, 17.00},
      {"19.05", 18.55, 19.05},
  }};
  CHECK(drive().heights.size() == 9);
  for (const Row& row : rows) {
    CAPTURE(row.code);
    check_mm(height(row.code).height.low(), row.low, exactly);
    check_mm(height(row.code).height.high(), row.high, exactly);
    CHECK(height(row.code).height.known == Known::secondary);
  }
}

TEST_CASE("SFF-8201, Table 3-1: width and lengths") {
  check_mm(drive().width.low(), 69.60, exactly);  // A4 69.85, A5 0.25
  check_mm(drive().width.high(), 70.10, exactly);
  check_mm(drive().flat->nominal, 8.00, exactly);    // A37
  check_mm(drive().length.high(), 100.45, exactly);  // A6; no minimum
  CHECK(drive().length.low() < 0.0);                 // so nothing that stops the far end may count on it
  check_mm(drive().obsolete_length->high(), 101.85, exactly);
}

TEST_CASE("SFF-8201, Table 3-1: mounting holes") {
  REQUIRE(drive().bottom_rows.size() == 2);
  REQUIRE(drive().side_rows.size() == 2);
  for (const auto& rows : {drive().bottom_rows, drive().side_rows}) {
    check_mm(rows[0].x(), 14.00, exactly);  // A50, A52
    check_mm(rows[1].x(), 90.60, exactly);  // A51, A53
    check_mm(rows[1].x() - rows[0].x(), 76.60, exactly);
    for (const drives::HoleRow& row : rows) {
      CHECK(row.required);
      check_mm(row.along.back().plus, 0.25, exactly);  // A27, A33: position zone of diameter 0.50
      check_mm(row.along.back().minus, 0.25, exactly);
    }
  }
  check_mm(drive().bottom_across.nominal, 61.72, exactly);    // A29, 2.430 in
  check_mm(drive().bottom_from_edge.nominal, 4.07, exactly);  // A28
  check_mm(drive().side_up.nominal, 3.00, exactly);           // A23
  CHECK(drive().thread == "M3");                              // A26, A32
  CHECK(drive().bottom_across.elsewhere.find("61.92") != std::string::npos);
  CHECK(drive().side_up.elsewhere.find("4.07") != std::string::npos);
}

TEST_CASE("SFF-8201: what its rows add up to") {
  // Two margins and the columns make the width, but for the rounding of inches.
  check_mm(2.0 * drive().bottom_from_edge.nominal + drive().bottom_across.nominal, 69.86, exactly);
  check_mm(drive().width.nominal, 69.86, 0.02);
  // The diagonal of the bottom holes: hypot(76.60, 61.72).
  const double along = drive().bottom_rows[1].x() - drive().bottom_rows[0].x();
  check_mm(std::hypot(along, drive().bottom_across.nominal), 98.3713, 1e-4);
}

TEST_CASE("SFF-8201, Figures 3-1 and 3-2: threads, and what low drives do not promise") {
  struct Row {
    std::string_view code;
    bool bottom_holes;
    double side;
  };
  constexpr std::array<Row, 5> rows{
      {{"5", false, 2.0}, {"7", false, 2.0}, {"8.47", true, 3.0}, {"9.5", true, 3.0}, {"15", true, 3.0}}};
  for (const Row& row : rows) {
    CAPTURE(row.code);
    CHECK(drives::bottom_holes_promised(drive(), height(row.code)) == row.bottom_holes);  // optional where A1 <= 7
    const drives::Depth side = drives::side_depth(drive(), height(row.code));             // A38, a minimum
    check_mm(side.thread.low(), row.side, exactly);
    const drives::Depth bottom = drives::bottom_depth(drive(), height(row.code));  // A41, a minimum
    check_mm(bottom.thread.low(), 2.5, exactly);
    // The standard has no maximum: the promised thread stands in for it, and the row says so.
    for (const drives::Depth& depth : {side, bottom}) {
      check_mm(depth.most.high(), depth.thread.low(), exactly);
      CHECK(depth.most.known == Known::derived);
      CHECK(depth.most.source.find("no maximum") != std::string::npos);
      CHECK(!depth.warned);
    }
  }
}
