#include "output/part_drawing.h"

#include "output/cut_drawing.h"
#include "output/dimension_line.h"
#include "output/page.h"
#include "output/part_sizes.h"
#include "output/part_tables.h"
#include "output/part_views.h"
#include "output/stack_column.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <optional>

namespace baywright::output {

using geometry::Vec3;
using parts::Part;

namespace {

// The sheet, mm from its upper left corner.
constexpr double head_line = 27.0;
constexpr double block_top = 184.0;
constexpr Box views_box{{inside.low.x, 29.0}, {206.0, 181.0}};
constexpr Box tables_box{{211.0, 30.0}, {inside.high.x, 181.0}};
constexpr double title_room = 5.0;                                    // over a view
constexpr double lane = 5.0;                                          // between dimension lines
constexpr std::array<double, 3> heights_widths = {60.0, 46.0, 33.0};  // of the labels beside the front, and less
constexpr double view_title_width = 25.0;

/// A size as the plan shows it: view coordinates.
struct Span {
  std::string name;
  std::string value;
  double low = 0.0;
  double high = 0.0;
};

/// A part's dimensions often all begin alike ("mini card width"): the words that a label can do without.
std::size_t common_start(const Part& part) {
  if (part.dimensions.size() < 2) return 0;
  const std::string& first = part.dimensions.front().name;
  std::size_t alike = first.size();
  for (const tolerance::Dimension& d : part.dimensions) {
    const auto end = std::mismatch(first.begin(), first.end(), d.name.begin(), d.name.end()).first;
    alike = std::min(alike, static_cast<std::size_t>(end - first.begin()));
  }
  const std::size_t blank = first.rfind(' ', alike == 0 ? 0 : alike - 1);
  const std::size_t start = blank == std::string::npos || alike == 0 ? 0 : blank + 1;
  const bool torn = std::any_of(part.dimensions.begin(), part.dimensions.end(),
                                [&](const auto& d) { return d.name.compare(start, 3, "of ") == 0; });
  return torn ? 0 : start;
}

std::vector<PartSize> labelled_sizes(const Part& part, int axis, std::size_t most) {
  std::vector<PartSize> out = sizes_along(part, axis, most);
  for (PartSize& size : out)
    if (size.name != over_all) size.name.erase(0, common_start(part));
  return out;
}

struct Sizes {
  std::vector<Span> level;    // outermost first
  std::vector<Span> upright;  // outermost first
  std::vector<PartSize> heights;
  bool summed = false;
};

/// Which axis of the part runs along a direction of the view, and to which side.
std::pair<int, double> axis_along(const Vec3& direction) {
  for (const int axis : {0, 1, 2})
    if (std::abs(direction[axis]) > 0.5) return {axis, direction[axis]};
  return {0, 1.0};
}

std::vector<Span> spans_along(const Part& part, const Vec3& direction, std::size_t most, bool& summed) {
  const auto [axis, sign] = axis_along(direction);
  std::vector<Span> out;
  for (PartSize& size : labelled_sizes(part, axis, most)) {
    summed = summed || size.summed;
    const double low = sign * size.low;
    const double high = sign * size.high;
    out.push_back({std::move(size.name), std::move(size.value), std::min(low, high), std::max(low, high)});
  }
  return out;
}

Sizes sizes_of(const Part& part, const geometry::View& plan) {
  Sizes out;
  out.level = spans_along(part, plan.right, 4, out.summed);
  out.upright = spans_along(part, plan.up, 3, out.summed);
  out.heights = labelled_sizes(part, 2, 6);
  for (const PartSize& size : out.heights) out.summed = out.summed || size.summed;
  return out;
}

struct Places {
  double scale = 1.0;
  Placement front, plan, left;
  Box front_box, plan_box, left_box;
  double heights_end = 0.0;  // y
  double heights_right = 0.0;
  Vec2 end{0.0};  // lower right of all
};

double longest_value(const std::vector<Span>& spans) {
  double out = 0.0;
  for (const Span& span : spans) out = std::max(out, text_width(span.value, smallest_text));
  return out;
}

/// Names that have no room on one line with their figures go on into a second.
std::vector<Height> on_front(const Sizes& sizes, const Places& places) {
  constexpr double lines_width = 7.0 + 2.0 * 3.5;  // of up to two lanes of dimension lines, and the leaders
  const double from = places.front_box.high.x + 0.8;
  const double width = places.heights_right - places.front_box.high.x - lines_width;
  std::vector<Height> out;
  for (const PartSize& size : sizes.heights) {
    Height height{size.name, size.value, places.front.at({0.0, size.low}).y, places.front.at({0.0, size.high}).y,
                  from,      from};
    const auto lines = broken(size.name + ' ' + size.value, width, smallest_text, 3);
    if (lines.size() == 2 && text_width(size.name, smallest_text) > width)
      height.name = lines[0], height.value = lines[1];
    out.push_back(std::move(height));
  }
  return out;
}

/// Where everything stands at a scale; none where it has no room.
std::optional<Places> places_at(double scale, double heights_width, const ThreeViews& views, const Sizes& sizes) {
  Places out;
  out.scale = scale;
  const auto size = [&](const PartView& view) { return scale * (view.window.high - view.window.low); };
  const double left_margin = 3.0 + lane * static_cast<double>(sizes.upright.size());
  const double level_foot = 3.0 + lane * static_cast<double>(sizes.level.size());
  const double upright_foot =
      longest_value(sizes.upright) > size(views.plan).y ? longest_value(sizes.upright) + 5.0 : 0.0;
  const Vec2 corner = views_box.low + Vec2(left_margin, title_room);
  out.front = placed(views.front.window, corner, scale);
  out.front_box = out.front.box(views.front.window);
  out.heights_right = out.front_box.high.x + heights_width;
  const double band =
      std::max(size(views.front).y, heights_room(on_front(sizes, out), out.front_box.high.x, out.heights_right) - 2.0);
  out.heights_end = corner.y + band;
  const double plan_top = out.heights_end + 4.0 + title_room;
  out.plan = placed(views.plan.window, {corner.x, plan_top}, scale);
  out.plan_box = out.plan.box(views.plan.window);
  const double strip = std::max(out.plan_box.high.x + 8.0, corner.x + view_title_width + 4.0);
  out.left = placed(views.left.window, {strip, plan_top}, scale);
  out.left_box = out.left.box(views.left.window);
  out.end = {std::max({out.heights_right, out.left_box.high.x, strip + view_title_width}),
             out.plan_box.high.y + std::max(level_foot, upright_foot)};
  if (!(out.end.x <= views_box.high.x && out.end.y <= views_box.high.y)) return std::nullopt;
  return out;
}

/// The largest scale of those that ISO 5455 recommends (from memory) at which all has room. What room is left goes
/// round the views.
Places place(const ThreeViews& views, const Sizes& sizes) {
  constexpr std::array<double, 3> steps = {2.0, 1.0, 0.5};
  std::optional<Places> found;
  for (double decade = 10.0; !found && decade > 1e-5; decade *= 0.1)
    for (const double step : steps)
      for (const double width : heights_widths) {
        const double scale = step * decade;
        if (!found) found = places_at(scale >= 1.0 ? scale : 1.0 / std::round(1.0 / scale), width, views, sizes);
      }
  return found.value_or(Places{});  // a solid is never larger than what the last scale has room for
}

void shift(Places& places, const Vec2& by) {
  for (Placement* each : {&places.front, &places.plan, &places.left}) each->origin += by;
  for (Box* each : {&places.front_box, &places.plan_box, &places.left_box}) each->low += by, each->high += by;
  places.heights_end += by.y;
  places.heights_right += by.x;
}

void draw_view(Group& group, const PartView& view, const Placement& placement, const std::string& title,
               double title_from = 0.0) {
  Group out;
  out.name = title;
  for (const auto& area : view.areas) out.add(Area{on_paper(area, placement), drive_fill, Pattern::none, 0.0, 1.0, {}});
  draw_edges(out, view.within, placement, {thin_line, drive_fill, false});
  draw_edges(out, view.hidden, placement, {thin_line, ink, true});
  draw_edges(out, view.seen, placement, {thick_line, ink, false});
  const Box box = placement.box(view.window);
  out.add(text({box.low.x + title_from, box.low.y - 2.2}, title, title_size, Anchor::start, true));
  group.add(std::move(out));
}

void draw_centre_mark(Group& group, const Vec2& at, double radius) {
  const double reach = radius + 1.0;
  group.add(Line{{at - Vec2(reach, 0.0), at + Vec2(reach, 0.0)}, false, {}});
  group.add(Line{{at - Vec2(0.0, reach), at + Vec2(0.0, reach)}, false, {}});
}

/// A hole's name as near to it as nothing else is; none where there is no such place.
std::optional<Text> hole_label(const std::string& name, const Box& hole, const std::vector<Box>& taken, const Box& plan,
                               const Group& group, const Group& own) {
  const Vec2 at = 0.5 * (hole.low + hole.high);
  const double radius = 0.5 * hole.width();
  for (const double far : {0.2, 1.5, 4.0, 8.0})
    for (const Vec2& side : {Vec2(1, -1), Vec2(-1, -1), Vec2(1, 1), Vec2(-1, 1)}) {
      Text label = text(at + side * (0.75 * radius + far), name);
      label.anchor = side.x > 0.0 ? Anchor::start : Anchor::end;
      if (side.y > 0.0) label.at.y += 1.9;
      label.haloed = true;
      const Box box = box_of(label);
      const bool clear = std::none_of(taken.begin(), taken.end(), [&](const Box& other) { return meet(other, box); });
      const bool within =
          box.low.x > plan.low.x && box.high.x < plan.high.x && box.low.y > plan.low.y && box.high.y < plan.high.y;
      if (clear && (within || !meet(plan, box)) && box.low.x >= views_box.low.x && box.high.x <= views_box.high.x &&
          has_room(group, box) && has_room(own, box))
        return label;
    }
  return std::nullopt;
}

void draw_holes(Group& group, const Part& part, const PartView& plan, const Places& places) {
  Group out;
  out.name = "holes";
  std::vector<Box> taken = {places.front_box, places.left_box};
  const std::size_t first = taken.size();
  for (const parts::Hole& hole : part.holes) {
    const Vec2 centre = plan.view.flat({hole.x, hole.y, 0.0});
    const Vec2 at = places.plan.at(centre);
    const double radius = 0.5 * hole.diameter * places.scale;
    const bool rim = !holes_in_base(part) && has_rim(plan, centre, hole.diameter);  // else hidden, or open to a side
    out.add(Disc{at, radius, rim ? paper : "", Pen{rim ? thick_line : thin_line, ink, !rim}});
    draw_centre_mark(out, at, radius);
    taken.push_back({at - Vec2(radius + 1.2), at + Vec2(radius + 1.2)});
  }
  for (std::size_t i = 0; i < part.holes.size(); ++i) {
    std::vector<Box> others = taken;
    const Box own = taken[first + i];
    others.erase(others.begin() + static_cast<std::ptrdiff_t>(first + i));
    if (auto label = hole_label(part.holes[i].name, own, others, places.plan_box, group, out))
      out.add(std::move(*label));
  }
  group.add(std::move(out));
}

constexpr double origin_reach = 6.5;

/// Whether the arrow up from the origin stands where the plan's title would begin.
bool meets_title(const PartView& plan, const Places& places) {
  const Vec2 at = places.plan.at({0.0, 0.0});
  const bool up = plan.view.up.y > 0.5;  // else x points down
  return up && std::abs(at.x - places.plan_box.low.x) < 2.0 && at.y - origin_reach < places.plan_box.low.y;
}

/// Where x and y are counted from, and which way.
void draw_origin(Group& group, const PartView& plan, const Places& places) {
  const Vec2 at = places.plan.at({0.0, 0.0});
  const Box& box = places.plan_box;
  constexpr double off = 1.0;
  if (at.x < box.low.x - off || at.x > box.high.x + off || at.y < box.low.y - off || at.y > box.high.y + off) return;
  Group out;
  out.name = "origin";
  out.add(Disc{at, 0.7, ink, std::nullopt});
  for (const int axis : {0, 1}) {
    Vec3 unit(0.0);
    unit[axis] = 1.0;
    const Vec2 seen = plan.view.flat(unit);
    const Vec2 along(seen.x, -seen.y);
    const Vec2 tip = at + along * origin_reach;
    out.add(Line{{at, tip}, false, {}});
    draw_arrow(out, tip, along, ink);
    const bool level = std::abs(along.x) > 0.5;
    for (const double side : {-1.0, 1.0}) {
      const Vec2 beside = level ? Vec2(-1.8, side < 0.0 ? -0.9 : 2.7) : Vec2(-1.7 * side, along.y < 0.0 ? 2.4 : -0.4);
      Text label = text(tip + beside, axis == 0 ? "x" : "y", smallest_text, Anchor::middle);
      label.haloed = true;
      if (!has_room(group, box_of(label)) || !has_room(out, box_of(label))) continue;
      out.add(std::move(label));
      break;
    }
  }
  group.add(std::move(out));
}

void draw_level_sizes(Group& group, const std::vector<Span>& spans, const Places& places) {
  std::vector<std::array<Vec2, 2>> ends;
  for (std::size_t i = 0; i < spans.size(); ++i) {
    const double y = places.plan_box.high.y + 3.0 + lane * static_cast<double>(spans.size() - i);
    ends.push_back({Vec2(places.plan.at({spans[i].low, 0.0}).x, y), Vec2(places.plan.at({spans[i].high, 0.0}).x, y)});
    for (const Vec2& end : ends.back())
      group.add(Line{{{end.x, places.plan_box.high.y + 0.8}, {end.x, y + 1.0}}, false, {}});
  }
  for (std::size_t i = 0; i < spans.size(); ++i) {
    const double length = ends[i][1].x - ends[i][0].x;
    const std::string whole = spans[i].name + ' ' + spans[i].value;
    const double width = text_width(whole, smallest_text);
    const bool named = width <= length - 5.0 || ends[i][1].x + 5.0 + width <= views_box.high.x;
    draw_dimension(group, ends[i][0], ends[i][1], named ? whole : spans[i].value);
  }
}

void draw_upright_sizes(Group& group, const std::vector<Span>& spans, const Places& places) {
  std::vector<std::array<Vec2, 2>> ends;
  for (std::size_t i = 0; i < spans.size(); ++i) {
    const double x = places.plan_box.low.x - 3.0 - lane * static_cast<double>(spans.size() - 1 - i) - 1.0;
    ends.push_back({Vec2(x, places.plan.at({0.0, spans[i].high}).y), Vec2(x, places.plan.at({0.0, spans[i].low}).y)});
    for (const Vec2& end : ends.back())
      group.add(Line{{{places.plan_box.low.x - 0.8, end.y}, {x - 1.0, end.y}}, false, {}});
  }
  for (std::size_t i = 0; i < spans.size(); ++i) {
    const std::string whole = spans[i].name + ' ' + spans[i].value;
    const bool named = text_width(whole, smallest_text) <= ends[i][1].y - ends[i][0].y - 5.0;
    draw_dimension(group, ends[i][0], ends[i][1], named ? whole : spans[i].value);
  }
}

void draw_views(const Part& part, const ThreeViews& views, const Sizes& sizes, const Places& places, Group& all) {
  Group out;
  out.name = "views";
  draw_view(out, views.front, places.front, "From the front");
  draw_view(out, views.plan, places.plan, "From above", meets_title(views.plan, places) ? 4.0 : 0.0);
  draw_view(out, views.left, places.left, "From the left");
  draw_heights(out, on_front(sizes, places), places.front_box.high.x, places.heights_right,
               places.front_box.low.y - 2.0, places.heights_end);
  draw_level_sizes(out, sizes.level, places);
  draw_upright_sizes(out, sizes.upright, places);
  draw_holes(out, part, views.plan, places);
  draw_origin(out, views.plan, places);
  all.add(std::move(out));
}

std::string size_on_paper(double scale) {
  if (scale == 1.0) return "full size";
  if (scale == 2.0) return "twice its size";
  if (scale == 0.5) return "half its size";
  const bool larger = scale > 1.0;
  return larger ? std::to_string(std::lround(scale)) + " times its size"
                : "1 mm here is " + std::to_string(std::lround(1.0 / scale)) + " mm";
}

void draw_head(const Part& part, Group& all) {
  Group out;
  out.name = "head";
  const std::string title = part.title.empty() ? part.kind : part.title;
  out.add(fitted({inside.low.x, 16.0}, title, 0.68 * inside.width(), 6.5, 4.0, true));
  Text id = fitted({inside.high.x, 16.0}, part.id, 0.3 * inside.width(), 5.0, 3.0);
  id.anchor = Anchor::end;
  out.add(std::move(id));
  out.add(fitted({inside.low.x, 22.6},
                 "At nominal sizes. These are the figures of the sources, not of the part in your hand: measure that "
                 "before you buy, cut or drill.",
                 inside.width(), 3.4, smallest_text));
  out.add(Line{{{inside.low.x, head_line}, {inside.high.x, head_line}}, false, {}});
  all.add(std::move(out));
}

/// The sign for first angle, after ISO 5456-2 (from memory): a cone's side and, to its right, what is seen of it from
/// the left.
void draw_first_angle(Group& group, const Vec2& at) {
  constexpr double small = 1.4;
  constexpr double large = 2.8;
  constexpr double length = 7.0;
  group.add(
      Line{{at + Vec2(0, -small), at + Vec2(length, -large), at + Vec2(length, large), at + Vec2(0, small)}, true, {}});
  const Vec2 eye = at + Vec2(length + 5.0, 0.0);
  group.add(Disc{eye, small, "", Pen{}});
  group.add(Disc{eye, large, "", Pen{}});
  group.add(Line{{at + Vec2(-1.0, 0.0), at + Vec2(length + 1.0, 0.0)}, false, {thin_line, grey, false}});
  group.add(Line{{eye - Vec2(large + 1.0, 0.0), eye + Vec2(large + 1.0, 0.0)}, false, {thin_line, grey, false}});
  group.add(Line{{eye - Vec2(0.0, large + 1.0), eye + Vec2(0.0, large + 1.0)}, false, {thin_line, grey, false}});
}

void draw_block(const Part& part, double scale, bool summed, Group& all) {
  Group bar;
  bar.name = "scale check bar";
  const double x = inside.low.x + 4.0;
  constexpr double y = 197.0;
  bar.add(text({x, block_top + 4.4}, "print at 100 %; this bar measures 50 mm"));
  bar.add(Line{{{x, y}, {x + 50.0, y}}, false, {thick_line, ink, false}});
  for (int i = 0; i <= 5; ++i)
    bar.add(Line{{{x + 10.0 * i, y - 1.8}, {x + 10.0 * i, y}}, false, {thin_line, ink, false}});
  for (const int i : {0, 5})
    bar.add(text({x + 10.0 * i, y - 2.6}, std::to_string(i * 10), smallest_text, Anchor::middle));
  all.add(std::move(bar));
  Group out;
  out.name = "title block";
  struct Cell {
    const char* name;
    std::string value;
    double width;
  };
  const std::array<Cell, 5> cells = {
      {{"", "", 60.0},
       {"part", part.id, 60.0},
       {"scale", scale_in_words(scale) + ", " + size_on_paper(scale), 44.0},
       {"figures",
        summed ? "millimetres; over all: the dimensions that make it, added up by worst case" : "millimetres", 70.0},
       {"views", "first angle", 43.0}}};
  double left = inside.low.x;
  out.add(Line{{{left, block_top}, {inside.high.x, block_top}, inside.high, {left, inside.high.y}},
               true,
               {thick_line, ink, false}});
  for (const Cell& cell : cells) {
    if (left > inside.low.x) out.add(Line{{{left, block_top}, {left, inside.high.y}}, false, {}});
    if (*cell.name != '\0') out.add(text({left + 1.5, block_top + 4.4}, cell.name));
    double at = block_top + 9.2;
    for (std::string& line : broken(cell.value, cell.width - 3.0, 3.0, 2)) {
      out.add(text({left + 1.5, at}, std::move(line), 3.0));
      at += 4.2;
    }
    left += cell.width;
  }
  draw_first_angle(out, {inside.high.x - 20.0, 0.5 * (block_top + inside.high.y)});
  all.add(std::move(out));
}

}  // namespace

std::variant<Sheet, geometry::Refusal> draw_part(const Part& part) {
  auto solids = solids_of(part);
  if (auto* refused = std::get_if<geometry::Refusal>(&solids)) return *refused;
  const ThreeViews views = three_views(std::get<std::vector<PartSolid>>(solids));
  const Sizes sizes = sizes_of(part, views.plan.view);
  Places places = place(views, sizes);
  const Vec2 spare = views_box.high - places.end;
  shift(places, {0.45 * spare.x, 0.3 * spare.y});
  Sheet sheet;
  sheet.title = part.id + ": " + (part.title.empty() ? part.kind : part.title);
  sheet.description = "The part from the front, from above and from the left, " + scale_in_words(places.scale) +
                      ", with its dimensions, their limits and sources.";
  draw_head(part, sheet.all);
  draw_views(part, views, sizes, places, sheet.all);
  draw_part_tables(part, tables_box, sheet.all);
  draw_block(part, places.scale, sizes.summed, sheet.all);
  return sheet;
}

}  // namespace baywright::output
