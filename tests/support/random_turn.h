#pragma once
// Random figures and rotations that tests, oracles and benchmarks share.
#include "geometry/vectors.h"

#include <cmath>
#include <random>

namespace baywright::test {

using Random = std::mt19937_64;

inline double uniform(Random& random, double low, double high) {
  return std::uniform_real_distribution<double>(low, high)(random);
}

/// Uniform over all rotations: a normal quaternion (G. Marsaglia, Annals of Mathematical Statistics 43, 1972).
inline geometry::Mat3 any_turn(Random& random) {
  std::normal_distribution<double> normal;
  double w = normal(random);
  double x = normal(random);
  double y = normal(random);
  double z = normal(random);
  const double length = std::sqrt(w * w + x * x + y * y + z * z);
  w /= length;
  x /= length;
  y /= length;
  z /= length;
  return {geometry::Vec3{1 - 2 * (y * y + z * z), 2 * (x * y + w * z), 2 * (x * z - w * y)},
          geometry::Vec3{2 * (x * y - w * z), 1 - 2 * (x * x + z * z), 2 * (y * z + w * x)},
          geometry::Vec3{2 * (x * z + w * y), 2 * (y * z - w * x), 1 - 2 * (x * x + y * y)}};
}

}  // namespace baywright::test
