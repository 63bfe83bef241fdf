#include "render/overlap_region.h"

#include "geometry/limits.h"
#include "geometry/overlap.h"
#include "geometry/triangulation.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <numbers>
#include <utility>

namespace baywright::render {

using geometry::Outline;
using geometry::Placed;
using geometry::Region;
using geometry::Solid;
using geometry::Vec2;
using geometry::Vec3;
using geometry::View;

namespace {

/// A flat face: its view's normal points out of the solid.
struct Face {
  View view;
  Region region;
};

Outline circle(double radius) {
  const double step = std::sqrt(8.0 * geometry::drawn_chord_mm / radius);
  const int count = std::max(16, static_cast<int>(std::ceil(2.0 * std::numbers::pi / step)));
  Outline out;
  for (int i = 0; i < count; ++i) {
    const double angle = 2.0 * std::numbers::pi * i / count;
    out.emplace_back(radius * std::cos(angle), radius * std::sin(angle));
  }
  return out;
}

/// With flat sides only.
Placed faceted(const Placed& placed) {
  if (!(placed.solid.diameter() > 0.0)) return placed;
  std::vector<Outline> holes;
  if (placed.solid.bore() > 0.0) holes.push_back(circle(0.5 * placed.solid.bore()));
  auto made = Solid::prism(circle(0.5 * placed.solid.diameter()), std::move(holes), placed.solid.height());
  if (auto* solid = std::get_if<Solid>(&made)) return {std::move(*solid), placed.pose};
  return placed;
}

Outline swapped(Outline outline) {
  for (Vec2& p : outline) p = {p.y, p.x};
  std::reverse(outline.begin(), outline.end());
  return outline;
}

Region swapped(Region region) {
  region.outline = swapped(std::move(region.outline));
  for (Outline& hole : region.holes) hole = swapped(std::move(hole));
  return region;
}

/// The same plane seen from its other side.
View behind(const View& view) {
  return {view.point, view.up, view.right};
}

void add_sides(const Placed& placed, const Outline& ring, std::vector<Face>& out) {
  const double height = placed.solid.height();
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Vec2& p = ring[i];
    const Vec2& q = ring[(i + 1) % ring.size()];
    const double length = glm::distance(p, q);
    if (!(length > 0.0)) continue;
    const View view{placed.pose.point({p, 0.0}), placed.pose.direction({(q - p) / length, 0.0}), placed.pose.turn[2]};
    out.push_back({view, {{{0.0, 0.0}, {length, 0.0}, {length, height}, {0.0, height}}, {}}});
  }
}

void add_triangles(const Placed& placed, const geometry::Mesh& mesh, std::vector<Face>& out) {
  for (const auto& triangle : mesh.triangles()) {
    std::array<Vec3, 3> at;
    for (std::size_t i = 0; i < 3; ++i)
      at[i] = placed.pose.point(mesh.vertices()[static_cast<std::size_t>(triangle[i])]);
    const Vec3 right = glm::normalize(at[1] - at[0]);
    const Vec3 across = at[2] - at[0];
    const Vec3 up = glm::normalize(across - right * glm::dot(across, right));
    const View view{at[0], right, up};
    out.push_back({view, {{view.flat(at[0]), view.flat(at[1]), view.flat(at[2])}, {}}});
  }
}

std::vector<Face> faces_of(const Placed& placed) {
  std::vector<Face> out;
  if (const geometry::Mesh* mesh = placed.solid.mesh()) {
    add_triangles(placed, *mesh, out);
    return out;
  }
  const auto& pose = placed.pose;
  const Region base{placed.solid.outline(), placed.solid.holes()};
  out.push_back({{pose.point({0.0, 0.0, placed.solid.height()}), pose.turn[0], pose.turn[1]}, base});
  out.push_back({behind({pose.shift, pose.turn[0], pose.turn[1]}), swapped(base)});
  add_sides(placed, base.outline, out);
  for (const Outline& hole : base.holes) add_sides(placed, hole, out);
  return out;
}

geometry::Bounds bounds_of(const Face& face) {
  geometry::Bounds out = geometry::Bounds::empty();
  for (const Vec2& p : face.region.outline) out.add(face.view.point + face.view.right * p.x + face.view.up * p.y);
  return out;
}

/// What of an area in the view's plane lies in the solid. A face of the solid in that plane counts where the solid is
/// behind it (see `geometry::section`).
std::vector<Region> within(const Region& region, const Placed& solid, const View& view) {
  constexpr double half = 0.5;  // mm: the area as a plate that the plane cuts in its middle
  auto made = Solid::prism(region.outline, region.holes, 2.0 * half);
  const auto* plate = std::get_if<Solid>(&made);
  if (plate == nullptr) return {};
  const Placed placed{*plate, {{view.right, view.up, view.normal()}, view.point - view.normal() * half}};
  return geometry::overlap(placed, solid, view);
}

double total(const std::vector<Region>& regions) {
  double out = 0.0;
  for (const Region& region : regions) out += geometry::area(region);
  return out;
}

/// As `within`, but without the faces of the solid that lie in the plane, from whichever side.
std::vector<Region> strictly_within(const Region& region, const Placed& solid, const View& view) {
  std::vector<Region> first = within(region, solid, view);
  if (first.empty()) return first;
  const std::vector<Region> second = within(swapped(region), solid, behind(view));
  if (std::abs(total(first) - total(second)) <= geometry::thinnest_mm) return first;
  std::vector<Region> out;
  for (const Region& each : first)
    for (Region& both : within(swapped(each), solid, behind(view))) out.push_back(swapped(std::move(both)));
  return out;
}

/// The region's surface as it grows face by face.
class Hull {
 public:
  explicit Hull(const Vec3& origin) : origin_(origin) {}

