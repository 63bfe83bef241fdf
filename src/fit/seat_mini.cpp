// A mini card lies flat on its socket and two posts, whose height the user measured. Its posts have no published play.
#include "fit/seats.h"
#include "standards/fasteners.h"

namespace baywright::fit {

using parts::Coordinate;

namespace {

constexpr const char* thread = "M2";  // common practice, no source

parts::Part post(double x, double y, const Coordinate& height) {
  parts::Part part;
  const double across = 2.0 * standards::fasteners::thread(thread)->major.nominal;
  part.bodies.push_back(parts::round_body("post", x, y, across, 0.0, height));
  return part;
}

parts::Part head(double x, double y) {
  const auto* row = standards::fasteners::head(standards::fasteners::Shape::pan, thread);
  parts::Part part;
  const Coordinate across = Coordinate::of(part.add(row->diameter));
  const Coordinate height = Coordinate::of(part.add(row->height));
  part.bodies.push_back(parts::round_body("head", x, y, across, 0.0, height));
  return part;
}

}  // namespace

void seat_mini(Seated& out, const build::Drive& drive, const Stand& stand) {
  Scene& scene = out.scene;
  const parts::MiniCard& card = drive.mini;
  const int offset = scene.add(card.part.dimensions);
  const Coordinate height = Coordinate::of(stand.at.standoff);
  const Coordinate thickness = -1.0 * card.underside.shifted(offset);
  out.length = card.hole_y;
  out.card = moved(scene, stand.at.frame, {0.0, 0.0, height + thickness});
  const int first = put(scene, out.card, card.part, offset, drive.name);
  const int last = scene.element_count();
  for (int a = first; a < last; ++a) {
    out.joint_drive.insert(a);
    for (int b = a + 1; b < last; ++b) out.mate(a, b);
  }
  out.joint_host = stand.carrier;
  for (const double side : {-1.0, 1.0}) {
    const int foot = put(scene, stand.at.frame, post(side * card.hole_x, card.hole_y, height), 0, "stand-off");
    const parts::Part screw = head(side * card.hole_x, card.hole_y);
    const int top = put(scene, out.card, screw, scene.add(screw.dimensions), "screw");
    out.joint_drive.insert({foot, top});
    out.fixed_after.insert({foot, top});
    const double high = screw.bodies[0].high[2].at(parts::nominal_values(screw));
    out.screws.push_back({out.card.pose.point({side * card.hole_x, card.hole_y, high}), out.card.pose.turn[2], thread,
                          screw.dimensions[0].nominal, 3.0, top});
    for (int a = first; a < last; ++a) {
      out.mate(a, foot);
      out.mate(a, top);
    }
    out.mate(foot, top);
    for (const int element : stand.carrier) out.mate(foot, element);
  }
}

}  // namespace baywright::fit
