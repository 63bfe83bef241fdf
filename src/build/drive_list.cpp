#include "build/drive_list.h"

#include "build/reader.h"
#include "parts/csv.h"
#include "parts/library.h"
#include "parts/naming.h"

#include <algorithm>
#include <cstdlib>
#include <sstream>

namespace baywright::build {

using parts::Fault;
using parts::Stop;

namespace {

/// Columns of a list: keys of [[drive]] whose values are one figure or one text, and what a card wears.
const std::vector<std::string> known_columns = {"name",    "use",     "bus",    "is",       "top",
                                                "bottom",  "height",  "length", "old",      "plug",
                                                "bracket", "adapter", "pad",    "compress", "heatsink"};

Fault fault(const std::string& file, int line, int column, std::string what, std::string right) {
  return {file, line, column, std::move(what), std::move(right)};
}

std::string trimmed(const std::string& text) {
  const std::size_t first = text.find_first_not_of(" \t");
  return first == std::string::npos ? "" : text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

std::string lower(std::string text) {
  for (char& c : text)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return text;
}

/// A TOML string; the reader of [[drive]] refuses control characters in it.
std::string quoted(const std::string& text) {
  std::string out = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\') {
      out += '\\';
      out += c;
    } else if (c == '\n' || c == '\r' || c == '\t') {
      out += c == '\t' ? "\\t" : "\\n";
    } else {
      out += c;
    }
  }
  return out + '"';
}

bool is_figure(const std::string& text) {
  if (text.empty() || text.find_first_not_of("0123456789.") != std::string::npos) return false;
  return std::count(text.begin(), text.end(), '.') <= 1 && text.front() != '.' && text.back() != '.' &&
         (text.front() != '0' || text.size() == 1 || text[1] == '.');
}

std::string value_of(const std::string& text) {
  return text == "true" || text == "false" || is_figure(text) ? text : quoted(text);
}

/// A row as the keys of a [[drive]], one a line.
ListedDrive listed(const parts::CsvRow& row, const std::vector<std::string>& heading, const std::string& file) {
  ListedDrive out;
  out.file = file;
  out.line = row.line;
  std::string worn;
  int worn_column = 0;
  const auto add = [&](const std::string& key, const std::string& value, int column) {
    out.keys += key + " = " + value + '\n';
    out.columns.push_back(column);
  };
  std::string pad;
  std::string compress;
  std::string over;
  for (std::size_t i = 0; i < heading.size(); ++i) {
    const std::string value = trimmed(row.fields[i]);
    if (value.empty() || heading[i].empty()) continue;
    const std::string& key = heading[i];
    if (key == "name") {
      out.name = value;
    } else if (key == "pad" || key == "compress" || key == "heatsink" || key == "adapter") {
      (key == "pad" ? pad : key == "compress" ? compress : over) = key + " = " + value_of(value);
      worn_column = row.columns[i];
    } else {
      add(key, value_of(value), row.columns[i]);
    }
  }
  if (!pad.empty()) worn = "{ " + pad + (compress.empty() ? "" : ", " + compress) + " }";
  if (pad.empty() && !compress.empty()) worn = "{ " + compress + " }";  // the reader says what is missing
  if (!over.empty()) worn += (worn.empty() ? "" : ", ") + std::string("{ ") + over + " }";
  if (!worn.empty()) add("wears", "[ " + worn + " ]", worn_column);
  return out;
}

/// The [[drive]] tables of a file, each as its keys.
std::vector<ListedDrive> listed_in(const std::filesystem::path& file) {
  const std::string text = parts::read_text_file(file);
  const toml::table document = parts::parse_document(text, file.string());
  std::vector<ListedDrive> out;
  const toml::array* tables = document["drive"].as_array();
  if (tables == nullptr) return out;
  for (const toml::node& node : *tables) {
    const toml::table* table = node.as_table();
    if (table == nullptr) continue;
    ListedDrive drive;
    drive.file = file.string();
    drive.line = static_cast<int>(node.source().begin.line);
    toml::table keys = *table;
    if (const auto name = keys["name"].value<std::string>()) drive.name = *name;
    keys.erase("name");
    std::ostringstream written;
    written << toml::toml_formatter(keys, toml::format_flags::none);
    drive.keys = written.str() + '\n';
    out.push_back(std::move(drive));
  }
  return out;
}

std::optional<Fault> heading_fault(const parts::CsvRow& row, const std::vector<std::string>& heading,
                                   const std::string& file) {
  for (std::size_t i = 0; i < heading.size(); ++i) {
    const std::string& key = heading[i];
    if (std::find(known_columns.begin(), known_columns.end(), key) == known_columns.end()) {
      const std::string meant = parts::nearest(key, known_columns);
      if (!meant.empty())
        return fault(file, row.line, row.columns[i], "there is no column `" + key + '`',
                     "did you mean `" + meant + "`?");
      continue;
    }
    if (std::find(heading.begin(), heading.begin() + static_cast<std::ptrdiff_t>(i), key) !=
        heading.begin() + static_cast<std::ptrdiff_t>(i))
      return fault(file, row.line, row.columns[i], "the column `" + key + "` is there twice", "keep one of them");
  }
  for (const char* needed : {"name", "use", "bus"})
    if (std::find(heading.begin(), heading.end(), needed) == heading.end())
      return fault(file, row.line, 0, std::string("the heading has no `") + needed + '`',
                   "the first line names the columns: name,use,bus and what else you know");
  return std::nullopt;
}

}  // namespace

