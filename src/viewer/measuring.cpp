#include "viewer/measuring.h"

#include "geometry/gap.h"
#include "geometry/outline.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <limits>
#include <map>
#include <numbers>
#include <utility>

namespace baywright::viewer {

using geometry::Outline;
using geometry::Placed;
using geometry::Pose;
using geometry::Solid;
using geometry::Vec2;

namespace {

constexpr double nowhere = std::numeric_limits<double>::infinity();
constexpr double thin = 2e-6;               // mm: of the sheets and rods that stand for faces and edges
constexpr double touching = 1e-5;           // mm: what is nearer touches, those sheets counted
constexpr double flat_sine = 1e-6;          // of triangles that are one flat face
constexpr double flat_mm = 1e-5;            // the same: off its plane
constexpr double parallel_degrees = 0.005;  // shown as 0.01 steps
constexpr std::size_t round_corners = 12;   // an outline with as many, all as far from its middle, is round
constexpr int circle_sides = 48;            // to draw

/// A frame whose z axis is `way`.
Pose frame_along(const Vec3& way, const Vec3& at) {
  const Vec3 x = geometry::square_to(way);
  return {geometry::Mat3(x, glm::cross(way, x), way), at};
}

std::optional<Solid> made(std::variant<Solid, geometry::Refusal> solid) {
  if (auto* good = std::get_if<Solid>(&solid)) return std::move(*good);
  return std::nullopt;
}

std::optional<Placed> rod(const Vec3& from, const Vec3& to) {
  const Vec3 way = to - from;
  const double length = glm::length(way);
  if (!(length > 0.0)) return std::nullopt;
  const auto solid = made(Solid::box({thin, thin, std::max(length, thin)}));
  if (!solid) return std::nullopt;
  Pose pose = frame_along(way / length, from);
  pose.shift = pose.point({-0.5 * thin, -0.5 * thin, 0.0});
  return Placed{*solid, pose};
}

std::vector<std::array<Vec3, 2>> circle(const Vec3& at, const Vec3& axis, double radius) {
  std::vector<std::array<Vec3, 2>> out;
  const Pose frame = frame_along(axis, at);
  const auto point = [&](int i) {
    const double turn = 2.0 * std::numbers::pi * i / circle_sides;
    return frame.point({radius * std::cos(turn), radius * std::sin(turn), 0.0});
  };
  for (int i = 0; i < circle_sides; ++i) out.push_back({point(i), point(i + 1)});
  return out;
}

double distance_to(const Vec3& p, const std::array<Vec3, 2>& side) {
  const Vec3 way = side[1] - side[0];
  const double square = glm::dot(way, way);
  const double t = square > 0.0 ? std::clamp(glm::dot(p - side[0], way) / square, 0.0, 1.0) : 0.0;
  return glm::distance(p, side[0] + t * way);
}

bool inside(const std::vector<Outline>& outlines, const Vec2& p) {
  const auto round_it = [&](const Outline& outline) { return geometry::contains(outline, p); };
  return std::count_if(outlines.begin(), outlines.end(), round_it) % 2 == 1;
}

/// An outline that stands for a circle.
struct Circle {
  Vec2 middle{0.0};
  double radius = 0.0;
};
std::optional<Circle> circle_of(const Outline& outline) {
  if (outline.size() < round_corners) return std::nullopt;
  Circle out;
  for (const Vec2& p : outline) out.middle += p / static_cast<double>(outline.size());
  out.radius = glm::distance(out.middle, outline.front());
  for (const Vec2& p : outline)
    if (!(std::abs(glm::distance(out.middle, p) - out.radius) < 1e-3 * out.radius)) return std::nullopt;
  return out;
}

Picked nothing(const Placed& solid) {
  return {Picked::Kind::face, -1, Vec3(0.0), Vec3(0.0), 0.0, 0.0, {}, solid};
}

/// What is met first, with what bounds it.
struct Met {
  double t = nowhere;
  Picked picked;
  struct Rim {
    Vec3 at{0.0};
    Vec3 axis{0.0};
    double radius = 0.0;
    double through = 0.0;  // mm along the axis: of the rod that stands for it
  };
  std::vector<Rim> rims;
};

class Search {
 public:
  Search(const Placed& placed, const Sight& sight)
      : placed_(placed), pose_(placed.pose), sight_(sight), best_{nowhere, nothing(placed), {}} {}

