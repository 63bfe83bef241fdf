// Both pieces are cast on the plane square to the direction. A cast keeps what lies within the band of the extreme, as
// the corners there and the points where edges leave the band; its hull is the shadow. The corners of what the shadows
// share are lifted back onto both pieces.
//
// A disc is cast by points of its rims: 32 directions, which start at the one toward the other piece and so hold the
// extreme and the silhouette; the directions at which a rim leaves the band; and the one toward the middle of the other
// piece. The shadow is inscribed, short of the true one by at most radius * (1 - cos(pi / 32)) = 0.0049 radius between
// two directions. Where the inscribed shadows miss each other, the rims are aimed at once more, so that a narrow common
// area is not missed for it.
#include "geometry/facing.h"

#include "geometry/limits.h"
#include "geometry/outline.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <tuple>
#include <utility>

namespace baywright::geometry {
namespace {

/// How far outside a face a line may run and still be lifted onto what lies beyond that face. A common corner often
/// lies right over a side that is parallel to the direction but for rounding; without the slack it would slide down
/// that side by rounding over slope. Larger than the rounding of a coordinate of `largest_mm`, and small in `touch_mm`.
constexpr double lift_slack_mm = touch_mm / 10.0;

constexpr std::size_t rim_directions = 32;

std::array<Vec2, rim_directions> make_rim() {
  std::array<Vec2, rim_directions> rim;
  for (std::size_t i = 0; i < rim_directions; ++i) {
    const double angle = 2.0 * std::numbers::pi * static_cast<double>(i) / static_cast<double>(rim_directions);
    rim[i] = {std::cos(angle), std::sin(angle)};
  }
  return rim;
}

Vec2 turned(const Vec2& a, const Vec2& b) {
  return {a.x * b.x - a.y * b.y, a.x * b.y + a.y * b.x};
}

double cross(const Vec2& a, const Vec2& b) {
  return a.x * b.y - a.y * b.x;
}

/// One piece seen along `toward`, all in its own coordinates: shadow = (u, v) * point + offset, depth = toward * point
/// + depth_offset, the greater the nearer to the other piece.
class Cast {
 public:
  Cast(const Piece& piece, const Pose& pose, const Vec3& toward, const Vec3& u, const Vec3& v, double band)
      : piece_(piece),
        toward_(glm::transpose(pose.turn) * toward),
        u_(glm::transpose(pose.turn) * u),
        v_(glm::transpose(pose.turn) * v),
        offset_(glm::dot(u, pose.shift), glm::dot(v, pose.shift)),
        depth_offset_(glm::dot(toward, pose.shift)),
        slope_(glm::length(Vec2{toward_})) {
    const double top = std::max(0.0, toward_.z * piece.height) + depth_offset_;
    if (round()) {
      most_ = top + slope_ * piece.radius;
    } else {
      double corner = glm::dot(Vec2{toward_}, piece.corners.front());
      for (const Vec2& c : piece.corners) corner = std::max(corner, glm::dot(Vec2{toward_}, c));
      most_ = top + corner;
    }
    limit_ = most_ - band;
  }

  [[nodiscard]] bool round() const { return piece_.base != Piece::Base::polygon; }

  [[nodiscard]] Vec2 middle() const {
    Vec2 sum{0.0};
    for (const Vec2& c : piece_.corners) sum += c;
    if (!piece_.corners.empty()) sum /= static_cast<double>(piece_.corners.size());
    return shadow_of(Vec3{sum, piece_.height / 2.0});
  }

  /// `aim`: a point of the shadow's plane that a rim is to be sampled toward.
  [[nodiscard]] Outline shadow(const Vec2& aim) const { return hull(round() ? rim_points(aim) : edge_points()); }

  /// The edges within the band, cast: the lines along which the boundary that faces the other piece may fold. Of a disc,
  /// the lines of its side at the directions of the shadow, whose ends are its rims.
  [[nodiscard]] std::vector<Outline> folds(const Vec2& aim) const {
    std::vector<Outline> lines;
    if (round()) {
      for (const Vec2& direction : rim_directions_toward(aim))
        add_fold({direction * piece_.radius, 0.0}, {direction * piece_.radius, piece_.height}, lines);
      return lines;
    }
    Vec2 last = piece_.corners.back();
    for (const Vec2& corner : piece_.corners) {
      add_fold({corner, 0.0}, {corner, piece_.height}, lines);
      for (const double z : {0.0, piece_.height}) add_fold({last, z}, {corner, z}, lines);
      last = corner;
    }
    return lines;
  }

  /// Whether the piece is at its extreme depth over the point.
  [[nodiscard]] bool flat_at(const Vec2& p) const { return lift(p) >= most_ - touch_mm; }

