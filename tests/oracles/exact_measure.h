#pragma once
// What is exactly true of two bodies, given the doubles of their corners and poses.
//
// A pose is nine doubles of a matrix and three of a shift. The matrix is a rotation only to 1e-16, so it is taken for
// what it is: x -> turn * x + shift, carried out without rounding (CGAL, Exact_predicates_exact_constructions_kernel).
// The image of a polyhedron under any such map is a polyhedron, whose corners are rational; nothing has to be
// orthonormal here, and no face is bent. What the product does differently with such a matrix (it takes turn * n for a
// normal) moves its figures by 1e-16 of the size, 1e-14 mm, and is part of the error that it is held to.
//
// Two convex parts:
//   - Separating axes (face normals and products of edges) tell exactly whether they are apart, touch, or share inside;
//     for those that share inside, the least overlap over these axes is the shortest way out (the faces of the
//     difference of two convex polytopes have these normals).
//   - Their distance comes from corners against triangles and edges against edges, squared_distance of the exact
//   kernel.
// To save time a pair far from touching is settled by doubles with a certified margin: for any vector n at all, the
// separation along n computed in doubles is right to 1e-12 at coordinates below 1000 mm, and a separation is a lower
// bound of the distance; two points of the parts give an upper bound. Where the bounds meet within 5e-11 nothing exact
// is needed.
#include "exact_body.h"

namespace baywright::oracle {

struct Truth {
  int sign = 0;       // 1 apart, 0 touching (exactly), -1 overlapping: a common inner point
  double low = 0.0;   // apart: least and most that the distance can be, mm; equal to rounding if `exact`
  double high = 0.0;  // overlapping: least that the shortest way out can be, and most, which for non-convex is infinite
  bool exact = false;  // exact arithmetic decided
};

/// Of a against b moved by `shift` (its doubles are added without rounding).
[[nodiscard]] Truth measure(const Body& a, const Pose& pose_a, const Body& b, const Pose& pose_b);

/// Whether moving b by `way` (mm, world) leaves no two parts deeper in each other than `allowed`.
[[nodiscard]] bool frees(const Body& a, const Pose& pose_a, const Body& b, const Pose& pose_b, const Vec3& way,
                         double allowed);

}  // namespace baywright::oracle
