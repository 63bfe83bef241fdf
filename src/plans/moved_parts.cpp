#include "plans/moved_parts.h"

#include "fit/host.h"
#include "fit/host_overlaps.h"
#include "geometry/travel.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace baywright::plans {

namespace {

using fit::Element;
using geometry::Vec3;

constexpr double deeper = 1e-6;  // mm

/// Whether it meets `other`, which stays, on the way from `from` by `shift`, where nothing was in its way before.
bool passes_through(const Element& from, const Element& other, const Vec3& shift) {
  const double length = glm::length(shift);
  const std::array moving = {from.placed};
  const std::array fixed = {other.placed};
  const geometry::Travel way = geometry::travel(moving, fixed, shift / length);
  return way.meets && way.mm >= -deeper && way.mm < length - deeper;
}

class Moved {
 public:
  Moved(const build::Build& before, const build::Build& after, tolerance::Method method)
      : before_(fit::compile(before)), after_(fit::compile(after)), method_(method) {}

  [[nodiscard]] bool harm() const {
    const std::size_t parts = std::min(before_.parts.size(), after_.parts.size());
    for (std::size_t i = 0; i < parts; ++i)
      for (std::size_t j = 0; j < parts; ++j) {
        const Vec3 shift = shift_of(i) - shift_of(j);
        if (i != j && glm::length(shift) > deeper && harm(i, j, shift)) return true;
      }
    return false;
  }

 private:
  [[nodiscard]] Vec3 shift_of(std::size_t part) const {
    return after_.parts[part].frame.pose.shift - before_.parts[part].frame.pose.shift;
  }

  /// Part i has moved by `shift` as part j sees it.
  [[nodiscard]] bool harm(std::size_t i, std::size_t j, const Vec3& shift) const {
    const fit::PlacedPart& a = after_.parts[i];
    const fit::PlacedPart& b = after_.parts[j];
    for (int e = 0; e < std::min(a.count, before_.parts[i].count); ++e)
      for (int f = 0; f < std::min(b.count, before_.parts[j].count); ++f) {
        if (passes_through(before_.scene.element(before_.parts[i].first + e),
                           before_.scene.element(before_.parts[j].first + f), shift))
          return true;
        const double least = fit::least_gap(after_, a.first + e, b.first + f, method_);
        if (!(least >= -deeper) &&
            !(least >=
              fit::least_gap(before_, before_.parts[i].first + e, before_.parts[j].first + f, method_) - deeper))
          return true;
      }
    return false;
  }

  fit::Host before_;
  fit::Host after_;
  tolerance::Method method_;
};

}  // namespace

bool crushes(const build::Build& before, const build::Build& after, tolerance::Method method) {
  return Moved(before, after, method).harm();
}

}  // namespace baywright::plans
