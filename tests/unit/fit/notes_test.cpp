// Notes that change no verdict: bare undersides near what may be metal, and what a drawing holds besides.
#include "fit/check.h"
#include "support/check_mm.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <string>

namespace {

using namespace baywright;
using fit::Finding;
using fit::Kind;

fit::Check check(const std::string& tray, const std::string& shield) {
  auto made = build::read_text(
      "title = \"t\"\n[[part]]\nname = \"board\"\nuse = \"board/mini-itx\"\n[[part]]\nname = \"tray\"\nsolid = { plate "
      "= "
      "[150, 120, 1.2] }\nremovable = true\nunder = { part = \"board\", by = " +
          tray + " }\n[[part]]\nname = \"shield\"\nsolid = { box = [20, 10, \"" + shield +
          "\"] }\non = { part = \"board\", at = [70, -75] }\n[[slot]]\nname = \"slot\"\non = { part = \"board\", at = "
          "[45.0, "
          "-70.0], toward = \"+x\" }\nsocket = \"m2/M/H4.2\"\nlengths = [2280]\nbus = \"pcie 4.0 x4\"\n[[drive]]\nname "
          "= "
          "\"card\"\nuse = \"m2/2280-S2-M\"\nbus = \"pcie 4.0 x4\"\n",
      BAYWRIGHT_SOURCE "/models/builds/t.build.toml");
  if (const auto* fault = std::get_if<parts::Fault>(&made)) FAIL(fault->text());
  return fit::check(std::get<build::Build>(made), {});
}

const Finding* note(const std::vector<Finding>& findings, Kind kind) {
  const auto found =
      std::find_if(findings.begin(), findings.end(), [&](const Finding& finding) { return finding.kind == kind; });
  return found == findings.end() ? nullptr : &*found;
}

}  // namespace

TEST_CASE("a card's underside near a part is noted below 1 mm, and the verdict stays") {
  const fit::Check near = check("9.1", "1.9 ±0.1");
  const Finding* bare = note(near.seatings.at(0).findings, Kind::insulation);
  REQUIRE(bare != nullptr);
  CHECK_FALSE(bare->verdict.has_value());
  CHECK(bare->between[1] == "shield");
  // the card's underside 2.45 + 0.05 over the board, less its stand-off's 0.03, the box 2.0 at most
  test::check_mm(bare->why.figure("gap"), 2.5 - 0.03 - 2.0, 0.02);
  CHECK(near.seatings.at(0).verdict == fit::Verdict::fits);
  CHECK(note(check("9.1", "1.3 ±0.1").seatings.at(0).findings, Kind::insulation) == nullptr);
}

TEST_CASE("a board's back near a tray is noted once for the build") {
  const fit::Check near = check("0.8", "1.3");
  const Finding* bare = note(near.notes, Kind::insulation);
  REQUIRE(bare != nullptr);
  CHECK(bare->between[0] == "board");
  CHECK(bare->between[1] == "tray");
  test::check_mm(bare->why.figure("gap"), 0.8, 1e-9);
  CHECK(note(check("1.2", "1.3").notes, Kind::insulation) == nullptr);
}

TEST_CASE("what a drawing holds besides its outline is noted") {
  auto made = build::read(BAYWRIGHT_SOURCE "/models/builds/drawn-panel.build.toml");
  REQUIRE(std::holds_alternative<build::Build>(made));
  const build::Build& build = std::get<build::Build>(made);
  CHECK(build.parts.at(0).part.holes.size() == 12);
  fit::Options one;
  one.drive = "no such drive";  // nothing to measure
  const fit::Check got = fit::check(build, one);
  const Finding* passed = note(got.notes, Kind::drawing);
  REQUIRE(passed != nullptr);
  CHECK(passed->why.word("what") == "1 TEXT");
}

