// The card stands on two supports: the socket's seat and the stand-off at its screw. A stand-off that is taller than
// the seat by h tilts it about the seat by atan(h / length). Sideways it has the play of its edge in the socket and the
// play of its screw hole about the screw; the two turn it about the other end. Along it has the play at the screw.
#include "fit/seats.h"
#include "parts/m2_card.h"

#include <cmath>
#include <numbers>
#include <utility>

namespace baywright::fit {

using geometry::Mat3;
using geometry::Vec3;
using parts::Coordinate;
namespace m2 = standards::m2;

namespace {

struct Seating {
  const build::Drive& drive;
  const Stand& stand;
  Seated& out;

  void mate(int a, int b) const { out.mate(a, b); }
  [[nodiscard]] int card_body(const char* body) const { return find_element(out.scene, drive.name, body); }
};

tolerance::Dimension called(tolerance::Dimension row, const std::string& name) {
  row.name = name;
  return row;
}

/// The card's frame and what moves it.
void place_card(Seating& s, Coordinate thickness) {
  Scene& scene = s.out.scene;
  const HostPlace& slot = s.stand.at;
  const double length = s.out.length;
  const int side = scene.add(called(m2::tab_play(), "side play at the socket"));
  const int across = scene.add(called(m2::screw_play(), "side play at the screw"));
  const int along = scene.add(called(m2::screw_play(), "end play at the screw"));
  const double seat = slot.seat;
  const auto rise_over = [seat, standoff = slot.standoff,
                          solder = m2::solder().nominal](std::span<const double> values) {
    return values[static_cast<std::size_t>(standoff)] + solder - seat;
  };

  const geometry::Pose at = slot.frame.pose;
  Frame frame = slot.frame;
  frame.go(scene.values, [=](const geometry::Pose& before, std::span<const double> values) -> geometry::Pose {
    const auto value = [values](int i) { return values[static_cast<std::size_t>(i)]; };
    const double yaw = -std::atan((value(across) - value(side)) / length);
    const double lean = std::atan(rise_over(values) / length);
    const double degrees = 180.0 / std::numbers::pi;
    return {before.turn * geometry::rotation({0, 0, 1}, yaw * degrees) * geometry::rotation({1, 0, 0}, lean * degrees),
            before.point({value(side), value(along), seat})};
  });
  const double tilt = std::atan(rise_over(scene.values) / length);
  const Vec3 pivot = frame.pose.shift;
  const Vec3 x = at.turn[0];
  const Vec3 y = at.turn[1];
  const Vec3 z = at.turn[2];
  const double rate = std::cos(tilt) * std::cos(tilt) / length;
  frame.motions.push_back(rigid(slot.standoff, Vec3(0.0), frame.pose.turn[0] * rate, pivot));
  frame.motions.push_back(rigid(side, x, z / length, pivot));
  frame.motions.push_back(rigid(across, Vec3(0.0), -z / length, pivot));
  frame.motions.push_back(rigid(along, y, Vec3(0.0), pivot));
  s.out.card = moved(scene, frame, {0.0, 0.0, std::move(thickness)});
}

void put_fixings(Seating& s, const Coordinate& thickness) {
  Scene& scene = s.out.scene;
  const HostPlace& slot = s.stand.at;
  int standoff = -1;
  for (const auto& [size, element] : slot.soldered)
    if (build::length_code(size) == static_cast<int>(s.out.length)) standoff = element;
  const bool own = standoff < 0;
  if (own) {
    const int flange = scene.add(m2::standoff_flange());
    standoff = put(scene, moved(scene, slot.frame, {0.0, s.out.length, 0.0}),
                   parts::m2_standoff(Coordinate::of(flange), Coordinate::of(slot.standoff)), 0, "stand-off");
  }
  const parts::Part head = parts::m2_screw();
  const Coordinate top = Coordinate::of(slot.standoff) + Coordinate(m2::solder().nominal) + thickness;
  const int offset = scene.add(head.dimensions);
  const int screw = put(scene, moved(scene, slot.frame, {0.0, s.out.length, top}), head, offset, "screw");
  s.out.joint_drive.insert(screw);
  s.out.fixed_after.insert(screw);
  const Vec3 z = slot.frame.pose.turn[2];
  const double up = top.at(scene.values) + scene.values[static_cast<std::size_t>(offset) + 1];
  s.out.screws.push_back({slot.frame.pose.point({0.0, s.out.length, up}), z, "M2",  // common practice, no source
                          scene.values[static_cast<std::size_t>(offset)], 3.0, screw});
  if (own) {
    s.out.fixed_after.insert(standoff);
    s.out.joint_drive.insert(standoff);
    for (const int element : s.stand.carrier) s.mate(standoff, element);  // it stands on the board
  }
  for (const char* body : {"edge", "card", "chips", "chips underneath", "strip"}) {
    const int element = s.card_body(body);
    // The pads round the hole are kept free for stand-off and screw: the standard's provision, not a chance meeting.
    s.mate(element, standoff);
    s.mate(element, screw);
  }
  s.mate(standoff, screw);
}

void put_wears(Seating& s, const parts::M2Card& card, int offset) {
  Scene& scene = s.out.scene;
  const double end = card.chips_to;  // at the centre line
  const double start = card.chips_from.base;
  Coordinate z = card.chips_top.shifted(offset);
  int below = s.card_body("chips");
  for (std::size_t i = 0; i < s.drive.wears.size(); ++i) {
    const auto* pad = std::get_if<build::Pad>(&s.drive.wears[i]);
    const auto* over =
        std::get_if<build::Heatsink>(&s.drive.wears[pad != nullptr && i + 1 < s.drive.wears.size() ? i + 1 : i]);
    double from = start;
    double to = end;
    double half = 11.0;
    if (over != nullptr) {
      const auto values = parts::nominal_values(over->part);
      const double length = parts::outer_face(over->part, 1, true).at(values);
      half = parts::outer_face(over->part, 0, true).at(values);
      from = over->from ? *over->from : 0.5 * (start + end - length);
      to = from + length;
    }
    if (pad != nullptr) {
      const Coordinate thickness = Coordinate::of(scene.add(pad->free_thickness.dimension), 1.0 - pad->compress);
      if (pad->length) {
        const double middle = 0.5 * (from + to);
        from = middle - 0.5 * pad->length->dimension.nominal;
        to = middle + 0.5 * pad->length->dimension.nominal;
      }
      parts::Part part;
      part.bodies.push_back(
          parts::box_body("pad", {-half, std::max(from, start), z}, {half, std::min(to, end), z + thickness}));
      const int own = put(scene, s.out.card, part, 0, pad->name);
      s.mate(below, own);
      below = own;
      z += thickness;
      continue;
    }
    const int own = scene.add(over->part.dimensions);
    const int first = put(scene, moved(scene, s.out.card, {0.0, from, z}), over->part, own, over->name);
    s.mate(below, first);
    below = first;
    z += parts::outer_face(over->part, 2, true).shifted(own);
  }
}

/// Which elements the published stack holds together, and the contacts in it that are meant.
void join(Seating& s) {
  const HostPlace& slot = s.stand.at;
  s.out.joint_host.insert(s.stand.carrier.begin(), s.stand.carrier.end());
  s.out.joint_host.insert({slot.socket, slot.socket + 1});
  for (const auto& [size, element] : slot.soldered) {
    s.out.joint_host.insert(element);
    s.mate(s.card_body("card"), element);
  }
  s.mate(s.card_body("edge"), slot.socket);
  s.mate(s.card_body("edge"), slot.socket + 1);
  s.mate(s.card_body("card"), slot.socket + 1);
  for (const char* body : {"edge", "card", "chips", "chips underneath", "strip"})
    if (const int element = s.card_body(body); element >= 0) s.out.joint_drive.insert(element);
}

}  // namespace

void seat_m2(Seated& out, const build::Drive& drive, const Stand& stand) {
  Seating s{drive, stand, out};
  const parts::M2Card& card = drive.m2;
  out.length = card.hole_y;
  const int offset = out.scene.add(card.part.dimensions);
  const int first = out.scene.element_count();
  const Coordinate thickness = -1.0 * card.underside.shifted(offset);
  place_card(s, thickness);
  put(out.scene, out.card, card.part, offset, drive.name);
  const int last = out.scene.element_count();
  for (int a = first; a < last; ++a)
    for (int b = a + 1; b < last; ++b) s.mate(a, b);  // one card
  put_fixings(s, thickness);
  put_wears(s, card, offset);
  join(s);
}

}  // namespace baywright::fit
