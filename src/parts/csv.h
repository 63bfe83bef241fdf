#pragma once
// Rows of a table in the form of RFC 4180: fields in quotes may hold separators, quotes (doubled) and line ends.
#include <istream>
#include <optional>
#include <string>
#include <vector>

namespace baywright::parts {

struct CsvRow {
  std::vector<std::string> fields;
  std::vector<int> columns;  // where each begins in its line, from 1, in characters
  int line = 0;              // where the row begins, from 1
  bool whole = true;         // false: a quote did not end, or something stood behind one
};

/// The next row; none at the end. Blank lines are passed over. `line` is that of the last line read and is kept up.
[[nodiscard]] std::optional<CsvRow> next_row(std::istream& in, char separator, int& line);

/// Comma, semicolon or tab: of which the first line has most outside quotes; a comma where it has none.
[[nodiscard]] char separator_of(const std::string& first_line);

}  // namespace baywright::parts
