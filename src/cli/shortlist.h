#pragma once
// A shortlist with what the command line says of its buyer, for every command that has one.
#include "cli/arguments.h"
#include "plans/buying.h"

#include <optional>
#include <string>

namespace baywright::cli {

/// What is asked for besides the list. Prints what is wrong; none then.
[[nodiscard]] std::optional<plans::Wanted> wanted_of(const Arguments& arguments);

struct Ranked {
  value::Shortlist list;
  plans::Buying buying;
};
/// `build_file`: empty where there is no machine. Prints the fault; none then.
[[nodiscard]] std::optional<Ranked> rank_shortlist(const Arguments& arguments, const std::string& list_file,
                                                   const std::string& build_file);

/// Says on standard error which columns of the list were passed over, where any were.
void print_unused(const plans::Buying& rank);

}  // namespace baywright::cli
