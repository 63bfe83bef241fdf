#pragma once
// A figure that is typed where it stands.
#include "viewer/ui.h"

#include <string>

namespace baywright::viewer {

class TextField {
 public:
  explicit TextField(std::string text) : text_(std::move(text)) {}

  enum class Outcome {
    typing,
    entered,  // with Enter: take `text`, or `refuse` it
    left,     // by Escape or a click elsewhere
  };
  /// One frame of it. What stood there is marked at first, so that the next letter replaces it.
  Outcome draw(Ui& ui, float x, float y, float room);
  /// Stays open, and says what would be right.
  void refuse(std::string fault);

  [[nodiscard]] const std::string& text() const { return text_; }
  [[nodiscard]] const std::string& fault() const { return fault_; }

 private:
  std::string text_;
  std::string fault_;
  bool fresh_ = true;  // not yet under the keyboard
};

/// The digit that was pressed over something that can be typed, with which its text begins; empty: none was.
[[nodiscard]] std::string typed_digit(Ui& ui);

}  // namespace baywright::viewer
