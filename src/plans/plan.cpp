#include "plans/plan.h"

namespace baywright::plans {

std::string_view word(Kind kind) {
  switch (kind) {
    case Kind::other_heatsink:
      return "other heatsink";
    case Kind::lower_heatsink:
      return "lower heatsink";
    case Kind::no_heatsink:
      return "no heatsink";
    case Kind::other_pad:
      return "other pad";
    case Kind::single_sided:
      return "single-sided card";
    case Kind::other_standoff:
      return "other stand-off";
    case Kind::spacer:
      return "spacer";
    case Kind::other_screw:
      return "other screw";
    case Kind::other_place:
      return "other place";
    case Kind::adapter:
      return "adapter";
    case Kind::turned:
      return "turned";
    case Kind::opening:
      return "opening";
    case Kind::other_drive:
      return "other drive";
  }
  return {};
}

std::string_view word(Price price) {
  switch (price) {
    case Price::warmer:
      return "warmer";
    case Price::slower:
      return "slower";
    case Price::warranty:
      return "warranty";
    case Price::metal_work:
      return "metal work";
    case Price::screws:
      return "screws";
    case Price::less_capacity:
      return "less capacity";
    case Price::undone_hardly:
      return "undone hardly";
  }
  return {};
}

bool unchecked(Caution caution) {
  switch (caution) {
    case Caution::screws_longer:
    case Caution::no_screw_suits:
    case Caution::opening_moves:
    case Caution::brackets_move:
    case Caution::hole_there:
    case Caution::sheet_only:
      return true;
    case Caution::stands_out:
    case Caution::chips_differ:
    case Caution::sizes_of_adapter:
    case Caution::money_unknown:
    case Caution::data_moves:
      return false;
  }
  return true;
}

std::string_view word(Caution caution) {
  switch (caution) {
    case Caution::screws_longer:
      return "screws longer";
    case Caution::no_screw_suits:
      return "no screw suits";
    case Caution::opening_moves:
      return "opening moves";
    case Caution::brackets_move:
      return "brackets move";
    case Caution::hole_there:
      return "hole there";
    case Caution::sheet_only:
      return "sheet only";
    case Caution::stands_out:
      return "stands out";
    case Caution::chips_differ:
      return "chips differ";
    case Caution::sizes_of_adapter:
      return "sizes of adapter";
    case Caution::money_unknown:
      return "money unknown";
    case Caution::data_moves:
      return "data moves";
  }
  return {};
}

}  // namespace baywright::plans
