// The plan and table of holes against the demo panel's own figures, and the edits that move them.
#include "viewer/hole_table.h"

#include "plans/drilling.h"
#include "support/check_mm.h"
#include "viewer/placing.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <filesystem>
#include <fstream>
#include <string>

using namespace baywright;
using test::check_mm;
using viewer::HoleMark;
using viewer::Vec2;

namespace {

const std::string demos = BAYWRIGHT_SOURCE "/models/builds/";

viewer::Document open(const std::string& file) {
  auto opened = viewer::Document::open(file);
  if (const auto* fault = std::get_if<parts::Fault>(&opened)) FAIL(fault->text());
  return std::get<viewer::Document>(std::move(opened));
}

std::shared_ptr<const viewer::Shown> show(const viewer::Document& document, const std::string& drive,
                                          const std::string& place) {
  fit::Options options;
  options.quick = true;
  return viewer::show(*document.build(), {drive, place}, options);
}

const viewer::HoleRow& row(const std::vector<viewer::HoleRow>& rows, const std::string& number) {
  const auto found =
      std::find_if(rows.begin(), rows.end(), [&](const viewer::HoleRow& each) { return each.number == number; });
  REQUIRE(found != rows.end());
  return *found;
}

}  // namespace

TEST_CASE("rows are the template's: places, hole for thread, what it meets, edges") {
  const viewer::Document document = open(demos + "panel.build.toml");
  const auto shown = show(document, "archive disk", "laser cut");
  const auto plan = viewer::hole_plan(*shown);
  REQUIRE(plan);
  REQUIRE(plan->drilling);
  CHECK(plan->whole_part);
  const auto rows = viewer::hole_rows(*plan, *shown);
  CHECK(rows.size() == 3 + 12);
  const auto& fifth = row(rows, "5");  // the first of "laser cut", at 50 and 130: 14 on and 30.86 up
  CHECK(fifth.at[0] == "64.00");
  CHECK(fifth.at[1] == "160.86");
  CHECK(fifth.size == "4.00 M3");
  CHECK(fifth.meets == "row 1");
  CHECK(fifth.edge == "64.00");
  CHECK(fifth.short_of.empty());
  // Each mark stands where the template has its hole, and in the world over the panel.
  for (const HoleMark& mark : plan->marks)
    if (mark.number > 0)
      check_mm(glm::distance(mark.at, plan->drilling->holes[static_cast<std::size_t>(mark.number) - 1].at), 0.0, 0.0);
  check_mm(plan->pose.point({64.0, 160.86, 0.0}), {64.0, 160.86, 1.5}, 1e-9);
  CHECK(viewer::order_words(*plan).starts_with("drill 3.40: "));
  CHECK(viewer::order_words(*plan).find("; then drill 4.00: ") != std::string::npos);
}

TEST_CASE("an edge that is too near and a hole that meets nothing are said") {
  const auto file = std::filesystem::temp_directory_path() / "baywright-holes.build.toml";
  std::ofstream(file) << R"(title = "two on a strip"
[[part]]
name = "strip"
solid = { plate = [140, 80, 1.5] }
[[panel]]
name = "one"
on = { part = "strip", face = "back", at = [20.0, 40.0], toward = "+x" }
takes = "2.5in"
bus = "sata 6"
[panel.fixing]
holes = [[14.0, -30.86], [90.6, 36.0]]
diameter = 3.4
screw = "M3"
length = 5.0
sheet = 1.5
[[drive]]
name = "disk"
use = "2.5in/7"
bus = "sata 6"
)";
  viewer::Document document = open(file.string());
  const auto shown = show(document, "disk", "one");
  const auto plan = viewer::hole_plan(*shown);
  REQUIRE(plan);
  const auto rows = viewer::hole_rows(*plan, *shown);
  // On the back the part is turned over: x counts from its right edge, 140 - 20 - 90.6.
  const auto& second = row(rows, "2");
  CHECK(second.at[0] == "29.40");
  CHECK(second.meets == "none");
  CHECK(second.edge == "4.00");
  CHECK(second.short_of == "4.00 to an edge, 6.80 asked (two diameters)");  // two of 3.4
  const auto words = viewer::hole_words(*plan, *shown);
  CHECK(std::any_of(words.begin(), words.end(),
                    [](const viewer::HoleWord& each) { return each.say.starts_with("Hole 2: 4.00 to an edge"); }));
  // And back: the edit of a mark brings it to where it was asked, on the turned face too.
  const HoleMark mark =
      *std::find_if(plan->marks.begin(), plan->marks.end(), [](const HoleMark& each) { return each.number == 2; });
  const auto edits = viewer::moved(*document.build(), document.text(), mark, {31.25, 70.5});
  REQUIRE(edits.size() == 2);
  REQUIRE(!document.edit("hole", edits));
  const auto after = viewer::hole_plan(*show(document, "disk", "one"));
  REQUIRE(after);
  check_mm(after->marks[static_cast<std::size_t>(mark.number)].at.x, 31.25, 1e-9);
  check_mm(after->marks[static_cast<std::size_t>(mark.number)].at.y, 70.5, 1e-9);
  check_mm(after->marks[1].at.x, plan->marks[1].at.x, 0.0);  // the other one stays
  std::filesystem::remove(file);
}

