#include "viewer/arrow_step.h"

namespace baywright::viewer {

using geometry::Vec2;

Vec2 arrow_step(Ui& ui) {
  const double by = ImGui::GetIO().KeyAlt ? 0.01 : 0.1;
  for (const auto& [key, way] : {std::pair{"Left", Vec2(-1.0, 0.0)}, std::pair{"Right", Vec2(1.0, 0.0)},
                                 std::pair{"Up", Vec2(0.0, 1.0)}, std::pair{"Down", Vec2(0.0, -1.0)}}) {
    if (ui.took({key})) return by * way;
    if (ui.took({key, false, true})) return way;
  }
  return Vec2(0.0);
}

}  // namespace baywright::viewer
