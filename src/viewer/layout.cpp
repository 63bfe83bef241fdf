#include "viewer/layout.h"

#include <algorithm>

namespace baywright::viewer {

Layout layout_of(float width, float height, float scale, const Fractions& fractions, bool folded) {
  width = std::max(1.0F, width);  // in this order: what is no number is 1 too
  height = std::max(1.0F, height);
  const float answer = std::min(84.0F * scale, height);
  const float foot =
      folded ? 0.0F : std::clamp(fractions.foot * height, 112.0F * scale, std::max(112.0F * scale, height / 2.0F));
  const float below = std::min(foot, height - answer);
  const float column =
      folded ? 0.0F
             : std::min(std::clamp(fractions.column * width, 288.0F * scale, std::max(288.0F * scale, width / 2.0F)),
                        width);
  const float middle = height - answer - below;
  return {{0.0F, 0.0F, width, answer},
          {0.0F, answer, column, middle},
          {column, answer, width - column, middle},
          {0.0F, height - below, width, below}};
}

}  // namespace baywright::viewer
