// Seen along an edge, a rim is an ellipse and the edge is a point, so that the question is for the normals of an
// ellipse through a point. With semi-axes a >= b, the point (x, y), x >= 0, d = (cos t, sin t), t in 0..90 degrees, and
// T the tangent of the eccentric angle (tan t = a/b T), the separation x cos t + y sin t - sqrt(a^2 cos^2 t + b^2 sin^2
// t) is stationary where
//     F(T) = a x T - b y - (a^2 - b^2) T / sqrt(1 + T^2) = 0,
// and has a maximum there if F rises. F is convex for T >= 0 and rises in the end, so its last zero is the one maximum
// of this quadrant, and Newton from beyond it comes down to it without a miss. With y >= 0 it always exists; with y < 0
// it exists if the point lies within the evolute, that is if F < 0 at T^3 = b |y| / (a x). The mirrored quadrants x < 0
// hold no maximum. So each half of the ellipse has at most one.
#include "geometry/rim.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace baywright::geometry {

namespace {

struct Ellipse {
  double a;
  double b;
  double x;  // the point, x >= 0
  double y;

  struct Slope {
    double value;  // F
    double rise;   // its derivative
  };
  [[nodiscard]] double focal() const { return (a - b) * (a + b); }
  [[nodiscard]] Slope at(double tan) const {
    const double cosine = 1.0 / std::sqrt(1.0 + tan * tan);
    return {a * x * tan - b * y - focal() * tan * cosine, a * x - focal() * cosine * cosine * cosine};
  }
};

/// T of the maximum, infinity for the end of the short axis.
std::optional<double> maximum(const Ellipse& ellipse) {
  const auto& [a, b, x, y] = ellipse;
  if (!(x > 0.0)) {
    // On the short axis its end is a maximum while the point is nearer than the centre of curvature.
    if (y < 0.0 && !(-y * b < ellipse.focal())) return std::nullopt;
    return std::numeric_limits<double>::infinity();
  }
  if (y < 0.0 && !(ellipse.at(std::cbrt(-b * y / (a * x))).value < 0.0)) return std::nullopt;
  // F >= a x T - b y - (a^2 - b^2) min(1, T), so F >= 0 from here on.
  double tan = (std::max(0.0, b * y) + ellipse.focal()) / (a * x);
  if (a * x > ellipse.focal()) tan = std::min(tan, std::max(0.0, b * y) / (a * x - ellipse.focal()));
  for (int i = 0; i < 100; ++i) {
    const Ellipse::Slope slope = ellipse.at(tan);
    const double next = tan - slope.value / slope.rise;
    if (!(next < tan && next > 0.0)) break;  // arrived: rounding sends it back
    const bool settled = tan - next <= 1e-16 * tan;
    tan = next;
    if (settled) break;
  }
  return tan;
}

/// The pull of one rim: r times the unit of d across the axis, and the curvature of its support function there.
struct Pull {
  Vec3 point;
  Vec3 tangent;
  double curvature;
};

Pull pull(const Rim& rim, const Vec3& d) {
  const Vec3 across = d - rim.axis * glm::dot(d, rim.axis);
  const double length = std::max(glm::length(across), 1e-12);
  return {across * (rim.radius / length), glm::cross(rim.axis, across) / length, rim.radius / length};
}

Vec3 uphill(const Rim& a, const Rim& b, const Vec3& start) {
  const Vec3 offset = b.centre - a.centre;
  const auto separation = [&](const Vec3& d) {
    const auto across = [&](const Rim& rim) { return rim.radius * glm::length(d - rim.axis * glm::dot(d, rim.axis)); };
    return glm::dot(offset, d) - across(a) - across(b);
  };
  Vec3 d = start;
  double value = separation(d);
  double step = 0.1;  // of the uphill walk, radians; Newton sets it aside near the top
  for (int i = 0; i < 30; ++i) {
    const Pull of_a = pull(a, d);
    const Pull of_b = pull(b, d);
    const Vec3 right = square_to(d);
    const Vec3 up = glm::cross(d, right);
    const Vec3 slope = offset - of_a.point - of_b.point;
    const double p = glm::dot(slope, right);
    const double q = glm::dot(slope, up);
    const double level = glm::dot(slope, d);
    const auto bend = [&](const Vec3& s, const Vec3& t) {
      return -of_a.curvature * glm::dot(of_a.tangent, s) * glm::dot(of_a.tangent, t) -
             of_b.curvature * glm::dot(of_b.tangent, s) * glm::dot(of_b.tangent, t);
    };
    const double pp = bend(right, right) - level;
    const double qq = bend(up, up) - level;
    const double pq = bend(right, up);
    const double determinant = pp * qq - pq * pq;
    Vec3 next = d;
    if (pp < 0.0 && determinant > 0.0) {
      next = glm::normalize(d + right * ((pq * q - qq * p) / determinant) + up * ((pq * p - pp * q) / determinant));
      const double reached = separation(next);
      const bool settled = glm::length(next - d) <= 1e-9;  // the next step would be its square
      if (reached >= value - 1e-14 * (std::abs(value) + a.radius + b.radius)) {
        d = next;
        value = std::max(value, reached);
        if (settled) return d;
        continue;
      }
      if (settled) return d;
    }
    const double size = std::hypot(p, q);
    if (!(size > 0.0)) return d;
    for (; step > 1e-9; step *= 0.5) {
      next = glm::normalize(d + (right * p + up * q) * (step / size));
      if (separation(next) > value) break;
    }
    if (!(step > 1e-9)) return d;
    d = next;
    value = separation(d);
    step *= 2.0;
  }
  return d;
}

/// Newton in the angles on the two circles for points whose link is square to both. Near a rim's own axis the direction
/// says nothing about where on the rim its point lies; there this converges and the walk over directions does not.
Vec3 linked(const Rim& a, const Rim& b, const Vec3& from_a, const Vec3& from_b, const Vec3& near) {
  const Vec3 a1 = from_a * a.radius;
  const Vec3 a2 = glm::cross(a.axis, a1);
  const Vec3 b1 = from_b * b.radius;
  const Vec3 b2 = glm::cross(b.axis, b1);
  double s = 0.0;
  double t = 0.0;
  Vec3 ta = a2;
  Vec3 tb = b2;
  for (int i = 0; i < 12; ++i) {
    const Vec3 out_a = a1 * std::cos(s) + a2 * std::sin(s);
    const Vec3 out_b = b1 * std::cos(t) + b2 * std::sin(t);
    ta = glm::cross(a.axis, out_a);
    tb = glm::cross(b.axis, out_b);
    const Vec3 link = (b.centre - a.centre) + out_b - out_a;
    const double fa = glm::dot(link, ta);
    const double fb = glm::dot(link, tb);
    const double aa = -glm::dot(link, out_a) - glm::dot(ta, ta);
    const double bb = -glm::dot(link, out_b) + glm::dot(tb, tb);
    const double ab = glm::dot(ta, tb);
    const double determinant = aa * bb + ab * ab;
    if (!(std::abs(determinant) > 0.0)) break;
    const double ds = (fa * bb - ab * fb) / determinant;
    const double dt = (aa * fb + ab * fa) / determinant;
    s -= std::clamp(ds, -0.5, 0.5);
    t -= std::clamp(dt, -0.5, 0.5);
    if (std::abs(ds) + std::abs(dt) <= 1e-9) break;  // the next step would be its square
  }
  Vec3 d = glm::cross(ta, tb);
  const double length = glm::length(d);
  if (!(length > 1e-14 * a.radius * b.radius)) return near;
  d = d / (glm::dot(d, near) < 0.0 ? -length : length);
  const Vec3 unit = ta / a.radius;
  return glm::normalize(d - unit * glm::dot(d, unit));
}

Vec3 unit_across(const Vec3& x, const Vec3& axis) {
  const Vec3 across = x - axis * glm::dot(x, axis);
  const double length = glm::length(across);
  return length > 0.0 ? across / length : square_to(axis);
}

}  // namespace

