#include "viewer/grid_step.h"

#include <doctest/doctest.h>
#include <set>
#include <utility>

using namespace baywright::viewer;

TEST_CASE("the arrows reach every cell of drives and places and never leave them") {
  constexpr std::size_t drives = 3;
  constexpr std::size_t places = 4;
  std::set<std::pair<std::size_t, std::size_t>> reached;
  GridCell at = grid_step({2, 2}, "Home", drives, places);
  CHECK(at == GridCell{0, 0});
  for (std::size_t row = 0; row < drives; ++row) {  // along each row and back, as a hand would
    for (std::size_t i = 0; i < places; ++i) {
      reached.insert({at.drive, at.place});
      at = grid_step(at, row % 2 == 0 ? "Right" : "Left", drives, places);
    }
    at = grid_step(at, "Down", drives, places);
  }
  CHECK(reached.size() == drives * places);
  for (const char* key : {"Up", "Left"}) CHECK(grid_step({0, 0}, key, drives, places) == GridCell{0, 0});
  for (const char* key : {"Down", "Right", "End"})
    CHECK(grid_step({drives - 1, places - 1}, key, drives, places) == GridCell{drives - 1, places - 1});
  CHECK(grid_step({1, 1}, "Up", drives, places) == GridCell{0, 1});
  CHECK(grid_step({1, 1}, "Escape", drives, places) == GridCell{1, 1});
  CHECK(grid_step({0, 0}, "Down", 0, 0) == GridCell{0, 0});
}
