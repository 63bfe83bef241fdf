#pragma once
// What every pane draws with: letters, colours, the keyboard's place, and things that can be pointed at.
#include "fit/verdict.h"
#include "viewer/chord.h"
#include "viewer/layout.h"
#include "viewer/stops.h"
#include "viewer/theme.h"

#include <string>
#include <string_view>
#include <vector>

namespace baywright::viewer {

struct Touch {
  bool pointed = false;   // by the mouse
  bool stood_on = false;  // by the keyboard
  bool chosen = false;    // clicked, or Enter or Space
  bool twice = false;     // double click
  bool held = false;
  bool let_go = false;
};

struct Ui {
  Fonts fonts;
  const Palette* palette = nullptr;
  float scale = 1.0F;
  Stops stops;
  std::vector<Chord> chords;  // pressed since the last frame; who uses one takes it away
  bool typing = false;        // a field takes the letters

  [[nodiscard]] float px(float at_scale_1) const { return at_scale_1 * scale; }
  [[nodiscard]] ImU32 text() const { return colour(palette->text); }
  [[nodiscard]] ImU32 quiet() const { return colour(palette->quiet); }
  /// Whether that key was pressed; it is used up.
  bool took(const Chord& chord);
};

/// A borderless window that covers the rectangle, for a pane. `pane_end` closes it.
/// `above`: over the panes beside it.
void pane_begin(const char* name, const Rectangle& at, ImU32 background, bool above = false);
void pane_end();
/// One over all others, with the rest of the screen dimmed and out of reach, in the middle of `screen`.
Rectangle page_begin(Ui& ui, const Rectangle& screen, float width, float height);
void page_end();

/// Something that can be pointed at and stood on, in the pane that is open. Draws only the ring of the keyboard. `id`
/// is unique in the frame.
Touch touch(Ui& ui, const std::string& id, const Rectangle& at, bool reachable = true);

[[nodiscard]] float width_of(const ImFont* font, std::string_view text);
[[nodiscard]] float line_of(const ImFont* font);  // from one line to the next
/// One line, its upper left corner at (x, y), cut short with an ellipsis where it is wider than `room`. Returns its
/// width.
float write(const ImFont* font, float x, float y, ImU32 colour, std::string_view text, float room = 1e9F);
void write_right(const ImFont* font, float right, float y, ImU32 colour, std::string_view text, float room = 1e9F);
/// Lines broken at spaces, at most so many, the last cut short. Returns the height that they take.
float write_lines(const ImFont* font, float x, float y, ImU32 colour, std::string_view text, float room, int most);
[[nodiscard]] std::vector<std::string> lines_of(const ImFont* font, std::string_view text, float room, int most);

/// A word that can be chosen, in a box of at least 24 pixels at scale 1. Returns its touch; `x` moves behind it.
Touch word_button(Ui& ui, const std::string& id, float& x, float y, std::string_view text, bool on, bool able = true);

/// The mark of a verdict, in the square at (x, y).
void draw_mark(const Ui& ui, fit::Verdict verdict, float x, float y, float size);
/// The pattern of a verdict over a rectangle, with its outline.
void draw_pattern(const Ui& ui, fit::Verdict verdict, bool overlap, const Rectangle& at);

}  // namespace baywright::viewer
