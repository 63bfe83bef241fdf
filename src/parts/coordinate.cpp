#include "parts/coordinate.h"

namespace baywright::parts {

Coordinate Coordinate::of(int dimension, double factor) {
  Coordinate made;
  made.shares.push_back({dimension, factor});
  return made;
}

double Coordinate::at(std::span<const double> values) const {
  double sum = base;
  for (const Share& share : shares) sum += share.factor * values[static_cast<std::size_t>(share.dimension)];
  return sum;
}

double Coordinate::slope(int dimension) const {
  double sum = 0.0;
  for (const Share& share : shares)
    if (share.dimension == dimension) sum += share.factor;
  return sum;
}

Coordinate Coordinate::shifted(int offset) const {
  Coordinate moved = *this;
  for (Share& share : moved.shares) share.dimension += offset;
  return moved;
}

Coordinate& Coordinate::operator+=(const Coordinate& other) {
  base += other.base;
  for (const Share& more : other.shares) {
    bool merged = false;
    for (Share& share : shares)
      if (share.dimension == more.dimension) {
        share.factor += more.factor;
        merged = true;
        break;
      }
    if (!merged) shares.push_back(more);
  }
  std::erase_if(shares, [](const Share& share) { return share.factor == 0.0; });
  return *this;
}

Coordinate operator+(Coordinate a, const Coordinate& b) {
  return a += b;
}
Coordinate operator-(Coordinate a, const Coordinate& b) {
  return a += -1.0 * b;
}
Coordinate operator*(double factor, Coordinate a) {
  a.base *= factor;
  for (Share& share : a.shares) share.factor *= factor;
  return a;
}

}  // namespace baywright::parts
