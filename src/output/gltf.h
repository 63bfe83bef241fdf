#pragma once
// A scene to exchange, and the binary glTF 2.0 file (GLB) that holds it: ISO/IEC 12113:2022.
#include "geometry/vectors.h"

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace baywright::output {

/// Colours as "#RRGGBB" (sRGB), for light and for dark surroundings; black for anything else.
struct Paint {
  std::string light;
  std::string dark;
  bool operator==(const Paint&) const = default;
};

/// Where a node stands at a moment of an animation, as a rigid motion from where it stands at rest.
struct Keyframe {
  double at = 0.0;  // 0..1, rising from one to the next
  geometry::Pose pose;
};

struct SceneNode {
  std::string name;  // any UTF-8; what is none is replaced by U+FFFD
  /// Three corners a triangle, counter-clockwise seen from outside, mm. With as many unit normals.
  std::vector<std::array<float, 3>> at;
  std::vector<std::array<float, 3>> normal;
  std::vector<std::array<float, 3>> edges;  // two ends a line, mm
  Paint paint;
  Paint edge_paint;
  bool glass = false;  // seen through, as it would hide what matters
  bool closed = true;  // has an inside, so that a cut through it shows an area
  bool drive = false;  // the drive's own; else the machine's
  bool clash = false;  // the room that two things both take up: shown over all else, and only while all is at rest
  std::vector<Keyframe> apart;   // from rest (0) to all apart (1); fewer than two: it stays
  std::vector<Keyframe> put_in;  // from before the way in (0) to rest (1); fewer than two: it stays
};

/// All in mm, x across, y along, z up. How it is to be looked at is for a reader that knows of it (`extras` of glTF).
struct Scene3d {
  std::string title;
  std::vector<SceneNode> nodes;
  geometry::Vec3 toward{0.68, 0.56, 0.47};  // unit: from what is looked at to the eye
  /// What is in the middle, and how much the height of a picture shows there, in a perspective of 30 degrees, where the
  /// picture is three wide to two high.
  struct View {
    geometry::Vec3 target{0.0};
    double height = 100.0;
  };
  View rest;
  View apart;   // once all is apart
  View put_in;  // before the way in
  /// The plane that shows why the verdict is what it is: what lies beyond it, toward the eye, is cut away.
  struct Cut {
    int axis = 1;  // 0 x, 1 y, 2 z
    double at = 0.0;
  };
  std::optional<Cut> cut;
};

/// The bytes of the file: metres and y up, as glTF has it, by its root node alone; figures below it are the scene's.
/// Two animations of a second, "apart" and "put in", without those that nothing moves in. A triangle or line with a
/// figure that is not finite, or two corners in one point, is left out; a triangle whose normals are no unit vectors
/// gets its own. A node of which nothing is left is left out, and an empty scene is a file without nodes. Keyframes of
/// which one is not finite or not after the one before leave their node where it is. The same bytes for the same scene.
[[nodiscard]] std::string glb(const Scene3d& scene);

}  // namespace baywright::output
