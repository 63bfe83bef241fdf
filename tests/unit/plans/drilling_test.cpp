#include "plans/drilling.h"

#include "build/there_holes.h"
#include "standards/fasteners.h"
#include "support/check_mm.h"
#include "tolerance/draw.h"

#include <array>
#include <cmath>
#include <doctest/doctest.h>
#include <numbers>

using namespace baywright;
using namespace baywright::plans;
using test::check_mm;

namespace {

/// A panel of 300 x 200 for two drives, as a modder would write it.
std::string panel(const std::string& second = {}) {
  return R"(title = "two drives"
[[part]]
name = "side"
solid = { plate = [300, 200, 1.5] }
[[panel]]
name = "left"
on = { part = "side", face = "top", at = [60.0, 30.0], toward = "+y" }
takes = "2.5in"
bus = "sata 6"
fixing = { holes = [[14.0, -30.86], [14.0, 30.86], [90.6, -30.86], [90.6, 30.86]], diameter = "3.4 ±0.1", drilled = "hand drill", screw = "M3", sheet = 1.5 }
)" + second +
         R"(
[[drive]]
name = "disk"
use = "2.5in/7"
bus = "sata 6"
rows = ["row 1", "row 2"]
)";
}

build::Build read(const std::string& text) {
  auto got = build::read_text(text, "in-a-test.build.toml");
  if (const auto* fault = std::get_if<parts::Fault>(&got)) FAIL(fault->text());
  return std::get<build::Build>(std::move(got));
}

Drilling drilled(const std::string& text, const std::string& place = {}, const std::string& part = {}) {
  auto got = drilling(read(text), place, part);
  if (const auto* why = std::get_if<std::string>(&got)) FAIL(*why);
  return std::get<Drilling>(std::move(got));
}

std::string refused(const std::string& text, const std::string& place = {}, const std::string& part = {}) {
  const auto got = drilling(read(text), place, part);
  return std::holds_alternative<std::string>(got) ? std::get<std::string>(got) : std::string();
}

}  // namespace

TEST_CASE("holes are measured from the panel's edges") {
  // SFF-8201 as transcribed in public files: rows 14.00 and 90.60 from the connector end, columns 61.72 apart. The
  // drive points up the panel from (60, 30), so right is +x.
  const Drilling got = drilled(panel());
  CHECK(got.part == "side");
  check_mm(got.size.x, 300.0, 1e-12);
  REQUIRE(got.holes.size() == 4);
  check_mm(got.holes[0].at.x, 60.0 - 30.86, 1e-12);
  check_mm(got.holes[0].at.y, 30.0 + 14.0, 1e-12);
  check_mm(got.holes[3].at.x, 60.0 + 30.86, 1e-12);
  check_mm(got.holes[3].at.y, 30.0 + 90.6, 1e-12);
  CHECK(got.holes[0].meets == "row 1");
  CHECK(got.holes[3].meets == "row 2");
  check_mm(got.holes[0].edge, 29.14, 1e-12);
  check_mm(got.holes[0].edge_asked, 6.8, 1e-12);  // two diameters, common practice
  check_mm(got.holes[0].web, 61.72 - 3.4, 1e-12);
  check_mm(got.holes[0].web_asked, 3.0, 1e-12);  // two thicknesses, common practice
  REQUIRE(got.patterns.size() == 1);
  check_mm(got.patterns[0].connector.x, 60.0, 1e-12);
  check_mm(got.patterns[0].connector.y, 30.0, 1e-12);
}

TEST_CASE("a back face is seen from its own side") {
  std::string text = panel();
  text.replace(text.find("\"top\""), 5, "\"back\"");
  const Drilling got = drilled(text);
  // Turned over about its upright edge: x counts from the other side, y stays. Looking along +y with the back face
  // underfoot, right is -x of the part, which is the right of the turned panel again.
  check_mm(got.holes[3].at.x, 300.0 - 60.0 + 30.86, 1e-12);
  check_mm(got.holes[3].at.y, 120.6, 1e-12);
}

