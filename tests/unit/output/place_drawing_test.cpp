// Drawings of what is not an M.2 card on a board: bays, panels, add-in slots, mini cards.
#include "output/svg.h"
#include "unit/output/demos.h"
#include "unit/output/sheet_checks.h"
#include "unit/output/svg_reading.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <set>

using namespace baywright;
using namespace baywright::output;

namespace {

/// Side holes of a 3.5-inch drive 28.50 and 130.10 from the connector end, 6.35 over the base: SFF-8301, Table 3-1, as
/// transcribed in public files. The third hole meets none.
constexpr const char* cage = R"(
title = "cage"
clearance = 0.5
measured_with = "caliper"
[[part]]
name = "cage floor"
solid = { plate = [200, 140, 1.0] }
[[bay]]
name = "lower cage"
on = { part = "cage floor", face = "top", at = [40, 70], toward = "+x" }
takes = "3.5in"
inside = { width = "102.4 ±0.3", height = "28 ±0.3", depth = 155, behind = 40 }
cable = 35
fixing = { through = "sides", screw = "6-32", length = 6.35, sheet = 1.0, holes = [[28.5, 6.35], [130.1, 6.35], [112.0, 9.0]], diameter = 4.2 }
bus = "sata 6"
[[drive]]
name = "disk"
use = "3.5in/26.1"
bus = "sata 6"
[[drive]]
name = "drive in a bracket"
use = "2.5in/7"
bus = "sata 6"
wears = [{ adapter = "adapter/2.5in-in-3.5in" }]
)";

/// Bottom holes of a 2.5-inch drive 14.00 and 90.60 from the connector end and 61.72 apart: SFF-8201, Table 3-1, as
/// transcribed in public files.
std::string panel(const char* raised, double length, double first) {
  return R"(
title = "panel"
clearance = 1.0
measured_with = "caliper"
[[part]]
name = "panel"
solid = { plate = [180, 120, 1.5] }
[[part]]
name = "cover"
solid = { plate = [180, 120, 1.0] }
above = { part = "panel", by = "20 ±0.5" }
[[panel]]
name = "drilled panel"
on = { part = "panel", face = "top", at = [40, 60], toward = "+x" }
takes = "2.5in"
)" + std::string(raised) +
         R"( = "5 ±0.1"
cable = 30
bus = "sata 6"
fixing = { screw = "M3", length = )" +
         std::to_string(length) + ", sheet = 1.5, holes = [[" + std::to_string(first) +
         R"(, -30.86], [14.0, 30.86], [90.6, -30.86], [90.6, 30.86]], diameter = 3.4, drilled = "hand drill" }
[[drive]]
name = "drive"
use = "2.5in/7"
bus = "sata 6"
[[drive]]
name = "card"
use = "m2/2280-D2-M"
bus = "pcie 4.0 x4"
)";
}

constexpr const char* thin = R"(
title = "thin"
clearance = 0.2
measured_with = "caliper"
[[part]]
name = "base"
solid = { plate = [180, 120, 1.5] }
[[bay]]
name = "drive bay"
on = { part = "base", face = "top", at = [40, 60], toward = "+x" }
takes = "2.5in"
inside = { width = "70.2 ±0.2", height = "7.6 ±0.2", depth = 102 }
backplane = true
bus = "sata 6"
[[drive]]
name = "9.5 mm drive"
use = "2.5in/9.5"
bus = "sata 6"
[[drive]]
name = "7 mm drive"
use = "2.5in/7"
bus = "sata 6"
)";

constexpr const char* edge = R"(
title = "on edge"
clearance = 1.0
measured_with = "caliper"
[[part]]
name = "case floor"
solid = { plate = [300, 200, 1.0] }
[[part]]
name = "front panel"
solid = { box = [300, 2, 150] }
on = { part = "case floor", face = "top", at = [0, 0] }
[[bay]]
name = "place behind the front"
on = { part = "case floor", face = "top", at = [60, 18], toward = "+x" }
takes = "3.5in"
stands = "on edge"
cable = 35
fixing = { screw = "6-32", length = 6.35, sheet = 1.0, holes = [[28.5, 6.7], [130.1, 6.7]], diameter = 4.2 }
bus = "sata 6"
[[bay]]
name = "ruler bay"
on = { part = "case floor", face = "top", at = [60, 120], toward = "+x" }
takes = "e1s"
stands = "on edge"
inside = { width = "10.2 ±0.2", height = "36 ±0.3", depth = 125 }
bus = "pcie 4.0 x4"
[[drive]]
name = "disk on edge"
use = "3.5in/26.1"
bus = "sata 6"
[[drive]]
name = "ruler"
use = "e1s/9.5"
bus = "pcie 4.0 x4"
)";

