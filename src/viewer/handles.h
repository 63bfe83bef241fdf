#pragma once
// What of a build can be changed by dragging or typing a figure, and the edit that each makes.
#include "build/edit.h"
#include "viewer/answers.h"

#include <string>
#include <string_view>
#include <vector>

namespace baywright::viewer {

/// One length of the build file that bears on the chosen seating.
struct Handle {
  std::string label;     // as the dimension is called: "tray under board"; "rear slot at, x"
  build::Path path;      // of the figure itself: for { length = ..., source = ... } that of `length`
  double nominal = 0.0;  // mm
  double minus = 0.0;    // mm, as the file says them or as `measured_with` gives them; infinite where open
  double plus = 0.0;
  bool bare = false;            // a figure without quotes, and stays one
  bool limits_written = false;  // the file states limits: they are kept while the nominal changes
  double least = 0.0;           // mm: sensible range of the nominal
  double most = 0.0;
  double step = 0.1;                  // mm
  std::vector<std::size_t> findings;  // of the seating: those whose chain it is in. Empty: it moves parts, not a chain
  std::string band;                   // its name in a finding's chain and in the stack column; empty: in none
};

/// Handles of the chosen seating: lengths of the parts that a finding names and of the part that carries the place, of
/// the place, and of the drive with what it wears. Those of the deciding gap first, by their share of its variation,
/// then the rest as the file lists them. `text` is what the build was read from. Lengths that stand in part files or in
/// standards are no handles.
[[nodiscard]] std::vector<Handle> handles(std::string_view text, const Shown& shown);

/// The edit that gives it this nominal, with its limits as they are, rounded to a thousandth and kept in its range.
[[nodiscard]] build::Edit drag(const Handle& handle, double value);
/// "tray under board 9.1 to 9.6": the step's name.
[[nodiscard]] std::string drag_label(const Handle& handle, double value);

}  // namespace baywright::viewer
