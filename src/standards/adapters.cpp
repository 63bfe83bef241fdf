#include "standards/adapters.h"

#include "standards/row.h"

namespace baywright::standards::adapters {

namespace {

constexpr const char* habit = "common practice, no source; measure yours";

Dimension usual(const char* name, double nominal, double half) {
  return plus_minus(name, nominal, half, habit, Known::practice);
}
Dimension usual(const char* name, double nominal) {
  return untoleranced(name, nominal, habit, Known::practice);
}

}  // namespace

const Dimension& tray_sheet() {
  static const Dimension row = usual("adapter's tray sheet", 1.5, 0.2);
  return row;
}
const Dimension& second_drive() {
  static const Dimension row = usual("second drive over the adapter's base", 12.0, 0.3);
  return row;
}
const Dimension& extender_strip() {
  static const Dimension row = usual("extender's strip", 0.8, 0.1);
  return row;
}
const Dimension& carrier_up() {
  static const Dimension row = usual("carrier's first M.2 socket over its lower edge", 14.0);
  return row;
}
const Dimension& carrier_apart() {
  static const Dimension row = usual("carrier's M.2 sockets apart", 25.0);
  return row;
}
const Dimension& carrier_from() {
  static const Dimension row = usual("carrier's M.2 sockets from its key", 55.0);
  return row;
}
const Dimension& carrier_column() {
  static const Dimension row = usual("carrier's second pair of M.2 sockets from the first", 118.0);
  return row;
}
const Dimension& carrier_length() {
  static const Dimension row = usual("carrier for four cards, length", 240.0);
  return row;
}
const Dimension& plug_over_base() {
  static const Dimension row = usual("cable plug over the drive's base", 8.0);
  return row;
}

std::vector<Dimension> rows() {
  return {tray_sheet(),   second_drive(),   extender_strip(), carrier_up(),    carrier_apart(),
          carrier_from(), carrier_column(), carrier_length(), plug_over_base()};
}

}  // namespace baywright::standards::adapters
