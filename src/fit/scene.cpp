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

/// How the body grows with a dimension.
Motion growth(const Body& body, int dimension, const Vec3& low, const Vec3& high, const geometry::Pose& pose) {
  Motion motion;
  motion.dimension = dimension;
  for (int axis = 0; axis < 3; ++axis) {
    const auto i = static_cast<std::size_t>(axis);
    Stretch stretch;
    stretch.low_rate = body.low[i].slope(dimension);
    stretch.high_rate = body.high[i].slope(dimension);
    if (stretch.low_rate == 0.0 && stretch.high_rate == 0.0) continue;
    stretch.axis = pose.turn[axis];
    const double origin = glm::dot(stretch.axis, pose.shift);
    stretch.low = origin + low[axis];
    stretch.high = origin + high[axis];
    stretch.sides_only = body.form == Body::Form::box || axis == body.axis;
    motion.stretches[static_cast<std::size_t>(motion.stretch_count++)] = stretch;
  }
  return motion;
}

void add_motion(std::vector<Motion>& motions, const Motion& more) {
  for (Motion& motion : motions)
    if (motion.dimension == more.dimension) {
      motion.shift += more.shift;
      motion.turn += more.turn;
      for (int i = 0; i < more.stretch_count; ++i)
        motion.stretches[static_cast<std::size_t>(motion.stretch_count++)] =
            more.stretches[static_cast<std::size_t>(i)];
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
    Vec3 fastest = glm::abs(motion.shift + motion.turn * middle);
    for (int axis = 0; axis < 3; ++axis) fastest += glm::abs(motion.turn[axis]) * half[axis];
    for (int i = 0; i < motion.stretch_count; ++i) {
      const Stretch& stretch = motion.stretches[static_cast<std::size_t>(i)];
      fastest += glm::abs(stretch.axis) * std::max(std::abs(stretch.low_rate), std::abs(stretch.high_rate));
    }
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

Vec3 Motion::at(const Vec3& x) const {
  constexpr double on_side = 1e-6;  // mm; witness points are good to 1e-9, sides stand 1e-6 apart at the least
  Vec3 v = shift + turn * x;
  for (int i = 0; i < stretch_count; ++i) {
    const Stretch& stretch = stretches[static_cast<std::size_t>(i)];
    const double along = glm::dot(stretch.axis, x);
    if (!stretch.sides_only) {
      const double share = (along - stretch.low) / (stretch.high - stretch.low);
      v += stretch.axis * (stretch.low_rate + share * (stretch.high_rate - stretch.low_rate));
    } else if (std::abs(along - stretch.high) <= on_side) {
      v += stretch.axis * stretch.high_rate;
    } else if (std::abs(along - stretch.low) <= on_side) {
      v += stretch.axis * stretch.low_rate;
    }
  }
  return v;
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
  Motion motion;
  motion.dimension = dimension;
  motion.shift = shift - glm::cross(rate, pivot);
  motion.turn = cross_matrix(rate);
  return motion;
}

void Frame::go(std::span<const double> values, Step::Next next) {
  pose = next(pose, values);
  step = std::make_shared<const Step>(Step{std::move(step), std::move(next)});
}

Frame moved(const Scene& scene, const Frame& frame, const Coordinates& by) {
  Frame out = frame;
  out.go(scene.values, [by](const geometry::Pose& before, std::span<const double> values) -> geometry::Pose {
    return {before.turn, before.point(at(by, values))};
  });
  for (int axis = 0; axis < 3; ++axis)
    for (const parts::Share& share : by[static_cast<std::size_t>(axis)].shares)
      add_motion(out.motions, rigid(share.dimension, share.factor * frame.pose.turn[axis], Vec3(0.0), Vec3(0.0)));
  return out;
}

Frame turned(const Frame& frame, const Mat3& turn) {
  Frame out = frame;
  out.go({}, [turn](const geometry::Pose& before, std::span<const double>) -> geometry::Pose {
    return {before.turn * turn, before.shift};
  });
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
    Element element{name, body.name, {std::move(shaped.solid), frame.pose.after(shaped.pose)},
                    {},   Vec3(0.0), frame.motions};
    element.bounds = geometry::bounds(element.placed);
    const Vec3 low = at(body.low, scene.values);
    const Vec3 high = at(body.high, scene.values);
    for (const int dimension : dimensions_of(body))
      add_motion(element.motions, growth(body, dimension, low, high, frame.pose));
    element.swing = swing_of(element, scene);
    element.made_from = std::make_shared<const Body>(std::move(body));
    element.step = frame.step;
    scene.elements.push_back(std::move(element));
  }
  return first;
}

int find_element(const Scene& scene, std::string_view part, std::string_view body) {
  for (std::size_t i = 0; i < scene.elements.size(); ++i)
    if (scene.elements[i].part == part && scene.elements[i].body == body)
      return scene.first_element() + static_cast<int>(i);
  return -1;
}

}  // namespace baywright::fit
