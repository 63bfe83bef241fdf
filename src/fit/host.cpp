#include "fit/host.h"

#include "parts/m2_card.h"

#include <algorithm>
#include <utility>

namespace baywright::fit {

using geometry::Mat3;
using geometry::Vec3;
using parts::Coordinate;
using parts::Coordinates;

namespace {

Coordinate face_of(const parts::Part& part, int offset, int axis, bool up) {
  return parts::outer_face(part, axis, up).shifted(offset);
}

/// Where the origin of `host` stands in the frame of its target.
Coordinates against(const build::HostPart& host, int own, const parts::Part& target, int theirs, int distance) {
  const build::Position& at = host.position;
  const Coordinate gap = distance >= 0 ? Coordinate::of(distance) : Coordinate(0.0);
  Coordinates by;
  const auto along = static_cast<std::size_t>(at.axis);
  by[along] = face_of(target, theirs, at.axis, at.up) - face_of(host.part, own, at.axis, !at.up);
  by[along] += at.up ? gap : -1.0 * gap;
  int given = 0;
  for (int axis = 0; axis < 3; ++axis) {
    if (axis == at.axis) continue;
    const Coordinate low = face_of(host.part, own, axis, false);
    if (at.corner) {
      by[static_cast<std::size_t>(axis)] = Coordinate((*at.corner)[static_cast<std::size_t>(given++)]) - low;
      continue;
    }
    const Coordinate middle = 0.5 * (low + face_of(host.part, own, axis, true));
    const Coordinate target_middle = 0.5 * (face_of(target, theirs, axis, false) + face_of(target, theirs, axis, true));
    by[static_cast<std::size_t>(axis)] = target_middle - middle;
  }
  return by;
}

void place_parts(Host& host, const build::Build& build, std::vector<int>& offsets) {
  Scene& scene = host.scene;
  for (std::size_t i = 0; i < build.parts.size(); ++i) {
    const build::HostPart& part = build.parts[i];
    const build::Position& at = part.position;
    const bool measured = at.kind == build::Position::Kind::against && !at.seated;
    HostPlace place;
    if (measured) place.distance = scene.add(at.by.dimension);
    offsets.push_back(scene.add(part.part.dimensions));
    if (at.kind == build::Position::Kind::fixed) {
      place.frame.pose.shift = at.at;
    } else {
      const auto target = static_cast<std::size_t>(at.target);
      place.frame = moved(scene, host.parts[target].frame,
                          against(part, offsets[i], build.parts[target].part, offsets[target], place.distance));
    }
    place.first = put(scene, place.frame, part.part, offsets[i], part.name);
    place.count = scene.element_count() - place.first;
    host.parts.push_back(std::move(place));
  }
}

void place_slot(Host& host, const build::Build& build, const build::Slot& slot, const std::vector<int>& offsets) {
  const auto carrier = static_cast<std::size_t>(slot.part);
  Scene& scene = host.scene;
  HostSlot placed;
  const Vec3 z(0.0, 0.0, slot.back ? -1.0 : 1.0);
  const Vec3 y = slot.toward;
  placed.frame = turned(moved(scene, host.parts[carrier].frame,
                              {slot.x, slot.y, face_of(build.parts[carrier].part, offsets[carrier], 2, !slot.back)}),
                        Mat3(glm::cross(y, z), y, z));
  if (const auto* socket = std::get_if<build::M2Socket>(&slot.socket)) {
    const parts::Part body = parts::m2_socket(*socket->height_class);
    placed.socket = put(scene, placed.frame, body, scene.add(body.dimensions), slot.name + " socket");
    placed.seat = socket->height_class->standoff.nominal + standards::m2::solder().nominal;
    placed.standoff = scene.add(slot.standoff ? slot.standoff->dimension : socket->height_class->standoff);
    for (const int size : slot.soldered) {
      const double y_hole = size > 9999 ? size % 1000 : size % 100;
      const parts::Part standoff = parts::m2_standoff(Coordinate::of(scene.add(standards::m2::standoff_flange())),
                                                      Coordinate::of(placed.standoff));
      placed.soldered.emplace_back(size, put(scene, moved(scene, placed.frame, {0.0, y_hole, 0.0}), standoff, 0,
                                             slot.name + " stand-off " + std::to_string(size)));
    }
  }
  host.slots.push_back(std::move(placed));
}

}  // namespace

Host compile(const build::Build& build, std::span<const double> values) {
  Host host;
  host.scene.fixed.assign(values.begin(), values.end());
  std::vector<int> offsets;
  place_parts(host, build, offsets);
  for (const build::Slot& slot : build.slots) place_slot(host, build, slot, offsets);
  std::vector<geometry::Bounds> boxes;
  for (const Element& element : host.scene.elements) boxes.push_back(swept(element));
  host.tree = geometry::Tree(boxes);
  return host;
}

}  // namespace baywright::fit
