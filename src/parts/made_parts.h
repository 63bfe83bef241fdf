#pragma once
// Parts made from the rows of the standards on demand: drives, cards, slots, adapters, screws, stand-offs, washers,
// nuts.
#include "parts/part.h"

#include <functional>
#include <string>
#include <vector>

namespace baywright::parts {

struct Made {
  std::string id;     // "2.5in/7", "screw/M3x6"
  std::string title;  // one line for people
  std::string group;  // the id that stands for the many of its kind, with capitals for what varies; empty: few of them
  std::function<Part()> make;
};

/// All of them, in no order. Made once.
[[nodiscard]] const std::vector<Made>& made_parts();

}  // namespace baywright::parts
