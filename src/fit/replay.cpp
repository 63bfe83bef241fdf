#include "fit/replay.h"

#include "geometry/limits.h"

#include <algorithm>
#include <limits>
#include <utility>

namespace baywright::fit {

using geometry::Piece;
using geometry::Vec2;
using geometry::Vec3;
using parts::Body;

namespace {

constexpr double infinite = std::numeric_limits<double>::infinity();

Vec3 at(const parts::Coordinates& c, std::span<const double> values) {
  return {c[0].at(values), c[1].at(values), c[2].at(values)};
}

Vec2 base_of(const Vec3& size, int axis) {
  return {size[(axis + 1) % 3], size[(axis + 2) % 3]};
}

/// How a body's solid is extruded: a box along z, as geometry::Solid::box has it.
int extrusion(const Body& body) {
  return body.form == Body::Form::box ? 2 : body.axis;
}

Measured of(const geometry::Gap& gap) {
  return {gap.mm, gap.bound == geometry::Bound::surface ? infinite : gap.error};
}

}  // namespace

Replay::Replay(const Scene& scene, std::span<const int> elements) {
  stages_.push_back({nullptr, 0});
  for (const int index : elements) {
    const Element& element = scene.element(index);
    const Body& body = *element.made_from;
    Item made{&body, step_of(element.step), geometry::Mat3(1.0), Vec3(0.0), Vec2(0.0), {}, {}};
    const Vec3 low = at(body.low, scene.values);
    const auto shaped = parts::shape(body, scene.values);
    if (const auto* there = std::get_if<parts::Shaped>(&shaped)) {
      made.turn = there->pose.turn;
      if (body.form == Body::Form::mesh) made.corner = there->pose.shift - low;
    }
    if (element.placed.solid.mesh() != nullptr) made.mesh = element.placed;
    const auto pieces = element.placed.solid.pieces();
    made.cut.assign(pieces.begin(), pieces.end());
    made.pieces = made.cut;
    made.boxes.resize(made.cut.size());
    made.base = base_of(at(body.high, scene.values) - low, extrusion(body));
    items_.push_back(std::move(made));
  }
  poses_.resize(stages_.size());
  put(scene.values);
}

/// The stage of a step, and before it those that lead there.
std::size_t Replay::step_of(const std::shared_ptr<const Step>& step) {
  if (step == nullptr) return 0;
  for (std::size_t i = 1; i < stages_.size(); ++i)
    if (stages_[i].step == step.get()) return i;
  std::vector<const Step*> way;
  std::size_t from = 0;
  for (const Step* each = step.get(); each != nullptr && from == 0; each = each->before.get()) {
    for (std::size_t i = 1; i < stages_.size() && from == 0; ++i)
      if (stages_[i].step == each) from = i;
    if (from == 0) way.push_back(each);
  }
  for (auto each = way.rbegin(); each != way.rend(); ++each) {
    stages_.push_back({*each, from});
    from = stages_.size() - 1;
  }
  return from;
}

void Replay::put(std::span<const double> values) {
  values_ = values;
  for (std::size_t i = 1; i < stages_.size(); ++i) poses_[i] = stages_[i].step->next(poses_[stages_[i].before], values);
  for (Item& each : items_) put_item(each);
}

void Replay::put_item(Item& item) const {
  const Vec3 low = at(item.body->low, values_);
  const Vec3 high = at(item.body->high, values_);
  item.size = high - low;
  // As geometry::Solid has it.
  item.solid = item.mesh || std::min({item.size.x, item.size.y, item.size.z}) >= geometry::thinnest_mm;
  item.cut_anew = false;
  const geometry::Pose& frame = poses_[item.step];
  Vec3 foot = low + item.corner;
  if (item.body->form == Body::Form::cylinder) {
    foot = 0.5 * (low + high);
    foot[item.body->axis] = low[item.body->axis];
  }
  item.pose = frame.after({item.turn, foot});
  if (item.mesh) item.mesh->pose = item.pose;
  const Vec3 middle = frame.point(0.5 * (low + high));
  Vec3 half(0.0);
  for (int axis = 0; axis < 3; ++axis) half += 0.5 * item.size[axis] * glm::abs(frame.turn[axis]);
  item.box = {middle - half, middle + half};
}

void Replay::cut_anew(Item& item) const {
  if (item.cut_anew) return;
  item.cut_anew = true;
  const int axis = extrusion(*item.body);
  const Vec2 base = base_of(item.size, axis);
  const Vec2 grown = base / item.base;
  for (std::size_t i = 0; i < item.pieces.size(); ++i) {
    Piece& piece = item.pieces[i];
    piece.height = item.size[axis];
    // What an outline is stretched by, its convex pieces are stretched by.
    for (std::size_t k = 0; k < piece.corners.size(); ++k) piece.corners[k] = item.cut[i].corners[k] * grown;
    if (piece.base != Piece::Base::polygon) piece.radius = 0.5 * base.x;
    if (piece.base == Piece::Base::ring) {
      piece.bore = 0.5 * item.body->bore.at(values_);
      item.solid = item.solid && piece.radius - piece.bore >= geometry::thinnest_mm && piece.bore > 0.0;
    }
    item.boxes[i] = item.pieces.size() == 1 ? item.box : geometry::bounds(piece, item.pose);
  }
}

Measured Replay::gap(int a, int b) {
  Item& one = items_[static_cast<std::size_t>(a)];
  Item& other = items_[static_cast<std::size_t>(b)];
  if (!one.solid || !other.solid) return {infinite, 0.0};
  if (one.mesh || other.mesh) return mesh_gap(one, other);
  cut_anew(one);
  cut_anew(other);
  if (!one.solid || !other.solid) return {infinite, 0.0};
  const auto apart = [&](std::size_t i, std::size_t j) { return one.boxes[i].distance(other.boxes[j]); };
  // The pieces that look closest first: then most others are seen to be farther by their boxes alone.
  std::pair<std::size_t, std::size_t> first{0, 0};
  for (std::size_t i = 0; i < one.pieces.size(); ++i)
    for (std::size_t j = 0; j < other.pieces.size(); ++j)
      if (apart(i, j) < apart(first.first, first.second)) first = {i, j};
  const auto measure = [&](std::size_t i, std::size_t j) {
    return of(geometry::gap(one.pieces[i], one.pose, other.pieces[j], other.pose));
  };
  Measured least = measure(first.first, first.second);
  for (std::size_t i = 0; i < one.pieces.size(); ++i)
    for (std::size_t j = 0; j < other.pieces.size(); ++j) {
      if (std::pair(i, j) == first || apart(i, j) >= std::max(least.mm, geometry::touch_mm)) continue;
      const Measured found = measure(i, j);
      if (found.mm < least.mm) least = found;
    }
  return least;
}

/// Against a mesh the other has to be a whole solid again.
Measured Replay::mesh_gap(const Item& a, const Item& b) const {
  std::vector<geometry::Placed> placed;
  for (const Item* each : {&a, &b}) {
    if (each->mesh) {
      placed.push_back(*each->mesh);
      continue;
    }
    auto made = parts::shape(*each->body, values_);
    auto* shaped = std::get_if<parts::Shaped>(&made);
    if (shaped == nullptr) return {infinite, 0.0};
    placed.push_back({std::move(shaped->solid), poses_[each->step].after(shaped->pose)});
  }
  return of(geometry::gap(placed[0], placed[1]));
}

}  // namespace baywright::fit
