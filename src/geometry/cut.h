#pragma once
// Rings of an area with holes, cut by a line. Internal to the room.
#include "geometry/vectors.h"

#include <functional>
#include <utility>
#include <vector>

namespace baywright::geometry {

/// A closed boundary with the area on its left: outlines counter-clockwise, holes clockwise. Seen along z; z is carried
/// along and interpolated.
using Ring = std::vector<Vec3>;

/// The part of an area that lies where `side` >= 0. `side` is affine over x and y.
struct Cut {
  std::vector<Ring> whole;       // rings that stay as they are
  std::vector<Ring> chains;      // pieces of rings from where they come in to where they go out, both ends on the line
  std::vector<std::size_t> out;  // of chains: sorted along the line by where they go out, ...
  std::vector<std::size_t> in;   // ... and by where they come in. The area lies on the line from out[i]'s to in[i]'s

  /// The rings of the part, each whole: the line closes the chains.
  [[nodiscard]] std::vector<Ring> closed() const;
};

/// `along` is the direction of the line that has `side` > 0 on its left.
[[nodiscard]] Cut cut(const std::vector<Ring>& rings, const std::function<double(const Vec3&)>& side,
                      const Vec2& along);

}  // namespace baywright::geometry
