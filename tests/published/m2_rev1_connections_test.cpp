// What goes with what, through the call that a build uses.
// PCI-SIG M.2 Specification Rev 1.0 (2013): keys and their lanes, sections 2.4.9, 3.3.2, 5.2, 5.3, Tables 27, 31 to 35.
#include "build/build.h"
#include "fit/check.h"

#include <doctest/doctest.h>
#include <string>

namespace {

using namespace baywright;
using fit::Answer;
using fit::Code;

fit::Seating seating(const std::string& socket, const std::string& lengths, const std::string& wired,
                     const std::string& use, const std::string& bus, const std::string& more = {}) {
  const std::string text = R"(title = "connections"
[[part]]
name = "board"
solid = { plate = [200, 60, 1.57] }
[[slot]]
name = "slot"
on = { part = "board", face = "top", at = [20, 30], toward = "+x" }
socket = ")" + socket + "\"\n" +
                           (lengths.empty() ? "" : "lengths = " + lengths + "\n") + "bus = " + wired + R"(
[[drive]]
name = "drive"
use = ")" + use + "\"\nbus = \"" +
                           bus + "\"\n" + more;
  const auto read = build::read_text(text, "connections.build.toml");
  if (const auto* fault = std::get_if<parts::Fault>(&read)) FAIL(fault->text());
  return fit::check(std::get<build::Build>(read), {}).seatings.at(0);
}

fit::Seating m2(char key, const std::string& wired, const std::string& card_keys, const std::string& bus) {
  return seating("m2/" + std::string(1, key) + "/H4.2", "[2280]", wired, "m2/2280-S2-" + card_keys, bus);
}

TEST_CASE("M.2 Rev 1.0, 2.4.9: a card mates where it has a notch at the socket's key") {
  const std::string all = R"(["sata 6", "pcie 3.0 x4"])";
  CHECK(m2('B', all, "B", "sata 6").questions.interface.answer == Answer::yes);
  CHECK(m2('B', all, "M", "sata 6").questions.interface.answer == Answer::no);
  CHECK(m2('B', all, "B+M", "sata 6").questions.interface.answer == Answer::yes);
  CHECK(m2('M', all, "B", "sata 6").questions.interface.answer == Answer::no);
  CHECK(m2('M', all, "M", "sata 6").questions.interface.answer == Answer::yes);
  CHECK(m2('M', all, "B+M", "sata 6").questions.interface.answer == Answer::yes);
  CHECK(m2('M', all, "A+E", "pcie 3.0 x1").questions.interface.answer == Answer::no);
  CHECK(m2('B', all, "M", "sata 6").verdict == fit::Verdict::does_not_fit);
  CHECK(m2('M', all, "M", "sata 6").verdict == fit::Verdict::fits);
}

TEST_CASE("M.2 Rev 1.0, 3.3.2 and 5.2: key M carries four lanes to an M card, two to a B+M card, and key B two") {
  const std::string x4 = R"("pcie 3.0 x4")";
  const auto lanes = [&](char key, const char* card) { return m2(key, x4, card, "pcie 3.0 x4").link.value().lanes; };
  CHECK(lanes('M', "M") == 4);
  CHECK(lanes('M', "B+M") == 2);
  CHECK(lanes('B', "B+M") == 2);
}

TEST_CASE("only the wiring of a slot tells what it carries (common practice, no source)") {
  const std::string sata = R"("sata 6")";
  const std::string pcie = R"("pcie 3.0 x4")";
  const std::string both = R"(["sata 6", "pcie 3.0 x4"])";
  CHECK(m2('M', sata, "M", "pcie 3.0 x4").questions.bus.answer == Answer::no);  // an NVMe card in a SATA-only slot
  CHECK(m2('M', pcie, "B+M", "sata 6").questions.bus.answer == Answer::no);     // and the reverse
  CHECK(m2('M', both, "M", "pcie 3.0 x4").questions.bus.answer == Answer::yes);
  CHECK(m2('M', both, "B+M", "sata 6").questions.bus.answer == Answer::yes);
  // For an M.2 card interface and bus are two answers ...
  CHECK(m2('M', sata, "M", "pcie 3.0 x4").questions.interface.answer == Answer::yes);
  // ... for a SATA drive they are one.
  const fit::Seating cased = seating("m2/M/H4.2", "[2280]", both, "2.5in", "sata 6");
  CHECK(cased.questions.bus.why.code == Code::bus_with_interface);
  CHECK(cased.questions.bus.answer == cased.questions.interface.answer);
}

TEST_CASE(
    "a slower end is a note with its cost and no verdict: PCIe 3.0 x4 is half of PCIe 4.0 x4 (16 GT/s against 8)") {
  const fit::Seating slow = m2('M', R"("pcie 3.0 x4")", "M", "pcie 4.0 x4");
  CHECK(slow.verdict == fit::Verdict::fits);
  CHECK(slow.questions.bus.why.code == Code::bus_slower);
  CHECK(slow.questions.bus.why.figure("share") == 0.5);
  CHECK(slow.findings.at(slow.findings.size() - 1).kind == fit::Kind::link);
}

TEST_CASE("a card 80 long is held at the hole marked 80, one 42 long at 42 (common practice, no source)") {
  const std::string bus = R"("pcie 3.0 x4")";
  CHECK(seating("m2/M/H4.2", "[2242, 2280]", bus, "m2/2280-S2-M", "pcie 3.0 x4").verdict == fit::Verdict::fits);
  CHECK(seating("m2/M/H4.2", "[2242, 2280]", bus, "m2/2242-S2-M", "pcie 3.0 x4").verdict == fit::Verdict::fits);
  const fit::Seating longer = seating("m2/M/H4.2", "[2242]", bus, "m2/2280-S2-M", "pcie 3.0 x4");
  CHECK(longer.questions.form_factor.answer == Answer::no);
  CHECK(longer.findings.at(0).kind == fit::Kind::length);
  CHECK(longer.findings.at(0).why.word("offered") == "2242");
  const fit::Seating shorter = seating("m2/M/H4.2", "[2260, 2280]", bus, "m2/2242-S2-M", "pcie 3.0 x4");
  CHECK(shorter.questions.form_factor.answer == Answer::with_adapter);
  CHECK(shorter.verdict == fit::Verdict::does_not_fit);  // until it wears the extender
  CHECK(shorter.findings.at(0).why.word("offered") == "2260 and 2280");
}

TEST_CASE("a drive on an add-in card goes only where there is such a slot (common practice, no source)") {
  const std::string x4 = R"("pcie 4.0 x4")";
  const fit::Seating wrong = seating("m2/M/H4.2", "[2280]", x4, "add-in card/x4", "pcie 4.0 x4");
  CHECK(wrong.questions.form_factor.answer == Answer::no);
  CHECK(wrong.verdict == fit::Verdict::does_not_fit);
  // Where there is one the three answers are yes and the card fits: an x4 card goes into a longer slot.
  const fit::Seating right = seating("pcie/x16", "", R"("pcie 4.0 x16")", "add-in card/x4", "pcie 4.0 x4");
  CHECK(right.questions.form_factor.answer == Answer::yes);
  CHECK(right.questions.interface.answer == Answer::yes);
  CHECK(right.questions.bus.answer == Answer::yes);
  CHECK(right.verdict == fit::Verdict::fits);
  CHECK(seating("pcie/x1", "", x4, "add-in card/x4", "pcie 4.0 x4").questions.interface.answer == Answer::no);
  CHECK(seating("pcie/x1-open", "", R"("pcie 4.0 x1")", "add-in card/x4", "pcie 4.0 x4").questions.interface.answer ==
        Answer::yes);
}

TEST_CASE("a cache module and a soldered chip are named as what they are") {
  const fit::Seating cache =
      seating("m2/M/H4.2", "[2242]", R"("pcie 3.0 x2")", "m2/2242-S3-B+M", "pcie 3.0 x2", "is = \"cache module\"\n");
  CHECK(cache.findings.back().kind == fit::Kind::role);
  CHECK(cache.findings.back().why.code == Code::cache_module);
  const fit::Seating soldered = seating("m2/M/H4.2", "[2242]", R"("pcie 3.0 x2")", "soldered", "sata 6");
  CHECK(soldered.verdict == fit::Verdict::does_not_fit);
  CHECK(soldered.findings.at(0).why.code == Code::soldered);
}

}  // namespace
