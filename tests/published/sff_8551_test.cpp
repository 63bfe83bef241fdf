// 5.25-inch devices: SFF-8551, Table 5-1, as public files transcribe it, and its Figure 5-1; full-height disks:
// SFF-8501 rev 1.1, as one public file transcribes it.
#include "standards/drives.h"
#include "standards/fasteners.h"
#include "support/check_mm.h"

#include <doctest/doctest.h>

using namespace baywright::standards;
using baywright::test::check_mm;
using baywright::tolerance::Known;

namespace {

constexpr double exactly = 1e-9;

}  // namespace

TEST_CASE("SFF-8551, Table 5-1: sizes and bezel") {
  const drives::Device& device = drives::device_5_25();
  check_mm(device.width.nominal, 146.05, exactly);          // A5
  check_mm(device.height.high(), 41.53, exactly);           // A1, a maximum
  check_mm(device.height.high(), 1.635 * 25.4, 0.002);      // the table's inches
  check_mm(device.bezel_height.nominal, 42.30, exactly);    // A2
  check_mm(device.bezel_width.nominal, 148.00, exactly);    // A3
  check_mm(device.bezel_thickness.nominal, 5.00, exactly);  // A17
  check_mm(device.button.nominal, 6.50, exactly);           // A16
  check_mm(device.length.high(), 202.80, exactly);          // A4, a maximum
  CHECK(device.bezel_height.elsewhere.find("42.50") != std::string::npos);
}

TEST_CASE("SFF-8551, Table 5-1: holes, from the bezel's rear face") {
  const drives::Device& device = drives::device_5_25();
  check_mm(device.first_hole.nominal, 47.40, exactly);                                // A9, A10
  check_mm(device.first_hole.nominal + device.second_hole.nominal, 126.65, exactly);  // + A8, A11 79.25
  check_mm(device.side_low.nominal, 10.00, exactly);                                  // A13
  check_mm(device.side_high.nominal, 21.84, exactly);                                 // A14
  // Two margins A7 and the columns A6 make the width, but for the rounding of inches.
  check_mm(device.bottom_across.nominal, 139.70, exactly);
  check_mm(2.0 * device.bottom_from_edge.nominal + device.bottom_across.nominal, 146.06, exactly);
  check_mm(device.width.nominal, 146.06, 0.02);
}

TEST_CASE("SFF-8551, Figure 5-1, note: two threads of M3") {
  CHECK(drives::device_5_25().thread == "M3");
  check_mm(drives::device_5_25().least_engagement.low(), 1.00, exactly);  // ISO 261: M3 has a pitch of 0.5
  CHECK(drives::device_5_25().least_engagement.known == Known::derived);
  // The other thread of drives: UNC, 32 to the inch.
  check_mm(fasteners::thread("6-32")->pitch.nominal, 0.79375, exactly);
}

TEST_CASE("SFF-8501: full-height disk") {
  const auto& rows = drives::full_height_disk();
  REQUIRE(rows.size() == 6);
  check_mm(rows[0].high(), 82.55, exactly);  // a maximum
  check_mm(rows[1].nominal, 146.05, exactly);
  check_mm(rows[2].nominal, 204.72, exactly);
  check_mm(rows[2].nominal, 8.060 * 25.4, 0.005);  // the table's inches, against 202.72 elsewhere
  check_mm(rows[3].nominal, 79.24, exactly);
  check_mm(rows[4].nominal, 9.91, exactly);
  check_mm(rows[5].nominal, 21.84, exactly);
}
