// What holds of every row, and how each is known.
#include "standards/addin_cards.h"
#include "standards/boards.h"
#include "standards/drives.h"
#include "standards/m2.h"
#include "standards/mini_cards.h"

#include <cmath>
#include <doctest/doctest.h>
#include <set>
#include <string>
#include <vector>

using namespace baywright::standards;
using baywright::tolerance::Dimension;
using baywright::tolerance::Known;
using baywright::tolerance::open_side;

namespace {

std::vector<Dimension> joined(const std::vector<std::vector<Dimension>>& families) {
  std::vector<Dimension> rows;
  for (const auto& family : families) rows.insert(rows.end(), family.begin(), family.end());
  return rows;
}

std::vector<Dimension> board_drive_and_card_rows() {
  return joined({boards::rows(), drives::rows(), mini_cards::rows(), addin_cards::rows()});
}

std::vector<Dimension> all_rows() {
  return joined({m2::rows(), board_drive_and_card_rows()});
}

}  // namespace

TEST_CASE("every row has a name, a source and sane limits") {
  const auto rows = all_rows();
  CHECK(rows.size() > 300);
  for (const Dimension& row : rows) {
    CAPTURE(row.name);
    CHECK(!row.name.empty());
    CHECK(row.source.size() > 10);
    CHECK(std::isfinite(row.nominal));
    CHECK(row.minus >= 0.0);
    CHECK(row.plus >= 0.0);
    CHECK(!(row.minus == open_side && row.plus == open_side));
    CHECK(row.known != Known::measured);  // no row is a user's
    // A figure without limits says whether they are unknown or basic.
    if (row.exact()) {
      const bool said = row.source.find("no tolerance published") != std::string::npos ||
                        row.source.find("basic") != std::string::npos;
      CHECK(said);
    } else {
      CHECK(row.source.find("no tolerance published") == std::string::npos);
    }
  }
}

TEST_CASE("no two rows of boards, drives and cards have one name") {
  std::set<std::string> names;
  for (const Dimension& row : board_drive_and_card_rows()) {
    CAPTURE(row.name);
    CHECK(names.insert(row.name).second);
  }
}

TEST_CASE("which rows of boards, drives and cards are memory, and that their source says so") {
  std::set<std::string> memory;
  for (const Dimension& row : board_drive_and_card_rows()) {
    if (row.known != Known::memory) continue;
    memory.insert(row.name);
    CHECK(row.source.find("memory") != std::string::npos);
  }
  CHECK(memory == std::set<std::string>{"leads below the board", "mini card thickness", "mini card parts on top",
                                        "mini card parts at the bottom", "parts on the component side",
                                        "parts on the solder side"});
}

TEST_CASE("no table of drives and cards was read itself") {
  for (const auto& rows : {drives::rows(), mini_cards::rows(), addin_cards::rows()}) {
    for (const Dimension& row : rows) {
      CAPTURE(row.name);
      CHECK(row.known != Known::read);
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
    const bool dtx = board.id == "dtx" || board.id == "mini-dtx";
    const bool thin = board.id == "thin-mini-itx";  // nobody was found who says that its holes are those of Mini-ITX
    CHECK(board.along_x.known == (dtx || thin ? Known::secondary : Known::read));
    for (const auto& hole : board.holes) CHECK(hole.known == (thin ? Known::memory : Known::secondary));
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
