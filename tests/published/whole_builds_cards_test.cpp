// Add-in cards, mini cards and their slots, as whole builds. PCI Express CEM 1.1 as public footprint libraries and
// models cite it; PCI Express Mini CEM 1.2 likewise.
#include "support/check_mm.h"
#include "support/whole_build.h"

#include <algorithm>
#include <array>
#include <doctest/doctest.h>
#include <string>

namespace {

using namespace baywright;
using fit::Answer;
using fit::Code;
using fit::Kind;
using fit::Verdict;
using test::check_mm;
using test::drive;
using test::seating;
using test::slot;

const std::string bare = "bracket = \"none\"\n";

std::string x(int lanes) {
  return "x" + std::to_string(lanes);
}

std::string card(int lanes, const std::string& more = {}) {
  return drive("add-in card/" + x(lanes), "pcie 4.0 " + x(lanes), more + bare);
}

/// A part on the board that begins so far from the key, in the card's line, and is so high.
std::string block(double from_key, double high) {
  return "[[part]]\nname = \"block\"\nsolid = { box = [8, 10, " + std::to_string(high) +
         "] }\non = { part = \"board\", at = [" + std::to_string(57.1 + from_key) + ", 95.0] }\n";
}

TEST_CASE("CEM: a card goes into a slot of its size or larger, into a smaller one only where its end is open") {
  constexpr std::array lanes = {1, 4, 8, 16};
  for (const int of_card : lanes)
    for (const int of_body : lanes) {
      CAPTURE(of_card);
      CAPTURE(of_body);
      const fit::Seating closed =
          seating(slot("pcie/" + x(of_body), "pcie 4.0 " + x(of_body), {}, bare) + card(of_card));
      const bool goes = of_card <= of_body;
      CHECK(closed.questions.interface.answer == (goes ? Answer::yes : Answer::no));
      CHECK(closed.verdict == (goes ? Verdict::fits : Verdict::does_not_fit));
      if (of_body == 16) continue;
      const fit::Seating open =
          seating(slot("pcie/" + x(of_body) + "-open", "pcie 4.0 " + x(of_body), {}, bare) + card(of_card));
      CHECK(open.questions.interface.answer == Answer::yes);
      CHECK(open.verdict == Verdict::fits);
      CHECK(open.questions.interface.why.code == (goes ? Code::slot_takes_card : Code::slot_open));
      CHECK(open.link.value().lanes == std::min(of_card, of_body));
    }
}

TEST_CASE("CEM: how far a tongue stands past the slot's own, with a part behind the slot in the way") {
  struct Case {
    int card, body;
    double end;  // of the card's tongue from the key: that of the body's own size and how far it stands past it
  };
  for (const Case& each : {Case{16, 4, 22.15 + 50.00}, Case{16, 1, 8.15 + 64.00}, Case{8, 4, 22.15 + 17.00},
                           Case{4, 1, 8.15 + 14.00}, Case{16, 8, 39.15 + 33.00}, Case{8, 1, 8.15 + 31.00}}) {
    CAPTURE(each.card);
    CAPTURE(each.body);
    const auto with = [&](double from_key, double high) {
      return seating(slot("pcie/" + x(each.body) + "-open", "pcie 4.0 " + x(each.body), block(from_key, high), bare) +
                     card(each.card));
    };
    const fit::Seating clear = with(each.end + 0.75, 8.0);
    CHECK(clear.verdict == Verdict::fits);
    check_mm(test::gap(clear, "drive", "block").gap->nominal, 0.75, 1e-9);
    const fit::Seating in_the_way = with(each.end - 0.75, 8.0);
    CHECK(in_the_way.verdict == Verdict::does_not_fit);
    CHECK(test::gap(in_the_way, "drive", "block").bodies[0] == "tongue past the slot");
    check_mm(test::gap(in_the_way, "drive", "block").gap->nominal, -0.75, 1e-9);
    // Under the tongue there are 3.40.
    CHECK(with(each.end - 2.0, 3.40).verdict == Verdict::fits);
    CHECK(with(each.end - 2.0, 3.45).verdict == Verdict::does_not_fit);
  }
}

TEST_CASE("CEM: past its tongue the card's edge stands 16.15 over the board") {
  const auto with = [](double high) {
    return seating(slot("pcie/x4", "pcie 4.0 x4", block(80.0, high), bare) + card(4));
  };
  CHECK(with(16.15).verdict == Verdict::fits);
  check_mm(test::gap(with(15.15), "drive", "block").gap->nominal, 1.00, 1e-9);
  CHECK(with(16.25).verdict == Verdict::does_not_fit);
}

TEST_CASE("CEM: a full card's top is at most 114.55 over the board, a low one's 72.30") {
  const auto under = [](double roof, const std::string& more) {
    const std::string lid =
        "[[part]]\nname = \"lid\"\nsolid = { plate = [305, 244, 1] }\nabove = { part = \"board\", by = " +
        std::to_string(roof) + " }\nremovable = true\n";
    return seating(slot("pcie/x4", "pcie 4.0 x4", lid, bare) + drive("add-in card/x4", "pcie 4.0 x4", more));
  };
  const std::string full = "bracket = \"full\"";
  check_mm(test::gap(under(115.55, full), "drive", "lid", "board").gap->min, 1.00, 1e-9);
  CHECK(under(114.55, full).verdict == Verdict::fits);
  CHECK(under(114.45, full).verdict == Verdict::marginal);  // the standard gives no least height
  const std::string low = bare + "height = \"max 68.90\"";
  check_mm(test::gap(under(73.30, low), "drive", "lid", "board").gap->min, 1.00, 1e-9);
  CHECK(under(72.30, low).verdict == Verdict::fits);
  CHECK(under(72.20, low).verdict == Verdict::marginal);
}

TEST_CASE("CEM: a full bracket's tab is 108.26 over the board and a low chassis's rail 71.49") {
  const auto with = [](const std::string& chassis, const std::string& of_card) {
    return seating(slot("pcie/x4", "pcie 4.0 x4", {}, "bracket = \"" + chassis + "\"") +
                   drive("add-in card/x4", "pcie 4.0 x4", "bracket = \"" + of_card + "\""));
  };
  const fit::Seating tall = with("low", "full");
  CHECK(tall.verdict == Verdict::does_not_fit);
  const fit::Finding& differs = test::the(tall, Code::bracket_differs);
  CHECK(differs.kind == Kind::bracket);
  check_mm(differs.why.figure("tab"), 108.26, 1e-9);
  check_mm(differs.why.figure("rail"), 71.49, 1e-9);
  CHECK(test::has(with("full", "low"), Code::bracket_differs));
  CHECK_FALSE(test::has(with("low", "low"), Code::bracket_differs));
  CHECK_FALSE(test::has(with("full", "full"), Code::bracket_differs));
}

TEST_CASE("CEM: a low card of 167.65 reaches 110.50 past the key, in a small case with a wall there") {
  const auto wall_at = [](double from_key, const std::string& length) {
    const std::string wall =
        "[[part]]\nname = \"wall\"\nsolid = { box = [1, 100, 80] }\non = { part = \"board\", at = [" +
        std::to_string(57.1 + from_key) + ", 50.0] }\n";
    return seating(slot("pcie/x4", "pcie 4.0 x4", wall, "bracket = \"none\"") +
                   drive("add-in card/x4", "pcie 4.0 x4", "bracket = \"low\"\n" + length));
  };
  CHECK(wall_at(110.50, "").verdict == Verdict::fits);
  check_mm(test::gap(wall_at(111.50, ""), "drive", "wall").gap->min, 1.00, 1e-9);
  CHECK(wall_at(110.0, "").verdict == Verdict::marginal);  // at most so long: a shorter one goes in
  CHECK(wall_at(110.0, "length = 167.65").verdict == Verdict::does_not_fit);
  CHECK(wall_at(110.0, "length = 120").verdict == Verdict::fits);
}

TEST_CASE("an x16 card in an x16 body that is wired x4 runs at x4 (common practice, no source)") {
  const fit::Seating seated = seating(slot("pcie/x16", "pcie 4.0 x4", {}, bare) + card(16));
  CHECK(seated.verdict == Verdict::fits);
  CHECK(seated.link.value().lanes == 4);
  CHECK(seated.questions.bus.why.code == Code::bus_slower);
  CHECK(seated.questions.bus.why.figure("share") == 0.25);
}

TEST_CASE("the second card of a carrier is seen only where the host splits the slot (common practice, no source)") {
  const auto behind = [](const std::string& splits, int position) {
    return seating(
        slot("pcie/x8", "pcie 4.0 x8", {}, bare + splits) +
        drive("m2/2280-S2-M", "pcie 4.0 x4",
              bare + "wears = [{ adapter = \"adapter/m2-on-x8\", position = " + std::to_string(position) + " }]"));
  };
  CHECK(behind("splits = [4, 4]", 2).verdict == Verdict::fits);
  CHECK(behind("splits = [4, 4]", 2).link.value().lanes == 4);
  CHECK(behind("", 1).verdict == Verdict::fits);
  const fit::Seating unseen = behind("", 2);
  CHECK(unseen.verdict == Verdict::does_not_fit);
  CHECK(unseen.questions.bus.why.code == Code::bus_not_split);
}

fit::Seating mini(const std::string& socket, const std::string& wired, const std::string& use, const std::string& bus) {
  return seating(
      "[[part]]\nname = \"board\"\nsolid = { plate = [200, 100, 1.6] }\n[[slot]]\nname = \"slot\"\n"
      "on = { part = \"board\", at = [40, 50], toward = \"+x\" }\nstandoff = 4.0\nsocket = \"mini card/" +
      socket + "\"\nbus = \"" + wired + "\"\n" + drive(use, bus));
}

TEST_CASE("Mini CEM: a half card's holes stand 24.15 before those of full posts") {
  const fit::Seating half = mini("full", "sata 3", "msata/half", "sata 6");
  CHECK(half.questions.form_factor.answer == Answer::with_adapter);
  CHECK(half.questions.form_factor.why.code == Code::half_card);
  CHECK(half.verdict == Verdict::does_not_fit);
  CHECK(half.findings.at(0).kind == Kind::length);
  CHECK(mini("half", "sata 3", "msata/half", "sata 6").verdict == Verdict::fits);
  CHECK(mini("both", "sata 3", "msata/half", "sata 6").verdict == Verdict::fits);
  CHECK(mini("half", "sata 3", "msata", "sata 6").questions.form_factor.why.code == Code::full_card);
}

TEST_CASE("JEDEC MO-300: an mSATA card is a mini card mechanically, only the wires tell them apart") {
  const fit::Seating dead = mini("full", "pcie 2.0 x1", "msata", "sata 6");
  CHECK(dead.questions.form_factor.answer == Answer::yes);
  CHECK(dead.questions.interface.answer == Answer::yes);
  CHECK(dead.questions.bus.answer == Answer::no);
  CHECK(dead.questions.bus.why.code == Code::bus_absent);
  CHECK(mini("full", "sata 3", "msata", "sata 6").verdict == Verdict::fits);
  CHECK(mini("full", "sata 3", "mini card/full", "pcie 2.0 x1").questions.bus.answer == Answer::no);
  CHECK(mini("full", "pcie 2.0 x1", "mini card/full", "pcie 2.0 x1").verdict == Verdict::fits);
}

}  // namespace
