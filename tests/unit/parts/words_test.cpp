// The nearest name, lists of words, faults as text.
#include "parts/document.h"

#include <doctest/doctest.h>

using namespace baywright::parts;

TEST_CASE("the nearest name is one that can have been meant") {
  const std::vector<std::string> names = {"board", "tray", "bottom cover", "fin-heatsink-3", "fin-heatsink-14",
                                          "use",   "by"};
  CHECK(nearest("bord", names) == "board");
  CHECK(nearest("Board", names) == "board");
  CHECK(nearest("TRAY", names) == "tray");
  CHECK(nearest("tary", names) == "tray");
  CHECK(nearest("botom cvoer", names) == "bottom cover");
  CHECK(nearest("fin-heatsink-4", names) == "fin-heatsink-3");
  CHECK(nearest("bus", names).empty());  // a word of its own, not `use` misspelt
  CHECK(nearest("at", names).empty());
  CHECK(nearest("graphics card", names).empty());
  CHECK(nearest("", names).empty());
  CHECK(nearest(std::string(100'000, 'x'), names).empty());
  CHECK(nearest("board", {}).empty());
}

TEST_CASE("words in a row") {
  CHECK(any_of({}) == "");
  CHECK(any_of({"a"}) == "a");
  CHECK(any_of({"a", "b"}) == "a or b");
  CHECK(any_of({"a", "b", "c"}) == "a, b or c");
}

TEST_CASE("a fault is one line with its place") {
  CHECK(Fault{"x.toml", 3, 7, "wrong", "right"}.text() == "x.toml:3:7: wrong; right");
  CHECK(Fault{"x.toml", 3, 0, "wrong", {}}.text() == "x.toml:3: wrong");
  CHECK(Fault{"x.toml", 0, 0, "wrong", {}}.text() == "x.toml: wrong");
  CHECK(Fault{"x.toml", 1, 1, "the name `a\n\x1b[31mb`", {}}.text() == "x.toml:1:1: the name `a  [31mb`");
}
