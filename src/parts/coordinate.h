#pragma once
// A coordinate of a part that depends on dimensions: base + sum of factor * (value of the dimension), mm.
#include <array>
#include <span>
#include <vector>

namespace baywright::parts {

struct Share {
  int dimension;  // index into the list of dimensions that goes with the coordinate
  double factor;
};

struct Coordinate {
  double base = 0.0;  // mm
  std::vector<Share> shares;

  Coordinate() = default;
  Coordinate(double fixed) : base(fixed) {}  // NOLINT: a plain figure is a coordinate that nothing moves
  [[nodiscard]] static Coordinate of(int dimension, double factor = 1.0);

  /// `values[i]` is the value of dimension i, mm.
  [[nodiscard]] double at(std::span<const double> values) const;
  /// d(coordinate)/d(dimension).
  [[nodiscard]] double slope(int dimension) const;
  /// The same coordinate where dimension i of its list has become i + offset of a longer one.
  [[nodiscard]] Coordinate shifted(int offset) const;

  Coordinate& operator+=(const Coordinate& other);
};

[[nodiscard]] Coordinate operator+(Coordinate a, const Coordinate& b);
[[nodiscard]] Coordinate operator-(Coordinate a, const Coordinate& b);
[[nodiscard]] Coordinate operator*(double factor, Coordinate a);

using Coordinates = std::array<Coordinate, 3>;  // x, y, z

}  // namespace baywright::parts
