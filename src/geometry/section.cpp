// All in the solid's own coordinates, where it is its base area from z = 0 to z = height. A plane that is oblique to
// the axis meets the column over the base in an affine image of the base, of which the strip between the two caps is
// the section. A plane along the axis meets the base in a line, each stretch of which is a rectangle. So both are
// questions of cutting the base area by a line, which keeps outlines whole: no seam of the convex pieces shows.
#include "geometry/section.h"

#include "geometry/cut.h"
#include "geometry/limits.h"
#include "geometry/outline.h"
#include "geometry/section_areas.h"
#include "geometry/section_loops.h"
#include "geometry/section_mesh.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace baywright::geometry {
namespace {

/// Steps for an arc of `angle` radians on a curve of the greatest radius of curvature `radius`: a chord of angle t
/// strays from it by radius * t² / 8 at most.
int steps(double angle, double radius) {
  return std::max(1, static_cast<int>(std::ceil(angle / std::sqrt(8.0 * drawn_chord_mm / radius))));
}

Outline circle(double radius) {
  Outline ring;
  const int count = std::max(16, steps(2.0 * std::numbers::pi, radius));
  for (int i = 0; i < count; ++i) {
    const double angle = 2.0 * std::numbers::pi * i / count;
    ring.push_back(radius * Vec2{std::cos(angle), std::sin(angle)});
  }
  return ring;
}

/// The base of a solid, with the plane seen from its own coordinates: normal . p = offset.
class Sliced {
 public:
  Sliced(const Placed& placed, const View& view)
      : solid_(placed.solid), pose_(placed.pose), view_(view), normal_(placed.pose.inverse().direction(view.normal())) {
    offset_ = glm::dot(normal_, pose_.inverse().point(view.point));
    across_ = glm::length(Vec2{normal_});
    reach_ = solid_.diameter() / 2.0;
    for (const Vec2& p : solid_.outline()) reach_ = std::max(reach_, glm::length(p));
    w_ = across_ > 0.0 ? Vec2{normal_} / across_ : Vec2{1.0, 0.0};
  }

  /// To less than `touch_mm` over the whole solid.
  [[nodiscard]] bool square_to_axis() const { return across_ * reach_ <= touch_mm; }
  [[nodiscard]] bool along_axis() const { return std::abs(normal_.z) * solid_.height() <= touch_mm; }

  [[nodiscard]] std::vector<Region> section() const {
    if (square_to_axis()) return level_is_cut() ? std::vector<Region>{base()} : std::vector<Region>{};
    return along_axis() ? strips(stretches()) : slanted();
  }

  [[nodiscard]] std::vector<Region> shadow() const {
    if (square_to_axis()) return {base()};
    if (along_axis()) return strips({extent()});
    return round() ? std::vector<Region>{shadow_of_cylinder()} : shadow_of_pieces();
  }

 private:
  using Stretch = std::pair<double, double>;

  [[nodiscard]] bool round() const { return solid_.diameter() > 0.0; }
  [[nodiscard]] Vec2 t() const { return {-w_.y, w_.x}; }
  [[nodiscard]] Vec2 flat(const Vec3& p) const { return view_.flat(pose_.point(p)); }
  [[nodiscard]] Outline flat(const Outline& ring, double z) const {
    Outline seen;
    for (const Vec2& p : ring) seen.push_back(flat(Vec3{p, z}));
    return seen;
  }

  /// Behind the plane is where the viewer looks: a top cap in the plane is cut for a viewer above it.
  [[nodiscard]] bool level_is_cut() const {
    const double level = offset_ / normal_.z;
    if (normal_.z > 0.0) return level > touch_mm && level <= solid_.height() + touch_mm;
    return level >= -touch_mm && level < solid_.height() - touch_mm;
  }

  [[nodiscard]] Region base() const {
    Region region{flat(round() ? circle(solid_.diameter() / 2.0) : solid_.outline(), 0.0), {}};
    for (const Outline& hole : solid_.holes()) region.holes.push_back(flat(hole, 0.0));
    if (solid_.bore() > 0.0) region.holes.push_back(flat(circle(solid_.bore() / 2.0), 0.0));
    turn_to(region.outline, true);
    for (Outline& hole : region.holes) turn_to(hole, false);
    return region;
  }