TEST_CASE("parts of the machine that meet only at their limits are noted, and no verdict changes") {
  // The shield is 4 ±0.2 high under a tray that hangs 4.1 ±0.2 over the board: 0.1 apart, 0.3 into each other at worst.
  const auto machine = [](const std::string& above) {
    auto made = build::read_text(
        "title = \"t\"\n[[part]]\nname = \"board\"\nsolid = { plate = [170, 170, 1.6] }\n[[part]]\nname = "
        "\"tray\"\nsolid = { plate = [150, 120, 1.2] }\nremovable = true\nscrews = \"M3 x 4\"\nabove = { part = "
        "\"board\", by = \"" +
            above +
            " ±0.2\" }\n[[part]]\nname = \"shield\"\nsolid = { box = [20, 10, \"4 ±0.2\"] }\non = { part = \"board\", "
            "at "
            "= [70, 75] }\n[[slot]]\nname = \"slot\"\non = { part = \"board\", face = \"back\", at = [45, 70], toward "
            "= \"+x\" }\nsocket = \"m2/M/H4.2\"\nlengths = [2280]\nbus = \"pcie 4.0 x4\"\n[[drive]]\nname = "
            "\"card\"\nuse = \"m2/2280-S2-M\"\nbus = \"pcie 4.0 x4\"\n",
        "t.build.toml");
    if (const auto* fault = std::get_if<parts::Fault>(&made)) FAIL(fault->text());
    return fit::check(std::get<build::Build>(made), {});
  };
  const fit::Check near = machine("4.1");
  const Finding* may = note(near.notes, Kind::host);
  REQUIRE(may != nullptr);
  CHECK(may->why.code == fit::Code::parts_may_meet);
  CHECK_FALSE(may->verdict.has_value());
  test::check_mm(may->why.figure("depth"), -0.1, 1e-9);
  test::check_mm(may->why.figure("worst"), 0.3, 1e-9);
  CHECK(near.seatings.at(0).verdict == fit::Verdict::fits);
  // Sure to be apart: all that is noted is that 2.8 of thread are less than one diameter.
  const fit::Check clear = machine("4.5");
  const Finding* screws = note(clear.notes, Kind::host);
  REQUIRE(screws != nullptr);
  CHECK(screws->why.code == fit::Code::part_screw_short);
  test::check_mm(screws->why.figure("in"), 4.0 - 1.2, 1e-9);
}

TEST_CASE("spacers that a file names take from what a sheet's screws hold, and add their limits to its distance") {
  const auto machine = [](const std::string& spacers) {
    auto made = build::read_text(
        "title = \"t\"\n[[part]]\nname = \"board\"\nsolid = { plate = [\"170 ±0\", \"170 ±0\", \"1.6 ±0\"] "
        "}\n[[part]]\nname = \"tray\"\nsolid = { plate = [\"150 ±0\", \"120 ±0\", \"1 ±0\"] }\nremovable = "
        "true\nscrews = \"M3x8\"\n" +
            spacers +
            "above = { part = \"board\", by = \"7 ±0.4\" }\n[[slot]]\nname = \"slot\"\non = { part = \"board\", at "
            "= [45, 70], toward = \"+x\" }\nsocket = \"m2/M/H4.2\"\nlengths = [2280]\nbus = \"pcie 4.0 "
            "x4\"\n[[drive]]\nname = \"card\"\nuse = \"m2/2280-S2-M\"\nbus = \"pcie 4.0 x4\"\n",
        "t.build.toml");
    if (const auto* fault = std::get_if<parts::Fault>(&made)) FAIL(fault->text());
    return fit::check(std::get<build::Build>(made), {});
  };
  const auto gap = [](const fit::Check& check) {
    for (const Finding& finding : check.seatings.at(0).findings)
      if (finding.gap && finding.between[1] == "tray") return *finding.gap;
    FAIL("no gap to the tray");
    return fit::GapFigures{};
  };
  const fit::Check plain = machine("");
  CHECK(note(plain.notes, Kind::host) == nullptr);  // 8 - 1 = 7
  const fit::Check raised = machine("spacers = \"5 ±0.25\"\n");
  const Finding* held = note(raised.notes, Kind::host);
  REQUIRE(held != nullptr);
  CHECK(held->why.code == fit::Code::part_screw_short);
  test::check_mm(held->why.figure("in"), 8.0 - 1.0 - 5.25, 1e-9);
  test::check_mm(gap(raised).nominal, gap(plain).nominal, 1e-9);  // `by` has them in it already
  test::check_mm(gap(raised).min, gap(plain).min - 0.25, 1e-9);
}
