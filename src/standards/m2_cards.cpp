// Sizes, height codes and the board of an M.2 card.
#include "standards/m2.h"
#include "standards/m2_source.h"
#include "standards/row.h"

#include <algorithm>
#include <array>

namespace baywright::standards::m2 {

namespace {

Width width(int code, double across, std::string_view place) {
  return {code, plus_minus("card width", across, general_limit, rev1(place))};
}

Length length(int code) {
  return {code, plus_minus("card length", code, general_limit, rev1("section 2.2 and Figure 3"))};
}

Dimension parts(std::string_view side, double nominal) {
  constexpr double limit = 0.10;  // in all stacks drawn, so that nominal and limit make the maximum of Figure 3
  return plus_minus("parts " + std::string(side) + " the card", nominal, limit,
                    rev1("Figure 3; nominal Figures 40 to 61"));
}

HeightCode single_sided(std::string_view code, double top) {
  return {code, parts("above", top), std::nullopt};
}

HeightCode double_sided(std::string_view code, double top, double bottom) {
  return {code, parts("above", top), parts("below", bottom)};
}

}  // namespace

std::span<const Width> widths() {
  static const std::array rows{
      width(12, 12.0, "Figures 2 and 3"),
      width(16, 16.5, "section 2.2, Figures 2 and 7"),
      width(22, 22.0, "Figures 4 and 16"),
      width(30, 30.0, "Figures 8 and 9"),
      Width{25, untoleranced("card width", 25.0,
                             "press pages of 2022 on a later revision, with a drawing titled Type 25110-D8-M",
                             Known::secondary)},
  };
  return rows;
}

std::span<const Length> lengths() {
  static const std::array rows{
      length(16),
      length(26),
      length(30),
      Length{38, untoleranced("card length", 38.0, "a drive maker's guide and encyclopaedia pages on later revisions",
                              Known::secondary)},
      length(42),
      length(60),
      length(80),
      length(110),
  };
  return rows;
}

std::span<const HeightCode> height_codes() {
  static const std::array rows{
      single_sided("S1", 1.10),       single_sided("S2", 1.25),       single_sided("S3", 1.40),
      double_sided("D1", 1.10, 1.25), double_sided("D2", 1.25, 1.25), double_sided("D3", 1.40, 1.25),
      double_sided("D4", 1.40, 0.60), double_sided("D5", 1.40, 1.40),
  };
  return rows;
}

const HeightCode* height_code(std::string_view code) {
  const auto rows = height_codes();
  const auto found = std::find_if(rows.begin(), rows.end(), [&](const HeightCode& row) { return row.code == code; });
  return found == rows.end() ? nullptr : &*found;
}

const Dimension& card_thickness() {
  static const Dimension row = plus_minus("card thickness", 0.80, 0.08, rev1("Table 2 and Figure 15"));
  return row;
}

const Dimension& tab_width() {
  static const Dimension row = plus_minus("tab width", 19.85, 0.10, rev1("Figures 16 and 18"));
  return row;
}

const Dimension& shoulder() {
  static const Dimension row = plus_minus("full width starts", 4.00, general_limit, rev1("Figure 16, limits Table 2"));
  return row;
}

const Dimension& top_parts_start() {
  static const Dimension row = at_least("top parts start", 4.0, rev1("section 2.3 and Figure 16"));
  return row;
}

const Dimension& bottom_parts_start() {
  static const Dimension row = at_least("bottom parts start", 5.20, rev1("Figures 4 and 17"));
  return row;
}

const Dimension& antenna_strip() {
  static const Dimension row =
      plus_minus("antenna connector strip", 3.80, general_limit, rev1("Figure 16, limits Table 2"));
  return row;
}

const Dimension& notch_width() {
  static const Dimension row = plus_minus("notch width", 1.20, 0.05, rev1("Figure 18"));
  return row;
}

const Dimension& notch_depth() {
  static const Dimension row = plus_minus("notch depth", 3.50, general_limit, rev1("Figure 18, limits Table 2"));
  return row;
}

const Dimension& screw_hole() {
  static const Dimension row = plus_minus("half hole diameter", 3.50, 0.08, rev1("Figures 18 to 21"));
  return row;
}

const Dimension& top_pad() {
  static const Dimension row = plus_minus("top ground pad diameter", 5.50, 0.10, rev1("Figure 18 and section 2.5"));
  return row;
}

const Dimension& bottom_pad() {
  static const Dimension row = plus_minus("bottom ground pad diameter", 6.00, 0.10, rev1("Figures 17 and 18"));
  return row;
}

const Dimension& bottom_pad_inset() {
  static const Dimension row =
      plus_minus("bottom ground pad centre inside the edge", 1.00, 0.10, rev1("Figures 17 and 18"));
  return row;
}

const Dimension& screw_head_height() {
  static const Dimension row = at_most("screw head above the card", 1.20, rev1("Figures 66 to 71 and 75 to 77"));
  return row;
}

const Dimension& screw_head_diameter() {
  static const Dimension row =
      at_most("screw head diameter", 5.20, rev1("Figures 66 to 71 (Figures 75 to 77 say 5 max)"));
  return row;
}

const InsertionAngles& insertion_angles() {
  static const InsertionAngles angles{5.0, 20.0, 30.0};
  return angles;
}

}  // namespace baywright::standards::m2
