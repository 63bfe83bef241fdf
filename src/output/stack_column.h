#pragma once
// The chain behind a gap as two bars on one base: dimensions that open the gap in one, those that close it in the
// other. What one bar lacks of the other is the gap; what it has too much is the overlap.
#include "fit/finding.h"
#include "fit/seated.h"
#include "output/sheet.h"

#include <optional>
#include <string>
#include <vector>

namespace baywright::output {

struct Band {
  std::string name;     // "chips", as the dimension is called
  std::string value;    // "1.40 ±0.10", with what it counts where that is not its whole length
  double length = 0.0;  // mm of the gap, > 0: sensitivity times nominal
  double minus = 0.0;   // mm of the gap, >= 0; infinite where a limit is not known
  double plus = 0.0;
};

struct StackColumn {
  std::string refused;      // why the chain cannot be drawn as a stack; empty: it can, and the rest is filled in
  std::vector<Band> open;   // from the base outward: they make the gap larger
  std::vector<Band> close;  // they make it smaller
  fit::GapFigures gap;
  fit::Verdict verdict = fit::Verdict::undecided;
  geometry::Vec3 away{0.0};        // unit, world: from the base to the open end
  std::vector<std::string> aside;  // dimensions of the chain that are no band, with their limits: plays, small shares;
                                   // all of them where it is refused
  fit::Code about = fit::Code::gap;  // a screw's length is no clearance, and is called otherwise
};

/// The bands sum to the nominal gap: open less close. Dimensions stand in the order in which the machine is built up,
/// the host's first. What of the nominal gap no dimension accounts for is a band of its own.
[[nodiscard]] StackColumn stack_column(const fit::Finding& finding, const fit::Seated& seated);

/// The largest usual scale at which the column's bars are no longer than `room` mm on paper.
[[nodiscard]] double column_scale(const StackColumn& column, double room);

/// Draws it into `box`, with its scale in its heading. `down`: the open end is below. `direction` says in words where
/// the column points. Bands carry no colour, so that the gap is what the eye meets.
void draw(const StackColumn& column, const Box& box, bool down, const std::string& direction, Group& group);

/// "0.30 over" and "0.40 clear"; "not known" where a limit is open. To a hundredth, unless that would hide on which
/// side of what is asked (or of touching) the gap lies.
[[nodiscard]] std::string over_or_clear(double gap, double asked);

/// The same of what a finding is about: a screw is "1.55 too long", "0.50 too short" or has "0.70 to spare".
[[nodiscard]] std::string over_or_clear(double gap, double asked, fit::Code about);

/// "8:1", "1:2".
[[nodiscard]] std::string scale_in_words(double scale);

}  // namespace baywright::output
