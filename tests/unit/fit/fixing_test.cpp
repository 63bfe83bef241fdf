// Holes against what the bay itself says of where the drive stands, and other ways in which fixings were once judged
// wrong.
#include "support/check_mm.h"
#include "support/whole_build.h"

#include <doctest/doctest.h>
#include <string>

using namespace baywright;
using fit::Code;
using fit::Verdict;

namespace {

fit::Seating seating(const std::string& place, const std::string& drive) {
  return test::seating("[[part]]\nname = \"floor\"\nsolid = { plate = [300, 300, 1] }\n" + place +
                       "[[drive]]\nname = \"d\"\n" + drive + "bus = \"sata 6\"\n");
}

std::string bay(const std::string& rest) {
  return "[[bay]]\nname = \"b\"\non = { part = \"floor\", at = [60, 150], toward = \"+x\" }\ntakes = \"2.5in\"\nbus = "
         "\"sata 6\"\n" +
         rest;
}

constexpr const char* flat = "use = \"2.5in/9.5\"\n";

}  // namespace

TEST_CASE("side holes at the wrong height do not pass because they agree with each other") {
  // SFF-8201: side holes 3.00 above the base; 4.07 is the distance of the bottom holes from the edge, a known mix-up.
  const auto at_height = [](const std::string& up) {
    return seating(bay("fixing = { through = \"sides\", holes = [[14, " + up + "], [90.6, " + up +
                       "]], diameter = 4.2, screw = \"M3\", length = 4, sheet = 1.0 }\n"),
                   flat);
  };
  CHECK(at_height("3.0").verdict == Verdict::fits);
  const fit::Seating wrong = at_height("4.07");
  CHECK(wrong.verdict == Verdict::does_not_fit);
  const fit::Finding& off = test::the(wrong, Code::hole_reach);
  CHECK(off.why.word("axis") == "in height");
  test::check_mm(off.gap->nominal, 0.60 - 1.07, 1e-9);
}

TEST_CASE("a backplane says where the drive stands along, and walls where it stands across") {
  const auto shifted = [](const std::string& first, const std::string& second, const std::string& where) {
    return seating(bay(where + "fixing = { holes = [[" + first + ", -30.86], [" + second + ", -30.86], [" + first +
                       ", 30.86], [" + second + ", 30.86]], diameter = 4.0, sheet = 1.0 }\n"),
                   flat);
  };
  CHECK(shifted("16.5", "93.1", "").verdict == Verdict::fits);  // a cable follows
  const std::string screwed = "screw = \"M3\"";
  const auto on_backplane = [&](const std::string& first, const std::string& second) {
    return seating(
        bay("backplane = true\nfixing = { holes = [[" + first + ", -30.86], [" + second + ", -30.86], [" + first +
            ", 30.86], [" + second + ", 30.86]], diameter = 4.0, sheet = 1.0, " + screwed + ", length = 3 }\n"),
        flat);
  };
  CHECK(on_backplane("14.0", "90.6").verdict == Verdict::fits);
  const fit::Seating far = on_backplane("16.5", "93.1");
  CHECK(far.verdict == Verdict::does_not_fit);
  CHECK(test::the(far, Code::hole_reach).why.word("axis") == "along");
  // Walls leave 0.275 a side: holes shifted by 2 mm across cannot be met.
  const auto between_walls = [&](const std::string& left, const std::string& right) {
    return seating(
        bay("inside = { width = 70.4 }\nfixing = { holes = [[14, " + left + "], [14, " + right + "], [90.6, " + left +
            "], [90.6, " + right + "]], diameter = 4.0, sheet = 1.0, " + screwed + ", length = 3 }\n"),
        flat);
  };
  CHECK(between_walls("-30.86", "30.86").verdict == Verdict::fits);
  CHECK(between_walls("-28.86", "32.86").verdict == Verdict::does_not_fit);
}

TEST_CASE("the rows of a drive say nothing of its bracket's holes") {
  const std::string in_bracket =
      "use = \"2.5in/7\"\nrows = [\"row 1\", \"row 2\"]\nwears = [{ adapter = \"adapter/2.5in-in-3.5in\" }]\n";
  const fit::Seating cage = seating(
      "[[bay]]\nname = \"b\"\non = { part = \"floor\", at = [60, 150], toward = \"+x\" }\ntakes = \"3.5in\"\nbus = "
      "\"sata 6\"\n"
      "fixing = { through = \"sides\", holes = [[28.5, 6.35], [130.1, 6.35]], diameter = 5.0, screw = \"6-32\", "
      "length = \"3/16 in\", sheet = 1.0 }\n",
      in_bracket);
  CHECK(cage.verdict == Verdict::fits);
}

