#include "fit/host.h"

#include "fit/seat.h"
#include "parts/addin_card.h"
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
Coordinates against(const build::HostPart& host, int own, const parts::Part& target, int theirs,
                    const Coordinate& gap) {
  const build::Position& at = host.position;
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
    PlacedPart place;
    Coordinate gap(0.0);
    if (measured) {
      place.distance = scene.add(at.by.dimension);
      gap = Coordinate::of(place.distance);
    }
    if (part.spacers)  // their length is in the distance already: what they add is how far they are off it
      gap += Coordinate::of(scene.add(part.spacers->dimension)) - Coordinate(part.spacers->dimension.nominal);
    offsets.push_back(scene.add(part.part.dimensions));
    if (at.kind == build::Position::Kind::fixed) {
      place.frame = moved(scene, {}, {at.at.x, at.at.y, at.at.z});
    } else {
      const auto target = static_cast<std::size_t>(at.target);
      place.frame = moved(scene, host.parts[target].frame,
                          against(part, offsets[i], build.parts[target].part, offsets[target], gap));
    }
    place.first = put(scene, place.frame, part.part, offsets[i], part.name);
    place.count = scene.element_count() - place.first;
    host.parts.push_back(std::move(place));
  }
}

void place_socket(Host& host, const build::Build& build, const build::Place& place, const std::vector<int>& offsets) {
  const auto carrier = static_cast<std::size_t>(place.part);
  Scene& scene = host.scene;
  Coordinates on_face;
  std::size_t given = 0;
  for (int axis = 0; axis < 3; ++axis)
    on_face[static_cast<std::size_t>(axis)] =
        axis == place.axis ? face_of(build.parts[carrier].part, offsets[carrier], axis, !place.back)
                           : Coordinate(place.at[given++]);
  const Vec3 z = place.outward();
  const Vec3 y = place.toward;
  const Frame frame = turned(moved(scene, host.parts[carrier].frame, on_face), Mat3(glm::cross(y, z), y, z));
  HostPlace placed;
  if (const auto* socket = std::get_if<build::M2Socket>(&place.socket)) {
    placed = put_m2_socket(scene, frame, *socket->height_class,
                           place.standoff ? place.standoff->dimension : socket->height_class->standoff,
                           place.name + " socket");
    for (const int size : place.soldered) {
      const parts::Part standoff = parts::m2_standoff(Coordinate::of(scene.add(standards::m2::standoff_flange())),
                                                      Coordinate::of(placed.standoff));
      placed.soldered.emplace_back(size, put(scene, moved(scene, frame, {0.0, build::length_code(size), 0.0}), standoff,
                                             0, place.name + " stand-off " + std::to_string(size)));
    }
  } else if (const auto* slot = std::get_if<build::CardSlot>(&place.socket)) {
    const parts::Part body = parts::card_slot(slot->lanes);
    placed.socket = put(scene, frame, body, scene.add(body.dimensions), place.name + " socket");
    placed.count = scene.element_count() - placed.socket;
  } else if (place.standoff) {
    placed.standoff = scene.add(place.standoff->dimension);
  }
  placed.frame = frame;
  host.places.push_back(std::move(placed));
}

/// What sits at a place already becomes part of the machine.
void put_held(Host& host, const build::Build& build, std::size_t place, std::span<const double> values) {
  const build::Drive& drive = build.held[static_cast<std::size_t>(build.places[place].holds)];
  Seated held = seat(host, build, drive, static_cast<int>(place), values);
  // A seating's indices go on where the machine's end, so it can be laid on as it is.
  host.scene.dimensions.insert(host.scene.dimensions.end(), held.scene.dimensions.begin(), held.scene.dimensions.end());
  host.scene.values = held.scene.values;
  std::vector<Element> elements;
  for (int i = held.scene.first_element(); i < held.scene.element_count(); ++i)
    if (held.brings(i)) elements.push_back(held.scene.element(i));
  host.scene.elements.insert(host.scene.elements.end(), elements.begin(), elements.end());
}

}  // namespace

HostPlace put_m2_socket(Scene& scene, const Frame& frame, const standards::m2::SocketClass& height_class,
                        const tolerance::Dimension& standoff, const std::string& name) {
  HostPlace placed;
  placed.frame = frame;
  const parts::Part body = parts::m2_socket(height_class);
  placed.socket = put(scene, frame, body, scene.add(body.dimensions), name);
  placed.count = scene.element_count() - placed.socket;
  placed.seat = height_class.standoff.nominal + standards::m2::solder().nominal;
  placed.standoff = scene.add(standoff);
  return placed;
}

Host compile(const build::Build& build, std::span<const double> values) {
  Host host;
  host.scene.fixed.assign(values.begin(), values.end());
  std::vector<int> offsets;
  place_parts(host, build, offsets);
  for (const build::Place& place : build.places) place_socket(host, build, place, offsets);
  for (std::size_t i = 0; i < build.places.size(); ++i) {
    const int first = host.scene.element_count();
    if (build.places[i].holds >= 0) put_held(host, build, i, values);
    host.held.emplace_back(first, host.scene.element_count() - first);
  }
  std::vector<geometry::Bounds> boxes;
  for (const Element& element : host.scene.elements) boxes.push_back(swept(element));
  host.tree = geometry::Tree(boxes);
  return host;
}

}  // namespace baywright::fit
