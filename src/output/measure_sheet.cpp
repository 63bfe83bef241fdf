#include "output/measure_sheet.h"

#include "output/cut_drawing.h"
#include "output/dimension_line.h"
#include "output/measure_words.h"
#include "output/measured_faces.h"
#include "output/page.h"
#include "output/stack_column.h"
#include "output/words.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <filesystem>

namespace baywright::output {

namespace {

constexpr double section_top = 46.0;  // the balloons stand over it
constexpr double section_room = 58.0;
constexpr double row_height = 8.4;
constexpr double table_head = 7.0;
constexpr std::size_t most_rows = 7;
constexpr double balloon = 2.4;        // radius
constexpr double names_margin = 10.0;  // left and right of the section

void draw_head(const Subject& s, Group& all) {
  Group out;
  out.name = "head";
  const double left = inside.low.x;
  out.add(fitted({left, 15.6}, "What to measure: " + s.seating.drive + " in " + s.seating.place, inside.width(), 5.6,
                 3.5, true));
  double y = 20.8;
  const std::string now = "As measured so far: " + word(s.seating.verdict) + ". " + answer_sentence(s);
  for (std::string& line : wrapped(now, inside.width(), 2.8, 2)) {
    out.add(text({left, y}, std::move(line), 2.8));
    y += line_height;
  }
  out.add(fitted({left, 28.8}, cautions(false, false).front(), inside.width(), 3.2, smallest_text, true));
  out.add(
      fitted({left, 33.4},
             "Zero the caliper with its jaws clean and closed, and look at the end whether it still is. Three readings "
             "each, at different spots, without pressing; write down all three.",
             inside.width(), 3.2, smallest_text));
  out.add(Line{{{left, 35.8}, {inside.high.x, 35.8}}, false, {}});
  all.add(std::move(out));
}

void draw_balloon(Group& group, const Vec2& at, std::size_t number) {
  group.add(Disc{at, balloon, paper, Pen{0.25, ink, false}});
  group.add(text({at.x, at.y + 1.05}, std::to_string(number), 3.0, Anchor::middle, true));
}

/// Two thick strokes on the faces, the line between them, and its number over or beside the section.
void draw_mark_of(Group& group, const MeasuredFaces& faces, const Placement& placement, const Box& box, double share,
                  std::size_t number) {
  const auto paper_at = [&](double along, double other) {
    return placement.at(faces.axis == 1 ? Vec2(other, along) : Vec2(along, other));
  };
  const int other = 1 - faces.axis;
  const Vec2 one = paper_at(faces.low, faces.from);
  const Vec2 two = paper_at(faces.high, faces.to);
  const double low = std::max(std::min(one[other], two[other]), box.low[other]);
  const double high = std::min(std::max(one[other], two[other]), box.high[other]);
  const double wanted = box.low[other] + share * (box.high[other] - box.low[other]);
  const double at = std::clamp(wanted, std::min(low, high), std::max(low, high));
  Vec2 a = one;
  Vec2 b = two;
  a[other] = b[other] = at;
  Vec2 side(0.0);
  side[other] = 3.0;
  for (const Vec2& face : {a, b}) {
    group.add(Line{{face - side, face + side}, false, {1.1, paper, false}});
    group.add(Line{{face - side, face + side}, false, {0.7, ink, false}});
  }
  const Vec2 upper = a[faces.axis] < b[faces.axis] ? a : b;
  Vec2 to = upper;
  to[faces.axis] = box.low[faces.axis] - balloon - 1.0;
  group.add(Line{{upper, to}, false, {thin_line + 0.6, paper, false}});
  group.add(Line{{upper, to}, false, {thin_line, ink, false}});
  draw_dimension(group, a, b, {});
  draw_balloon(group, to, number);
}

double scale_for(const Window& window) {
  constexpr std::array<double, 7> scales = {5.0, 2.0, 1.0, 0.5, 0.2, 0.1, 0.05};
  for (const double scale : scales)
    if (scale * (window.high.x - window.low.x) <= inside.width() - 2.0 * names_margin &&
        scale * (window.high.y - window.low.y) <= section_room)
      return scale;
  return scales.back();
}

struct Faces {
  std::vector<bool> shown;  // which readings have their faces in the section
  double below = 0.0;       // y under all that was drawn
};

Faces draw_faces(const Subject& s, const std::vector<plans::Reading>& readings, Group& all) {
  Faces drawn{std::vector<bool>(readings.size(), false), section_top};
  if (!s.placed()) return drawn;
  const SectionView section = section_view(s.seated, s.stance, s.drawn);
  const double scale = scale_for(section.window);
  const double width = scale * (section.window.high.x - section.window.low.x);
  const Placement placement =
      placed(section.window, {0.5 * (inside.low.x + inside.high.x - width), section_top}, scale);
  const Box box = placement.box(section.window);
  const std::vector<Seen> seen = cut_scene(s.seated.scene, section.view, section.window, scale, true);
  Group out;
  out.name = "section";
  Group parts;
  parts.name = "parts";
  parts.clip = Box{box.low - Vec2(0.5), box.high + Vec2(0.5)};
  draw_seen(s, parts, seen, section.view, placement);
  out.add(std::move(parts));
  Group marks;
  marks.name = "what to measure";
  for (std::size_t i = 0; i < readings.size(); ++i) {
    const auto faces = measured_faces(s.seated.scene, section.view, seen, readings[i].dimension);
    if (!faces) continue;
    drawn.shown[i] = true;
    const double share = (static_cast<double>(i) + 0.5) / static_cast<double>(readings.size());
    draw_mark_of(marks, *faces, placement, box, share, i + 1);
  }
  out.add(std::move(marks));
  drawn.below = box.high.y + 8.0;
  out.add(text({box.low.x, drawn.below}, section.title + ", " + scale_in_words(scale)));
  all.add(std::move(out));
  return drawn;
}

struct Column {
  const char* name;
  double left;  // mm on paper
  double right;
};
constexpr std::array<Column, 8> columns_of_table = {{{"", 10.0, 18.0},
                                                     {"what", 18.0, 88.0},
                                                     {"so far, mm", 88.0, 122.0},
                                                     {"read to", 122.0, 140.0},
                                                     {"1st reading", 140.0, 164.0},
                                                     {"2nd", 164.0, 188.0},
                                                     {"3rd", 188.0, 212.0},
                                                     {"what it tells, all else as it is", 212.0, 287.0}}};

void draw_row(Group& out, const plans::Reading& reading, std::size_t number, bool shown, double top) {
  const double base = top + 0.5 * row_height + 1.0;
  const auto cell = [&](std::size_t column, const std::string& words) {
    const Column& c = columns_of_table[column];
    out.add(fitted({c.left + 1.2, base}, words, c.right - c.left - 2.0, 3.2, smallest_text));
  };
  const auto two_lines = [&](std::size_t column, const std::vector<std::string>& lines, double size) {
    double y = lines.size() == 1 ? base : top + 3.6;
    for (const std::string& line : lines) {
      out.add(text({columns_of_table[column].left + 1.2, y}, line, size));
      y += 3.4;
    }
  };
  const auto room = [](std::size_t column) {
    return columns_of_table[column].right - columns_of_table[column].left - 2.0;
  };
  draw_balloon(out, {14.0, top + 0.5 * row_height}, number);
  const std::string key = reading.key.empty() ? "" : " (`" + std::string(reading.key) + "`)";
  const std::string name = reading.dimension.name + key + (shown ? "" : " (not in this section)");
  const double size = text_width(name, 3.2) <= room(1) ? 3.2 : smallest_text;
  two_lines(1, wrapped(name, room(1), size, 2), size);
  cell(2, tolerance::in_words(reading.dimension));
  cell(3, closeness(reading));
  const std::string tells = say_thresholds(reading);
  constexpr std::size_t last = columns_of_table.size() - 1;
  two_lines(last, wrapped(tells.empty() ? "with the others: no single limit" : tells, room(last), smallest_text, 2),
            smallest_text);
}

void draw_table(const std::vector<plans::Reading>& readings, const Faces& faces, Group& all) {
  Group out;
  out.name = "readings";
  const double top = faces.below + 3.0;
  for (const Column& column : columns_of_table)
    out.add(text({column.left + 1.2, top + table_head - 2.4}, column.name, smallest_text, Anchor::start, true));
  double y = top + table_head;
  for (std::size_t i = 0; i < readings.size(); ++i) {
    draw_row(out, readings[i], i + 1, faces.shown[i], y);
    y += row_height;
  }
  for (std::size_t row = 0; row <= readings.size(); ++row) {
    const double line = top + table_head + row_height * static_cast<double>(row);
    out.add(
        Line{{{inside.low.x, line}, {inside.high.x, line}}, false, {row == 0 ? thick_line : thin_line, ink, false}});
  }
  for (const Column& column : columns_of_table)
    if (column.left > inside.low.x + 9.0) out.add(Line{{{column.left, top + table_head}, {column.left, y}}, false, {}});
  all.add(std::move(out));
}

void draw_close(const Subject& s, std::size_t left_out, bool any, Group& all) {
  Group out;
  out.name = "close";
  constexpr double y = 199.0;
  if (left_out > 0)
    out.add(text({inside.low.x, y - 4.6}, std::to_string(left_out) + " more decide less and are not listed."));
  out.add(fitted(
      {inside.low.x, y},
      any ? "Then write the middle of the three into " + std::filesystem::path(s.build.file).filename().string() +
                ", with how far they differ as its limits: \"9.1 ±0.1\". Where less room is the danger, take "
                "the worst of the three."
          : "No length here is known so loosely that a caliper would tell more.",
      inside.width(), 3.2, smallest_text));
  all.add(std::move(out));
}

}  // namespace

Sheet draw_measure_sheet(const build::Build& build, const fit::Seated& seated, const fit::Seating& seating,
                         const std::vector<plans::Reading>& readings) {
  const Subject s = subject_of(build, seated, seating);
  std::vector<plans::Reading> listed(
      readings.begin(), readings.begin() + static_cast<std::ptrdiff_t>(std::min(readings.size(), most_rows)));
  Sheet sheet;
  sheet.title = "what to measure: " + seating.drive + " in " + seating.place;
  sheet.description = "A section with the faces to measure between, and " + std::to_string(listed.size()) +
                      " lengths with boxes for three readings each.";
  draw_head(s, sheet.all);
  const Faces faces = draw_faces(s, listed, sheet.all);
  if (!listed.empty()) draw_table(listed, faces, sheet.all);
  draw_close(s, readings.size() - listed.size(), !listed.empty(), sheet.all);
  return sheet;
}

}  // namespace baywright::output