TEST_CASE("dragging a place and nudging a hole are one step each, and a hole off its panel is refused") {
  const auto file = std::filesystem::temp_directory_path() / "baywright-placing.build.toml";
  std::filesystem::copy_file(demos + "panel.build.toml", file, std::filesystem::copy_options::overwrite_existing);
  viewer::Session session({}, {});
  session.open(file);
  REQUIRE(session.document());
  session.choose({"archive disk", "laser cut"});
  session.act(viewer::Action::holes);
  REQUIRE(session.mode == viewer::Mode::holes);
  viewer::Placing placing;
  placing.look(session);
  REQUIRE(placing.plan() != nullptr);
  const auto& marks = placing.plan()->marks;
  std::size_t place = 0;
  while (marks[place].place != "laser cut") ++place;
  const Vec2 from = marks[place].at;
  placing.choose(place);
  for (const double by : {1.0, 2.0, 3.0}) {
    placing.drag(session, from + Vec2(0.0, by), false, 0.01);
    placing.look(session);
  }
  placing.let_go(session);
  placing.look(session);
  check_mm(placing.plan()->marks[place].at.y, from.y + 3.0, 1e-9);
  REQUIRE(session.document()->undoes() != nullptr);
  CHECK(*session.document()->undoes() == "laser cut to 50.00, 133.00");
  session.act(viewer::Action::undo);
  CHECK(!session.document()->unsaved());  // all of the drag was one step
  placing.look(session);

  std::size_t hole = 0;
  while (placing.plan()->marks[hole].number != 5) ++hole;
  placing.choose(hole);
  for (int i = 0; i < 3; ++i) {
    placing.nudge(session, {0.1, 0.0});
    placing.look(session);
  }
  session.commit();
  placing.look(session);
  check_mm(placing.plan()->marks[hole].at.x, 64.3, 1e-9);
  CHECK(session.document()->text().find("[14.3, -30.86]") != std::string::npos);
  const auto fault = placing.type(session, 0, "400");
  REQUIRE(fault);
  CHECK(fault->starts_with("refused: "));
  placing.look(session);
  check_mm(placing.plan()->marks[hole].at.x, 64.3, 1e-9);
  CHECK(!placing.type(session, 1, "160.86"));
  session.act(viewer::Action::leave);
  CHECK(session.mode == viewer::Mode::looking);
  std::filesystem::remove(file);
}

TEST_CASE("a slot has its stand-offs, no template, and a bay with holes in its walls no plan at all") {
  const viewer::Document thin = open(demos + "thin-desktop.build.toml");
  const auto shown = show(thin, "card with low fins", "rear slot");
  const auto plan = viewer::hole_plan(*shown);
  REQUIRE(plan);
  CHECK(!plan->drilling);
  CHECK(plan->refused.find("never drilled") != std::string::npos);
  std::vector<std::string> names;
  for (const HoleMark& mark : plan->marks)
    if (mark.kind == HoleMark::Kind::standoff) names.push_back(mark.name);
  CHECK(names == std::vector<std::string>{"stand-off 2260", "stand-off 2280"});
  const viewer::Document tower = open(demos + "tower-bay.build.toml");
  CHECK(!viewer::has_hole_plan(*tower.build(), "lower cage"));
}

TEST_CASE("a hole that the panel's drawing has already does not move and says why, its place as a whole does") {
  const viewer::Document document = open(demos + "drawn-panel.build.toml");
  const auto shown = show(document, "first drive", "lower spot");
  const auto plan = viewer::hole_plan(*shown);
  REQUIRE(plan);
  int there = 0;
  for (const HoleMark& mark : plan->marks) {
    CAPTURE(mark.name);
    if (mark.kind != HoleMark::Kind::hole) continue;
    if (!mark.there) continue;
    ++there;
    CHECK_FALSE(mark.moves());
    CHECK(mark.held.starts_with("panel has this hole already"));
    CHECK(viewer::moved(*document.build(), document.text(), mark, mark.at + Vec2(1.0, 0.0)).empty());
  }
  CHECK(there == 8);  // both places of that sheet, four holes each: the drawing has all of them
  for (const HoleMark& mark : plan->marks)
    if (mark.kind == HoleMark::Kind::place) CHECK(mark.moves());

  // By hand: nothing moves, nothing is there to undo, and the reason stands in words.
  viewer::Session session({}, [] {
    fit::Options options;
    options.drive = "first drive";
    options.place = "lower spot";
    options.quick = true;
    return options;
  }());
  session.open(demos + "drawn-panel.build.toml");
  session.mode = viewer::Mode::holes;
  viewer::Placing placing;
  placing.look(session);
  REQUIRE(placing.plan() != nullptr);
  const auto& marks = placing.plan()->marks;
  const auto hole = std::find_if(marks.begin(), marks.end(), [](const HoleMark& mark) { return mark.there; });
  REQUIRE(hole != marks.end());
  placing.choose(static_cast<std::size_t>(hole - marks.begin()));
  const std::string before = session.document()->text();
  placing.nudge(session, {0.1, 0.0});
  CHECK(placing.words().starts_with("panel has this hole already"));
  placing.drag(session, hole->at + Vec2(20.0, 0.0), false, 1.0);
  CHECK(placing.words().starts_with("panel has this hole already"));
  placing.let_go(session);
  CHECK(session.document()->text() == before);
  CHECK_FALSE(session.standing().to_undo);
}
