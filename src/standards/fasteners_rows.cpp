// The list of every row of fasteners.
#include "standards/fasteners.h"

#include <initializer_list>

namespace baywright::standards::fasteners {

namespace {

void add(std::vector<Dimension>& list, std::initializer_list<const Dimension*> rows) {
  for (const Dimension* const row : rows) list.push_back(*row);
}

void add(std::vector<Dimension>& list, const std::optional<Dimension>& row) {
  if (row) list.push_back(*row);
}

}  // namespace

std::vector<Dimension> rows() {
  std::vector<Dimension> list;
  for (const Thread& row : threads()) {
    add(list, {&row.major, &row.pitch, &row.tap_drill, &row.hole.fine, &row.hole.medium, &row.hole.coarse});
    add(list, row.screw);
  }
  for (const Head& row : heads()) {
    add(list, {&row.diameter, &row.height});
    add(list, row.made);
  }
  for (const Washer& row : washers()) add(list, {&row.bore, &row.outside, &row.thickness});
  for (const Nut& row : nuts()) add(list, {&row.across_flats, &row.height, &row.corners});
  add(list, {&standoff_length_limit(), &spacer_length_limit()});
  for (const PressIn& row : press_ins()) {
    add(list, {&row.hole, &row.body});
    add(list, row.flange);
    add(list, row.height);
  }
  return list;
}

}  // namespace baywright::standards::fasteners