  /// The greatest depth of the piece over a point of its shadow.
  [[nodiscard]] double lift(const Vec2& p) const {
    // From over p at the extreme depth, the way along the unit direction until the line leaves the piece: 0 or back.
    const Vec2 q = p - offset_;
    const Vec3 start = u_ * q.x + v_ * q.y + toward_ * (most_ - depth_offset_);
    double way = 0.0;
    if (toward_.z > 0.0) way = std::min(way, (piece_.height - start.z + lift_slack_mm) / toward_.z);
    if (toward_.z < 0.0) way = std::min(way, (start.z + lift_slack_mm) / -toward_.z);
    way = std::min(way, round() ? way_out_of_disc(Vec2{start}) : way_out_of_sides(Vec2{start}));
    return most_ + way;
  }

 private:
  [[nodiscard]] Vec2 shadow_of(const Vec3& p) const { return Vec2{glm::dot(u_, p), glm::dot(v_, p)} + offset_; }
  [[nodiscard]] double depth_of(const Vec3& p) const { return glm::dot(toward_, p) + depth_offset_; }

  /// Adds the point where an edge leaves the band. Depths within `touch_mm` below the band count as in it, so that
  /// rounding takes no corner of a face away.
  void add_crossing(const Vec3& from, double from_depth, const Vec3& to, double to_depth,
                    std::vector<Vec2>& points) const {
    const bool crosses =
        (from_depth > limit_ && to_depth < limit_ - touch_mm) || (to_depth > limit_ && from_depth < limit_ - touch_mm);
    if (crosses) points.push_back(shadow_of(from + (limit_ - from_depth) / (to_depth - from_depth) * (to - from)));
  }

  void add_corner(const Vec3& p, double depth, std::vector<Vec2>& points) const {
    if (depth >= limit_ - touch_mm) points.push_back(shadow_of(p));
  }

  [[nodiscard]] std::vector<Vec2> edge_points() const {
    const std::size_t n = piece_.corners.size();
    std::vector<Vec2> points;
    points.reserve(4 * n);
    Vec3 last_low{piece_.corners.back(), 0.0};
    Vec3 last_high{piece_.corners.back(), piece_.height};
    double last_low_depth = depth_of(last_low);
    double last_high_depth = depth_of(last_high);
    for (const Vec2& corner : piece_.corners) {
      const Vec3 low{corner, 0.0};
      const Vec3 high{corner, piece_.height};
      const double low_depth = depth_of(low);
      const double high_depth = depth_of(high);
      add_corner(low, low_depth, points);
      add_corner(high, high_depth, points);
      add_crossing(low, low_depth, high, high_depth, points);
      add_crossing(last_low, last_low_depth, low, low_depth, points);
      add_crossing(last_high, last_high_depth, high, high_depth, points);
      last_low = low;
      last_high = high;
      last_low_depth = low_depth;
      last_high_depth = high_depth;
    }
    return points;
  }

  void add_fold(const Vec3& from, const Vec3& to, std::vector<Outline>& lines) const {
    std::vector<Vec2> ends;
    const double from_depth = depth_of(from);
    const double to_depth = depth_of(to);
    add_corner(from, from_depth, ends);
    add_corner(to, to_depth, ends);
    add_crossing(from, from_depth, to, to_depth, ends);
    if (!ends.empty()) lines.push_back(std::move(ends));
  }

  /// Unit directions in the plane of the disc at which its rims are taken.
  [[nodiscard]] std::vector<Vec2> rim_directions_toward(const Vec2& aim) const {
    static const std::array<Vec2, rim_directions> rim = make_rim();
    const Vec2 first = slope_ > 0.0 ? Vec2{toward_} / slope_ : Vec2{1.0, 0.0};
    std::vector<Vec2> directions;
    directions.reserve(rim_directions + 5);
    for (const Vec2& direction : rim) directions.push_back(turned(first, direction));
    for (const double z : {0.0, piece_.height}) {
      const double base = depth_offset_ + toward_.z * z;
      const double cosine = (limit_ - base) / (slope_ * piece_.radius);
      if (!(std::abs(cosine) < 1.0)) continue;
      const double sine = std::sqrt((1.0 - cosine) * (1.0 + cosine));
      directions.push_back(turned(first, {cosine, sine}));
      directions.push_back(turned(first, {cosine, -sine}));
    }
    // The aim over the plane of the cap, or over the axis where the cap is seen edge on.
    const Vec2 q = aim - offset_;
    Vec3 over = u_ * q.x + v_ * q.y;
    if (toward_.z != 0.0) over += ((toward_.z > 0.0 ? piece_.height : 0.0) - over.z) / toward_.z * toward_;
    const double away = glm::length(Vec2{over});
    if (away > 0.0) directions.push_back(Vec2{over} / away);
    return directions;
  }