std::optional<Vec3> rim_against_edge(const Rim& rim, const Vec3& point, const Vec3& edge) {
  const double along = glm::dot(edge, rim.axis);
  Vec3 minor = rim.axis - edge * along;
  const double length = glm::length(minor);
  if (length > 1e-14) {
    minor = minor / length;
    minor = glm::normalize(minor - edge * glm::dot(minor, edge));
  } else {
    minor = square_to(edge);  // seen along its axis the rim is a circle
  }
  Vec3 major = glm::cross(edge, minor);
  const Vec3 offset = point - rim.centre;
  double x = glm::dot(offset, major);
  if (x < 0.0) {
    x = -x;
    major = -major;
  }
  const double flat = std::min(1.0, std::abs(along));
  if (!(flat > 0.0)) {  // seen edge-on the rim is a segment
    const double y = glm::dot(offset, minor);
    if (y < 0.0) return std::nullopt;
    return x > rim.radius ? glm::normalize(major * (x - rim.radius) + minor * y) : minor;
  }
  const auto tan = maximum({rim.radius, rim.radius * flat, x, glm::dot(offset, minor)});
  if (!tan) return std::nullopt;
  // d ~ (b cos e, a sin e)
  const Vec3 d = glm::normalize(*tan < 1.0 ? major * flat + minor * *tan : major * (flat / *tan) + minor);
  return glm::normalize(d - edge * glm::dot(d, edge));
}

std::array<Vec3, 4> rim_against_rim(const Rim& a, const Rim& b, const Vec3& near) {
  std::array<Vec3, 4> found{near, near, near, near};
  found[0] = uphill(a, b, near);
  found[1] = linked(a, b, unit_across(near, a.axis), unit_across(-near, b.axis), near);
  if (std::abs(glm::dot(near, a.axis)) < 0.9 || std::abs(glm::dot(near, b.axis)) < 0.9) return found;
  // Seen along their axes the circles cross at two points.
  const Vec3 offset = (b.centre - a.centre) - a.axis * glm::dot(b.centre - a.centre, a.axis);
  const double distance = glm::length(offset);
  if (!(distance > 0.0)) return found;
  const Vec3 along = offset / distance;
  const double foot = 0.5 * (distance + (a.radius - b.radius) * (a.radius + b.radius) / distance);
  const double square = (a.radius - foot) * (a.radius + foot);
  if (!(square > 0.0)) return found;
  const Vec3 up = glm::cross(a.axis, along) * std::sqrt(square);
  const Vec3 on_a = along * foot + up;
  found[2] = linked(a, b, unit_across(on_a, a.axis), unit_across(on_a - offset, b.axis), near);
  const Vec3 other = along * foot - up;
  found[3] = linked(a, b, unit_across(other, a.axis), unit_across(other - offset, b.axis), near);
  return found;
}

}  // namespace baywright::geometry
