#pragma once
// A face of a part as somebody drills it: flat, from its lower left corner.
#include "build/build.h"
#include "geometry/vectors.h"

namespace baywright::build {

/// Flat coordinates of a face, mm from the part's lower left corner, x to the right and y up, looking at it; on a back
/// face that is the part turned over.
struct PartFace {
  int axis = 2;
  bool back = false;
  geometry::Vec2 low{0.0};  // of the part along the two other axes, x before y before z
  geometry::Vec2 size{0.0};

  /// From coordinates along the two other axes, and back to them.
  [[nodiscard]] geometry::Vec2 flat(const geometry::Vec2& p) const;
  [[nodiscard]] geometry::Vec2 across_axes(const geometry::Vec2& flat) const;
};

[[nodiscard]] PartFace face_of(const parts::Part& part, int axis, bool back);

/// The two components other than that along the axis, x before y before z.
[[nodiscard]] geometry::Vec2 others(const geometry::Vec3& v, int axis);

/// From a place's own terms, along its drive and to the right of its centre line, to the flat coordinates of the face
/// that carries it, and back.
[[nodiscard]] geometry::Vec2 on_face(const Place& place, const PartFace& face, double along, double right);
[[nodiscard]] geometry::Vec2 from_place(const Place& place, const PartFace& face, const geometry::Vec2& flat);

}  // namespace baywright::build
