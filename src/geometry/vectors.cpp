#include "geometry/vectors.h"

#include <cmath>
#include <limits>
#include <numbers>

namespace baywright::geometry {

Mat3 rotation(const Vec3& axis, double degrees) {
  // The remainder to a quarter turn is exact, so a whole number of quarter turns has an exact sine and cosine.
  int quarters = 0;
  const double rest = std::remquo(degrees, 90.0, &quarters) * (std::numbers::pi / 180.0);
  double s = std::sin(rest);
  double c = std::cos(rest);
  for (int turn = quarters & 3; turn > 0; --turn) {
    const double sine = s;
    s = c;
    c = -sine;
  }
  // Rodrigues' formula. The diagonal is written so that it is exactly 1 on the axis itself.
  const Vec3 k = axis;
  const double v = 1.0 - c;
  Mat3 turn{0.0};
  for (int i = 0; i < 3; ++i) {
    const int j = (i + 1) % 3;
    const int l = (i + 2) % 3;
    turn[i][i] = k[i] * k[i] + c * (1.0 - k[i] * k[i]);
    turn[i][j] = k[i] * k[j] * v + k[l] * s;
    turn[j][i] = k[i] * k[j] * v - k[l] * s;
  }
  return turn;
}

double skew(const Mat3& turn) {
  const Mat3 off = glm::transpose(turn) * turn - Mat3{1.0};
  double most = 0.0;
  for (int i = 0; i < 3; ++i) most = std::max(most, std::abs(off[i].x) + std::abs(off[i].y) + std::abs(off[i].z));
  return most;
}

Vec3 square_to(const Vec3& axis) {
  // The coordinate axis that is least along `axis` leaves the longest cross product.
  const Vec3 size = glm::abs(axis);
  Vec3 other{0.0, 0.0, 1.0};
  if (size.x <= size.y && size.x <= size.z) {
    other = {1.0, 0.0, 0.0};
  } else if (size.y <= size.z) {
    other = {0.0, 1.0, 0.0};
  }
  return glm::normalize(glm::cross(axis, other));
}

Bounds Bounds::empty() {
  constexpr double infinity = std::numeric_limits<double>::infinity();
  return {Vec3{infinity}, Vec3{-infinity}};
}

void Bounds::add(const Vec3& p) {
  low = glm::min(low, p);
  high = glm::max(high, p);
}

void Bounds::add(const Bounds& other) {
  low = glm::min(low, other.low);
  high = glm::max(high, other.high);
}

double Bounds::distance(const Bounds& other) const {
  return glm::length(glm::max(Vec3{0.0}, glm::max(other.low - high, low - other.high)));
}

}  // namespace baywright::geometry
