#pragma once
// From a direction that is nearly right to the one that is, for bodies that are apart. Internal.
#include "geometry/body.h"
#include "geometry/rim.h"

#include <array>

namespace baywright::geometry {

/// Unit and square to both unit edges, either way round; zero where they are parallel.
[[nodiscard]] Vec3 square_to_both(const Vec3& e, const Vec3& f);

/// A few directions, without the heap: this is asked in the innermost loop.
class Directions {
 public:
  void add(const Vec3& d) {
    if (count_ < at_.size()) at_[count_++] = d;
  }
  void add_unit(const Vec3& d) {
    const double length = glm::length(d);
    if (length > 0.0) add(d / length);
  }
  [[nodiscard]] const Vec3* begin() const { return at_.data(); }
  [[nodiscard]] const Vec3* end() const { return at_.data() + count_; }
  [[nodiscard]] std::size_t size() const { return count_; }
  [[nodiscard]] const Vec3& operator[](std::size_t i) const { return at_[i]; }

 private:
  std::array<Vec3, 96> at_;
  std::size_t count_ = 0;
};

/// The exact solutions for the features that could be extreme together within an angle of sine `angle` of `direction`
/// (unit). All unit. Bodies in the order disc, rectangle, polygon.
class Solutions {
 public:
  Solutions(const Pair& pair, const Vec3& direction, double angle);

  /// Face normals, and directions square to two edges.
  void add_flat(Directions& found) const;
  /// Corners and rims against edges, corners and side lines.
  void add_curved(Directions& found) const;
  /// Rims against rims.
  void add_rims(Directions& found) const;

 private:
  /// What of a body could become extreme together with its farthest corner (or rim) when d turns by a small angle.
  struct Nearby {
    static constexpr std::size_t room = 6;
    std::array<Vec3, room> normals;  // outward
    std::size_t normal_count = 0;
    std::array<Vec3, room> edges;
    std::size_t edge_count = 0;
    Vec3 tip;  // the corner, or the centre of the rim
    std::array<Rim, 2> rims;
    std::size_t rim_count = 0;

    Nearby(const Body& body, const Vec3& centre, const Vec3& d, double angle);
    void add_normal(const Vec3& n) {
      if (normal_count < room) normals[normal_count++] = n;
    }
    void add_edge(const Vec3& e) {
      if (edge_count < room) edges[edge_count++] = e;
    }
  };
  Vec3 direction_;
  Nearby a_;
  Nearby b_;
};

/// For two prisms that are apart by less than `upper` mm or so: the best direction of any corner against any corner or
/// edge. Slow and without conditions; for what the quick ways leave open.
[[nodiscard]] Vec3 corner_direction(const Pair& pair, const Vec3& start, double upper);

}  // namespace baywright::geometry
