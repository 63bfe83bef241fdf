// Holes of a panel that no sheet is round, which a check once passed. The rules are common practice, no source: two
// diameters from a hole's middle to an edge, two thicknesses between holes, two thicknesses and the radius inside from
// a hole's edge to a bend.
#include "build/there_holes.h"
#include "support/check_mm.h"
#include "support/whole_build.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <string>

using namespace baywright;
using fit::Code;
using fit::Finding;
using fit::Verdict;
using test::check_mm;

namespace {

/// A panel of 300 x 200 x 1.5 with holes at x 29.14 and 90.86, y 44 and 120.6.
fit::Seating panel(const std::string& openings, const std::string& keys = {}, const std::string& more = {},
                   const std::string& drilled = {}) {
  const auto spot = [&](const std::string& name, const std::string& x) {
    return "[[panel]]\nname = \"" + name + "\"\non = { part = \"side\", at = [" + x +
           ", 30], toward = \"+y\" }\ntakes = \"2.5in\"\nbus = \"sata 6\"\nfixing = { holes = [[14, -30.86], [14, "
           "30.86], [90.6, -30.86], [90.6, 30.86]], diameter = 4.0, " +
           drilled + "screw = \"M3\", length = 4, sheet = 1.5 }\n";
  };
  return test::seating(
      "[[part]]\nname = \"side\"\nsolid = { prism = { outline = [[0, 0], [300, 0], [300, 200], [0, "
      "200]], holes = [" +
      openings + "], height = 1.5 } }\n" + keys + spot("spot", "60") + (more.empty() ? "" : spot("other", more)) +
      "[[drive]]\nname = \"d\"\nuse = \"2.5in/9.5\"\nbus = \"sata 6\"\n");
}

/// An opening from x on, beside the second hole.
std::string beside(const std::string& x) {
  return "[[" + x + ", 30], [" + x + ", 60], [130, 60], [130, 30]]";
}

const Finding* of_sheet(const fit::Seating& seating) {
  const auto found = std::find_if(seating.findings.begin(), seating.findings.end(),
                                  [](const Finding& each) { return each.kind == fit::Kind::sheet; });
  return found == seating.findings.end() ? nullptr : &*found;
}

}  // namespace

TEST_CASE("a screw hole in an opening of its panel does not pass") {
  CHECK(panel(beside("110")).verdict == Verdict::fits);
  const fit::Seating seating = panel(beside("85"));
  CHECK(seating.verdict == Verdict::does_not_fit);
  const Finding& off = test::the(seating, Code::hole_off_sheet);
  CHECK(off.why.word("where") == "in an opening of");
  CHECK(off.why.figure("hole") == 2.0);
  CHECK(off.why.figure("count") == 1.0);
}

TEST_CASE("a screw hole that breaks out into an opening does not pass") {
  const fit::Seating seating = panel(beside("92"));
  CHECK(seating.verdict == Verdict::does_not_fit);
  const Finding& out = test::the(seating, Code::hole_breaks_out);
  check_mm(out.gap->nominal, 92.0 - 90.86 - 2.0, 1e-9);
  check_mm(out.why.figure("asked"), 2.0 * 4.0, 1e-9);
  // 0.14 of sheet: enough by itself, not with holes that are up to 0.5 off.
  const fit::Seating thin = panel(beside("93"));
  CHECK(thin.verdict == Verdict::fits);
  check_mm(test::the(thin, Code::hole_near_edge).why.figure("edge"), 2.14, 1e-9);
  const fit::Seating drilled = panel(beside("93"), {}, {}, "drilled = \"hand drill\", ");
  const Finding& may = test::the(drilled, Code::hole_breaks_out);
  CHECK(may.verdict == Verdict::marginal);
  check_mm(may.gap->min, 0.14 - 0.5, 1e-9);
}

TEST_CASE("a screw hole that overlaps another place's does not pass, and one that is the same does") {
  const fit::Seating seating = panel({}, {}, "62");
  CHECK(seating.verdict == Verdict::does_not_fit);
  const Finding& both = test::the(seating, Code::holes_meet);
  CHECK(both.why.word("of") == "other");
  CHECK(both.why.figure("count") == 4.0);
  check_mm(both.gap->nominal, 2.0 - 4.0, 1e-9);
  CHECK(of_sheet(panel({}, {}, "60")) == nullptr);
}

TEST_CASE("a screw hole at a bend of the panel does not pass") {
  const auto bent = [](const std::string& x) {
    return panel({}, "bends = [{ from = [" + x + ", 0], to = [" + x + ", 200], inside = 2 }]\n");
  };
  const fit::Seating seating = bent("96");
  CHECK(seating.verdict == Verdict::does_not_fit);
  const Finding& near = test::the(seating, Code::hole_near_bend);
  check_mm(near.gap->nominal, 96.0 - 90.86 - 2.0, 1e-9);
  check_mm(near.gap->asked, 2.0 * 1.5 + 2.0, 1e-9);
  CHECK(of_sheet(bent("98")) == nullptr);
}