  [[nodiscard]] std::vector<Vec2> rim_points(const Vec2& aim) const {
    std::vector<Vec2> points;
    const std::vector<Vec2> directions = rim_directions_toward(aim);
    points.reserve(3 * directions.size());
    for (const Vec2& direction : directions) add_generator(direction, points);
    return points;
  }

  void add_generator(const Vec2& direction, std::vector<Vec2>& points) const {
    const Vec3 low{direction * piece_.radius, 0.0};
    const Vec3 high{direction * piece_.radius, piece_.height};
    const double low_depth = depth_of(low);
    const double high_depth = depth_of(high);
    add_corner(low, low_depth, points);
    add_corner(high, high_depth, points);
    add_crossing(low, low_depth, high, high_depth, points);
  }

  [[nodiscard]] double way_out_of_sides(const Vec2& start) const {
    double way = 0.0;
    for (std::size_t i = 0, n = piece_.corners.size(); i < n; ++i) {
      const Vec2& corner = piece_.corners[i];
      const Vec2 along = (i + 1 < n ? piece_.corners[i + 1] : piece_.corners[0]) - corner;
      const double rate = cross(Vec2{toward_}, along);
      if (rate <= 0.0) continue;  // the line enters there
      const double scaled = cross(corner - start, along) + lift_slack_mm * glm::length(along);
      if (scaled < way * rate) way = scaled / rate;
    }
    return way;
  }

  [[nodiscard]] double way_out_of_disc(const Vec2& start) const {
    const double radius = piece_.radius + lift_slack_mm;
    const double a = slope_ * slope_;
    const double b = glm::dot(start, Vec2{toward_});
    const double c = glm::dot(start, start) - radius * radius;
    const double root = std::sqrt(std::max(0.0, b * b - a * c));
    if (b > 0.0) return -c / (b + root);
    return a > 0.0 ? (root - b) / a : 0.0;
  }

