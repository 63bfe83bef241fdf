#pragma once
// Reading TOML with every key accounted for. Inside the rooms that read files a fault travels as the exception `Stop`;
// the functions that those rooms offer catch it and return the fault.
#include "parts/fault.h"
#include "parts/given_length.h"
#include "parts/naming.h"
#include "parts/part.h"
#include "tolerance/dimension.h"

#include <filesystem>
#include <initializer_list>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <toml++/toml.h>
#include <vector>

namespace baywright::parts {

struct Stop {
  Fault fault;
};

/// The one length that a file may leave open, "?".
struct Question {
  double answer = 0.0;  // mm: what it is taken as
  std::string name;     // of the length; empty: none was met so far
  std::string owner{};  // " of `card` in line 12": whose it is, where its name does not say so, and where
};

/// What a bare length means where no limits are written: those of the tool it was measured with.
struct Measuring {
  double limit = 0.0;            // ± mm; 0: taken as exact
  std::string source;            // "caliper"; empty: none named
  Question* question = nullptr;  // what a "?" is; null: none may stand here
};

/// The whole file as text. Faults: missing, a folder, not readable, larger than 4 MB, empty, not text (a NUL byte).
[[nodiscard]] std::string read_text_file(const std::filesystem::path& path);

/// Parses TOML; throws Stop.
[[nodiscard]] toml::table parse_document(std::string_view text, const std::string& file);

/// A table being read: each accessor marks its key as known, and `finish` refuses what is left, naming the nearest
/// known key. A reader whose keys depend on each other says first what it `knows`, so that no message calls a good key
/// unknown. All accessors throw Stop with the place of the value that is wrong.
class Fields {
 public:
  Fields(const toml::table& table, std::string file, std::string what_it_is);

  void knows(std::initializer_list<std::string_view> keys);
  [[nodiscard]] bool has(std::string_view key);
  [[nodiscard]] bool is_table(std::string_view key);
  [[nodiscard]] bool is_text(std::string_view key);
  [[nodiscard]] std::string text(std::string_view key);  // required, one line that is not blank
  [[nodiscard]] std::optional<std::string> maybe_text(std::string_view key);
  [[nodiscard]] bool flag(std::string_view key, bool otherwise);
  [[nodiscard]] double number(std::string_view key);
  [[nodiscard]] std::optional<double> maybe_number(std::string_view key);
  [[nodiscard]] int count(std::string_view key, int least, int most);
  /// A length in mm: a number, text with limits, or a table { length, source, known, uniform }. `least`: smallest
  /// nominal allowed.
  [[nodiscard]] GivenLength length(std::string_view key, const std::string& name, const Measuring& measuring,
                                   double least);
  [[nodiscard]] std::optional<GivenLength> maybe_length(std::string_view key, const std::string& name,
                                                        const Measuring& measuring, double least);
  /// Exactly `size` lengths.
  [[nodiscard]] std::vector<GivenLength> lengths(std::string_view key, const std::vector<std::string>& names,
                                                 const Measuring& measuring, double least);
  [[nodiscard]] std::vector<double> numbers(std::string_view key, std::size_t size);
  [[nodiscard]] std::vector<double> numbers(std::string_view key);  // any number of them
  [[nodiscard]] std::vector<int> integers(std::string_view key);
  [[nodiscard]] std::vector<std::string> texts(std::string_view key);      // one text or a list of them
  [[nodiscard]] std::vector<geometry::Vec2> points(std::string_view key);  // an outline: three or more
  [[nodiscard]] std::vector<geometry::Vec2> pairs(std::string_view key);   // of figures, maybe none
  [[nodiscard]] std::vector<std::vector<geometry::Vec2>> point_lists(std::string_view key);
  [[nodiscard]] std::optional<Fields> maybe_table(std::string_view key, const std::string& what_it_is);
  [[nodiscard]] Fields table(std::string_view key, const std::string& what_it_is);
  [[nodiscard]] std::vector<Fields> tables(std::string_view key, const std::string& what_it_is);  // [[key]], maybe none

  /// Refuses keys that no accessor asked for.
  void finish() const;

  [[noreturn]] void stop(std::string_view key, const std::string& what, const std::string& right = {}) const;
  [[noreturn]] void stop_here(const std::string& what, const std::string& right = {}) const;
  [[nodiscard]] int line(std::string_view key) const;
  [[nodiscard]] int line() const { return line_; }
  [[nodiscard]] int column() const { return column_; }
  [[nodiscard]] const std::string& file() const { return file_; }

 private:
  const toml::node& need(std::string_view key);
  const toml::node* find(std::string_view key);
  [[noreturn]] void stop_at(const toml::node& node, const std::string& what, const std::string& right) const;
  [[nodiscard]] GivenLength length_of(const toml::node& node, const std::string& name, const Measuring& measuring,
                                      double least) const;
  /// What a "?" is taken as; stops where none may stand, and at a second one.
  [[nodiscard]] double answer_to(const toml::node& node, const std::string& name, Question* question) const;
  /// Whose length that is, " of `card`"; empty where its name says so, or the table has no name.
  [[nodiscard]] std::string owner(const std::string& name) const;
  [[nodiscard]] double finite(const toml::node& node, std::string_view key) const;
  [[nodiscard]] const toml::array& list(std::string_view key);
  /// The text of a node that is text; none otherwise. Stops at a blank one and at one with control characters.
  [[nodiscard]] std::optional<std::string> one_line(const toml::node& node, std::string_view key) const;

  const toml::table* table_;
  std::string file_;
  std::string what_;
  int line_ = 0;
  int column_ = 0;
  std::set<std::string, std::less<>> known_;
};

}  // namespace baywright::parts
