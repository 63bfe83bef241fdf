#pragma once
// A length as a file gives it.
#include "tolerance/dimension.h"

#include <string_view>

namespace baywright::parts {

/// The source of a length that states no limits where no tool is named, or the end of its source.
inline constexpr std::string_view taken_as_exact = "taken as exact";
[[nodiscard]] inline bool is_taken_as_exact(const tolerance::Dimension& dimension) {
  return dimension.source.ends_with(taken_as_exact);
}

/// A length as a file gives it.
struct GivenLength {
  tolerance::Dimension dimension;
  int line = 0;
  int column = 0;
};

}  // namespace baywright::parts
