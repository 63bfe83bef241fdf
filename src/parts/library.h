#pragma once
// The library: parts by id. "board/mini-itx" from the standards rows; "fin-heatsink-3" from fin-heatsink-3.part.toml.
#include "parts/fault.h"
#include "parts/part.h"

#include <filesystem>
#include <string>
#include <variant>
#include <vector>

namespace baywright::parts {

/// Where part files are looked for: beside the build file, then $BAYWRIGHT_MODELS/parts, then the folder that this
/// program was built with.
[[nodiscard]] std::vector<std::filesystem::path> part_folders(const std::filesystem::path& build_file);

/// What the library has, by id, sorted.
struct Entry {
  std::string id;
  std::string title;
  std::filesystem::path file;  // empty: from the standards rows
};
[[nodiscard]] std::vector<Entry> entries(const std::vector<std::filesystem::path>& folders);

/// A part that is a whole (a board, a heatsink, a part file). Faults carry no place where the id itself is wrong (line
/// 0, empty file: the caller knows where it was written), and the place in the part file where that is wrong.
[[nodiscard]] std::variant<Part, Fault> find_part(const std::string& id,
                                                  const std::vector<std::filesystem::path>& folders);

[[nodiscard]] Part board_part(const std::string& standard_id);  // "mini-itx"; must exist

}  // namespace baywright::parts