  /// Where the base lies on the plane's trace, as places along t. The trace is taken a little behind the plane, so that
  /// a side in the plane counts when the solid is behind it: corners within `touch_mm` count as in front.
  [[nodiscard]] std::vector<Stretch> stretches() const {
    if (round()) return stretches_of_cylinder();
    const Cut made = cut(
        rings(),
        [this](const Vec3& p) {
          const double depth = across_ * (glm::dot(w_, Vec2{p}) - trace());
          return std::abs(depth) <= touch_mm ? 0.0 : depth;
        },
        -t());
    std::vector<Stretch> found;
    for (std::size_t i = made.out.size(); i-- > 0;) {  // the line runs along -t
      const double low = glm::dot(t(), Vec2{made.chains[made.in[i]].front()});
      const double high = glm::dot(t(), Vec2{made.chains[made.out[i]].back()});
      if (!(high - low > touch_mm)) continue;  // a corner that only touches
      if (!found.empty() && low - found.back().second <= touch_mm) {
        found.back().second = high;
      } else {
        found.push_back({low, high});
      }
    }
    return found;
  }

  [[nodiscard]] std::vector<Stretch> stretches_of_cylinder() const {
    const double away = std::abs(trace());
    const double radius = solid_.diameter() / 2.0;
    const double bore = solid_.bore() / 2.0;
    if (!(radius - away > touch_mm)) return {};
    const double outer = std::sqrt((radius - away) * (radius + away));
    if (!(bore - away > touch_mm)) return {{-outer, outer}};
    const double inner = std::sqrt((bore - away) * (bore + away));
    return {{-outer, -inner}, {inner, outer}};
  }

  [[nodiscard]] Stretch extent() const {
    if (round()) return {-solid_.diameter() / 2.0, solid_.diameter() / 2.0};
    Stretch all{glm::dot(t(), solid_.outline().front()), glm::dot(t(), solid_.outline().front())};
    for (const Vec2& p : solid_.outline()) {
      all.first = std::min(all.first, glm::dot(t(), p));
      all.second = std::max(all.second, glm::dot(t(), p));
    }
    return all;
  }

  [[nodiscard]] std::vector<Region> strips(const std::vector<Stretch>& stretches) const {
    std::vector<Region> regions;
    for (const auto& [low, high] : stretches) {
      const Vec2 from = w_ * trace() + t() * low;
      const Vec2 to = w_ * trace() + t() * high;
      const double top = solid_.height();
      Region strip{{flat(Vec3{from, 0.0}), flat(Vec3{to, 0.0}), flat(Vec3{to, top}), flat(Vec3{from, top})}, {}};
      turn_to(strip.outline, true);
      regions.push_back(std::move(strip));
    }
    return regions;
  }

  /// How far along w the plane stands at half height.
  [[nodiscard]] double trace() const { return w_at(solid_.height() / 2.0); }
  [[nodiscard]] double w_at(double z) const { return (offset_ - normal_.z * z) / across_; }

  [[nodiscard]] std::vector<Region> slanted() const {
    std::vector<Ring> image = rings();
    for (Ring& ring : image) {
      for (Vec3& p : ring) p.z = (offset_ - glm::dot(Vec2{normal_}, Vec2{p})) / normal_.z;
    }
    // z falls along w where normal.z > 0, so that the side z > 0 lies toward -w, on the left of +t.
    const Vec2 along = normal_.z > 0.0 ? t() : -t();
    image = cut(
                image, [](const Vec3& p) { return p.z; }, along)
                .closed();
    const double top = solid_.height();
    image = cut(
                image, [top](const Vec3& p) { return top - p.z; }, -along)
                .closed();
    return grouped(image);
  }

  static void shift_z(std::vector<Ring>& rings, double by) {
    for (Ring& ring : rings) {
      for (Vec3& p : ring) p.z += by;
    }
  }

  /// Outlines with their holes, in view coordinates.
  [[nodiscard]] std::vector<Region> grouped(const std::vector<Ring>& rings) const {
    std::vector<Outline> loops;
    for (const Ring& ring : rings) {
      Outline base;
      Outline seen;
      for (const Vec3& p : ring) {
        base.push_back(Vec2{p});
        seen.push_back(flat(p));
      }
      seen = without_repeats(seen);
      if (is_empty(seen, touch_mm)) continue;
      turn_to(seen, signed_area(base) > 0.0);
      loops.push_back(std::move(seen));
    }
    return nested(std::move(loops));
  }

  [[nodiscard]] static Ring ring_of(const Outline& outline) {
    Ring ring;
    for (const Vec2& p : outline) ring.emplace_back(p, 0.0);
    return ring;
  }

  [[nodiscard]] std::vector<Ring> rings() const {
    if (round()) {
      std::vector<Ring> found{slanted_circle(solid_.diameter() / 2.0)};
      if (solid_.bore() > 0.0) found.push_back(slanted_circle(solid_.bore() / 2.0));
      if (found.size() > 1) std::reverse(found.back().begin(), found.back().end());
      return found;
    }
    std::vector<Ring> found{ring_of(solid_.outline())};
    for (const Outline& hole : solid_.holes()) found.push_back(ring_of(hole));
    return found;
  }

