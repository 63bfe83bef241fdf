// What holds of every row, and how each is known.
#include "standards/boards.h"
#include "standards/m2.h"

#include <cmath>
#include <doctest/doctest.h>
#include <string>
#include <vector>

using namespace baywright::standards;
using baywright::tolerance::Dimension;
using baywright::tolerance::Known;
using baywright::tolerance::open_side;

namespace {

std::vector<const Dimension*> all_rows() {
  std::vector<const Dimension*> rows{
      &m2::card_thickness(),
      &m2::tab_width(),
      &m2::shoulder(),
      &m2::top_parts_start(),
      &m2::bottom_parts_start(),
      &m2::antenna_strip(),
      &m2::notch_width(),
      &m2::notch_depth(),
      &m2::screw_hole(),
      &m2::top_pad(),
      &m2::bottom_pad(),
      &m2::bottom_pad_inset(),
      &m2::screw_head_height(),
      &m2::screw_head_diameter(),
      &m2::row_pitch(),
      &m2::solder(),
      &m2::parts_under_card(),
      &m2::socket_across(),
      &m2::socket_depth(),
      &m2::socket_rear(),
      &m2::socket_front(),
      &m2::cover_front(),
      &m2::slot_width(),
      &m2::rib_width(),
      &m2::posts(),
      &m2::odd_lands(),
      &m2::even_lands(),
      &m2::land_length(),
      &m2::mid_mount_rear(),
      &m2::mid_mount_board(),
      &m2::standoff_flange(),
      &m2::standoff_boss(),
      &m2::standoff_boss_height(),
      &m2::standoff_pilot_length(),
      &m2::tab_play(),
      &m2::screw_play(),
      &boards::thickness(),
      &boards::hole_diameter(),
  };
  for (const auto& row : m2::widths()) rows.push_back(&row.across);
  for (const auto& row : m2::lengths()) rows.push_back(&row.along);
  for (const auto& row : m2::height_codes()) {
    rows.push_back(&row.top);
    if (row.bottom) rows.push_back(&*row.bottom);
  }
  for (const auto& row : m2::socket_classes()) {
    rows.push_back(&row.height);
    rows.push_back(&row.ledge);
    rows.push_back(&row.standoff);
  }
  for (const auto& board : boards::all()) {
    rows.push_back(&board.along_x);
    rows.push_back(&board.across_y);
    for (const auto& zone : board.zones) rows.push_back(&zone.height);
  }
  return rows;
}

}  // namespace

TEST_CASE("every row has a name, a source and sane limits") {
  const auto rows = all_rows();
  CHECK(rows.size() > 70);
  for (const Dimension* const row : rows) {
    CAPTURE(row->name);
    CHECK(!row->name.empty());
    CHECK(row->source.size() > 10);
    CHECK(std::isfinite(row->nominal));
    CHECK(row->minus >= 0.0);
    CHECK(row->plus >= 0.0);
    CHECK(!(row->minus == open_side && row->plus == open_side));
    CHECK(row->known != Known::measured);  // no row is a user's
    // A figure without limits says whether they are unknown or basic.
    if (row->exact()) {
      const bool said = row->source.find("no tolerance published") != std::string::npos ||
                        row->source.find("basic") != std::string::npos;
      CHECK(said);
    }
  }
}

TEST_CASE("rows that the first revision does not hold are not marked as read") {
  for (const auto& row : m2::widths()) CHECK(row.across.known == (row.code == 25 ? Known::secondary : Known::read));
  for (const auto& row : m2::lengths()) CHECK(row.along.known == (row.code == 38 ? Known::secondary : Known::read));
  for (const auto& row : m2::height_codes()) CHECK(row.top.known == Known::read);
  CHECK(m2::tab_play().known == Known::derived);
  CHECK(m2::screw_play().known == Known::derived);
  CHECK(m2::socket_front().known == Known::derived);
  for (const auto& board : boards::all()) {
    CHECK(board.along_x.known == Known::read);
    for (const auto& hole : board.holes) CHECK(hole.known == Known::secondary);
    for (const auto& zone : board.zones) CHECK(zone.height.known == Known::secondary);
  }
  CHECK(boards::hole_diameter().known == Known::secondary);
}

TEST_CASE("a maximum is open below, a minimum above") {
  for (const Dimension* const most : {&m2::screw_head_height(), &m2::screw_head_diameter(), &m2::socket_across(),
                                      &m2::socket_depth(), &m2::socket_front(), &m2::parts_under_card(),
                                      &m2::socket_classes()[0].height, &m2::socket_classes()[0].ledge}) {
    CAPTURE(most->name);
    CHECK(most->minus == open_side);
    CHECK(most->plus == 0.0);
  }
  // The rear end lies at negative y: at most 4.30 away is y of at least -4.30.
  for (const Dimension* const least :
       {&m2::top_parts_start(), &m2::bottom_parts_start(), &m2::socket_rear(), &m2::mid_mount_rear()}) {
    CAPTURE(least->name);
    CHECK(least->minus == 0.0);
    CHECK(least->plus == open_side);
  }
}
