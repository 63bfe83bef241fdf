#pragma once
// A sheet of paper as a list of things drawn on it, whatever format it is written in. All in mm on paper, x to the
// right and y down from the upper left corner; what comes later lies on top.
#include "geometry/solid.h"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace baywright::output {

using geometry::Outline;
using geometry::Vec2;

struct Box {
  Vec2 low{0.0};   // upper left
  Vec2 high{0.0};  // lower right

  [[nodiscard]] double width() const { return high.x - low.x; }
  [[nodiscard]] double height() const { return high.y - low.y; }
};

// Line widths after ISO 128: one group of a thick and a thin line at a ratio of two.
inline constexpr double thick_line = 0.35;
inline constexpr double thin_line = 0.18;
inline constexpr const char* ink = "#15181C";
inline constexpr const char* grey = "#7F8388";  // hatches, break lines
inline constexpr const char* paper = "#FFFFFF";

struct Pen {
  double width = thin_line;
  std::string colour = ink;
  bool dashed = false;  // hidden edges and limits
};

/// Lengths in the units of the pen. Dashes of ISO 128, twelve line widths long, with spaces of five; shorter on the
/// undecided mark, whose lines are broad.
struct Dash {
  double length = 0.0;
  double space = 0.0;
};
[[nodiscard]] Dash dash_of(const Pen& pen);

struct Line {
  std::vector<Vec2> points;
  bool closed = false;
  Pen pen;
};

/// What tells an area apart without colour. `hatch` is for cut parts, `dots` and `grid` for verdicts.
enum class Pattern { none, hatch, dots, grid };

struct Area {
  std::vector<Outline> outlines;  // holes among them: a point inside an even number of outlines is outside
  std::string colour;             // of the fill; empty: none
  Pattern pattern = Pattern::none;
  double degrees = 45.0;  // hatch only: from the x axis
  double pitch = 1.2;     // mm between the pattern's lines or dots
  Pen pen;                // the pattern's
};

struct Disc {
  Vec2 centre{0.0};
  double radius = 0.0;
  std::string colour;      // of the fill; empty: none
  std::optional<Pen> pen;  // of the rim
};

enum class Anchor { start, middle, end };

struct Text {
  Vec2 at{0.0};  // on the base line, where the anchor says
  std::string text;
  double size = 2.5;  // mm an em
  Anchor anchor = Anchor::start;
  bool bold = false;
  bool upward = false;  // reads from below, to be seen from the right edge of the sheet
  bool haloed = false;  // a rim of paper round it, for text over lines
  std::string colour = ink;
};

struct Item;

struct Group {
  std::string name;         // what it shows: "section", "stack"
  std::optional<Box> clip;  // nothing of it is drawn outside
  std::vector<Item> items;

  void add(Line line);
  void add(Area area);
  void add(Disc disc);
  void add(Text text);
  void add(Group group);
};

struct Item {
  std::variant<Line, Area, Disc, Text, Group> drawn;
};

struct Sheet {
  double width = 297.0;  // A4, landscape
  double height = 210.0;
  std::string title;        // for screen readers: the answer
  std::string description;  // and what the sheet shows
  Group all;
};

/// The width of the stroke of paper round text that has a halo.
[[nodiscard]] double halo_of(const Text& text);

/// The room that the text takes: its width by `text_width`, from the top of its capitals to the foot of its descenders.
[[nodiscard]] Box box_of(const Text& text);

}  // namespace baywright::output
