#pragma once
// The best of the directions that were tried. Internal.
#include "geometry/body.h"
#include "geometry/penetration.h"

#include <limits>

namespace baywright::geometry {

class Search {
 public:
  explicit Search(const Pair& pair) : pair_(pair), best_{-std::numeric_limits<double>::infinity(), pair.a.w} {}

  [[nodiscard]] const WayOut& best() const { return best_; }

  void offer(const Vec3& d) {
    const double separation = pair_.separation(d);
    // Earlier offers win ties: face normals come first and make the steadier direction.
    if (better(separation)) best_ = {separation, d};
  }
  void offer_both(const Vec3& d) {
    offer(d);
    offer(-d);
  }
  [[nodiscard]] bool better(double separation) const { return separation > best_.separation + margin(); }
  /// A patch whose own value is known and never below the true separation.
  void offer(const Vec3& d, double patch) {
    if (better(patch)) offer(d);
  }

 private:
  [[nodiscard]] double margin() const { return 0.01 * pair_.rounding; }

  const Pair& pair_;
  WayOut best_;
};

}  // namespace baywright::geometry
