// Seatings as a whole, by construction.
#include "fit/check.h"

#include "build/build.h"
#include "fit/seat.h"
#include "support/check_mm.h"

#include <cmath>
#include <doctest/doctest.h>
#include <string>

namespace {

using namespace baywright;
using fit::Finding;
using fit::Kind;
using fit::Seating;
using fit::Verdict;
using test::check_mm;

build::Build read(const std::string& text) {
  auto made = build::read_text(text, "case.build.toml");
  if (const auto* fault = std::get_if<parts::Fault>(&made)) FAIL(fault->text());
  return std::get<build::Build>(std::move(made));
}

struct Case {
  std::string face = "top";
  std::string toward = "+x";
  std::string lid = "above = { part = \"board\", by = \"8.0 ±0.2\" }";
  std::string slot;   // more keys of the slot
  std::string drive;  // more keys of the drive
  std::string use = "m2/2280-S2-M";
  std::string more;  // more tables
  double clearance = 0.0;
};

build::Build build_of(const Case& c) {
  return read("title = \"case\"\nclearance = " + std::to_string(c.clearance) + R"(
[[part]]
name = "board"
solid = { plate = [300, 300, 1.5] }
[[part]]
name = "lid"
solid = { plate = [300, 300, 1] }
removable = true
)" + c.lid + R"(
[[slot]]
name = "slot"
on = { part = "board", face = ")" +
              c.face + R"(", at = [150, 150], toward = ")" + c.toward + R"(" }
socket = "m2/M/H4.2"
lengths = [2242, 2280]
bus = "pcie 4.0 x4"
)" + c.slot + R"(
[[drive]]
name = "card"
use = ")" + c.use +
              R"("
bus = "pcie 4.0 x4"
)" + c.drive + "\n" +
              c.more);
}

Seating seating(const Case& c, const fit::Options& options = {}) {
  return fit::check(build_of(c), options).seatings.at(0);
}

const Finding* gap_between(const Seating& seating, const std::string& a, const std::string& b) {
  for (const Finding& finding : seating.findings)
    if (finding.gap && finding.between[0] == a && finding.between[1] == b) return &finding;
  return nullptr;
}

const Finding* gap_between(Seating&&, const std::string&, const std::string&) = delete;  // it would dangle

TEST_CASE("a slot gives the same gap on either face and in all four directions") {
  // 8.0 less stand-off 2.45, solder 0.05, card 0.80 and chips 1.25
  for (const char* toward : {"+x", "-x", "+y", "-y"})
    for (const bool back : {false, true}) {
      CAPTURE(toward);
      CAPTURE(back);
      Case c;
      c.toward = toward;
      if (back) {
        c.face = "back";
        c.lid = "under = { part = \"board\", by = \"8.0 ±0.2\" }";
      }
      const Seating there = seating(c);
      const Finding* lid = gap_between(there, "card", "lid");
      REQUIRE(lid != nullptr);
      check_mm(lid->gap->nominal, 3.45, 1e-9);
      check_mm(lid->gap->min, 3.45 - 0.2 - 0.03 - 0.08 - 0.10, 1e-9);
      check_mm(lid->toward, {0.0, 0.0, back ? 1.0 : -1.0}, 1e-9);
    }
}

TEST_CASE("a stand-off 0.1 too tall tilts the card: its far end rises by 0.1, its socket end does not") {
  Case c;
  c.slot = "standoff = \"2.55 ±0\"";
  const build::Build build = build_of(c);
  const fit::Host host = fit::compile(build);
  const fit::Seated seated = fit::seat(host, build, build.drives[0], 0);
  // Underside: at the seating plane where the class has it, at the screw 0.10 above.
  const geometry::Vec3 near = seated.card.pose.point({0.0, 0.0, -0.80});
  const geometry::Vec3 far = seated.card.pose.point({0.0, 80.0, -0.80});
  check_mm(far.z - near.z, 0.10 * 80.0 / std::hypot(80.0, 0.10), 1e-9);
  check_mm(near.z, 1.5 + 2.50, 1e-6);
  const Seating tilted = seating(c);
  const Finding* lid = gap_between(tilted, "card", "lid");
  REQUIRE(lid != nullptr);
  check_mm(lid->gap->nominal, 3.35,
           2e-3);  // the far corner of the chips decides; 2e-3: the tilt leans the stack by 0.0013
}

