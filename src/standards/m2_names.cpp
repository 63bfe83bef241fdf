// Type names of M.2 cards.
#include "standards/m2.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <system_error>

namespace baywright::standards::m2 {

namespace {

using Refusal = std::string;

char upper(char c) {
  return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
}

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && (text.front() == ' ' || text.front() == '\t')) text.remove_prefix(1);
  while (!text.empty() && (text.back() == ' ' || text.back() == '\t')) text.remove_suffix(1);
  return text;
}

/// Whole digits only; none for anything else.
std::optional<int> number(std::string_view digits) {
  int value = 0;
  const char* const end = digits.data() + digits.size();
  if (digits.find_first_not_of("0123456789") != std::string_view::npos) return std::nullopt;
  const auto [read_to, fault] = std::from_chars(digits.data(), end, value);
  if (fault != std::errc{} || read_to != end) return std::nullopt;
  return value;
}

/// Words with spaces between.
class List {
 public:
  List& add(std::string_view word) {
    if (!text_.empty()) text_ += ' ';
    text_ += word;
    return *this;
  }
  [[nodiscard]] const std::string& text() const { return text_; }

 private:
  std::string text_;
};

std::string known_widths() {
  List list;
  for (const Width& width : widths()) {
    list.add(std::to_string(width.code));
    // A name gives whole millimetres, and one width is none.
    if (width.across.nominal != width.code) list.add("for").add(tolerance::in_words(width.across.nominal)).add("mm");
  }
  return list.text();
}

std::string known_lengths() {
  List list;
  for (const Length& length : lengths()) list.add(std::to_string(length.code));
  return list.text();
}

std::string known_heights() {
  List list;
  for (const HeightCode& row : height_codes()) list.add(row.code);
  return list.add("or ? for a card that is to be measured").text();
}

std::string known_keys() {
  List list;
  for (const Key& row : keys()) list.add(std::string(1, row.letter));
  return list.add("A+E B+M").text();
}

/// Width and length from "2280", "22110".
Refusal read_size(std::string_view text, CardName& name) {
  constexpr std::size_t width_digits = 2;
  if ((text.size() != 4 && text.size() != 5) || !number(text)) {
    return "a type name starts with two digits of width and two or three of length, as 2280 or 22110";
  }
  name.width = number(text.substr(0, width_digits)).value_or(0);
  name.length = number(text.substr(width_digits)).value_or(0);
  const auto all_widths = widths();
  if (std::none_of(all_widths.begin(), all_widths.end(), [&](const Width& row) { return row.code == name.width; })) {
    return "no M.2 card has width " + std::to_string(name.width) + "; widths are " + known_widths();
  }
  const auto all_lengths = lengths();
  if (std::none_of(all_lengths.begin(), all_lengths.end(),
                   [&](const Length& row) { return row.code == name.length; })) {
    return "no M.2 card has length " + std::to_string(name.length) + "; lengths are " + known_lengths();
  }
  return {};
}

Refusal read_height(std::string_view text, CardName& name) {
  for (const char c : text) name.height += upper(c);
  if (name.height == "?" || height_code(name.height) != nullptr) return {};
  return "no such height code; codes are " + known_heights();
}

Refusal read_keys(std::string_view text, CardName& name) {
  for (const char c : text) {
    if (c != '+') name.keys += upper(c);
  }
  std::sort(name.keys.begin(), name.keys.end());
  const bool plus_joins = text.find('+') == std::string_view::npos || (text.size() == 3 && text[1] == '+');
  const bool one = name.keys.size() == 1 && key(name.keys.front()) != nullptr;
  const bool two = name.keys == "AE" || name.keys == "BM";
  if (plus_joins && (one || two)) return {};
  return "no card has such keys; keys are " + known_keys();
}

struct Listed {
  std::array<std::string_view, 5> sizes;  // empty beyond the last
  std::array<std::string_view, 3> keys;
};
// Table 1 of the specification, soldered types left out: they have no edge.
constexpr std::array<Listed, 4> table_1{{
    {{"1630", "2230", "3030"}, {"A", "E", "AE"}},
    {{"3042"}, {"B"}},
    {{"2230", "2242", "2260", "2280", "22110"}, {"BM"}},
    {{"2242", "2260", "2280", "22110"}, {"M", "BM"}},
}};

template <std::size_t n>
bool holds(const std::array<std::string_view, n>& list, std::string_view word) {
  return !word.empty() && std::find(list.begin(), list.end(), word) != list.end();
}

}  // namespace

std::variant<CardName, std::string> read_card_name(std::string_view text) {
  text = trimmed(text);
  const std::size_t first = text.find('-');
  const std::size_t second = first == std::string_view::npos ? first : text.find('-', first + 1);
  if (second == std::string_view::npos) {
    return "a type name has a size, a height code and keys, as 2280-D2-M; write ? for a height code that is not known";
  }
  CardName name{};
  Refusal wrong = read_size(text.substr(0, first), name);
  if (wrong.empty()) wrong = read_height(text.substr(first + 1, second - first - 1), name);
  if (wrong.empty()) wrong = read_keys(text.substr(second + 1), name);
  if (!wrong.empty()) return wrong;
  return name;
}

bool listed_type(const CardName& name) {
  const std::string size = std::to_string(name.width) + std::to_string(name.length);
  return std::any_of(table_1.begin(), table_1.end(),
                     [&](const Listed& row) { return holds(row.sizes, size) && holds(row.keys, name.keys); });
}

}  // namespace baywright::standards::m2
