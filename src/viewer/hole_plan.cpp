#include "viewer/hole_plan.h"

#include "build/part_face.h"
#include "build/spans.h"
#include "standards/m2.h"

#include <algorithm>
#include <cmath>

namespace baywright::viewer {

using build::Bay;
using build::Build;
using build::PartFace;
using build::Place;
using geometry::Vec3;

namespace {

// Of the larger side: room for the rulers at the left and below, and for what is written above.
constexpr double room_below = 0.16;
constexpr double room_above = 0.08;

const Place* called(const Build& build, const std::string& name) {
  const auto found =
      std::find_if(build.places.begin(), build.places.end(), [&](const Place& each) { return each.name == name; });
  return found == build.places.end() ? nullptr : &*found;
}

PartFace face_of(const Build& build, const Place& place) {
  return build::face_of(build.parts[static_cast<std::size_t>(place.part)].part, place.axis, place.back);
}

bool same_face(const Place& a, const Place& b) {
  return a.part == b.part && a.axis == b.axis && a.back == b.back;
}

bool has_marks(const Place& place) {
  if (std::holds_alternative<build::M2Socket>(place.socket)) return true;
  const auto* bay = std::get_if<Bay>(&place.socket);
  return bay != nullptr && bay->fixing && !bay->fixing->side && !bay->fixing->holes.empty();
}

/// The flat coordinates of the face in the world.
geometry::Pose pose_of(const Shown& shown, const Place& place, const PartFace& face) {
  const build::HostPart& host = shown.build.parts[static_cast<std::size_t>(place.part)];
  const std::vector<double> values = parts::nominal_values(host.part);
  const double level = parts::outer_face(host.part, place.axis, !place.back).at(values);
  const auto in_part = [&](const Vec2& flat) {
    const Vec2 p = face.across_axes(flat);
    return place.axis == 0 ? Vec3(level, p.x, p.y) : place.axis == 1 ? Vec3(p.x, level, p.y) : Vec3(p.x, p.y, level);
  };
  const Vec3 corner = in_part(Vec2(0.0));
  const geometry::Pose local{
      geometry::Mat3(in_part({1.0, 0.0}) - corner, in_part({0.0, 1.0}) - corner, place.outward()), corner};
  return shown.host.parts[static_cast<std::size_t>(place.part)].frame.pose.after(local);
}

void add_standoffs(const Place& place, const PartFace& face, bool chosen, std::vector<HoleMark>& out) {
  for (std::size_t i = 0; i < place.sizes.size(); ++i) {
    HoleMark mark{.kind = HoleMark::Kind::standoff, .place = place.name, .chosen = chosen, .index = i, .name = {}};
    mark.at = build::on_face(place, face, build::length_code(place.sizes[i]), 0.0);
    mark.diameter = standards::m2::standoff_flange().nominal;
    mark.name = "stand-off " + std::to_string(place.sizes[i]);
    mark.held = "A stand-off is as far from its socket as the card is long: it moves with " + place.name + " only.";
    out.push_back(std::move(mark));
  }
}

std::string own_words(const std::string& part) {
  return "This hole comes with " + part + ": it does not move.";
}

std::string there_words(const std::string& part, const std::string& place) {
  return part +
         " has this hole already, in its drawing or outline, so it does not move here. Change it there, or move " +
         place + " as a whole.";
}

/// Those of the template, with its numbers.
void add_drilled(const plans::Drilling& drilling, const std::string& chosen, std::vector<HoleMark>& out) {
  std::string before;
  std::size_t index = 0;
  for (const plans::DrillHole& hole : drilling.holes) {
    index = hole.place == before ? index + 1 : 0;
    before = hole.place;
    out.push_back({.kind = hole.own ? HoleMark::Kind::own : HoleMark::Kind::hole,
                   .at = hole.at,
                   .diameter = hole.diameter.nominal,
                   .place = hole.place,
                   .chosen = !hole.own && hole.place == chosen,
                   .index = index,
                   .name = {},
                   .there = hole.there,
                   .held = hole.own     ? own_words(drilling.part)
                           : hole.there ? there_words(drilling.part, hole.place)
                                        : std::string()});
  }
}

/// Of a board: the pattern that it is fixed by.
void add_own(const parts::Part& part, const std::string& part_name, const PartFace& face, std::vector<HoleMark>& out) {
  if (face.axis != 2) return;
  for (const parts::Hole& own : part.holes)
    out.push_back({.kind = HoleMark::Kind::own,
                   .at = face.flat({own.x, own.y}),
                   .diameter = own.diameter,
                   .place = own.name,
                   .name = {},
                   .held = own_words(part_name)});
}

/// The whole panel on one template, unless it has holes on other faces too; then this place alone.
void add_template(const Build& build, const Place& chosen, bool moving, HolePlan& out, std::vector<HoleMark>& holes) {
  auto made = plans::drilling(build, {}, out.part, !moving);
  out.whole_part = std::holds_alternative<plans::Drilling>(made);
  if (!out.whole_part) made = plans::drilling(build, chosen.name, {}, !moving);
  if (auto* drilling = std::get_if<plans::Drilling>(&made)) {
    add_drilled(*drilling, chosen.name, holes);
    out.outline = drilling->outline;
    out.drilling = std::move(*drilling);
  } else {
    out.refused = std::get<std::string>(made);
  }
}

std::string kind_of(const build::Node& tree, const std::string& place) {
  for (const char* kind : {"slot", "bay", "panel"})
    if (build::node_at(tree, {kind, place}) != nullptr) return kind;
  return {};
}

std::string figure(double mm) {
  const std::string quoted = build::length_text(std::round(mm * 1e3) / 1e3, 0.0, 0.0);
  return quoted.substr(1, quoted.size() - 2);
}

}  // namespace

bool has_hole_plan(const Build& build, const std::string& name) {
  const Place* place = called(build, name);
  return place != nullptr && has_marks(*place);
}

std::optional<HolePlan> hole_plan(const Shown& shown, bool moving) {
  const Build& build = shown.build;
  const Place* chosen = called(build, shown.choice.place);
  if (chosen == nullptr || !has_marks(*chosen)) return std::nullopt;
  const build::HostPart& host = build.parts[static_cast<std::size_t>(chosen->part)];
  const PartFace face = face_of(build, *chosen);
  HolePlan out;
  out.part = host.name;
  out.size = face.size;
  out.pose = pose_of(shown, *chosen, face);
  out.bounds = geometry::Bounds::empty();
  const double side = std::max(face.size.x, face.size.y);
  for (const Vec2& corner : {Vec2(-room_below * side), face.size + Vec2(room_above * side)})
    out.bounds.add(out.pose.point(Vec3(corner, 0.0)));
  std::vector<HoleMark> holes;
  const bool drilled = std::holds_alternative<Bay>(chosen->socket);
  if (drilled) {
    add_template(build, *chosen, moving, out, holes);
  } else {
    out.refused = "Stand-offs and holes of a board come with it: a board is never drilled.";
    out.whole_part = true;
    for (const Place& each : build.places)
      if (same_face(each, *chosen) && std::holds_alternative<build::M2Socket>(each.socket))
        add_standoffs(each, face, &each == chosen, holes);
    add_own(host.part, host.name, face, holes);
  }
  for (const Place& each : build.places)
    if (&each == chosen || (same_face(each, *chosen) && has_marks(each) && out.whole_part &&
                            each.socket.index() == chosen->socket.index()))
      out.marks.push_back({.kind = HoleMark::Kind::place,
                           .at = build::on_face(each, face, 0.0, 0.0),
                           .place = each.name,
                           .chosen = &each == chosen,
                           .name = each.name});
  if (out.outline.empty()) out.outline = {{{0.0, 0.0}, {out.size.x, 0.0}, {out.size.x, out.size.y}, {0.0, out.size.y}}};
  int number = 0;
  for (HoleMark& mark : holes) {
    mark.number = ++number;
    if (mark.name.empty()) mark.name = "hole " + std::to_string(number);
    out.marks.push_back(std::move(mark));
  }
  return out;
}

std::vector<build::Edit> moved(const Build& build, std::string_view text, const HoleMark& mark, const Vec2& to) {
  const Place* place = called(build, mark.place);
  const auto tree = build::spans(text);
  if (!mark.moves() || place == nullptr || !tree || !std::isfinite(to.x) || !std::isfinite(to.y)) return {};
  const std::string kind = kind_of(*tree, mark.place);
  if (kind.empty()) return {};
  const PartFace face = face_of(build, *place);
  build::Path path = {kind, mark.place, "on", "at"};
  Vec2 value = face.across_axes(to);
  if (mark.kind == HoleMark::Kind::hole) {
    path = {kind, mark.place, "fixing", "holes", static_cast<int>(mark.index)};
    value = build::from_place(*place, face, to);
  }
  std::vector<build::Edit> out;
  for (int i = 0; i < 2; ++i) {
    build::Path one = path;
    one.emplace_back(i);
    if (build::node_at(*tree, one) == nullptr) return {};
    out.push_back({build::Edit::What::set, std::move(one), figure(value[i])});
  }
  return out;
}

}  // namespace baywright::viewer
