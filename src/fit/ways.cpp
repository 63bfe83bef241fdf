#include "fit/ways.h"

#include "standards/m2.h"

namespace baywright::fit {

using geometry::Movement;
using geometry::Vec3;

namespace {

/// Drawn out of a backplane's receptacle before it may go anywhere else, mm. No published figure was found: more than
/// any of these connectors is deep, common practice, no source.
constexpr double out_of_receptacle = 10.0;
/// An add-in card's edge and its bracket's tongue are free of slot and board after this, mm: the tip of a full-height
/// bracket reaches 15.14 below the contact edge (as transcribed in standards/addin_cards.h), and the slot is shallower.
constexpr double out_of_slot = 16.0;

Movement shifted(const Vec3& by) {
  Movement movement;
  movement.shift = by;
  return movement;
}

/// A card that leaves sideways is lifted a little before, over the sockets beside its own, mm: their height less what
/// drawing it out has lifted it by.
constexpr double over_sockets = 2.0;

/// `exit` zero: along itself.
Way tilted(const Pivot& pivot, double degrees, const Vec3& exit, const Vec3& lift, double far) {
  Way way{Way::Kind::tilted, degrees, {}, {}};
  Movement turn;
  turn.pivot = pivot.edge;
  turn.axis = pivot.across;
  turn.degrees = degrees;
  const Vec3 along = geometry::rotation(pivot.across, degrees) * pivot.along;
  way.legs = {turn, shifted(along * pivot.depth)};
  if (lift != Vec3(0.0)) way.legs.push_back(shifted(lift));
  way.legs.push_back(shifted((exit == Vec3(0.0) ? along : exit) * far));
  return way;
}

std::vector<Way> ways_of_card(const Seated& seated, double far) {
  const Pivot pivot = pivot_of(seated);
  const Vec3 x = seated.slot.pose.turn[0];
  const Vec3 z = seated.slot.pose.turn[2];
  std::vector<Way> out;
  const standards::m2::InsertionAngles& angles = standards::m2::insertion_angles();
  std::vector<double> tried = {angles.drawn};
  for (double degrees = angles.most; degrees >= angles.least; degrees -= 5.0)
    if (degrees != angles.drawn) tried.push_back(degrees);
  for (const double degrees : tried)
    for (const Vec3& lift : {Vec3(0.0), z * over_sockets})
      for (const Vec3& exit : {z, Vec3(0.0), x, -x}) {
        const bool sideways = exit == x || exit == -x;
        if (sideways || lift == Vec3(0.0)) out.push_back(tilted(pivot, degrees, exit, lift, far));
      }
  return out;
}

struct Named {
  Way::Kind kind;
  Vec3 direction;
  const char* wall;
};

std::vector<Way> ways_of_bay(const Seated& seated, const build::Bay& bay, double far) {
  const geometry::Mat3& turn = seated.slot.pose.turn;
  const bool fixed = bay.backplane;
  std::vector<Named> sides = {{Way::Kind::along, turn[1], "end"},
                              {Way::Kind::back, -turn[1], "rear"},
                              {Way::Kind::up, turn[2], "roof"},
                              {Way::Kind::left, -turn[0], "left wall"},
                              {Way::Kind::right, turn[0], "right wall"}};
  if (bay.panel) std::swap(sides[0], sides[2]);
  const auto walled = [&bay](const std::string& wall) {
    if (wall == bay.opens) return false;
    return wall == "end"    ? bay.depth.has_value()
           : wall == "rear" ? bay.behind.has_value()
           : wall == "roof" ? bay.height.has_value()
                            : bay.width.has_value();
  };
  std::vector<Way> open;
  std::vector<Way> closed;
  for (const Named& side : sides) {
    if (fixed && side.kind == Way::Kind::back) continue;
    Way way{side.kind, 0.0, {}, {}};
    if (fixed && side.kind != Way::Kind::along) way.legs.push_back(shifted(turn[1] * out_of_receptacle));
    way.legs.push_back(shifted(side.direction * far));
    const bool side_wall = side.kind == Way::Kind::left || side.kind == Way::Kind::right;
    if (walled(side.wall) && !side_wall && bay.opens.empty()) way.through = side.wall;
    (bay.opens == side.wall || (bay.opens.empty() && !walled(side.wall)) ? open : closed).push_back(std::move(way));
  }
  open.insert(open.end(), closed.begin(), closed.end());
  return open;
}

std::vector<Way> ways_of_slot(const Seated& seated, double far) {
  const geometry::Mat3& turn = seated.slot.pose.turn;
  std::vector<Way> out = {{Way::Kind::up, 0.0, {shifted(turn[2] * far)}, {}}};
  const Movement lift = shifted(turn[2] * out_of_slot);
  out.push_back({Way::Kind::left, 0.0, {lift, shifted(-turn[0] * far)}, {}});
  out.push_back({Way::Kind::right, 0.0, {lift, shifted(turn[0] * far)}, {}});
  out.push_back({Way::Kind::along, 0.0, {lift, shifted(turn[1] * far)}, {}});
  return out;
}

}  // namespace

std::string word(Way::Kind kind) {
  switch (kind) {
    case Way::Kind::tilted:
      return "tilted";
    case Way::Kind::searched:
      return "searched";
    case Way::Kind::up:
      return "up";
    case Way::Kind::along:
      return "along";
    case Way::Kind::back:
      return "back";
    case Way::Kind::left:
      return "left";
    case Way::Kind::right:
      return "right";
    case Way::Kind::bare_first:
      return "bare first";
  }
  return {};
}

Pivot pivot_of(const Seated& seated) {
  const geometry::Pose& card = seated.card.pose;
  Pivot pivot;
  // The leading edge, at the underside: own judgement after the standard's figure of the insertion, which gives no
  // point.
  pivot.edge = card.point({0.0, 0.0, -standards::m2::card_thickness().nominal});
  pivot.across = card.turn[0];
  pivot.along = card.turn[1];
  pivot.depth = standards::m2::shoulder().nominal;
  return pivot;
}

std::vector<Way> ways_out(const Seated& seated, const build::Place& place, double far) {
  if (const auto* bay = std::get_if<build::Bay>(&place.socket)) return ways_of_bay(seated, *bay, far);
  if (std::holds_alternative<build::CardSlot>(place.socket)) return ways_of_slot(seated, far);
  return ways_of_card(seated, far);
}

std::vector<Vec3> exits(const Seated& seated, const build::Place& place) {
  const geometry::Mat3& turn = seated.slot.pose.turn;
  if (std::holds_alternative<build::Bay>(place.socket)) return {turn[1], turn[2], -turn[1], turn[0], -turn[0]};
  return {turn[2], turn[1], turn[0], -turn[0]};
}

}  // namespace baywright::fit
