#include "output/drill_sheet.h"

#include "output/drill_tables.h"
#include "output/dxf.h"
#include "output/paint.h"
#include "support/check_mm.h"
#include "unit/output/sheet_checks.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <numbers>

using namespace baywright;
using namespace baywright::output;
using test::check_mm;

namespace {

/// Two drives on a panel; their sizes as asked for.
std::string text(const std::string& plate = "300, 200, 1.5", const std::string& name = "side panel",
                 const std::string& holes = "[[14.0, -30.86], [14.0, 30.86], [90.6, -30.86], [90.6, 30.86]]") {
  return "title = \"two drives\"\n[[part]]\nname = \"" + name + "\"\nsolid = { plate = [" + plate +
         "] }\n[[panel]]\nname = \"left spot\"\non = { part = \"" + name +
         R"(", face = "top", at = [40.0, 20.0], toward = "+y" }
takes = "2.5in"
bus = "sata 6"
fixing = { holes = )" +
         holes + R"(, diameter = "3.4 ±0.1", drilled = "hand drill", screw = "M3", sheet = )" +
         plate.substr(plate.rfind(' ')) + R"( }
[[drive]]
name = "disk"
use = "2.5in/9.5"
bus = "sata 6"
)";
}

/// The same with its drive elsewhere.
std::string far(std::string build, const std::string& at) {
  return build.replace(build.find("[40.0, 20.0]"), 12, at);
}

plans::Drilling drilled(const std::string& build) {
  auto read = build::read_text(build, "in-a-test.build.toml");
  if (const auto* fault = std::get_if<parts::Fault>(&read)) FAIL(fault->text());
  auto got = plans::drilling(std::get<build::Build>(read), {}, {});
  if (const auto* why = std::get_if<std::string>(&got)) FAIL(*why);
  return std::get<plans::Drilling>(std::move(got));
}

std::vector<Sheet> sheets(const plans::Drilling& drilling, const DrillPaper& on = a4, bool mirrored = false) {
  auto got = drill_sheets(drilling, "two drives", on, mirrored);
  if (const auto* why = std::get_if<std::string>(&got)) FAIL(*why);
  return std::get<std::vector<Sheet>>(std::move(got));
}

/// Every item of a group of that name, however deep.
void find(const Group& group, const std::string& name, std::vector<const Group*>& out) {
  if (group.name == name) out.push_back(&group);
  for (const Item& item : group.items)
    if (const auto* inner = std::get_if<Group>(&item.drawn)) find(*inner, name, out);
}

std::vector<const Disc*> discs(const Sheet& sheet) {
  std::vector<const Group*> groups;
  find(sheet.all, "holes", groups);
  std::vector<const Disc*> out;
  for (const Group* group : groups)
    for (const Item& item : group->items)
      if (const auto* disc = std::get_if<Disc>(&item.drawn)) out.push_back(disc);
  return out;
}

bool says(const Sheet& sheet, const std::string& words) {
  std::vector<Text> texts;
  collect(sheet.all, texts);
  return std::any_of(texts.begin(), texts.end(),
                     [&](const Text& each) { return each.text.find(words) != std::string::npos; });
}

}  // namespace

TEST_CASE("every sheet of a template can be read and lies on the paper") {
  for (const std::string plate : {"300, 200, 1.5", "165, 160, 1.5", "900, 700, 2"})
    for (const DrillPaper& on : {a4, letter})
      for (const bool mirrored : {false, true}) {
        CAPTURE(plate);
        const std::vector<Sheet> got = sheets(drilled(text(plate)), on, mirrored);
        REQUIRE(got.size() >= 2);
        for (const Sheet& sheet : got) {
          check_texts(sheet, 11);
          CHECK(points_off(sheet, sheet.all) == 0);
          CHECK(std::min(sheet.width, sheet.height) == on.width);
        }
      }
}

TEST_CASE("holes lie on the paper as far apart as on the panel, and mirrored the other way round") {
  const plans::Drilling drilling = drilled(text("165, 160, 1.5"));
  const std::vector<Sheet> front = sheets(drilling);
  const std::vector<Sheet> back = sheets(drilling, a4, true);
  const auto a = discs(front[0]);
  const auto b = discs(back[0]);
  REQUIRE(a.size() == 4);
  REQUIRE(b.size() == 4);
  check_mm(a[1]->centre.x - a[0]->centre.x, 61.72, 1e-9);  // SFF-8201, as transcribed in public files
  check_mm(a[0]->centre.y - a[2]->centre.y, 76.60, 1e-9);
  check_mm(b[1]->centre.x - b[0]->centre.x, -61.72, 1e-9);
  check_mm(b[0]->centre.y - b[2]->centre.y, 76.60, 1e-9);
  check_mm(a[0]->radius, 1.7, 1e-12);
  CHECK(says(front[0], "A is the left edge"));
  CHECK(says(back[0], "MIRRORED"));
  for (const Sheet* sheet : {&front[0], &back[0]}) {
    CHECK(says(*sheet, "9.14"));  // the first hole from edge A, whichever side that is on: 40 - 30.86
    CHECK(says(*sheet, "34.00"));
  }
}

