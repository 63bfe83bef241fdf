#include "output/parts_text.h"

#include "output/dimension_rows.h"
#include "output/part_views.h"
#include "output/text.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <utility>

namespace baywright::output {

namespace {

constexpr std::size_t a_screen = 24;  // lines

/// Where there are too many for a screen, one line for those of a group; not where all are of one.
std::vector<parts::Item> in_groups(const std::vector<parts::Item>& items) {
  const bool one = std::all_of(items.begin(), items.end(),
                               [&](const parts::Item& item) { return item.group == items.front().group; });
  if (one || items.size() <= a_screen) return items;
  std::vector<parts::Item> out;
  for (const parts::Item& item : items) {
    const auto alike = [&](const parts::Item& other) { return other.group == item.group; };
    const auto count = item.group.empty() ? 1 : std::count_if(items.begin(), items.end(), alike);
    if (count == 1)
      out.push_back(item);
    else if (std::none_of(out.begin(), out.end(), [&](const parts::Item& other) { return other.id == item.group; }))
      out.push_back({item.group, std::to_string(count) + " of them, as " + item.id + ": " + item.title, {}});
  }
  return out;
}

}  // namespace

std::string list_text(const std::vector<parts::Item>& items) {
  const std::vector<parts::Item> lines = in_groups(items);
  std::string out = std::to_string(items.size()) + (items.size() == 1 ? " part\n" : " parts\n");
  std::size_t width = 0;
  for (const parts::Item& line : lines) width = std::max(width, columns(line.id));
  for (const parts::Item& line : lines)
    out += "  " + padded(line.id, width) + "  " + wrapped(line.title, width + 4) + '\n';
  if (lines.size() < items.size())
    out += wrapped("Capitals stand for what varies; `baywright parts` with words, as M3 6 mm, finds one of many.", 0) +
           '\n';
  return out;
}

namespace {

/// Holes of one diameter in a row share it: "diameter 3.96, centres at x, y: A 10.16, -6.35; ...".
std::string holes_text(const parts::Part& part) {
  const std::vector<parts::Hole>& holes = part.holes;
  const std::string where = holes_in_base(part) ? " in the base" : "";
  std::string out;
  for (std::size_t from = 0; from < holes.size();) {
    std::size_t to = from;
    std::string centres;
    for (; to < holes.size() && holes[to].diameter == holes[from].diameter; ++to)
      centres += (to == from ? " " : "; ") + holes[to].name + ' ' + tolerance::in_words(holes[to].x) + ", " +
                 tolerance::in_words(holes[to].y);
    out += "  " +
           wrapped((to == from + 1 ? "1 hole" : std::to_string(to - from) + " holes") + where + ", diameter " +
                       tolerance::in_words(holes[from].diameter) + ", at x, y:" + centres,
                   4) +
           '\n';
    from = to;
  }
  return out;
}

}  // namespace

std::string part_text(const parts::Part& part) {
  const auto longer = [](const std::string& a, const std::string& b) {
    return std::count(a.begin(), a.end(), '\n') > std::count(b.begin(), b.end(), '\n');
  };
  std::string rows = rows_with_sources(part.dimensions, 2);
  for (std::string other : {rows_under_documents(part.dimensions, 2), rows_under_sources(part.dimensions, 2)})
    if (longer(rows, other)) rows = std::move(other);
  return wrapped(part.id + ": " + (part.title.empty() ? part.kind : part.title), 2) + '\n' + rows + holes_text(part);
}

}  // namespace baywright::output
