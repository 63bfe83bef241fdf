#pragma once
// The window's colours on light and on dark, sRGB as "#RRGGBB"; those of verdicts are in output/mark.h. No toolkit: a
// test measures their contrast.
namespace baywright::viewer {

struct Palette {
  bool dark;
  const char* pane;       // behind the stack column and what pops up
  const char* band;       // behind the answer line and the foot
  const char* raised;     // behind what is pointed at; the third background that text stands on
  const char* scene;      // behind the scene
  const char* text;       // 7:1 or more on each of the backgrounds
  const char* quiet;      // second rank text, 4.5:1 or more
  const char* line;       // between panes, round tiles: decoration only
  const char* focus;      // round what the keyboard stands on, 3:1 or more
  const char* bar;        // a bar of the stack column
  const char* other_bar;  // its neighbour, apart also in grey
  const char* bar_line;   // round them
};

[[nodiscard]] const Palette& palette(bool dark);

}  // namespace baywright::viewer
