#include "output/part_tables.h"

#include "output/dimension_rows.h"
#include "output/page.h"
#include "output/part_views.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <span>
#include <utility>

namespace baywright::output {

using parts::Part;
using tolerance::Dimension;

namespace {

constexpr double pitch = 3.5;    // between lines
constexpr double air = 0.6;      // between rows
constexpr double heading = 5.2;  // a heading with the room below it
constexpr double between = 4.0;  // tables

/// A row of texts at columns, each of one line or more.
struct Cell {
  double x = 0.0;  // from the table's left
  std::vector<std::string> lines;
  Anchor anchor = Anchor::start;
};
using Row = std::vector<Cell>;

double height_of(const Row& row) {
  std::size_t lines = 1;
  for (const Cell& cell : row) lines = std::max(lines, cell.lines.size());
  return pitch * static_cast<double>(lines) + air;
}

struct Table {
  std::string title;
  std::vector<Row> rows;

  [[nodiscard]] double height() const {
    double sum = heading;
    for (const Row& row : rows) sum += height_of(row);
    return rows.empty() ? 0.0 : sum + between;
  }
};

double draw_table(Group& group, const Table& table, double left, double y) {
  if (table.rows.empty()) return y;
  group.add(text({left, y + 2.6}, table.title, title_size, Anchor::start, true));
  y += heading;
  for (const Row& row : table.rows) {
    for (const Cell& cell : row)
      for (std::size_t i = 0; i < cell.lines.size(); ++i)
        group.add(
            text({left + cell.x, y + 2.2 + pitch * static_cast<double>(i)}, cell.lines[i], smallest_text, cell.anchor));
    y += height_of(row);
  }
  return y + between;
}

Table holes_table(const Part& part, double width) {
  Table out{holes_in_base(part) ? "Holes in the base: x, y, diameter" : "Holes: x, y, diameter", {}};
  const double x = width - 36.0;
  for (const parts::Hole& hole : part.holes)
    out.rows.push_back({{0.0, broken(hole.name, x - 14.0, smallest_text, 2), Anchor::start},
                        {x, {tolerance::in_words(hole.x)}, Anchor::end},
                        {x + 18.0, {tolerance::in_words(hole.y)}, Anchor::end},
                        {width, {tolerance::in_words(hole.diameter)}, Anchor::end}});
  return out;
}

/// How a figure is known stands first, so that it is there where a long source is cut short.
std::string known_and_source(const Dimension& d) {
  return std::string(tolerance::word(d.known)) + ": " + source_name(d);
}

/// Of the dimensions that are shown, in the order in which they come first.
std::vector<std::string> sources_of(std::span<const Dimension> dimensions) {
  std::vector<std::string> out;
  for (const Dimension& d : dimensions)
    if (std::string source = known_and_source(d); std::find(out.begin(), out.end(), source) == out.end())
      out.push_back(std::move(source));
  return out;
}

Table dimensions_table(std::span<const Dimension> dimensions, std::size_t left_out, double width) {
  constexpr double value_at = 41.0;
  Table out{"Dimensions, and their source", {}};
  const std::vector<std::string> sources = sources_of(dimensions);
  for (const Dimension& d : dimensions) {
    const auto source = std::find(sources.begin(), sources.end(), known_and_source(d));
    std::vector<std::string> value = broken(tolerance::in_words(d), width - value_at - 6.0, smallest_text, 2);
    if (!remark(d).empty()) value.back() += " *";
    out.rows.push_back({{0.0, broken(d.name, value_at - 1.5, smallest_text, 3), Anchor::start},
                        {value_at, std::move(value), Anchor::start},
                        {width, {std::to_string(source - sources.begin() + 1)}, Anchor::end}});
  }
  if (std::any_of(dimensions.begin(), dimensions.end(), [](const Dimension& d) { return !remark(d).empty(); }))
    out.rows.push_back({{value_at, {"* no tolerance given"}, Anchor::start}});
  if (left_out > 0)
    out.rows.push_back(
        {{0.0, {"and " + std::to_string(left_out) + " more: the parts command lists all"}, Anchor::start}});
  return out;
}

Table sources_table(std::span<const Dimension> dimensions, double width, std::size_t lines) {
  constexpr double text_at = 5.0;
  Table out{"Sources, and how each figure is known", {}};
  const auto add = [&](std::string number, const std::string& words) {
    out.rows.push_back({{0.0, {std::move(number)}, Anchor::start},
                        {text_at, broken(words, width - text_at, smallest_text, lines), Anchor::start}});
  };
  const std::vector<std::string> sources = sources_of(dimensions);
  for (std::size_t i = 0; i < sources.size(); ++i) add(std::to_string(i + 1), sources[i]);
  for (const Dimension& d : dimensions)
    if (!d.elsewhere.empty()) add({}, d.name + ", another source: " + d.elsewhere);
  return out;
}

}  // namespace

void draw_part_tables(const Part& part, const Box& box, Group& all) {
  const double width = box.width();
  const Table holes = holes_table(part, width);
  const double room = box.height() - holes.height() + between;
  // Long sources give way first, then dimensions from the end.
  std::size_t lines = 6;
  std::span<const Dimension> shown = part.dimensions;
  const auto left_out = [&] { return part.dimensions.size() - shown.size(); };
  const auto needed = [&] {
    return dimensions_table(shown, left_out(), width).height() + sources_table(shown, width, lines).height();
  };
  while (lines > 1 && needed() > room) --lines;
  while (!shown.empty() && needed() > room) shown = shown.first(shown.size() - 1);
  Group out;
  out.name = "tables";
  double y = draw_table(out, dimensions_table(shown, left_out(), width), box.low.x, box.low.y);
  Group table;
  table.name = "hole table";
  y = draw_table(table, holes, box.low.x, y);
  out.add(std::move(table));
  draw_table(out, sources_table(shown, width, lines), box.low.x, y);
  out.add(Line{{{box.low.x - 3.0, box.low.y}, {box.low.x - 3.0, box.high.y}}, false, {}});
  all.add(std::move(out));
}

}  // namespace baywright::output
