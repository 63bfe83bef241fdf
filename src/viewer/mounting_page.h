#pragma once
// The mounting order of a seating with what it takes, as `baywright steps` has both. No toolkit.
#include "plans/mounting.h"
#include "plans/shopping.h"
#include "viewer/answers.h"

#include <string>
#include <vector>

namespace baywright::viewer {

struct MountingPage {
  plans::Mounting mounting;
  std::vector<plans::Item> items;
  std::vector<std::string> heading;   // sentences, the first the answer; where nothing can be mounted, what would help
  std::vector<std::string> shopping;  // sentences above the items; empty without any
  std::string text;                   // all of it, to be copied
};

/// `tried`: the seating is that of a plan that is shown, not made. `search` and `grid`: of the build, null until they
/// are ready; from them is said what would help.
[[nodiscard]] MountingPage mounting_page(const Shown& shown, const plans::Plan* tried, const plans::Search* search,
                                         const std::vector<Cell>* grid);

}  // namespace baywright::viewer
