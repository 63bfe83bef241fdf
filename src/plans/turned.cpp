// The same drive or plug the other way round.
#include "plans/catalogue.h"

#include <algorithm>
#include <cmath>

namespace baywright::plans {

namespace {

std::string figure(double mm) {
  std::string text = build::length_text(mm, 0.0, 0.0);
  std::erase(text, '"');
  return text;
}

/// A plug whose cable leaves sideways is shorter behind the drive: the longest that fits, in half millimetres.
void add_plug(std::vector<Option>& out, const Spot& spot, const build::Bay& bay) {
  constexpr double step = 0.5;      // mm
  constexpr double shortest = 8.0;  // mm: no plug with its bend is shorter; common practice, no source
  const tolerance::Dimension& now = bay.plug->dimension;
  Option option;
  option.change = {.kind = Kind::turned, .what = "plug", .from = now.nominal, .prices = {}};
  option.monotone = true;
  for (double length = std::ceil(now.nominal / step - 1.0 - 1e-9) * step; length >= shortest; length -= step) {
    tolerance::Dimension plug = now;
    plug.nominal = length;
    option.variants.push_back(
        {{{.path = {table_of(spot.at()), spot.at().name, "cable"}, .value = limited(plug)}}, length});
  }
  if (option.variants.empty()) return;
  option.holds = {"plug"};
  option.mends = {fit::Kind::clearance, fit::Kind::connector};
  option.key = "plug";
  option.cautions = {Caution::money_unknown};
  out.push_back(std::move(option));
}

const char* other_way(const std::string& wall) {
  if (wall == "end") return "rear";
  if (wall == "rear") return "end";
  if (wall == "left wall") return "right wall";
  return wall == "right wall" ? "left wall" : "roof";
}

/// End for end: where it began it ends. The room stays where it is, so what was measured from the one end is now
/// measured from the other.
void add_reversed(std::vector<Option>& out, const Spot& spot, const build::Bay& bay) {
  const build::Place& place = spot.at();
  const parts::CasedDrive& cased = spot.drive.cased;
  if (bay.fixing || cased.from_bezel || bay.depth.has_value() != bay.behind.has_value()) return;
  const double length = cased.end.at(parts::nominal_values(cased.part));
  const build::Path on = {table_of(place), place.name, "on"};
  const auto under = [](build::Path path, const char* key) {
    path.emplace_back(key);
    return path;
  };
  std::array<double, 2> at = place.at;
  std::size_t given = 0;
  std::string toward;
  for (int axis = 0; axis < 3; ++axis) {
    if (axis == place.axis) continue;
    at[given++] += length * place.toward[axis];
    if (place.toward[axis] != 0.0) toward = std::string(place.toward[axis] > 0.0 ? "-" : "+") + "xyz"[axis];
  }
  Variant variant;
  variant.edits = {{.path = under(on, "at"), .value = "[" + figure(at[0]) + ", " + figure(at[1]) + "]"},
                   {.path = under(on, "toward"), .value = build::quoted(toward)}};
  if (bay.depth) {
    tolerance::Dimension depth = bay.behind->dimension;
    tolerance::Dimension behind = bay.depth->dimension;
    depth.nominal += length;
    behind.nominal -= length;
    if (!(behind.nominal - behind.minus > 0.0)) return;
    const build::Path inside = {table_of(place), place.name, "inside"};
    variant.edits.push_back({.path = under(inside, "depth"), .value = sourced(depth)});
    variant.edits.push_back({.path = under(inside, "behind"), .value = sourced(behind)});
  }
  if (!bay.opens.empty())
    variant.edits.push_back(
        {.path = {table_of(place), place.name, "opens"}, .value = build::quoted(other_way(bay.opens))});
  Option option;
  option.change = {.kind = Kind::turned, .what = spot.drive.name, .to = "end for end"};
  option.variants = {std::move(variant)};
  option.holds = {"turn"};
  option.mends = {fit::Kind::clearance, fit::Kind::connector, fit::Kind::holes};
  option.key = "end for end";
  out.push_back(std::move(option));
}

void add_on_edge(std::vector<Option>& out, const Spot& spot, const build::Bay& bay) {
  if (bay.fixing || bay.raised) return;
  const char* to = bay.on_edge ? "flat" : "on edge";
  Option option;
  option.change = {.kind = Kind::turned, .what = spot.drive.name, .to = to};
  option.variants = {{{{.path = {table_of(spot.at()), spot.at().name, "stands"}, .value = build::quoted(to)}}}};
  option.holds = {"turn"};
  option.mends = {fit::Kind::clearance, fit::Kind::connector, fit::Kind::holes};
  option.key = "on edge or flat";
  out.push_back(std::move(option));
}

}  // namespace

void add_turns(std::vector<Option>& out, const Spot& spot) {
  const auto* bay = std::get_if<build::Bay>(&spot.at().socket);
  if (bay == nullptr || bay->backplane || !parts::cased(spot.drive.outer()) || !spot.drive.cased.whole()) return;
  if (bay->plug) add_plug(out, spot, *bay);
  if (bay->panel || bay->form == parts::Form::device_5_25) return;
  add_reversed(out, spot, *bay);
  add_on_edge(out, spot, *bay);
}

}  // namespace baywright::plans
