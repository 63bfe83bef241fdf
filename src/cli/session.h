#pragma once
// What several commands share: reading a build, choosing seatings, writing a file whole.
#include "cli/arguments.h"
#include "fit/check.h"
#include "fit/seated.h"

#include <memory>
#include <optional>
#include <string>

namespace baywright::cli {

/// Reads the build and checks that the drive and place named exist. Prints the fault; none then.
[[nodiscard]] std::optional<build::Build> read_build(const Arguments& arguments);

[[nodiscard]] fit::Options options_of(const Arguments& arguments);

/// One seating made ready to be shown: the one that most needs looking at where several are asked about.
struct Shown {
  build::Build build;  // with the options' method and clearance, and its "?" solved
  fit::Check check;
  fit::Seating seating;
  fit::Host host;
  fit::Seated seated;  // stands on `host`; without elements of its own where the drive cannot be put there
};
/// Prints the fault; null then.
[[nodiscard]] std::unique_ptr<Shown> show_worst(const Arguments& arguments);

/// For the line that says what is shown: where else the drive fits, of what was asked about, and how to name it:
/// "; it fits in upper cage: --place \"upper cage\"". Empty: nowhere, or it fits as it is shown.
[[nodiscard]] std::string fits_elsewhere(const Shown& shown);

/// Writes to a temporary name beside the target, then renames, so that nothing is ever left half written; "-" is
/// standard output. Prints what went wrong and returns false.
[[nodiscard]] bool write_whole(const std::string& path, const std::string& content);

/// Says what is wrong with what was asked for; the exit status for it.
[[nodiscard]] int at_fault(const std::string& what);

/// Prints to standard output; false when that fails (a closed pipe, a full disk).
[[nodiscard]] bool print(const std::string& text);

}  // namespace baywright::cli
