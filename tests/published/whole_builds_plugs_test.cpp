// Which plug goes into which receptacle and whether the drive then works, as whole builds. SATA into SAS and not the
// reverse: three public pages agree. U.2 and U.3: public pages on SFF-8639 and SFF-TA-1001. A U.2 or U.3 plug in a SAS
// receptacle: from memory.
#include "support/whole_build.h"

#include <doctest/doctest.h>
#include <string>
#include <string_view>

namespace {

using namespace baywright;
using fit::Answer;
using fit::Kind;
using fit::Verdict;

struct Cell {
  std::string_view plug;
  std::string_view receptacle;
  bool enters;
  bool works;  // where the host wires what the drive speaks
};

constexpr Cell cells[] = {
    {"sata", "sata", true, true},  {"sata", "sas", true, true}, {"sata", "u2", true, true}, {"sata", "u3", true, true},
    {"sas", "sata", false, false}, {"sas", "sas", true, true},  {"sas", "u2", true, true},  {"sas", "u3", true, true},
    {"u2", "sata", false, false},  {"u2", "sas", true, false},  {"u2", "u2", true, true},   {"u2", "u3", true, false},
    {"u3", "sata", false, false},  {"u3", "sas", true, false},  {"u3", "u2", true, true},   {"u3", "u3", true, true},
};

std::string speaks(std::string_view plug) {
  return plug == "sata" ? "sata 6" : plug == "sas" ? "sas 12" : "pcie 4.0 x4";
}

fit::Seating seated(const Cell& cell, const std::string& wired) {
  return test::seating(
      test::bay("2.5in", "backplane = true\nplug = \"" + std::string(cell.receptacle) + '"', "bay", wired) +
      test::drive("2.5in/15", speaks(cell.plug), "plug = \"" + std::string(cell.plug) + '"'));
}

TEST_CASE("every plug in every receptacle, on a host that wires all") {
  for (const Cell& cell : cells) {
    CAPTURE(std::string(cell.plug));
    CAPTURE(std::string(cell.receptacle));
    const fit::Seating found = seated(cell, R"(["sata 6", "sas 12", "pcie 4.0 x4"])");
    CHECK(found.questions.form_factor.answer == Answer::yes);
    CHECK(found.questions.interface.answer == (cell.enters ? Answer::yes : Answer::no));
    CHECK(found.questions.bus.answer == (cell.works ? Answer::yes : Answer::no));
    CHECK(found.verdict == (cell.works ? Verdict::fits : Verdict::does_not_fit));
    if (!cell.enters) CHECK(found.findings.at(0).kind == Kind::interface);
    if (cell.enters && !cell.works) CHECK(found.findings.at(0).kind == Kind::bus);
  }
}

TEST_CASE("a plug that enters stays dead where the host does not wire its bus") {
  for (const Cell& cell : cells) {
    CAPTURE(std::string(cell.plug));
    CAPTURE(std::string(cell.receptacle));
    const std::string other = cell.plug == "sata" ? "\"pcie 4.0 x4\"" : "\"sata 6\"";
    const fit::Seating found = seated(cell, other);
    CHECK(found.questions.interface.answer == (cell.enters ? Answer::yes : Answer::no));
    CHECK(found.questions.bus.answer == Answer::no);
    CHECK(found.verdict == Verdict::does_not_fit);
  }
}

}  // namespace