TEST_CASE("the zones of position tolerances are those of ASME Y14.5") {
  // The usual worked example, from memory: holes 3.40 at their least, screws 3.00 at their largest leave 0.40, to each
  // part with clearance holes in both, to both together where one is threaded.
  check_mm(zones_allowed(3.40, 3.00), 0.40, 1e-12);
  const Pattern pattern = drilled(panel()).patterns[0];
  check_mm(pattern.zones_allowed, 0.30, 1e-12);  // 3.4 ±0.1
  REQUIRE(pattern.placings.size() == 3);
  const Placing& hand = pattern.placings[0];
  CHECK(hand.process == "hand drill");
  // By hand: a square of ±0.5 lies in a circle of diameter 1.4142; SFF-8201 holes ±0.25 along and across, 0.7071.
  check_mm(hand.zone, 1.41421, 1e-5);
  check_mm(pattern.drive_zone, 0.70711, 1e-5);
  check_mm(hand.least_hole, 3.0 + 1.41421 + 0.70711 + 0.1, 1e-4);  // 0.1 of its own
  check_mm(hand.drill, 5.3, 1e-12);
  CHECK(hand.cover == Cover::washer);  // ISO 7045 M3: 5.30 at the least; a drill of 5.3 may make 5.50
  check_mm(pattern.placings[1].least_hole, 3.0 + 0.70711 + 0.70711, 1e-4);        // a drill cuts nothing under its size
  check_mm(pattern.placings[2].least_hole, 3.0 + 0.42426 + 0.70711 + 0.1, 1e-4);  // a laser's ±0.1
  CHECK(pattern.placings[2].process == "laser");
  CHECK(pattern.placings[2].cover == Cover::washer);  // 4.3 is wider than the medium series of ISO 273, 3.4
}

