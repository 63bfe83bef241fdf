#pragma once
// Where each key and value of a TOML text stands, in bytes: what an edit needs, and what a parser does not tell.
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace baywright::build {

struct Span {
  std::size_t begin = 0;
  std::size_t end = 0;  // behind the last byte
};

/// One value, or a table that headings or dotted keys make.
struct Node {
  enum class Kind {
    scalar,
    list,          // [ ... ]
    inline_table,  // { ... }
    table,         // under a heading, by dotted keys, or the document itself
    table_list,    // its children are the tables of [[key]]
  };
  Kind kind = Kind::scalar;
  std::string key{};       // decoded; empty: an entry of a list
  std::string text{};      // of a scalar that is text: decoded
  Span value{};            // scalar, list, inline table: with its quotes or brackets; else its heading
  Span entry{};            // `key = value`, a dotted key from its first part; empty: an entry of a list, or a table
  std::size_t equals = 0;  // of the entry: where its = stands
  std::optional<std::size_t> comma{};  // an entry of a list: the comma behind it
  std::optional<Span> section{};  // a table with a heading, or the document: from the heading to its last entry's line
  Span last{};                    // a table: its last entry in the text, dotted ones too; empty: it has none
  std::size_t last_equals = 0;
  std::string prefix{};  // a table by dotted keys: "under.", as written
  bool in_line = false;  // the same: the entries are in an inline table
  std::vector<Node> children{};
};

/// Of a text that a parser has accepted. None where it is not understood all the same.
[[nodiscard]] std::optional<Node> spans(std::string_view text);

/// The end of the line that `at` is in: its line break, or the end of the text.
[[nodiscard]] std::size_t line_end(std::string_view text, std::size_t at);
[[nodiscard]] std::size_t line_begin(std::string_view text, std::size_t at);

}  // namespace baywright::build