  std::optional<Met> met() && {
    if (placed_.solid.mesh() != nullptr)
      mesh(*placed_.solid.mesh());
    else if (placed_.solid.diameter() > 0.0)
      bar();
    else
      prism();
    if (!std::isfinite(best_.t)) return std::nullopt;
    return std::move(best_);
  }

 private:
  /// Where the line meets a plane; infinite: nowhere, or not nearer than what was met.
  [[nodiscard]] double meet(const Vec3& at, const Vec3& normal) const {
    const double facing = glm::dot(sight_.along, normal);
    if (!(std::abs(facing) > 1e-12)) return nowhere;
    return glm::dot(at - sight_.from, normal) / facing;
  }
  [[nodiscard]] bool better(double t) const { return t >= sight_.nearest && t < best_.t; }
  [[nodiscard]] Vec3 at(double t) const { return sight_.from + t * sight_.along; }

  void take(double t, Picked::Kind kind, const Vec3& way, std::optional<Placed> shape) {
    best_ = {t, {kind, -1, at(t), way, 0.0, 0.0, {}, shape.value_or(placed_)}, {}};
  }

  /// A flat face of outlines in a frame whose z axis looks into the solid.
  void flat(const std::vector<Outline>& outlines, const Pose& frame, double height) {
    const Vec3 normal = -frame.turn[2];
    const double t = meet(frame.shift, normal);
    if (!better(t)) return;
    const Vec3 local = frame.inverse().point(at(t));
    if (!inside(outlines, {local.x, local.y})) return;
    auto sheet = made(Solid::prism(outlines.front(), {outlines.begin() + 1, outlines.end()}, thin));
    take(t, Picked::Kind::face, normal, sheet ? std::optional(Placed{*sheet, frame}) : std::nullopt);
    for (std::size_t k = 0; k < outlines.size(); ++k) {
      const Outline& outline = outlines[k];
      for (std::size_t i = 0; i < outline.size(); ++i)
        best_.picked.outline.push_back(
            {frame.point({outline[i], 0.0}), frame.point({outline[(i + 1) % outline.size()], 0.0})});
      if (const auto round = circle_of(outline))
        best_.rims.push_back({frame.point({round->middle, 0.0}), normal, round->radius, height});
    }
  }

  void prism() {
    std::vector<Outline> base = {placed_.solid.outline()};
    base.insert(base.end(), placed_.solid.holes().begin(), placed_.solid.holes().end());
    const double height = placed_.solid.height();
    flat(base, pose_, height);
    // The top seen from outside: y turned over, so that z looks inward and the frame stays right-handed.
    std::vector<Outline> top = base;
    for (Outline& outline : top)
      for (Vec2& p : outline) p.y = -p.y;
    const geometry::Mat3 over({1, 0, 0}, {0, -1, 0}, {0, 0, -1});
    flat(top, pose_.after({over, {0.0, 0.0, height}}), height);
    for (const Outline& outline : base) sides(outline, height);
  }

  /// Outlines run counter-clockwise, holes clockwise: the solid is on the left of each side.
  void sides(const Outline& outline, double height) {
    const auto round = circle_of(outline);
    for (std::size_t i = 0; i < outline.size(); ++i) {
      const Vec2& a = outline[i];
      const Vec2& b = outline[(i + 1) % outline.size()];
      const double length = glm::distance(a, b);
      if (!(length > 0.0)) continue;
      const Vec3 along((b - a) / length, 0.0);
      const Vec3 inward(-along.y, along.x, 0.0);
      const Pose frame = pose_.after({geometry::Mat3(along, glm::cross(inward, along), inward), Vec3(a, 0.0)});
      const double down = frame.inverse().point(pose_.point(Vec3(a, height))).y;  // the other edge: up or down
      const double before = best_.t;
      flat({{{0.0, 0.0}, {length, 0.0}, {length, down}, {0.0, down}}}, frame, height);
      if (best_.t < before && round) {  // the wall of a round hole, or of a round part
        const Vec3 axis = pose_.direction({0.0, 0.0, 1.0});
        const double up = glm::dot(best_.picked.at - pose_.shift, axis);
        best_.rims = {{pose_.point({round->middle, up}), axis, round->radius, 0.0}};
        hole(best_.rims.front(), pose_.point({round->middle, 0.0}), height);
      }
    }
  }

  /// The axis through a bore, from one end on.
  void hole(const Met::Rim& rim, const Vec3& from, double length) {
    Picked& out = best_.picked;
    auto axis = rod(from, from + length * rim.axis);
    if (!axis) return;
    out = {
        Picked::Kind::hole, -1, rim.at, rim.axis, 2.0 * rim.radius, 0.0, circle(rim.at, rim.axis, rim.radius), *axis};
    best_.rims.clear();
  }

