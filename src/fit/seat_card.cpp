// An add-in card stands with its contact edge on the slot's floor; its component side looks away from the CPU side of a
// board whose slot points forward. How far it may lean in its slot is not published where we could read.
#include "fit/seats.h"
#include "standards/addin_cards.h"
#include "standards/m2.h"

namespace baywright::fit {

using geometry::Mat3;
using parts::Coordinate;
namespace cards = standards::addin_cards;

namespace {

/// The tongue in the slot's body, and what stands past an open end of it.
parts::Part with_tongue_cut(parts::Part part, int lanes, int body_lanes) {
  const double past = lanes > body_lanes ? cards::past_the_body(lanes, body_lanes) : 0.0;
  if (past <= 0.0) return part;
  for (std::size_t i = 0; i < part.bodies.size(); ++i)
    if (part.bodies[i].name == "tongue") {
      parts::Body beyond = part.bodies[i];
      beyond.name = "tongue past the slot";
      // Where the slot's body ends, which is a little past the tongue of its own size.
      const double end = cards::slot_length(body_lanes).nominal - cards::slot_start().nominal;
      part.bodies[i].high[0] = Coordinate(end);
      beyond.low[0] = Coordinate(end);
      part.bodies.push_back(std::move(beyond));
      break;
    }
  return part;
}

/// The M.2 card on its carrier's board.
void seat_carried(Seated& out, const build::Drive& drive, std::set<int> board) {
  Scene& scene = out.scene;
  const parts::CarrierSocket where = parts::carrier_socket(*drive.worn->adapter, drive.worn->position);
  const Coordinate face = 0.5 * Coordinate(cards::board_thickness().nominal);
  const Frame frame = turned(moved(scene, out.card, {where.x, where.y, face}), Mat3({0, 1, 0}, {-1, 0, 0}, {0, 0, 1}));
  const standards::m2::SocketClass& height_class = *standards::m2::socket_class("H4.2");
  Stand stand{put_m2_socket(scene, frame, height_class, height_class.standoff, drive.worn->name + " socket"), board};
  for (const int element : {stand.at.socket, stand.at.socket + 1})
    for (const int under : board) out.mate(element, under);
  out.joint_drive.insert({stand.at.socket, stand.at.socket + 1});
  const Frame card = out.card;
  const double length = out.length;
  seat_m2(out, drive, stand);
  out.card = card;
  out.length = length;
}

}  // namespace

void seat_card(Seated& out, const build::Drive& drive, const build::CardSlot& slot, const Stand& stand) {
  Scene& scene = out.scene;
  const parts::Part part = with_tongue_cut(drive.board.part, drive.card_lanes, slot.lanes);
  const int offset = scene.add(part.dimensions);
  const int floor = scene.add(cards::slot_floor());
  // Card x along the slot, y up from the board, z to the side.
  out.card =
      turned(moved(scene, stand.at.frame, {0.0, 0.0, Coordinate::of(floor)}), Mat3({0, 1, 0}, {0, 0, 1}, {1, 0, 0}));
  out.length = drive.board.far_end.at(parts::nominal_values(drive.board.part));
  const std::string& name = drive.worn ? drive.worn->name : drive.name;
  const int first = put(scene, out.card, part, offset, name);
  const int last = scene.element_count();
  std::set<int> board;
  for (int a = first; a < last; ++a) {
    for (int b = a + 1; b < last; ++b) out.mate(a, b);
    if (scene.element(a).body == "board") board.insert(a);
    // The edge goes into the slot; the rest of the card passes over its walls by the standard's own figures.
    if (scene.element(a).body == "tongue past the slot") continue;
    out.joint_drive.insert(a);
    for (int i = 0; i < stand.at.count; ++i)
      if (scene.element(a).body == "tongue") out.mate(a, stand.at.socket + i);
  }
  // A tongue that stands past an open end begins where the slot's body ends.
  if (const int past = find_element(scene, name, "tongue past the slot"); past >= 0)
    for (int i = 0; i < stand.at.count; ++i) out.mate(past, stand.at.socket + i);
  for (int i = 0; i < stand.at.count; ++i) out.joint_host.insert(stand.at.socket + i);
  out.joint_host.insert(stand.carrier.begin(), stand.carrier.end());
  if (!drive.worn) return;
  seat_carried(out, drive, board);
  // The card is screwed to its carrier on the bench.
  out.fixed_after.clear();
  out.screws.clear();
}

}  // namespace baywright::fit
