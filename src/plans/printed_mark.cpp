#include "plans/printed_mark.h"

#include "plans/stroke_figures.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <numbers>

namespace baywright::plans {

using geometry::FlatFaces;
using geometry::Vec3;

namespace {

// Common practice, no source: two layers of 0.2 deep, and as many left; a margin of three lines of 0.4.
constexpr double sunk = 0.4;
constexpr double margin = 1.2;
constexpr double tab_thickness = 2.0;
constexpr double least_step = 0.5;    // a tab that is lower by less is as high as the part
constexpr double guide_margin = 2.0;  // round the figures, on a guide

/// "8.0", "0.25": a decimal at least, two at most.
std::string figures_of(double mm) {
  std::array<char, 32> digits{};
  const auto [end, fault] =
      std::to_chars(digits.data(), digits.data() + digits.size(), mm, std::chars_format::fixed, 2);
  std::string out(digits.data(), end);
  if (out.back() == '0') out.pop_back();
  return out;
}

/// The circle's corners, and how many of them from angle 0 on the tab covers to either side.
struct Round {
  Outline ring;
  std::size_t covered = 0;
};

Round round_of(const Printable& part) {
  const double radius = 0.5 * part.outside;
  Round out{ring(Vec2(0.0), radius, sides_of(radius)), 1};
  const double reach = std::min(0.5 * part.mark->tab_width, radius * std::sin(std::numbers::pi / 3.0));
  while (out.ring[out.covered + 1].y <= reach && out.covered + 1 < out.ring.size() / 4) ++out.covered;
  return out;
}

/// From the circle's last corner before the tab round it to the first one behind it.
Outline tab_path(const Printable& part, const Round& round) {
  const Vec2& upper = round.ring[round.covered];
  const Vec2& lower = round.ring[round.ring.size() - round.covered];
  const double half = 0.5 * part.mark->tab_width;
  Outline out{lower};
  if (-half < lower.y) out.emplace_back(lower.x, -half);
  out.emplace_back(part.mark->tab_end, -half);
  out.emplace_back(part.mark->tab_end, half);
  if (half > upper.y) out.emplace_back(upper.x, half);
  out.push_back(upper);
  return out;
}

FlatFaces::Loop at_height(const Outline& outline, double z) {
  FlatFaces::Loop out;
  for (const Vec2& p : outline) out.emplace_back(p, z);
  return out;
}

std::vector<FlatFaces::Loop> at_height(const std::vector<Outline>& outlines, double z) {
  std::vector<FlatFaces::Loop> out;
  for (const Outline& each : outlines) out.push_back(at_height(each, z));
  return out;
}

Outline reversed(Outline outline) {
  std::reverse(outline.begin(), outline.end());
  return outline;
}

/// Between two heights, the material on the left of the line.
void add_walls(const Outline& line, bool closed, double low, double high, FlatFaces& out) {
  for (std::size_t i = 0; i + (closed ? 0 : 1) < line.size(); ++i) {
    const Vec2& a = line[i];
    const Vec2& b = line[(i + 1) % line.size()];
    out.add({{a, low}, {b, low}, {b, high}, {a, high}});
  }
}

/// Sides of a round part that is higher than its tab, and the tab's.
void add_round_walls(const Printable& part, const Round& round, FlatFaces& out) {
  const double step = part.mark->tab_height;
  add_walls(tab_path(part, round), false, 0.0, step, out);
  const std::size_t count = round.ring.size();
  for (std::size_t i = 0; i < count; ++i) {
    const std::size_t k = (i + 1) % count;
    const Vec3 a(round.ring[i], 0.0);
    const Vec3 b(round.ring[k], 0.0);
    const Vec3 up(0.0, 0.0, part.height);
    const Vec3 on_tab(0.0, 0.0, step);
    if (i < round.covered || i >= count - round.covered) {
      out.add({a + on_tab, b + on_tab, b + up, a + up});
      continue;
    }
    FlatFaces::Loop wall{a, b};  // beside the tab it has a corner where the tab's top ends
    if (k == count - round.covered) wall.push_back(b + on_tab);
    wall.push_back(b + up);
    wall.push_back(a + up);
    if (i == round.covered) wall.push_back(a + on_tab);
    out.add(wall);
  }
}

/// The free place nearest to the middle of a flat part for something that wide and high; its lower left corner.
std::optional<Vec2> room_on(const Printable& part, const Vec2& size) {
  Vec2 low = part.outline.front();
  Vec2 high = low;
  for (const Vec2& p : part.outline) low = glm::min(low, p), high = glm::max(high, p);
  const auto inside = [&](const Vec2& p) {
    for (std::size_t i = 0; i < part.outline.size(); ++i) {  // guides are convex, counter-clockwise
      const Vec2& a = part.outline[i];
      const Vec2 side = part.outline[(i + 1) % part.outline.size()] - a;
      if (!(side.x * (p.y - a.y) - side.y * (p.x - a.x) >= guide_margin * glm::length(side))) return false;
    }
    return true;
  };
  const auto free = [&](const Vec2& corner) {
    const Vec2 far = corner + size;
    const bool on_it = inside(corner) && inside(far) && inside({corner.x, far.y}) && inside({far.x, corner.y});
    return on_it && std::all_of(part.holes.begin(), part.holes.end(), [&](const PrintedHole& each) {
             return glm::distance(glm::clamp(each.at, corner, far), each.at) >= 0.5 * each.drawn + guide_margin;
           });
  };
  std::optional<Vec2> best;
  const Vec2 wanted = 0.5 * (low + high - size);
  const Vec2 step = glm::max(Vec2(1.0), (high - low) / 400.0);
  for (double y = low.y; y <= high.y; y += step.y)
    for (double x = low.x; x <= high.x; x += step.x)
      if (const Vec2 here(x, y); (!best || glm::distance(here, wanted) < glm::distance(*best, wanted)) && free(here))
        best = here;
  return best;
}

}  // namespace

Made marked(Printable part) {
  using Kind = Printable::Kind;
  const bool guide = part.kind == Kind::guide;
  if (!guide && !(part.outside > 0.0))
    return part.name + " gets no mark: only a spacer, a shim, a stand-off or a guide does";
  Mark mark;
  mark.text = figures_of(guide ? part.holes.front().asked : part.height);
  const Vec2 size = figures_size(mark.text);
  Vec2 at(0.0);
  double face = part.height;
  if (guide) {
    const auto room = room_on(part, size);
    if (!room) return part.name + " has no room for figures";
    at = *room;
  } else {
    at = {0.5 * part.outside + margin, -0.5 * size.y};
    mark.tab_end = at.x + size.x + margin;
    mark.tab_width = size.y + 2.0 * margin;
    mark.tab_height = part.height < tab_thickness + least_step ? part.height : tab_thickness;
    face = mark.tab_height;
  }
  mark.through = !(face - sunk >= sunk - 1e-9);
  mark.depth = mark.through ? face : sunk;
  mark.strokes = stroke_figures(mark.text, at);
  part.mark = std::move(mark);
  return part;
}

Outline marked_outline(const Printable& part) {
  if (!(part.outside > 0.0)) return part.outline;
  const Round round = round_of(part);
  const auto from = round.ring.begin() + static_cast<std::ptrdiff_t>(round.covered) + 1;
  const auto to = round.ring.end() - static_cast<std::ptrdiff_t>(round.covered);
  Outline out = tab_path(part, round);
  out.insert(out.end(), from, to);
  return out;
}

FlatFaces marked_faces(const Printable& part) {
  const Mark& mark = *part.mark;
  const double face = part.outside > 0.0 ? mark.tab_height : part.height;
  const bool step = face < part.height;
  const Outline outline = marked_outline(part);
  std::vector<Outline> holes = part.openings;
  for (const PrintedHole& each : part.holes) holes.push_back(round_a_hole(each));
  FlatFaces out;

  std::vector<Outline> below = holes;
  if (mark.through) below.insert(below.end(), mark.strokes.begin(), mark.strokes.end());
  out.add(at_height(reversed(outline), 0.0), at_height(below, 0.0));
  if (step) {
    const Round round = round_of(part);
    Outline tab = tab_path(part, round);
    for (std::size_t i = round.covered; i-- > 0;) tab.push_back(round.ring[i]);
    for (std::size_t i = 1; i < round.covered; ++i) tab.push_back(round.ring[round.ring.size() - i]);
    out.add(at_height(tab, face), at_height(mark.strokes, face));
    out.add(at_height(round.ring, part.height), at_height(holes, part.height));
  } else {
    std::vector<Outline> above = holes;
    above.insert(above.end(), mark.strokes.begin(), mark.strokes.end());
    out.add(at_height(outline, face), at_height(above, face));
  }

  if (step)
    add_round_walls(part, round_of(part), out);
  else
    add_walls(outline, true, 0.0, part.height, out);
  for (const Outline& each : holes) add_walls(reversed(each), true, 0.0, part.height, out);
  for (const Outline& stroke : mark.strokes) {
    add_walls(reversed(stroke), true, face - mark.depth, face, out);
    if (!mark.through) out.add(at_height(stroke, face - mark.depth));
  }
  return out;
}

}  // namespace baywright::plans
