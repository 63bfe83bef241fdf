#pragma once
// A key with what is held beside it.
#include <string>

namespace baywright::viewer {

struct Chord {
  std::string
      key;  // what the key writes in the user's layout, in lower case ("s", "+"), or a name: "Escape", "F1",
            // "Left", "Right", "Up", "Down", "Enter", "Space", "Tab", "Home", "End", "PageUp", "PageDown", "Delete"
  bool ctrl = false;
  bool shift = false;  // only of named keys and of letters with Ctrl: else the character says it

  bool operator==(const Chord&) const = default;
};

/// "Ctrl+Shift+Z", "F1", "W": as help shows it.
[[nodiscard]] std::string text(const Chord& chord);

}  // namespace baywright::viewer
