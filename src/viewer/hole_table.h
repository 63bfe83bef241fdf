#pragma once
// The hole table of a plan, and what the findings say of the room round its screws, as words for a narrow column. No
// toolkit.
#include "fit/verdict.h"
#include "viewer/hole_plan.h"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace baywright::viewer {

struct HoleRow {
  std::size_t mark = 0;           // index in the plan's marks
  std::string number;             // "3"; empty of a place
  std::array<std::string, 2> at;  // mm from the part's left and lower edge: "64", "14.14"
  std::string size;               // "3.4", its thread where it is a clearance hole for one: "3.4 M3"
  std::string meets;              // "row 1"; "none"; empty: nothing is to be met
  bool meets_none = false;
  std::string edge;      // "14.14"; empty: not asked
  std::string short_of;  // what its edge or the sheet beside it is too little for, in words; empty: enough
};

/// One row a mark, in their order. The drive's hole behind one: of the seating that is shown where that is its place,
/// else as the template has it.
[[nodiscard]] std::vector<HoleRow> hole_rows(const HolePlan& plan, const Shown& shown);

struct HoleWord {
  fit::Verdict verdict = fit::Verdict::undecided;
  std::string say;
};
/// What was found of holes, screws, their heads, nuts and drivers at the place that is shown, worst first; with what
/// the template warns of, which begins with the hole: "Hole 3".
[[nodiscard]] std::vector<HoleWord> hole_words(const HolePlan& plan, const Shown& shown);

/// "1, 5, 3 at 3.4 mm, then 2 at 4": holes by number, the smallest drill first. Empty without a template.
[[nodiscard]] std::string order_words(const HolePlan& plan);

}  // namespace baywright::viewer
