#include "standards/mini_cards.h"

#include "standards/row.h"

#include <string>
#include <string_view>
#include <utility>

namespace baywright::standards::mini_cards {

namespace {

constexpr std::string_view memory = "from memory of PCI Express Mini CEM 1.2; no page was found that confirms it";

/// Two libraries that were drawn apart, and agree.
std::string both() {
  return "kicad-footprints 6.0.11, PCI Express Mini, citing Mini CEM 1.2, and another public footprint library";
}

std::string first() {
  return "a public footprint library of mini cards";
}

std::string second() {
  return "kicad-footprints 6.0.11, PCI Express Mini, citing Mini CEM 1.2";
}

Dimension drawn(std::string_view what, double nominal, std::string source) {
  return untoleranced("mini card " + std::string(what), nominal, std::move(source), Known::secondary);
}

}  // namespace

const Dimension& width() {
  static const Dimension row = drawn("width", 30.00, both());
  return row;
}

const Dimension& edge_to_notch() {
  static const Dimension row = drawn("notch from the near side edge", 11.15, first());
  return row;
}

const Dimension& full_length() {
  static const Dimension row = drawn("length, full", 50.95, both());
  return row;
}

const Dimension& half_length() {
  static const Dimension row = drawn("length, half", 26.80, both());
  return row;
}

const Dimension& tongue_width() {
  static const Dimension row = drawn("tongue's width", 25.60, first());
  return row;
}

const Dimension& tongue_start() {
  static const Dimension row = drawn("notch from the tongue's near end", 8.95, first());
  return row;
}

const Dimension& shoulder() {
  static const Dimension row = drawn("full width starts", 3.30, first());
  return row;
}

const Dimension& shoulder_corner() {
  static const Dimension row = drawn("radius of the shoulder's corner", 0.80, first());
  return row;
}

const Dimension& notch_width() {
  static const Dimension row = drawn("notch width", 1.50, first());
  return row;
}

const Dimension& notch_depth() {
  static const Dimension row = drawn("notch depth", 4.00, first());
  return row;
}

const Dimension& full_hole() {
  static const Dimension row = drawn("holes from the contact edge, full", 48.05, both());
  return row;
}

const Dimension& half_hole() {
  static const Dimension row = drawn("holes from the contact edge, half", 23.90, both());
  return row;
}

const Dimension& hole_from_edge() {
  static const Dimension row = drawn("hole from the side edge", 2.90, both());
  return row;
}

const Dimension& hole_diameter() {
  static const Dimension row = drawn("hole diameter", 2.60, first());
  return row;
}

const Dimension& pad() {
  static const Dimension row = drawn("bare square at a hole", 5.80, both());
  return row;
}

const Dimension& full_bare_near() {
  static const Dimension row = drawn("first further bare area starts, full", 21.00, first());
  return row;
}

const Dimension& full_bare_far() {
  static const Dimension row = drawn("second further bare area starts, full", 30.45, first());
  return row;
}

const Dimension& half_bare() {
  static const Dimension row = drawn("further bare area starts, half", 6.10, first());
  return row;
}

const Dimension& posts_apart() {
  static const Dimension row = drawn("socket's post holes apart", 25.00, second());
  return row;
}

const Dimension& large_post_hole() {
  static const Dimension row = drawn("socket's large post hole, diameter", 1.60, second());
  return row;
}

const Dimension& small_post_hole() {
  static const Dimension row = drawn("socket's small post hole, diameter", 1.10, second());
  return row;
}

const Dimension& pitch() {
  static const Dimension row = drawn("contact pitch of a side", 0.80, second());
  return row;
}

const Dimension& side_offset() {
  static const Dimension row = drawn("contacts of one side from those of the other", 0.40, second());
  return row;
}

const Dimension& thickness() {
  static const Dimension row = plus_minus("mini card thickness", 1.00, 0.10, std::string(memory), Known::memory);
  return row;
}

const Dimension& top_parts() {
  static const Dimension row = at_most("mini card parts on top", 2.40, std::string(memory), Known::memory);
  return row;
}

const Dimension& bottom_parts() {
  static const Dimension row = at_most("mini card parts at the bottom", 1.35, std::string(memory), Known::memory);
  return row;
}

std::vector<Dimension> rows() {
  return {width(),           edge_to_notch(), full_length(),     half_length(),   tongue_width(),
          tongue_start(),    shoulder(),      shoulder_corner(), notch_width(),   notch_depth(),
          full_hole(),       half_hole(),     hole_from_edge(),  hole_diameter(), pad(),
          full_bare_near(),  full_bare_far(), half_bare(),       posts_apart(),   large_post_hole(),
          small_post_hole(), pitch(),         side_offset(),     thickness(),     top_parts(),
          bottom_parts()};
}

}  // namespace baywright::standards::mini_cards
