#include "build/there_holes.h"

#include <algorithm>
#include <cmath>

namespace baywright::build {

using geometry::Outline;
using geometry::Vec2;

namespace {

// mm, of a hole that is there already against the one that is asked for. Smaller: it is a pilot.
constexpr double larger_at_most = 0.5;

Outline rectangle(const Vec2& low, const Vec2& high) {
  return {low, {high.x, low.y}, high, {low.x, high.y}};
}

std::optional<ThereHole> there(const std::vector<RoundHole>& round, const Place& place, const PartFace& face,
                               const Fixing& fixing, const std::array<double, 2>& wanted) {
  const Vec2 at = on_face(place, face, wanted[0], wanted[1]);
  const tolerance::Dimension& asked = fixing.diameter.dimension;
  const RoundHole* nearest = nullptr;
  for (const RoundHole& hole : round) {
    const double off = glm::distance(hole.at, at);
    if (!(off <= 0.5 * hole.diameter) || !(hole.diameter <= asked.nominal + larger_at_most)) continue;
    if (nearest == nullptr || off < glm::distance(nearest->at, at)) nearest = &hole;
  }
  if (nearest == nullptr) return std::nullopt;
  const Vec2 own = from_place(place, face, nearest->at);
  return ThereHole{
      {own.x, own.y}, nearest->diameter, nearest->diameter < std::min(asked.nominal - round_to, asked.low())};
}

}  // namespace

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

std::optional<RoundHole> round_of(const Outline& opening) {
  Vec2 low = opening.front();
  Vec2 high = low;
  for (const Vec2& p : opening) low = glm::min(low, p), high = glm::max(high, p);
  const RoundHole out{0.5 * (low + high), 0.5 * (high.x - low.x + high.y - low.y)};
  for (const Vec2& p : opening)
    if (!(std::abs(glm::distance(p, out.at) - 0.5 * out.diameter) <= round_to)) return std::nullopt;
  if (opening.size() < 8) return std::nullopt;  // a square's corners lie on a circle too
  return out;
}

bool same_hole(const RoundHole& a, const RoundHole& b) {
  return glm::distance(a.at, b.at) <= round_to && std::abs(a.diameter - b.diameter) <= 2.0 * round_to;
}

std::vector<RoundHole> round_holes(const parts::Part& part, const PartFace& face) {
  std::vector<RoundHole> out;
  if (face.axis != 2) return out;
  for (const parts::Hole& own : part.holes) out.push_back({face.flat({own.x, own.y}), own.diameter});
  const std::vector<Outline> outline = outline_of(part, face);
  for (std::size_t i = 1; i < outline.size(); ++i) {
    const auto round = round_of(outline[i]);
    if (round && std::none_of(out.begin(), out.end(), [&](const RoundHole& has) { return same_hole(*round, has); }))
      out.push_back(*round);
  }
  return out;
}

void find_there(Build& build) {
  for (Place& place : build.places) {
    auto* bay = std::get_if<Bay>(&place.socket);
    if (bay == nullptr || !bay->fixing || bay->fixing->side) continue;
    const parts::Part& part = build.parts[static_cast<std::size_t>(place.part)].part;
    const PartFace face = face_of(part, place.axis, place.back);
    const std::vector<RoundHole> round = round_holes(part, face);
    Fixing& fixing = *bay->fixing;
    fixing.there.clear();
    for (const auto& wanted : fixing.holes) fixing.there.push_back(there(round, place, face, fixing, wanted));
  }
}

std::array<double, 2> Fixing::middle(std::size_t hole) const {
  return there[hole] ? there[hole]->at : holes[hole];
}

tolerance::Dimension Fixing::width(std::size_t hole) const {
  tolerance::Dimension out = diameter.dimension;  // an outline has no limits of its own
  if (as_it_is(hole)) out.nominal = there[hole]->diameter;
  return out;
}

bool Fixing::as_it_is(std::size_t hole) const {
  return there[hole] && !there[hole]->pilot;
}

}  // namespace baywright::build