TEST_CASE(
    "a card that a taller stand-off tilts was marginal against its own socket, whose length is known only as a "
    "maximum") {
  // The cause: a point on the socket's top moved along with its rear end, 4.30 at most, without limit the other way,
  // and the tilted direction saw a thousandth of that. Sides that slide along themselves do not move.
  Case c;
  c.slot = "standoff = \"2.9 ±0.05\"";
  const Seating tilted = seating(c);
  CHECK(tilted.verdict == Verdict::fits);
  for (const Finding& finding : tilted.findings)
    if (finding.gap) CHECK(std::isfinite(finding.gap->min));
}

TEST_CASE("[[apart]] replaces the clearance for its pair only, --clearance the general one only") {
  Case c;
  c.clearance = 3.4;
  CHECK(seating(c).verdict == Verdict::marginal);
  c.more = "[[apart]]\nbetween = [\"card\", \"lid\"]\nclearance = 3.0\n";
  CHECK(seating(c).verdict == Verdict::fits);
  fit::Options strict;
  strict.clearance = 6.0;
  CHECK(seating(c, strict).verdict == Verdict::fits);  // "card" names all that the drive brings
  c.more.clear();
  CHECK(seating(c, strict).verdict == Verdict::does_not_fit);
}

TEST_CASE("a marginal gap says what distance makes it sure") {
  Case c;
  c.clearance = 3.1;
  const Seating marginal = seating(c);
  CHECK(marginal.verdict == Verdict::marginal);
  const Finding* lid = gap_between(marginal, "card", "lid");
  REQUIRE(lid != nullptr);
  CHECK(lid->why.word("needs") == "lid above board");
  check_mm(lid->why.figure("needs"), 8.0 + 3.1 - 3.04, 1e-9);
  REQUIRE(marginal.share.has_value());
  CHECK(*marginal.share > 0.99);
  CHECK(*marginal.share < 1.0);
}

TEST_CASE("a soldered stand-off in the way of parts underneath is found, and a single-sided card rests on it") {
  Case c;
  c.slot = "soldered = [2242]";
  CHECK(seating(c).verdict == Verdict::fits);
  c.use = "m2/2280-D2-M";
  const Seating blocked = seating(c);
  CHECK(blocked.verdict == Verdict::does_not_fit);
  const Finding* hit = gap_between(blocked, "card", "slot stand-off 2242");
  REQUIRE(hit != nullptr);
  CHECK(hit->bodies[0] == "chips underneath");
  check_mm(hit->gap->nominal, -1.25, 1e-9);  // it reaches the card's underside, through parts 1.25 deep
}

TEST_CASE("a heatsink that reaches over the screw's head may hit it: the head is known only as at most 1.20 high") {
  Case c;
  c.drive = "wears = [ { heatsink = { length = 78, width = 20, height = 2 } , from = 4 } ]";
  c.drive += "\ntop = \"1.0 ±0\"";  // lower than the head, which stands up to 1.20
  const Seating hit = seating(c);
  const Finding* screw = gap_between(hit, "screw", "heatsink");
  REQUIRE(screw != nullptr);
  CHECK(screw->verdict == Verdict::marginal);  // a lower head would clear it, though no driver comes to it
  check_mm(screw->gap->nominal, -0.20, 1e-9);
}

TEST_CASE("parts of the machine that run into each other are a note, and parts that touch are not") {
  Case c;
  c.more = R"([[part]]
name = "box"
solid = { box = [10, 10, 7] }
on = { part = "board", face = "top", at = [10, 10] }
)";
  CHECK(fit::check(build_of(c), {}).notes.size() == 1);  // lengths taken as exact, no overlap
  c.more = R"([[part]]
name = "box"
solid = { box = [10, 10, 9] }
on = { part = "board", face = "top", at = [10, 10] }
)";
  const fit::Check check = fit::check(build_of(c), {});
  REQUIRE(check.notes.size() == 2);
  CHECK(check.notes[0].kind == Kind::host);
  check_mm(check.notes[0].why.figure("depth"), 1.0, 1e-9);
}

TEST_CASE("an open side leaves a verdict open on that side only, also where a nearer solid is less sure") {
  Case c;
  c.clearance = 1.0;
  c.lid = "above = { part = \"board\", by = \"max 4.8\" }";
  CHECK(seating(c).verdict == Verdict::does_not_fit);  // 4.8 or less leaves 0.25 or less: sure
  c.lid = "above = { part = \"board\", by = \"min 4.8\" }";
  const Seating open = seating(c);
  CHECK(open.verdict == Verdict::marginal);
  CHECK(!open.share.has_value());
}

}  // namespace
