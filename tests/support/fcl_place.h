#pragma once
// Where FCL puts a shape, which it centres on its own origin.
#include "geometry/vectors.h"

#include <fcl/common/types.h>

namespace baywright::test {

inline fcl::Transform3d fcl_place(const geometry::Vec3& centre, const geometry::Mat3& turn) {
  fcl::Transform3d place = fcl::Transform3d::Identity();
  for (int i = 0; i < 3; ++i) {
    place.translation()[i] = centre[i];
    for (int j = 0; j < 3; ++j) place.linear()(i, j) = turn[j][i];
  }
  return place;
}

}  // namespace baywright::test
