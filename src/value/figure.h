#pragma once
// Reading a figure as shops and spreadsheets write it.
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace baywright::value {

struct Unit {
  std::string_view name;  // small letters; empty: none written
  double factor = 1.0;
};

/// What is wrong and what would be right.
struct Refused {
  std::string what;
  std::string right;
};

/// "79.90", "79,90", "1.299,00", "1,299.00", "1 299", each with one of the units behind it, capitals or not. Point and
/// comma: the last of two kinds is the decimal one; one alone is decimal too, unless it stands before three digits and
/// could part thousands: then it is refused, or with `whole` (figures that nobody gives in fractions) read as
/// thousands. Refused besides: no figure, an unknown unit, nothing or less than nothing, more than 1e12.
[[nodiscard]] std::variant<double, Refused> read_figure(std::string_view text, const std::vector<Unit>& units,
                                                        bool whole = false);

/// Whether this is how a currency is written: three capitals ("EUR"), a sign with at most three letters before it ("€",
/// "US$"), or one of the abbreviations and names that shops write ("kr", "Kč", "euro"). None is changed into another.
[[nodiscard]] bool is_currency(std::string_view text);

/// A price with what stands around it: "79.90 EUR", "EUR 79,90", "$1,299.00". The currency is kept as written; other
/// words ("about 55") are refused.
struct Price {
  double amount = 0.0;
  std::string currency;  // empty: none was written
};
[[nodiscard]] std::variant<Price, Refused> read_price(std::string_view text);

}  // namespace baywright::value
