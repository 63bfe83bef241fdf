#pragma once
// What several commands share: reading a build, choosing seatings, writing a file whole.
#include "cli/arguments.h"
#include "fit/check.h"

#include <optional>
#include <string>

namespace baywright::cli {

/// Reads the build and checks that the drive and place named exist. Prints the fault; none then.
[[nodiscard]] std::optional<build::Build> read_build(const Arguments& arguments);

[[nodiscard]] fit::Options options_of(const Arguments& arguments);

/// Writes to a temporary name beside the target, then renames, so that nothing is ever left half written; "-" is
/// standard output. Prints what went wrong and returns false.
[[nodiscard]] bool write_whole(const std::string& path, const std::string& content);

/// Prints to standard output; false when that fails (a closed pipe, a full disk).
[[nodiscard]] bool print(const std::string& text);

}  // namespace baywright::cli
