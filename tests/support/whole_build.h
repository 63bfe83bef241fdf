#pragma once
// One machine with one place and one drive, checked through the calls that users' builds go through. Lengths in these
// texts have no limits and name no tool, so they are exact.
#include "build/build.h"
#include "fit/check.h"
#include "support/check_mm.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <string>
#include <variant>

namespace baywright::test {

/// The first seating of a build; a text that is refused fails the test.
inline fit::Seating seating(const std::string& text) {
  const auto read = build::read_text("title = \"whole build\"\n" + text, "whole.build.toml");
  if (const auto* fault = std::get_if<parts::Fault>(&read)) FAIL(fault->text());
  return fit::check(std::get<build::Build>(read), {}).seatings.at(0);
}

inline std::string drive(const std::string& use, const std::string& bus, const std::string& more = {}) {
  return "\n[[drive]]\nname = \"drive\"\nuse = \"" + use + "\"\nbus = \"" + bus + "\"\n" + more + "\n";
}

/// A floor with a bay (or panel) whose drive lies along +x with its connector end at x = 100, on the centre line y =
/// 150.
inline std::string bay(const std::string& takes, const std::string& keys, const std::string& kind = "bay",
                       const std::string& bus = "\"sata 6\"") {
  return "[[part]]\nname = \"floor\"\nsolid = { plate = [400, 300, 1.0] }\n[[" + kind +
         "]]\nname = \"bay\"\non = { part = \"floor\", at = [100, 150], toward = \"+x\" }\ntakes = \"" + takes +
         "\"\nbus = " + bus + "\n" + keys + "\n";
}

/// A board with a PCIe slot that points along +x, its key at (57.1, 100) so that a bracket passes behind the board's
/// edge; `parts` stand on the board.
inline std::string slot(const std::string& socket, const std::string& bus, const std::string& parts = {},
                        const std::string& keys = {}) {
  return "[[part]]\nname = \"board\"\nsolid = { plate = [305, 244, 1.57] }\n" + parts +
         "[[slot]]\nname = \"slot\"\non = { part = \"board\", at = [57.1, 100], toward = \"+x\" }\nsocket = \"" +
         socket + "\"\nbus = \"" + bus + "\"\n" + keys + "\n";
}

inline bool has(const fit::Seating& seating, fit::Code code) {
  return std::any_of(seating.findings.begin(), seating.findings.end(),
                     [code](const fit::Finding& finding) { return finding.why.code == code; });
}

/// The finding of that code; there must be one.
inline const fit::Finding& the(const fit::Seating& seating, fit::Code code) {
  const auto found = std::find_if(seating.findings.begin(), seating.findings.end(),
                                  [code](const fit::Finding& finding) { return finding.why.code == code; });
  REQUIRE(found != seating.findings.end());
  return *found;
}

/// The gap finding between the two parts; there must be one. Bodies may be left open.
inline const fit::Finding& gap(const fit::Seating& seating, const std::string& a, const std::string& b,
                               const std::string& body = {}) {
  const auto found = std::find_if(seating.findings.begin(), seating.findings.end(), [&](const fit::Finding& finding) {
    return finding.why.code == fit::Code::gap && finding.between[0] == a && finding.between[1] == b &&
           (body.empty() || finding.bodies[0] == body || finding.bodies[1] == body);
  });
  CAPTURE(a);
  CAPTURE(b);
  REQUIRE(found != seating.findings.end());
  REQUIRE(found->gap.has_value());
  return *found;
}

/// Its figures, at 1e-9 mm.
inline void check_gap(const fit::Finding& finding, double nominal, double min, double max) {
  check_mm(finding.gap->nominal, nominal, 1e-9);
  check_mm(finding.gap->min, min, 1e-9);
  check_mm(finding.gap->max, max, 1e-9);
}

}  // namespace baywright::test
