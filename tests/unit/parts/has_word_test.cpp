#include "parts/has_word.h"

#include <doctest/doctest.h>
#include <random>
#include <string>

using namespace baywright;
using parts::has_word;

TEST_CASE("a figure in a search counts by its value and as a whole") {
  const std::string drive = "2.5in 2.5-inch drive, 7.00 mm high, of 2.6 W, 60 GB, M3.5 screws";
  for (const char* found : {"7mm", "7.0", "7", "2.5", "2.50in", "60", "60GB", "m3.5", "M3.50", "INCH", "drive,"}) {
    CAPTURE(found);
    CHECK(has_word(drive, found));
  }
  for (const char* not_found : {"6", "5", "0", "M3", "3.5in", "70", "7.5", "m2", "00", "inch7", "7cm"}) {
    CAPTURE(not_found);
    CHECK_FALSE(has_word(drive, not_found));
  }
  CHECK(has_word("Fin heatsink, 7 mm", "7mm"));
  CHECK(has_word("m2/M/H4.2", "h4.2"));
  CHECK_FALSE(has_word("m2/M/H4.2", "h4"));
  CHECK(has_word("pcie/x1", "x1"));
  CHECK_FALSE(has_word("pcie/x16", "x1"));
  CHECK_FALSE(has_word("4 mm3", "m3"));  // the end of a unit is no name
}

TEST_CASE("a figure and the mm behind it are one word to search for") {
  const std::vector<std::string> typed = {"fin 7", "mm", "M3", "7.5mm", "mm"};
  CHECK(parts::search_words(typed) == std::vector<std::string>{"fin", "7mm", "M3", "7.5mm", "mm"});
  CHECK(parts::search_words({}).empty());
}

TEST_CASE("a whole number is found exactly where the text holds it as a number") {
  std::mt19937_64 random(20240611);
  std::uniform_int_distribution<int> tenths(0, 299);
  int found = 0;
  for (int i = 0; i < 2000; ++i) {
    const int held = tenths(random);
    const int asked = tenths(random) / 10;
    const bool whole = held % 10 == 0;
    const std::string text =
        "part " + std::to_string(held / 10) + (whole ? "" : "." + std::to_string(held % 10)) + " mm";
    const bool expected = held == 10 * asked;
    CAPTURE(text);
    CAPTURE(asked);
    CHECK(has_word(text, std::to_string(asked)) == expected);
    CHECK(has_word(text, std::to_string(asked) + "mm") == expected);
    found += expected ? 1 : 0;
  }
  CHECK(found > 2);
}
