// The distance algorithm of Gilbert, Johnson and Keerthi (IEEE Journal of Robotics and Automation 4, 1988), with the
// stopping rule on the duality gap of van den Bergen (Collision Detection in Interactive 3D Environments, 2003, 4.3).
// Changed: the nearest point of a simplex is sought on the faces that the origin sees, each solved by itself, and on
// all of them when the simplex is too flat to tell. That costs a few operations more than Johnson's recursion and never
// loses the simplex; what rounding then leaves open is settled by the callers (polish, penetration).
#include "geometry/simplex.h"

#include <algorithm>
#include <limits>

namespace baywright::geometry {

struct Descent::Face {
  double square = std::numeric_limits<double>::infinity();  // of the distance
  Vec3 v{0.0};
  int count = 0;
  std::array<int, 3> at{};  // rising
  std::array<double, 3> weight{};
};

Descent::Descent(const Pair& pair, const Vec3& start)
    : pair_(pair),
      v_(start),
      upper_(std::numeric_limits<double>::infinity()),
      lower_(-std::numeric_limits<double>::infinity()),
      direction_(start) {}

Descent::Vertex Descent::support(const Vec3& toward) const {
  Vertex vertex;
  vertex.a = pair_.a.farthest(toward);
  vertex.b = pair_.b.farthest(-toward);
  vertex.x = pair_.apart + (vertex.b - vertex.a);
  return vertex;
}

bool Descent::known(const Vertex& vertex) const {
  for (int i = 0; i < count_; ++i) {
    if (simplex_[static_cast<std::size_t>(i)].x == vertex.x) return true;
  }
  return false;
}

double Descent::angle() const {
  // The true nearest point x* has |x*| >= lower and x* . v >= |x*|^2, so cos >= lower / upper.
  if (!(lower_ > 0.0) || !(upper_ > 0.0)) return 1.0;
  const double cosine = std::min(1.0, lower_ / upper_);
  return std::sqrt(std::max(0.0, 1.0 - cosine * cosine));
}

Vec3 Descent::on_a() const {
  Vec3 sum{0.0};
  for (int i = 0; i < count_; ++i)
    sum += simplex_[static_cast<std::size_t>(i)].a * simplex_[static_cast<std::size_t>(i)].weight;
  return sum;
}

Vec3 Descent::on_b() const {
  Vec3 sum{0.0};
  for (int i = 0; i < count_; ++i)
    sum += simplex_[static_cast<std::size_t>(i)].b * simplex_[static_cast<std::size_t>(i)].weight;
  return sum;
}

Descent::Face Descent::nearest_on(int i, int j) const {
  const Vec3& p = simplex_[static_cast<std::size_t>(i)].x;
  const Vec3& q = simplex_[static_cast<std::size_t>(j)].x;
  const Vec3 edge = q - p;
  const double square = glm::dot(edge, edge);
  const double t = square > 0.0 ? -glm::dot(p, edge) / square : 0.0;
  Face face;
  if (!(t > 0.0)) {
    face.count = 1;
    face.at = {i, 0, 0};
    face.weight = {1.0, 0.0, 0.0};
    face.v = p;
  } else if (!(t < 1.0)) {
    face.count = 1;
    face.at = {j, 0, 0};
    face.weight = {1.0, 0.0, 0.0};
    face.v = q;
  } else {
    face.count = 2;
    face.at = {i, j, 0};
    face.weight = {1.0 - t, t, 0.0};
    face.v = p + edge * t;
    face.v -= edge * (glm::dot(face.v, edge) / square);  // square to the edge to the last digit
  }
  face.square = glm::dot(face.v, face.v);
  return face;
}

Descent::Face Descent::nearest_on(int i, int j, int k) const {
  const Vec3& p = simplex_[static_cast<std::size_t>(i)].x;
  const Vec3& q = simplex_[static_cast<std::size_t>(j)].x;
  const Vec3& r = simplex_[static_cast<std::size_t>(k)].x;
  const Vec3 pq = q - p;
  const Vec3 pr = r - p;
  const Vec3 normal = glm::cross(pq, pr);
  const double square = glm::dot(normal, normal);
  const bool flat = !(square > 1e-28 * glm::dot(pq, pq) * glm::dot(pr, pr));
  bool see_qr = flat;
  bool see_rp = flat;
  bool see_pq = flat;
  Face face;
  if (!flat) {
    face.v = normal * (glm::dot(p, normal) / square);
    // Areas are taken about the foot of the origin, where they lose the fewest digits.
    const Vec3 p0 = p - face.v;
    const Vec3 q0 = q - face.v;
    const Vec3 r0 = r - face.v;
    const double of_p = glm::dot(normal, glm::cross(q0, r0));
    const double of_q = glm::dot(normal, glm::cross(r0, p0));
    const double of_r = glm::dot(normal, glm::cross(p0, q0));
    see_qr = !(of_p > 0.0);
    see_rp = !(of_q > 0.0);
    see_pq = !(of_r > 0.0);
    if (!see_qr && !see_rp && !see_pq) {
      const double sum = of_p + of_q + of_r;
      face.count = 3;
      face.at = {i, j, k};
      face.weight = {of_p / sum, of_q / sum, of_r / sum};
      face.square = glm::dot(face.v, face.v);
      return face;
    }
  }
  // The nearest point of a triangle lies on a side that the point sees.
  face = Face{};
  const auto take = [&face](const Face& other) {
    if (other.square < face.square) face = other;
  };
  if (see_qr) take(nearest_on(j, k));
  if (see_rp) take(nearest_on(i, k));
  if (see_pq) take(nearest_on(i, j));
  return face;
}

bool Descent::nearest_on_faces(Face& best) const {
  static constexpr std::array<std::array<int, 4>, 4> faces{{{0, 1, 2, 3}, {0, 1, 3, 2}, {0, 2, 3, 1}, {1, 2, 3, 0}}};
  bool outside = false;
  for (const auto& [i, j, k, rest] : faces) {
    const Vec3& p = simplex_[static_cast<std::size_t>(i)].x;
    const Vec3 pq = simplex_[static_cast<std::size_t>(j)].x - p;
    const Vec3 pr = simplex_[static_cast<std::size_t>(k)].x - p;
    const Vec3 ps = simplex_[static_cast<std::size_t>(rest)].x - p;
    const Vec3 normal = glm::cross(pq, pr);
    const double inner = glm::dot(normal, ps);
    const double origin = -glm::dot(normal, p);
    const double size = std::abs(normal.x) + std::abs(normal.y) + std::abs(normal.z);
    const double reach = std::abs(ps.x) + std::abs(ps.y) + std::abs(ps.z);
    const bool flat = !(std::abs(inner) > 1e-15 * size * reach);
    const bool sees = inner > 0.0 ? !(origin > 0.0) : !(origin < 0.0);
    if (!flat && !sees) continue;
    outside = true;
    const Face face = nearest_on(i, j, k);
    if (face.square < best.square) best = face;
  }
  return outside;
}

void Descent::keep(const Face& face) {
  // The indices rise, so vertices move down over those that go.
  for (int i = 0; i < face.count; ++i) {
    const auto to = static_cast<std::size_t>(i);
    if (face.at[to] != i) simplex_[to] = simplex_[static_cast<std::size_t>(face.at[to])];
    simplex_[to].weight = face.weight[to];
  }
  count_ = face.count;
  v_ = face.v;
}

bool Descent::reduce() {
  Face face;
  switch (count_) {
    case 1:
      face.count = 1;
      face.weight = {1.0, 0.0, 0.0};
      face.v = simplex_[0].x;
      break;
    case 2:
      face = nearest_on(0, 1);
      break;
    case 3:
      face = nearest_on(0, 1, 2);
      break;
    default:
      if (!nearest_on_faces(face)) return false;
  }
  if (face.count == 0) return true;  // only with figures that are not numbers: the caller sees no progress
  keep(face);
  return true;
}

Descent::State Descent::run(double tolerance, double angle, int steps) {
  for (int step = 0; step < steps; ++step) {
    const double length = glm::length(v_);
    if (!(length > 0.0)) return count_ > 0 ? State::inside : State::stalled;
    const Vertex vertex = support(v_);
    const double separation = glm::dot(v_, vertex.x) / length;
    if (separation > lower_) {
      lower_ = separation;
      direction_ = v_ / length;
    }
    if (upper_ - lower_ <= tolerance) return State::closed;
    if (lower_ > 0.0 && this->angle() <= angle) return State::near;
    if (known(vertex)) return State::stalled;
    const double before = upper_;
    simplex_[static_cast<std::size_t>(count_++)] = vertex;
    if (!reduce()) return State::inside;
    const double now = glm::length(v_);
    if (!(now < before)) return State::stalled;
    upper_ = now;
  }
  return State::stalled;
}

}  // namespace baywright::geometry
