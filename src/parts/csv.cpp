#include "parts/csv.h"

#include <algorithm>
#include <array>

namespace baywright::parts {

namespace {

/// Bytes that begin a character in UTF-8.
bool begins_character(char c) {
  return (c & 0xC0) != 0x80;
}

void drop_line_end(std::string& text) {
  if (!text.empty() && text.back() == '\r') text.pop_back();
}

}  // namespace

std::optional<CsvRow> next_row(std::istream& in, char separator, int& line) {
  std::string text;
  do {
    if (!std::getline(in, text)) return std::nullopt;
    ++line;
    drop_line_end(text);
  } while (text.find_first_not_of(" \t") == std::string::npos);
  CsvRow row;
  row.line = line;
  int column = 1;
  std::size_t at = 0;
  while (true) {
    std::string field;
    row.columns.push_back(column);
    if (at < text.size() && text[at] == '"') {
      ++at;
      ++column;
      while (true) {
        if (at >= text.size()) {
          std::string more;
          if (!std::getline(in, more)) {
            row.whole = false;
            break;
          }
          ++line;
          drop_line_end(more);
          field += '\n';
          text = std::move(more);
          at = 0;
          column = 1;
          continue;
        }
        const char c = text[at++];
        column += begins_character(c) ? 1 : 0;
        if (c != '"') {
          field += c;
        } else if (at < text.size() && text[at] == '"') {
          field += '"';
          ++at;
          ++column;
        } else {
          break;
        }
      }
      if (at < text.size() && text[at] != separator) row.whole = false;
    }
    while (at < text.size() && text[at] != separator) {
      column += begins_character(text[at]) ? 1 : 0;
      field += text[at++];
    }
    row.fields.push_back(std::move(field));
    if (at >= text.size()) return row;
    ++at;
    ++column;
  }
}

char separator_of(const std::string& first_line) {
  constexpr std::array<char, 3> known = {',', ';', '\t'};
  std::array<int, 3> counts{};
  bool quoted = false;
  for (const char c : first_line) {
    if (c == '"') quoted = !quoted;
    for (std::size_t i = 0; i < known.size(); ++i) counts[i] += !quoted && c == known[i] ? 1 : 0;
  }
  return known[static_cast<std::size_t>(std::max_element(counts.begin(), counts.end()) - counts.begin())];
}

}  // namespace baywright::parts
