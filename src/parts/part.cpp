#include "parts/part.h"

#include <algorithm>
#include <tuple>
#include <utility>

namespace baywright::parts {

using geometry::Mat3;
using geometry::Outline;
using geometry::Refusal;
using geometry::Solid;
using geometry::Vec2;
using geometry::Vec3;

namespace {

/// Takes local (u, v, w) with w along `axis` to part axes: for z (x, y, z), for x (y, z, x), for y (z, x, y).
Mat3 turn_to(int axis) {
  Mat3 turn(0.0);
  turn[0][(axis + 1) % 3] = 1.0;
  turn[1][(axis + 2) % 3] = 1.0;
  turn[2][axis] = 1.0;
  return turn;
}

/// Bounds of an outline, both axes.
std::pair<Vec2, Vec2> extent(const Outline& outline) {
  Vec2 low = outline.front();
  Vec2 high = outline.front();
  for (const Vec2& p : outline) {
    low = {std::min(low.x, p.x), std::min(low.y, p.y)};
    high = {std::max(high.x, p.x), std::max(high.y, p.y)};
  }
  return {low, high};
}

Outline stretched(const Outline& outline, const Vec2& from_low, const Vec2& from_high, const Vec2& size) {
  Outline out;
  out.reserve(outline.size());
  for (const Vec2& p : outline) {
    const Vec2 share = (p - from_low) / (from_high - from_low);
    out.push_back(share * size);
  }
  return out;
}

}  // namespace

int Part::add(tolerance::Dimension dimension) {
  dimensions.push_back(std::move(dimension));
  return static_cast<int>(dimensions.size()) - 1;
}

std::variant<Shaped, Refusal> shape(const Body& body, std::span<const double> values) {
  Vec3 low{0.0};
  Vec3 high{0.0};
  for (std::size_t axis = 0; axis < 3; ++axis) {
    low[static_cast<int>(axis)] = body.low[axis].at(values);
    high[static_cast<int>(axis)] = body.high[axis].at(values);
  }
  const Vec3 size = high - low;
  if (body.form == Body::Form::box) {
    auto made = Solid::box(size);
    if (auto* refused = std::get_if<Refusal>(&made)) return *refused;
    return Shaped{std::get<Solid>(made), {Mat3(1.0), low}};
  }
  const int w = body.axis;
  if (body.ready && body.form == Body::Form::prism && size == body.ready_size)
    return Shaped{*body.ready, {turn_to(w), low}};
  const int u = (w + 1) % 3;
  const int v = (w + 2) % 3;
  if (body.form == Body::Form::cylinder) {
    auto made = Solid::cylinder(size[u], body.bore.at(values), size[w]);
    if (auto* refused = std::get_if<Refusal>(&made)) return *refused;
    Vec3 foot = 0.5 * (low + high);
    foot[w] = low[w];
    return Shaped{std::get<Solid>(made), {turn_to(w), foot}};
  }
  if (body.form == Body::Form::mesh) {
    const Mat3 turn = geometry::rotation({0, 0, 1}, 90.0 * body.quarters);
    const geometry::Bounds& box = body.mesh->bounds();
    return Shaped{Solid::mesh(*body.mesh), {turn, low - glm::min(turn * box.low, turn * box.high)}};
  }
  const auto [from_low, from_high] = extent(body.outline);
  const Vec2 flat(size[u], size[v]);
  std::vector<Outline> holes;
  for (const Outline& hole : body.holes) holes.push_back(stretched(hole, from_low, from_high, flat));
  auto made = Solid::prism(stretched(body.outline, from_low, from_high, flat), std::move(holes), size[w]);
  if (auto* refused = std::get_if<Refusal>(&made)) return *refused;
  return Shaped{std::get<Solid>(made), {turn_to(w), low}};
}

void make_ready(Part& part) {
  const std::vector<double> values = nominal_values(part);
  for (Body& body : part.bodies) {
    auto made = shape(body, values);
    auto* shaped = std::get_if<Shaped>(&made);
    if (shaped == nullptr) continue;
    for (std::size_t axis = 0; axis < 3; ++axis)
      body.ready_size[static_cast<int>(axis)] = body.high[axis].at(values) - body.low[axis].at(values);
    body.ready = std::move(shaped->solid);
  }
}

std::vector<double> nominal_values(const Part& part) {
  std::vector<double> values;
  values.reserve(part.dimensions.size());
  for (const tolerance::Dimension& dimension : part.dimensions) values.push_back(dimension.nominal);
  return values;
}

Coordinate outer_face(const Part& part, int axis, bool up) {
  const std::vector<double> values = nominal_values(part);
  const auto side = static_cast<std::size_t>(axis);
  const Coordinate* best = nullptr;
  for (const Body& body : part.bodies) {
    const Coordinate& face = up ? body.high[side] : body.low[side];
    if (best == nullptr || (up ? face.at(values) > best->at(values) : face.at(values) < best->at(values))) best = &face;
  }
  return *best;
}

namespace {

/// (x, y) -> (-y, x).
Body quarter_turned(Body body) {
  Coordinates low = {-1.0 * body.high[1], body.low[0], body.low[2]};
  Coordinates high = {-1.0 * body.low[1], body.high[0], body.high[2]};
  body.low = std::move(low);
  body.high = std::move(high);
  const auto turn = [&body](Outline& outline) {
    // Outlines are kept in the two axes after `axis`: (x, y) for z; (y, z) for x becomes (z, x) for y; and back.
    for (Vec2& p : outline) p = body.axis == 2 ? Vec2(-p.y, p.x) : body.axis == 0 ? Vec2(p.y, -p.x) : Vec2(p.y, p.x);
  };
  turn(body.outline);
  for (Outline& hole : body.holes) turn(hole);
  if (body.axis != 2) body.axis = 1 - body.axis;
  if (body.form == Body::Form::mesh) body.quarters = (body.quarters + 1) % 4;
  return body;
}

}  // namespace

Part turned(Part part, int quarters) {
  for (int turns = ((quarters % 4) + 4) % 4; turns > 0; --turns) {
    for (Body& body : part.bodies) body = quarter_turned(std::move(body));
    for (Hole& hole : part.holes) std::tie(hole.x, hole.y) = std::pair(-hole.y, hole.x);
    for (Bend& bend : part.bends)
      for (geometry::Vec2* end : {&bend.from, &bend.to}) *end = {-end->y, end->x};
  }
  return part;
}

Body box_body(std::string name, Coordinates low, Coordinates high) {
  Body body;
  body.name = std::move(name);
  body.low = std::move(low);
  body.high = std::move(high);
  return body;
}

Body round_body(std::string name, double x, double y, const Coordinate& diameter, const Coordinate& low,
                const Coordinate& high) {
  Body body;
  body.name = std::move(name);
  body.form = Body::Form::cylinder;
  body.low = {Coordinate(x) - 0.5 * diameter, Coordinate(y) - 0.5 * diameter, low};
  body.high = {Coordinate(x) + 0.5 * diameter, Coordinate(y) + 0.5 * diameter, high};
  return body;
}

}  // namespace baywright::parts