  const Piece& piece_;
  Vec3 toward_;
  Vec3 u_;
  Vec3 v_;
  Vec2 offset_;
  double depth_offset_;
  double slope_;        // sine of the angle between the axis and the direction
  double most_ = 0.0;   // the extreme depth
  double limit_ = 0.0;  // the depth down to which the band reaches
};

Vec2 nearest_on_line(const Vec2& p, const Vec2& from, const Vec2& to) {
  const Vec2 along = to - from;
  const double square = glm::dot(along, along);
  return square > 0.0 ? from + std::clamp(glm::dot(p - from, along) / square, 0.0, 1.0) * along : from;
}

/// Whether p is of the shadow, or outside it by no more than `lift` can cope with.
bool near_enough(const Outline& shadow, const Vec2& p) {
  constexpr double slack = lift_slack_mm / 2.0;
  for (std::size_t i = 0, n = shadow.size(); i < n; ++i) {
    const Vec2 along = (i + 1 < n ? shadow[i + 1] : shadow[0]) - shadow[i];
    const double side = cross(along, p - shadow[i]);
    if (side < 0.0 && side * side > slack * slack * glm::dot(along, along)) return false;
  }
  return shadow.size() >= 3;
}

/// The point of the shadow that is nearest to p. What two shadows share may lie outside both by up to `touch_mm`.
Vec2 pulled_in(const Outline& shadow, const Vec2& p) {
  if (near_enough(shadow, p)) return p;
  Vec2 best = shadow.front();
  for (std::size_t i = 0; i < shadow.size(); ++i) {
    const Vec2 near = nearest_on_line(p, shadow[i], shadow[(i + 1) % shadow.size()]);
    if (glm::distance(p, near) < glm::distance(p, best)) best = near;
  }
  return best;
}

/// What two lines (or points) share within `touch_mm`.
Outline common_of_lines(const Outline& a, const Outline& b) {
  Outline shared;
  for (const Vec2& p : a) {
    if (glm::distance(p, nearest_on_line(p, b.front(), b.back())) <= touch_mm) shared.push_back(p);
  }
  for (const Vec2& p : b) {
    if (glm::distance(p, nearest_on_line(p, a.front(), a.back())) <= touch_mm) shared.push_back(p);
  }
  if (shared.empty() && a.size() == 2 && b.size() == 2 && meet(a[0], a[1], b[0], b[1])) {
    const Vec2 along = a[1] - a[0];
    const double t = cross(b[0] - a[0], b[1] - b[0]) / cross(along, b[1] - b[0]);
    shared.push_back(a[0] + t * along);
  }
  return shared;
}

void add_apart(const Outline& more, Outline& points) {
  for (const Vec2& p : more) {
    const auto same = [&p](const Vec2& other) { return glm::dot(p - other, p - other) <= touch_mm * touch_mm; };
    if (std::none_of(points.begin(), points.end(), same)) points.push_back(p);
  }
}

Outline common_of_shadows(const Outline& a, const Outline& b) {
  Outline shared;
  if (b.size() >= 3) {
    shared = clipped(a, b, touch_mm);
  } else if (a.size() >= 3) {
    shared = clipped(b, a, touch_mm);
  } else {
    shared = common_of_lines(a, b);
  }
  Outline corners;
  corners.reserve(shared.size());
  add_apart(shared, corners);
  return corners;
}

/// What of a line (or point) lies in the shared area, which may itself be a line or a point.
Outline within(const Outline& line, const Outline& shared) {
  return shared.size() >= 3 ? clipped(line, shared, touch_mm) : common_of_lines(line, shared);
}

/// Over an area in which both pieces are flat the corners say all. Where either is a roof, its ridges cross the area, and
/// the closest points lie on them: adds the ends of the ridges within the area and the points at which ridges cross.
void add_ridges(const Cast& a, const Vec2& aim_a, const Cast& b, const Vec2& aim_b, Outline& corners) {
  const auto flat = [&](const Vec2& p) { return a.flat_at(p) && b.flat_at(p); };
  if (corners.size() < 2 || std::all_of(corners.begin(), corners.end(), flat)) return;
  const Outline shared = corners;
  const std::vector<Outline> folds_a = a.folds(aim_a);
  const std::vector<Outline> folds_b = b.folds(aim_b);
  for (const std::vector<Outline>* folds : {&folds_a, &folds_b})
    for (const Outline& fold : *folds) add_apart(within(fold, shared), corners);
  for (const Outline& one : folds_a) {
    for (const Outline& other : folds_b) {
      if (one.size() < 2 || other.size() < 2) continue;
      for (const Vec2& p : common_of_lines(one, other)) add_apart(within({p}, shared), corners);
    }
  }
}

/// The points of `from`'s boundary and `to`'s boundary that are nearest to each other; for shadows that do not meet.
std::pair<Vec2, Vec2> nearest(const Outline& from, const Outline& to) {
  std::pair<Vec2, Vec2> best{from.front(), to.front()};
  const auto offer = [&best](const Vec2& p, const Vec2& q) {
    if (glm::distance(p, q) < glm::distance(best.first, best.second)) best = {p, q};
  };
  for (std::size_t i = 0; i < from.size(); ++i) {
    for (std::size_t j = 0; j < to.size(); ++j) {
      offer(from[i], nearest_on_line(from[i], to[j], to[(j + 1) % to.size()]));
      offer(nearest_on_line(to[j], from[i], from[(i + 1) % from.size()]), to[j]);
    }
  }
  return best;
}

}  // namespace

std::vector<Facing> facing(const Piece& a, const Pose& pose_a, const Piece& b, const Pose& pose_b,
                           const Vec3& direction, double band) {
  const Vec3 u = square_to(direction);
  const Vec3 v = glm::cross(direction, u);
  const Cast cast_a(a, pose_a, direction, u, v, band);
  const Cast cast_b(b, pose_b, -direction, u, v, band);
  Vec2 aim_a = cast_b.middle();
  Vec2 aim_b = cast_a.middle();
  Outline shadow_a = cast_a.shadow(aim_a);
  Outline shadow_b = cast_b.shadow(aim_b);
  if (shadow_a.empty() || shadow_b.empty()) return {};  // NaN
  Outline corners = common_of_shadows(shadow_a, shadow_b);
  if (corners.empty() && (cast_a.round() || cast_b.round())) {
    std::tie(aim_b, aim_a) = nearest(shadow_a, shadow_b);
    shadow_a = cast_a.shadow(aim_a);
    shadow_b = cast_b.shadow(aim_b);
    corners = common_of_shadows(shadow_a, shadow_b);
  }
  add_ridges(cast_a, aim_a, cast_b, aim_b, corners);
  std::vector<Facing> found;
  found.reserve(corners.size());
  for (const Vec2& corner : corners) {
    const Vec2 on_a = pulled_in(shadow_a, corner);
    const Vec2 on_b = pulled_in(shadow_b, corner);
    const double depth_a = cast_a.lift(on_a);
    const double depth_b = -cast_b.lift(on_b);
    found.push_back({u * on_a.x + v * on_a.y + direction * depth_a, u * on_b.x + v * on_b.y + direction * depth_b,
                     depth_b - depth_a});
  }
  return found;
}

}  // namespace baywright::geometry
