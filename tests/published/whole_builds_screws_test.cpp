// Holes and screws of cased drives, as whole builds. SFF-8201 rev 3.4 and SFF-8301, Tables 3-1 and Figures 3-1, as
// transcribed in public files; UNC and ISO metric threads.
#include "support/check_mm.h"
#include "support/whole_build.h"

#include <doctest/doctest.h>
#include <string>

namespace {

using namespace baywright;
using fit::Code;
using fit::Kind;
using fit::Verdict;
using test::bay;
using test::check_mm;
using test::drive;
using test::seating;

const std::string sides_3_5 = "[[28.5, 6.35], [130.1, 6.35]]";
const std::string sides_2_5 = "[[14.0, 3.0], [90.6, 3.0]]";
const std::string bottom_2_5 = "[[14.0, -30.86], [90.6, -30.86], [14.0, 30.86], [90.6, 30.86]]";

std::string fixing(const std::string& through, const std::string& holes, const std::string& more,
                   const std::string& sheet, const std::string& diameter = "4.6") {
  return "fixing = { through = \"" + through + "\", holes = " + holes + ", diameter = " + diameter +
         ", sheet = " + sheet + (more.empty() ? "" : ", " + more) + " }";
}

TEST_CASE("SFF-8301: a screw 6.35 long through a sheet of 1.00 is 1.55 too long for a 3.5-inch drive, 4.76 is not") {
  const auto with = [](const std::string& length) {
    return seating(bay("3.5in", fixing("sides", sides_3_5, "screw = \"6-32\", length = " + length, "1.0")) +
                   drive("3.5in/26.1", "sata 6"));
  };
  const fit::Seating too_long = with("6.35");
  CHECK(too_long.verdict == Verdict::does_not_fit);
  const fit::Finding& over = test::the(too_long, Code::screw_long);
  CHECK(over.verdict == Verdict::does_not_fit);
  check_mm(over.gap->nominal, -1.55, 1e-9);        // 3.80 less 5.35
  check_mm(over.why.figure("buy"), 4.7625, 1e-2);  // 3/16 in, which a trade page names for a 1 mm sheet
  const fit::Seating right = with("4.76");
  CHECK(right.verdict == Verdict::fits);
  CHECK(test::has(right, Code::screw_near));  // 3.76: one maker allows 3.56 only
  CHECK(with("4.5").verdict == Verdict::fits);
  CHECK_FALSE(test::has(with("4.5"), Code::screw_near));
  CHECK(with("2.5").verdict == Verdict::does_not_fit);  // 1.50 in: less than two threads of 25.4/32
}

TEST_CASE("SFF-8201: a screw 5.00 long through a sheet of 1.50 is 1.50 too long for the side of a drive of 7 mm") {
  const auto with = [](const std::string& use) {
    return seating(bay("2.5in", fixing("sides", sides_2_5, "screw = \"M3\", length = 5.0", "1.5", "3.4")) +
                   drive(use, "sata 6"));
  };
  const fit::Seating thin = with("2.5in/7");
  CHECK(thin.verdict == Verdict::does_not_fit);
  check_mm(test::the(thin, Code::screw_long).gap->nominal, -1.50, 1e-9);  // 2.0 less 3.5
  // At the side of a higher drive the thread is 3.0 deep.
  check_mm(test::the(with("2.5in/9.5"), Code::screw_long).gap->nominal, -0.50, 1e-9);
}

TEST_CASE("SFF-8201: a bottom hole is sure to have 2.5 of thread") {
  const auto through = [](const std::string& sheet) {
    return seating(bay("2.5in", fixing("floor", bottom_2_5, "screw = \"M3\", length = 4.0", sheet, "4.0")) +
                   drive("2.5in/9.5", "sata 6"));
  };
  CHECK(through("1.5").verdict == Verdict::fits);
  check_mm(test::the(through("1.0"), Code::screw_long).gap->nominal, -0.50, 1e-9);
  CHECK(through("1.0").verdict == Verdict::does_not_fit);
  // ISO 261: M3 has a pitch of 0.5, so two threads are 1.00.
  check_mm(test::the(through("3.2"), Code::screw_short).gap->nominal, -0.20, 1e-9);
}

TEST_CASE("M3 does not hold in a 6-32 hole, nor does 6-32 enter M3 (majors 3.000 and 3.505)") {
  const fit::Seating loose = seating(bay("3.5in", fixing("sides", sides_3_5, "screw = \"M3\", length = 4.0", "1.0")) +
                                     drive("3.5in/26.1", "sata 6"));
  CHECK(loose.verdict == Verdict::does_not_fit);
  CHECK(test::the(loose, Code::thread_differs).kind == Kind::screw);
  CHECK(test::the(loose, Code::thread_differs).why.word("drive") == "6-32");
  const fit::Seating thick = seating(bay("2.5in", fixing("sides", sides_2_5, "screw = \"6-32\", length = 3.0", "1.0")) +
                                     drive("2.5in/9.5", "sata 6"));
  CHECK(thick.verdict == Verdict::does_not_fit);
  CHECK(test::the(thick, Code::thread_differs).why.word("drive") == "M3");
}

TEST_CASE("SFF-8301: a 2.5-inch drive in a bracket takes the place's 6-32, not its own M3") {
  const std::string worn = "wears = [{ adapter = \"adapter/2.5in-in-3.5in\" }]";
  const auto with = [&](const std::string& thread) {
    return seating(bay("3.5in", fixing("sides", sides_3_5, "screw = \"" + thread + "\", length = 4.5", "1.0")) +
                   drive("2.5in/7", "sata 6", worn));
  };
  CHECK(with("6-32").verdict == Verdict::fits);
  CHECK(test::has(with("M3"), Code::thread_differs));
}

TEST_CASE("SFF-8201: drives of 7 mm need not have bottom holes") {
  const std::string tray = bay("2.5in", fixing("floor", bottom_2_5, "", "1.0", "3.4"));
  const fit::Seating unknown = seating(tray + drive("2.5in/7", "sata 6"));
  CHECK(unknown.verdict == Verdict::marginal);
  CHECK(test::the(unknown, Code::holes_optional).kind == Kind::holes);
  CHECK(test::the(unknown, Code::holes_optional).why.word("kind") == "bottom");
  const fit::Seating without = seating(tray + drive("2.5in/7", "sata 6", "rows = [\"side hole 1\", \"side hole 2\"]"));
  CHECK(without.verdict == Verdict::does_not_fit);
  CHECK(test::the(without, Code::holes_differ).why.figure("met") == 0.0);
  CHECK(seating(tray + drive("2.5in/7", "sata 6", "rows = [\"row 1\", \"row 2\"]")).verdict == Verdict::fits);
  CHECK(seating(tray + drive("2.5in/9.5", "sata 6")).verdict == Verdict::fits);  // from 8.47 up they are promised
}

TEST_CASE("SFF-8301: of the bottom rows only the first is on every 3.5-inch drive") {
  const auto tray = [](const std::string& second) {
    return bay(
        "3.5in",
        fixing("floor", "[[41.28, -47.625], [41.28, 47.625], [" + second + ", -47.625], [" + second + ", 47.625]]", "",
               "1.0", "4.0"));
  };
  const fit::Seating middle = seating(tray("85.73") + drive("3.5in/26.1", "sata 6"));
  CHECK(middle.verdict == Verdict::marginal);
  CHECK(test::the(middle, Code::holes_optional).why.word("rows") == "row 2");
  const fit::Seating far = seating(tray("117.48") + drive("3.5in/26.1", "sata 6"));
  CHECK(test::the(far, Code::holes_optional).why.word("rows") == "row 3");
  const std::string has_far = "rows = [\"row 1\", \"row 3\"]";
  CHECK(seating(tray("117.48") + drive("3.5in/26.1", "sata 6", has_far)).verdict == Verdict::fits);
  // Large drives often have rows 1 and 3 only: half of this tray's holes stay empty.
  const fit::Seating half = seating(tray("85.73") + drive("3.5in/26.1", "sata 6", has_far));
  CHECK(half.verdict == Verdict::marginal);
  const fit::Finding& unused = test::the(half, Code::holes_one_row);
  CHECK(unused.why.figure("met") == 2.0);
  CHECK(unused.why.figure("asked") == 4.0);
}

TEST_CASE("a pattern of other holes is refused: 75 x 60 meets no 2.5-inch drive (76.60 x 61.72 by SFF-8201)") {
  // 3.5-inch rows under a 2.5-inch drive: none comes near.
  const fit::Seating wrong =
      seating(bay("2.5in",
                  fixing("floor", "[[41.28, -25.0], [41.28, 25.0], [85.73, -25.0], [85.73, 25.0]]", "", "1.0", "3.4")) +
              drive("2.5in/9.5", "sata 6"));
  CHECK(wrong.verdict == Verdict::does_not_fit);
  CHECK(test::the(wrong, Code::holes_differ).kind == Kind::holes);
  // Each hole is near its own, and the screws do not reach: 1.60 off along with 0.40 of play.
  const fit::Seating near =
      seating(bay("2.5in", fixing("floor", "[[14.8, -30.0], [89.8, -30.0], [14.8, 30.0], [89.8, 30.0]]",
                                  "screw = \"M3\", length = 3.0", "1.0", "3.4")) +
              drive("2.5in/9.5", "sata 6"));
  CHECK(near.verdict == Verdict::does_not_fit);
  const fit::Finding& off = test::the(near, Code::hole_reach);
  check_mm(off.why.figure("play"), 0.40, 1e-9);
  check_mm(off.gap->nominal, off.why.word("axis") == "along" ? -1.20 : -1.32, 1e-9);
}

TEST_CASE("61.92 across, a typing error in one public model of SFF-8201, is 0.20 off and still within a hole of 3.4") {
  const fit::Seating seated = seating(
      bay("2.5in", fixing("floor", "[[14.0, -30.96], [14.0, 30.96]]", "screw = \"M3\", length = 3.0", "1.0", "3.4")) +
      drive("2.5in/9.5", "sata 6"));
  const fit::Finding& off = test::the(seated, Code::hole_reach);
  CHECK(off.why.word("axis") == "across");
  check_mm(off.why.figure("off"), 0.20, 1e-9);
  check_mm(off.gap->nominal, 0.20, 1e-9);
  check_mm(off.gap->min, -0.30, 1e-9);  // each column's position zone of 0.50, so ±0.25 twice
}

}  // namespace
