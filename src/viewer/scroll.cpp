#include "viewer/scroll.h"

#include <algorithm>
#include <utility>

namespace baywright::viewer {

float Scroll::take(Ui& ui, float tall, const Rectangle& room) {
  const float seen = std::max(room.height, 1.0F);
  const float step = 3.0F * line_of(ui.fonts.small);
  for (const auto& [key, by] : {std::pair{"Up", -step}, std::pair{"Down", step}, std::pair{"PageUp", -0.9F * seen},
                                std::pair{"PageDown", 0.9F * seen}, std::pair{"Space", 0.9F * seen},
                                std::pair{"Home", -tall}, std::pair{"End", tall}})
    if (ui.took({key})) at_ += by;
  at_ -= step * ImGui::GetIO().MouseWheel;
  if (high_ > low_) at_ = std::min(std::max(at_, high_ - seen), low_);
  high_ = low_ - 1.0F;
  at_ = std::clamp(at_, 0.0F, std::max(tall - seen, 0.0F));
  if (tall > seen) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float x = room.x + room.width;
    const float y = room.y + at_ / tall * seen;
    list.AddLine({x, room.y}, {x, room.y + seen}, colour(ui.palette->line), ui.px(2.0F));
    list.AddLine({x, y}, {x, y + seen / tall * seen}, ui.quiet(), ui.px(4.0F));
  }
  return at_;
}

}  // namespace baywright::viewer
