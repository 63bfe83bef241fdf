#include "support/check_mm.h"
#include "tolerance/reading.h"

#include <cmath>
#include <doctest/doctest.h>
#include <limits>
#include <random>

using namespace baywright::tolerance;
using baywright::test::check_mm;

TEST_CASE("a figure has two decimals, and up to four where it needs them") {
  CHECK(in_words(0.4) == "0.40");
  CHECK(in_words(1.57) == "1.57");
  CHECK(in_words(39.05) == "39.05");
  CHECK(in_words(0.146) == "0.146");
  CHECK(in_words(1.5707963267948966) == "1.5708");
  CHECK(in_words(100.0) == "100.00");
  CHECK(in_words(-2.5) == "-2.50");
  CHECK(in_words(0.1 + 0.2) == "0.30");  // no noise of the arithmetic
  CHECK(in_words(9.99999) == "10.00");
}

TEST_CASE("no minus before nothing, and no figure is too large for the buffer") {
  CHECK(in_words(-0.0) == "0.00");
  CHECK(in_words(-0.00004) == "0.00");
  CHECK(in_words(-0.00006) == "-0.0001");
  const std::string huge = in_words(-std::numeric_limits<double>::max());
  CHECK(huge.size() == 1 + 309 + 3);
  CHECK(huge.substr(huge.size() - 3) == ".00");
  CHECK(in_words(std::numeric_limits<double>::infinity()) == "without limit");
  CHECK(in_words(std::nan("")) == "not a number");
}

TEST_CASE("a dimension in words") {
  Dimension d{.name = "gap", .nominal = 9.1, .minus = 0.2, .plus = 0.2, .source = ""};
  CHECK(in_words(d) == "9.10 ±0.20");
  d = {.name = "height", .nominal = 7.0, .minus = 0.5, .plus = 0.2, .source = ""};
  CHECK(in_words(d) == "7.00 +0.20 -0.50");
  d = {.name = "plate", .nominal = 12.0, .minus = 0.15, .plus = 0.0, .source = ""};
  CHECK(in_words(d) == "12.00 +0 -0.15");
  d = {.name = "board", .nominal = 1.57, .source = ""};
  CHECK(in_words(d) == "1.57");
  d = {.name = "head", .nominal = 1.35, .minus = open_side, .source = ""};
  CHECK(in_words(d) == "at most 1.35");
  d.plus = 0.1;  // the bound is the limit, not the nominal
  CHECK(in_words(d) == "at most 1.45");
  d = {.name = "room", .nominal = 3.0, .plus = open_side, .source = ""};
  CHECK(in_words(d) == "at least 3.00");
  d.minus = open_side;
  CHECK(in_words(d) == "3.00 without limits");
}

TEST_CASE("words read back as the same length") {
  std::mt19937_64 random(20260102);
  std::uniform_real_distribution<double> nominal(-200.0, 200.0);
  std::uniform_real_distribution<double> limit(0.0, 2.0);
  constexpr double last_digit = 0.5e-4 + 1e-12;
  for (int round = 0; round < 2000; ++round) {
    Dimension d{.name = "any", .nominal = nominal(random), .minus = limit(random), .plus = limit(random), .source = ""};
    if (round % 3 == 0) d.plus = d.minus;
    if (round % 5 == 0) d.minus = 0.0;
    const auto got = read_length(in_words(d));
    REQUIRE(std::holds_alternative<Length>(got));
    check_mm(std::get<Length>(got).nominal, d.nominal, last_digit);
    check_mm(std::get<Length>(got).minus, d.minus, last_digit);
    check_mm(std::get<Length>(got).plus, d.plus, last_digit);
  }
}

TEST_CASE("how a figure is known, in one word each") {
  CHECK(word(Known::read) == "read");
  CHECK(word(Known::secondary) == "secondary");
  CHECK(word(Known::practice) == "practice");
  CHECK(word(Known::memory) == "memory");
  CHECK(word(Known::measured) == "measured");
  CHECK(word(Known::derived) == "derived");
}
