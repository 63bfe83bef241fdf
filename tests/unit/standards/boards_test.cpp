#include "standards/boards.h"

#include "support/check_mm.h"

#include <algorithm>
#include <doctest/doctest.h>

using namespace baywright::standards;
using baywright::test::check_mm;

TEST_CASE("boards by name") {
  CHECK(boards::all().size() == 6);
  for (const char* const id : {"mini-itx", "thin-mini-itx", "mini-dtx", "dtx", "micro-atx", "atx"}) {
    REQUIRE(boards::find(id) != nullptr);
    CHECK(boards::find(id)->id == id);
  }
  CHECK(boards::find("itx") == nullptr);
  CHECK(boards::find("") == nullptr);
}

TEST_CASE("holes and zones lie on their board, whose body is at y < 0") {
  for (const boards::Board& board : boards::all()) {
    CAPTURE(board.id);
    const bool dtx = board.id == "dtx" || board.id == "mini-dtx";  // nobody confirms their holes
    CHECK(board.holes.empty() == dtx);
    const double along = board.along_x.nominal;
    const double across = board.across_y.nominal;
    const double radius = boards::hole_diameter().nominal / 2.0;
    for (const boards::Hole& hole : board.holes) {
      CAPTURE(hole.letter);
      CHECK(hole.x > radius);
      CHECK(hole.x < along - radius);
      CHECK(hole.y < -radius);
      CHECK(hole.y > radius - across);
      CHECK(!hole.source.empty());
    }
    for (const boards::Zone& zone : board.zones) {
      CAPTURE(zone.name);
      CHECK(zone.x0 >= 0.0);
      CHECK(zone.x0 < zone.x1);
      CHECK(zone.x1 <= along);
      CHECK(zone.y0 >= -across);
      CHECK(zone.y0 < zone.y1);
      CHECK(zone.y1 <= 0.0);
      CHECK(zone.height.plus == 0.0);  // a maximum
      CHECK(zone.height.minus == baywright::tolerance::open_side);
    }
  }
}

TEST_CASE("the height zones of a Mini-ITX board cover it once") {
  double area = 0.0;
  const auto& zones = boards::find("mini-itx")->zones;
  for (const auto& a : zones) {
    area += (a.x1 - a.x0) * (a.y1 - a.y0);
    for (const auto& b : zones) {
      const bool apart = a.x1 <= b.x0 || b.x1 <= a.x0 || a.y1 <= b.y0 || b.y1 <= a.y0;
      CHECK((&a == &b || apart));
    }
  }
  check_mm(area, 170.0 * 170.0, 1e-9);
}

TEST_CASE("only one hole of one board is optional") {
  for (const boards::Board& board : boards::all()) {
    for (const boards::Hole& hole : board.holes) {
      CAPTURE(board.id);
      CAPTURE(hole.letter);
      CHECK(hole.required == (hole.letter != 'S'));
    }
  }
}
