// What surrounds a main board: microATX Motherboard Interface Specification 1.2, notes of Figures 4 and 5,
// sections 2.4.1 and 2.4.2 (read; its figures were not seen); a public board model of the ATX family where the row says
// so.
#include "standards/boards.h"
#include "support/check_mm.h"

#include <array>
#include <doctest/doctest.h>
#include <string_view>

using namespace baywright::standards;
using baywright::test::check_mm;
using baywright::tolerance::Known;

namespace {

constexpr double exactly = 1e-9;

const boards::Hole& hole(std::string_view board, char letter) {
  static const boards::Hole none{};
  REQUIRE(boards::find(board) != nullptr);
  for (const boards::Hole& one : boards::find(board)->holes) {
    if (one.letter == letter) return one;
  }
  FAIL("no such hole");
  return none;
}

}  // namespace

TEST_CASE("microATX specification 1.2, Figure 4, notes: the rear aperture") {
  check_mm(boards::aperture_across().nominal, 158.75, exactly);
  check_mm(boards::aperture_up().nominal, 44.45, exactly);
  check_mm(boards::aperture_below_top().nominal, 3.81, exactly);
  check_mm(boards::aperture_up().nominal - boards::aperture_below_top().nominal, 40.64, exactly);  // over the board
  check_mm(boards::aperture_corner().high(), 0.99, exactly);
  check_mm(boards::aperture_keep_out().nominal, 2.54, exactly);
  check_mm(boards::panel_thickness().low(), 0.94, exactly);
  check_mm(boards::panel_thickness().high(), 1.32, exactly);
  check_mm(boards::connector_zone_across().nominal, 152.15, exactly);
  check_mm(boards::connector_zone_up().nominal, 37.34, exactly);
  CHECK(boards::aperture_across().known == Known::read);
}

TEST_CASE("a public board model: the aperture along the rear, and the panel") {
  const double near = boards::aperture_from_hole_c().nominal;
  check_mm(near, 7.52, exactly);
  check_mm(near + boards::aperture_across().nominal, 166.27, exactly);
  // The model counts from hole B: 53.24 to 211.99.
  const double b_to_c = hole("micro-atx", 'C').y - hole("micro-atx", 'B').y;
  check_mm(b_to_c + near, 53.24, exactly);
  check_mm(b_to_c + near + boards::aperture_across().nominal, 211.99, exactly);
  check_mm(boards::panel_behind_hole_row().nominal, 12.27, exactly);
  CHECK(boards::aperture_from_hole_c().known == Known::secondary);
  CHECK(boards::panel_behind_hole_row().known == Known::secondary);
}

TEST_CASE("microATX specification 1.2, Figure 5, note: connector faces") {
  check_mm(boards::connector_face().nominal, 11.30, exactly);
  check_mm(boards::connector_face().nominal - hole("micro-atx", 'B').x, 1.14, exactly);  // past the board's edge
}

TEST_CASE("under and over the board") {
  check_mm(boards::clear_under().low(), 6.35, exactly);  // a public board model, 0.25 in
  CHECK(boards::clear_under().known == Known::secondary);
  check_mm(boards::leads_at_holes().high(), 0.25, exactly);  // microATX specification 1.2, section 2.4.2
  CHECK(boards::leads_at_holes().known == Known::read);
  check_mm(boards::leads().high(), 2.49, exactly);  // memory: 0.098 in
  CHECK(boards::leads().known == Known::memory);
  // microATX specification 1.2, section 2.4.1, Table 6: required and preferred.
  check_mm(boards::chassis_over_cpu().low(), 76.20, exactly);
  check_mm(boards::chassis_over_cpu_better().low(), 88.90, exactly);
}

TEST_CASE("press pages and an encyclopaedia: DTX boards, whose holes nobody confirms") {
  struct Size {
    std::string_view board;
    double along, across;
  };
  constexpr std::array<Size, 2> sizes{{{"mini-dtx", 170.18, 203.20}, {"dtx", 243.84, 203.20}}};
  for (const Size& size : sizes) {
    CAPTURE(size.board);
    REQUIRE(boards::find(size.board) != nullptr);
    const boards::Board& board = *boards::find(size.board);
    check_mm(board.along_x.nominal, size.along, exactly);
    check_mm(board.across_y.nominal, size.across, exactly);
    CHECK(board.holes.empty());
    CHECK(board.along_x.source.find("not confirmed") != std::string::npos);
    CHECK(board.along_x.known == Known::secondary);
  }
}

TEST_CASE("one trade page: thin Mini-ITX, the outline of Mini-ITX and about 25 high") {
  REQUIRE(boards::find("thin-mini-itx") != nullptr);
  const boards::Board& board = *boards::find("thin-mini-itx");
  check_mm(board.along_x.nominal, 170.0, exactly);
  check_mm(board.across_y.nominal, 170.0, exactly);
  CHECK(board.along_x.known == Known::secondary);
  REQUIRE(board.total_height);
  check_mm(board.total_height->high(), 25.0, exactly);
  CHECK(board.total_height->known == Known::secondary);
  for (const boards::Hole& hole : board.holes) CHECK(hole.known == Known::memory);
}
