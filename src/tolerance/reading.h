#pragma once
// Reading a length as people write it.
#include "tolerance/dimension.h"

#include <string>
#include <string_view>
#include <variant>

namespace baywright::tolerance {

/// A length and its limits as written, mm.
struct Length {
  double nominal = 0.0;
  double minus = 0.0;
  double plus = 0.0;
  bool limits_given = false;  // false: a bare length, whose limits come from the tool that measured it
};

/// What is wrong, at which byte of the text (from 0), and what would be right.
struct Misread {
  std::size_t at = 0;
  std::string what;
  std::string right;
};

/// Accepts "6.35 ±0.1" (or +- and +/-), "6.35 +0.2 -0", "6.35 -0 +0.2", "6.2..6.5" (nominal is the middle), "max 1.35"
/// (nominal 1.35, lower side open), "min 3" (upper side open), plain "6.35", each with an optional unit mm, cm, in or "
/// (default mm) behind a figure: "1/4 in", "1 1/2 in", "0.25 in ±1/64 in", "3/8in". A unit behind the last figure of a
/// `±`, `+ -` or `..` holds for all figures before it that name none. Decimal point only: a decimal comma is named as
/// such. Space is free. Refused: no figure, text left over, an unknown unit (the known ones are named), a limit without
/// a unit behind a length in cm or inches, a fraction without any unit, a negative or
/// zero denominator, limits of the wrong sign or order, NaN, infinity, anything beyond 1e5 mm in size.
/// Signs: a leading - on the nominal is accepted here; whether a length may be negative is the caller's to say.
[[nodiscard]] std::variant<Length, Misread> read_length(std::string_view text);

/// A figure for people: at least two decimals and no more than four, without noise: 0.40, 1.57, 39.05, 0.146.
[[nodiscard]] std::string in_words(double mm);

/// "9.10 ±0.20", "7.00 +0.20 -0.50", "12.00 +0 -0.15", "at most 1.35", "at least 3.00", "1.57", "3.00 without limits".
[[nodiscard]] std::string in_words(const Dimension& dimension);

}  // namespace baywright::tolerance
