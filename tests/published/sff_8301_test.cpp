// 3.5-inch drives: SFF-8301, Table 3-1, as public files transcribe it; features and datums from SFF-8300, Figure 3-1.
#include "standards/drives.h"
#include "support/check_mm.h"

#include <array>
#include <doctest/doctest.h>
#include <string_view>

using namespace baywright::standards;
using baywright::test::check_mm;
using baywright::tolerance::Dimension;
using baywright::tolerance::Known;

namespace {

constexpr double exactly = 1e-9;

const drives::Family& drive() {
  REQUIRE(drives::family("3.5in") != nullptr);
  return *drives::family("3.5in");
}

double lowest(const drives::HoleRow& row) {
  double sum = 0.0;
  for (const Dimension& part : row.along) sum += part.low();
  return sum;
}

double highest(const drives::HoleRow& row) {
  double sum = 0.0;
  for (const Dimension& part : row.along) sum += part.high();
  return sum;
}

}  // namespace

TEST_CASE("SFF-8301, Table 3-1: sizes") {
  check_mm(drive().width.low(), 101.35, exactly);  // A3 101.60, A11 0.25
  check_mm(drive().width.high(), 101.85, exactly);
  check_mm(drive().length.high(), 147.00, exactly);  // A2, no minimum
  CHECK(drive().length.low() < 0.0);
  struct Row {
    std::string_view code;
    double high;
  };
  constexpr std::array<Row, 3> rows{{{"17.8", 17.80}, {"26.1", 26.10}, {"42", 42.00}}};  // A1, each a maximum
  CHECK(drive().heights.size() == 3);
  for (const Row& row : rows) {
    CAPTURE(row.code);
    REQUIRE(drives::height(drive(), row.code) != nullptr);
    check_mm(drives::height(drive(), row.code)->height.high(), row.high, exactly);
    CHECK(drives::height(drive(), row.code)->height.low() < 0.0);
    CHECK(drives::bottom_holes_promised(drive(), *drives::height(drive(), row.code)));
  }
}

TEST_CASE("SFF-8301, Table 3-1: bottom rows, the second and third from the first") {
  const auto& rows = drive().bottom_rows;
  REQUIRE(rows.size() == 3);
  check_mm(rows[0].x(), 41.28, exactly);   // A7
  check_mm(rows[1].x(), 85.73, exactly);   // + A6 44.45
  check_mm(rows[2].x(), 117.48, exactly);  // + A13 76.20
  CHECK(rows[0].required);
  CHECK(!rows[1].required);  // a large drive often has rows 1 and 3 alone
  CHECK(!rows[2].required);
  check_mm(lowest(rows[0]), 40.78, exactly);  // A12 0.50
  check_mm(highest(rows[0]), 41.78, exactly);
  check_mm(lowest(rows[2]), 116.73, exactly);  // 117.48 less 0.50 and 0.25
  check_mm(highest(rows[2]), 118.23, exactly);
}

TEST_CASE("SFF-8301, Table 3-1: side holes, the second from the first") {
  const auto& rows = drive().side_rows;
  REQUIRE(rows.size() == 3);
  check_mm(rows[0].x(), 28.50, exactly);   // A8
  check_mm(rows[2].x(), 130.10, exactly);  // + A9 101.60
  CHECK(rows[0].required);
  CHECK(rows[2].required);
  // Between them a hole that only older editions have.
  check_mm(rows[1].x(), 70.10, exactly);
  CHECK(!rows[1].required);
  check_mm(highest(rows[2]) - lowest(rows[2]), 1.50, exactly);  // A12 0.50 and 0.25, both ways
  check_mm(drive().side_up.low(), 6.10, exactly);               // A10 6.35 ±0.25
  check_mm(drive().side_up.high(), 6.60, exactly);
}

TEST_CASE("SFF-8301: columns and margins make the width, but for the rounding of inches") {
  check_mm(drive().bottom_across.nominal, 95.25, exactly);    // A4
  check_mm(drive().bottom_from_edge.nominal, 3.18, exactly);  // A5
  check_mm(2.0 * drive().bottom_from_edge.nominal + drive().bottom_across.nominal, 101.61, exactly);
  check_mm(drive().width.nominal, 101.61, 0.02);
}

TEST_CASE("SFF-8301, Table 3-1, threads: 6-32, at least 3.0 deep and no screw past 3.8") {
  CHECK(drive().thread == "6-32");
  for (const drives::Height& height : drive().heights) {
    for (const drives::Depth& depth : {drives::bottom_depth(drive(), height), drives::side_depth(drive(), height)}) {
      check_mm(depth.thread.low(), 3.0, exactly);
      check_mm(depth.most.high(), 3.8, exactly);
      CHECK(depth.most.known == Known::secondary);
      REQUIRE(depth.warned);
      check_mm(depth.warned->high(), 3.56, exactly);  // one maker's 0.140 in
    }
  }
}