TEST_CASE("the share of drillings in which all screws enter falls with the error of the process") {
  const Pattern pattern = drilled(panel()).patterns[0];
  CHECK(pattern.placings[0].drawn == 10'000);
  CHECK(pattern.placings[0].entered < pattern.placings[1].entered);
  CHECK(pattern.placings[1].entered < pattern.placings[2].entered);
  CHECK(pattern.placings[0].entered > 0);
  // Where the hole is at least the sure one, none is missed.
  std::string text = panel();
  text.replace(text.find("3.4 ±0.1"), std::string("3.4 ±0.1").size(), "5.13 +0.1 -0");
  CHECK(drilled(text).patterns[0].placings[0].entered == 10'000);
}

TEST_CASE("two holes enter when their distance differs by no more than the play of both") {
  // Closed form for two holes that are off along the line between them only.
  const std::array<Vec2, 2> at = {Vec2(0, 0), Vec2(80, 0)};
  const std::array<double, 2> play = {0.2, 0.3};
  const std::array<Vec2, 2> just = {Vec2(-0.1, 0), Vec2(0.399, 0)};
  const std::array<Vec2, 2> more = {Vec2(-0.1, 0), Vec2(0.401, 0)};
  CHECK(all_enter(at, just, play));
  CHECK(!all_enter(at, more, play));
  // Across the line the pattern turns, and enters however far two holes are off.
  const std::array<Vec2, 2> across = {Vec2(0, -1), Vec2(0, 1)};
  CHECK(all_enter(at, across, play));
  const std::array<double, 2> none = {0.2, 0.0};
  CHECK(!all_enter(at, just, none));
}

TEST_CASE("whether all enter agrees with a search over every shift and turn") {
  const std::array<Vec2, 4> at = {Vec2(-38, -31), Vec2(38, -31), Vec2(38, 31), Vec2(-38, 31)};
  int yes = 0;
  int no = 0;
  int unsettled = 0;
  for (std::uint32_t round = 0; round < 120; ++round) {
    std::array<Vec2, 4> off{};
    std::array<double, 4> play{};
    for (std::uint32_t i = 0; i < 4; ++i) {
      const auto [a, b] = tolerance::chances(7, round, 2 * i);
      const double c = tolerance::chances(7, round, 2 * i + 1)[0];
      off[i] = {a - 0.5, b - 0.5};
      play[i] = 0.25 + 0.25 * c;
    }
    // The largest of |rest| - play, least over a grid of shifts and turns that is made finer about its best point.
    double best = 1e9;
    std::array<double, 3> middle = {0, 0, 0};
    for (double width = 0.6; width > 1e-4; width *= 0.5) {
      std::array<double, 3> found = middle;
      for (int x = -4; x <= 4; ++x)
        for (int y = -4; y <= 4; ++y)
          for (int t = -4; t <= 4; ++t) {
            const std::array<double, 3> p = {middle[0] + 0.25 * width * x, middle[1] + 0.25 * width * y,
                                             middle[2] + 0.25 * width / 49.0 * t};
            double worst = -1e9;
            for (std::size_t i = 0; i < 4; ++i)
              worst =
                  std::max(worst, glm::length(off[i] - Vec2(p[0], p[1]) - p[2] * Vec2(-at[i].y, at[i].x)) - play[i]);
            if (worst < best) best = worst, found = p;
          }
      middle = found;
    }
    const bool enters = all_enter(at, off, play);
    if (std::abs(best) <= 1e-3) {
      ++unsettled;
      continue;
    }
    CHECK(enters == (best < 0.0));
    ++(best < 0.0 ? yes : no);
  }
  CHECK(yes > 20);
  CHECK(no > 20);
  CHECK(unsettled < 5);
}

TEST_CASE("small holes are drilled first and the way between holes of a size is short") {
  const Drilling got = drilled(panel(R"([[panel]]
name = "right"
on = { part = "side", face = "top", at = [150.0, 100.0], toward = "+x" }
takes = "3.5in"
bus = "sata 6"
fixing = { holes = [[41.28, -47.63], [41.28, 47.63], [85.73, 47.63]], diameter = 3.3, sheet = 1.5 }
)"));
  REQUIRE(got.order.size() == 7);
  for (std::size_t i = 0; i < 3; ++i) CHECK(got.order[i] >= 4);  // 3.3 before 3.4
  CHECK(got.order[3] < 4);
}

TEST_CASE("tiles cover the panel, overlap as asked and fit the sheet") {
  for (const Vec2 size : {Vec2(165, 260), Vec2(174, 217), Vec2(175, 217), Vec2(300, 200), Vec2(900, 900)}) {
    const Vec2 room(174, 217);
    const std::vector<Tile> got = tiles(size, room, 20.0, {});
    double right = 0.0;
    double top = 0.0;
    for (const Tile& tile : got) {
      CHECK(tile.high.x - tile.low.x <= room.x + 1e-9);
      CHECK(tile.high.y - tile.low.y <= room.y + 1e-9);
      right = std::max(right, tile.high.x);
      top = std::max(top, tile.high.y);
      for (const Tile& other : got) {
        if (other.row == tile.row && other.column == tile.column + 1) check_mm(tile.high.x - other.low.x, 20.0, 1e-9);
        if (other.column == tile.column && other.row == tile.row + 1) check_mm(tile.high.y - other.low.y, 20.0, 1e-9);
      }
    }
    check_mm(right, size.x, 1e-9);
    check_mm(top, size.y, 1e-9);
    if (size.x <= room.x && size.y <= room.y) CHECK(got.size() == 1);
  }
  CHECK(tiles({175, 217}, {174, 217}, 20.0, {}).size() == 2);
}

TEST_CASE("no tile's edge and no joint cuts a hole where there is room to choose") {
  const Vec2 room(174, 217);
  const std::vector<Kept> kept = {{{164, 40}, 2.0}, {{154, 60}, 2.0}, {{174, 80}, 2.0}};
  const auto cut = [&](const std::vector<Tile>& got) {
    int out = 0;
    for (const Kept& each : kept)
      for (const double level : {got[0].high.x, got[1].low.x, 0.5 * (got[0].high.x + got[1].low.x)})
        if (std::abs(each.at.x - level) < each.radius) ++out;
    return out;
  };
  const std::vector<Tile> got = tiles({300, 200}, room, 20.0, kept);
  REQUIRE(got.size() == 2);
  CHECK(cut(got) == 0);
  CHECK(cut(tiles({300, 200}, room, 20.0, {})) == 3);  // they would have been
  check_mm(got[0].high.x - got[1].low.x, 20.0, 1e-9);
  check_mm(got[1].high.x, 300.0, 1e-9);
}

TEST_CASE("holes that the outline has already are not drilled, and other openings are named") {
  auto build = build::read(BAYWRIGHT_SOURCE "/models/builds/drawn-panel.build.toml");
  REQUIRE(std::holds_alternative<build::Build>(build));
  build::Build& demo = std::get<build::Build>(build);
  for (const std::string place : {"", "lower spot"}) {
    const auto made = drilling(demo, place, place.empty() ? "panel" : "");
    REQUIRE(std::holds_alternative<Drilling>(made));
    const Drilling& got = std::get<Drilling>(made);
    CHECK(got.holes.size() == (place.empty() ? 8 + 4 : 4));  // four for the corners' stand-offs
    CHECK(got.order.empty());
    for (const DrillHole& hole : got.holes) {
      CHECK(hole.there != hole.own);
      check_mm(hole.there_off, 0.0, 0.03);  // the outline has a circle as a polygon
    }
    CHECK(got.patterns[0].drives == std::vector<std::string>{"second drive", "first drive"});
  }
  for (build::Place& place : demo.places)
    if (place.name == "lower spot") {
      auto& holes = std::get<build::Bay>(place.socket).fixing->holes;
      holes[0][0] += 1.2;
      holes[1][0] += 6.0;  // beside the drawing's
    }
  build::find_there(demo);
  const auto moved = std::get<Drilling>(drilling(demo, "lower spot", ""));
  CHECK(moved.holes[0].there);
  check_mm(moved.holes[0].there_off, 1.2, 0.03);
  CHECK(!moved.holes[1].there);
  CHECK(moved.order == std::vector<std::size_t>{1});
  for (build::Place& place : demo.places)
    if (place.name == "lower spot") {
      auto& fixing = *std::get<build::Bay>(place.socket).fixing;
      fixing.holes[1][0] -= 6.0;
      fixing.diameter.dimension.nominal = 3.0;  // the drawing's is 1.0 larger
    }
  build::find_there(demo);
  const auto larger = drilling(demo, "lower spot", "");
  REQUIRE(std::holds_alternative<std::string>(larger));
  CHECK(std::get<std::string>(larger).find("lies in an opening of `panel`") != std::string::npos);
}

TEST_CASE("a hole that leaves a spacer no seat wants a washer under it") {
  std::string text = panel();
  CHECK(!drilled(text).patterns[0].placings[0].washer_under);
  text.insert(text.find("takes"), "spacers = 5.0\n");
  const Pattern got = drilled(text).patterns[0];
  CHECK(got.placings[0].washer_under);  // 5.30 under 6.00 leaves 0.35
  CHECK(!got.placings[2].washer_under == (0.5 * (6.0 - got.placings[2].drill) >= 1.0));
}

TEST_CASE("holes too near an edge or each other are told by the two rules") {
  std::string text = panel();
  text.replace(text.find("at = [60.0"), 10, "at = [35.9");  // 5.04 from the left edge, less than 6.8
  const Drilling got = drilled(text);
  CHECK(got.holes[0].edge < got.holes[0].edge_asked);
  CHECK(got.holes[1].edge > got.holes[1].edge_asked);
}

TEST_CASE("what cannot be drilled is refused in words") {
  CHECK(refused(panel(), {}, "sid").find("did you mean `side`?") != std::string::npos);
  const std::string other = panel(R"([[part]]
name = "board"
use = "board/mini-itx"
above = { part = "side", by = 30 }
[[panel]]
name = "on board"
on = { part = "board", face = "back", at = [60.0, -120.0], toward = "+y" }
takes = "2.5in"
bus = "sata 6"
fixing = { holes = [[14.0, -30.86], [14.0, 30.86]], diameter = 3.4, sheet = 1.5 }
[[slot]]
name = "slot"
on = { part = "board", face = "top", at = [45.0, -70.0], toward = "+x" }
socket = "m2/M/H4.2"
lengths = [2280]
bus = "pcie 4.0 x4"
)");
  CHECK(refused(other).find("several parts have holes to drill") != std::string::npos);
  CHECK(refused(other, "slot").find("place `slot` has no holes") != std::string::npos);
  CHECK(drilled(other, "on board").holes.size() == 2);
  CHECK(drilled(other, {}, "side").holes.size() == 4);
  std::string narrow = panel();
  narrow.replace(narrow.find("[300, 200, 1.5]"), 15, "[300, 200, 5.0]");
  narrow.replace(narrow.find("\"top\""), 5, "\"+y\"");
  narrow.replace(narrow.find("at = [60.0, 30.0], toward = \"+y\""), 32, "at = [60.0, 2.5], toward = \"+x\"");
  narrow.replace(narrow.find("[[14.0, -30.86], [14.0, 30.86], [90.6, -30.86], [90.6, 30.86]]"), 62, "[[14.0, 0.0]]");
  CHECK(refused(narrow).find("300.00 by 5.00") != std::string::npos);
}

TEST_CASE("a board's own holes are the pattern for its tray and no rule of drilling is asked of them") {
  const Drilling got = drilled(R"(title = "board"
[[part]]
name = "board"
use = "board/mini-itx"
[[slot]]
name = "slot"
on = { part = "board", face = "top", at = [45.0, -70.0], toward = "+x" }
socket = "m2/M/H4.2"
lengths = [2280]
bus = "pcie 4.0 x4"
[[drive]]
name = "card"
use = "m2/2280-D2-M"
bus = "pcie 4.0 x4"
)",
                               {}, "board");
  REQUIRE(got.holes.size() == 4);
  CHECK(got.patterns.empty());
  double widest = 0.0;
  for (const DrillHole& hole : got.holes) {
    CHECK(hole.own);
    CHECK(hole.edge_asked == 0.0);
    for (const DrillHole& other : got.holes) widest = std::max(widest, std::abs(hole.at.x - other.at.x));
  }
  check_mm(widest, 154.94, 1e-9);  // holes C and F to H and J, two transcriptions: tests/published/atx_holes_test.cpp
}

TEST_CASE("a hole near a bend is said to be, by the rule of the check") {
  // Holes at x 29.14 and 90.86, 1.7 of radius: 95 - 90.86 - 1.7 to the bend; asked two sheets of 1.5 and the radius
  // of 1.
  std::string text = panel();
  text.insert(text.find("[[panel]]"), "bends = [{ from = [95, 0], to = [95, 200], inside = 1 }]\n");
  const Drilling got = drilled(text);
  REQUIRE(got.bends.size() == 1);
  int near = 0;
  for (const DrillHole& hole : got.holes) {
    check_mm(hole.bend_asked, 4.0, 1e-9);
    near += hole.bend < hole.bend_asked ? 1 : 0;
    if (hole.at.x > 60.0) check_mm(hole.bend, 95.0 - 90.86 - 1.7, 1e-9);
  }
  CHECK(near == 2);
}

TEST_CASE("a bend between a datum edge and the holes is known, since flat that edge is no place to measure from") {
  const auto bent = [](const std::string& line) {
    std::string text = panel();
    return drilled(text.insert(text.find("[[panel]]"), "bends = [" + line + "]\n"));
  };
  CHECK(bent("{ from = [10, 0], to = [10, 200] }").bend_from_a);
  CHECK_FALSE(bent("{ from = [10, 0], to = [10, 200] }").bend_from_b);
  CHECK(bent("{ from = [0, 20], to = [300, 20] }").bend_from_b);
  CHECK_FALSE(bent("{ from = [280, 0], to = [280, 200] }").bend_from_a);
}

TEST_CASE("a pilot hole stays in the turns of drilling and one that is there as asked for does not") {
  build::Build build = read(panel());
  build.parts[0].part.holes = {{"hole 1", 60.0 - 30.86, 44.0, 3.0}, {"hole 2", 60.0 + 30.86, 44.4, 3.4}};
  build::find_there(build);
  const auto got = std::get<Drilling>(drilling(build, {}, {}));
  REQUIRE(got.holes.size() == 4);
  CHECK(got.order.size() == 3);
  std::size_t pilots = 0;
  for (const DrillHole& hole : got.holes) {
    if (hole.there) check_mm(hole.at.y, 44.4, 1e-9);  // where it is
    if (!hole.there && hole.there_wide > 0.0) ++pilots;
  }
  CHECK(pilots == 1);
}
