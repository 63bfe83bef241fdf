#pragma once
// Dimension lines after ISO 129-1: thin, ended by filled arrows, their figures above the line and readable from below
// or from the right.
#include "output/sheet.h"

#include <string>
#include <vector>

namespace baywright::output {

/// A filled arrow head with its tip at `tip`, pointing along the unit vector `along`.
void draw_arrow(Group& group, const Vec2& tip, const Vec2& along, const std::string& colour);

/// A level or upright dimension line from `a` to `b` with its figures. Short ones have their arrows outside and their
/// figures beyond `b`. Without figures the line alone.
void draw_dimension(Group& group, const Vec2& a, const Vec2& b, const std::string& figures);

/// A height beside a view: between two levels of it, with what it is called.
struct Height {
  std::string name;
  std::string value;
  double low = 0.0;        // paper y of the lower level
  double high = 0.0;       // of the upper one; less than `low`
  double from = 0.0;       // paper x where the lower level's extension line starts, ...
  double from_high = 0.0;  // ... and the upper level's
};

/// Draws heights to the right of x = `left`: the lines in as few lanes as keep them apart, their names and figures in a
/// column from y = `top` to `bottom`, no wider than to x = `right`. Returns the y below the last label.
double draw_heights(Group& group, std::vector<Height> heights, double left, double right, double top, double bottom);

/// How much room from top to bottom their labels need, mm.
[[nodiscard]] double heights_room(const std::vector<Height>& heights, double left, double right);

}  // namespace baywright::output
