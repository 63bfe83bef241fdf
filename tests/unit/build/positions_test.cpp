// What a build file says about its parts: positions, order, turns, limits of lengths that state none.
#include "build/build.h"
#include "support/check_mm.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <string>

using namespace baywright;
using build::Build;
using build::HostPart;
using build::Position;
using test::check_mm;

namespace {

constexpr const char* head = R"(title = "t"
[[part]]
name  = "board"
solid = { plate = [100, 60, 1.6] }
)";
constexpr const char* tail = R"(
[[slot]]
name    = "slot"
on      = { part = "board", at = [20, 30], toward = "+x" }
socket  = "m2/M/H4.2"
lengths = [2242]
bus     = "pcie 4.0 x4"
[[drive]]
name = "card"
use  = "m2/2242-S2-M"
bus  = "pcie 4.0 x4"
)";

Build read(const std::string& text) {
  auto got = build::read_text(text, "x.build.toml");
  if (const auto* fault = std::get_if<parts::Fault>(&got)) FAIL(fault->text());
  return std::get<Build>(std::move(got));
}

Build with_part(const std::string& lines, const std::string& top = "") {
  return read(top + head + "[[part]]\nname = \"p\"\nsolid = { box = [10, 20, 30] }\n" + lines + '\n' + tail);
}

Position position(const std::string& lines) {
  return with_part(lines).parts.at(1).position;
}

}  // namespace

TEST_CASE("under, above, beside and on say which faces meet, along which axis") {
  struct Case {
    const char* lines;
    int axis;
    bool up;  // the other part's face on the high side
    bool seated;
    double by;
  };
  const Case cases[] = {
      {"under = { part = \"board\", by = 9.1 }", 2, false, false, 9.1},
      {"above = { part = \"board\", by = \"3/8 in\" }", 2, true, false, 9.525},
      {"beside = { part = \"board\", side = \"+x\", by = 2 }", 0, true, false, 2.0},
      {"beside = { part = \"board\", side = \"-x\", by = 2 }", 0, false, false, 2.0},
      {"beside = { part = \"board\", side = \"+y\", by = 2 }", 1, true, false, 2.0},
      {"beside = { part = \"board\", side = \"-y\", by = 0 }", 1, false, false, 0.0},
      {"on = { part = \"board\" }", 2, true, true, 0.0},
      {"on = { part = \"board\", face = \"back\" }", 2, false, true, 0.0},
  };
  for (const Case& each : cases) {
    CAPTURE(each.lines);
    const Position got = position(each.lines);
    CHECK(got.kind == Position::Kind::against);
    CHECK(got.target == 0);
    CHECK(got.axis == each.axis);
    CHECK(got.up == each.up);
    CHECK(got.seated == each.seated);
    CHECK(!got.corner.has_value());  // centred
    check_mm(got.by.dimension.nominal, each.by, 1e-12);
  }
}

TEST_CASE("a corner, a fixed place and a distance to be solved for") {
  const Position cornered = position("beside = { part = \"board\", side = \"+x\", by = 2, at = [-3, 4.5] }");
  REQUIRE(cornered.corner.has_value());
  check_mm((*cornered.corner)[0], -3.0, 0.0);
  check_mm((*cornered.corner)[1], 4.5, 0.0);
  const Position fixed = position("at = [1, -2, 3.5]");
  CHECK(fixed.kind == Position::Kind::fixed);
  check_mm(fixed.at, {1.0, -2.0, 3.5}, 0.0);
  CHECK(fixed.target == -1);
  const Position solved = position("under = { part = \"board\", by = \"?\" }");
  CHECK(solved.by.dimension.asked);
  CHECK(!position("under = { part = \"board\", by = 3 }").by.dimension.asked);
}

TEST_CASE("parts stand behind the part they are held against, in whatever order the file lists them") {
  const Build got = read(std::string(head) + R"([[part]]
name = "third"
solid = { box = [1, 1, 1] }
on = { part = "second" }
[[part]]
name = "second"
solid = { box = [1, 1, 1] }
under = { part = "first", by = 1 }
[[part]]
name = "first"
solid = { box = [1, 1, 1] }
above = { part = "board", by = 1 }
)" + tail);
  REQUIRE(got.parts.size() == 4);
  CHECK(got.parts[0].name == "board");
  CHECK(got.parts[1].name == "first");
  CHECK(got.parts[2].name == "second");
  CHECK(got.parts[3].name == "third");
  CHECK(got.parts[1].position.target == 0);
  CHECK(got.parts[2].position.target == 1);
  CHECK(got.parts[3].position.target == 2);
}

TEST_CASE("a circle of three is refused at one of them, and the slot's part is found after the order is made") {
  const auto got = build::read_text(std::string(head) + R"([[part]]
name = "a"
solid = { box = [1, 1, 1] }
on = { part = "b" }
[[part]]
name = "b"
solid = { box = [1, 1, 1] }
on = { part = "c" }
[[part]]
name = "c"
solid = { box = [1, 1, 1] }
on = { part = "a" }
)" + tail,
                                    "x.build.toml");
  REQUIRE(std::holds_alternative<parts::Fault>(got));
  CHECK(std::get<parts::Fault>(got).text().find("in a circle") != std::string::npos);
  const Build ordered = read(std::string(head) + R"([[part]]
name = "riser"
solid = { plate = [80, 40, 1.6] }
beside = { part = "post", side = "+x", by = 0 }
[[part]]
name = "post"
solid = { box = [5, 5, 40] }
on = { part = "board" }
[[slot]]
name = "second slot"
on = { part = "riser", at = [20, 20], toward = "-y" }
socket = "pcie/x4-open"
bus = "pcie 3.0 x4"
)" + tail);
  REQUIRE(ordered.places.size() == 2);
  CHECK(ordered.parts.at(static_cast<std::size_t>(ordered.places[0].part)).name == "riser");
  CHECK(ordered.parts.at(static_cast<std::size_t>(ordered.places[1].part)).name == "board");
  check_mm(ordered.places[0].toward, {0.0, -1.0, 0.0}, 0.0);
  CHECK(std::get<build::CardSlot>(ordered.places[0].socket).open_ended);
}

