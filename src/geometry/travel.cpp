#include "geometry/travel.h"

#include "geometry/cast.h"
#include "geometry/gap.h"
#include "geometry/mesh_travel.h"

#include <limits>

namespace baywright::geometry {

namespace {

Stay meeting(const Piece& a, const Pose& pose_a, const Piece& b, const Pose& pose_b, const Vec3& n) {
  const bool ring = a.base == Piece::Base::ring || b.base == Piece::Base::ring;
  return ring ? ring_stay(a, pose_a, b, pose_b, n) : stay(a, pose_a, b, pose_b, n);
}

}  // namespace

Travel travel(std::span<const Placed> moving, std::span<const Placed> fixed, const Vec3& direction) {
  Travel first;
  first.mm = std::numeric_limits<double>::infinity();
  for (const Placed& stays : fixed) {
    for (const Placed& moves : moving) {
      if (stays.solid.mesh() != nullptr || moves.solid.mesh() != nullptr) mesh_travel(moves, stays, direction, first);
    }
    for (const Piece& of_fixed : stays.solid.pieces()) {
      for (const Placed& moves : moving) {
        for (const Piece& of_moving : moves.solid.pieces()) {
          // They cannot meet before their slabs square to the line do.
          if (separation(of_moving, moves.pose, of_fixed, stays.pose, direction) > first.mm) continue;
          const Stay met = meeting(of_fixed, stays.pose, of_moving, moves.pose, direction);
          if (!met.meets || !(met.in < first.mm)) continue;
          first = {true, met.in, met.error, met.at_in.on_b, met.at_in.on_a};
        }
      }
    }
  }
  return first.meets ? first : Travel{};
}

}  // namespace baywright::geometry
