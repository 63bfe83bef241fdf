#pragma once
// Where a scene is looked at from. World coordinates, mm.
#include "geometry/vectors.h"

#include <glm/mat4x4.hpp>
#include <optional>
#include <string_view>

namespace baywright::render {

/// The views that have a name. Faces are those of the place: its frame's x is across, y along the drive from its
/// connector, z out of the face that carries it. `whole` is the oblique one to begin with.
enum class Side { whole, front, back, left, right, top, bottom };
[[nodiscard]] std::string_view word(Side side);
[[nodiscard]] std::optional<Side> side_called(std::string_view word);  // none: no such view

struct Camera {
  geometry::Vec3 target{0.0};            // what stays in the middle
  geometry::Vec3 toward{0.0, 0.0, 1.0};  // unit: from the target to the eye
  geometry::Vec3 up{0.0, 1.0, 0.0};      // unit, square to `toward`: up in the picture
  double height = 100.0;                 // mm that the picture's height shows at the target, > 0
  bool perspective = true;               // else true to scale everywhere
  double field = 30.0;                   // degrees that `height` spans in perspective, 0.1..120

  [[nodiscard]] geometry::Vec3 right() const { return glm::cross(up, toward); }
  /// World to clip coordinates (x, y, z from -1 to 1); near and far planes hold what of `room` is before the eye.
  /// `aspect`: width by height.
  [[nodiscard]] glm::dmat4 clip(double aspect, const geometry::Bounds& room) const;
  /// Pixel (x from the left, y from the top) and depth (mm toward the eye from the target) of a world point. A point
  /// beside or behind the eye of a perspective has no pixel: x and y are then not numbers.
  [[nodiscard]] geometry::Vec3 pixel(const geometry::Vec3& world, int width, int height) const;
  /// The ray through a pixel: its point at the target's depth and its unit direction, away from the eye.
  struct Ray {
    geometry::Vec3 from{0.0};
    geometry::Vec3 along{0.0};
  };
  [[nodiscard]] Ray ray(double x, double y, int width, int height) const;
  /// How far the eye is from the target, mm; for a camera that is true to scale none, so infinite.
  [[nodiscard]] double distance() const;
};

/// The camera that sees all of `room` from a side of the place's frame, with a margin. Named faces are true to scale,
/// `whole` is in perspective and shows the top, the side toward +x and the end away from the connector. Empty or
/// boundless room: as if it were a point where the place is.
[[nodiscard]] Camera facing(Side side, const geometry::Pose& place, const geometry::Bounds& room, double aspect);

/// Turned about its target: by `across` degrees about `axis` (unit; what stays upright), then by `over` degrees about
/// the picture's x (positive: the eye goes down). Never over the pole: it stops where it looks along the axis.
[[nodiscard]] Camera turned(const Camera& camera, const geometry::Vec3& axis, double across, double over);

/// On the way from one to another: 0 the first, 1 the second, beyond them the same. Between perspective and true to
/// scale the field narrows, so that nothing jumps.
[[nodiscard]] Camera between(const Camera& first, const Camera& second, double share);

}  // namespace baywright::render
