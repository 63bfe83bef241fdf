#include "fit/scene.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace baywright::fit {

using geometry::Mat3;
using geometry::Vec3;
using parts::Body;
using parts::Coordinate;
using parts::Coordinates;

namespace {

Mat3 cross_matrix(const Vec3& w) {
  Mat3 m(0.0);
  m[0] = {0.0, w.z, -w.y};
  m[1] = {-w.z, 0.0, w.x};
  m[2] = {w.y, -w.x, 0.0};
  return m;
}

Vec3 at(const Coordinates& c, std::span<const double> values) {
  return {c[0].at(values), c[1].at(values), c[2].at(values)};
}

std::vector<int> dimensions_of(const Body& body) {
  std::vector<int> out;
  for (const Coordinates* side : {&body.low, &body.high})
    for (const Coordinate& c : *side)
      for (const parts::Share& share : c.shares) out.push_back(share.dimension);
  std::sort(out.begin(), out.end());
  out.erase(std::unique(out.begin(), out.end()), out.end());
  return out;
}

/// How a point of the body moves in its part: between its low and its high side in proportion.
Motion stretch(const Body& body, int dimension, const Vec3& low, const Vec3& high, const geometry::Pose& pose) {
  Vec3 shift{0.0};
  Vec3 slope{0.0};
  for (int axis = 0; axis < 3; ++axis) {
    const auto i = static_cast<std::size_t>(axis);
    const double from = body.low[i].slope(dimension);
    const double to = body.high[i].slope(dimension);
    slope[axis] = (to - from) / (high[axis] - low[axis]);
    shift[axis] = from - slope[axis] * low[axis];
  }
  Mat3 grow(0.0);
  for (int axis = 0; axis < 3; ++axis) grow[axis][axis] = slope[axis];
  // From part to world: x_world = R x + s, v_world = R (shift + grow R^T (x_world - s)).
  const Mat3 world_grow = pose.turn * grow * glm::transpose(pose.turn);
  return {dimension, pose.turn * shift - world_grow * pose.shift, world_grow};
}

void add_motion(std::vector<Motion>& motions, const Motion& more) {
  for (Motion& motion : motions)
    if (motion.dimension == more.dimension) {
      motion.shift += more.shift;
      motion.grow += more.grow;
      return;
    }
  motions.push_back(more);
}

/// Each coordinate of a motion is linear in the point, so its extremes over a box are found side by side.
Vec3 swing_of(const Element& element, const Scene& scene) {
  const Vec3 middle = 0.5 * (element.bounds.low + element.bounds.high);
  const Vec3 half = 0.5 * (element.bounds.high - element.bounds.low);
  Vec3 swing(0.0);
  for (const Motion& motion : element.motions) {
    const tolerance::Dimension& d = scene.dimension(motion.dimension);
    double way = 0.0;
    for (const double side : {d.minus, d.plus})
      if (std::isfinite(side)) way = std::max(way, side);
    Vec3 fastest = glm::abs(motion.at(middle));
    for (int axis = 0; axis < 3; ++axis) fastest += glm::abs(motion.grow[axis]) * half[axis];
    swing += way * fastest;
  }
  return swing;
}

}  // namespace

Scene::Scene(const Scene* on) : below(on) {
  if (on != nullptr) values = on->values;
}

const Element& Scene::element(int index) const {
  const int own = index - first_element();
  return own < 0 ? below->elements[static_cast<std::size_t>(index)] : elements[static_cast<std::size_t>(own)];
}

const tolerance::Dimension& Scene::dimension(int index) const {
  const auto theirs = below == nullptr ? 0 : below->dimensions.size();
  const auto at = static_cast<std::size_t>(index);
  return at < theirs ? below->dimensions[at] : dimensions[at - theirs];
}

geometry::Bounds swept(const Element& element) {
  return {element.bounds.low - element.swing, element.bounds.high + element.swing};
}

int Scene::add(const tolerance::Dimension& dimension) {
  const std::size_t index = values.size();
  dimensions.push_back(dimension);
  values.push_back(index < fixed.size() ? fixed[index] : dimension.nominal);
  return static_cast<int>(index);
}

int Scene::add(const std::vector<tolerance::Dimension>& list) {
  const int offset = static_cast<int>(values.size());
  for (const tolerance::Dimension& dimension : list) add(dimension);
  return offset;
}

Motion rigid(int dimension, const Vec3& shift, const Vec3& rate, const Vec3& pivot) {
  return {dimension, shift - glm::cross(rate, pivot), cross_matrix(rate)};
}

Frame moved(const Scene& scene, const Frame& frame, const Coordinates& by) {
  Frame out = frame;
  out.pose.shift = frame.pose.point(at(by, scene.values));
  for (int axis = 0; axis < 3; ++axis)
    for (const parts::Share& share : by[static_cast<std::size_t>(axis)].shares)
      add_motion(out.motions, {share.dimension, share.factor * frame.pose.turn[axis], Mat3(0.0)});
  return out;
}

Frame turned(const Frame& frame, const Mat3& turn) {
  Frame out = frame;
  out.pose.turn = frame.pose.turn * turn;
  return out;
}

int put(Scene& scene, const Frame& frame, const parts::Part& part, int offset, const std::string& name) {
  const int first = scene.element_count();
  for (const Body& local : part.bodies) {
    if (local.drawn_only) continue;
    Body body = local;
    for (Coordinates* side : {&body.low, &body.high})
      for (Coordinate& c : *side) c = c.shifted(offset);
    body.bore = body.bore.shifted(offset);
    auto made = parts::shape(body, scene.values);
    if (std::holds_alternative<geometry::Refusal>(made)) continue;
    auto& shaped = std::get<parts::Shaped>(made);
    Element element{name, body.name, {std::move(shaped.solid), frame.pose.after(shaped.pose)}, {}, Vec3(0.0), frame.motions};
    element.bounds = geometry::bounds(element.placed);
    const Vec3 low = at(body.low, scene.values);
    const Vec3 high = at(body.high, scene.values);
    for (const int dimension : dimensions_of(body)) add_motion(element.motions, stretch(body, dimension, low, high, frame.pose));
    element.swing = swing_of(element, scene);
    scene.elements.push_back(std::move(element));
  }
  return first;
}

int find_element(const Scene& scene, std::string_view part, std::string_view body) {
  for (std::size_t i = 0; i < scene.elements.size(); ++i)
    if (scene.elements[i].part == part && scene.elements[i].body == body) return scene.first_element() + static_cast<int>(i);
  return -1;
}

}  // namespace baywright::fit
