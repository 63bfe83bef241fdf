// The serial connector's place: SFF-8223 rev 2.7 on 2.5-inch drives, SFF-8323 rev 1.6 on 3.5-inch drives, each Table
// 3-1 as a public file transcribes it; features and datums from their Figures 3-1 and 3-2.
#include "standards/drives.h"
#include "support/check_mm.h"

#include <array>
#include <doctest/doctest.h>
#include <string_view>

using namespace baywright::standards;
using baywright::test::check_mm;

namespace {

constexpr double exactly = 1e-9;

const drives::Family& drive(std::string_view id) {
  REQUIRE(drives::family(id) != nullptr);
  return *drives::family(id);
}

}  // namespace

TEST_CASE("SFF-8223 and SFF-8323, Table 3-1: the same connector on both drives") {
  for (const std::string_view id : {"2.5in", "3.5in"}) {
    CAPTURE(id);
    const drives::Tongue& tongue = drive(id).tongue;
    check_mm(tongue.length.nominal, 33.39, exactly);     // A3
    check_mm(tongue.from_edge.nominal, 13.43, exactly);  // A13
    check_mm(tongue.height.low(), 3.12, exactly);        // A7 3.50 ±0.38
    check_mm(tongue.height.high(), 3.88, exactly);
    check_mm(tongue.position.low(), -0.38, exactly);  // A6 of SFF-8223: position zone 0.76
    check_mm(tongue.position.high(), 0.38, exactly);
    check_mm(tongue.body_width.nominal, 42.73, exactly);    // A2
    check_mm(tongue.body_height.nominal, 4.00, exactly);    // A5
    check_mm(tongue.clear_length.nominal, 37.20, exactly);  // A14
    check_mm(tongue.clear_height.low(), 1.50, exactly);     // A15, a minimum
    check_mm(tongue.clear_ends.nominal, 1.00, exactly);     // A16, A17, A19 of SFF-8223
  }
}

TEST_CASE("SFF-8223 and SFF-8323, Table 3-1: where they differ") {
  check_mm(drive("2.5in").tongue.offset.nominal, 4.80, exactly);  // A11
  check_mm(drive("3.5in").tongue.offset.nominal, 20.68, exactly);
  check_mm(drive("2.5in").tongue.recess.low(), 8.90, exactly);  // A8 9.40, profile zone 1.00
  check_mm(drive("2.5in").tongue.recess.high(), 9.90, exactly);
  check_mm(drive("3.5in").tongue.recess.nominal, 36.38, exactly);             // A8
  check_mm(drive("3.5in").tongue.recess_from_side->nominal, 23.60, exactly);  // A18
  check_mm(drive("2.5in").tongue.beyond.nominal, 0.30, exactly);              // A18
}

TEST_CASE("both connectors: 4.90 from the face to the bottom of the recess") {
  const drives::Family& small = drive("2.5in");
  const drives::Family& large = drive("3.5in");
  // SFF-8201 and 8223: 14.00 - 9.40 + 0.30.
  check_mm(small.bottom_rows[0].x() - small.tongue.recess.nominal + small.tongue.beyond.nominal, 4.90, exactly);
  // SFF-8301 and 8323, by the bottom holes 41.28 - 36.38 and by the side holes 28.50 - 23.60: so the face is flush.
  check_mm(large.bottom_rows[0].x() - large.tongue.recess.nominal, 4.90, exactly);
  check_mm(large.side_rows[0].x() - large.tongue.recess_from_side->nominal, 4.90, exactly);
  check_mm(large.tongue.beyond.nominal, 0.0, exactly);
  check_mm(small.tongue.depth.nominal, 4.90, exactly);
  check_mm(large.tongue.depth.nominal, 4.90, exactly);
}

TEST_CASE("both connectors: offset from width, edge and length, and height from the side holes") {
  struct Row {
    std::string_view id;
    double offset, rounded;
  };
  // 69.85/2 - 13.43 - 33.39/2 and 101.60/2 - 13.43 - 33.39/2; the table of SFF-8323 has 20.68.
  constexpr std::array<Row, 2> rows{{{"2.5in", 4.80, 4.80}, {"3.5in", 20.675, 20.68}}};
  for (const Row& row : rows) {
    CAPTURE(row.id);
    const drives::Family& family = drive(row.id);
    const double by_width =
        family.width.nominal / 2.0 - family.tongue.from_edge.nominal - family.tongue.length.nominal / 2.0;
    check_mm(by_width, row.offset, exactly);
    check_mm(family.tongue.offset.nominal, row.rounded, exactly);
    check_mm(family.tongue.offset.nominal, by_width, 0.006);
    // 3.00 + 0.50 and 6.35 - 2.85.
    check_mm(family.side_up.nominal + family.tongue.up_from_side.nominal, 3.50, exactly);
    check_mm(family.tongue.height.nominal, 3.50, exactly);
  }
}
