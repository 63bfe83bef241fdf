#include "output/part_drawing.h"

#include "output/part_views.h"
#include "output/svg.h"
#include "parts/catalogue.h"
#include "parts/library.h"
#include "support/check_mm.h"
#include "tolerance/reading.h"
#include "unit/output/svg_reading.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <doctest/doctest.h>

using namespace baywright;
using namespace baywright::output;
using baywright::test::check_mm;

namespace {

const std::vector<std::filesystem::path>& folders() {
  static const std::vector<std::filesystem::path> all = {BAYWRIGHT_SOURCE "/models/parts"};
  return all;
}

parts::Part part_of(const std::string& id) {
  std::optional<parts::Fault> fault;
  auto part = parts::look_up(id, folders(), fault);
  REQUIRE(part);
  return std::move(*part);
}

Sheet sheet_of(const parts::Part& part) {
  auto sheet = draw_part(part);
  REQUIRE(std::holds_alternative<Sheet>(sheet));
  return std::get<Sheet>(std::move(sheet));
}

struct Drawn {
  std::vector<Text> texts;
  std::vector<Line> lines;
  std::vector<Disc> discs;
  std::vector<Vec2> points;  // of lines and areas
};

void collect(const Group& group, Drawn& out) {
  for (const Item& item : group.items) {
    if (const auto* inner = std::get_if<Group>(&item.drawn)) collect(*inner, out);
    if (const auto* text = std::get_if<Text>(&item.drawn)) out.texts.push_back(*text);
    if (const auto* disc = std::get_if<Disc>(&item.drawn)) out.discs.push_back(*disc);
    if (const auto* line = std::get_if<Line>(&item.drawn)) {
      out.lines.push_back(*line);
      out.points.insert(out.points.end(), line->points.begin(), line->points.end());
    }
    if (const auto* area = std::get_if<Area>(&item.drawn))
      for (const Outline& outline : area->outlines) out.points.insert(out.points.end(), outline.begin(), outline.end());
  }
}

const Group* group_in(const Group& group, const std::string& name) {
  if (group.name == name) return &group;
  for (const Item& item : group.items)
    if (const auto* inner = std::get_if<Group>(&item.drawn))
      if (const Group* found = group_in(*inner, name)) return found;
  return nullptr;
}

Drawn drawn_in(const Sheet& sheet, const std::string& name) {
  const Group* group = group_in(sheet.all, name);
  REQUIRE(group != nullptr);
  Drawn out;
  collect(*group, out);
  return out;
}

bool says(const Drawn& drawn, const std::string& text) {
  return std::any_of(drawn.texts.begin(), drawn.texts.end(), [&](const Text& each) { return each.text == text; });
}

bool has_level_line(const Drawn& drawn, double length) {
  return std::any_of(drawn.lines.begin(), drawn.lines.end(), [&](const Line& line) {
    return line.points.size() == 2 && std::abs(line.points[0].y - line.points[1].y) < 1e-9 &&
           std::abs(std::abs(line.points[0].x - line.points[1].x) - length) < 1e-6;
  });
}

void check_sheet(const Sheet& sheet) {
  Drawn all;
  collect(sheet.all, all);
  constexpr double margin = 9.5;  // mm: what common printers leave white
  constexpr double room = 1e-6;
  const auto inside_sheet = [&](const Vec2& p) {
    return p.x >= margin && p.y >= margin && p.x <= sheet.width - margin && p.y <= sheet.height - margin;
  };
  CHECK(all.texts.size() > 15);
  CHECK(std::all_of(all.points.begin(), all.points.end(), inside_sheet));
  for (const Disc& disc : all.discs) {
    CHECK(inside_sheet(disc.centre - Vec2(disc.radius)));
    CHECK(inside_sheet(disc.centre + Vec2(disc.radius)));
  }
  for (std::size_t i = 0; i < all.texts.size(); ++i) {
    const Box a = box_of(all.texts[i]);
    CAPTURE(all.texts[i].text);
    CHECK(all.texts[i].size >= 2.5);
    CHECK(inside_sheet(a.low));
    CHECK(inside_sheet(a.high));
    for (std::size_t j = 0; j < i; ++j) {
      const Box b = box_of(all.texts[j]);
      CAPTURE(all.texts[j].text);
      const bool apart = a.low.x >= b.high.x - room || b.low.x >= a.high.x - room || a.low.y >= b.high.y - room ||
                         b.low.y >= a.high.y - room;
      CHECK(apart);
    }
  }
}

/// Whether the table holds all rows: name, x, y, diameter at one height.
void check_hole_table(const Sheet& sheet, const parts::Part& part) {
  if (part.holes.empty()) {
    const Group* table = group_in(sheet.all, "hole table");
    REQUIRE(table != nullptr);
    CHECK(table->items.empty());
    return;
  }
  const Drawn table = drawn_in(sheet, "hole table");
  CHECK(table.texts.size() >= 1 + 4 * part.holes.size());
  for (const parts::Hole& hole : part.holes) {
    CAPTURE(hole.name);
    bool found = false;
    for (const Text& first : table.texts) {
      if (!hole.name.starts_with(first.text)) continue;
      std::vector<std::string> row;
      for (const Text& each : table.texts)
        if (&each != &first && std::abs(each.at.y - first.at.y) < 0.1) row.push_back(each.text);
      found = found || row == std::vector<std::string>{tolerance::in_words(hole.x), tolerance::in_words(hole.y),
                                                       tolerance::in_words(hole.diameter)};
    }
    CHECK(found);
  }
}

/// A family has capitals for what varies (catalogue.h); what answers the three questions only has no shape.
bool drawable(const parts::Item& item) {
  if (item.title.find("three questions only") != std::string::npos) return false;
  for (std::size_t i = 0; i + 2 < item.id.size(); ++i)
    if (std::all_of(item.id.begin() + static_cast<std::ptrdiff_t>(i),
                    item.id.begin() + static_cast<std::ptrdiff_t>(i + 3),
                    [](unsigned char c) { return std::isupper(c) != 0; }))
      return false;
  return true;
}

double length_of(const std::vector<std::vector<Vec2>>& lines) {
  double sum = 0.0;
  for (const auto& line : lines)
    for (std::size_t i = 0; i + 1 < line.size(); ++i) sum += glm::distance(line[i], line[i + 1]);
  return sum;
}

PartSolid box_solid(const geometry::Vec3& low, const geometry::Vec3& high, const std::string& piece = {}) {
  geometry::Placed placed{std::get<geometry::Solid>(geometry::Solid::box(high - low)), {geometry::Mat3(1.0), low}};
  const geometry::Bounds bounds = geometry::bounds(placed);
  return {piece, std::move(placed), bounds};
}

}  // namespace

