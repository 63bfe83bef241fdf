#pragma once
// A shortlist that is open beside the build. No toolkit.
#include "plans/buying.h"

#include <filesystem>
#include <variant>

namespace baywright::viewer {

struct Shortlist {
  std::filesystem::path file;
  value::Shortlist list;
  plans::Wanted wanted;
};

/// Faults: a file that cannot be read, or is no shortlist.
[[nodiscard]] std::variant<Shortlist, parts::Fault> open_shortlist(const std::filesystem::path& file,
                                                                   const plans::Wanted& wanted);

/// The same put in order by a column, with the drive that is then to be taken, as `rank --sort` has it; in order by
/// name, which is no ground for taking a drive, that stays as it was. `in_a_machine`: they were tried in one.
[[nodiscard]] plans::Buying in_order(plans::Buying buying, value::Column column, bool in_a_machine);

}  // namespace baywright::viewer
