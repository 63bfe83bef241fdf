#include "output/projection.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>

namespace baywright::output {

using fit::Element;
using fit::Scene;
using geometry::Region;
using geometry::Vec3;
using geometry::View;

namespace {

constexpr double same = 1e-6;  // mm: points of one drawing that stand for one place

double cross(const Vec2& a, const Vec2& b) {
  return a.x * b.y - a.y * b.x;
}

/// A side of the window: points with dot(inward, p) >= offset are inside.
struct Side {
  Vec2 inward;
  double offset;

  [[nodiscard]] double inside(const Vec2& p) const { return glm::dot(inward, p) - offset; }
};

std::vector<Side> sides(const Window& window) {
  return {{{1, 0}, window.low.x}, {{-1, 0}, -window.high.x}, {{0, 1}, window.low.y}, {{0, -1}, -window.high.y}};
}

Outline rectangle(const Window& window) {
  return {window.low, {window.high.x, window.low.y}, window.high, {window.low.x, window.high.y}};
}

/// A break line from p to q: flat waves, drawn to the inner side.
std::vector<Vec2> wave(const Vec2& p, const Vec2& q, const Vec2& inward, double scale) {
  constexpr int steps = 8;  // a wave
  const double length = glm::distance(p, q);
  const int waves = std::max(1, static_cast<int>(std::lround(length * scale / 5.0)));
  const double height = std::min(0.35 / scale, 0.12 * length);
  std::vector<Vec2> out;
  for (int i = 0; i <= waves * steps; ++i) {
    const double turn = 2.0 * std::numbers::pi * i / steps;
    out.push_back(p + (q - p) * (static_cast<double>(i) / (waves * steps)) +
                  inward * (height * (1.0 - std::cos(turn))));
  }
  return out;
}

/// Takes one outline of a part through the window into `seen`.
void add_outline(Seen& seen, const Outline& outline, const Window& window, double scale) {
  const Outline kept = clipped(outline, rectangle(window));
  if (kept.size() < 3) return;
  std::vector<Side> ends;  // sides of the window beyond which the part goes on
  for (const Side& side : sides(window))
    if (std::any_of(outline.begin(), outline.end(), [&](const Vec2& p) { return side.inside(p) < -same; }))
      ends.push_back(side);
  Outline area;
  for (std::size_t i = 0; i < kept.size(); ++i) {
    const Vec2& p = kept[i];
    const Vec2& q = kept[(i + 1) % kept.size()];
    if (glm::distance(p, q) <= same) continue;
    const auto end = std::find_if(ends.begin(), ends.end(), [&](const Side& side) {
      return std::abs(side.inside(p)) <= same && std::abs(side.inside(q)) <= same;
    });
    if (end == ends.end()) {
      seen.edges.push_back({p, q});
      area.push_back(p);
      continue;
    }
    seen.breaks.push_back(wave(p, q, end->inward, scale));
    area.insert(area.end(), seen.breaks.back().begin(), seen.breaks.back().end() - 1);
  }
  seen.outlines.push_back(std::move(area));
}

std::vector<Seen> through(const std::vector<Region>& regions, const Seen& like, const Window& window, double scale) {
  std::vector<Seen> out;
  for (const Region& region : regions) {
    Seen seen = like;
    add_outline(seen, region.outline, window, scale);
    if (seen.outlines.empty()) continue;
    for (const Outline& hole : region.holes) add_outline(seen, hole, window, scale);
    out.push_back(std::move(seen));
  }
  return out;
}

bool reaches(const Window& a, const Window& b) {
  return a.low.x < b.high.x && b.low.x < a.high.x && a.low.y < b.high.y && b.low.y < a.high.y;
}

/// The stretches of the edge p-q that no edge of `others` covers from the other side.
std::vector<std::vector<Vec2>> uncovered(const Vec2& p, const Vec2& q, const std::vector<const Seen*>& others) {
  const double length = glm::distance(p, q);
  const Vec2 along = (q - p) / length;
  std::vector<std::pair<double, double>> covers;
  for (const Seen* other : others)
    for (const auto& edge : other->edges) {
      if (std::abs(cross(along, edge.front() - p)) > same || std::abs(cross(along, edge.back() - p)) > same) continue;
      if (glm::dot(along, edge.back() - edge.front()) > 0.0) continue;  // it bounds the same side: both are at the rim
      covers.push_back(std::minmax(glm::dot(along, edge.front() - p), glm::dot(along, edge.back() - p)));
    }
  std::sort(covers.begin(), covers.end());
  std::vector<std::vector<Vec2>> out;
  double from = 0.0;
  for (const auto& [low, high] : covers) {
    if (low > from + same) out.push_back({p + along * from, p + along * std::min(low, length)});
    from = std::max(from, high);
    if (from >= length - same) return out;
  }
  out.push_back({p + along * from, q});
  return out;
}

void join_pieces(const Scene& scene, std::vector<Seen>& all) {
  const std::vector<Seen> before = all;
  for (std::size_t i = 0; i < all.size(); ++i) {
    std::vector<const Seen*> others;
    for (std::size_t j = 0; j < all.size(); ++j)
      if (j != i && before[j].element != before[i].element && before[j].cut == before[i].cut &&
          piece(scene, before[j].element) == piece(scene, before[i].element))
        others.push_back(&before[j]);
    if (others.empty()) continue;
    all[i].edges.clear();
    for (const auto& edge : before[i].edges)
      for (auto& rest : uncovered(edge.front(), edge.back(), others)) all[i].edges.push_back(std::move(rest));
  }
}

std::array<Vec3, 8> corners(const Element& element) {
  std::array<Vec3, 8> out;
  for (std::size_t i = 0; i < 8; ++i)
    out[i] = {(i & 1U) != 0 ? element.bounds.high.x : element.bounds.low.x,
              (i & 2U) != 0 ? element.bounds.high.y : element.bounds.low.y,
              (i & 4U) != 0 ? element.bounds.high.z : element.bounds.low.z};
  return out;
}

/// A solid that stands nearly along the view, stood up straight about its own origin. A stand-off that is a few tenths
/// too tall tilts a card by less than half a degree, which moves nothing seen from above by more than some microns; but
/// the shadow of a slanting prism comes in pieces, whose seams would be drawn.
geometry::Placed straightened(geometry::Placed placed, const Vec3& normal) {
  constexpr double nearly = 0.999;  // cosine of 2.6 degrees: 0.1 mm on a card of 110
  const Vec3 axis = placed.pose.turn[2];
  const double along = glm::dot(axis, normal);
  if (std::abs(along) < nearly) return placed;
  const Vec3 z = along > 0.0 ? normal : -normal;
  const Vec3 x = glm::normalize(placed.pose.turn[0] - z * glm::dot(placed.pose.turn[0], z));
  placed.pose.turn = geometry::Mat3(x, glm::cross(z, x), z);
  return placed;
}

void append(std::vector<Seen>& all, std::vector<Seen> more) {
  for (Seen& seen : more) all.push_back(std::move(seen));
}

}  // namespace

Window bounds_in(const View& view, const Element& element) {
  Window out{Vec2(std::numeric_limits<double>::infinity()), Vec2(-std::numeric_limits<double>::infinity())};
  for (const Vec3& corner : corners(element)) {
    out.low = glm::min(out.low, view.flat(corner));
    out.high = glm::max(out.high, view.flat(corner));
  }
  return out;
}

Depths depths_in(const View& view, const Element& element) {
  Depths out{std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity()};
  for (const Vec3& corner : corners(element)) {
    out.low = std::min(out.low, view.depth(corner));
    out.high = std::max(out.high, view.depth(corner));
  }
  return out;
}

std::string piece(const Scene& scene, int element) {
  const Element& own = scene.element(element);
  const bool card = own.body == "edge" || own.body == "card";
  if (card) return own.part + "\ncard";
  return own.body.starts_with("chips") ? own.part + '\n' + own.body : own.part;
}

Outline clipped(Outline outline, const Outline& clip) {
  for (std::size_t i = 0; i < clip.size() && !outline.empty(); ++i) {
    const Vec2& a = clip[i];
    const Vec2 along = clip[(i + 1) % clip.size()] - a;
    Outline kept;
    for (std::size_t j = 0; j < outline.size(); ++j) {
      const Vec2& p = outline[j];
      const Vec2& q = outline[(j + 1) % outline.size()];
      const double in_p = cross(along, p - a);
      const double in_q = cross(along, q - a);
      if (in_p >= 0.0) kept.push_back(p);
      if ((in_p > 0.0 && in_q < 0.0) || (in_p < 0.0 && in_q > 0.0))
        kept.push_back(p + (q - p) * (in_p / (in_p - in_q)));
    }
    outline = std::move(kept);
  }
  double doubled = 0.0;  // what only touches leaves a line
  for (std::size_t i = 0; i < outline.size(); ++i) doubled += cross(outline[i], outline[(i + 1) % outline.size()]);
  return std::abs(doubled) > same * same ? outline : Outline{};
}

std::vector<Seen> cut_scene(const Scene& scene, const View& view, const Window& window, double scale, bool behind) {
  std::vector<Seen> back;
  std::vector<Seen> cut;
  for (int i = 0; i < scene.element_count(); ++i) {
    const Element& element = scene.element(i);
    if (!reaches(bounds_in(view, element), window)) continue;
    append(cut, through(geometry::section(element.placed, view), {i, true, 0.0, {}, {}, {}}, window, scale));
    Seen surface{i, true, 0.0, {}, {}, {}};
    for (const auto& [p, q] : geometry::cut_lines(element.placed, view)) surface.edges.push_back({p, q});
    if (!surface.edges.empty()) cut.push_back(std::move(surface));
    const Depths depths = depths_in(view, element);
    if (behind && depths.low < -same)
      append(back, through(geometry::shadow(element.placed, view), {i, false, std::min(0.0, depths.high), {}, {}, {}},
                           window, scale));
  }
  join_pieces(scene, cut);
  std::stable_sort(back.begin(), back.end(), [](const Seen& a, const Seen& b) { return a.depth < b.depth; });
  append(back, std::move(cut));
  return back;
}

std::vector<Seen> seen_from(const Scene& scene, const View& view, const Window& window, double scale) {
  std::vector<Seen> all;
  for (int i = 0; i < scene.element_count(); ++i) {
    const Element& element = scene.element(i);
    if (!reaches(bounds_in(view, element), window)) continue;
    append(all, through(geometry::shadow(straightened(element.placed, view.normal()), view),
                        {i, false, depths_in(view, element).high, {}, {}, {}}, window, scale));
  }
  join_pieces(scene, all);
  std::stable_sort(all.begin(), all.end(), [](const Seen& a, const Seen& b) { return a.depth < b.depth; });
  return all;
}

}  // namespace baywright::output
