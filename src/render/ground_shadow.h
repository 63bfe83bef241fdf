#pragma once
// The soft shadow on the ground: everything that throws one, seen along the ground's normal, blurred. Kept while
// nothing that throws it changes. Internal to the room.
#include "render/program.h"
#include "render/target.h"
#include "render/uploads.h"

#include <glm/mat4x4.hpp>
#include <optional>
#include <tuple>

namespace baywright::render {

class GroundShadow {
 public:
  [[nodiscard]] static std::variant<GroundShadow, std::string> make();

  /// Brings the shadow up to date. Leaves another framebuffer and viewport behind. No shadow where the frame has no
  /// ground, nothing stands on it or the camera is below it.
  void prepare(const Frame& frame, Uploads& uploads);

  /// Draws it, blended, into what is bound. `clip`: world to clip coordinates.
  void draw(const Frame& frame, const glm::dmat4& clip) const;

 private:
  /// What the shadow depends on, to know when it changes.
  struct Key {
    std::vector<std::tuple<std::uint64_t, double, double, double, bool>> surfaces;  // upload, shift, cut
    std::vector<double> places;                                                     // room, ground, plane
    bool operator==(const Key&) const = default;
  };
  GroundShadow(Program height, Program blur, Program ground)
      : height_(std::move(height)), blur_(std::move(blur)), ground_(std::move(ground)) {}
  [[nodiscard]] static Key key_of(const Frame& frame, Uploads& uploads);
  void place(const Frame& frame);
  void throw_down(const Frame& frame, Uploads& uploads);
  void blur() const;

  Program height_;
  Program blur_;
  Program ground_;
  VertexArray square_;
  Target picture_;
  Target half_done_;
  std::optional<Key> key_;
  bool shown_ = false;
  glm::dmat4 to_world_{1.0};  // from the picture's square, -1..1, and heights, -1..1
};

/// Where a surface's plane cuts, in its mesh's coordinates: kept where dot(cut, (p, 1)) >= 0. All kept without a plane.
[[nodiscard]] glm::vec4 cut_of(const std::optional<Plane>& plane, bool cut, const geometry::Vec3& shift);

}  // namespace baywright::render