TEST_CASE("a screw that is wide of the wall it is to be drawn through holds by less") {
  // 4.0 long through 1.0: 3.0 into the drive; in a bay 2.4 wider than the drive 1.2 of it are in the air.
  const auto wide = [](const std::string& width) {
    return test::
        the(seating(
                bay("inside = { width = " + width +
                    " }\nfixing = { through = \"sides\", holes = [[14, 3], [90.6, 3]], diameter = 4.2, screw = \"M3\", "
                    "length = 4, sheet = 1.0 }\n"),
                flat),
            Code::screw_short)
            .gap->nominal;
  };
  test::check_mm(wide("69.85"), 3.0 - 1.0, 1e-9);  // two threads of M3 are 1.00
  test::check_mm(wide("72.25"), 3.0 - 1.2 - 1.0, 1e-9);
}

TEST_CASE("a 5.25-inch device has its plug behind it, and on rails the connector looks backward") {
  const auto with_post = [](const std::string& side, const std::string& drive) {
    return test::seating(
        "[[part]]\nname = \"floor\"\nsolid = { plate = [400, 300, 1] }\n[[part]]\nname = \"post\"\n"
        "solid = { box = [5, 5, 20] }\non = { part = \"floor\", at = [" +
        side +
        "] }\n[[bay]]\nname = \"b\"\non = { part = \"floor\", at = [40, 150], toward = \"+x\" }\n"
        "takes = \"5.25in\"\ncable = 35\nbus = \"sata 6\"\n[[drive]]\nname = \"d\"\n" +
        drive + "bus = \"sata 6\"\n");
  };
  CHECK(with_post("250, 150", "use = \"5.25in\"\nlength = 200\n").verdict == Verdict::does_not_fit);
  // Datum Y of a drive that looks backward is on the right, seen from the bezel: toward -y here. Its connector's middle
  // is 20.68 from the drive's toward that edge (SFF-8323), its body 42.73 wide.
  const std::string rails = "use = \"3.5in/26.1\"\nwears = [{ adapter = \"adapter/3.5in-in-5.25in\" }]\n";
  CHECK(with_post("200, 127", rails).verdict == Verdict::does_not_fit);
  CHECK(with_post("200, 155", rails).verdict == Verdict::fits);
}

TEST_CASE("a hole that is wider than the head is no fit, however much play it gives") {
  // ISO 7045 M3: head 5.6 across at most, 5.3 at least (two public tables).
  const auto through = [](const std::string& hole) {
    return seating(bay("fixing = { holes = [[14, -30.86], [90.6, -30.86], [14, 30.86], [90.6, 30.86]], diameter = " +
                       hole + ", screw = \"M3\", length = 3, sheet = 1.0 }\n"),
                   flat)
        .verdict;
  };
  CHECK(through("4.0") == Verdict::fits);
  CHECK(through("5.5") == Verdict::marginal);
  CHECK(through("7.0") == Verdict::does_not_fit);
}

TEST_CASE("screws and drive shift with holes that are drilled by hand") {
  // A post 1.10 from the screw's stand-off: ±0.5 of drilling (common practice) and the play at the screw come off that.
  const auto beside_post = [](const std::string& drilled) {
    return test::seating(
        "[[part]]\nname = \"panel\"\nsolid = { plate = [300, 300, 1] }\n[[part]]\nname = \"post\"\n"
        "solid = { box = [4, 4, 4] }\non = { part = \"panel\", at = [78.1, 117.14] }\n[[panel]]\nname = \"p\"\n"
        "on = { part = \"panel\", at = [60, 150], toward = \"+x\" }\ntakes = \"2.5in\"\nbus = \"sata 6\"\n"
        "spacers = 5\nfixing = { holes = [[14, -30.86], [90.6, -30.86], [14, 30.86], [90.6, 30.86]], "
        "diameter = 3.6, screw = \"M3\", length = 8, sheet = 1.0" +
        drilled + " }\n[[drive]]\nname = \"d\"\nuse = \"2.5in/9.5\"\nbus = \"sata 6\"\n");
  };
  const double cut = test::gap(beside_post(""), "stand-off", "post").gap->min;
  test::check_mm(cut, 1.10 - 0.30, 1e-9);  // half of 3.6 less 3.0
  test::check_mm(test::gap(beside_post(", drilled = \"hand drill\""), "stand-off", "post").gap->min, cut - 0.50, 1e-9);
}

