#include "parts/mesh_bytes.h"

#include <algorithm>
#include <charconv>
#include <cmath>

namespace baywright::parts {

namespace {

constexpr std::string_view blanks = " \t";
constexpr std::string_view line_ends = "\r\n";
constexpr std::string_view white = " \t\r\n";

/// Far beyond any part in any unit, and far below where arithmetic on it could overflow.
constexpr double largest_figure = 1e9;

}  // namespace

void MeshText::skip(std::string_view characters) {
  at_ = std::min(text_.find_first_not_of(characters, at_), text_.size());
}

std::string_view MeshText::take() {
  word_ = at_;
  at_ = std::min(text_.find_first_of(white, at_), text_.size());
  return text_.substr(word_, at_ - word_);
}

std::string_view MeshText::next() {
  skip(white);
  return take();
}

std::string_view MeshText::next_in_line() {
  skip(blanks);
  return take();
}

void MeshText::skip_line() {
  at_ = std::min(text_.find_first_of(line_ends, at_), text_.size());
}

void MeshText::stop(const std::string& what, const std::string& right) const {
  stop_at(word_, what, right);
}

void MeshText::stop_at(std::size_t place, const std::string& what, const std::string& right) const {
  int line = 1;
  int column = 1;
  for (std::size_t i = 0; i < place; ++i) {
    const char c = text_[i];
    if (c == '\n' || (c == '\r' && !(i + 1 < text_.size() && text_[i + 1] == '\n'))) {
      ++line;
      column = 1;
    } else if ((c & 0xC0) != 0x80) {  // a UTF-8 continuation byte is no place of its own
      ++column;
    }
  }
  throw Stop{{file_, line, column, what, right}};
}

std::string quoted_word(std::string_view word) {
  constexpr std::size_t most = 40;
  return '`' + std::string(word.substr(0, most)) + (word.size() > most ? "...`" : "`");
}

double MeshText::figure(std::string_view word) const {
  if (word.empty()) stop("a figure is missing", "a corner has three: x, y and z");
  if (word.find(',') != std::string_view::npos)
    stop(quoted_word(word) + " has a comma", "figures are written with a decimal point and stand apart by spaces");
  double value = 0.0;
  const char* from = word.data() + (word.front() == '+' && word.size() > 1 && word[1] != '-' ? 1 : 0);
  const auto [end, error] = std::from_chars(from, word.data() + word.size(), value);
  if (end != word.data() + word.size() || error == std::errc::invalid_argument)
    stop(quoted_word(word) + " is no figure", "a figure is written as 12.5 or 1.25e1");
  if (error != std::errc() || !(std::abs(value) <= largest_figure))  // NaN too
    stop(quoted_word(word) + " is no usable figure", "it must be finite and within -1e9 and 1e9");
  return value;
}

void stop_too_many(const std::string& file, const std::string& what) {
  throw Stop{{file, 0, 0, "the model has more than " + what, "bring it with fewer: flats need no fine triangles"}};
}

}  // namespace baywright::parts
