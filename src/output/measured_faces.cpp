#include "output/measured_faces.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace baywright::output {

namespace {

constexpr double slack = 0.05;  // of rates and mm: a card that its stand-off tilts is not quite level

struct Face {
  double at = 0.0;    // mm along the axis
  double from = 0.0;  // its extent along the other axis
  double to = 0.0;
  std::map<int, double> rates;  // mm along the axis per mm of each dimension
};

std::vector<Face> faces_along(const fit::Scene& scene, const geometry::View& view, const std::vector<Seen>& seen,
                              int axis) {
  const geometry::Vec3 along = axis == 0 ? view.right : view.up;
  std::vector<Face> out;
  for (const Seen& each : seen) {
    if (!each.cut) continue;
    const fit::Element& element = scene.element(each.element);
    const Window box = bounds_in(view, element);
    const geometry::Vec3 middle = 0.5 * (element.bounds.low + element.bounds.high);
    for (const bool upper : {false, true}) {
      Face face;
      face.at = (upper ? box.high : box.low)[axis];
      face.from = box.low[1 - axis];
      face.to = box.high[1 - axis];
      const geometry::Vec3 point = middle + along * (face.at - glm::dot(middle - view.point, along));
      for (const fit::Motion& motion : element.motions)
        face.rates[motion.dimension] += glm::dot(motion.at(point), along);
      out.push_back(std::move(face));
    }
  }
  return out;
}

/// Whether the distance of two faces is that dimension's alone.
bool decides(const Face& low, const Face& high, int dimension, double length) {
  double rate = 0.0;
  std::map<int, double> difference = high.rates;
  for (const auto& [each, value] : low.rates) difference[each] -= value;
  for (const auto& [each, value] : difference) {
    if (each == dimension)
      rate = value;
    else if (!(std::abs(value) < slack))
      return false;
  }
  return rate > 0.3 && std::abs(high.at - low.at - rate * length) < slack;
}

/// Room for the jaws: what both faces cover, else what lies between them.
void meet_at(MeasuredFaces& out, const Face& low, const Face& high) {
  out.from = std::max(low.from, high.from);
  out.to = std::min(low.to, high.to);
  if (out.from > out.to) std::swap(out.from, out.to);
}

}  // namespace

std::optional<MeasuredFaces> measured_faces(const fit::Scene& scene, const geometry::View& view,
                                            const std::vector<Seen>& seen, const tolerance::Dimension& dimension) {
  std::optional<MeasuredFaces> best;
  const int count = static_cast<int>(scene.values.size());
  for (const int axis : {1, 0}) {
    const std::vector<Face> faces = faces_along(scene, view, seen, axis);
    for (int i = 0; i < count; ++i) {
      const tolerance::Dimension& each = scene.dimension(i);
      if (each.name != dimension.name || each.nominal != dimension.nominal) continue;
      for (const Face& low : faces)
        for (const Face& high : faces) {
          if (!decides(low, high, i, scene.values[static_cast<std::size_t>(i)])) continue;
          MeasuredFaces found;
          found.axis = axis;
          found.low = low.at;
          found.high = high.at;
          meet_at(found, low, high);
          if (!best || found.to - found.from > best->to - best->from) best = found;
        }
    }
    if (best) return best;
  }
  return best;
}

}  // namespace baywright::output
