#include "output/part_views.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <optional>

namespace baywright::output {

using geometry::Bounds;
using geometry::Region;
using geometry::Vec3;
using geometry::View;

namespace {

constexpr double same = 1e-6;    // mm: levels and points of one part that stand for one place
constexpr double beside = 1e-4;  // mm: how far off an edge it is asked what lies there

double cross(const Vec2& a, const Vec2& b) {
  return a.x * b.y - a.y * b.x;
}

/// One solid as the view shows it.
struct Shade {
  std::string piece;
  double near = 0.0;           // depth of its face toward the viewer
  std::vector<Outline> rings;  // of all its regions, holes among them
  Window window{Vec2(std::numeric_limits<double>::infinity()), Vec2(-std::numeric_limits<double>::infinity())};
};

bool inside_rings(const std::vector<Outline>& rings, const Vec2& p) {
  bool in = false;
  for (const Outline& ring : rings)
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const Vec2& a = ring[i];
      const Vec2& b = ring[(i + 1) % ring.size()];
      if ((a.y > p.y) != (b.y > p.y) && p.x < a.x + (b.x - a.x) * ((p.y - a.y) / (b.y - a.y))) in = !in;
    }
  return in;
}

bool covers(const Shade& shade, const Vec2& p) {
  return shade.window.low.x <= p.x && p.x <= shade.window.high.x && shade.window.low.y <= p.y &&
         p.y <= shade.window.high.y && inside_rings(shade.rings, p);
}

Shade shade_of(const PartSolid& solid, const View& view) {
  Shade out;
  out.piece = solid.piece;
  out.near = -std::numeric_limits<double>::infinity();
  for (const double x : {solid.bounds.low.x, solid.bounds.high.x})
    for (const double y : {solid.bounds.low.y, solid.bounds.high.y})
      for (const double z : {solid.bounds.low.z, solid.bounds.high.z})
        out.near = std::max(out.near, view.depth({x, y, z}));
  for (Region& region : geometry::shadow(solid.placed, view)) {
    out.rings.push_back(std::move(region.outline));
    for (Outline& hole : region.holes) out.rings.push_back(std::move(hole));
  }
  for (const Outline& ring : out.rings)
    for (const Vec2& p : ring) out.window = {glm::min(out.window.low, p), glm::max(out.window.high, p)};
  return out;
}

/// Where along p-q the ring crosses it, touches it with a corner, or begins and ends to run along it: shares of p-q.
void add_meetings(const Outline& ring, const Vec2& p, const Vec2& q, std::vector<double>& out) {
  const Vec2 d = q - p;
  const double length = glm::length(d);
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Vec2& a = ring[i];
    const Vec2& b = ring[(i + 1) % ring.size()];
    const double sa = cross(d, a - p) / length;
    const double sb = cross(d, b - p) / length;
    if (std::abs(sa) <= same) out.push_back(glm::dot(a - p, d) / (length * length));
    if ((sa > same && sb < -same) || (sa < -same && sb > same)) {
      const Vec2 at = a + (b - a) * (sa / (sa - sb));
      out.push_back(glm::dot(at - p, d) / (length * length));
    }
  }
}

enum class Fate { seen, hidden, within };

/// What becomes of the edge of `own` at `at`, `outward` being the unit normal away from its material.
Fate fate_at(const std::vector<Shade>& shades, const Shade& own, const Vec2& at, const Vec2& outward) {
  bool over_outside = false;  // something nearer lies on that side of the edge
  bool over_inside = false;
  for (const Shade& other : shades) {
    if (&other == &own) continue;
    const bool outside = covers(other, at + outward * beside);
    if (outside && other.piece == own.piece && std::abs(other.near - own.near) <= same) return Fate::within;
    if (!(other.near > own.near + same)) continue;
    over_outside = over_outside || outside;
    over_inside = over_inside || covers(other, at - outward * beside);
  }
  return over_outside && over_inside ? Fate::hidden : Fate::seen;
}

