// E. Larsen, S. Gottschalk, M. Lin, D. Manocha, "Fast Proximity Queries with Swept Sphere Volumes", UNC TR99-018: the
// nearest points of two triangles lie on two edges, or on a corner and a face; a pair of edges is the answer as soon as
// both third corners lie beyond the planes through its nearest points. Two edges: C. Ericson, "Real-Time Collision
// Detection" (2005), section 5.1.9, but solved by the vector square to both, whose rounding is that of the sine and not
// of its square: nearly parallel edges are then as good as any.
#include "geometry/triangle_gap.h"

#include <algorithm>
#include <limits>

namespace baywright::geometry {

namespace {

struct EdgesNear {
  Vec3 on_a;
  Vec3 on_b;
  Vec3 normal;  // zero unless both points lie within their edges
};

EdgesNear nearest_of_edges(const Vec3& p, const Vec3& e, const Vec3& q, const Vec3& f) {
  const Vec3 link = q - p;
  const Vec3 n = glm::cross(e, f);
  const double nn = glm::dot(n, n);
  const double ff = glm::dot(f, f);
  double s = 0.0;
  if (nn > 0.0) s = std::clamp(glm::dot(glm::cross(link, f), n) / nn, 0.0, 1.0);
  double t = glm::dot(f, e * s - link) / ff;
  if (!(t >= 0.0 && t <= 1.0)) {
    t = t > 1.0 ? 1.0 : 0.0;
    s = std::clamp(glm::dot(e, link + f * t) / glm::dot(e, e), 0.0, 1.0);
  }
  const bool within = nn > 0.0 && s > 0.0 && s < 1.0 && t > 0.0 && t < 1.0;
  return {p + e * s, q + f * t, within ? n : Vec3{0.0}};
}

/// Whether the foot of p on the plane lies within the triangle.
bool over(const Corners& t, const Vec3& n, const Vec3& p) {
  for (std::size_t i = 0; i < 3; ++i) {
    if (glm::dot(glm::cross(t[(i + 1) % 3] - t[i], p - t[i]), n) < 0.0) return false;
  }
  return true;
}

struct FaceNear {
  bool apart = false;  // the whole other triangle lies on one side
  bool found = false;  // and its nearest corner over the face
  Vec3 foot;
  Vec3 corner;
  Vec3 normal;
};

FaceNear corner_over(const Corners& face, const Corners& other) {
  FaceNear near;
  const Vec3 n = glm::cross(face[1] - face[0], face[2] - face[0]);
  const double nn = glm::dot(n, n);
  if (!(nn > 0.0)) return near;
  const std::array<double, 3> high{glm::dot(other[0] - face[0], n), glm::dot(other[1] - face[0], n),
                                   glm::dot(other[2] - face[0], n)};
  std::size_t least = 0;
  if (high[0] > 0.0 && high[1] > 0.0 && high[2] > 0.0) {
    least = high[1] < high[0] ? 1 : 0;
    if (high[2] < high[least]) least = 2;
  } else if (high[0] < 0.0 && high[1] < 0.0 && high[2] < 0.0) {
    least = high[1] > high[0] ? 1 : 0;
    if (high[2] > high[least]) least = 2;
  } else {
    return near;
  }
  near.apart = true;
  if (!over(face, n, other[least])) return near;
  near.found = true;
  near.corner = other[least];
  near.foot = other[least] - n * (high[least] / nn);
  near.normal = n;
  return near;
}

/// Where an edge of `a` passes through `b`.
bool passes(const Corners& a, const Corners& b, Vec3& at) {
  const Vec3 n = glm::cross(b[1] - b[0], b[2] - b[0]);
  for (std::size_t i = 0; i < 3; ++i) {
    const Vec3& p = a[i];
    const Vec3& q = a[(i + 1) % 3];
    const double from = glm::dot(p - b[0], n);
    const double to = glm::dot(q - b[0], n);
    if (from * to > 0.0 || from == to) continue;
    const Vec3 x = p + (q - p) * (from / (from - to));
    if (!over(b, n, x)) continue;
    at = x;
    return true;
  }
  return false;
}

}  // namespace

TrianglesNear nearest(const Corners& a, const Corners& b) {
  const Corners edges_a{a[1] - a[0], a[2] - a[1], a[0] - a[2]};
  const Corners edges_b{b[1] - b[0], b[2] - b[1], b[0] - b[2]};
  TrianglesNear best;
  best.square = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < 3; ++i) {
    for (std::size_t j = 0; j < 3; ++j) {
      const EdgesNear near = nearest_of_edges(a[i], edges_a[i], b[j], edges_b[j]);
      const Vec3 link = near.on_b - near.on_a;
      const double square = glm::dot(link, link);
      if (!(square < best.square)) continue;
      best = {square, near.on_a, near.on_b, near.normal};
      const double beyond_a = glm::dot(a[(i + 2) % 3] - near.on_a, link);
      const double beyond_b = glm::dot(b[(j + 2) % 3] - near.on_b, link);
      if (beyond_a <= 0.0 && beyond_b >= 0.0) return best;
    }
  }
  const FaceNear over_a = corner_over(a, b);
  if (over_a.found) {
    const Vec3 link = over_a.corner - over_a.foot;
    return {glm::dot(link, link), over_a.foot, over_a.corner, over_a.normal};
  }
  const FaceNear over_b = corner_over(b, a);
  if (over_b.found) {
    const Vec3 link = over_b.corner - over_b.foot;
    return {glm::dot(link, link), over_b.corner, over_b.foot, over_b.normal};
  }
  if (over_a.apart || over_b.apart) return best;
  Vec3 at{0.0};
  if (passes(a, b, at) || passes(b, a, at)) best = {0.0, at, at, Vec3{0.0}};
  return best;
}

Vec3 nearest_on(const Corners& t, const Vec3& p) {
  const Vec3 n = glm::cross(t[1] - t[0], t[2] - t[0]);
  const double nn = glm::dot(n, n);
  if (nn > 0.0 && over(t, n, p)) return p - n * (glm::dot(p - t[0], n) / nn);
  Vec3 best = t[0];
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < 3; ++i) {
    const Vec3 e = t[(i + 1) % 3] - t[i];
    const Vec3 q = t[i] + e * std::clamp(glm::dot(p - t[i], e) / glm::dot(e, e), 0.0, 1.0);
    if (glm::dot(p - q, p - q) >= least) continue;
    least = glm::dot(p - q, p - q);
    best = q;
  }
  return best;
}

}  // namespace baywright::geometry