TEST_CASE("a bracket is as long as where its own screws are") {
  // SFF-8301: the second side hole stands 130.10 from the connector end, the drive in the bracket ends at 100.45.
  const fit::Seating blocked = seating(
      "[[part]]\nname = \"block\"\nsolid = { box = [20, 200, 20] }\non = { part = \"floor\", at = [163, 50] }\n"
      "[[bay]]\nname = \"b\"\non = { part = \"floor\", at = [60, 150], toward = \"+x\" }\ntakes = \"3.5in\"\nbus = "
      "\"sata 6\"\n",
      "use = \"2.5in/7\"\nwears = [{ adapter = \"adapter/2.5in-in-3.5in\", name = \"bracket\" }]\n");
  CHECK(blocked.verdict != Verdict::fits);
  CHECK(test::gap(blocked, "bracket", "block").gap->nominal < 0.0);
}

TEST_CASE("a drive's ends stand where its own holes may be") {
  // SFF-8301: side hole 1 is 28.50 +-0.50 from the connector end; the screw has half of 4.0 less 3.505 of play. A post
  // 2.00 beyond the far end of a drive of 147.00 at most comes nearer by both.
  const fit::Seating found = test::seating(
      "[[part]]\nname = \"floor\"\nsolid = { plate = [400, 300, 1] }\n[[part]]\nname = \"post\"\n"
      "solid = { box = [10, 10, 50] }\non = { part = \"floor\", at = [209, 145] }\n[[bay]]\nname = \"bay\"\n"
      "on = { part = \"floor\", at = [60, 150], toward = \"+x\" }\ntakes = \"3.5in\"\nbus = \"sata 6\"\n"
      "inside = { width = 103 }\nfixing = { through = \"sides\", holes = [[28.5, 6.35], [130.1, 6.35]], "
      "diameter = 4.0, screw = \"6-32\", length = 4.76, sheet = 1.0 }\n" +
      test::drive("3.5in/26.1", "sata 6"));
  const double play = 0.5 * (4.0 - 3.505);
  test::check_mm(test::gap(found, "drive", "post").gap->min, 2.00 - 0.50 - play, 1e-3);
}

TEST_CASE("a screw into a threaded stand-off is checked at both of its ends") {
  const auto on_standoffs = [](const std::string& outside) {
    return seating(bay("standoffs = \"6 ±0.1\"\nfixing = { holes = [[14, -30.86], [14, 30.86], [90.6, -30.86], [90.6, "
                       "30.86]], diameter = 4.0, screw = \"M3\", length = 2.5, " +
                       outside + "sheet = 1.0 }\n"),
                   flat);
  };
  const fit::Seating unsaid = on_standoffs("");
  CHECK(unsaid.verdict == Verdict::fits);
  CHECK(test::has(unsaid, Code::outer_screw_unsaid));
  const fit::Seating good = on_standoffs("outside = \"M3 x 6\", ");
  CHECK(good.verdict == Verdict::fits);
  CHECK_FALSE(test::has(good, Code::outer_screw_unsaid));
  // 8 long through 1.0 of sheet: 7 into a stand-off of 6, where its stud begins.
  const fit::Seating too_long = on_standoffs("outside = \"M3 x 8\", ");
  const fit::Finding& deep = test::the(too_long, Code::outer_screw_long);
  CHECK(deep.verdict == Verdict::does_not_fit);
  test::check_gap(deep, 6.0 - 7.0, 6.0 - 7.0 - 0.1, 6.0 - 7.0 + 0.1);
  CHECK(deep.why.figure("buy") == 6.0);
  // Two threads of M3 are 1.0: 1.5 long goes in 0.5.
  const fit::Seating too_short = on_standoffs("outside = \"M3 x 1.5\", ");
  const fit::Finding& shallow = test::the(too_short, Code::outer_screw_short);
  CHECK(shallow.verdict == Verdict::does_not_fit);
  test::check_mm(shallow.gap->nominal, 0.5 - 1.0, 1e-9);
}

TEST_CASE("a screw whose length is not said is not passed in silence") {
  const auto of_length = [](const std::string& length) {
    return seating(bay("fixing = { holes = [[14, -30.86], [14, 30.86], [90.6, -30.86], [90.6, 30.86]], diameter = 4.0, "
                       "screw = \"M3\", " +
                       length + "sheet = 1.0 }\n"),
                   flat);
  };
  const fit::Seating unsaid = of_length("");
  CHECK_FALSE(test::the(unsaid, Code::screw_unsaid).verdict.has_value());
  CHECK_FALSE(test::has(of_length("length = 3, "), Code::screw_unsaid));
}
