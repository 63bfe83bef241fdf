#pragma once
// The window itself: opens it, waits for what happens, draws only when something did.
#include "fit/check.h"
#include "plans/buying.h"

#include <filesystem>
#include <functional>
#include <optional>
#include <string>

namespace baywright::viewer {

struct WindowOptions {
  std::filesystem::path file;       // empty: the list of files to open
  std::filesystem::path shortlist;  // empty: none
  plans::Wanted wanted;             // of the shortlist
  fit::Options fit;                 // `drive` and `place` name what is looked at first
  int width = 1280;                 // units of the screen
  int height = 800;
  /// After each frame, from 1. `working`: the background has not answered all yet; one more frame comes when it has.
  std::function<void(int frame, double seconds, bool working, const std::string& title)> drawn{};
};

/// Returns when the window is closed. What kept it from opening, in words: no display, no OpenGL 3.3.
[[nodiscard]] std::optional<std::string> show_window(const WindowOptions& options);

}  // namespace baywright::viewer
