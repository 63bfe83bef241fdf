#pragma once
// Files that are whole or not there.
#include <optional>
#include <string>

namespace baywright::output {

/// Writes to a temporary name beside the target, then renames, so that nothing is ever left half written. Returns what
/// went wrong, with the name of the file; none: it is written.
[[nodiscard]] std::optional<std::string> write_file(const std::string& path, const std::string& content);

}  // namespace baywright::output
