#include "fit/sheet_holes.h"

#include "standards/general_tolerances.h"

#include <algorithm>
#include <cmath>

namespace baywright::fit {

using geometry::Outline;
using geometry::Vec2;
namespace general = standards::general_tolerances;

namespace {

// Of a hole that an outline has already, mm: round to so much, no larger than asked for by so much, no smaller.
constexpr double round_to = 0.05;
constexpr double larger_at_most = 0.5;
constexpr double smaller_at_most = 0.05;

Outline rectangle(const Vec2& low, const Vec2& high) {
  return {low, {high.x, low.y}, high, {low.x, high.y}};
}

/// Of a prism its outline, of a bar a circle's polygon, else the box round it.
std::vector<Outline> outline_of(const parts::Part& part, const PartFace& face) {
  const std::vector<double> values = parts::nominal_values(part);
  const parts::Body* largest = nullptr;
  Vec2 low(0.0);
  Vec2 high(0.0);
  for (const parts::Body& body : part.bodies) {
    if (body.drawn_only) continue;
    const auto at = [&](const parts::Coordinates& c) {
      return others({c[0].at(values), c[1].at(values), c[2].at(values)}, face.axis);
    };
    const Vec2 side = at(body.high) - at(body.low);
    if (largest != nullptr && side.x * side.y <= (high - low).x * (high - low).y) continue;
    largest = &body;
    low = at(body.low);
    high = at(body.high);
  }
  std::vector<Outline> found;
  if (largest != nullptr && largest->form == parts::Body::Form::prism && largest->axis == face.axis && face.axis == 2) {
    found.push_back(largest->outline);
    for (const Outline& hole : largest->holes) found.push_back(hole);
  } else {
    found.push_back(rectangle(low, high));
  }
  for (Outline& outline : found)
    for (Vec2& p : outline) p = face.flat(p);
  return found;
}

Vec2 nearest_on(const Vec2& p, const Vec2& a, const Vec2& b) {
  const Vec2 way = b - a;
  const double t = glm::dot(way, way) > 0.0 ? glm::dot(p - a, way) / glm::dot(way, way) : 0.0;
  return a + std::min(1.0, std::max(0.0, t)) * way;
}

bool inside(const std::vector<Outline>& outlines, const Vec2& p) {
  bool in = false;
  for (const Outline& outline : outlines)
    for (std::size_t i = 0; i < outline.size(); ++i) {
      const Vec2& a = outline[i];
      const Vec2& b = outline[(i + 1) % outline.size()];
      if ((a.y > p.y) != (b.y > p.y) && p.x < a.x + (b.x - a.x) * (p.y - a.y) / (b.y - a.y)) in = !in;
    }
  return in;
}

struct Round {
  Vec2 at{0.0};
  double radius = 0.0;
};

/// The hole that an opening is; none: it is not round.
std::optional<Round> round_of(const Outline& opening) {
  Vec2 low = opening.front();
  Vec2 high = low;
  for (const Vec2& p : opening) low = glm::min(low, p), high = glm::max(high, p);
  const Round out{0.5 * (low + high), 0.25 * (high.x - low.x + high.y - low.y)};
  for (const Vec2& p : opening)
    if (!(std::abs(glm::distance(p, out.at) - out.radius) <= round_to)) return std::nullopt;
  if (opening.size() < 8) return std::nullopt;  // a square's corners lie on a circle too
  return out;
}

/// Whether a hole that the part has is that of a place.
bool is_same(const Round& round, SheetHole& hole) {
  const double off = glm::distance(round.at, hole.at);
  const double larger = 2.0 * round.radius - hole.diameter;
  if (!(off <= round.radius && larger <= larger_at_most)) return false;
  if (larger >= std::min(-smaller_at_most, hole.least - hole.diameter)) {
    hole.there = true;
    hole.there_off = off;
  }
  return true;
}

/// Finds the holes that the part has already: each is listed once, and no longer among the openings. So are its own.
void find_there(HoleSheet& out) {
  const auto first_own =
      std::find_if(out.holes.begin(), out.holes.end(), [](const SheetHole& each) { return each.own; });
  const auto is_placed = [&](const Round& round) {
    bool found = false;
    for (auto each = out.holes.begin(); each != first_own; ++each) found = is_same(round, *each) || found;
    return found;
  };
  const std::vector<SheetHole> own(first_own, out.holes.end());
  std::erase_if(out.outline, [&, first = out.outline.data()](const Outline& each) {
    const std::optional<Round> round = &each == first ? std::nullopt : round_of(each);
    if (!round) return false;
    return is_placed(*round) || std::any_of(own.begin(), own.end(), [&](const SheetHole& has) {
             return glm::distance(round->at, has.at) <= round_to &&
                    std::abs(2.0 * round->radius - has.diameter) <= 2.0 * round_to;
           });
  });
  std::vector<SheetHole> others;
  for (const SheetHole& each : own)
    if (!is_placed({each.at, 0.5 * each.diameter})) others.push_back(each);
  out.holes.erase(first_own, out.holes.end());
  out.holes.insert(out.holes.end(), others.begin(), others.end());
}

void measure_edge(const HoleSheet& sheet, SheetHole& hole) {
  if (!inside(sheet.outline, hole.at))
    hole.on = inside({sheet.outline.front()}, hole.at) ? SheetHole::On::opening : SheetHole::On::nothing;
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
    if (i == which || away <= round_to) continue;
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
  HoleSheet out{outline_of(part, face), {}, std::move(holes)};
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
    out.push_back({.at = face.flat({own.x, own.y}), .diameter = own.diameter, .least = own.diameter, .own = true});
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
