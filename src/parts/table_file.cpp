#include "parts/table_file.h"

#include "parts/csv.h"
#include "parts/document.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <optional>
#include <sstream>

namespace baywright::parts {

namespace {

constexpr std::string_view blanks = " \t\n\r";

std::string trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(blanks);
  if (first == std::string_view::npos) return {};
  return std::string(text.substr(first, text.find_last_not_of(blanks) - first + 1));
}

Heading heading_of(std::string_view written, int line, int column) {
  Heading out{{}, {}, line, column};
  std::string text = trimmed(written);
  if (const std::size_t open = text.find_first_of("(["); open != std::string::npos && open > 0) {
    const std::size_t close = text.find_first_of(")]", open);
    out.unit = trimmed(std::string_view(text).substr(open + 1, close == std::string::npos ? close : close - open - 1));
    text.resize(open);
  }
  for (char c : trimmed(text)) {
    if (c == '_' || c == '-' || c == '\t' || c == '\n' || c == '\r') c = ' ';
    if (c == ' ' && (out.name.empty() || out.name.back() == ' ')) continue;
    out.name += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  }
  return out;
}

/// What would make a mess of a terminal, or a heading out of two.
bool has_controls(const std::string& text) {
  return std::any_of(text.begin(), text.end(),
                     [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7f; });
}

void refuse_odd_headings(const Table& table) {
  for (const Heading& one : table.headings)
    if (has_controls(one.name) || has_controls(one.unit))
      throw Stop{{table.file, one.line, one.column, "this heading has characters that cannot be shown",
                  "write plain text in one line"}};
  for (std::size_t i = 0; i < table.headings.size(); ++i)
    for (std::size_t j = 0; j < i; ++j)
      if (const Heading& one = table.headings[i]; !one.name.empty() && one.name == table.headings[j].name)
        throw Stop{
            {table.file, one.line, one.column, "the column `" + one.name + "` is there twice", "keep one of them"}};
}

/// Bytes of the character at the front of `text`; 0: it is no UTF-8.
std::size_t character_size(std::string_view text) {
  const auto byte = [&](std::size_t i) { return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U; };
  const unsigned first = byte(0);
  if (first < 0x80) return 1;
  const std::size_t size = first >= 0xC2 && first < 0xE0   ? 2
                           : first >= 0xE0 && first < 0xF0 ? 3
                           : first >= 0xF0 && first < 0xF5 ? 4
                                                           : 0;
  for (std::size_t i = 1; i < size; ++i)
    if (byte(i) < 0x80 || byte(i) > 0xBF) return 0;
  // Written longer than need be, halves of a pair, and what is beyond the last character.
  const unsigned second = byte(1);
  const bool odd = (first == 0xE0 && second < 0xA0) || (first == 0xED && second > 0x9F) ||
                   (first == 0xF0 && second < 0x90) || (first == 0xF4 && second > 0x8F);
  return odd ? 0 : size;
}

/// toml++ sees to it by itself; a spreadsheet may save a table in an older encoding.
void refuse_other_encodings(std::string_view text, const std::string& file) {
  int line = 1;
  int column = 1;
  while (!text.empty()) {
    const std::size_t size = character_size(text);
    if (size == 0)
      throw Stop{{file, line, column, "this character is not UTF-8",
                  "save the table as \"CSV UTF-8\": it is in an older encoding, such as Windows-1252"}};
    column = text.front() == '\n' ? 1 : column + 1;
    line += text.front() == '\n' ? 1 : 0;
    text.remove_prefix(size);
  }
}

Table from_csv(const std::filesystem::path& file) {
  std::string text = read_text_file(file);
  if (text.starts_with("\xEF\xBB\xBF")) text.erase(0, 3);  // a spreadsheet's mark of UTF-8
  Table out{file.string(), {}, {}};
  refuse_other_encodings(text, out.file);
  const char separator = separator_of(text.substr(0, text.find('\n')));
  std::istringstream in(text);
  int line = 0;
  while (const auto row = next_row(in, separator, line)) {
    if (!row->whole)
      throw Stop{{out.file, row->line, row->columns.back(), "a quote does not end here",
                  "double a quote that belongs to the text, and close each field"}};
    if (out.headings.empty()) {
      for (std::size_t i = 0; i < row->fields.size(); ++i)
        out.headings.push_back(heading_of(row->fields[i], row->line, row->columns[i]));
      continue;
    }
    if (row->fields.size() != out.headings.size())
      throw Stop{{out.file, row->line, 0,
                  "this row has " + std::to_string(row->fields.size()) + " fields, the heading " +
                      std::to_string(out.headings.size()),
                  "leave a field empty where nothing is known, and put quotes around one that holds the separator"}};
    std::vector<Cell> cells;
    for (std::size_t i = 0; i < row->fields.size(); ++i)
      cells.push_back({trimmed(row->fields[i]), row->line, row->columns[i]});
    out.rows.push_back(std::move(cells));
  }
  return out;
}

std::string text_of(const toml::node& node, const std::string& key, const std::string& file) {
  if (const auto* text = node.as_string()) return trimmed(text->get());
  if (const auto* flag = node.as_boolean()) return flag->get() ? "true" : "false";
  if (const auto* whole = node.as_integer()) return std::to_string(whole->get());
  if (const auto* figure = node.as_floating_point()) {
    std::array<char, 400> digits{};
    const auto [end, fault] =
        std::to_chars(digits.data(), digits.data() + digits.size(), figure->get(), std::chars_format::fixed);
    std::string out(digits.data(), end);
    // As text, 1.299 could be taken for thousands; in TOML it is a number.
    return out.find('.') == std::string::npos ? out : out + '0';
  }
  const auto& at = node.source().begin;
  throw Stop{{file, static_cast<int>(at.line), static_cast<int>(at.column),
              '`' + key + "` is neither a figure nor a text", "write it as one, as in a table"}};
}

Table from_toml(const std::filesystem::path& file, std::string_view rows) {
  Table out{file.string(), {}, {}};
  const toml::table document = parse_document(read_text_file(file), out.file);
  const toml::array* tables = document[rows].as_array();
  if (tables == nullptr) return out;
  for (const toml::node& node : *tables) {
    const toml::table* table = node.as_table();
    if (table == nullptr) continue;
    std::vector<Cell> cells(out.headings.size(), Cell{{}, static_cast<int>(node.source().begin.line), 1});
    for (const auto& [key, value] : *table) {
      const std::string written(key.str());
      const auto& at = value.source().begin;
      Heading heading =
          heading_of(written, static_cast<int>(key.source().begin.line), static_cast<int>(key.source().begin.column));
      auto known = std::find_if(out.headings.begin(), out.headings.end(),
                                [&](const Heading& each) { return each.name == heading.name; });
      if (known == out.headings.end()) {
        known = out.headings.insert(out.headings.end(), std::move(heading));
        cells.push_back({});
      }
      Cell& cell = cells[static_cast<std::size_t>(known - out.headings.begin())];
      cell = {text_of(value, written, out.file), static_cast<int>(at.line), static_cast<int>(at.column)};
    }
    out.rows.push_back(std::move(cells));
  }
  for (std::vector<Cell>& row : out.rows)
    row.resize(out.headings.size(), Cell{{}, row.empty() ? 0 : row.front().line, 1});
  return out;
}

}  // namespace

std::variant<Table, Fault> read_table_file(const std::filesystem::path& file, std::string_view rows) {
  const std::string name = file.string();
  const auto ends = [&](std::string_view with) { return name.ends_with(with); };
  try {
    const bool toml = ends(".toml");
    if (!toml && !ends(".csv") && !ends(".CSV"))
      return Fault{name, 0, 0, "this is neither a .csv nor a .toml file", "give one whose name ends in .csv or .toml"};
    Table out = toml ? from_toml(file, rows) : from_csv(file);
    if (out.rows.empty())
      return Fault{
          name, 0, 0, "this file has no rows",
          toml ? "add a [[" + std::string(rows) + "]]" : "the first line names the columns, the next are rows"};
    refuse_odd_headings(out);
    return out;
  } catch (const Stop& stop) {
    return stop.fault;
  }
}

}  // namespace baywright::parts
