#include "viewer/chord.h"

namespace baywright::viewer {

std::string text(const Chord& chord) {
  std::string key = chord.key;
  if (key.size() == 1 && key[0] >= 'a' && key[0] <= 'z') key[0] = static_cast<char>(key[0] - 'a' + 'A');
  return std::string(chord.ctrl ? "Ctrl+" : "") + (chord.shift ? "Shift+" : "") + key;
}

}  // namespace baywright::viewer