constexpr const char* cards = R"(
title = "cards"
clearance = 0.5
measured_with = "caliper"
[[part]]
name = "board"
use = "board/micro-atx"
[[part]]
name = "side panel"
solid = { box = [400, 2, 120] }
at = [-30.0, -240.0, 0.0]
[[slot]]
name = "x16"
on = { part = "board", at = [57.1, -162.26], toward = "+x" }
socket = "pcie/x16"
bus = "pcie 4.0 x16"
holds = { name = "graphics card", use = "add-in card/x16", length = 267, slots = 2.5 }
[[slot]]
name = "x4"
on = { part = "board", at = [57.1, -223.22], toward = "+x" }
socket = "pcie/x4"
bus = "pcie 4.0 x4"
[[slot]]
name = "under it"
on = { part = "board", at = [57.1, -202.9], toward = "+x" }
socket = "pcie/x4"
bus = "pcie 4.0 x4"
[[slot]]
name = "low"
on = { part = "board", at = [57.1, -121.62], toward = "+x" }
socket = "pcie/x4"
bus = "pcie 4.0 x4"
bracket = "low"
[[drive]]
name = "card on carrier"
use = "m2/2280-D2-M"
bus = "pcie 4.0 x4"
wears = [{adapter = "adapter/m2-on-x4", name = "carrier"}, { pad = 1.0, compress = "30 %"}, {heatsink = "fin-heatsink-14"}]
[[drive]]
name = "low-profile card"
use = "add-in card/x4"
bus = "pcie 4.0 x4"
bracket = "low"
height = 64
length = 160
)";

constexpr const char* mini = R"(
title = "mini"
clearance = 0.3
measured_with = "caliper"
[[part]]
name = "board"
solid = { plate = [120, 80, 1.2] }
[[part]]
name = "bottom shell"
solid = { plate = [120, 80, 1.5] }
above = { part = "board", by = "6.5 ±0.2" }
[[slot]]
name = "mini slot"
on = { part = "board", face = "top", at = [30, 40], toward = "+x" }
socket = "mini card/full"
standoff = "2.2 ±0.1"
bus = "sata 6"
[[drive]]
name = "mSATA card"
use = "msata"
bus = "sata 6"
[[drive]]
name = "drive"
use = "2.5in/7"
bus = "sata 6"
)";

std::string drawn(const std::string& build, const std::string& drive, const std::string& place) {
  for (const Demo& demo : demo_of(build))
    if (demo.seating.drive == drive && demo.seating.place == place) return to_svg(demo.sheet());
  return {};
}

/// A thin level or upright line of that length on paper.
bool has_thin_line(const std::string& svg, double wanted) {
  const auto paths = paths_of(svg);
  return std::any_of(paths.begin(), paths.end(), [&](const Path& path) {
    return path.points.size() == 2 && std::abs(path.width - 0.18) < 1e-9 &&
           std::abs(
               std::hypot(path.points[1].first - path.points[0].first, path.points[1].second - path.points[0].second) -
               wanted) < 2e-3;
  });
}

bool says(const std::string& svg, const std::string& words) {
  return svg.find('>' + words + "</text>") != std::string::npos;
}

}  // namespace

TEST_CASE("each kind of place is drawn, on the sheet and to be read") {
  int placed = 0;
  int refused = 0;
  std::set<fit::Kind> decided_by;
  for (const std::string& build :
       {std::string(cage), panel("spacers", 10.0, 14.0), panel("spacers", 7.0, 14.0), panel("standoffs", 4.0, 14.0),
        panel("spacers", 8.0, 15.6), std::string(thin), std::string(edge), std::string(cards), std::string(mini)}) {
    const std::vector<Demo> all = demo_of(build);
    CAPTURE(build.substr(0, 30));
    REQUIRE_FALSE(all.empty());
    for (const Demo& demo : all) {
      CAPTURE(demo.seating.drive);
      CAPTURE(demo.seating.place);
      const Sheet sheet = demo.sheet();
      check_texts(sheet);
      CHECK(points_off(sheet, sheet.all) == 0);
      const std::string svg = to_svg(sheet);
      CHECK(reading_fault(svg) == "");
      CHECK(svg.find("nan") == std::string::npos);
      const bool seats = !demo.seated.scene.elements.empty() && demo.seating.place != "x16";  // that one is taken
      (seats ? placed : refused) += 1;
      CHECK(group_of(svg, "section").empty() == !seats);
      CHECK((group_of(svg, "plan").empty() && group_of(svg, "elevation").empty()) == !seats);
      CHECK(group_of(svg, "questions").empty() == seats);
      if (demo.seating.deciding) decided_by.insert(demo.seating.findings[*demo.seating.deciding].kind);
    }
  }
  CHECK(placed >= 14);
  CHECK(refused == 9);
  CHECK(decided_by == std::set<fit::Kind>{fit::Kind::clearance, fit::Kind::holes, fit::Kind::screw});
}