TEST_CASE("a panel larger than the paper is shared out, and each hole is whole on one sheet or more") {
  const plans::Drilling drilling = drilled(
      far(text("900, 700, 2", "side panel",
               "[[14.0, -30.86], [14.0, 30.86], [14.0, -150], [14.0, -300], [14.0, -450], [14.0, -600], [14.0, -750]]"),
          "[840.0, 570.0]"));
  const std::vector<Sheet> got = sheets(drilling);
  std::vector<bool> whole(drilling.holes.size(), false);
  int joints = 0;
  for (const Sheet& sheet : got) {
    std::vector<const Group*> shown;
    find(sheet.all, "template", shown);
    if (shown.empty()) continue;
    const Box& clip = *shown[0]->clip;
    const auto all = discs(sheet);
    for (std::size_t i = 0; i < all.size(); ++i) {
      const Vec2 r(all[i]->radius);
      const Vec2 low = all[i]->centre - r;
      const Vec2 high = all[i]->centre + r;
      if (low.x > clip.low.x && low.y > clip.low.y && high.x < clip.high.x && high.y < clip.high.y) whole[i] = true;
    }
    std::vector<const Group*> found;
    find(sheet.all, "joints", found);
    joints += static_cast<int>(found[0]->items.size());
  }
  CHECK(std::all_of(whole.begin(), whole.end(), [](bool each) { return each; }));
  CHECK(joints > 50);
}

namespace {

double away(const Box& box, const Vec2& p) {
  return glm::distance(glm::clamp(p, box.low, box.high), p);
}

/// Every label that begins with a hole's number is nearest to that hole, and hides no circle or cross.
int check_labels(const plans::Drilling& drilling, const Sheet& sheet) {
  std::vector<const Group*> notes;
  find(sheet.all, "notes", notes);
  const auto holes = discs(sheet);
  int labels = 0;
  for (const Group* group : notes)
    for (const Item& item : group->items) {
      const auto* label = std::get_if<Text>(&item.drawn);
      if (label == nullptr || !label->bold) continue;
      CAPTURE(label->text);
      const std::size_t own = std::stoul(label->text) - 1;
      REQUIRE(own < holes.size());
      ++labels;
      const Box box = box_of(*label);
      for (std::size_t i = 0; i < holes.size(); ++i) {
        CAPTURE(i + 1);
        const Vec2 at = holes[i]->centre;
        const double radius = holes[i]->radius;
        CHECK(away(box, at) > radius);
        for (const Vec2 arm : {Vec2(radius + 3.0, 0.0), Vec2(0.0, radius + 3.0)})
          for (double t = -1.0; t <= 1.0; t += 0.02) CHECK(away(box, at + t * arm) > 0.0);
        if (i == own) continue;
        CHECK(away(box, holes[own]->centre) < away(box, at));
        CHECK(away(box, holes[own]->centre) - holes[own]->radius < away(box, at) - radius);
      }
      for (std::size_t i = 1; i < drilling.outline.size(); ++i)
        for (const Vec2& p : drilling.outline[i]) {
          // From the first hole on the paper to that point, the panel's y upward.
          const Vec2 off = p - drilling.holes[0].at;
          CHECK(away(box, holes[0]->centre + Vec2(off.x, -off.y)) > 0.0);
        }
    }
  return labels;
}

}  // namespace

TEST_CASE("a hole's label stood over the hole beside it") {
  // The third wanted hole is at 130.60/90.86; a hole of 8 that is there is 7.4 beside it, on one side or the other.
  for (const double x : {138.0, 122.0})
    for (const bool own : {true, false}) {
      CAPTURE(x);
      plans::Drilling drilling = drilled(far(text("320, 200, 1.2"), "[85.0, 40.0]"));
      REQUIRE(drilling.holes.size() == 4);
      const std::array<Vec2, 4> at = {Vec2(55.0, 90.86), Vec2(54.0, 29.14), Vec2(130.6, 90.86), Vec2(130.6, 29.14)};
      for (std::size_t i = 0; i < 4; ++i) drilling.holes[i].at = at[i];
      drilling.holes[0].there = drilling.holes[1].there = true;
      drilling.holes[3].there_wide = 2.5;
      if (own) {
        plans::DrillHole there = drilling.holes[0];
        there.at = Vec2(x, 90.86);
        there.own = true;
        there.there = false;
        there.diameter.nominal = 8.0;
        drilling.holes.push_back(there);
      }
      plans::Outline rim;
      for (int i = 0; i < 60; ++i)
        rim.push_back(Vec2(x, 90.86) +
                      4.0 * Vec2(std::cos(i * std::numbers::pi / 30), std::sin(i * std::numbers::pi / 30)));
      drilling.outline.push_back(rim);
      for (const bool mirrored : {false, true}) CHECK(sheets(drilling, a4, mirrored).size() >= 2);
      const std::vector<Sheet> got = sheets(drilling);
      CHECK(check_labels(drilling, got[0]) == (own ? 5 : 4));
    }
}