void add_edges(PartView& view, const std::vector<Shade>& shades, const Shade& own, const Outline& ring) {
  std::optional<Fate> last;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Vec2& p = ring[i];
    const Vec2& q = ring[(i + 1) % ring.size()];
    const double length = glm::distance(p, q);
    if (!(length > same)) continue;
    std::vector<double> stops = {0.0, 1.0};
    for (const Shade& other : shades)
      if (&other != &own)
        for (const Outline& theirs : other.rings) add_meetings(theirs, p, q, stops);
    std::sort(stops.begin(), stops.end());
    Vec2 outward = Vec2(q.y - p.y, p.x - q.x) / length;
    if (inside_rings(own.rings, 0.5 * (p + q) + outward * beside)) outward = -outward;
    for (std::size_t k = 0; k + 1 < stops.size(); ++k) {
      const double from = std::clamp(stops[k], 0.0, 1.0);
      const double to = std::clamp(stops[k + 1], 0.0, 1.0);
      if (!((to - from) * length > same)) continue;
      const Fate fate = fate_at(shades, own, p + (q - p) * (0.5 * (from + to)), outward);
      auto& lines = fate == Fate::hidden ? view.hidden : fate == Fate::seen ? view.seen : view.within;
      if (fate != last) lines.push_back({p + (q - p) * from});
      lines.back().push_back(p + (q - p) * to);
      last = fate;
    }
  }
}

std::string piece_of(const std::string& body) {
  // What stands on a board is room for parts, not of one piece with it.
  for (const char* apart : {"chips underneath", "chips", "components", "solder side", "bracket", "connector"})
    if (body.starts_with(apart)) return apart;
  return "";
}

}  // namespace

std::variant<std::vector<PartSolid>, geometry::Refusal> solids_of(const parts::Part& part) {
  if (part.bodies.empty()) return geometry::Refusal{"it has no solid to draw"};
  const std::vector<double> values = parts::nominal_values(part);
  std::vector<PartSolid> out;
  for (const parts::Body& body : part.bodies) {
    auto made = parts::shape(body, values);
    if (auto* refused = std::get_if<geometry::Refusal>(&made))
      return geometry::Refusal{"`" + body.name + "` is no solid: " + refused->reason};
    auto& shaped = std::get<parts::Shaped>(made);
    geometry::Placed placed{std::move(shaped.solid), shaped.pose};
    const Bounds box = geometry::bounds(placed);
    out.push_back({piece_of(body.name), std::move(placed), box});
  }
  return out;
}

PartView part_view(const std::vector<PartSolid>& solids, const View& view) {
  PartView out;
  out.view = view;
  out.window = {Vec2(std::numeric_limits<double>::infinity()), Vec2(-std::numeric_limits<double>::infinity())};
  std::vector<Shade> shades;
  for (const PartSolid& solid : solids) shades.push_back(shade_of(solid, view));
  std::stable_sort(shades.begin(), shades.end(), [](const Shade& a, const Shade& b) { return a.near < b.near; });
  for (const Shade& shade : shades) {
    out.window = {glm::min(out.window.low, shade.window.low), glm::max(out.window.high, shade.window.high)};
    out.areas.push_back(shade.rings);
    for (const Outline& ring : shade.rings) add_edges(out, shades, shade, ring);
  }
  return out;
}

ThreeViews three_views(const std::vector<PartSolid>& solids) {
  Bounds all = Bounds::empty();
  for (const PartSolid& solid : solids) all.add(solid.bounds);
  const Vec3 x(1, 0, 0);
  const Vec3 y(0, 1, 0);
  const Vec3 z(0, 0, 1);
  const bool lying = all.high.y - all.low.y > all.high.x - all.low.x + same;
  const Vec3 right = lying ? y : x;
  const Vec3 up = lying ? -x : y;
  return {part_view(solids, {Vec3(0.0), right, z}), part_view(solids, {Vec3(0.0), right, up}),
          part_view(solids, {Vec3(0.0), z, up})};
}

bool holes_in_base(const parts::Part& part) {
  return part.kind == "drive";
}

bool has_rim(const PartView& plan, const Vec2& centre, double diameter) {
  constexpr int steps = 16;
  for (int i = 0; i < steps; ++i) {
    const double turn = 2.0 * std::numbers::pi * i / steps;
    const Vec2 at = centre + (0.5 * diameter + beside) * Vec2(std::cos(turn), std::sin(turn));
    if (std::none_of(plan.areas.begin(), plan.areas.end(),
                     [&](const std::vector<Outline>& area) { return inside_rings(area, at); }))
      return false;
  }
  return true;
}

}  // namespace baywright::output
