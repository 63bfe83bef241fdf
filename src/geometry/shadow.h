#pragma once
// Flat convex shapes on a plane and where two of them are nearest. Internal.
#include "geometry/vectors.h"

#include <array>
#include <vector>

namespace baywright::geometry {

/// Points in order around a convex polygon. Few of them live on the stack: a gap of two boxes allocates nothing.
class Corners {
 public:
  void add(const Vec2& p) {
    if (count_ < few_.size()) {
      few_[count_] = p;
    } else {
      if (many_.empty()) many_.assign(few_.begin(), few_.end());
      many_.push_back(p);
    }
    ++count_;
  }
  [[nodiscard]] std::size_t size() const { return count_; }
  [[nodiscard]] const Vec2& operator[](std::size_t i) const { return count_ <= few_.size() ? few_[i] : many_[i]; }
  [[nodiscard]] const Vec2& after(std::size_t i) const { return (*this)[i + 1 < count_ ? i + 1 : 0]; }

 private:
  std::size_t count_ = 0;
  std::array<Vec2, 12> few_;
  std::vector<Vec2> many_;
};

/// A point, a stretch, a convex polygon in either sense, or a disc about the one point.
struct Shadow {
  Corners points;
  double disc = 0.0;  // radius
};

struct Both {
  Vec2 a;
  Vec2 b;
};

/// The nearest points of two shadows. Where they share an area or a stretch, the middle of it (of a disc and a polygon:
/// the shared point nearest to the disc's centre).
[[nodiscard]] Both nearest(const Shadow& a, const Shadow& b);

}  // namespace baywright::geometry
