#pragma once
// Which sizes of a part a drawing shows: those over all, and the largest that one dimension decides.
#include "parts/part.h"

#include <cstddef>
#include <string>
#include <vector>

namespace baywright::output {

inline constexpr const char* over_all = "over all";

struct PartSize {
  std::string name;     // as its dimension is called; `over_all` where several make it
  std::string value;    // with its limits; those of several dimensions added up by worst case
  double low = 0.0;     // part coordinates along the axis, mm, nominal
  double high = 0.0;    // > low
  bool summed = false;  // several dimensions make it
};

/// Along an axis of the part (0 x, 1 y, 2 z): first over all, then down from the largest of those that a single
/// dimension decides, each dimension once; no more than `most`.
[[nodiscard]] std::vector<PartSize> sizes_along(const parts::Part& part, int axis, std::size_t most);

}  // namespace baywright::output
