// The rear aperture of the chassis, and what must stay clear under and over a board.
#include "standards/boards.h"
#include "standards/row.h"

#include <string>
#include <string_view>

namespace baywright::standards::boards {

namespace {

std::string specification(std::string_view place) {
  return "microATX Motherboard Interface Specification 1.2, " + std::string(place);
}

constexpr std::string_view model = "a public board model of the ATX family";

}  // namespace

const Dimension& aperture_across() {
  static const Dimension row = but(untoleranced("rear aperture, across", 158.75, specification("Figure 4, note")),
                                   "limits of 0.20 either way, from memory");
  return row;
}

const Dimension& aperture_up() {
  static const Dimension row = but(untoleranced("rear aperture, up", 44.45, specification("Figure 4, note")),
                                   "limits of 0.20 either way, from memory");
  return row;
}

const Dimension& aperture_below_top() {
  static const Dimension row =
      untoleranced("rear aperture, lower edge below the board's top", 3.81,
                   specification("Figure 4, note; that the edge lies below, from a public board model"));
  return row;
}

const Dimension& aperture_from_hole_c() {
  static const Dimension row = untoleranced("rear aperture from hole C", 7.52, std::string(model), Known::secondary);
  return row;
}

const Dimension& aperture_corner() {
  static const Dimension row = at_most("rear aperture, corner radius", 0.99, specification("Figure 4, note"));
  return row;
}

const Dimension& aperture_keep_out() {
  static const Dimension row = untoleranced("keep-out round the rear aperture", 2.54, specification("Figure 4, note"));
  return row;
}

const Dimension& panel_thickness() {
  static const Dimension row =
      plus_minus("panel round the rear aperture, thickness", 1.13, 0.19, specification("Figure 4, note: 0.94 to 1.32"));
  return row;
}

const Dimension& panel_behind_hole_row() {
  static const Dimension row =
      untoleranced("panel's inner face behind the hole-B row", 12.27, std::string(model), Known::secondary);
  return row;
}

const Dimension& connector_face() {
  static const Dimension row =
      untoleranced("connector face behind the hole-B row", 11.30, specification("Figure 5, note"));
  return row;
}

const Dimension& connector_zone_across() {
  static const Dimension row =
      untoleranced("connector zone in the aperture, across", 152.15, specification("Figure 4, note"));
  return row;
}

const Dimension& connector_zone_up() {
  static const Dimension row =
      untoleranced("connector zone in the aperture, up", 37.34, specification("Figure 4, note"));
  return row;
}

const Dimension& clear_under() {
  static const Dimension row = at_least("clear height under the board", 6.35,
                                        std::string(model) + ", 0.25 in; ATX itself from memory", Known::secondary);
  return row;
}

const Dimension& leads_at_holes() {
  static const Dimension row = at_most("leads below the board about its holes", 0.25,
                                       specification("section 2.4.2, of which the page seen is cut off"));
  return row;
}

const Dimension& leads() {
  static const Dimension row =
      at_most("leads below the board", 2.49, "from memory, 0.098 in; not confirmed", Known::memory);
  return row;
}

const Dimension& chassis_over_cpu() {
  static const Dimension row =
      at_least("chassis over area A of a microATX board", 76.20, specification("section 2.4.1, Table 6: required"));
  return row;
}

const Dimension& chassis_over_cpu_better() {
  static const Dimension row = at_least("chassis over area A of a microATX board, preferred", 88.90,
                                        specification("section 2.4.1, Table 6: preferred"));
  return row;
}

}  // namespace baywright::standards::boards
