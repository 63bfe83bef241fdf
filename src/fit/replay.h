#pragma once
// Some elements of a scene put anew at other values of its dimensions: where those truly put them, tilt included,
// without seating the rest again. Its memory is used again from build to build: one for each thread.
#include "fit/scene.h"
#include "geometry/gap.h"

#include <memory>
#include <optional>
#include <span>
#include <vector>

namespace baywright::fit {

/// What was measured between two elements.
struct Measured {
  double mm = 0.0;  // as geometry::Gap has it; of several convex pieces the least, so an overlap is the deepest one's
  double error = 0.0;  // mm; infinite where whether they overlap could not be told
};

class Replay {
 public:
  /// `elements` by index in the scene, which outlives this.
  Replay(const Scene& scene, std::span<const int> elements);

  /// One value a dimension of the scene, mm.
  void put(std::span<const double> values);

  /// Of two of the elements, by their place in the list. Infinite where one is no solid at these values.
  [[nodiscard]] Measured gap(int a, int b);

  /// Not above the gap where they are apart, 0 else: cheap.
  [[nodiscard]] double at_least(int a, int b) const { return item(a).box.distance(item(b).box); }

  /// The element's frame at the values put last.
  [[nodiscard]] const geometry::Pose& frame(int a) const { return poses_[item(a).step]; }

 private:
  struct Item {
    const parts::Body* body;
    std::size_t step;                      // its frame, in poses_
    geometry::Mat3 turn;                   // of the solid in its part
    geometry::Vec3 corner;                 // of the solid's own origin, from the box's low corner: a turned mesh's
    geometry::Vec2 base;                   // sizes square to the extrusion for which `pieces` were cut
    std::vector<geometry::Piece> cut;      // at the scene's own values
    std::optional<geometry::Placed> mesh;  // of a mesh, which has no pieces
    // As put:
    geometry::Vec3 size{0.0};
    geometry::Pose pose{};
    geometry::Bounds box{};
    bool solid = true;
    bool cut_anew = false;                  // whether `pieces` and `boxes` are those of this size and pose
    std::vector<geometry::Piece> pieces{};  // one a piece of `cut`
    std::vector<geometry::Bounds> boxes{};
  };
  [[nodiscard]] const Item& item(int a) const { return items_[static_cast<std::size_t>(a)]; }
  [[nodiscard]] std::size_t step_of(const std::shared_ptr<const Step>& step);
  void put_item(Item& item) const;
  void cut_anew(Item& item) const;
  [[nodiscard]] Measured mesh_gap(const Item& a, const Item& b) const;

  struct Stage {
    const Step* step;    // null: the world
    std::size_t before;  // in stages_
  };
  std::vector<Stage> stages_;  // each behind the one that it stands on
  std::vector<geometry::Pose> poses_;
  std::vector<Item> items_;
  std::span<const double> values_;  // put last
};

}  // namespace baywright::fit
