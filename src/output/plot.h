#pragma once
// Drives as points of two figures, each with its name beside it (SVG for a page). Marks differ in form, not by colour
// alone; the page's style sheet gives them colour.
#include "value/ranking.h"

#include <functional>
#include <string>
#include <vector>

namespace baywright::output {

struct PlotPoint {
  std::string name;   // beside the point; plain text
  std::string tag;    // below the name, smaller; empty: none
  std::string words;  // all that is known of it, for who points at it
  double x = 0.0;     // >= 0, finite
  double y = 0.0;
  value::Standing standing = value::Standing::not_known;
  bool taken = false;  // ringed, its name bold
};

struct Plot {
  std::string id;  // of the page; begins with a letter, without blanks
  std::string title;
  std::string description;
  std::string across;  // what x is
  std::string up;
  std::function<std::string(double)> across_words;  // of a figure at the axis
  std::function<std::string(double)> up_words;
  std::vector<PlotPoint> points;  // those that matter most first: they get their names first
};

struct DrawnPlot {
  std::string svg;
  bool all_named = true;  // false: some points have no name beside them, for lack of room
};

/// An <svg role="img"> of so many pixels, to be shown at up to that width. No name lies over another name or a point.
[[nodiscard]] DrawnPlot plot_svg(const Plot& plot, double width, double height);

/// The mark alone, for the key below: an <svg> hidden from who reads aloud.
[[nodiscard]] std::string plot_mark(value::Standing standing);

}  // namespace baywright::output
