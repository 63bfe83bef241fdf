#include "render/put_in.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace baywright::render {

using geometry::Movement;
using geometry::Pose;

namespace {

/// Of the time: parts that hinder come out, screws are lifted.
constexpr double cleared = 0.2;

/// How long a movement is to the eye, mm: a turn counts by the way of the drive's far end.
double length_of(const Movement& movement, double reach) {
  return glm::length(movement.shift) + std::abs(movement.degrees) * std::numbers::pi / 180.0 * reach;
}

Pose on_the_way(const Model& model, double out) {
  const double reach = glm::length(model.drive.high - model.drive.low);
  double left = 0.0;
  for (const Movement& movement : model.way_in) left += length_of(movement, reach);
  left = out * std::min(left, 1.5 * reach);
  Pose pose;
  for (const Movement& movement : model.way_in) {
    const double length = length_of(movement, reach);
    if (!(left > 0.0)) break;
    pose = movement.at(length > left ? left / length : 1.0).after(pose);
    left -= length;
  }
  return pose;
}

}  // namespace

Pose stands_at(const Model& model, const Thing& thing, double apart, double put_in) {
  const double out = model.way_in.empty() ? 0.0 : 1.0 - std::clamp(put_in, 0.0, 1.0);
  Pose pose;
  if (thing.drive && !thing.late) pose = on_the_way(model, std::max(0.0, out - cleared) / (1.0 - cleared));
  double share = std::clamp(apart, 0.0, 1.0);
  if (thing.late || thing.out_first) share = std::max(share, std::min(1.0, out / cleared));
  pose.shift += share * thing.apart;
  return pose;
}

geometry::Bounds grown(const geometry::Bounds& room, const Model& model, double apart, double put_in) {
  geometry::Bounds out = room;
  const double reach = glm::length(model.drive.high - model.drive.low);
  const auto moved_box = [](const geometry::Pose& moved, const geometry::Bounds& box) {
    geometry::Bounds around = geometry::Bounds::empty();
    for (int i = 0; i < 8; ++i) around.add(moved.point(box.corner(i)));
    return around;
  };
  for (const Thing& thing : model.things) {
    if (!thing.drive && !thing.out_first) continue;
    const geometry::Pose moved = stands_at(model, thing, apart, put_in);
    geometry::Bounds box = moved_box(moved, thing.bounds);
    if (!thing.drive) {  // of a large tray only what is over the drive
      const geometry::Bounds drive = moved_box(moved, model.drive);
      box.low = glm::max(box.low, glm::min(model.drive.low, drive.low) - geometry::Vec3(0.05 * reach));
      box.high = glm::min(box.high, glm::max(model.drive.high, drive.high) + geometry::Vec3(0.05 * reach));
      if (!(box.low.x <= box.high.x && box.low.y <= box.high.y && box.low.z <= box.high.z)) continue;
    }
    out.add(box);
  }
  return out;
}

}  // namespace baywright::render
