#include "standards/addin_cards.h"

#include "standards/addin_cards_source.h"
#include "standards/row.h"

#include <algorithm>
#include <array>

namespace baywright::standards::addin_cards {

namespace {

constexpr std::array lanes_sold{1, 4, 8, 16};

/// Four look-ups found no page with these two.
std::string memory() {
  return "from memory of PCI Express CEM; no page was found that confirms it";
}

Dimension tongue_end_row(int lanes, double x) {
  return untoleranced("key to the tongue's end, x" + std::to_string(lanes), x, both() + ", Figure 6-3",
                      Known::secondary);
}

Dimension apart(std::string name, const Dimension& lower, const Dimension& upper) {
  return derived(std::move(name), upper.nominal - lower.nominal, 0.0,
                 lower.name + " and " + upper.name + "; no tolerance published");
}

}  // namespace

std::span<const int> lane_counts() {
  return lanes_sold;
}

std::size_t lane_row(int lanes) {
  const auto* const found = std::lower_bound(lanes_sold.begin(), lanes_sold.end() - 1, lanes);
  return static_cast<std::size_t>(found - lanes_sold.begin());
}

const Dimension& tongue_end(int lanes) {
  static const std::array rows{tongue_end_row(1, 8.15), tongue_end_row(4, 22.15), tongue_end_row(8, 39.15),
                               tongue_end_row(16, 72.15)};
  return rows[lane_row(lanes)];
}

double past_the_body(int card_lanes, int body_lanes) {
  return std::max(0.0, tongue_end(card_lanes).nominal - tongue_end(body_lanes).nominal);
}

const Dimension& full_height() {
  static const Dimension row = at_most("add-in card height, full", 111.15, library(), Known::secondary);
  return row;
}

const Dimension& low_height() {
  static const Dimension row = at_most("add-in card height, low", 68.90, library(), Known::secondary);
  return row;
}

const Dimension& half_length() {
  static const Dimension row = at_most("add-in card length, half", 167.65, library(), Known::secondary);
  return row;
}

const Dimension& full_length() {
  static const Dimension row = at_most("add-in card length, full", 312.00, library(), Known::secondary);
  return row;
}

const Dimension& bracket_end() {
  static const Dimension row = untoleranced("key from the bracket end", 57.15, both(), Known::secondary);
  return row;
}

const Dimension& tongue_start() {
  static const Dimension row = untoleranced("key from the tongue's start", 12.15, both(), Known::secondary);
  return row;
}

const Dimension& first_segment() {
  static const Dimension row = untoleranced("tongue start to the notch", 11.20, library(), Known::secondary);
  return row;
}

const Dimension& notch_width() {
  static const Dimension row = untoleranced("key notch width", 1.90, library(), Known::secondary);
  return row;
}

const Dimension& notch_depth() {
  static const Dimension row = untoleranced("key notch depth", 8.40, library(), Known::secondary);
  return row;
}

const Dimension& chamfer() {
  static const Dimension row = untoleranced("tongue corner chamfer", 0.50, library(), Known::secondary);
  return row;
}

const Dimension& lower_edge() {
  static const Dimension row = untoleranced("lower edge past the tongue", 12.75, library(), Known::secondary);
  return row;
}

const Dimension& tail_edge() {
  static const Dimension row = untoleranced("lower edge of tail and foot", 4.50, library(), Known::secondary);
  return row;
}

const Dimension& tail_end() {
  static const Dimension row = untoleranced("key from the end of the tail", 42.15, library(), Known::secondary);
  return row;
}

const Dimension& foot_start() {
  static const Dimension row = untoleranced("key from the start of the foot", 23.80, library(), Known::secondary);
  return row;
}

const Dimension& foot_end() {
  static const Dimension row = untoleranced("key from the end of the foot", 15.80, library(), Known::secondary);
  return row;
}

const Dimension& hook_start() {
  static const Dimension row = untoleranced("x16 retention hook starts", 74.90, library(), Known::secondary);
  return row;
}

const Dimension& hook_end() {
  static const Dimension row = untoleranced("x16 retention hook ends", 87.60, library(), Known::secondary);
  return row;
}

const Dimension& hook_low() {
  static const Dimension row = untoleranced("x16 retention hook, lower edge", 2.95, library(), Known::secondary);
  return row;
}

const Dimension& hook_high() {
  static const Dimension row = untoleranced("x16 retention hook, upper edge", 7.95, library(), Known::secondary);
  return row;
}

const Dimension& board_thickness() {
  static const Dimension row = but(untoleranced("add-in card board thickness", 1.57, both(), Known::secondary),
                                   "limits of 0.13 either way, from memory");
  return row;
}

const Dimension& component_side() {
  static const Dimension row = at_most("parts on the component side", 14.47, memory(), Known::memory);
  return row;
}

const Dimension& solder_side() {
  static const Dimension row = at_most("parts on the solder side", 2.67, memory(), Known::memory);
  return row;
}

const Dimension& bracket_hole() {
  static const Dimension row = untoleranced("bracket hole diameter", 3.20, library(), Known::secondary);
  return row;
}

const Dimension& bracket_hole_from_key() {
  static const Dimension row = untoleranced("key from the bracket holes", 49.65, library(), Known::secondary);
  return row;
}

const Dimension& bracket_hole_lower() {
  static const Dimension row = untoleranced("lower bracket hole", 9.35, library(), Known::secondary);
  return row;
}

const Dimension& bracket_hole_upper_full() {
  static const Dimension row = untoleranced("upper bracket hole, full height", 94.75, library(), Known::secondary);
  return row;
}

const Dimension& bracket_hole_upper_low() {
  static const Dimension row = untoleranced("upper bracket hole, low height", 63.25, library(), Known::secondary);
  return row;
}

const Dimension& bracket_holes_full() {
  static const Dimension row =
      apart("bracket holes apart, full height", bracket_hole_lower(), bracket_hole_upper_full());
  return row;
}

const Dimension& bracket_holes_low() {
  static const Dimension row = apart("bracket holes apart, low height", bracket_hole_lower(), bracket_hole_upper_low());
  return row;
}

const Dimension& far_hole_from_key() {
  static const Dimension row =
      untoleranced("key to the far holes of a full-length card", 249.77, library(), Known::secondary);
  return row;
}

const Dimension& far_hole_lower() {
  static const Dimension row = untoleranced("lower far hole", 16.60, library(), Known::secondary);
  return row;
}

const Dimension& far_hole_upper() {
  static const Dimension row = untoleranced("upper far hole", 106.13, library(), Known::secondary);
  return row;
}

const Dimension& far_holes() {
  static const Dimension row = apart("far holes apart", far_hole_lower(), far_hole_upper());
  return row;
}

std::vector<Dimension> rows() {
  std::vector<Dimension> rows{full_height(),
                              low_height(),
                              half_length(),
                              full_length(),
                              bracket_end(),
                              tongue_start(),
                              first_segment(),
                              notch_width(),
                              notch_depth(),
                              chamfer(),
                              lower_edge(),
                              tail_edge(),
                              tail_end(),
                              foot_start(),
                              foot_end(),
                              hook_start(),
                              hook_end(),
                              hook_low(),
                              hook_high(),
                              board_thickness(),
                              component_side(),
                              solder_side(),
                              bracket_hole(),
                              bracket_hole_from_key(),
                              bracket_hole_lower(),
                              bracket_hole_upper_full(),
                              bracket_hole_upper_low(),
                              bracket_holes_full(),
                              bracket_holes_low(),
                              far_hole_from_key(),
                              far_hole_lower(),
                              far_hole_upper(),
                              far_holes()};
  for (const int lanes : lane_counts()) rows.push_back(tongue_end(lanes));
  for (const auto& others : {bracket_rows(), slot_rows()}) rows.insert(rows.end(), others.begin(), others.end());
  return rows;
}

}  // namespace baywright::standards::addin_cards
