#pragma once
// Where each pane of the window stands. No toolkit: so that it can be tested.
namespace baywright::viewer {

struct Rectangle {
  float x = 0.0F;  // pixels, from the upper left
  float y = 0.0F;
  float width = 0.0F;
  float height = 0.0F;
};

/// What the user may shift, as shares of the window; kept between runs.
struct Fractions {
  float column = 0.26F;  // width of the stack column
  float foot = 0.2F;     // height of what would make it fit
};

struct Layout {
  Rectangle answer;  // the first line: verdict and sentence
  Rectangle column;  // the stack, or the hole table
  Rectangle scene;
  Rectangle foot;
};

/// Together they cover the window without a gap. Each keeps its least size as long as the window is 900 x 600 or more
/// times `scale`; below that the scene gives way first. `folded`: for a customer, without column and foot.
[[nodiscard]] Layout layout_of(float width, float height, float scale, const Fractions& fractions, bool folded);

}  // namespace baywright::viewer
