// The tool's room is the union over the travel: the shaft from the head as far as it is long, the handle from there as
// far as it is long and the screw stands out when it is started. Each is a cylinder that moves with the screw, and its
// gap to every element near it has limits like any other gap. Steps: the tree gives what is near; a plain gap wider
// than all limits could close is left; the rest goes through limits().
#include "fit/reach.h"

#include "geometry/gap.h"
#include "geometry/limits.h"
#include "geometry/travel.h"
#include "standards/tools.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <utility>

namespace baywright::fit {

using geometry::Vec3;

namespace {

constexpr int lever_directions = 24;  // 15 degrees apart, which is what a lever swings: together they leave none out

bool moved_by_open(const Scene& scene, const Element& element) {
  return std::any_of(element.motions.begin(), element.motions.end(),
                     [&](const Motion& motion) { return scene.dimension(motion.dimension).open(); });
}

Verdict verdict_of_gap(const GapLimits& found) {
  const Verdict worst = verdict_of(found.min - found.error, found.max - found.error, 0.0);
  const Verdict best = verdict_of(found.min + found.error, found.max + found.error, 0.0);
  if (found.error <= geometry::touch_mm) return verdict_of(found.min, found.max, 0.0);
  return worst == best ? worst : Verdict::undecided;
}

Verdict worst_of(const std::vector<Meeting>& met, const Tried::Stays& stays) {
  Verdict verdict = Verdict::fits;
  for (const Meeting& each : met)
    if (stays(each.element)) verdict = worse(verdict, each.verdict);
  return verdict;
}

}  // namespace

Verdict Tried::verdict(const Stays& stays) const {
  Verdict best = lever.empty() ? Verdict::fits : Verdict::does_not_fit;
  for (const std::vector<Meeting>& direction : lever) best = std::min(best, worst_of(direction, stays));
  return worse(worst_of(met, stays), best);
}

std::vector<Meeting> Tried::meets(const Stays& stays) const {
  std::vector<Meeting> all = met;
  const auto least = std::min_element(lever.begin(), lever.end(), [&](const auto& a, const auto& b) {
    return worst_of(a, stays) < worst_of(b, stays);
  });
  if (least != lever.end()) all.insert(all.end(), least->begin(), least->end());
  std::erase_if(all, [&](const Meeting& each) { return !stays(each.element); });
  std::stable_sort(all.begin(), all.end(), [](const Meeting& a, const Meeting& b) { return a.verdict > b.verdict; });
  return all;
}

Reach::Reach(const Scene& scene, Near near, tolerance::Method method)
    : scene_(scene), near_(std::move(near)), method_(method), scratch_(scene.below) {
  scratch_.dimensions = scene.dimensions;
  scratch_.values = scene.values;
}

Element Reach::placed(const Turned& turned, const Vec3& across, parts::Body body) {
  Frame frame;
  frame.pose.turn = geometry::Mat3(across, glm::cross(turned.axis, across), turned.axis);
  frame.pose.shift = turned.at;
  frame.motions = turned.motions;
  parts::Part part;
  part.bodies.push_back(std::move(body));
  scratch_.elements.clear();
  put(scratch_, frame, part, 0, "driver");
  return std::move(scratch_.elements.front());
}

Element Reach::bar(const Turned& turned, double diameter, double low, double high) {
  return placed(turned, geometry::square_to(turned.axis), parts::round_body("bar", 0.0, 0.0, diameter, low, high));
}

/// From the axis outward, as wide as it sweeps in one swing.
Element Reach::lever(const Turned& turned, const build::Tool& tool, int direction) {
  const Vec3 side = geometry::square_to(turned.axis);
  const double turn = 2.0 * std::numbers::pi * direction / lever_directions;
  const Vec3 along = side * std::cos(turn) + glm::cross(turned.axis, side) * std::sin(turn);
  const double half = 0.5 * std::min(standards::tools::lever_width().nominal, tool.handle);
  const double far = half + tool.lever * std::tan(0.5 * standards::tools::lever_swing() * std::numbers::pi / 180.0);
  parts::Body body;
  body.name = "lever";
  body.form = parts::Body::Form::prism;
  body.outline = {{0.0, -half}, {tool.lever, -far}, {tool.lever, far}, {0.0, half}};
  body.low = {0.0, -far, tool.shaft_length};
  body.high = {tool.lever, far, tool.shaft_length + tool.handle_length + turned.travel};
  return placed(turned, glm::normalize(along), std::move(body));
}

void Reach::add_meetings(const Element& element, Where where, std::vector<Meeting>& met) {
  near_(swept(element), found_);
  for (const int index : found_) {
    const Element& other = scene_.element(index);
    const geometry::Gap gap = geometry::gap(element.placed, other.placed);
    const double swing = glm::length(element.swing + other.swing);
    const bool open = moved_by_open(scene_, element) || moved_by_open(scene_, other);
    if (!open && gap.bound != geometry::Bound::surface && gap.mm - gap.error >= swing) continue;
    GapLimits found = limits(scene_, element, other, method_, 0.0);
    const Verdict verdict = found.surface ? Verdict::undecided : verdict_of_gap(found);
    if (verdict != Verdict::fits) met.push_back({index, where, verdict, std::move(found)});
  }
}

Tried Reach::try_tool(const Turned& turned, const build::Tool& tool) {
  Tried out;
  out.tool = &tool;
  const double top = tool.shaft_length + tool.handle_length + turned.travel;
  out.need = top;
  if (turned.across > 0.0 && turned.travel > 0.0)
    add_meetings(bar(turned, turned.across, 0.0, turned.travel), Where::head, out.met);
  if (tool.shaft_length > 0.0) add_meetings(bar(turned, tool.shaft, 0.0, tool.shaft_length), Where::shaft, out.met);
  add_meetings(bar(turned, tool.handle, tool.shaft_length, top), Where::handle, out.met);
  if (tool.lever > 0.0)
    for (int direction = 0; direction < lever_directions; ++direction) {
      out.lever.emplace_back();
      add_meetings(lever(turned, tool, direction), Where::lever, out.lever.back());
    }
  return out;
}

double Reach::room(const Turned& turned, const build::Tool& tool, const std::vector<Meeting>& met) {
  constexpr double disc = 1e-3;  // mm: a thin one moves along the axis and finds the first face
  double least = tool.shaft_length + tool.handle_length + turned.travel;
  for (const Meeting& each : met) {
    if (each.where == Where::lever) continue;
    const double across = each.where == Where::head    ? turned.across
                          : each.where == Where::shaft ? tool.shaft
                                                       : tool.handle;
    const std::array moving = {bar(turned, across, 0.0, disc).placed};
    const std::array fixed = {scene_.element(each.element).placed};
    const geometry::Travel way = geometry::travel(moving, fixed, turned.axis);
    if (way.meets) least = std::min(least, way.mm + disc);
  }
  return least;
}

std::vector<Motion> motions_of_face(const Scene& scene, const Element& head, const Vec3& face) {
  std::vector<Motion> out;
  for (const Motion& each : head.motions) {
    Motion rigid_one;
    rigid_one.dimension = each.dimension;
    rigid_one.shift = each.shift;
    rigid_one.turn = each.turn;
    if (!scene.dimension(each.dimension).open()) rigid_one.shift += each.at(face) - (each.shift + each.turn * face);
    out.push_back(rigid_one);
  }
  return out;
}

}  // namespace baywright::fit
