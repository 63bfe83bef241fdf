// A cased drive lies on the face that carries its bay, or is raised over it by a tray, spacers or stand-offs; it stands
// in the middle of the bay's width. Held by screws in clearance holes it can be anywhere within their play.
#include "fit/fixing.h"
#include "fit/seats.h"
#include "standards/adapters.h"
#include "standards/fasteners.h"
#include "standards/row.h"

#include <algorithm>

namespace baywright::fit {

using build::Bay;
using geometry::Mat3;
using parts::Body;
using parts::Coordinate;
namespace fasteners = standards::fasteners;

namespace {

constexpr double wall = 1.0;  // mm: drawn thickness of walls of which only the inner face is known

struct Seating {
  const build::Drive& drive;
  const Bay& bay;
  const std::string& place;
  const Stand& stand;
  Seated& out;
  Coordinate across;  // of the drive as it stands, mm
  Coordinate up;      // height as it stands
  Coordinate raised;
  Coordinate end;
  std::optional<Coordinate> width{};  // of the bay, where it is walled
  Frame held{};                       // the place's frame with what the holes let the drive and its screws shift

  [[nodiscard]] double value(const Coordinate& c) const { return c.at(out.scene.values); }
};

/// How far the drive may shift because of its screws: their play, and the places of the holes.
void hold(Seating& s) {
  s.held = s.stand.at.frame;
  if (!s.bay.fixing || s.bay.fixing->thread.empty()) return;
  Scene& scene = s.out.scene;
  const build::Fixing& fixing = *s.bay.fixing;
  const auto shift = [&](const tolerance::Dimension& by, std::size_t axis, const char* name) {
    tolerance::Dimension called = by;
    called.name = name;
    parts::Coordinates way;
    way[axis] = Coordinate::of(scene.add(called));
    s.held = moved(scene, s.held, way);
  };
  double widest = fixing.diameter.dimension.nominal;
  for (std::size_t i = 0; i < fixing.holes.size(); ++i) widest = std::max(widest, fixing.width(i).nominal);
  const double half = 0.5 * (widest - fasteners::thread(fixing.thread)->major.nominal);
  const bool walled = s.bay.width.has_value();  // then the walls say where it is across
  if (half > 0.0) {
    const tolerance::Dimension play = standards::derived("", 0.0, half, "hole less screw, half of it");
    shift(play, 1, "end play at the screws");
    if (!walled) shift(play, 0, "side play at the screws");
  }
  if (fixing.placed) {
    shift(*fixing.placed, 1, "place of the holes along");
    if (!walled) shift(*fixing.placed, 0, "place of the holes across");
  }
}

/// The drive hangs on its holes: where the first that is used may be in it moves its ends, not the screws.
Frame hung(Seating& s, const std::vector<UsedHole>& holes) {
  if (holes.empty() || !s.bay.fixing || s.bay.fixing->thread.empty()) return s.held;
  tolerance::Dimension own = holes.front().drive_hole->along.front();
  own.nominal = 0.0;
  return moved(s.out.scene, s.held, {0.0, -1.0 * Coordinate::of(s.out.scene.add(own)), 0.0});
}

/// mm across and along: how far holes that are there already bring the drive off its place, on the whole.
geometry::Vec2 brought(const Seating& s, const std::vector<UsedHole>& holes) {
  geometry::Vec2 sum(0.0);
  for (const UsedHole& each : holes) {
    const auto& [along, other] = s.bay.fixing->holes[each.index];
    sum += geometry::Vec2(each.other - other, each.along - along) / static_cast<double>(holes.size());
  }
  return s.bay.width ? geometry::Vec2(0.0, sum.y) : sum;  // walls say where it is across
}

void place_drive(Seating& s, const std::vector<UsedHole>& holes) {
  hold(s);
  const geometry::Vec2 by = brought(s, holes);
  // The edge called datum Y is on the left, seen from the connector; on edge it is below and the label to the left.
  const Frame frame =
      moved(s.out.scene, hung(s, holes), {(s.bay.on_edge ? 0.5 : -0.5) * s.across + Coordinate(by.x), by.y, s.raised});
  s.out.card =
      turned(frame, s.bay.on_edge ? Mat3({0, 1, 0}, {0, 0, -1}, {-1, 0, 0}) : Mat3({0, 1, 0}, {-1, 0, 0}, {0, 0, 1}));
}

/// The case and, in an adapter, what holds it.
std::vector<int> put_bodies(Seating& s, int offset) {
  std::vector<int> own;
  for (const bool adapter : {false, true}) {
    parts::Part part = s.drive.cased.part;
    std::erase_if(part.bodies, [&](const Body& body) { return (body.name == "case") == adapter; });
    const int first =
        put(s.out.scene, s.out.card, part, offset, adapter && s.drive.worn ? s.drive.worn->name : s.drive.name);
    for (int i = first; i < s.out.scene.element_count(); ++i) own.push_back(i);
  }
  for (const int a : own) {
    s.out.joint_drive.insert(a);
    for (const int b : own) s.out.mate(a, b);
    if (!s.bay.raised)
      for (const int element : s.stand.carrier) s.out.mate(a, element);  // it lies on it
  }
  return own;
}

void put_wall(Seating& s, const char* name, parts::Coordinates low, parts::Coordinates high, int dimension,
              bool guides) {
  parts::Part part;
  part.bodies.push_back(parts::box_body(name, std::move(low), std::move(high)));
  const int element = put(s.out.scene, s.stand.at.frame, part, 0, s.place);
  s.out.machine[element] = dimension;
  if (guides) s.out.joint_host.insert(element);  // what guides the drive is asked no clearance
}

void put_walls(Seating& s) {
  Scene& scene = s.out.scene;
  const Bay& bay = s.bay;
  const double far = bay.depth ? bay.depth->dimension.nominal : s.value(s.end) + 2.0;
  const double side = 0.5 * (bay.width ? bay.width->dimension.nominal : s.value(s.across) + 4.0) + wall;
  const double top = bay.height ? bay.height->dimension.nominal : s.value(s.raised) + s.value(s.up);
  if (bay.width) {
    const int width = scene.add(bay.width->dimension);
    s.width = Coordinate::of(width);
    const Coordinate half = 0.5 * *s.width;
    put_wall(s, "left wall", {-1.0 * half - Coordinate(wall), 0.0, 0.0}, {-1.0 * half, far, top}, width, true);
    put_wall(s, "right wall", {half, 0.0, 0.0}, {half + Coordinate(wall), far, top}, width, true);
  }
  if (bay.height) {
    const int height = scene.add(bay.height->dimension);
    const Coordinate under = Coordinate::of(height);
    put_wall(s, "roof", {-side, 0.0, under}, {side, far, under + Coordinate(wall)}, height, false);
  }
  if (bay.depth) {
    const int depth = scene.add(bay.depth->dimension);
    const Coordinate from = Coordinate::of(depth);
    put_wall(s, "end", {-side, from, 0.0}, {side, from + Coordinate(wall), top}, depth, false);
  }
  if (bay.behind) {
    const int behind = scene.add(bay.behind->dimension);
    const Coordinate to = -1.0 * Coordinate::of(behind);
    put_wall(s, "rear", {-side, to - Coordinate(wall), 0.0}, {side, to, top}, behind, false);
  }
}

/// A cable's plug with its bend, behind the connector; where the connector's place is not known, over the whole width.
void put_plug(Seating& s, const std::vector<int>& own, int offset) {
  if (!s.bay.plug) return;
  const parts::CasedDrive& drive = s.drive.cased;
  const Coordinate length = Coordinate::of(s.out.scene.add(s.bay.plug->dimension));
  const Coordinate wide = 0.5 * drive.width.shifted(offset);
  const Coordinate half = drive.tongue ? Coordinate(0.5 * drive.tongue->body_width.nominal) : wide;
  const Coordinate middle = drive.tongue ? drive.tongue_y.shifted(offset) : -1.0 * wide;
  const Coordinate from = drive.from_bezel ? drive.end.shifted(offset) : -1.0 * length;
  const Coordinate to = drive.from_bezel ? from + length : Coordinate(0.0);
  parts::Part part;
  part.bodies.push_back(
      parts::box_body("plug", {from, middle - half, drive.tongue_z},
                      {to, middle + half, drive.tongue_z + standards::adapters::plug_over_base().nominal}));
  const int plug = put(s.out.scene, s.out.card, part, 0, "cable plug");
  for (const int element : own) s.out.mate(plug, element);
  if (!s.bay.raised)
    for (const int element : s.stand.carrier) s.out.mate(plug, element);  // it lies where the drive lies
  s.out.joint_drive.insert(plug);
  s.out.fixed_after.insert(plug);
}

/// Screws from outside the sheet into the drive, and the spacers or stand-offs between.
void put_screws(Seating& s, const std::vector<UsedHole>& holes) {
  if (!s.bay.fixing || s.bay.fixing->thread.empty()) return;
  const build::Fixing& fixing = *s.bay.fixing;
  Scene& scene = s.out.scene;
  const auto* head = fasteners::head(fasteners::Shape::pan, fixing.thread);
  const double major = fasteners::thread(fixing.thread)->major.nominal;
  const double across =
      head != nullptr ? head->diameter.nominal : 2.0 * major;  // common practice where none is published
  const double high = head != nullptr ? head->height.nominal : 0.7 * major;
  const double sheet = fixing.sheet.dimension.nominal;
  const bool on_spacers = s.bay.spacers || s.bay.standoffs;
  const auto bar = [](const char* name, int axis, const parts::Coordinates& at, double diameter, const Coordinate& low,
                      const Coordinate& up) {
    Body body = parts::round_body(name, 0.0, 0.0, diameter, 0.0, 1.0);
    body.axis = axis;
    for (std::size_t i = 0; i < 3; ++i) {
      const bool along = static_cast<int>(i) == axis;
      body.low[i] = along ? low : at[i] - Coordinate(0.5 * diameter);
      body.high[i] = along ? up : at[i] + Coordinate(0.5 * diameter);
    }
    return body;
  };
  const auto add = [&](const Body& body, const char* name) -> int {
    parts::Part part;
    part.bodies.push_back(body);
    const int element = put(scene, s.held, part, 0, name);
    if (element >= scene.element_count()) return -1;
    s.out.joint_drive.insert(element);
    s.out.fixed_after.insert(element);
    for (int other = scene.first_element(); other < element; ++other) s.out.mate(element, other);
    for (const int other : s.stand.carrier) s.out.mate(element, other);
    return element;
  };
  const auto add_head = [&](const parts::Coordinates& at, int axis, double out) {
    const auto k = static_cast<std::size_t>(axis);
    const Coordinate outer = at[k] + Coordinate(out * high);
    const Body body = bar("head", axis, at, across, out > 0.0 ? at[k] : outer, out > 0.0 ? outer : at[k]);
    const int element = add(body, "screw");
    geometry::Vec3 face(s.value(at[0]), s.value(at[1]), s.value(at[2]));
    face[axis] = s.value(outer);
    geometry::Vec3 away(0.0);
    away[axis] = out;
    double length = fixing.length ? fixing.length->dimension.nominal : 0.0;
    if (s.bay.standoffs) length = fixing.outside ? fixing.outside->length : 0.0;  // the other is that of the studs
    s.out.screws.push_back(
        {s.held.pose.point(face), s.held.pose.direction(away), fixing.thread, across, length, element});
  };
  for (const UsedHole& used : holes) {
    if (fixing.side) {
      const Coordinate face = 0.5 * (s.width ? *s.width : s.across) + Coordinate(sheet);
      for (const double side : {-1.0, 1.0})
        add_head({side * face, used.along, s.raised + Coordinate(used.other)}, 0, side);
      continue;
    }
    const Coordinate under = (on_spacers ? Coordinate(0.0) : s.raised) - Coordinate(sheet);
    add_head({used.other, used.along, under}, 2, -1.0);
    if (on_spacers) add(bar("stand-off", 2, {used.other, used.along, 0.0}, 2.0 * major, 0.0, s.raised), "stand-off");
  }
}

}  // namespace

void seat_cased(Seated& out, const build::Drive& drive, const build::Place& place, const Stand& stand) {
  const Bay& bay = std::get<Bay>(place.socket);
  Scene& scene = out.scene;
  const int offset = scene.add(drive.cased.part.dimensions);
  const Coordinate width = drive.cased.width.shifted(offset);
  const Coordinate height = drive.cased.height.shifted(offset);
  Seating s{drive,
            bay,
            place.name,
            stand,
            out,
            bay.on_edge ? height : width,
            bay.on_edge ? width : height,
            Coordinate(0.0),
            drive.cased.end.shifted(offset)};
  if (bay.raised) s.raised = Coordinate::of(scene.add(bay.raised->dimension));
  const std::vector<UsedHole> used = used_holes(drive, bay);
  place_drive(s, used);
  out.length = s.value(s.end);
  if (bay.fixing) out.meets.resize(bay.fixing->holes.size());
  for (const UsedHole& each : used) out.meets[each.index] = each.drive_hole->name;
  const std::vector<int> own = put_bodies(s, offset);
  put_plug(s, own, offset);
  put_walls(s);
  put_screws(s, used);
  out.joint_host.insert(stand.carrier.begin(), stand.carrier.end());
}

}  // namespace baywright::fit
