#pragma once
// Every published dimension that the product holds, family by family, for the list of sources.
#include "tolerance/dimension.h"

#include <string_view>
#include <vector>

namespace baywright::standards {

struct Rows {
  std::string_view family;  // "M.2 cards and sockets"
  std::vector<tolerance::Dimension> rows;
};
[[nodiscard]] std::vector<Rows> all_rows();

}  // namespace baywright::standards
