#pragma once
// A shortlist put in order, side by side with what each drive does in the machine.
#include "plans/buying.h"

#include <optional>
#include <string>
#include <vector>

namespace baywright::output {

/// The first line says which drive, and why.
[[nodiscard]] std::string rank_text(const plans::Buying& rank);

/// Which drive, and why, as its first line has it; then, where there are such, who was passed over, and whether the
/// fastest is wasted there. Each a sentence or two.
[[nodiscard]] std::vector<std::string> rank_answer(const plans::Buying& rank);

/// What the table of figures has side by side: its heading, and what a list is put in order by under it; none: nothing.
struct RankColumn {
  std::string heading;
  std::optional<value::Column> sorts;
};
[[nodiscard]] std::vector<RankColumn> rank_columns(const plans::Buying& rank);
/// The figures of an offer, one a column.
[[nodiscard]] std::vector<std::string> rank_cells(const plans::Buying& rank, std::size_t i);
/// How the offer does in the machine, what would make it fit, and what is to be said of it: a sentence or two each.
[[nodiscard]] std::vector<std::string> rank_details(const plans::Buying& rank, std::size_t i);

/// One sentence about columns that say nothing here; empty where there are none.
[[nodiscard]] std::string unused_columns(const plans::Buying& rank);

}  // namespace baywright::output
