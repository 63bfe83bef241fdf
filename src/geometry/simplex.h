#pragma once
// Gilbert-Johnson-Keerthi descent toward the point of the difference b - a that is nearest to the origin. Internal.
#include "geometry/body.h"

#include <array>

namespace baywright::geometry {

/// Keeps both bounds of the distance: `upper` is that of two points that were found, `lower` the best separation seen.
class Descent {
 public:
  enum class State {
    closed,   // upper - lower is within `tolerance`
    near,     // the direction is known within `angle`
    inside,   // the origin lies in the difference, as far as rounding tells
    stalled,  // no further progress: rounding, or the step limit
  };

  /// `start`: any direction but zero; the likelier the better.
  Descent(const Pair& pair, const Vec3& start);

  /// Goes on from where it stopped. Returns at the latest after `steps` support points.
  [[nodiscard]] State run(double tolerance, double angle, int steps);

  [[nodiscard]] double upper() const { return upper_; }
  [[nodiscard]] double lower() const { return lower_; }
  [[nodiscard]] Vec3 direction() const { return direction_; }  // unit, that of `lower`
  /// Sine of the angle within which the true direction lies of `direction`; 1 when nothing is known.
  [[nodiscard]] double angle() const;
  /// The two points, as offsets from the centre of a and from the centre of b.
  [[nodiscard]] Vec3 on_a() const;
  [[nodiscard]] Vec3 on_b() const;

 private:
  struct Vertex {
    Vec3 x;  // apart + b - a
    Vec3 a;
    Vec3 b;
    double weight = 0.0;
  };
  struct Face;  // a subset of the simplex with its nearest point

  [[nodiscard]] Vertex support(const Vec3& toward) const;
  [[nodiscard]] bool known(const Vertex& vertex) const;
  [[nodiscard]] bool reduce();  // false: the origin is inside
  [[nodiscard]] Face nearest_on(int i, int j) const;
  [[nodiscard]] Face nearest_on(int i, int j, int k) const;
  [[nodiscard]] bool nearest_on_faces(Face& best) const;
  void keep(const Face& face);

  const Pair& pair_;
  std::array<Vertex, 4> simplex_;
  int count_ = 0;
  Vec3 v_;
  double upper_;
  double lower_;
  Vec3 direction_;
};

}  // namespace baywright::geometry
