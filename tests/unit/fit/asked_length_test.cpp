// What a length that is "?" has to be: against sums by hand, and against checks of the same file with figures in its
// place.
#include "fit/asked_length.h"

#include "build/build.h"
#include "support/check_mm.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <optional>
#include <string>

namespace {

using namespace baywright;
using fit::Code;
using fit::Finding;
using fit::Verdict;
using test::check_mm;

build::Build read(const std::string& text) {
  auto made = build::read_text(text, "case.build.toml");
  if (const auto* fault = std::get_if<parts::Fault>(&made)) FAIL(fault->text());
  return std::get<build::Build>(std::move(made));
}

/// The text with `length` in the place of the $.
std::string with(std::string text, const std::string& length) {
  return text.replace(text.find('$'), 1, length);
}

struct Answer {
  fit::Seating seating;
  Finding needs;

  [[nodiscard]] std::optional<double> figure(const std::string& name) const {
    for (const auto& [each, value] : needs.why.figures)
      if (each == name) return value;
    return std::nullopt;
  }
};

Answer asked(const std::string& text) {
  const fit::Check check = fit::check(read(with(text, "\"?\"")), {});
  Answer out{check.seatings.at(0), {}};
  for (const Finding& finding : out.seating.findings)
    if (finding.kind == fit::Kind::needs) out.needs = finding;
  return out;
}

/// Whether gaps, screws and holes are sure with that figure.
bool sure(const std::string& text, double length) {
  const fit::Check check = fit::check(read(with(text, std::to_string(length))), {});
  const auto& findings = check.seatings.at(0).findings;
  return std::none_of(findings.begin(), findings.end(), [](const Finding& finding) {
    const bool way = finding.kind == fit::Kind::insertion || finding.kind == fit::Kind::access;
    return finding.verdict && *finding.verdict != Verdict::fits && !way;
  });
}

const std::string board =
    "title = \"t\"\nclearance = 0.5\nmeasured_with = \"caliper\"\n[[part]]\nname = \"board\"\n"
    "solid = { plate = [\"300 ±0\", \"300 ±0\", \"1.5 ±0\"] }\n";
const std::string slot =
    "[[slot]]\nname = \"slot\"\non = { part = \"board\", at = [150, 150], toward = \"+x\" }\n"
    "socket = \"m2/M/H4.2\"\nlengths = [2280]\nbus = \"pcie 4.0 x4\"\n";

std::string lid(const std::string& by) {
  return "[[part]]\nname = \"lid\"\nsolid = { plate = [300, 300, 1] }\nremovable = true\nabove = { part = \"board\", "
         "by = " +
         by + " }\n";
}

std::string card(const std::string& keys) {
  return "[[drive]]\nname = \"card\"\nuse = \"m2/2280-?-M\"\nbus = \"pcie 4.0 x4\"\n" + keys;
}

std::string bay(const std::string& inside, const std::string& more) {
  return "title = \"t\"\nclearance = 0.5\nmeasured_with = \"caliper\"\n[[part]]\nname = \"floor\"\n"
         "solid = { plate = [300, 300, 1] }\n[[bay]]\nname = \"bay\"\n"
         "on = { part = \"floor\", at = [60, 150], toward = \"+x\" }\ntakes = \"2.5in\"\nbus = \"sata 6\"\ninside = " +
         inside + "\n" + more +
         "[[drive]]\nname = \"drive\"\nuse = \"2.5in/7\"\nbus = \"sata 6\"\nrows = [\"row 1\", \"row 2\"]\n";
}

}  // namespace

TEST_CASE("a distance that is asked about: the least that fits, and the least for the clearance") {
  // stand-off 2.45 + solder 0.05 + card 0.80 + chips 1.25; ±0.03, ±0.08 and ±0.10 of these, and ±0.10 of its own
  const std::string text = board + lid("$") + slot + card("top = \"1.25 ±0.1\"\n");
  const Answer got = asked(text);
  CHECK(got.needs.why.code == Code::needs_length);
  CHECK(got.needs.why.word("length") == "lid above board");
  check_mm(got.figure("bare least").value_or(0.0), 4.55 + 0.21 + 0.10, 1e-5);
  check_mm(got.figure("least").value_or(0.0), 5.05 + 0.21 + 0.10, 1e-5);
  CHECK_FALSE(got.figure("most"));
  check_mm(got.figure("limit").value_or(0.0), 0.1, 1e-12);
  CHECK(sure(text, 5.36));
  CHECK_FALSE(sure(text, 5.34));
}

