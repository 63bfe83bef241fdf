#include "fit/seat.h"

#include "fit/seats.h"

#include <algorithm>
#include <utility>

namespace baywright::fit {

using parts::Coordinate;

namespace {

/// The cover that the board brings for its slot, as an element of the machine: from the screw end toward the socket.
void put_cover(Seated& out, const build::Place& place, const HostPlace& at) {
  const build::Cover& cover = *place.cover;
  Scene& scene = out.scene;
  parts::Part part;
  const int above = scene.add(cover.above.dimension);
  const Coordinate low = Coordinate::of(above);
  const Coordinate high = low + Coordinate::of(scene.add(cover.thickness.dimension));
  double end = 0.0;
  for (const int size : place.sizes) end = std::max(end, static_cast<double>(build::length_code(size)));
  part.bodies.push_back(
      parts::box_body("cover", {-0.5 * cover.width, end - cover.length, low}, {0.5 * cover.width, end, high}));
  out.machine[put(scene, at.frame, part, 0, place.name + " cover")] = above;
}

}  // namespace

bool seats(const build::Drive& drive, const Questions& questions) {
  if (questions.form_factor.answer != Answer::yes || questions.interface.answer != Answer::yes) return false;
  return !parts::cased(drive.outer()) || drive.cased.whole();
}

Seated seat(const Host& host, const build::Build& build, const build::Drive& drive, int place,
            std::span<const double> values) {
  const build::Place& at = build.places[static_cast<std::size_t>(place)];
  const HostPlace& there = host.places[static_cast<std::size_t>(place)];
  Seated out{Scene(&host.scene)};
  out.scene.fixed.assign(values.begin(), values.end());
  out.slot = there.frame;
  Stand stand{there, {}};
  const PlacedPart& carrier = host.parts[static_cast<std::size_t>(at.part)];
  for (int i = 0; i < carrier.count; ++i) stand.carrier.insert(carrier.first + i);
  if (std::holds_alternative<build::M2Socket>(at.socket))
    seat_m2(out, drive, stand);
  else if (std::holds_alternative<build::MiniSocket>(at.socket))
    seat_mini(out, drive, stand);
  else if (const auto* slot = std::get_if<build::CardSlot>(&at.socket))
    seat_card(out, drive, *slot, stand);
  else
    seat_cased(out, drive, at, stand);
  if (at.cover) put_cover(out, at, there);
  return out;
}

}  // namespace baywright::fit