  void add(const View& view, const std::vector<Region>& regions) {
    const Vec3 n = view.normal();
    const std::array<float, 3> normal{static_cast<float>(n.x), static_cast<float>(n.y), static_cast<float>(n.z)};
    for (const Region& region : regions) {
      volume_ += geometry::area(region) * glm::dot(view.point - origin_, n) / 3.0;
      for (const Vec2& p : geometry::triangles(region.outline, region.holes)) {
        mesh_.at.push_back(as_floats(at(view, p)));
        mesh_.normal.push_back(normal);
      }
      add_ring(view, region.outline);
      for (const Outline& hole : region.holes) add_ring(view, hole);
    }
  }

  [[nodiscard]] SharedRoom taken() {
    if (mesh_.at.empty() || !(volume_ > 0.0)) return {};
    Strokes edges;
    constexpr double sharp = 0.866;  // cosine of 30 degrees
    for (const auto& [key, edge] : edges_) {
      if (edge.count == 2 && glm::dot(edge.first, edge.second) > sharp) continue;
      edges.at.push_back(as_floats(edge.from));
      edges.at.push_back(as_floats(edge.to));
    }
    return {std::make_shared<const Mesh>(std::move(mesh_)), std::make_shared<const Strokes>(std::move(edges)), volume_};
  }

 private:
  using Key = std::array<std::int64_t, 6>;
  struct Edge {
    Vec3 from;
    Vec3 to;
    Vec3 first;  // normals of its faces
    Vec3 second{0.0};
    int count = 1;
  };

  static Vec3 at(const View& view, const Vec2& p) { return view.point + view.right * p.x + view.up * p.y; }
  static std::array<float, 3> as_floats(const Vec3& p) {
    return {static_cast<float>(p.x), static_cast<float>(p.y), static_cast<float>(p.z)};
  }
  static std::array<std::int64_t, 3> rounded(const Vec3& p) {
    constexpr double grid = 1e4;  // a mm: far above the rounding of two views, far below what is seen
    return {std::llround(p.x * grid), std::llround(p.y * grid), std::llround(p.z * grid)};
  }

  void add_ring(const View& view, const Outline& ring) {
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const Vec3 p = at(view, ring[i]);
      const Vec3 q = at(view, ring[(i + 1) % ring.size()]);
      auto a = rounded(p);
      auto b = rounded(q);
      if (a == b) continue;
      if (b < a) std::swap(a, b);
      const auto [found, fresh] =
          edges_.try_emplace(Key{a[0], a[1], a[2], b[0], b[1], b[2]}, Edge{p, q, view.normal()});
      if (fresh) continue;
      found->second.second = view.normal();
      ++found->second.count;
    }
  }

  Vec3 origin_;
  Mesh mesh_;
  std::map<Key, Edge> edges_;
  double volume_ = 0.0;
};

bool has_inside(const Placed& placed) {
  return placed.solid.mesh() == nullptr || placed.solid.mesh()->closed();
}

}  // namespace

SharedRoom shared_room(const Placed& first, const Placed& second) {
  if (!has_inside(first) || !has_inside(second)) return {};
  const Placed a = faceted(first);
  const Placed b = faceted(second);
  const geometry::Bounds box_a = geometry::bounds(a);
  const geometry::Bounds box_b = geometry::bounds(b);
  if (box_a.distance(box_b) > 0.0) return {};
  const auto near = [](const Placed& placed, const geometry::Bounds& other) {
    std::vector<Face> faces = faces_of(placed);
    std::erase_if(faces, [&](const Face& face) { return bounds_of(face).distance(other) > 0.0; });
    return faces;
  };
  const std::vector<Face> faces_a = near(a, box_b);
  const std::vector<Face> faces_b = near(b, box_a);
  if (faces_a.size() + faces_b.size() > most_faces) return {};
  Hull hull(0.5 * (glm::max(box_a.low, box_b.low) + glm::min(box_a.high, box_b.high)));
  for (const Face& face : faces_a) hull.add(face.view, within(face.region, b, face.view));
  for (const Face& face : faces_b) hull.add(face.view, strictly_within(face.region, a, face.view));
  return hull.taken();
}

}  // namespace baywright::render
