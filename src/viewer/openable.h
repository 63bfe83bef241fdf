#pragma once
// Build files and shortlists that can be opened: recent ones, and those of a folder. No toolkit.
#include <filesystem>
#include <string>
#include <vector>

namespace baywright::viewer {

/// The .toml files of the folder but those of parts, and the .csv files, by name, and its folders (with a / at the end)
/// behind the way up (".."). At most 200. A folder that cannot be read has none.
[[nodiscard]] std::vector<std::string> openable_in(const std::filesystem::path& folder);

/// The recent files that are still there.
[[nodiscard]] std::vector<std::string> still_there(const std::vector<std::string>& files);

}  // namespace baywright::viewer
