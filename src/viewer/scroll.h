#pragma once
// How far a page is scrolled whose content is taller than its room.
#include "viewer/ui.h"

namespace baywright::viewer {

class Scroll {
 public:
  /// Takes the wheel, Up, Down, PageUp, PageDown, Space, Home and End, and draws the bar at the right edge of `room`.
  /// `tall`: of the content, pixels. Returns how far down it is scrolled.
  float take(Ui& ui, float tall, const Rectangle& room);
  /// Brings what stands from `low` to `high`, pixels from the top of the content, into sight at the next `take`.
  void show(float low, float high) { low_ = low, high_ = high; }
  void to_top() { *this = {}; }

 private:
  float at_ = 0.0F;
  float low_ = 0.0F;
  float high_ = -1.0F;  // below `low_`: nothing is to be brought into sight
};

}  // namespace baywright::viewer