  void bar() {
    const Solid& solid = placed_.solid;
    const Vec3 axis = pose_.turn[2];
    const double height = solid.height();
    for (const bool top : {false, true}) {
      const Vec3 end = pose_.point({0.0, 0.0, top ? height : 0.0});
      const Vec3 normal = top ? axis : -axis;
      const double t = meet(end, normal);
      if (!better(t)) continue;
      const double away = glm::distance(at(t), end);
      if (!(away <= 0.5 * solid.diameter()) || away < 0.5 * solid.bore()) continue;
      const auto disc = made(Solid::cylinder(solid.diameter(), solid.bore(), thin));
      Pose frame = pose_;
      frame.shift = pose_.point({0.0, 0.0, top ? height - thin : 0.0});
      take(t, Picked::Kind::face, normal, disc ? std::optional(Placed{*disc, frame}) : std::nullopt);
      for (const double diameter : {solid.diameter(), solid.bore()}) {
        if (!(diameter > 0.0)) continue;
        const auto ring = circle(end, normal, 0.5 * diameter);
        best_.picked.outline.insert(best_.picked.outline.end(), ring.begin(), ring.end());
        best_.rims.push_back({end, normal, 0.5 * diameter, height});
      }
    }
    wall(0.5 * solid.diameter(), false);
    if (solid.bore() > 0.0) wall(0.5 * solid.bore(), true);
  }

  void wall(double radius, bool bore) {
    const Pose back = pose_.inverse();
    const Vec3 from = back.point(sight_.from);
    const Vec3 along = back.direction(sight_.along);
    const double a = along.x * along.x + along.y * along.y;
    const double b = from.x * along.x + from.y * along.y;
    const double c = from.x * from.x + from.y * from.y - radius * radius;
    const double root = b * b - a * c;
    if (!(a > 1e-18) || !(root >= 0.0)) return;
    // From outside a bar its near side is seen, of a bore the far one.
    const double t = bore ? (-b + std::sqrt(root)) / a : (-b - std::sqrt(root)) / a;
    const double height = placed_.solid.height();
    const double z = from.z + t * along.z;
    if (!better(t) || z < 0.0 || z > height) return;
    const Vec3 axis = pose_.turn[2];
    take(t, bore ? Picked::Kind::hole : Picked::Kind::round, axis, placed_);
    if (bore) return hole({pose_.point({0.0, 0.0, z}), axis, radius, height}, pose_.shift, height);
    best_.picked.diameter = 2.0 * radius;
    for (const double end : {0.0, height}) {
      const auto ring = circle(pose_.point({0.0, 0.0, end}), axis, radius);
      best_.picked.outline.insert(best_.picked.outline.end(), ring.begin(), ring.end());
    }
  }

