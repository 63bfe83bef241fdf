// Cased drives in bays, as whole builds. Sizes: SFF-8201 rev 3.4, Table 3-1 and SFF-8301, Table 3-1, as transcribed in
// public files; SFF-8551, Table 5-1, as transcribed in two. What follows for a bay is arithmetic on them.
#include "support/check_mm.h"
#include "support/whole_build.h"

#include <doctest/doctest.h>
#include <string>
#include <utility>

namespace {

using namespace baywright;
using fit::Code;
using fit::Kind;
using fit::Verdict;
using test::bay;
using test::check_gap;
using test::check_mm;
using test::drive;
using test::seating;

fit::Seating in_height(const std::string& use, const std::string& high) {
  return seating(bay("2.5in", "inside = { height = " + high + " }") + drive(use, "sata 6"));
}

TEST_CASE("SFF-8201: a drive of 9.50 (±0.20) under 9.50 is marginal, and sure under 9.70") {
  const fit::Seating tight = in_height("2.5in/9.5", "9.50");
  CHECK(tight.verdict == Verdict::marginal);
  check_gap(test::gap(tight, "drive", "bay", "roof"), 0.0, -0.20, 0.20);
  CHECK(in_height("2.5in/9.5", "9.70").verdict == Verdict::fits);
  CHECK(in_height("2.5in/9.5", "9.69").verdict == Verdict::marginal);
  CHECK(in_height("2.5in/9.5", "9.30").verdict == Verdict::does_not_fit);
  CHECK(in_height("2.5in/9.5", "7.20").verdict == Verdict::does_not_fit);
}

TEST_CASE("SFF-8201: a drive of 7.00 (+0.20 -0.50) under 7.00 is marginal, and sure under 7.20") {
  const fit::Seating tight = in_height("2.5in/7", "7.00");
  CHECK(tight.verdict == Verdict::marginal);
  check_gap(test::gap(tight, "drive", "bay", "roof"), 0.0, -0.20, 0.50);
  CHECK(in_height("2.5in/7", "7.20").verdict == Verdict::fits);
  CHECK(in_height("2.5in/7", "6.50").verdict == Verdict::does_not_fit);
}

TEST_CASE("SFF-8201: a drive of 15.00 (+0 -0.50) under 15.00 fits") {
  const fit::Seating tight = in_height("2.5in/15", "15.00");
  CHECK(tight.verdict == Verdict::fits);
  check_gap(test::gap(tight, "drive", "bay", "roof"), 0.0, 0.0, 0.50);
  CHECK(in_height("2.5in/15", "14.99").verdict == Verdict::marginal);
}

TEST_CASE("SFF-8201: a U.2 drive of 15 does not go into a bay for 9.5") {
  const fit::Seating seated =
      seating(bay("2.5in", "plug = \"u2\"\ninside = { height = 9.70 }", "bay", "\"pcie 4.0 x4\"") +
              drive("2.5in/15", "pcie 4.0 x4"));
  CHECK(seated.questions.interface.answer == fit::Answer::yes);
  CHECK(seated.verdict == Verdict::does_not_fit);
  CHECK(seated.findings.at(0).kind == Kind::clearance);
  check_gap(test::gap(seated, "drive", "bay", "roof"), -5.30, -5.30, -4.80);
}

TEST_CASE("SFF-8201: the width of 69.60 to 70.10 between walls") {
  const auto between = [](const std::string& wide) {
    return seating(bay("2.5in", "inside = { width = " + wide + " }") + drive("2.5in/7", "sata 6")).verdict;
  };
  CHECK(between("70.10") == Verdict::fits);
  CHECK(between("70.09") == Verdict::marginal);
  CHECK(between("69.60") == Verdict::does_not_fit);
}

TEST_CASE("SFF-8201: at most 100.45 long, and 101.85 where it is old, nothing bounds it below") {
  const auto before = [](const std::string& deep, const std::string& more) {
    return seating(bay("2.5in", "inside = { depth = " + deep + " }") + drive("2.5in/7", "sata 6", more)).verdict;
  };
  CHECK(before("100.45", "") == Verdict::fits);
  CHECK(before("100.44", "") == Verdict::marginal);
  CHECK(before("100.45", "old = true") == Verdict::marginal);
  CHECK(before("101.85", "old = true") == Verdict::fits);
}

/// A post beside the bay where the wall of a place for `place_width` would be, as high as the drive's case.
std::string post(double place_width, double near_side) {
  const double low = 150.0 - 0.5 * place_width - 10.0 + near_side;
  return "[[part]]\nname = \"post\"\nsolid = { box = [20, 10, 4] }\nabove = { part = \"floor\", by = 2.0, at = [120, " +
         std::to_string(low) + "] }\n";
}

TEST_CASE("a 2.5-inch drive in the middle of a 3.5-inch place: 15.875 beside it (101.60 less 69.85, halved)") {
  const fit::Seating seated = seating("clearance = 12\n" + bay("3.5in", "") + post(101.60, 0.0) +
                                      drive("2.5in/7", "sata 6", "wears = [{ adapter = \"adapter/2.5in-in-3.5in\" }]"));
  // Its own width moves both sides by half of ±0.25.
  check_gap(test::gap(seated, "drive", "post", "case"), 15.875, 15.750, 16.000);
}

TEST_CASE("a 2.5-inch drive at the edge of a 3.5-inch place: 31.75 on the other side (101.60 less 69.85)") {
  const fit::Seating seated =
      seating("clearance = 28\n" + bay("3.5in", "") + post(101.60, 0.0) +
              drive("2.5in/7", "sata 6", "wears = [{ adapter = \"adapter/2.5in-in-3.5in-flush\" }]"));
  // The drive's ±0.25, and half of the carrier's, which stands in the middle of the place.
  check_gap(test::gap(seated, "drive", "post", "case"), 31.75, 31.375, 32.125);
}

TEST_CASE("a 3.5-inch drive in a 5.25-inch bay: 22.225 beside it (146.05 less 101.60, halved)") {
  const fit::Seating seated =
      seating("clearance = 18\n" + bay("5.25in", "") + post(146.05, 0.0) +
              drive("3.5in/26.1", "sata 6", "wears = [{ adapter = \"adapter/3.5in-in-5.25in\" }]"));
  check_gap(test::gap(seated, "drive", "post", "case"), 22.225, 22.100, 22.350);
}

TEST_CASE(
    "SFF-8223 and SFF-8323: centred, the connector stands 15.88 beside its place (20.68 less 4.80), flush, on it") {
  const auto on_backplane = [](const std::string& adapter) {
    return seating(bay("3.5in", "backplane = true") +
                   drive("2.5in/7", "sata 6", "wears = [{ adapter = \"" + adapter + "\", raised = 0 }]"));
  };
  const fit::Seating centred = on_backplane("adapter/2.5in-in-3.5in");
  CHECK(centred.verdict == Verdict::does_not_fit);
  const fit::Finding& off = test::the(centred, Code::connector_off);
  CHECK(off.kind == Kind::connector);
  check_mm(off.why.figure("off"), 15.88, 1e-9);
  check_mm(off.why.figure("allowed"), 0.38, 1e-9);  // half of SFF-8223's position zone of 0.76
  // The tables are rounded: 20.68 stands for 20.675, so flush is within 0.01 and not exact.
  const fit::Seating flush = on_backplane("adapter/2.5in-in-3.5in-flush");
  CHECK(flush.verdict == Verdict::fits);
  if (test::has(flush, Code::connector_off))
    check_mm(test::the(flush, Code::connector_off).why.figure("off"), 0.0, 0.01);
  // With a cable the place of the connector does not matter.
  CHECK(seating(bay("3.5in", "") + drive("2.5in/7", "sata 6", "wears = [{ adapter = \"adapter/2.5in-in-3.5in\" }]"))
            .verdict == Verdict::fits);
}

/// The upper of two drives under a roof 26.10 over the floor, which is what one 3.5-inch drive may take.
fit::Seating stacked(const std::string& lower, const std::string& upper) {
  return seating(bay("3.5in", "inside = { height = 26.10 }") +
                 drive(upper, "sata 6",
                       "wears = [{ adapter = \"adapter/two-2.5in-in-3.5in\", position = 2, raised = " + lower + " }]"));
}

TEST_CASE("SFF-8201 and SFF-8301: two 2.5-inch drives on each other in the height of one 3.5-inch drive, 26.10") {
  const fit::Seating two_thin = stacked("9.70", "2.5in/9.5");  // 2 x 9.70 = 19.40
  CHECK(two_thin.verdict == Verdict::fits);
  const fit::Seating mixed = stacked("15.00", "2.5in/9.5");  // 15.00 + 9.70 = 24.70
  CHECK(mixed.verdict == Verdict::fits);
  check_mm(test::gap(mixed, "drive", "bay", "roof").gap->min, 1.40, 1e-9);
  const fit::Seating two_thick = stacked("15.00", "2.5in/15");  // 2 x 15.00 = 30.00
  CHECK(two_thick.verdict == Verdict::does_not_fit);
  check_gap(test::gap(two_thick, "drive", "bay", "roof"), -3.90, -3.90, -3.40);
}

TEST_CASE(
    "SFF-8551 and SFF-8201: a height of 41.53, of a 5.25-inch device, holds two 2.5-inch drives of 15 and not three") {
  const auto on_top_of = [](const std::string& raised) {
    return seating(
               bay("3.5in", "inside = { height = 41.53 }") +
               drive("2.5in/15", "sata 6",
                     "wears = [{ adapter = \"adapter/two-2.5in-in-3.5in\", position = 2, raised = " + raised + " }]"))
        .verdict;
  };
  CHECK(on_top_of("15.00") == Verdict::fits);
  CHECK(on_top_of("30.00") == Verdict::does_not_fit);  // 45.00
}

TEST_CASE("EDSFF: E1.S and E3 never interchange (31.5 or 33.75 wide against 76)") {
  const std::pair<std::string, std::string> others[] = {
      {"e3s", "e1s/9.5"}, {"e1s", "e3s/1t"}, {"e1l", "e1s/15"}, {"e3l", "e3s/1t"}};
  for (const auto& other : others) {
    CAPTURE(other.first);
    const fit::Seating seated =
        seating(bay(other.first, "", "bay", "\"pcie 4.0 x4\"") + drive(other.second, "pcie 4.0 x4"));
    CHECK(seated.verdict == Verdict::does_not_fit);
    CHECK(seated.findings.at(0).kind == Kind::form_factor);
    CHECK(seated.questions.form_factor.why.code == Code::other_form);
  }
}

TEST_CASE("EDSFF thicknesses (NVMe-MI's list of form factors) decide in a bay") {
  const auto in_bay = [](const std::string& takes, const std::string& high, const std::string& use) {
    return seating(bay(takes, "inside = { height = " + high + " }", "bay", "\"pcie 4.0 x4\"") +
                   drive(use, "pcie 4.0 x4"))
        .verdict;
  };
  CHECK(in_bay("e1s", "9.5", "e1s/9.5") == Verdict::fits);
  CHECK(in_bay("e1s", "9.5", "e1s/15") == Verdict::does_not_fit);
  CHECK(in_bay("e3s", "7.5", "e3s/1t") == Verdict::fits);
  CHECK(in_bay("e3s", "7.5", "e3s/2t") == Verdict::does_not_fit);
  CHECK(in_bay("e3s", "16.8", "e3s/2t") == Verdict::fits);
  CHECK(in_bay("e1l", "9.5", "e1l/18") == Verdict::does_not_fit);
}

}  // namespace
