#include "output/drawing.h"

#include "output/svg.h"
#include "support/check_mm.h"
#include "unit/output/demos.h"
#include "unit/output/sheet_checks.h"
#include "unit/output/svg_reading.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>

using namespace baywright;
using namespace baywright::output;
using baywright::test::check_mm;

namespace {

/// What is hard to lay out: long names with signs of XML, the longest card, a wall beside it, lengths without a limit,
/// a stand-off that tilts the card.
constexpr const char* odd = R"(
title = "Odd <cases> & \"quotes\": a build title that goes on and on, beyond what any cell of a title block would ever hold"
clearance = 0.4
measured_with = "caliper"
[[part]]
name = "carrier & board with a long <name>"
solid = { plate = [190, 95, 1.6] }
[[part]]
name = "side wall of the enclosure, left"
solid = { box = [120, 5, 20] }
on = { part = "carrier & board with a long <name>", face = "top", at = [20.0, 81.3] }
[[part]]
name = "cover"
solid = { plate = [190, 95, 1.0] }
above = { part = "carrier & board with a long <name>", by = "max 30" }
[[slot]]
name = "slot"
on = { part = "carrier & board with a long <name>", face = "top", at = [20.0, 70.0], toward = "+x" }
socket = "m2/M/H4.2"
standoff = "2.9 ±0.1"
lengths = [2242, 2280, 22110]
bus = ["pcie 4.0 x4"]
[[drive]]
name = "an extraordinarily long name for a card of a hundred and ten millimetres"
use = "m2/22110-D5-M"
bus = "pcie 4.0 x4"
wears = [ { pad = "1.0 ±0.1", compress = "30 %" }, { heatsink = "fin-heatsink-14", name = "tower fin heatsink of enormous size" } ]
[[drive]]
name = "short"
use = "m2/2242-S3-M"
bus = "pcie 4.0 x4"
)";

double length(const Path& path) {
  return std::hypot(path.points[1].first - path.points[0].first, path.points[1].second - path.points[0].second);
}

bool has_line(const std::string& svg, double width, double wanted) {
  const auto paths = paths_of(svg);
  return std::any_of(paths.begin(), paths.end(), [&](const Path& path) {
    return path.points.size() == 2 && std::abs(path.width - width) < 1e-9 && std::abs(length(path) - wanted) < 2e-3;
  });
}

}  // namespace

TEST_CASE("no text leaves the sheet or lies on another") {
  int sheets = 0;
  for (const Demo& demo : all_demos()) {
    CAPTURE(demo.seating.drive);
    CAPTURE(demo.seating.place);
    check_texts(demo.sheet());
    ++sheets;
  }
  CHECK(sheets == 17);
  const auto hard = demo_of(odd);
  REQUIRE(hard.size() == 2);
  for (const Demo& demo : hard) check_texts(demo.sheet());
}

TEST_CASE("drawings are well-formed, and the same each time") {
  auto all = all_demos();
  for (Demo& demo : demo_of(odd)) all.push_back(std::move(demo));
  for (const Demo& demo : all) {
    CAPTURE(demo.seating.drive);
    const std::string svg = to_svg(demo.sheet());
    CHECK(reading_fault(svg) == "");
    CHECK(svg == to_svg(demo.sheet()));
    CHECK(svg.find("nan") == std::string::npos);
    CHECK(svg.find("inf\"") == std::string::npos);
  }
}

TEST_CASE("the sheet prints true to scale") {
  const auto all = demos("thin-desktop");
  REQUIRE(all.size() == 3);
  const std::string svg = to_svg(all[2].sheet());
  // 80.00 from leading edge to screw end, 22.00 wide, full width from 4.00 on: PCI-SIG M.2 Specification Rev 1.0
  // (2013), Figure 16 and Table 2. Coordinates are written to a thousandth of a mm.
  const std::string plan = group_of(svg, "plan");
  CHECK(plan.find("Plan on the card, 1:1") != std::string::npos);
  CHECK(has_line(plan, 0.35, 76.0));
  CHECK(has_line(plan, 0.35, 22.0));
  CHECK(has_line(plan, 0.18, 80.0));  // the dimension line
  CHECK(plan.find(">80.00 ±0.15</text>") != std::string::npos);
  const std::string section = group_of(svg, "section");
  CHECK(section.find("1:1") != std::string::npos);
  CHECK(has_line(section, 0.35, 70.0));  // the demo's heatsink is 70 long
  CHECK(has_line(group_of(svg, "scale check bar"), 0.35, 50.0));
  // The column at its 10:1: tray 9.1, heatsink 4.0, parts 1.4, card 0.8, pad 0.7.
  const std::string stack = group_of(svg, "stack");
  CHECK(stack.find("The stack, 10:1") != std::string::npos);
  std::vector<double> heights;
  for (const Path& path : paths_of(stack))
    if (path.closed && path.points.size() == 4 && std::abs(path.width - 0.18) < 1e-9) {
      heights.push_back(std::abs(path.points[2].second - path.points[1].second));
    }
  for (const double wanted : {91.0, 40.0, 14.0, 8.0, 7.0, 0.5})
    CHECK(std::any_of(heights.begin(), heights.end(), [&](double height) { return std::abs(height - wanted) < 2e-3; }));
  CHECK(heights.size() == 8);
}

