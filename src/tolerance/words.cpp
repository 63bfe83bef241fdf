#include "tolerance/reading.h"

#include <array>
#include <charconv>
#include <cmath>

namespace baywright::tolerance {

std::string in_words(double mm) {
  if (std::isnan(mm)) return "not a number";
  if (std::isinf(mm)) return "without limit";
  constexpr int decimals = 4;
  std::array<char, 320> digits{};  // the largest double has 309 before the point
  const auto [end, fault] =
      std::to_chars(digits.data(), digits.data() + digits.size(), mm, std::chars_format::fixed, decimals);
  std::string text(digits.data(), end);
  for (int spare = decimals - 2; spare > 0 && text.back() == '0'; --spare) text.pop_back();
  if (text == "-0.00") text.erase(0, 1);
  return text;
}

namespace {

/// A limit of zero is written bare, as on drawings: +0.20 -0.
std::string limit_in_words(double limit) {
  return limit == 0.0 ? "0" : in_words(limit);
}

}  // namespace

std::string in_words(const Dimension& dimension) {
  const bool open_below = dimension.minus == open_side;
  const bool open_above = dimension.plus == open_side;
  if (open_below && open_above) return in_words(dimension.nominal) + " without limits";
  if (open_below) return "at most " + in_words(dimension.high());
  if (open_above) return "at least " + in_words(dimension.low());
  const std::string nominal = in_words(dimension.nominal);
  if (dimension.exact()) return nominal;
  const std::string minus = limit_in_words(dimension.minus);
  const std::string plus = limit_in_words(dimension.plus);
  if (minus == plus) return nominal + " ±" + plus;
  return nominal + " +" + plus + " -" + minus;
}

}  // namespace baywright::tolerance