TEST_CASE("what stands on the card, at most: the same sum from the other side") {
  const std::string text = board + lid("\"6.0 ±0.2\"") + slot + card("top = $\n");
  const Answer got = asked(text);
  // 6.0 - 0.2 less 2.50 + 0.03, card 0.88, 0.5 asked and 0.10 of its own
  check_mm(got.figure("most").value_or(0.0), 5.8 - 2.53 - 0.88 - 0.5 - 0.1, 1e-5);
  check_mm(got.figure("bare most").value_or(0.0), 5.8 - 2.53 - 0.88 - 0.1, 1e-5);
  CHECK(got.seating.verdict == Verdict::fits);
}

TEST_CASE("lengths of every kind: the answer is sure and 0.01 beyond is not") {
  const std::string sink = "wears = [{ pad = \"1.0 ±0.1\" }, { heatsink = { length = 70, width = 22, height = $ } }]\n";
  const std::string pad = "wears = [{ pad = $ }, { heatsink = { length = 70, width = 22, height = 2 } }]\n";
  const std::string fixing =
      "fixing = { holes = [[14, -30.86], [90.6, -30.86], [14, 30.86], [90.6, 30.86]], diameter = \"4.8 ±0.05\", screw "
      "= \"M3\", "
      "length = \"6 ±0.05\", sheet = 1.0 }\n";
  std::string screw = fixing;
  screw.replace(screw.find("\"6 ±0.05\""), std::string("\"6 ±0.05\"").size(), "$");
  std::string spacers = "spacers = $\n" + fixing;
  spacers.replace(spacers.find("\"6 ±0.05\""), std::string("\"6 ±0.05\"").size(), "\"9 ±0.05\"");
  struct Kind {
    std::string name;
    std::string text;
    bool least;
    bool most;
  };
  const std::vector<Kind> kinds = {
      {"heatsink height", board + lid("\"9 ±0.2\"") + slot + card("top = 1.2\n" + sink), false, true},
      {"pad thickness", board + lid("\"9 ±0.2\"") + slot + card("top = 1.2\n" + pad), false, true},
      {"bay height", bay("{ height = $ }", ""), true, false},
      {"bay depth", bay("{ depth = $ }", ""), true, false},
      {"bay width", bay("{ width = $ }", ""), true, false},
      {"raised", bay("{ height = 12 }", "raised = $\n"), false, true},
      {"room behind", bay("{ behind = $ }", "cable = 30\n"), true, false},
      {"cable plug", bay("{ behind = 40 }", "cable = $\n"), false, true},
      {"screw length", bay("{ height = 12 }", screw), true, true},
      {"spacers", bay("{ height = 20 }", spacers), true, true},
  };
  for (const Kind& kind : kinds) {
    CAPTURE(kind.name);
    const Answer got = asked(kind.text);
    REQUIRE(got.needs.why.code == Code::needs_length);
    const auto least = got.figure("least");
    const auto most = got.figure("most");
    CHECK(least.has_value() == kind.least);
    CHECK(most.has_value() == kind.most);
    if (least) {
      CHECK(sure(kind.text, *least + 2e-6));
      CHECK_FALSE(sure(kind.text, *least - 0.01));
    }
    if (most) {
      CHECK(sure(kind.text, *most - 2e-6));
      CHECK_FALSE(sure(kind.text, *most + 0.01));
    }
  }
}

TEST_CASE("any length, none, and a drive that does not see it") {
  const std::string far = board + lid("\"60 ±1\"") +
                          "[[part]]\nname = \"shelf\"\nsolid = { plate = [300, 300, 1] }\n"
                          "above = { part = \"lid\", by = $ }\n";
  CHECK(asked(far + slot + card("top = 1.2\n")).needs.why.code == Code::needs_nothing);
  // Screws of 6 into a drive over a sheet of 5.9 do not hold at any height of the spacers.
  const std::string holding =
      "spacers = $\nfixing = { holes = [[14, -30.86], [90.6, -30.86], [14, 30.86], [90.6, 30.86]], diameter = \"4.8 "
      "±0.05\", "
      "screw = \"M3\", length = \"6 ±0.05\", sheet = \"5.9 ±0.05\" }\n";
  const Answer none = asked(bay("{ height = 30 }", holding));
  CHECK(none.needs.why.code == Code::needs_none);
  CHECK(none.seating.verdict == Verdict::does_not_fit);
  const std::string two = board + lid("\"9 ±0.2\"") + slot + card("top = $\n") +
                          "[[drive]]\nname = \"other\"\nuse = \"m2/2280-S2-M\"\nbus = \"pcie 4.0 x4\"\n";
  const fit::Check check = fit::check(read(with(two, "\"?\"")), {});
  for (const Finding& finding : check.seatings.at(1).findings) CHECK(finding.kind != fit::Kind::needs);
}