TEST_CASE("the sheet of a card carries the standard's figures, true to scale") {
  // PCI-SIG M.2 Specification Rev 1.0 (2013), Table 2 and Figures 3, 4, 15, 16.
  const Sheet sheet = sheet_of(part_of("m2/2280-D2-M"));
  const Drawn views = drawn_in(sheet, "views");
  CHECK(says(views, "card length 80.00 ±0.15"));
  CHECK((says(views, "22.00 ±0.15") || says(views, "card width 22.00 ±0.15")));
  CHECK(says(views, "over all 3.30 ±0.28"));  // 0.80 + 1.25 + 1.25, limits 0.08 + 0.10 + 0.10
  const Drawn block = drawn_in(sheet, "title block");
  CHECK(says(block, "1:1, full size"));
  CHECK(has_level_line(views, 80.0));
  CHECK(has_level_line(drawn_in(sheet, "scale check bar"), 50.0));
}

TEST_CASE("the sheet of a board has its holes where their table says") {
  // microATX Motherboard Interface Specification 1.2, Figure 5: the ATX holes, from hole B's row and column.
  const Sheet sheet = sheet_of(part_of("board/atx"));
  const Drawn table = drawn_in(sheet, "hole table");
  for (const std::string each : {"A", "C", "F", "G", "H", "J", "K", "L", "M", "10.16", "33.02", "165.10", "237.49",
                                 "-6.35", "-163.83", "-288.29", "3.96"}) {
    CAPTURE(each);
    CHECK(says(table, each));
  }
  CHECK(says(drawn_in(sheet, "title block"), "1:2, half its size"));
  const Drawn holes = drawn_in(sheet, "holes");
  REQUIRE(holes.discs.size() == 9);
  for (const Disc& disc : holes.discs) check_mm(disc.radius, 0.99, 1e-9);  // half of 3.96, halved
  double widest = 0.0;
  for (const Disc& a : holes.discs)
    for (const Disc& b : holes.discs) widest = std::max(widest, glm::distance(a.centre, b.centre));
  check_mm(widest, 0.5 * std::hypot(237.49 - 10.16, 288.29 - 6.35), 1e-9);  // from A to M
}

TEST_CASE("a sum with a maximum in it is a maximum on the sheet too") {
  // PCI-SIG M.2 Specification Rev 1.0 (2013), Figures 38 and 39: lands from -4.30 to +4.80, both at most.
  const Drawn views = drawn_in(sheet_of(part_of("m2/M/H4.2")), "views");
  CHECK(says(views, "over all at most 9.10"));
  CHECK(says(views, "at most 4.30"));
}