std::variant<DriveList, Fault> DriveList::open(const std::filesystem::path& path) {
  DriveList list;
  list.path_ = path.string();
  std::error_code error;
  if (std::filesystem::is_directory(path, error)) {
    for (const auto& entry : std::filesystem::directory_iterator(path, error))
      if (entry.path().extension() == ".toml") list.files_.push_back(entry.path());
    std::sort(list.files_.begin(), list.files_.end());
    if (list.files_.empty())
      return fault(list.path_, 0, 0, "this folder has no .toml file",
                   "name a folder of files with [[drive]] tables, or a .csv file");
    return list;
  }
  if (path.extension() != ".csv" && path.extension() != ".CSV")
    return fault(list.path_, 0, 0, "this is neither a .csv file nor a folder",
                 "name a .csv file with the columns name,use,bus, or a folder of .toml files");
  list.in_.open(path, std::ios::binary);
  if (!list.in_) return fault(list.path_, 0, 0, "this file cannot be read", "check its name");
  std::string first;
  std::getline(list.in_, first);
  list.separator_ = parts::separator_of(first);
  list.in_.clear();
  list.in_.seekg(first.starts_with("\xEF\xBB\xBF") ? 3 : 0);  // a spreadsheet's mark of UTF-8
  const auto row = parts::next_row(list.in_, list.separator_, list.line_);
  if (!row)
    return fault(list.path_, 0, 0, "this file is empty",
                 "the first line names the columns: name,use,bus and what else you know");
  for (const std::string& field : row->fields) list.heading_.push_back(lower(trimmed(field)));
  if (auto wrong = heading_fault(*row, list.heading_, list.path_)) return *std::move(wrong);
  for (std::string& heading : list.heading_) {
    if (std::find(known_columns.begin(), known_columns.end(), heading) != known_columns.end()) continue;
    list.unused_.push_back(std::move(heading));
    heading.clear();
  }
  list.first_row_ = list.in_.tellg();
  return list;
}

void DriveList::rewind() {
  file_ = 0;
  waiting_.clear();
  line_ = 1;
  in_.clear();
  if (first_row_ != std::streampos(-1)) in_.seekg(first_row_);
}

std::variant<std::vector<ListedDrive>, Fault> DriveList::next(std::size_t most) {
  std::vector<ListedDrive> out;
  if (!files_.empty()) {
    try {
      while (out.size() < most && (file_ < files_.size() || !waiting_.empty())) {
        if (waiting_.empty()) {
          waiting_ = listed_in(files_[file_++]);
          std::reverse(waiting_.begin(), waiting_.end());
          continue;
        }
        out.push_back(std::move(waiting_.back()));
        waiting_.pop_back();
      }
    } catch (const Stop& stop) {
      return stop.fault;
    }
  } else {
    while (out.size() < most) {
      const auto row = parts::next_row(in_, separator_, line_);
      if (!row) break;
      if (!row->whole)
        return fault(path_, row->line, row->columns.back(), "a quote does not end here",
                     "double a quote that belongs to the text, and close each field");
      if (row->fields.size() != heading_.size())
        return fault(path_, row->line, 0,
                     "this row has " + std::to_string(row->fields.size()) + " fields, the heading " +
                         std::to_string(heading_.size()),
                     "leave a field empty where nothing is known");
      out.push_back(listed(*row, heading_, path_));
    }
  }
  for (const ListedDrive& drive : out)
    if (drive.name.empty()) return fault(drive.file, drive.line, 0, "this drive has no name", "give it one");
  return out;
}

ListedDrive listed_row(const parts::Table& table, std::size_t row) {
  const std::vector<parts::Cell>& from = table.rows[row];
  parts::CsvRow cells;
  for (const parts::Cell& cell : from)
    if (!cell.text.empty()) cells.line = cells.line == 0 ? cell.line : std::min(cells.line, cell.line);
  std::vector<std::string> headings;
  for (std::size_t i = 0; i < from.size(); ++i) {
    const std::string& heading = table.headings[i].name;
    if (from[i].text.empty()) continue;
    if (std::find(known_columns.begin(), known_columns.end(), heading) == known_columns.end()) continue;
    headings.push_back(heading);
    cells.fields.push_back(from[i].text);
    cells.columns.push_back(from[i].line == cells.line ? from[i].column : 0);  // of a table on many lines only the first
  }
  return listed(cells, headings, table.file);
}

std::variant<Drive, Fault> read_listed(const ListedDrive& listed, const std::string& name,
                                       const std::string& measured_with) {
  try {
    std::string text = "[[drive]]\n" + listed.keys + "name = " + quoted(name) + '\n';
    if (!measured_with.empty()) text = "measured_with = " + quoted(measured_with) + '\n' + text;
    const toml::table document = parts::parse_document(text, listed.file);
    parts::Fields fields(document, listed.file, "a list of drives");
    Reader reader;
    reader.folders = parts::part_folders(listed.file);
    reader.measuring = measuring_of(fields);
    auto tables = fields.tables("drive", "a drive");
    return drive_of(reader, tables.front(), false);
  } catch (const Stop& stop) {
    // The text that was read is ours: say where in the list it comes from.
    Fault there = stop.fault;
    if (there.file != listed.file) return there;
    const int before = measured_with.empty() ? 2 : 3;  // lines of ours
    const std::size_t key = there.line < before ? listed.columns.size() : static_cast<std::size_t>(there.line - before);
    there.column = key < listed.columns.size() ? listed.columns[key] : 0;
    there.line = listed.line;
    return there;
  }
}

}  // namespace baywright::build
