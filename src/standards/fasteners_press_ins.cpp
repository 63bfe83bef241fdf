// Self-clinching nuts and stand-offs for sheet steel, heat-set inserts for plastic: makers' sizes, no standard. The
// sheet has to be softer than the part, and thick enough for its shank.
#include "standards/fasteners.h"
#include "standards/fasteners_names.h"
#include "standards/row.h"

#include <array>

namespace baywright::standards::fasteners {

namespace {

constexpr std::string_view press_source = "press fasteners of the FastenersWB data";
constexpr std::string_view insert_source = "one maker's heat-set inserts in the FastenersWB data";

Dimension size(std::string name, double value, std::string_view source) {
  return untoleranced(std::move(name), value, std::string(source), Known::secondary);
}

/// Punched or drilled to +0.08 -0.
Dimension press_hole(std::string_view name, double least) {
  constexpr double over = 0.08;
  return {std::string(name) + ", hole", least, 0.0, over, std::string(press_source), Known::secondary};
}

PressIn nut(std::string_view thread, double hole, double body, double flange, double above) {
  const std::string name = of(thread, "self-clinching nut");
  return {.kind = "nut",
          .thread = thread,
          .hole = press_hole(name, hole),
          .body = size(name + ", body", body, press_source),
          .flange = size(name + ", flange", flange, press_source),
          .height = size(name + ", above the sheet", above, press_source)};
}

PressIn standoff(std::string_view thread, std::string_view which, double hole, double across_flats) {
  const std::string name = of(thread, "self-clinching stand-off") + std::string(which);
  return {.kind = "stand-off",
          .thread = thread,
          .hole = press_hole(name, hole),
          .body = size(name + ", across flats", across_flats, press_source),
          .flange = std::nullopt,
          .height = std::nullopt};
}

PressIn insert(std::string_view thread, double hole, double outside, double length) {
  const std::string name = of(thread, "heat-set insert");
  return {.kind = "heat-set insert",
          .thread = thread,
          .hole = size(name + ", hole", hole, insert_source),
          .body = size(name + ", outside", outside, insert_source),
          .flange = std::nullopt,
          .height = size(name + ", length", length, insert_source)};
}

}  // namespace

std::span<const PressIn> press_ins() {
  static const std::array rows{
      nut("M2", 4.22, 4.20, 6.35, 1.5),
      nut("M2.5", 4.22, 4.20, 6.35, 1.5),
      nut("M3", 4.22, 4.20, 6.35, 1.5),
      nut("M3.5", 4.75, 4.73, 7.11, 1.5),
      nut("M4", 5.41, 5.38, 7.87, 2.0),
      standoff("M3", "", 4.22, 4.8),
      standoff("M3", " of large body", 5.41, 6.4),
      standoff("M3.5", "", 5.41, 6.4),
      standoff("M4", "", 7.14, 7.9),
      insert("M2", 3.07, 3.73, 4.00),
      insert("M2.5", 3.86, 4.55, 5.74),
      insert("M3", 3.86, 4.55, 5.74),
      insert("M3.5", 4.65, 5.33, 7.14),
      insert("M4", 5.51, 6.17, 8.15),
  };
  return rows;
}

}  // namespace baywright::standards::fasteners
