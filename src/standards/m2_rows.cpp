// The list of every row of M.2 cards and sockets.
#include "standards/m2.h"

#include <string>
#include <utility>

namespace baywright::standards::m2 {

namespace {

/// In a list, rows of one name need the code that they belong to.
void add(std::vector<Dimension>& list, Dimension row, std::string_view code) {
  row.name += ", " + std::string(code);
  list.push_back(std::move(row));
}

void add_card(std::vector<Dimension>& list) {
  for (const Width& row : widths()) add(list, row.across, std::to_string(row.code));
  for (const Length& row : lengths()) add(list, row.along, std::to_string(row.code));
  for (const HeightCode& row : height_codes()) {
    add(list, row.top, row.code);
    if (row.bottom) add(list, *row.bottom, row.code);
  }
  for (auto* const row : {&card_thickness, &tab_width, &shoulder, &top_parts_start, &bottom_parts_start, &antenna_strip,
                          &notch_width, &notch_depth, &screw_hole, &top_pad, &bottom_pad, &bottom_pad_inset,
                          &screw_head_height, &screw_head_diameter, &row_pitch}) {
    list.push_back(row());
  }
}

void add_socket(std::vector<Dimension>& list) {
  for (const SocketClass& row : socket_classes()) {
    add(list, row.height, row.name);
    add(list, row.ledge, row.name);
    add(list, row.standoff, row.name);
  }
  for (auto* const row :
       {&solder, &parts_under_card, &socket_across, &socket_rear, &socket_front, &cover_front, &slot_width, &rib_width,
        &socket_depth, &posts, &odd_lands, &even_lands, &land_length, &mid_mount_rear, &mid_mount_board}) {
    list.push_back(row());
  }
  for (const std::string_view code : {"S1", "S2", "S3"}) {  // mid-mount sockets publish these alone
    const HeightCode* const height = height_code(code);
    if (height != nullptr) add(list, mid_mount_stack(*height), code);
  }
}

void add_standoff(std::vector<Dimension>& list) {
  for (auto* const row :
       {&standoff_flange, &standoff_boss, &standoff_boss_height, &standoff_pilot_length, &tab_play, &screw_play}) {
    list.push_back(row());
  }
}

}  // namespace

std::vector<Dimension> rows() {
  std::vector<Dimension> list;
  add_card(list);
  add_socket(list);
  add_standoff(list);
  return list;
}

}  // namespace baywright::standards::m2
