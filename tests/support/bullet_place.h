#pragma once
// Bullet's signed distance of two convex shapes without margin, and where it puts them.
#include "geometry/vectors.h"

#include <BulletCollision/CollisionShapes/btConvexShape.h>
#include <BulletCollision/NarrowPhaseCollision/btGjkEpaPenetrationDepthSolver.h>
#include <BulletCollision/NarrowPhaseCollision/btGjkPairDetector.h>
#include <BulletCollision/NarrowPhaseCollision/btPointCollector.h>
#include <BulletCollision/NarrowPhaseCollision/btVoronoiSimplexSolver.h>
#include <optional>

namespace baywright::test {

inline btTransform bullet_place(const geometry::Pose& pose) {
  const geometry::Mat3& t = pose.turn;
  return btTransform(btMatrix3x3(t[0].x, t[1].x, t[2].x, t[0].y, t[1].y, t[2].y, t[0].z, t[1].z, t[2].z),
                     btVector3(pose.shift.x, pose.shift.y, pose.shift.z));
}

inline std::optional<double> bullet_gap(const btConvexShape& a, const btTransform& place_a, const btConvexShape& b,
                                        const btTransform& place_b) {
  btVoronoiSimplexSolver simplex;
  btGjkEpaPenetrationDepthSolver depth;
  btGjkPairDetector detector(&a, &b, &simplex, &depth);
  btGjkPairDetector::ClosestPointInput input;
  input.m_transformA = place_a;
  input.m_transformB = place_b;
  btPointCollector found;
  detector.getClosestPoints(input, found, nullptr);
  if (!found.m_hasResult) return std::nullopt;
  return found.m_distance;
}

}  // namespace baywright::test