TEST_CASE("every part of the library is found and drawn, with nothing clipped and no text on another") {
  int drawn = 0;
  int with_holes = 0;
  std::vector<std::string> ids;
  for (const parts::Item& item : parts::catalogue(folders()))
    if (drawable(item)) ids.push_back(item.id);
  for (const char* card : {"m2/2230-S3-M", "m2/22110-D5-B+M", "m2/1216-S1-A", "m2/3042-D1-B"}) ids.emplace_back(card);
  for (const std::string& id : ids) {
    CAPTURE(id);
    std::optional<parts::Fault> fault;
    const auto part = parts::look_up(id, folders(), fault);
    if (!part && id.starts_with("m2/") && id.size() > 8) continue;  // a size or key that no drive has
    REQUIRE(part);
    const auto made = draw_part(*part);
    REQUIRE(std::holds_alternative<Sheet>(made));
    const Sheet& sheet = std::get<Sheet>(made);
    check_sheet(sheet);
    check_hole_table(sheet, *part);
    const std::string svg = to_svg(sheet);
    CHECK(reading_fault(svg) == "");
    CHECK(svg.find("nan") == std::string::npos);
    ++drawn;
    with_holes += part->holes.empty() ? 0 : 1;
  }
  CHECK(drawn >= 15);
  CHECK(with_holes >= 4);
}

TEST_CASE("parts at the ends of what a file may say are drawn on the sheet too") {
  parts::Part part;
  part.id = "a-part-with-a-name-that-nobody-would-ever-give-it-but-that-a-file-may-have-and-then-some-more";
  part.title =
      "A title <of> & \"signs\" that goes on and on, well beyond what the head of a sheet of A4 would ever hold";
  part.kind = "part";
  for (const double size : {1e5, 300.0, 0.02})
    part.add({"a side whose name is much longer than any column of the table is wide", size, 0.001, 0.001,
              "a source of many words, " + std::string(300, 'w') + ", and then some", tolerance::Known::measured});
  for (int i = 0; i < 60; ++i)
    part.add({"row " + std::to_string(i), 1.0, 0.0, 0.0, "source " + std::to_string(i), tolerance::Known::memory});
  using parts::Coordinate;
  part.bodies.push_back(
      parts::box_body("slab", {0.0, 0.0, 0.0}, {Coordinate::of(0), Coordinate::of(1), Coordinate::of(2)}));
  for (int i = 0; i < 12; ++i) part.holes.push_back({"hole " + std::to_string(i), 10.0 * i, 5.0, 3.2});
  const Sheet sheet = sheet_of(part);
  check_sheet(sheet);
  check_hole_table(sheet, part);
  CHECK(reading_fault(to_svg(sheet)) == "");
  CHECK(std::holds_alternative<geometry::Refusal>(draw_part(parts::Part{})));
}

TEST_CASE("an edge behind a nearer solid is hidden, and solids of one piece have no seam") {
  const geometry::View above{};
  const PartView under = part_view({box_solid({3, 3, 0}, {7, 7, 1}), box_solid({0, 0, 1}, {10, 10, 2})}, above);
  check_mm(length_of(under.seen), 40.0, 1e-9);
  check_mm(length_of(under.hidden), 16.0, 1e-9);
  const PartView half = part_view({box_solid({8, 3, 0}, {12, 7, 1}), box_solid({0, 0, 1}, {10, 10, 2})}, above);
  check_mm(length_of(half.seen), 48.0, 1e-9);
  check_mm(length_of(half.hidden), 8.0, 1e-9);
  const PartView joined = part_view({box_solid({0, 0, 0}, {10, 10, 1}), box_solid({10, 2, 0}, {14, 8, 1})}, above);
  check_mm(length_of(joined.seen), 48.0, 1e-9);
  check_mm(length_of(joined.hidden), 0.0, 1e-9);
  const PartView apart =
      part_view({box_solid({0, 0, 0}, {10, 10, 1}), box_solid({10, 2, 0}, {14, 8, 1}, "chips")}, above);
  check_mm(length_of(apart.seen), 60.0, 1e-9);
}

TEST_CASE("the views stand in first angle") {
  // ISO 5456-2, from memory: the view from above lies below that from the front, the view from the left to the right.
  const ThreeViews wide = three_views({box_solid({0, 0, 0}, {20, 10, 2}), box_solid({0, 0, 2}, {5, 10, 6})});
  check_mm(wide.front.view.normal().y, -1.0, 1e-12);
  check_mm(wide.left.view.normal().x, -1.0, 1e-12);
  check_mm(wide.plan.view.normal().z, 1.0, 1e-12);
  const ThreeViews tall = three_views({box_solid({0, 0, 0}, {10, 20, 2})});  // turned, so that it lies level
  check_mm(tall.front.view.normal().x, 1.0, 1e-12);
  check_mm(tall.left.view.normal().y, -1.0, 1e-12);
  check_mm(tall.plan.window.high.x - tall.plan.window.low.x, 20.0, 1e-12);
  const Drawn views = drawn_in(sheet_of(part_of("fin-heatsink-14")), "views");
  const auto title = [&](const std::string& name) {
    const auto found =
        std::find_if(views.texts.begin(), views.texts.end(), [&](const Text& t) { return t.text == name; });
    REQUIRE(found != views.texts.end());
    return found->at;
  };
  CHECK(title("From the front").y < title("From above").y - 20.0);
  CHECK(title("From the left").x > title("From above").x + 100.0);
  check_mm(title("From the left").y, title("From above").y, 1e-9);
}
