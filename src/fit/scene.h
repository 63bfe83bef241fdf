#pragma once
// Solids where they stand in the world, and how each dimension moves them.
#include "geometry/solid.h"
#include "parts/part.h"
#include "tolerance/dimension.h"

#include <array>
#include <functional>
#include <memory>
#include <span>
#include <string>
#include <vector>

namespace baywright::fit {

/// How a solid grows along one of its own axes: its two sides move apart.
struct Stretch {
  geometry::Vec3 axis{0.0};  // unit, world
  double low = 0.0;          // where the sides stand along `axis`, mm
  double high = 0.0;
  double low_rate = 0.0;  // mm per mm of the dimension
  double high_rate = 0.0;
  bool sides_only = false;  // the other sides slide along themselves and stay where they are; else what lies between
                            // moves in proportion, as the corners of an outline do
};

/// How a point x (world, mm) of a solid's boundary moves per mm of one dimension: rigidly by shift + turn * x, and with
/// the solid's growth.
struct Motion {
  int dimension = 0;
  geometry::Vec3 shift{0.0};
  geometry::Mat3 turn{0.0};  // skew
  std::array<Stretch, 3> stretches;
  int stretch_count = 0;

  [[nodiscard]] geometry::Vec3 at(const geometry::Vec3& x) const;
};

/// How a frame came to stand where it stands, so that it can be put anew at other values of the dimensions.
struct Step {
  using Next = std::function<geometry::Pose(const geometry::Pose& before, std::span<const double> values)>;
  std::shared_ptr<const Step> before;  // null: the world
  Next next;
};

/// A frame of a part: where it stands, and the rigid motions that dimensions give it.
struct Frame {
  geometry::Pose pose;
  std::vector<Motion> motions;
  std::shared_ptr<const Step> step{};  // leads to `pose` at the scene's values; null: the world

  /// Takes one more step.
  void go(std::span<const double> values, Step::Next next);
};

struct Element {
  std::string part;  // whose solid it is, as people call it
  std::string body;
  geometry::Placed placed;
  geometry::Bounds bounds;  // nominal, world
  geometry::Vec3 swing{
      0.0};  // mm along each world axis: no point of it moves farther within the limits (open sides apart)
  std::vector<Motion> motions;
  std::shared_ptr<const parts::Body> made_from{};  // its coordinates in the scene's dimensions
  std::shared_ptr<const Step> step{};              // to the frame that it is put in
};

/// The box that holds the element at any values within the limits.
[[nodiscard]] geometry::Bounds swept(const Element& element);

/// Dimensions and their values, and the elements that hang on them. A scene may stand on another (a seating on its
/// host): then indices go on where the other's end, and nothing of it is copied but the values.
struct Scene {
  const Scene* below = nullptr;                  // outlives this one, and is not moved
  std::vector<tolerance::Dimension> dimensions;  // this scene's own
  std::vector<double> values;     // one a dimension, those of the scene below first: nominal, or as a caller set it
  std::vector<Element> elements;  // this scene's own

  explicit Scene(const Scene* on = nullptr);
  [[nodiscard]] int first_element() const { return below == nullptr ? 0 : static_cast<int>(below->elements.size()); }
  [[nodiscard]] int element_count() const { return first_element() + static_cast<int>(elements.size()); }
  [[nodiscard]] const Element& element(int index) const;
  [[nodiscard]] const tolerance::Dimension& dimension(int index) const;

  /// Adds a dimension at its nominal value, or at the value given for its index by `fixed`. Returns the index.
  int add(const tolerance::Dimension& dimension);
  /// Adds all dimensions of a part; returns the offset of the first.
  int add(const std::vector<tolerance::Dimension>& list);

  /// Values that replace nominal ones, by index; empty: all nominal. Set before anything is added.
  std::vector<double> fixed;
};

/// The frame moved by `by` along its own axes.
[[nodiscard]] Frame moved(const Scene& scene, const Frame& frame, const parts::Coordinates& by);

/// The frame turned (its axes become the columns of `turn`, given in the frame).
[[nodiscard]] Frame turned(const Frame& frame, const geometry::Mat3& turn);

/// A rigid motion for a dimension: a shift and a rotation of `rate` (radian per mm, along its axis) about `pivot`,
/// world.
[[nodiscard]] Motion rigid(int dimension, const geometry::Vec3& shift, const geometry::Vec3& rate,
                           const geometry::Vec3& pivot);

/// Puts the solids of a part into the scene. Its dimensions are in the scene already, from `offset` on. Bodies that are
/// no solid at these values are left out (readers have refused them at their limits, one at a time). Returns the index
/// of the first element; `part.bodies` follow in order.
int put(Scene& scene, const Frame& frame, const parts::Part& part, int offset, const std::string& name);

/// The scene's own element that is that body of that part; -1: none.
[[nodiscard]] int find_element(const Scene& scene, std::string_view part, std::string_view body);

}  // namespace baywright::fit
