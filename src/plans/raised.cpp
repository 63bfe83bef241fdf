// Spacers and washers under a sheet or a board of the machine.
#include "fit/part_screws.h"
#include "fit/verdict.h"
#include "parts/sheet.h"
#include "plans/at_hand.h"
#include "plans/catalogue.h"

#include <algorithm>
#include <utility>

namespace baywright::plans {

namespace {

/// Washers of the size that most cases are screwed with, then plain spacers: each in place of what is there.
std::vector<Lift> lifts(const build::Build& build) {
  std::vector<Lift> out = washers_at_hand(build, "M3");  // common practice, no source
  for (const double length : spacers_at_hand(build)) out.push_back(spacers_of(length));
  return out;
}

tolerance::Dimension dimension_of(const Lift& lift) {
  return {"spacers", lift.length, lift.limit, lift.limit, lift.source, lift.known};
}

/// Of the spacers that are there, mm; 0: none are.
double spacers_now(const build::HostPart& part) {
  return part.spacers ? part.spacers->dimension.nominal : 0.0;
}

bool carries_cards(const build::Build& build, int part) {
  return std::any_of(build.places.begin(), build.places.end(), [&](const build::Place& place) {
    return place.part == part && std::holds_alternative<build::CardSlot>(place.socket);
  });
}

/// The sheet over that, with the screws that hold it then: those of now where they still go in far enough, else the
/// longest that nominally go no deeper, since so deep the thread is. These too may go in too little.
build::HostPart raised(const build::Build& build, const build::HostPart& part, const Lift& lift) {
  build::HostPart out = part;
  out.spacers.emplace().dimension = dimension_of(lift);
  if (!(fit::longer_screw(out) > 0.0)) return out;
  const double deep = part.screws->length - spacers_now(part);
  for (const double length : screws_at_hand(build, part.screws->thread, part.screws->length))
    if (length - lift.length <= deep + 1e-9) out.screws->length = std::max(out.screws->length, length);
  return out;
}

/// Room that is left when it shrinks or grows by as much as these are longer than those of now; none where it is surely
/// not enough at some limits.
std::optional<tolerance::Dimension> moved(const tolerance::Dimension& room, const build::HostPart& part,
                                          const Lift& lift, double sign) {
  const double limit_now = part.spacers ? part.spacers->dimension.plus : 0.0;
  const double more = std::max(lift.limit - limit_now, 0.0);
  tolerance::Dimension out = room;
  out.nominal += sign * (lift.length - spacers_now(part));
  out.minus += more;
  out.plus += more;
  add_source(out, lift);
  if (fit::verdict_of(out.low(), out.high(), 0.0) != fit::Verdict::fits) return std::nullopt;
  return out;
}

build::Edit room_edit(const build::HostPart& part, const char* key, const tolerance::Dimension& room) {
  return {.path = {"part", part.name, "rear_opening", key}, .value = sourced(room)};
}

/// Adds what becomes of the board's connectors in the rear opening. False: they do not move so far. Nothing is added
/// where the file does not say how far they may.
bool move_connectors(Option& option, const build::HostPart& board, const Lift& lift) {
  const build::Position& at = board.position;
  const auto& room = board.rear_opening;
  if (!room || room->up.dimension.asked || room->down.dimension.asked || at.axis != 2) {  // sideways is not described
    option.cautions.push_back(Caution::opening_moves);
    return true;
  }
  const double up = at.up ? 1.0 : -1.0;
  const auto over = moved(room->up.dimension, board, lift, -up);
  const auto under = moved(room->down.dimension, board, lift, up);
  if (!over || !under) return false;
  for (Variant& variant : option.variants) {
    variant.edits.push_back(room_edit(board, "up", *over));
    variant.edits.push_back(room_edit(board, "down", *under));
  }
  return true;
}

Option lifted(const build::Build& build, const build::HostPart& part, const Lift& lift) {
  const build::Position& at = part.position;
  tolerance::Dimension distance = at.by.dimension;  // its limits stay: those of the spacers stand beside it
  distance.nominal += lift.length - spacers_now(part);
  const char* key = at.axis != 2 ? "beside" : at.up ? "above" : "under";
  Option option;
  option.change = {.kind = Kind::spacer,
                   .what = part.name,
                   .to = std::string(lift.what),
                   .from = at.by.dimension.nominal,
                   .value = distance.nominal,
                   .spacer = lift.length,
                   .spacer_now = spacers_now(part),
                   .prices = {Price::screws}};
  Variant variant{{{.path = {"part", part.name, key, "by"}, .value = sourced(distance)},
                   {.path = {"part", part.name, "spacers"}, .value = sourced(dimension_of(lift))}},
                  distance.nominal};
  const build::HostPart after = raised(build, part, lift);
  if (after.screws && after.screws->length != part.screws->length) {
    variant.screw = after.screws->length;
    variant.edits.push_back(
        {.path = {"part", part.name, "screws"}, .value = screw_text(part.screws->thread, variant.screw)});
  }
  option.variants = {std::move(variant)};
  option.holds = {"part " + part.name};
  option.mends = {fit::Kind::clearance};
  option.part = part.name;
  option.key = "spacer " + part.name;
  option.amount = lift.length;
  if (!part.screws)
    option.cautions.push_back(Caution::screws_longer);
  else if (fit::longer_screw(after) > 0.0)
    option.cautions.push_back(Caution::no_screw_suits);
  option.cautions.push_back(Caution::money_unknown);
  return option;
}

}  // namespace

void add_raised_parts(std::vector<Option>& out, const Spot& spot) {
  const build::Build& build = spot.build;
  const std::vector<Lift> at_hand = lifts(build);
  for (std::size_t i = 1; i < build.parts.size(); ++i) {
    const build::HostPart& part = build.parts[i];
    const build::Position& at = part.position;
    if (at.kind != build::Position::Kind::against || at.seated || at.by.dimension.asked) continue;
    const bool board = part.part.kind == "board";
    // A cooler or a battery has to lie where it lies; a tray, a cover, a shelf is a sheet.
    if (!board && !(part.removable && parts::is_sheet(part.part, at.axis))) continue;
    for (const Lift& lift : at_hand) {
      if (!(lift.length > spacers_now(part) + 1e-9)) continue;
      Option option = lifted(build, part, lift);
      if (board && !move_connectors(option, part, lift)) continue;
      if (carries_cards(build, static_cast<int>(i))) option.cautions.push_back(Caution::brackets_move);
      out.push_back(std::move(option));
    }
  }
}

}  // namespace baywright::plans