namespace {

/// The panel with round holes of its own, x, y and diameter, as a drawing's circles are.
fit::Seating with_own(const std::vector<parts::Hole>& own, const std::string& diameter = "4.9") {
  const std::string text =
      "title = \"t\"\n[[part]]\nname = \"side\"\nsolid = { plate = [300, 200, 1.5] }\n[[panel]]\nname = "
      "\"spot\"\non = { part = \"side\", at = [60, 30], toward = \"+y\" }\ntakes = \"2.5in\"\nbus = \"sata "
      "6\"\nfixing = { holes = [[14, -30.86], [14, 30.86], [90.6, -30.86], [90.6, 30.86]], diameter = " +
      diameter +
      ", drilled = \"laser\", screw = \"M3\", length = 4, sheet = 1.5 }\n[[drive]]\nname = \"d\"\nuse = "
      "\"2.5in/9.5\"\nbus = \"sata 6\"\n";
  auto read = build::read_text(text, "t.build.toml");
  REQUIRE(std::holds_alternative<build::Build>(read));
  build::Build& build = std::get<build::Build>(read);
  build.parts[0].part.holes = own;
  build::find_there(build);
  return fit::check(build, {}).seatings.at(0);
}

}  // namespace

TEST_CASE("a larger hole that shares its middle with a wanted one is an opening") {
  CHECK(with_own({}).verdict == Verdict::fits);
  for (const double radius : {3.0, 4.0, 7.0, 20.0}) {
    CAPTURE(radius);
    const fit::Seating seating = with_own({{"hole 1", 90.86, 44.0, 2.0 * radius}});
    CHECK(seating.verdict == Verdict::does_not_fit);
    CHECK(test::the(seating, Code::hole_off_sheet).why.figure("hole") == 2.0);
  }
}

TEST_CASE("a smaller hole where one is wanted is drilled up and not passed over in silence") {
  const fit::Seating seating = with_own({{"hole 1", 90.86, 44.0, 4.6}});
  CHECK(seating.verdict == Verdict::fits);
  const Finding& up = test::the(seating, Code::hole_drilled_up);
  check_mm(up.why.figure("there"), 4.6, 1e-12);
  check_mm(up.why.figure("asked"), 4.9, 1e-12);
  CHECK_FALSE(test::has(with_own({{"hole 1", 90.86, 44.0, 4.9}}), Code::hole_drilled_up));
}

TEST_CASE("a hole that is there already is held against the drive where it is, not where it should be") {
  const auto off_by = [](double off) { return with_own({{"hole 1", 90.86 + off, 44.0, 4.9}}); };
  CHECK(off_by(0.3).verdict == Verdict::fits);
  const fit::Seating seating = off_by(2.2);     // 4.90 less 3.00 of play is less
  CHECK(seating.verdict == Verdict::marginal);  // the drive's own holes may make up for it
  CHECK(off_by(2.4).verdict != Verdict::fits);
  check_mm(test::the(seating, Code::hole_reach).why.figure("off"), 2.2, 1e-9);
}

TEST_CASE("a hole beyond the panel's edge is a finding, and no fault of the file") {
  const std::string text = test::bay("2.5in",
                                     "fixing = { holes = [[14, -30.86], [14, 30.86], [90.6, -170]], diameter = 4.0, "
                                     "screw = \"M3\", length = 3, sheet = 1.0 }",
                                     "panel") +
                           test::drive("2.5in/9.5", "sata 6");
  const fit::Seating seating = test::seating(text);
  CHECK(seating.verdict == Verdict::does_not_fit);
  CHECK(test::the(seating, Code::hole_off_sheet).why.word("where") == "off");
}

TEST_CASE("a sheet that is not as thick as its panel is refused where it is written") {
  const auto read = [](const std::string& sheet) {
    return build::read_text(
        "title = \"t\"\n" +
            test::bay("2.5in",
                      "fixing = { holes = [[14, -30.86], [14, 30.86]], diameter = 4.0, sheet = " + sheet + " }",
                      "panel") +
            test::drive("2.5in/9.5", "sata 6"),
        "t.build.toml");
  };
  CHECK(std::holds_alternative<build::Build>(read("1.0")));
  CHECK(std::holds_alternative<build::Build>(read("\"1.1 ±0.1\"")));
  const auto thin = read("3.0");
  REQUIRE(std::holds_alternative<parts::Fault>(thin));
  CHECK(std::get<parts::Fault>(thin).text().find("t.build.toml:10:") != std::string::npos);
  CHECK(std::get<parts::Fault>(thin).text().find("`floor` is 1.00 thick there") != std::string::npos);
}

TEST_CASE("a check names the hole that is sure off along both axes at once, as the template does") {
  // Fixed fastener, ASME Y14.5 from memory: 3.00, a laser's square of ±0.15 in its circle, SFF-8201's ±0.25 in its own.
  const Finding reach = test::the(with_own({}, "4.0"), Code::hole_reach);
  check_mm(reach.why.figure("sure"), 3.0 + 0.42426 + 0.70711, 1e-4);
  // And its own limits: what it is asked for as is that much more than it may come out.
  const Finding limits = test::the(with_own({}, "\"4.14 ±0.10\""), Code::hole_reach);
  check_mm(limits.why.figure("sure"), 3.0 + 0.42426 + 0.70711 + 0.10, 1e-4);
  check_mm(limits.why.figure("hole"), 4.14, 1e-12);
}
