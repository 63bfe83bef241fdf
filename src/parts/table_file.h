#pragma once
// A file that is a table of short texts: CSV, or TOML whose tables of one name are its rows.
#include "parts/fault.h"

#include <filesystem>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace baywright::parts {

struct Cell {
  std::string text;  // without blanks around it; empty: nothing is said
  int line = 0;      // from 1
  int column = 0;    // from 1, in characters
};

struct Heading {
  std::string name;  // in small letters, words apart by one blank: "random read" of "Random_Read (IOPS)"
  std::string unit;  // what stands in brackets behind it, as written: "IOPS"; empty: nothing
  int line = 0;
  int column = 0;
};

struct Table {
  std::string file;
  std::vector<Heading> headings;
  std::vector<std::vector<Cell>> rows;  // each as wide as the headings
};

/// `file` ends in .csv, where comma, semicolon or tab may part the fields, or in .toml, where each [[`rows`]] is a row
/// and its keys are the headings. One fault, the first: another ending, a file that cannot be read, is no UTF-8 or has
/// no row, a heading that is there twice or cannot be shown, a row of another width, a quote that does not end, a TOML
/// value that is a list or table.
[[nodiscard]] std::variant<Table, Fault> read_table_file(const std::filesystem::path& file, std::string_view rows);

}  // namespace baywright::parts
