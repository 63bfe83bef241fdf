#pragma once
// Limits of the gap between two pieces, and what moves them against each other. Internal to the room.
#include "fit/limits.h"
#include "geometry/facing.h"

#include <utility>
#include <vector>

namespace baywright::fit {

/// The dimensions that move either of two elements, collected once a pair.
class Relative {
 public:
  Relative(const Scene& scene, const Element& a, const Element& b);

  /// How far apart two points that face each other along n can come.
  [[nodiscard]] tolerance::Spread spread(const geometry::Facing& point, const geometry::Vec3& n,
                                         tolerance::Method method);

  [[nodiscard]] std::vector<std::pair<int, double>> terms(const geometry::Vec3& on_a, const geometry::Vec3& on_b,
                                                          const geometry::Vec3& n) const;

  /// The most that two material points can be apart, whatever the direction: for contacts that are not face to face.
  [[nodiscard]] double farthest_apart(const geometry::Vec3& on_a, const geometry::Vec3& on_b) const;

 private:
  struct Entry {
    int dimension;
    const Motion* a;
    const Motion* b;

    [[nodiscard]] geometry::Vec3 motion(const geometry::Vec3& on_a, const geometry::Vec3& on_b) const;
  };
  const Scene& scene_;
  std::vector<Entry> entries_;
  std::vector<tolerance::Term> terms_;  // reused from point to point
};

struct Side {
  const geometry::Piece& piece;
  const geometry::Pose& pose;
  const geometry::Vec3& swing;
};

/// `terms` is left empty.
[[nodiscard]] GapLimits piece_limits(Relative& relative, const Side& a, const Side& b, tolerance::Method method,
                                     double enough);

/// The same for two elements of which one is a mesh or both are. As for several pieces, the triangles being the pieces:
/// where they are apart. Where they overlap, all counts along the one way out that was found.
[[nodiscard]] GapLimits mesh_limits(Relative& relative, const Element& a, const Element& b, tolerance::Method method,
                                    double enough);

}  // namespace baywright::fit
