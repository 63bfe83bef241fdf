#include "render/glass.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <vector>

namespace baywright::render {

using geometry::Bounds;
using geometry::Vec3;

namespace {

/// Corners, a tenth of the size inward, and the middle.
void add_points(const Bounds& box, std::vector<Vec3>& out) {
  const Vec3 middle = 0.5 * (box.low + box.high);
  out.push_back(middle);
  for (int i = 0; i < 8; ++i) out.push_back(middle + 0.8 * (box.corner(i) - middle));
}

bool within(const Bounds& inner, const Bounds& outer) {
  for (int axis = 0; axis < 3; ++axis)
    if (inner.low[axis] < outer.low[axis] || inner.high[axis] > outer.high[axis]) return false;
  return true;
}

/// Whether the ray meets the box in front of its start.
bool meets(const Vec3& from, const Vec3& along, const Bounds& box) {
  double in = 1e-3;  // mm: a face that the point lies on hides nothing
  double out = std::numeric_limits<double>::infinity();
  for (int axis = 0; axis < 3; ++axis) {
    if (std::abs(along[axis]) < 1e-12) {
      if (from[axis] < box.low[axis] || from[axis] > box.high[axis]) return false;
      continue;
    }
    const double a = (box.low[axis] - from[axis]) / along[axis];
    const double b = (box.high[axis] - from[axis]) / along[axis];
    in = std::max(in, std::min(a, b));
    out = std::min(out, std::max(a, b));
  }
  return in < out;
}

}  // namespace

std::set<std::string> hiding(const Model& model, const Camera& camera) {
  constexpr double least = 0.1;  // of the points
  std::vector<Vec3> points;
  for (const Thing& thing : model.things)
    if (thing.drive && !thing.late) add_points(thing.bounds, points);
  if (points.empty()) add_points(model.drive, points);  // nothing is seated: then what hides the place
  std::map<std::string, std::vector<bool>> hidden;
  for (const Thing& thing : model.things) {
    if (thing.drive || thing.material == Material::socket || within(thing.bounds, model.drive)) continue;
    std::vector<bool>& of_part = hidden[thing.part];
    of_part.resize(points.size());
    for (std::size_t i = 0; i < points.size(); ++i)
      if (!of_part[i]) of_part[i] = meets(points[i], camera.toward, thing.bounds);
  }
  std::set<std::string> out;
  for (const auto& [part, of_part] : hidden) {
    const auto count = static_cast<double>(std::count(of_part.begin(), of_part.end(), true));
    if (count > 0.0 && count >= least * static_cast<double>(points.size())) out.insert(part);
  }
  return out;
}

}  // namespace baywright::render