TEST_CASE("no figure or advice of the drill's tables is cut short") {
  std::string build = text();
  build.replace(build.find("takes"), 5, "spacers = 5.0\ntakes");
  for (const Sheet& sheet : sheets(drilled(build))) {
    std::vector<Text> texts;
    collect(sheet.all, texts);
    for (const Text& each : texts) CHECK_MESSAGE(each.text.find("…") == std::string::npos, each.text);
  }
}

TEST_CASE("paper without anything to drill is not printed") {
  // 194.4 mm of a letter sheet are free for the template, the panel is 200 high, and its highest hole at 110.6.
  const plans::Drilling drilling = drilled(text());
  for (const bool mirrored : {false, true}) {
    const std::vector<Sheet> got = sheets(drilling, letter, mirrored);
    CHECK(says(got[0], "sheet 1 of 1"));
    CHECK(discs(got[0]).size() == 4);
    CHECK(says(got[0], "for disk"));
  }
}

TEST_CASE("what is wrong with the holes is said before anything else") {
  const auto has = [](const std::vector<std::string>& all, const std::string& words) {
    return std::any_of(all.begin(), all.end(),
                       [&](const std::string& each) { return each.find(words) != std::string::npos; });
  };
  const std::vector<std::string> got = drill_answers(
      drilled(text("300, 200, 1.5", "p", "[[14.0, -30.86], [14.0, 30.86], [50.0, -36.5], [53.0, 0.0], [53.0, 5.0]]")));
  CHECK(has(got, "Hole 3 meets no hole of disk"));
  CHECK(has(got, "Hole 3 is 3.50 from an edge, less than two diameters (6.80)"));
  CHECK(has(got, "Hole 4 leaves 1.60 of sheet to the next hole, less than two thicknesses (3.00)"));
  CHECK(!has(got, "Hole 1"));
  CHECK(has(got, "hand drill: 2 of 5 holes meet one of the drive's; with those all screws enter in"));
}

TEST_CASE("a panel of too many sheets is refused, hostile names are cut to their room") {
  const auto huge = drill_sheets(drilled(far(text("3000, 3000, 2"), "[2900.0, 2800.0]")), "t", a4, false);
  REQUIRE(std::holds_alternative<std::string>(huge));
  CHECK(std::get<std::string>(huge).find("sheets of paper, more than 60") != std::string::npos);
  const std::string name(300, 'W');
  for (const Sheet& sheet : sheets(drilled(text("165, 160, 1.5", name)))) check_texts(sheet);
}

TEST_CASE("for CAD the panel stands alone at its own size") {
  const Sheet cut = drill_cut(drilled(text()), "two drives", false);
  check_mm(cut.width, 300.0, 1e-12);
  check_mm(cut.height, 200.0, 1e-12);
  REQUIRE(discs(cut).size() == 4);
  check_mm(discs(cut)[0]->centre.x, 9.14, 1e-12);
  check_mm(cut.height - discs(cut)[0]->centre.y, 34.0, 1e-12);
}

TEST_CASE("a bend of the panel is drawn on its template, and in DXF on a layer of its own") {
  std::string bent = text();
  bent.insert(bent.find("[[panel]]"), "bends = [{ from = [74, 0], to = [74, 200] }]\n");
  const auto count = [](const std::string& build) {
    const std::string dxf = to_dxf(drill_cut(drilled(build), "t", false));
    std::size_t lines = 0;
    for (std::size_t at = dxf.find("\n8\nBEND\n"); at != std::string::npos; at = dxf.find("\n8\nBEND\n", at + 1))
      ++lines;
    return lines;
  };
  CHECK(count(text()) == 0);
  CHECK(count(bent) == 1);
  const std::vector<std::string> said = drill_answers(drilled(bent));
  CHECK(std::any_of(said.begin(), said.end(),
                    [](const std::string& each) { return each.find("bend") != std::string::npos; }));
}

TEST_CASE("no sheet of a template is without a hole") {
  const plans::Drilling far_off = drilled(far(text("700, 500, 1.5"), "[600.0, 300.0]"));
  for (const bool mirrored : {false, true}) {
    std::size_t templates = 0;
    for (const Sheet& sheet : sheets(far_off, a4, mirrored)) {
      if (sheet.title.find("Drilling template") == std::string::npos) continue;
      ++templates;
      std::vector<const Group*> distances;
      find(sheet.all, "distances", distances);
      REQUIRE(distances.size() == 1);
      CHECK(!distances.front()->items.empty());  // from A and B to each hole that it shows
    }
    CHECK(templates >= 1);
  }
}
