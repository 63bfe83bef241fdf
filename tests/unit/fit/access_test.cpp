// Where a driver comes, by construction: what stands over a screw at which height decides, by sums that are written
// out.
#include "fit/access.h"

#include "fit/seat.h"
#include "support/whole_build.h"

#include <cstdio>
#include <string>

namespace {

using namespace baywright;
using fit::Code;
using fit::Finding;
using fit::Seating;
using fit::Verdict;
using test::check_mm;

// The screw of an M.2 card, over the board: stand-off 2.45, solder 0.05, card 0.80, head 1.20. It is 3.00 long under
// its head and 5.20 across the head; it stands 80 from the socket, at x = 180, y = 150. PH0, as ISO 7045 has for M2.
constexpr double head_top = 2.45 + 0.05 + 0.80 + 1.20;
constexpr double screw = 3.0;
constexpr double moves = 0.03 + 0.08;  // stand-off and card; the head is as high as it may be
constexpr double low = 18.0 + 12.0;    // bit and head of the ratchet
constexpr double stubby = 25.0 + 45.0;
constexpr double ordinary = 60.0 + 85.0;

std::string number(double value) {
  char text[32];
  std::snprintf(text, sizeof text, "%.9f", value);
  return text;
}

/// A board 300 square with one M.2 slot that points along +x; `parts` are more tables, `keys` more keys of the drive.
std::string m2(const std::string& parts, const std::string& keys = {}) {
  return "[[part]]\nname = \"board\"\nsolid = { plate = [300, 300, 1.5] }\n" + parts +
         "[[slot]]\nname = \"slot\"\non = { part = \"board\", at = [100, 150], toward = \"+x\" }\n"
         "socket = \"m2/M/H4.2\"\nlengths = [2280]\nbus = \"pcie 4.0 x4\"\n" +
         test::drive("m2/2280-S2-M", "pcie 4.0 x4", keys);
}

/// A plate over everything.
std::string lid(const std::string& by, const std::string& more = {}) {
  return "[[part]]\nname = \"lid\"\nsolid = { plate = [300, 300, 1] }\nabove = { part = \"board\", by = " + by +
         " }\n" + more + "\n";
}

Code outcome(const std::string& text) {
  const Seating seating = test::seating(text);
  const Finding* only = nullptr;
  for (const Finding& finding : seating.findings)
    if (finding.kind == fit::Kind::access) {
      CHECK(only == nullptr);  // one screw, one finding
      only = &finding;
    }
  REQUIRE(only != nullptr);
  return only->why.code;
}

TEST_CASE("a lid decides at head top plus shaft, handle and length which driver is the longest that goes under it") {
  struct Edge {
    double need;
    Code above, below;
  };
  for (const Edge& edge :
       {Edge{ordinary, Code::tool_reaches, Code::tool_other}, Edge{stubby, Code::tool_other, Code::tool_other},
        Edge{low, Code::tool_other, Code::tool_marginal}}) {
    const double height = head_top + edge.need + screw + moves;  // in the worst case
    CAPTURE(height);
    CHECK(outcome(m2(lid(number(height + 1e-6)))) == edge.above);
    CHECK(outcome(m2(lid(number(height - 1e-6)))) == edge.below);
  }
}

TEST_CASE("which driver does under a lid is told, with the room there and what the ordinary one needs") {
  const Seating under = test::seating(m2(lid("90.0")));
  const Finding& other = test::the(under, Code::tool_other);
  CHECK(under.verdict == Verdict::fits);
  CHECK(other.why.word("tool") == "stubby PH0 driver");
  CHECK(other.why.word("blocked") == "ordinary PH0 driver");
  CHECK(other.why.word("by") == "lid");
  check_mm(other.why.figure("room"), 90.0 - head_top, 1e-9);
  check_mm(other.why.figure("need"), ordinary + screw, 1e-9);
  const Seating lower = test::seating(m2(lid("50.0")));
  CHECK(test::the(lower, Code::tool_other).why.word("tool") == "PH0 bit in a low ratchet");
}

TEST_CASE("a lid that leaves room for no driver refuses the place, unless it comes off") {
  const Seating blocked = test::seating(m2(lid("20.0")));
  CHECK(blocked.verdict == Verdict::does_not_fit);
  const Finding& finding = test::the(blocked, Code::tool_blocked);
  CHECK(finding.why.word("by") == "lid");
  check_mm(finding.why.figure("room"), 20.0 - head_top, 1e-9);
  check_mm(finding.why.figure("need"), low + screw, 1e-9);  // of the shortest
  // Under 36 mm the card itself goes in, so the lid need not come off for it.
  const Seating before = test::seating(m2(lid("36.0", "removable = true")));
  CHECK(before.verdict == Verdict::fits);
  CHECK(test::the(before, Code::tool_before).why.word("by") == "lid");
}

TEST_CASE("what stands on a removable part goes with it, and what is only measured from it does not") {
  const std::string tray =
      "[[part]]\nname = \"tray\"\nsolid = { plate = [20, 20, 1] }\n"
      "above = { part = \"board\", by = 35, at = [0, 0] }\nremovable = true\n";
  const std::string on = "[[part]]\nname = \"fan\"\nsolid = { box = [300, 300, 9] }\n";
  const Seating with = test::seating(m2(tray + on + "on = { part = \"tray\", at = [0, 0] }\n"));
  CHECK(test::the(with, Code::tool_before).why.word("by") == "tray");
  const Seating alone = test::seating(m2(tray + on + "above = { part = \"tray\", by = 0.5, at = [0, 0] }\n"));
  CHECK(test::the(alone, Code::tool_blocked).why.word("by") == "fan");
}

TEST_CASE("parts that come out first are not in the way, nor is what stands on them") {
  const auto read =
      build::read_text("title = \"out\"\n" + m2(lid("20.0", "removable = true") +
                                                "[[part]]\nname = \"fan\"\nsolid = { box = [60, 60, 9] }\n"
                                                "on = { part = \"lid\", face = \"back\" }\n"),
                       "out.build.toml");
  REQUIRE(std::holds_alternative<build::Build>(read));
  const auto& build = std::get<build::Build>(read);
  const fit::Host host = fit::compile(build);
  const fit::Seated seated = fit::seat(host, build, build.drives[0], 0);
  const auto code = [&](const std::vector<std::string>& out) {
    return fit::access(host, build, seated, build.drives[0], build.places[0], out, {}).at(0).why.code;
  };
  CHECK(code({}) == Code::tool_before);
  CHECK(code({"lid"}) == Code::tool_reaches);
}

TEST_CASE("a wall beside the axis grazes the handle: 10 from it is enough, less is not, and a long shaft passes it") {
  // PH0: the handle is 20 across and begins 60 over the head, of the long driver 100.
  const auto wall = [](double beside, double height) {
    return "[[part]]\nname = \"wall\"\nsolid = { box = [20, 300, " + number(height) +
           "] }\non = { part = \"board\", at = [" + number(180.0 + beside) + ", 0] }\n";
  };
  CHECK(outcome(m2(wall(10.0 + 1e-6, 200.0))) == Code::tool_reaches);
  CHECK(outcome(m2(wall(10.0 - 1e-6, head_top + 60.0 - moves - 1e-6))) == Code::tool_reaches);
  const Seating deep = test::seating(m2(wall(10.0 - 1e-6, head_top + 60.0 - moves + 1e-6)));
  CHECK(test::the(deep, Code::tool_other).why.word("tool") == "long PH0 driver");
}

TEST_CASE("a screw in a deep well: the long shaft passes, the handles do not") {
  const auto well = [](double across, double height) {
    std::string out;
    for (const double side : {-1.0, 1.0}) {
      const std::string name = side < 0.0 ? "left" : "right";
      const double at = 150.0 + (side < 0.0 ? -0.5 * across - 20.0 : 0.5 * across);
      out += "[[part]]\nname = \"" + name + "\"\nsolid = { box = [100, 20, " + number(height) +
             "] }\nabove = { part = \"board\", by = 20, at = [150, " + number(at) + "] }\n";
    }
    return out;
  };
  CHECK(test::the(test::seating(m2(well(8.0, 60.0))), Code::tool_other).why.word("tool") == "long PH0 driver");
  const Seating narrow = test::seating(m2(well(2.9, 60.0)));  // the shaft is 3 across
  CHECK(narrow.verdict == Verdict::does_not_fit);
  CHECK(test::the(narrow, Code::tool_blocked).why.word("where") != "head");
}

TEST_CASE("the head has to come down to its seat: 2.60 from the axis is enough up to where the screw is started") {
  const auto block = [](double beside, double by) {
    return "[[part]]\nname = \"block\"\nsolid = { box = [20, 20, 5] }\nabove = { part = \"board\", by = " + number(by) +
           ", at = [" + number(180.0 + beside) + ", 140] }\n";
  };
  const double over = head_top + 0.5;  // within the 3.00 that the head comes down
  CHECK(outcome(m2(block(2.60 + 1e-6, over))) == Code::tool_reaches);
  const Seating blocked = test::seating(m2(block(2.60 - 1e-6, over)));
  CHECK(test::the(blocked, Code::tool_blocked).why.word("where") == "head");
  CHECK(outcome(m2(block(2.60 - 1e-6, head_top + screw + moves + 1e-6))) == Code::tool_reaches);
}

TEST_CASE("the drive's own heatsink over its screw keeps the driver out") {
  // 80 long from y = 4 covers the hole at 80; chips 1.25 high, so it hangs over the head.
  const Seating covered =
      test::seating(m2("", "wears = [ { heatsink = { length = 80, width = 20, height = 2 }, from = 4 } ]"));
  CHECK(test::the(covered, Code::tool_blocked).why.word("by") == "heatsink");
  const Seating short_of =
      test::seating(m2("", "wears = [ { heatsink = { length = 72, width = 20, height = 2 }, from = 4 } ]"));
  CHECK(test::has(short_of, Code::tool_reaches));  // it ends 4 before the axis
}

TEST_CASE("a driver of one's own is tried first, and a low one needs a way for its lever") {
  const std::string thin =
      "[[tool]]\nname = \"thin one\"\nshaft = { diameter = 2, length = 5 }\n"
      "handle = { diameter = 8, length = 4 }\n";
  const Seating under = test::seating(m2(lid(number(head_top + 5.0 + 4.0 + screw + moves + 1e-6))) + thin);
  CHECK(test::the(under, Code::tool_reaches).why.word("own tool") == "thin one");
  CHECK(test::has(test::seating(m2(lid(number(head_top + 5.0 + 4.0 + screw - moves - 1e-6))) + thin),
                  Code::tool_blocked));
  // Walls all round, 15 from the axis: a lever of 20 has no way, one of 14 has.
  std::string walls = lid("30");
  const auto wall = [&walls](const char* name, const char* size, const char* at) {
    walls += "[[part]]\nname = \"" + std::string(name) + "\"\nsolid = { box = " + size +
             " }\nabove = { part = \"board\", by = 4.6, at = " + at + " }\n";
  };
  wall("near", "[20, 100, 25]", "[145, 100]");
  wall("far", "[20, 100, 25]", "[195, 100]");
  wall("left", "[140, 20, 25]", "[100, 165]");
  wall("right", "[140, 20, 25]", "[100, 115]");
  const auto low_one = [](const char* lever) {
    return "[[tool]]\nname = \"low one\"\nshaft = { diameter = 4, length = 8 }\n"
           "head = { diameter = 12, height = 6, lever = " +
           std::string(lever) + " }\n";
  };
  CHECK(test::has(test::seating(m2(walls) + low_one("14")), Code::tool_reaches));
  const Seating stuck = test::seating(m2(walls) + low_one("20"));
  CHECK(test::the(stuck, Code::tool_blocked).why.word("where") == "lever");
}

TEST_CASE("limits decide whether a driver passes in every build, in some or in none") {
  // The head moves by 0.11, the lid by 0.2: 0.31 in all.
  const double height = head_top + low + screw;
  const auto verdict = [](double by) {
    const Seating seating = test::seating(m2(lid("\"" + number(by) + " ±0.2\"")));
    for (const Finding& finding : seating.findings)
      if (finding.kind == fit::Kind::access) return *finding.verdict;
    return Verdict::undecided;
  };
  CHECK(verdict(height + 0.31 + 1e-6) == Verdict::fits);
  CHECK(verdict(height + 0.31 - 1e-6) == Verdict::marginal);
  CHECK(verdict(height - 0.31 + 1e-6) == Verdict::marginal);
  CHECK(verdict(height - 0.31 - 1e-6) == Verdict::does_not_fit);
  const Seating some = test::seating(m2(lid("\"" + number(height) + " ±0.2\"")));
  const Finding& finding = test::the(some, Code::tool_marginal);
  check_mm(finding.why.figure("least"), -0.31, 1e-9);
  check_mm(finding.why.figure("most"), 0.31, 1e-9);
  REQUIRE(finding.share.has_value());
  check_mm(*finding.share, 0.5, 1e-3);  // limits on both sides alike
}

/// A 3.5-inch drive in a cage 102 wide, screwed through its sides; M.2's twin for cased drives. A wall stands beside.
std::string cage(const std::string& wall) {
  return test::bay(
             "3.5in",
             "inside = { width = 102, height = 60 }\nraised = 20\nfixing = { through = \"sides\", holes = [[28.5, "
             "6.35], [130.1, 6.35]], diameter = 4.6, screw = \"6-32\", length = 4.76, sheet = 1.0 }") +
         wall + test::drive("3.5in/26.1", "sata 6");
}

TEST_CASE("the screws of one side of a cage behind a wall are one finding, those of the other side another") {
  // The wall of the cage is at y = 150 + 51 + 1; a 6-32 head has no row, so it is 0.7 of 3.5052 high. PH2: shaft 100,
  // handle 105, stubby 25 and 55, low 30.
  const double face = 150.0 + 51.0 + 1.0 + 0.7 * 3.5052;
  const auto wall = [&](double away) {
    return "[[part]]\nname = \"wall\"\nsolid = { box = [400, 10, 90] }\non = { part = \"floor\", at = [0, " +
           number(face + away) + "] }\n";
  };
  CHECK(test::has(test::seating(cage(wall(205.0 + 4.76 + 1e-6))), Code::tool_reaches));
  const Seating other = test::seating(cage(wall(205.0 + 4.76 - 1e-6)));
  const Finding& two = test::the(other, Code::tool_other);
  CHECK(two.why.word("tool") == "stubby PH2 driver");
  check_mm(two.why.figure("count"), 2.0, 0.0);
  check_mm(two.why.figure("of"), 4.0, 0.0);
  check_mm(test::the(other, Code::tool_reaches).why.figure("count"), 2.0, 0.0);
  const Seating blocked = test::seating(cage(wall(30.0 + 4.76 - 1e-6)));
  CHECK(blocked.verdict == Verdict::does_not_fit);
  CHECK(test::the(blocked, Code::tool_blocked).why.word("by") == "wall");
}

TEST_CASE("the nut of a stand-off wants fingers or a spanner, and a tray that comes out is screwed outside") {
  const auto panel = [](const std::string& more, const std::string& keys) {
    return "[[part]]\nname = \"floor\"\nsolid = { plate = [400, 300, 1.0] }\n" + more +
           "[[panel]]\nname = \"panel\"\non = { part = \"floor\", at = [100, 150], toward = \"+x\" }\ntakes = "
           "\"2.5in\"\nspacers = 5\nbus = \"sata 6\"\nfixing = { holes = [[14, -30.86], [14, 30.86], [90.6, -30.86], "
           "[90.6, 30.86]], diameter = 3.4, screw = \"M3\", length = 12, sheet = 1.0" +
           keys + " }\n" + test::drive("2.5in/7", "sata 6", "rows = [\"row 1\", \"row 2\"]");
  };
  // The nut turns against the floor's underside; fingers take 25 there, a spanner 3.5.
  const std::string table = "[[part]]\nname = \"table\"\nsolid = { plate = [400, 300, 1] }\nunder = { part = ";
  const auto nuts = [&](double by) {
    std::string text = panel(table + "\"floor\", by = " + number(by) + " }\n", ", nut = true");
    text.replace(text.find("spacers"), 7, "standoffs");
    const Seating seating = test::seating(text);
    for (const Finding& finding : seating.findings)
      if (finding.kind == fit::Kind::access && finding.why.word("what") == "nut") return finding.why;
    return fit::Reason{};
  };
  CHECK(nuts(25.0 + 1e-6).word("tool") == "fingers");
  CHECK(nuts(25.0 - 1e-6).code == Code::tool_other);
  CHECK(nuts(25.0 - 1e-6).word("tool") == "flat spanner");
  CHECK(nuts(3.5 - 1e-6).code == Code::tool_blocked);
  // A tray: its screws come from below, where the table is close.
  const Seating stays = test::seating(panel(table + "\"floor\", by = 5 }\n", ""));
  CHECK(test::has(stays, Code::tool_blocked));
  const std::string tray = "[[part]]\nname = \"base\"\nsolid = { plate = [400, 300, 1] }\n" +
                           panel("above = { part = \"base\", by = 5 }\nremovable = true\n", "");
  const Seating out = test::seating(tray);
  CHECK(test::the(out, Code::tool_before).why.word("carrier") == "floor");
}

}  // namespace
