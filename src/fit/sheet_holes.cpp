#include "fit/sheet_holes.h"

#include "build/there_holes.h"
#include "geometry/outline.h"
#include "standards/general_tolerances.h"

#include <algorithm>
#include <cmath>

namespace baywright::fit {

using build::PartFace;
using build::round_of;
using build::RoundHole;
using build::same_hole;
using geometry::Outline;
using geometry::Vec2;
namespace general = standards::general_tolerances;

namespace {

Vec2 nearest_on(const Vec2& p, const Vec2& a, const Vec2& b) {
  const Vec2 way = b - a;
  const double t = glm::dot(way, way) > 0.0 ? glm::dot(p - a, way) / glm::dot(way, way) : 0.0;
  return a + std::min(1.0, std::max(0.0, t)) * way;
}

bool inside(const std::vector<Outline>& outlines, const Vec2& p) {
  const auto round_it = [&](const Outline& outline) { return geometry::contains(outline, p); };
  return std::count_if(outlines.begin(), outlines.end(), round_it) % 2 == 1;
}

/// A hole that the part has for itself, or that is a place's already, is listed once, and no opening.
void find_there(HoleSheet& out) {
  const auto is_of = [](const RoundHole& round, const SheetHole& hole) {
    return same_hole(round, {hole.at, hole.own ? hole.diameter : hole.there});
  };
  std::erase_if(out.outline, [&, first = out.outline.data()](const Outline& each) {
    const std::optional<RoundHole> round = &each == first ? std::nullopt : round_of(each);
    return round &&
           std::any_of(out.holes.begin(), out.holes.end(), [&](const SheetHole& hole) { return is_of(*round, hole); });
  });
  const std::vector<SheetHole> all = out.holes;
  std::erase_if(out.holes, [&](const SheetHole& own) {
    return own.own && std::any_of(all.begin(), all.end(), [&](const SheetHole& hole) {
             return !hole.own && is_of({own.at, own.diameter}, hole);
           });
  });
}

void measure_edge(const HoleSheet& sheet, SheetHole& hole) {
  if (!inside(sheet.outline, hole.at))
    hole.on = inside({sheet.outline.front()}, hole.at) ? SheetHole::On::opening : SheetHole::On::nothing;
  for (const SheetHole& other : sheet.holes)  // in a hole of the part's own that is none of the place's
    if (other.own && !hole.own && glm::distance(hole.at, other.at) < 0.5 * other.diameter)
      hole.on = SheetHole::On::opening;
  for (const Outline& outline : sheet.outline)
    for (std::size_t i = 0; i < outline.size(); ++i) {
      const Vec2 at = nearest_on(hole.at, outline[i], outline[(i + 1) % outline.size()]);
      if (const double away = glm::distance(hole.at, at); away < hole.edge) hole.edge = away, hole.edge_at = at;
    }
}

void measure_web(const HoleSheet& sheet, std::size_t which, SheetHole& hole) {
  for (std::size_t i = 0; i < sheet.holes.size(); ++i) {
    const SheetHole& other = sheet.holes[i];
    const double away = glm::distance(hole.at, other.at);
    if (i == which || away <= build::round_to) continue;
    if (const double web = away - 0.5 * (hole.diameter + other.diameter); web < hole.web)
      hole.web = web, hole.other = i;
  }
}

void measure_bend(const HoleSheet& sheet, SheetHole& hole) {
  for (const parts::Bend& bend : sheet.bends) {
    const Vec2 at = nearest_on(hole.at, bend.from, bend.to);
    const double away = glm::distance(hole.at, at) - 0.5 * hole.diameter;
    if (!(away < hole.bend)) continue;
    hole.bend = away;
    hole.bend_at = at;
    hole.inside = bend.inside;
  }
}

}  // namespace

HoleSheet lay_out(const parts::Part& part, const PartFace& face, std::vector<SheetHole> holes) {
  HoleSheet out{build::outline_of(part, face), {}, std::move(holes)};
  for (std::size_t i = 0; i < out.holes.size(); ++i) out.holes[i].given = i;
  find_there(out);
  if (face.axis == 2)
    for (const parts::Bend& bend : part.bends)
      out.bends.push_back({face.flat(bend.from), face.flat(bend.to), bend.inside});
  for (std::size_t i = 0; i < out.holes.size(); ++i) {
    measure_edge(out, out.holes[i]);
    measure_web(out, i, out.holes[i]);
    measure_bend(out, out.holes[i]);
  }
  return out;
}

std::vector<SheetHole> own_holes(const parts::Part& part, const PartFace& face) {
  std::vector<SheetHole> out;
  if (face.axis != 2) return out;
  for (const parts::Hole& own : part.holes)
    out.push_back({.at = face.flat({own.x, own.y}), .diameter = own.diameter, .own = true});
  return out;
}

double edge_asked(double diameter) {
  return general::edge_distance_in_diameters() * diameter;
}

double web_asked(double thickness) {
  return general::web_in_thicknesses() * thickness;
}

double bend_asked(double thickness, const std::optional<double>& inside) {
  return general::bend_distance_in_thicknesses() * thickness + inside.value_or(thickness);
}

}  // namespace baywright::fit