  void mesh(const geometry::Mesh& mesh) {
    const auto corners = mesh.vertices();
    const auto triangles = mesh.triangles();
    const Pose back = pose_.inverse();
    const Vec3 from = back.point(sight_.from);
    const Vec3 along = back.direction(sight_.along);
    const auto corner = [&](int i) { return corners[static_cast<std::size_t>(i)]; };
    std::optional<std::size_t> seen;
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < triangles.size(); ++i) {
      const auto& [p, q, r] = triangles[i];
      const Vec3 one = corner(q) - corner(p);
      const Vec3 two = corner(r) - corner(p);
      const Vec3 across = glm::cross(along, two);
      const double det = glm::dot(one, across);
      if (det == 0.0) continue;
      const Vec3 off = from - corner(p);
      const double u = glm::dot(off, across) / det;
      const double v = glm::dot(along, glm::cross(off, one)) / det;
      const double t = glm::dot(two, glm::cross(off, one)) / det;
      if (!(u >= 0.0 && v >= 0.0 && u + v <= 1.0 && t >= sight_.nearest && t < least)) continue;
      least = t;
      seen = i;
    }
    if (!seen) return;
    const auto normal_of = [&](std::size_t i) {
      const auto& [p, q, r] = triangles[i];
      return glm::normalize(glm::cross(corner(q) - corner(p), corner(r) - corner(p)));
    };
    const Vec3 normal = normal_of(*seen);
    const Vec3 level = corner(triangles[*seen][0]);
    std::vector<std::size_t> group = {*seen};  // then what hangs together with it
    std::map<std::pair<int, int>, std::vector<std::size_t>> by_side;
    for (std::size_t i = 0; i < triangles.size(); ++i) {
      const auto off = [&](int k) { return std::abs(glm::dot(corner(k) - level, normal)) > flat_mm; };
      if (off(triangles[i][0]) || off(triangles[i][1]) || off(triangles[i][2])) continue;
      if (!(glm::length(glm::cross(normal_of(i), normal)) < flat_sine) || glm::dot(normal_of(i), normal) < 0.0)
        continue;
      for (std::size_t k = 0; k < 3; ++k) by_side[std::minmax(triangles[i][k], triangles[i][(k + 1) % 3])].push_back(i);
    }
    std::vector<bool> in(triangles.size(), false);
    in[*seen] = true;
    std::vector<geometry::Mesh::Triangle> face;
    take(least, Picked::Kind::face, pose_.direction(normal), std::nullopt);
    for (std::size_t next = 0; next < group.size(); ++next) {
      const auto& triangle = triangles[group[next]];
      face.push_back(triangle);
      for (std::size_t k = 0; k < 3; ++k) {
        const auto& beside = by_side[std::minmax(triangle[k], triangle[(k + 1) % 3])];
        if (beside.size() == 1)
          best_.picked.outline.push_back(
              {pose_.point(corner(triangle[k])), pose_.point(corner(triangle[(k + 1) % 3]))});
        for (const std::size_t other : beside)
          if (!in[other]) {
            in[other] = true;
            group.push_back(other);
          }
      }
    }
    auto surface = geometry::Mesh::make({corners.begin(), corners.end()}, std::move(face));
    if (auto* good = std::get_if<geometry::Mesh>(&surface)) best_.picked.shape = {Solid::mesh(std::move(*good)), pose_};
  }

  const Placed& placed_;
  const Pose& pose_;
  const Sight& sight_;
  Met best_;
};

/// The least and the most of a solid along a direction, from a point.
std::pair<double, double> span(const Placed& placed, const Vec3& from, const Vec3& way) {
  double low = std::numeric_limits<double>::infinity();
  double high = -low;
  const auto add = [&](const Vec3& p) {
    low = std::min(low, glm::dot(p - from, way));
    high = std::max(high, glm::dot(p - from, way));
  };
  for (const geometry::Piece& piece : placed.solid.pieces()) {
    add(geometry::farthest(piece, placed.pose, way));
    add(geometry::farthest(piece, placed.pose, -way));
  }
  if (const geometry::Mesh* mesh = placed.solid.mesh())
    for (const auto& triangle : mesh->triangles())
      for (const int i : triangle) add(placed.pose.point(mesh->vertices()[static_cast<std::size_t>(i)]));
  return {low, high};
}

std::optional<double> angle_of(const Picked& a, const Picked& b) {
  if (a.kind == Picked::Kind::round || b.kind == Picked::Kind::round) return std::nullopt;
  const double sine = glm::length(glm::cross(a.way, b.way));
  const double between = std::atan2(sine, std::abs(glm::dot(a.way, b.way))) * 180.0 / std::numbers::pi;
  const bool mixed = (a.kind == Picked::Kind::face) != (b.kind == Picked::Kind::face);
  return mixed ? 90.0 - between : between;
}

std::string hundredths(double value) {
  char text[32];
  std::snprintf(text, sizeof text, "%.2f", value == 0.0 ? 0.0 : value);
  return std::string(text) == "-0.00" ? "0.00" : text;
}

}  // namespace

