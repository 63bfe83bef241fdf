#include "plans/catalogue.h"

#include <algorithm>
#include <map>
#include <utility>

namespace baywright::plans {

std::string limited(const tolerance::Dimension& dimension) {
  if (!dimension.exact()) return build::length_text(dimension.nominal, dimension.minus, dimension.plus);
  std::string text = build::length_text(dimension.nominal, 0.0, 0.0);
  std::erase(text, '"');
  return '"' + text + " ±0\"";
}

std::string sourced(const tolerance::Dimension& dimension) {
  const bool measured = dimension.known == tolerance::Known::measured;  // as a file's lengths are if it says nothing
  if (measured && dimension.source.empty() && !dimension.uniform) return limited(dimension);
  return "{ length = " + limited(dimension) +
         (dimension.source.empty() ? "" : ", source = " + build::quoted(dimension.source)) +
         (measured ? "" : ", known = " + build::quoted(tolerance::word(dimension.known))) +
         (dimension.uniform ? ", uniform = true" : "") + " }";
}

std::string table_of(const build::Place& place) {
  const auto* bay = std::get_if<build::Bay>(&place.socket);
  return bay == nullptr ? "slot" : bay->panel ? "panel" : "bay";
}

bool bears_on(const build::Build& build, const Option& option, const fit::Finding& finding) {
  if (option.mends.empty()) return true;
  if (std::find(option.mends.begin(), option.mends.end(), finding.kind) == option.mends.end()) return false;
  if (option.part.empty() || finding.between[1] == option.part) return true;
  // What hangs on the part moves with it, and with a place all that the place has.
  std::vector<bool> moves(build.parts.size(), false);
  for (std::size_t i = 0; i < build.parts.size(); ++i) {
    const int target = build.parts[i].position.target;
    moves[i] = build.parts[i].name == option.part || (target >= 0 && moves[static_cast<std::size_t>(target)]);
    if (moves[i] && build.parts[i].name == finding.between[1]) return true;
  }
  return std::any_of(build.places.begin(), build.places.end(),
                     [&](const build::Place& place) { return moves[static_cast<std::size_t>(place.part)]; });
}

std::vector<Option> options(const Spot& spot, const fit::Seating& now, const std::vector<parts::Part>& heatsinks) {
  std::vector<Option> out;
  add_pads(out, spot);
  add_heatsinks(out, spot, heatsinks);
  add_cards(out, spot);
  add_adapters(out, spot);
  add_standoffs(out, spot);
  add_raised_parts(out, spot);
  add_fixings(out, spot);
  add_turns(out, spot);
  add_openings(out, spot, now);
  std::map<std::string, std::size_t> first;  // of each key
  for (std::size_t i = 0; i < out.size(); ++i) first.try_emplace(out[i].key, i);
  std::stable_sort(out.begin(), out.end(), [&](const Option& a, const Option& b) {
    return std::pair(first[a.key], a.amount) < std::pair(first[b.key], b.amount);
  });
  return out;
}

}  // namespace baywright::plans
