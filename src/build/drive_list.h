#pragma once
// A list of drives for a survey: a table (CSV) whose columns are keys of [[drive]], or a folder of TOML files with
// [[drive]] tables. Read a stretch at a time, however long it is.
#include "build/build.h"
#include "parts/table_file.h"

#include <cstddef>
#include <filesystem>
#include <fstream>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace baywright::build {

/// A drive as it is listed. Two with equal `keys` are the same drive under two names.
struct ListedDrive {
  std::string name;
  std::string keys;            // all but its name, as TOML
  std::string file;            // for messages
  int line = 0;                // where its entry begins
  std::vector<int> columns{};  // CSV: where in that line each line of `keys` comes from
};

class DriveList {
 public:
  /// A `.csv` file or a folder. Capitals in headings do not count, and columns that are nothing like a key of a drive
  /// (a price, a number) are passed over. Refused: neither of the two, a folder without a TOML file, a heading that is
  /// misspelt, twice there or missing.
  [[nodiscard]] static std::variant<DriveList, parts::Fault> open(const std::filesystem::path& path);

  /// The next drives, at most `most`; none at the end. A fault: a row of another width than the heading, a quote that
  /// does not end, a name that is empty.
  [[nodiscard]] std::variant<std::vector<ListedDrive>, parts::Fault> next(std::size_t most);

  /// Back to the first drive.
  void rewind();

  /// Columns that are passed over, as their headings call them.
  [[nodiscard]] const std::vector<std::string>& unused() const { return unused_; }

 private:
  std::string path_;
  std::vector<std::filesystem::path> files_;  // a folder's
  std::size_t file_ = 0;
  std::vector<ListedDrive> waiting_;  // of the file that is being handed out
  std::ifstream in_;                  // CSV
  std::vector<std::string> heading_;
  char separator_ = ',';
  int line_ = 0;
  std::streampos first_row_{};
  std::vector<std::string> unused_;
};

/// A row of any table, of which the headings that are keys of a drive count.
[[nodiscard]] ListedDrive listed_row(const parts::Table& table, std::size_t row);

/// The drive itself, called `name`, in a machine whose lengths were `measured_with` that ("caliper"; empty: not said).
[[nodiscard]] std::variant<Drive, parts::Fault> read_listed(const ListedDrive& listed, const std::string& name,
                                                            const std::string& measured_with);

}  // namespace baywright::build