  /// A circle whose image on the plane is an ellipse, long by radius / |normal.z| along w. It has corners where the
  /// caps cut it; between them it is drawn within the chord error, and outside them, where it is cut away, coarsely.
  [[nodiscard]] Ring slanted_circle(double radius) const {
    constexpr double quarter = std::numbers::pi / 2.0;
    std::vector<double> breaks{0.0, quarter, 2.0 * quarter, 3.0 * quarter, 4.0 * quarter};
    const auto [low, high] = std::minmax({w_at(0.0), w_at(solid_.height())});
    for (const double w : {low, high}) {
      if (!(std::abs(w) < radius)) continue;
      breaks.push_back(std::acos(w / radius));
      breaks.push_back(4.0 * quarter - breaks.back());
    }
    std::sort(breaks.begin(), breaks.end());
    Ring ring;
    for (std::size_t i = 0; i + 1 < breaks.size(); ++i) {
      const double span = breaks[i + 1] - breaks[i];
      const double middle = radius * std::cos(breaks[i] + span / 2.0);
      const bool between = middle >= low && middle <= high;
      const int count = between ? steps(span, bend(radius, breaks[i], breaks[i + 1])) : 2;
      for (int step = 0; step < count; ++step) {
        const double angle = breaks[i] + span * step / count;
        ring.emplace_back(radius * (std::cos(angle) * w_ + std::sin(angle) * t()), 0.0);
      }
    }
    return ring;
  }

  /// For p = (a cos, b sin) a chord over a small angle strays by angle² / 8 times |p' x p''| / |p'|, which is a b /
  /// |p'|. Within a quarter |p'| is least at one end.
  [[nodiscard]] double bend(double b, double from, double to) const {
    const double a = b / std::abs(normal_.z);
    const auto speed = [&](double angle) { return std::hypot(a * std::sin(angle), b * std::cos(angle)); };
    return a * b / std::min(speed(from), speed(to));
  }

  [[nodiscard]] Region shadow_of_cylinder() const {
    const Outline rim = circle(solid_.diameter() / 2.0);
    Outline points = flat(rim, 0.0);
    const Outline top = flat(rim, solid_.height());
    points.insert(points.end(), top.begin(), top.end());
    Region region{hull(std::move(points)), {}};
    if (solid_.bore() > 0.0) {  // what is seen through the bore
      const Outline bore = circle(solid_.bore() / 2.0);
      Outline through = common(flat(bore, 0.0), flat(bore, solid_.height()));
      std::reverse(through.begin(), through.end());
      if (!through.empty()) region.holes.push_back(std::move(through));
    }
    return region;
  }

  [[nodiscard]] std::vector<Region> shadow_of_pieces() const {
    std::vector<Outline> shadows;
    for (const Piece& piece : solid_.pieces()) {
      Outline points = flat(piece.corners, 0.0);
      const Outline top = flat(piece.corners, piece.height);
      points.insert(points.end(), top.begin(), top.end());
      shadows.push_back(hull(std::move(points)));
    }
    if (shadows.size() == 1) return {{std::move(shadows.front()), {}}};
    return joined(shadows);
  }

  const Solid& solid_;
  const Pose& pose_;
  const View& view_;
  Vec3 normal_;          // of the plane, toward the viewer
  double offset_ = 0.0;  // normal . point of the plane
  double across_ = 0.0;  // sine of the angle between the axis and the normal
  double reach_ = 0.0;   // no point of the base is farther from the axis
  Vec2 w_;               // unit, along the normal's part in the base; t is on its left
};

}  // namespace

double area(const Region& region) {
  double sum = signed_area(region.outline);
  for (const Outline& hole : region.holes) sum += signed_area(hole);
  return sum;
}

std::vector<Region> section(const Placed& placed, const View& view) {
  if (const Mesh* mesh = placed.solid.mesh()) return mesh_section(*mesh, placed.pose, view);
  return Sliced{placed, view}.section();
}

std::vector<std::pair<Vec2, Vec2>> cut_lines(const Placed& placed, const View& view) {
  const Mesh* mesh = placed.solid.mesh();
  return mesh != nullptr && !mesh->closed() ? mesh_cut_lines(*mesh, placed.pose, view)
                                            : std::vector<std::pair<Vec2, Vec2>>{};
}

std::vector<Region> shadow(const Placed& placed, const View& view) {
  if (const Mesh* mesh = placed.solid.mesh()) return mesh_shadow(*mesh, placed.pose, view);
  return Sliced{placed, view}.shadow();
}

Outline common(const Outline& a, const Outline& b) {
  Outline window = b;
  turn_to(window, true);
  Outline shared = without_repeats(clipped(a, window, 0.0));
  if (is_empty(shared, touch_mm)) return {};
  turn_to(shared, true);
  return shared;
}

}  // namespace baywright::geometry
