#include "tolerance/reading.h"

#include <charconv>
#include <cmath>
#include <system_error>
#include <utility>

namespace baywright::tolerance {

namespace {

constexpr double largest = 1e5;  // mm; a hundred metres is no part of a computer, so it is a slip of the keyboard
constexpr std::string_view known_units = "mm, cm, in or \"";

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}
bool beyond_ascii(char c) {
  return (static_cast<unsigned char>(c) & 0x80U) != 0;
}
char lower(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

bool same_word(std::string_view a, std::string_view b) {
  if (a.size() != b.size()) return false;
  for (std::size_t i = 0; i < a.size(); ++i) {
    if (lower(a[i]) != lower(b[i])) return false;
  }
  return true;
}

/// mm in one of the named unit; 0 for a unit that is not known.
double millimetres_in(std::string_view unit) {
  if (same_word(unit, "mm")) return 1.0;
  if (same_word(unit, "cm")) return 10.0;
  if (same_word(unit, "in") || unit == "\"" || unit == "\u2033") return 25.4;
  return 0.0;
}

/// A figure as written, its unit still open.
struct Figure {
  std::size_t at = 0;
  double value = 0.0;  // in `unit`
  double unit = 0.0;   // mm in one of it; 0: none was named
};

template <typename T>
using Read = std::variant<T, Misread>;

/// Walks over the text, never past its end.
class Reader {
 public:
  explicit Reader(std::string_view text) : text_(text) {}

  Read<Length> length();

 private:
  [[nodiscard]] std::string_view rest() const { return text_.substr(at_); }
  [[nodiscard]] char next() const { return at_ < text_.size() ? text_[at_] : '\0'; }
  [[nodiscard]] char after_next() const { return at_ + 1 < text_.size() ? text_[at_ + 1] : '\0'; }
  [[nodiscard]] bool done() const { return at_ == text_.size(); }
  [[nodiscard]] bool ahead(std::string_view word) const { return rest().substr(0, word.size()) == word; }

  bool take(std::string_view word);
  bool take_word(std::string_view word);
  bool take_plus_minus() { return take("±") || take("+/-") || take("+-"); }
  bool take_minus() { return take("-") || take("\u2212"); }
  void skip_space();
  std::string_view take_digits();

  Read<Figure> figure();
  Read<Figure> signed_figure();
  Read<Figure> limit();
  Read<double> number();
  Read<double> fraction(std::string_view numerator);
  Read<double> unit();

  Read<Length> bound(bool at_most);
  Read<Length> symmetric(const Figure& nominal);
  Read<Length> range(const Figure& low);
  Read<Length> two_limits(const Figure& nominal);

  std::string_view text_;
  std::size_t at_ = 0;
  bool fraction_seen_ = false;
  bool unit_seen_ = false;
};

bool Reader::take(std::string_view word) {
  if (!ahead(word)) return false;
  at_ += word.size();
  return true;
}

bool Reader::take_word(std::string_view word) {
  if (!same_word(rest().substr(0, word.size()), word)) return false;
  at_ += word.size();
  return true;
}

void Reader::skip_space() {
  // The spaces that stand in copied text as well: no-break, thin, narrow no-break.
  while (take(" ") || take("\t") || take("\u00A0") || take("\u2009") || take("\u202F")) {
  }
}

std::string_view Reader::take_digits() {
  const std::size_t from = at_;
  while (is_digit(next())) ++at_;
  return text_.substr(from, at_ - from);
}

/// Digits with an optional point among them, as a value. Too many digits for a double are still a length too large or
/// too small to matter.
double value_of(std::string_view digits) {
  double value = 0.0;
  const auto [end, fault] =
      std::from_chars(digits.data(), digits.data() + digits.size(), value, std::chars_format::fixed);
  if (fault == std::errc{}) return value;
  const std::string_view whole = digits.substr(0, digits.find('.'));
  return whole.find_first_not_of('0') == std::string_view::npos ? 0.0 : HUGE_VAL;
}

Read<double> Reader::number() {
  const std::size_t from = at_;
  const std::string_view whole = take_digits();
  if (next() == '.' && after_next() != '.') {
    ++at_;
    if (take_digits().empty()) {
      return Misread{at_, "no digit behind the point", "write a figure as 6.35"};
    }
    if (next() == '/') {
      return Misread{at_, "a fraction of a decimal",
                     "write a fraction of whole numbers, as 1/4, or two limits as +0.2 -0.1"};
    }
    return value_of(text_.substr(from, at_ - from));
  }
  if (whole.empty()) return Misread{from, "no figure", "write a length as 6.35, 1/4 in or 6.35 ±0.1"};
  // "1/4", or "1 1/2" where more digits and a stroke follow.
  const std::size_t behind_whole = at_;
  skip_space();
  if (next() == '/') return fraction(whole);
  if (at_ != behind_whole && is_digit(next())) {
    const std::size_t numerator_at = at_;
    const std::string_view numerator = take_digits();
    skip_space();
    if (next() == '/') {
      const Read<double> part = fraction(numerator);
      if (const auto* wrong = std::get_if<Misread>(&part)) return *wrong;
      return value_of(whole) + std::get<double>(part);
    }
    at_ = numerator_at;
    return Misread{numerator_at, "two figures with nothing between them",
                   "write one figure, a fraction as 1 1/2, or limits as 6.35 ±0.1"};
  }
  at_ = behind_whole;
  return value_of(whole);
}

/// From the stroke on.
Read<double> Reader::fraction(std::string_view numerator) {
  fraction_seen_ = true;
  take("/");
  skip_space();
  const std::size_t from = at_;
  if (take_minus()) return Misread{from, "a negative denominator", "write the sign before the figure: -1/4 in"};
  const std::string_view denominator = take_digits();
  if (denominator.empty()) return Misread{from, "no denominator", "write a fraction of whole numbers, as 1/4 in"};
  if (next() == '.' && after_next() != '.') {
    return Misread{from, "a denominator that is not whole", "write a fraction of whole numbers, as 1/4 in"};
  }
  const double divisor = value_of(denominator);
  if (!(divisor > 0.0)) return Misread{from, "a denominator of zero", "write a fraction as 1/4 in"};
  const double dividend = value_of(numerator);
  return std::isinf(divisor) && std::isinf(dividend) ? HUGE_VAL : dividend / divisor;
}

/// The unit behind a figure, as mm in one of it; 0 where none stands there.
Read<double> Reader::unit() {
  const std::size_t from = at_;
  if (take("\"") || take("\u2033")) return millimetres_in(text_.substr(from, at_ - from));
  while (is_letter(next()) || (beyond_ascii(next()) && !ahead("±") && !ahead("\u2212") && !ahead("\u00A0") &&
                               !ahead("\u2009") && !ahead("\u202F"))) {
    ++at_;
  }
  const std::string_view named = text_.substr(from, at_ - from);
  if (named.empty()) return 0.0;
  const double found = millimetres_in(named);
  if (found > 0.0) return found;
  for (const std::string_view bound_word : {"max", "min"}) {
    if (!same_word(named, bound_word)) continue;
    const std::string word(bound_word);
    return Misread{from, "\"" + word + "\" behind the figure", "write it first: " + word + " 1.35"};
  }
  return Misread{from, "an unknown unit", "write " + std::string(known_units) + ", or nothing for mm"};
}

/// A figure without sign, with its unit if one stands there.
Read<Figure> Reader::figure() {
  skip_space();
  Figure got{.at = at_};
  const Read<double> value = number();
  if (const auto* wrong = std::get_if<Misread>(&value)) return *wrong;
  got.value = std::get<double>(value);
  const std::size_t behind_figure = at_;
  skip_space();
  if (next() == ',') {
    return Misread{at_, "a decimal comma", "write a decimal point, as 6.35, and no comma between thousands"};
  }
  const Read<double> named = unit();
  if (const auto* wrong = std::get_if<Misread>(&named)) return *wrong;
  got.unit = std::get<double>(named);
  unit_seen_ = unit_seen_ || got.unit > 0.0;
  if (got.unit == 0.0) at_ = behind_figure;
  return got;
}

Read<Figure> Reader::signed_figure() {
  skip_space();
  const std::size_t from = at_;
  const bool negative = take_minus();
  Read<Figure> got = figure();
  if (auto* fig = std::get_if<Figure>(&got)) {
    fig->at = from;
    if (negative) fig->value = -fig->value;
  }
  return got;
}

/// What stands behind ±, + or -: a figure that may not carry a sign of its own.
Read<Figure> Reader::limit() {
  skip_space();
  if (ahead("-") || ahead("\u2212") || ahead("+") || ahead("±")) {
    return Misread{at_, "a limit with two signs", "write limits as ±0.1 or +0.2 -0.1"};
  }
  return figure();
}

Misread too_large(const Figure& figure) {
  return {figure.at, "a length beyond 100000 mm", "check the figure and its unit"};
}

/// In mm; a figure that names no unit takes that of `last`, else it is in mm.
double millimetres(const Figure& figure, const Figure& last) {
  const double unit = figure.unit > 0.0 ? figure.unit : last.unit;
  return unit > 0.0 ? figure.value * unit : figure.value;
}

/// "0.25 in ±0.01": hundredths of what? Either guess is 25 times off.
bool unit_unclear(const Figure& nominal, const Figure& last) {
  return nominal.unit > 0.0 && nominal.unit != 1.0 && last.unit == 0.0 && last.value != 0.0;
}

Misread name_the_unit(const Figure& figure) {
  return {figure.at, "a limit without a unit behind a length that is not in mm",
          "name it: 0.25 in ±0.01 in, or ±0.2 mm"};
}

bool in_reach(double mm) {
  return std::abs(mm) <= largest;
}  // false for NaN

Read<Length> Reader::bound(bool at_most) {
  const Read<Figure> got = signed_figure();
  if (const auto* wrong = std::get_if<Misread>(&got)) return *wrong;
  const Figure& edge = std::get<Figure>(got);
  const double mm = millimetres(edge, edge);
  if (!in_reach(mm)) return too_large(edge);
  return Length{
      .nominal = mm, .minus = at_most ? open_side : 0.0, .plus = at_most ? 0.0 : open_side, .limits_given = true};
}

Read<Length> Reader::symmetric(const Figure& nominal) {
  const Read<Figure> got = limit();
  if (const auto* wrong = std::get_if<Misread>(&got)) return *wrong;
  const Figure& either = std::get<Figure>(got);
  if (unit_unclear(nominal, either)) return name_the_unit(either);
  const double mm = millimetres(nominal, either);
  const double side = millimetres(either, either);
  if (!in_reach(mm)) return too_large(nominal);
  if (!in_reach(side)) return too_large(either);
  return Length{.nominal = mm, .minus = side, .plus = side, .limits_given = true};
}

Read<Length> Reader::range(const Figure& low) {
  if (next() == '.') return Misread{at_, "three points", "write a range as 6.2..6.5"};
  const Read<Figure> got = signed_figure();
  if (const auto* wrong = std::get_if<Misread>(&got)) return *wrong;
  const Figure& high = std::get<Figure>(got);
  if (unit_unclear(low, high)) return name_the_unit(high);
  const double from = millimetres(low, high);
  const double to = millimetres(high, high);
  if (!in_reach(from)) return too_large(low);
  if (!in_reach(to)) return too_large(high);
  if (!(from <= to)) return Misread{high.at, "a range that runs backwards", "write the smaller figure first: 6.2..6.5"};
  const double half = (to - from) / 2.0;
  return Length{.nominal = (from + to) / 2.0, .minus = half, .plus = half, .limits_given = true};
}

Read<Length> Reader::two_limits(const Figure& nominal) {
  const bool plus_first = take("+");
  if (!plus_first) take_minus();
  const Read<Figure> first = limit();
  if (const auto* wrong = std::get_if<Misread>(&first)) return *wrong;
  skip_space();
  const std::size_t second_at = at_;
  const bool plus_second = take("+");
  if (!plus_second && !take_minus()) {
    return Misread{second_at, "one limit of two", "write both, as 6.35 +0.2 -0, or a range as 6.2..6.5"};
  }
  if (plus_first == plus_second) {
    return Misread{second_at, "two limits of one sign",
                   "write one + and one -, as 6.35 +0.2 -0, or a range as 6.2..6.5"};
  }
  const Read<Figure> second = limit();
  if (const auto* wrong = std::get_if<Misread>(&second)) return *wrong;
  const Figure& a = std::get<Figure>(first);
  const Figure& b = std::get<Figure>(second);
  if (unit_unclear(nominal, b)) return name_the_unit(b);
  const double mm = millimetres(nominal, b);
  const double side_a = millimetres(a, b);
  const double side_b = millimetres(b, b);
  if (!in_reach(mm)) return too_large(nominal);
  if (!in_reach(side_a)) return too_large(a);
  if (!in_reach(side_b)) return too_large(b);
  return Length{
      .nominal = mm, .minus = plus_first ? side_b : side_a, .plus = plus_first ? side_a : side_b, .limits_given = true};
}

Read<Length> Reader::length() {
  skip_space();
  Read<Length> got = Length{};
  if (take_word("max")) {
    got = bound(true);
  } else if (take_word("min")) {
    got = bound(false);
  } else {
    const Read<Figure> first = signed_figure();
    if (const auto* wrong = std::get_if<Misread>(&first)) return *wrong;
    const Figure& nominal = std::get<Figure>(first);
    skip_space();
    if (take_plus_minus()) {
      got = symmetric(nominal);
    } else if (take("..")) {
      got = range(nominal);
    } else if (ahead("+") || ahead("-") || ahead("\u2212")) {
      got = two_limits(nominal);
    } else {
      const double mm = millimetres(nominal, nominal);
      if (!in_reach(mm)) return too_large(nominal);
      got = Length{.nominal = mm};
    }
  }
  if (std::holds_alternative<Misread>(got)) return got;
  skip_space();
  if (!done()) {
    return Misread{at_, "text left over",
                   "end behind the length, as in 6.35 ±0.1 mm, or check the sign between figures"};
  }
  // Who measures in fractions measures in inches, and 7/16 mm would be 25 times too little without a word.
  if (fraction_seen_ && !unit_seen_) return Misread{0, "a fraction without a unit", "name it: 7/16 in, or 0.5 mm"};
  return got;
}

}  // namespace

std::variant<Length, Misread> read_length(std::string_view text) {
  return Reader(text).length();
}

}  // namespace baywright::tolerance