TEST_CASE("turn goes counter-clockwise in quarters") {
  // A box 10 by 20 whose low corner is at the origin: turned once it reaches from x = -20 to 0.
  for (const auto& [turn, low_x] :
       {std::pair("0", 0.0), {"90", -20.0}, {"180", -10.0}, {"270", 0.0}, {"-90", 0.0}, {"450", -20.0}}) {
    CAPTURE(turn);
    const HostPart part = with_part(std::string("turn = ") + turn + "\nat = [0, 0, 0]").parts.at(1);
    const auto values = parts::nominal_values(part.part);
    check_mm(parts::outer_face(part.part, 0, false).at(values), low_x, 1e-12);
  }
}

TEST_CASE("lengths without limits take those of the tool, never more than half of a size") {
  const char* const lines = "under = { part = \"board\", by = 9.1 }";
  struct Case {
    const char* tool;
    double limit;
  };
  // Common practice, no source.
  for (const Case& each : {Case{"caliper", 0.1}, Case{"rule", 0.5}}) {
    CAPTURE(each.tool);
    const Build got = with_part(lines, std::string("measured_with = \"") + each.tool + "\"\n");
    const tolerance::Dimension& by = got.parts[1].position.by.dimension;
    check_mm(by.minus, each.limit, 0.0);
    check_mm(by.plus, each.limit, 0.0);
    CHECK(by.source.find(each.tool) != std::string::npos);
    CHECK(by.known == tolerance::Known::measured);
    CHECK(got.exact.empty());
    CHECK(got.measured_with == each.tool);
    // The slot's board is 1.6 thick: half of it is more than either limit. A foil of 0.5 keeps half of itself.
    const Build foil = with_part(
        "under = { part = \"board\", by = \"9 ±0.2\" }\n[[part]]\nname = \"foil\"\n"
        "solid = { plate = [5, 5, 0.5] }\non = { part = \"p\" }",
        std::string("measured_with = \"") + each.tool + "\"\n");
    check_mm(foil.parts[2].part.dimensions.at(2).minus, each.limit < 0.25 ? each.limit : 0.25, 0.0);
    check_mm(foil.parts[1].position.by.dimension.minus, 0.2, 1e-12);  // its own limits stay
  }
}

TEST_CASE("without a tool, the lengths that state no limits are exact and listed, and no others") {
  const Build got = with_part("under = { part = \"board\", by = { length = 9.1, source = \"steel rule\" } }");
  const tolerance::Dimension& by = got.parts[1].position.by.dimension;
  CHECK(by.exact());
  const auto listed = [&](const std::string& name) { return std::count(got.exact.begin(), got.exact.end(), name); };
  CHECK(listed("p under board") == 1);
  CHECK(listed("p height") == 1);
  CHECK(listed("board thickness") == 1);
  const Build given = read(std::string(R"(title = "t"
[[part]]
name  = "board"
use   = "board/mini-itx"
[[part]]
name  = "p"
solid = { box = ["10 ±0.1", "20..21", "max 30"] }
under = { part = "board", by = "9.1 +0.2 -0" }
)") + "[[slot]]\nname = \"slot\"\non = { part = \"board\", at = [20, -30], toward = \"+x\" }\nsocket = \"m2/M/H4.2\"\n"
      "lengths = [2242]\nstandoff = \"2.4 ±0.05\"\nbus = \"sata 6\"\n[[drive]]\nname = \"card\"\nuse = "
      "\"m2/2242-?-M\"\n"
      "bus = \"sata 6\"\ntop = \"1.3 ±0.1\"\nwears = [ { pad = 1.0 } ]\n");
  CHECK(given.exact.empty());
}

TEST_CASE("a pad keeps the limits of its packet, not those of the caliper") {
  // ±10 %: what makers of gap-filling pads usually write on them (secondary).
  for (const std::string pad : {"1.0", "\"1 mm\"", "{ length = 1.0, source = \"its packet\" }"}) {
    CAPTURE(pad);
    const Build got =
        read(std::string("measured_with = \"caliper\"\n") + head + tail + "wears = [ { pad = " + pad + " } ]\n");
    const auto& thickness = std::get<build::Pad>(got.drives.at(0).wears.at(0)).free_thickness.dimension;
    check_mm(thickness.minus, 0.1, 1e-12);
    check_mm(thickness.plus, 0.1, 1e-12);
  }
  const Build own = read(std::string(head) + tail + "wears = [ { pad = \"2.0 ±0.3\", compress = \"12.5 %\" } ]\n");
  const auto& pad = std::get<build::Pad>(own.drives.at(0).wears.at(0));
  check_mm(pad.free_thickness.dimension.minus, 0.3, 1e-12);
  check_mm(pad.compress, 0.125, 1e-12);
}