TEST_CASE("a screw that is too long is shown in the drive with both depths") {
  const std::string svg = drawn(cage, "disk", "lower cage");
  const std::string section = group_of(svg, "section");
  CHECK(section.find("Section across the drive, through its first screw") != std::string::npos);
  CHECK(section.find("data-pattern=\"grid\"") != std::string::npos);
  // 6.35 under the head less a sheet of 1.00 are 5.35 in the drive; SFF-8301, Table 3-1, as transcribed in a
  // public file, lets screws in by 3.80.
  const std::string detail = group_of(svg, "detail");
  CHECK(says(detail, "Detail A, 5:1"));
  CHECK(says(detail, "nominal 1.55 too long"));
  CHECK(says(detail, "5.35 in"));
  CHECK(says(detail, "3.80 allowed"));
  CHECK(has_thin_line(detail, 5.0 * 5.35));
  CHECK(has_thin_line(detail, 5.0 * 3.80));
  const std::string small = drawn(panel("spacers", 7.0, 14.0), "drive", "drilled panel");
  CHECK(says(group_of(small, "detail"), "nominal 0.50 too short"));  // 0.50 in, two threads of M3 are 1.00 (ISO 261)
  CHECK(says(group_of(svg, "plan"), "screw, 4 of them"));            // the third hole meets nothing and has none
}

TEST_CASE("the table has every hole of the place, and says which meets nothing") {
  const std::string table = group_of(drawn(panel("spacers", 10.0, 14.0), "drive", "drilled panel"), "holes");
  for (const char* figure : {"1", "2", "3", "4", "14.00", "90.60", "-30.86", "30.86", "3.40", "row 1", "row 2"})
    CHECK(says(table, figure));
  CHECK_FALSE(says(table, "nothing"));
  const std::string sides = group_of(drawn(cage, "disk", "lower cage"), "holes");
  CHECK(says(sides, "Holes, in both side walls"));
  for (const char* figure : {"28.50", "130.10", "112.00", "6.35", "9.00", "nothing"}) CHECK(says(sides, figure));
  CHECK(group_of(drawn(thin, "7 mm drive", "drive bay"), "holes").empty());
}

TEST_CASE("what holds a drive is named as what it is") {
  const std::string bay = drawn(thin, "9.5 mm drive", "drive bay");
  CHECK(group_of(bay, "section").find("Section along the drive") != std::string::npos);
  CHECK(group_of(bay, "section").find("roof of drive") != std::string::npos);
  CHECK(says(group_of(bay, "plan"), "left wall"));
  CHECK(bay.find("screw on sta") == std::string::npos);
  CHECK(bay.find("Before you drill") == std::string::npos);
  CHECK(drawn(panel("spacers", 10.0, 14.0), "drive", "drilled panel").find("eye protection") != std::string::npos);
  const std::string slot = drawn(cards, "card on carrier", "under it");
  CHECK(group_of(slot, "section").find("Section across the card") != std::string::npos);
  CHECK(says(group_of(slot, "section"), "graphics card"));
  CHECK(says(group_of(slot, "elevation"), "heatsink"));
  CHECK(says(group_of(slot, "elevation"), "80.00 ±0.15"));  // PCI-SIG M.2 Specification Rev 1.0 (2013), Table 2
  CHECK(says(group_of(drawn(mini, "mSATA card", "mini slot"), "plan"), "screw on stand-off, 2 of them"));
}

TEST_CASE("a refused drive is told what the bay, panel or socket takes") {
  const std::string offered = group_of(drawn(panel("spacers", 10.0, 14.0), "card", "drilled panel"), "questions");
  for (const char* words : {"A panel with holes for a 2.5-inch drive.", "On spacers, 5.00 ±0.10 over its face.",
                            "Receptacle: SATA, on a cable."})
    CHECK(says(offered, words));
  CHECK(says(group_of(drawn(cards, "low-profile card", "x16"), "questions"), "It holds graphics card already."));
  CHECK(says(group_of(drawn(mini, "drive", "mini slot"), "questions"),
             "A socket for mini cards, with posts for full ones."));
}
