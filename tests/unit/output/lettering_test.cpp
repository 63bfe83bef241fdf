#include "output/lettering.h"

#include "support/check_mm.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <random>

using namespace baywright::output;
using baywright::test::check_mm;

TEST_CASE("text is as wide as its advances, and signs beyond ASCII count once") {
  // Advances of DejaVu Sans 2.37 (its hmtx table): digits 636, full stop 318, space 318, plus-minus sign 838; bold
  // digits 696.
  check_mm(text_width("9.10", 10.0), 22.26, 1e-9);
  check_mm(text_width("±0.2", 10.0), 8.38 + 6.36 + 3.18 + 6.36, 1e-9);
  check_mm(text_width("8", 2.5, true), 1.74, 1e-9);
  check_mm(text_width("", 5.0), 0.0, 0.0);
}

TEST_CASE("text that is too wide ends in an ellipsis and then has room") {
  CHECK(shortened("tray", 50.0, 2.5) == "tray");
  const std::string name = "an extraordinarily long größe of a heatsink";
  for (double width = 5.0; width < text_width(name, 2.5); width += 0.37) {
    const std::string cut = shortened(name, width, 2.5);
    CAPTURE(cut);
    CHECK(text_width(cut, 2.5) <= width);
    CHECK(cut.ends_with("…"));
    CHECK(name.starts_with(cut.substr(0, cut.size() - 3)));
    CHECK((static_cast<unsigned char>(cut[cut.size() - 4]) & 0xC0U) != 0xC0U);  // no letter is cut in half
  }
}

TEST_CASE("lines keep every word until there are too many") {
  const auto lines = broken("graphics card cooler above board", 22.0, 2.5, 4);
  std::string joined;
  for (const std::string& line : lines) {
    CHECK(text_width(line, 2.5) <= 22.0);
    joined += (joined.empty() ? "" : " ") + line;
  }
  CHECK(joined == "graphics card cooler above board");
  CHECK(broken("one two three four five six", 8.0, 2.5, 2).size() == 2);
  CHECK(broken("one two three four five six", 8.0, 2.5, 2).back().ends_with("…"));
}

TEST_CASE("labels that are spread never collide, keep their order, and stay where they have room") {
  std::mt19937_64 random(20260303);
  int moved = 0;
  for (int round = 0; round < 500; ++round) {
    std::uniform_real_distribution<double> place(0.0, 100.0);
    std::uniform_real_distribution<double> half(0.5, 4.0);
    std::vector<double> wanted(static_cast<std::size_t>(1 + round % 12));
    std::vector<double> halves;
    for (double& each : wanted) each = place(random);
    for (std::size_t i = 0; i < wanted.size(); ++i) halves.push_back(half(random));
    std::sort(wanted.begin(), wanted.end());
    const auto got = spread(wanted, halves, 0.0, 100.0);
    CHECK(got.front() - halves.front() >= -1e-9);
    CHECK(got.back() + halves.back() <= 100.0 + 1e-9);
    for (std::size_t i = 1; i < got.size(); ++i) CHECK(got[i] - got[i - 1] >= halves[i] + halves[i - 1] - 1e-9);
    for (std::size_t i = 0; i < got.size(); ++i) moved += got[i] != wanted[i] ? 1 : 0;
  }
  CHECK(moved > 500);   // some had to give way
  CHECK(moved < 2800);  // of 3250, and some did not
  check_mm(spread({50.0}, {3.0}, 0.0, 100.0).front(), 50.0, 0.0);
  const auto pair = spread({50.0, 50.0}, {3.0, 1.0}, 0.0, 100.0);  // both give way alike
  check_mm(pair[0], 48.0, 1e-12);
  check_mm(pair[1], 52.0, 1e-12);
}