std::optional<Picked> pick(const Placed& solid, const Sight& sight, double reach, std::span<const HoleAxis> holes) {
  auto met = Search(solid, sight).met();
  if (!met) return std::nullopt;
  Picked& face = met->picked;
  if (face.kind != Picked::Kind::face) return face;
  const auto as_hole = [&](const Vec3& at, const Vec3& axis, double radius, double through) -> std::optional<Picked> {
    const auto shape = rod(at, at - std::max(through, thin) * axis);
    if (!shape) return std::nullopt;
    return Picked{Picked::Kind::hole, -1, at, axis, 2.0 * radius, 0.0, circle(at, axis, radius), *shape};
  };
  const HoleAxis* best = nullptr;
  for (const HoleAxis& hole : holes) {
    const Vec3 off = face.at - hole.at;
    const bool on_face = std::abs(glm::dot(off, face.way)) < 0.1 && std::abs(glm::dot(hole.axis, face.way)) > 0.999;
    if (on_face && glm::length(off) <= 0.5 * hole.diameter + reach &&
        (best == nullptr || glm::length(off) < glm::distance(face.at, best->at)))
      best = &hole;
  }
  if (best != nullptr)
    if (auto out = as_hole(best->at, best->axis, 0.5 * best->diameter, 0.0)) return out;
  for (const Met::Rim& rim : met->rims)
    if (std::abs(glm::distance(face.at, rim.at) - rim.radius) <= reach)
      if (auto out = as_hole(rim.at, rim.axis, rim.radius, rim.through)) return out;
  const std::array<Vec3, 2>* side = nullptr;
  for (const auto& each : face.outline)
    if (distance_to(face.at, each) <= reach &&
        (side == nullptr || distance_to(face.at, each) < distance_to(face.at, *side)))
      side = &each;
  // Sides of what is drawn round are no edges.
  const bool round = side != nullptr && std::any_of(met->rims.begin(), met->rims.end(), [&](const Met::Rim& rim) {
                       return std::abs(glm::distance((*side)[0], rim.at) - rim.radius) < 1e-2 * rim.radius;
                     });
  if (side == nullptr || round) return face;
  const auto shape = rod((*side)[0], (*side)[1]);
  if (!shape) return face;
  const double length = glm::distance((*side)[0], (*side)[1]);
  const Vec3 way = ((*side)[1] - (*side)[0]) / length;
  return Picked{Picked::Kind::edge,
                -1,
                (*side)[0] + glm::dot(face.at - (*side)[0], way) * way,
                way,
                0.0,
                length,
                {*side},
                *shape};
}

Measurement measured(const Picked& first, const Picked& second) {
  Measurement out;
  const geometry::Gap gap = geometry::gap(first.shape, second.shape);
  out.from = gap.on_a;
  out.to = gap.on_b;
  if (gap.mm > touching) {
    out.distance = gap.mm;
    out.along = glm::abs(gap.on_b - gap.on_a);
  } else {
    out.to = out.from;
  }
  out.angle = angle_of(first, second);
  const bool by_first = first.kind == Picked::Kind::face;
  if (!by_first && second.kind != Picked::Kind::face) return out;
  const Picked& plane = by_first ? first : second;
  const auto [low, high] = span((by_first ? second : first).shape, plane.at, plane.way);
  Measurement::Gap found;
  found.normal = plane.way;
  if (low >= -touching) {
    found.mm = std::max(0.0, low);
  } else if (high <= touching) {
    found.mm = std::max(0.0, -high);
    found.behind = true;
  } else {
    found.crosses = true;
  }
  out.gap = found;
  return out;
}

std::string words_of(const Picked& picked) {
  switch (picked.kind) {
    case Picked::Kind::face:
      return "flat face";
    case Picked::Kind::round:
      return "round side, diameter " + hundredths(picked.diameter);
    case Picked::Kind::edge:
      return "edge, " + hundredths(picked.length) + " long";
    case Picked::Kind::hole:
      return "hole or round edge, diameter " + hundredths(picked.diameter);
  }
  return {};
}

std::vector<std::string> words_of(const Measurement& measurement, const Picked& first, const Picked& second) {
  std::vector<std::string> out;
  const bool axes = first.kind == Picked::Kind::hole || second.kind == Picked::Kind::hole;
  out.push_back(measurement.distance > 0.0
                    ? hundredths(measurement.distance) + " mm apart" + (axes ? ", from the axis" : "")
                    : "they touch or cross");
  if (measurement.distance > 0.0)
    out.push_back("x " + hundredths(measurement.along.x) + ", y " + hundredths(measurement.along.y) + ", z " +
                  hundredths(measurement.along.z));
  if (measurement.angle)
    out.push_back(*measurement.angle < parallel_degrees          ? "parallel"
                  : *measurement.angle > 90.0 - parallel_degrees ? "at right angles"
                                                                 : hundredths(*measurement.angle) + " degrees");
  if (!measurement.gap) return out;
  const char* which = first.kind == Picked::Kind::face ? "first" : "second";
  const std::string face = std::string(" the plane of the ") + which + " face";
  out.push_back(measurement.gap->crosses
                    ? "on both sides of" + face
                    : hundredths(measurement.gap->mm) + " mm " + (measurement.gap->behind ? "behind" : "before") +
                          face + ", square to it");
  return out;
}

}  // namespace baywright::viewer