TEST_CASE("the pattern says what the verdict says") {
  int grids = 0;
  int dots = 0;
  for (const Demo& demo : all_demos()) {
    CAPTURE(demo.seating.drive);
    CAPTURE(demo.seating.place);
    const std::string svg = to_svg(demo.sheet());
    const bool placed = demo.seating.deciding.has_value();
    const fit::Finding* finding = placed ? &demo.seating.findings[*demo.seating.deciding] : nullptr;
    const bool clash = placed && finding->verdict == fit::Verdict::does_not_fit && finding->gap->nominal < 0.0;
    const bool marginal = placed && finding->verdict == fit::Verdict::marginal;
    CHECK((svg.find("data-pattern=\"grid\"") != std::string::npos) == clash);
    CHECK((svg.find("data-pattern=\"dots\"") != std::string::npos) == marginal);
    if (clash) {
      CHECK(group_of(svg, "section").find("data-pattern=\"grid\"") != std::string::npos);
      CHECK(group_of(svg, "detail").find("data-pattern=\"grid\"") != std::string::npos);
      CHECK(group_of(svg, "stack").find("data-pattern=\"grid\"") != std::string::npos);
    }
    grids += clash ? 1 : 0;
    dots += marginal ? 1 : 0;
  }
  CHECK(grids >= 2);
  CHECK(dots >= 1);
}

TEST_CASE("the answer comes first, with its figures") {
  const auto all = demos("thin-desktop");
  REQUIRE(all.size() == 3);
  const std::string svg = to_svg(all[2].sheet());
  const std::string answer = group_of(svg, "answer");
  for (const char* said : {"does not fit", "card with tall fins in rear slot", "0.30", "0.88", "0.50", "tray"})
    CHECK(answer.find(said) != std::string::npos);
  CHECK(svg.find("<title id=\"title\">does not fit: card with tall fins in rear slot</title>") != std::string::npos);
  CHECK(group_of(svg, "section").find("0.30 over") != std::string::npos);
  CHECK(group_of(svg, "detail").find("Detail A, 10:1") != std::string::npos);
  CHECK(group_of(svg, "title block").find("touch bare metal first") != std::string::npos);
}

TEST_CASE("a drive that cannot be put there gets its answer in words and no position") {
  for (const Demo& demo : demos("laptop")) {
    if (demo.seating.drive != "cased drive") continue;
    const std::string svg = to_svg(demo.sheet());
    CHECK(group_of(svg, "answer").find("does not fit") != std::string::npos);
    CHECK(group_of(svg, "questions").find("form factor: no") != std::string::npos);
    CHECK(group_of(svg, "questions").find("An M.2 socket with key") != std::string::npos);
    CHECK(group_of(svg, "section").empty());
    CHECK(group_of(svg, "stack").empty());
  }
}

TEST_CASE("a section beside an opening shows what stands in it, not only the sheet round it") {
  const std::vector<Demo> found = demo_of(R"(
title = "opening"
[[part]]
name = "board"
solid = { plate = [200, 120, 1.6] }
[[part]]
name = "sheet"
solid = { prism = { outline = [[0, 0], [200, 0], [200, 120], [0, 120]], holes = [[[24.2, 47], [97, 47], [97, 73], [24.2, 73]]], height = 1 } }
above = { part = "board", by = 12 }
[[slot]]
name = "slot"
on = { part = "board", face = "top", at = [20, 60], toward = "+x" }
socket = "m2/M/H4.2"
lengths = [2280]
bus = "pcie 4.0 x4"
[[drive]]
name = "card"
use = "m2/2280-S3-M"
bus = "pcie 4.0 x4"
wears = [ { pad = "1.0 ±0.1", compress = "30 %" }, { heatsink = "fin-heatsink-14", name = "fins" } ]
)");
  REQUIRE(found.size() == 1);
  const fit::Seating& seating = found.front().seating;
  REQUIRE(seating.deciding);
  REQUIRE(seating.findings[*seating.deciding].between[1] == "sheet");
  const std::string svg = to_svg(found.front().sheet());
  const std::size_t section = svg.find("data-shows=\"section\"");
  const std::size_t detail = svg.find("data-shows=\"detail\"");
  REQUIRE(section < detail);
  CHECK(svg.substr(section, detail - section).find(">fins") != std::string::npos);
}
