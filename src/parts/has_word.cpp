#include "parts/has_word.h"

#include <algorithm>
#include <charconv>
#include <sstream>

namespace baywright::parts {

namespace {

bool digit(char c) {
  return c >= '0' && c <= '9';
}

bool letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

char lower(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

/// The end of the figure that begins at `at`: digits, and a point between digits.
std::size_t figure_end(std::string_view text, std::size_t at) {
  while (at < text.size() && digit(text[at])) ++at;
  if (at + 1 >= text.size() || text[at] != '.' || !digit(text[at + 1])) return at;
  ++at;
  while (at < text.size() && digit(text[at])) ++at;
  return at;
}

double value_of(std::string_view figure) {
  double value = 0.0;
  std::from_chars(figure.data(), figure.data() + figure.size(), value);
  return value;
}

bool starts_figure(std::string_view text, std::size_t at) {
  if (at == 0 || !digit(text[at])) return at < text.size() && digit(text[at]);
  return !digit(text[at - 1]) && !(text[at - 1] == '.' && at > 1 && digit(text[at - 2]));
}

/// Whether the word stands in the text from `at` on.
bool stands_at(std::string_view text, std::size_t at, std::string_view word) {
  std::size_t i = 0;
  while (i < word.size()) {
    if (!digit(word[i])) {
      // "7mm" is written "7 mm" too.
      if (i > 0 && digit(word[i - 1]) && letter(word[i]))
        while (at < text.size() && text[at] == ' ') ++at;
      if (at >= text.size() || lower(text[at]) != lower(word[i])) return false;
      ++at;
      ++i;
      continue;
    }
    if (at >= text.size() || !starts_figure(text, at)) return false;
    const std::size_t end = figure_end(text, at);
    const std::size_t word_end = figure_end(word, i);
    if (value_of(text.substr(at, end - at)) != value_of(word.substr(i, word_end - i))) return false;
    at = end;
    i = word_end;
  }
  return true;
}

}  // namespace

std::vector<std::string> search_words(std::span<const std::string> typed) {
  std::vector<std::string> words;
  for (const std::string& each : typed) {
    std::istringstream in(each);
    for (std::string word; in >> word;) {
      const bool unit = word.size() == 2 && stands_at(word, 0, "mm");
      if (unit && !words.empty() && digit(words.back().front()) && figure_end(words.back(), 0) == words.back().size())
        words.back() += word;
      else
        words.push_back(std::move(word));
    }
  }
  return words;
}

bool has_word(std::string_view text, std::string_view word) {
  // Letters with a figure behind them are a name of their own: "M3" is not the end of "mm3".
  const bool name = !word.empty() && letter(word.front()) && std::any_of(word.begin(), word.end(), digit);
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (name && at > 0 && letter(text[at - 1])) continue;
    if (stands_at(text, at, word)) return true;
  }
  return word.empty();
}

}  // namespace baywright::parts
