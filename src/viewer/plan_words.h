#pragma once
// A plan in the few words that a tile holds.
#include "plans/plan.h"

#include <string>

namespace baywright::viewer {

struct TileWords {
  std::string change;  // "heatsink 2.00 mm high"
  std::string result;  // "1.60 clear, worst 1.02"
  std::string price;   // "runs warmer"
};
[[nodiscard]] TileWords words_of(const plans::Plan& plan);

}  // namespace baywright::viewer
