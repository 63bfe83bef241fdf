// Figures as shops and spreadsheets write them.
#include "value/figure.h"

#include <doctest/doctest.h>
#include <string>

using namespace baywright::value;

namespace {

double number(const std::string& text, bool whole = false) {
  const auto read = read_figure(text, {{"", 1.0}, {"gb", 1.0}, {"tb", 1000.0}}, whole);
  const double* value = std::get_if<double>(&read);
  return value == nullptr ? -1.0 : *value;
}

}  // namespace

TEST_CASE("points, commas, blanks and units") {
  CHECK(number("79.90") == 79.9);
  CHECK(number("79,90") == 79.9);
  CHECK(number("1.299,00") == 1299.0);
  CHECK(number("1,299.00") == 1299.0);
  CHECK(number("1 299") == 1299.0);
  CHECK(number("1\xC2\xA0"
               "299,5") == 1299.5);
  CHECK(number("1'299") == 1299.0);
  CHECK(number("1.234.567") == 1234567.0);
  CHECK(number("2 TB") == 2000.0);
  CHECK(number("1,92 tb") == 1920.0);
  CHECK(number("0,250 TB") == 250.0);
}

TEST_CASE("one mark before three digits is asked about, unless fractions make no sense") {
  CHECK(number("1.299") == -1.0);
  CHECK(number("1,299") == -1.0);
  CHECK(number("1,299", true) == 1299.0);
  CHECK(number("750,000", true) == 750000.0);
  const auto read = read_figure("1,299", {{"", 1.0}});
  REQUIRE(std::holds_alternative<Refused>(read));
  CHECK(std::get<Refused>(read).what == "`1,299` may be 1299 or 1.299");
}

TEST_CASE("what is no figure") {
  for (const char* text :
       {"", "abc", "-5", "1.2.3", "1,2,3", "1,23.456,7", "0", "1e5", "5 kg", ".", ",", "nan", "99999999999999"}) {
    CAPTURE(text);
    CHECK(number(text) == -1.0);
  }
}

TEST_CASE("prices keep their currency") {
  const auto price = [](const char* text) { return std::get<Price>(read_price(text)); };
  CHECK(price("79.90 EUR").amount == 79.9);
  CHECK(price("79.90 EUR").currency == "EUR");
  CHECK(price("€ 79,90").currency == "€");
  CHECK(price("$1,299.00").amount == 1299.0);
  CHECK(price("80").currency.empty());
  for (const char* currency : {"CHF", "£", "₹", "US$", "Kč", "kr", "Fr.", "euro"}) {
    CAPTURE(currency);
    CHECK(price((std::string("55 ") + currency).c_str()).currency == currency);
  }
  for (const char* text :
       {"", "EUR", "$ 5 EUR", "-5 EUR", "5 or 6", "1,299 EUR", "about 55", "ca. 55", "55 each", "~55", "55 EURO NOW"}) {
    CAPTURE(text);
    CHECK(std::holds_alternative<Refused>(read_price(text)));
  }
}
