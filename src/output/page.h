#pragma once
// What the parts of a seating's sheet share: what it is about, where things stand on A4, and text that is set to fit.
#include "build/build.h"
#include "fit/seated.h"
#include "fit/seating.h"
#include "output/lettering.h"
#include "output/projection.h"
#include "output/sheet.h"
#include "output/views.h"

namespace baywright::output {

// The sheet, mm from its upper left corner.
inline constexpr Box inside{{10.0, 10.0}, {287.0, 200.0}};
inline constexpr double body_top = 37.5;
inline constexpr double body_bottom = 170.0;
inline constexpr double views_right = 203.0;
inline constexpr double column_left = 208.0;
inline constexpr double title_size = 3.2;
inline constexpr double line_height = 3.6;

/// What a sheet of one seating is about. Refers to what `draw_seating` was given.
struct Subject {
  const build::Build& build;
  const fit::Seated& seated;
  const fit::Seating& seating;
  const build::Place* place = nullptr;  // null: not one of the build's
  Stance stance = Stance::m2;
  const fit::Finding* drawn = nullptr;   // the gap that decides; null: none
  const fit::Finding* answer = nullptr;  // the finding that the verdict comes from; null: none
  tolerance::Method method;

  /// Whether it is drawn where it stands: not where something else sits already.
  [[nodiscard]] bool placed() const { return !seated.scene.elements.empty() && (place == nullptr || place->holds < 0); }
  [[nodiscard]] bool own(int element) const { return seated.brings(element); }
  [[nodiscard]] const build::Bay* bay() const {
    return place != nullptr ? std::get_if<build::Bay>(&place->socket) : nullptr;
  }
};

/// What people call the part that an element is of: "cage floor", "roof of lower cage".
[[nodiscard]] std::string name_of(const Subject& s, int element);

[[nodiscard]] Subject subject_of(const build::Build& build, const fit::Seated& seated, const fit::Seating& seating);

/// Where the two views stand, their scale, and what room they leave.
struct Layout {
  double scale = 1.0;
  Placement section;
  Placement outer;
  Box section_box;
  Box outer_box;
  bool beside = false;         // the outer view to the right of the section, else below it
  bool callout_below = false;  // of the section: the place is nearer to its lower side
  bool narrow = false;         // the section beside the plan: what is right of it is free up to the top
  double labels_right = 0.0;   // heights beside the section reach to here
  double outer_left = 0.0;     // the outer view's title and names have room from here ...
  double outer_right = 0.0;    // ... to here
};

inline constexpr double names_width = 20.0;  // of host parts, left of the section
inline constexpr double window_left = inside.low.x + names_width + 2.0;
inline constexpr double pointers_right =
    inside.low.x + 108.0;                   // names over the plan may reach that far, however short the card
inline constexpr double outer_foot = 13.0;  // two rows of dimensions

/// The largest of 1:1, 1:2, 1:5, 1:10, 1:20 at which both windows have room. `spot`: what the callout points at, in the
/// section's coordinates.
[[nodiscard]] Layout lay_out(const Window& section, const OuterView& outer, const std::optional<Vec2>& spot);

[[nodiscard]] Placement placed(const Window& window, const Vec2& upper_left, double scale);
[[nodiscard]] std::vector<Outline> on_paper(const std::vector<Outline>& outlines, const Placement& placement);

[[nodiscard]] Text text(Vec2 at, std::string words, double size = smallest_text, Anchor anchor = Anchor::start,
                        bool bold = false);

/// Set as large as fits the width, between `size` and `least`; cut short below.
[[nodiscard]] Text fitted(Vec2 at, const std::string& words, double width, double size, double least,
                          bool bold = false);

[[nodiscard]] bool meet(const Box& a, const Box& b);

/// As `broken`, but the last line ends with a whole word where text is left.
[[nodiscard]] std::vector<std::string> wrapped(const std::string& words, double width, double size, std::size_t most,
                                               bool bold = false);

/// Whether no text of the group lies in the box.
[[nodiscard]] bool has_room(const Group& group, const Box& box);

/// The sentence of the finding that the verdict comes from.
[[nodiscard]] std::string answer_sentence(const Subject& s);

/// Mark, verdict, what is where, the sentence, and what would have to be so.
void draw_answer(const Subject& s, Group& all);

/// Scale check bar, caution, title block.
void draw_foot(const Subject& s, const std::string& scales, double asked, Group& all);

/// What else was checked, from y = `top` to the body's end, as far as there is room.
void draw_others(const Subject& s, double top, double right, Group& all);

}  // namespace baywright::output
