// Brackets of add-in cards.
#include "standards/addin_cards.h"
#include "standards/addin_cards_source.h"
#include "standards/row.h"

namespace baywright::standards::addin_cards {

const Dimension& bracket_full() {
  static const Dimension row =
      but(untoleranced("bracket overall, full height", 120.02, models(), Known::secondary),
          "120.20 in one of the models, a typing error; 120.00 by the outline of a public footprint library");
  return row;
}

const Dimension& bracket_low() {
  static const Dimension row = untoleranced("bracket overall, low", 79.20, models(), Known::secondary);
  return row;
}

const Dimension& bracket_width() {
  static const Dimension row = untoleranced("bracket width", 18.42, models(), Known::secondary);
  return row;
}

const Dimension& bracket_width_full_tab() {
  static const Dimension row =
      untoleranced("bracket width over its offset tab, full height", 21.59, models(), Known::secondary);
  return row;
}

const Dimension& bracket_width_low_tab() {
  static const Dimension row = untoleranced("bracket width at its tab, low", 18.59, models(), Known::secondary);
  return row;
}

const Dimension& bracket_thickness() {
  static const Dimension row = untoleranced("bracket sheet thickness", 0.86, both(), Known::secondary);
  return row;
}

const Dimension& bracket_inner() {
  static const Dimension row = untoleranced("key from the bracket's inner face", 58.18, library(), Known::secondary);
  return row;
}

const Dimension& tab_full() {
  static const Dimension row = untoleranced("lower face of the tab, full height", 104.86, models(), Known::secondary);
  return row;
}

const Dimension& tab_low() {
  static const Dimension row = untoleranced("lower face of the tab, low", 68.09, models(), Known::secondary);
  return row;
}

const Dimension& tab_reach_full() {
  static const Dimension row =
      untoleranced("tab beyond the outer face, full height", 11.43, models(), Known::secondary);
  return row;
}

const Dimension& tab_reach_low() {
  static const Dimension row = untoleranced("tab beyond the outer face, low", 11.84, models(), Known::secondary);
  return row;
}

const Dimension& tab_slot() {
  static const Dimension row = untoleranced("screw slot of the tab", 4.42, models(), Known::secondary);
  return row;
}

const Dimension& tab_slot_full() {
  static const Dimension row = untoleranced("screw slot from the bend, full height", 5.08, models(), Known::secondary);
  return row;
}

const Dimension& tab_slot_low() {
  static const Dimension row = untoleranced("screw slot from the bend, low", 6.35, models(), Known::secondary);
  return row;
}

const Dimension& tip_full() {
  static const Dimension row =
      untoleranced("bracket's tip below the contact edge, full height", 15.14, library(), Known::secondary);
  return row;
}

const Dimension& tip_low() {
  static const Dimension row =
      untoleranced("bracket's tip below the contact edge, low", 11.11, library(), Known::secondary);
  return row;
}

const Dimension& tip_width() {
  static const Dimension row = untoleranced("tip tongue's width", 10.19, models(), Known::secondary);
  return row;
}

const Dimension& tip_from_edge() {
  static const Dimension row =
      but(untoleranced("tip tongue from one edge", 4.11, models(), Known::secondary), "4.12 in the other model");
  return row;
}

const Dimension& window_width() {
  static const Dimension row =
      but(untoleranced("connector window width", 12.06, model(), Known::secondary), "12.07 for the low bracket");
  return row;
}

const Dimension& window_full() {
  static const Dimension row = untoleranced("connector window height, full height", 89.90, model(), Known::secondary);
  return row;
}

const Dimension& window_low() {
  static const Dimension row = untoleranced("connector window height, low", 54.53, model(), Known::secondary);
  return row;
}

const Dimension& window_below_tab_full() {
  static const Dimension row =
      untoleranced("connector window below the tab, full height", 10.16, model(), Known::secondary);
  return row;
}

const Dimension& window_below_tab_low() {
  static const Dimension row = untoleranced("connector window below the tab, low", 9.04, model(), Known::secondary);
  return row;
}

std::vector<Dimension> bracket_rows() {
  return {bracket_full(),
          bracket_low(),
          bracket_width(),
          bracket_width_full_tab(),
          bracket_width_low_tab(),
          bracket_thickness(),
          bracket_inner(),
          tab_full(),
          tab_low(),
          tab_reach_full(),
          tab_reach_low(),
          tab_slot(),
          tab_slot_full(),
          tab_slot_low(),
          tip_full(),
          tip_low(),
          tip_width(),
          tip_from_edge(),
          window_width(),
          window_full(),
          window_low(),
          window_below_tab_full(),
          window_below_tab_low()};
}

}  // namespace baywright::standards::addin_cards
