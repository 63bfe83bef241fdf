#include "value/figure.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <optional>

namespace baywright::value {

namespace {

bool digit(char c) {
  return c >= '0' && c <= '9';
}

std::string trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(" \t\n");
  if (first == std::string_view::npos) return {};
  return std::string(text.substr(first, text.find_last_not_of(" \t\n") - first + 1));
}

std::string lower(std::string text) {
  for (char& c : text)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return text;
}

/// Blanks as typesetters put them, as plain ones.
std::string with_plain_blanks(std::string_view text) {
  std::string out(text);
  for (const std::string_view blank : {"\xC2\xA0", "\xE2\x80\xAF", "\xE2\x80\x89"})  // no-break, narrow, thin
    for (std::size_t at = 0; (at = out.find(blank, at)) != std::string::npos;) out.replace(at, blank.size(), " ");
  return out;
}

/// Digits with their points, commas and blanks at the front of `text`; a blank belongs to it before three digits only.
std::size_t length_of_figure(std::string_view text) {
  std::size_t i = 0;
  while (i < text.size()) {
    const bool parts = text[i] == ' ' || text[i] == '\'';
    const bool thousand = parts && i > 0 && digit(text[i - 1]) && i + 3 < text.size() && digit(text[i + 1]) &&
                          digit(text[i + 2]) && digit(text[i + 3]) && (i + 4 >= text.size() || !digit(text[i + 4]));
    if (!digit(text[i]) && text[i] != '.' && text[i] != ',' && !thousand) break;
    ++i;
  }
  return i;
}

/// Whether each stretch between marks of this kind has three digits, but the first, which has one to three.
bool in_thousands(std::string_view text, char mark) {
  std::size_t run = 0;
  bool first = true;
  for (std::size_t i = 0; i <= text.size(); ++i) {
    if (i < text.size() && text[i] != mark) {
      ++run;
      continue;
    }
    if (first ? run < 1 || run > 3 : run != 3) return false;
    first = false;
    run = 0;
  }
  return true;
}

struct Read {
  std::optional<double> value;
  Refused refused;
};

Read number_of(std::string text, bool whole) {
  const std::string shown = '`' + text + '`';
  std::erase(text, ' ');
  std::erase(text, '\'');
  const auto commas = std::count(text.begin(), text.end(), ',');
  const auto points = std::count(text.begin(), text.end(), '.');
  const Refused no_figure{shown + " is no figure", "write it as 1299.00 or 1299,00"};
  char decimal = 0;
  if (commas > 0 && points > 0) {
    decimal = text.rfind(',') > text.rfind('.') ? ',' : '.';
    if (std::count(text.begin(), text.end(), decimal) > 1) return {{}, no_figure};
    const std::size_t at = text.find(decimal);
    if (!in_thousands(std::string_view(text).substr(0, at), decimal == ',' ? '.' : ',')) return {{}, no_figure};
  } else if (commas + points == 1) {
    const char mark = commas == 1 ? ',' : '.';
    decimal = mark;
    if (in_thousands(text, mark) && text[0] != '0') {
      if (!whole) {
        std::string plain = text;
        std::erase(plain, mark);
        std::string fraction = text;
        fraction[fraction.find(mark)] = '.';
        while (fraction.back() == '0' && fraction[fraction.size() - 2] != '.') fraction.pop_back();
        return {{}, {shown + " may be " + plain + " or " + fraction, "write it as the one or the other"}};
      }
      decimal = 0;
    }
  } else if (commas + points > 1 && !in_thousands(text, commas > 1 ? ',' : '.')) {
    return {{}, no_figure};
  }
  std::string plain;
  for (const char c : text)
    if (digit(c) || c == decimal) plain += c == decimal ? '.' : c;
  double value = 0.0;
  const auto [end, fault] = std::from_chars(plain.data(), plain.data() + plain.size(), value, std::chars_format::fixed);
  if (plain.empty() || fault != std::errc{} || end != plain.data() + plain.size()) return {{}, no_figure};
  if (!(value > 0.0 && value <= 1e12))
    return {{}, {shown + " cannot be meant", "leave the field empty where nothing is known"}};
  return {value, {}};
}

}  // namespace

std::variant<double, Refused> read_figure(std::string_view text, const std::vector<Unit>& units, bool whole) {
  const std::string all = trimmed(with_plain_blanks(text));
  const std::size_t size = length_of_figure(all);
  if (size == 0) return Refused{'`' + all + "` is no figure", "write a figure, or leave the field empty"};
  const std::string unit = lower(trimmed(std::string_view(all).substr(size)));
  const auto known = std::find_if(units.begin(), units.end(), [&](const Unit& each) { return unit == each.name; });
  if (known == units.end()) {
    std::string names;
    for (const Unit& each : units)
      if (!each.name.empty()) names += (names.empty() ? "" : ", ") + std::string(each.name);
    return Refused{"the unit `" + unit + "` is not known here",
                   names.empty() ? "this figure has none" : "the units are " + names};
  }
  const Read read = number_of(all.substr(0, size), whole);
  if (!read.value) return read.refused;
  return *read.value * known->factor;
}

bool is_currency(std::string_view text) {
  constexpr std::array words{"kr", "kr.", "zł",  "Kč", "Ft",  "Fr",   "Fr.",  "SFr",   "SFr.", "Rs",    "Rs.",
                             "RM", "Rp",  "lei", "лв", "руб", "руб.", "euro", "euros", "Euro", "Euros", "eur"};
  if (std::find(words.begin(), words.end(), text) != words.end()) return true;
  const std::size_t letters = static_cast<std::size_t>(
      std::find_if(text.begin(), text.end(), [](char c) { return c < 'A' || c > 'Z'; }) - text.begin());
  const std::string_view sign = text.substr(letters);
  if (sign.empty()) return letters == 3;
  // Dollar, pound, yen, baht, and the block of currency signs from U+20A0 to U+20CF.
  const bool block = sign.size() == 3 && sign.starts_with("\xE2\x82") && static_cast<unsigned char>(sign[2]) >= 0xA0;
  return letters <= 3 && (block || sign == "$" || sign == "£" || sign == "¥" || sign == "฿");
}

std::variant<Price, Refused> read_price(std::string_view text) {
  const std::string all = trimmed(with_plain_blanks(text));
  const std::size_t first = static_cast<std::size_t>(std::find_if(all.begin(), all.end(), digit) - all.begin());
  const std::string before = trimmed(std::string_view(all).substr(0, first));
  const std::string_view rest = std::string_view(all).substr(first);
  const std::size_t size = length_of_figure(rest);
  const std::string behind = trimmed(rest.substr(size));
  const Refused no_price{'`' + all + "` is no price", "write one as 79.90 EUR, or leave the field empty"};
  const std::string currency = before + behind;
  const bool odd = !currency.empty() && !is_currency(currency);
  if (size == 0 || (!before.empty() && !behind.empty()) || odd) return no_price;
  const Read read = number_of(std::string(rest.substr(0, size)), false);
  if (!read.value) return read.refused;
  return Price{*read.value, currency};
}

}  // namespace baywright::value
