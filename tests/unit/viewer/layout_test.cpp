#include "viewer/layout.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <doctest/doctest.h>
#include <utility>

using namespace baywright::viewer;

namespace {

float area(const Rectangle& r) {
  return r.width * r.height;
}

bool overlap(const Rectangle& a, const Rectangle& b) {
  constexpr float rounding = 1e-2F;
  return a.x < b.x + b.width - rounding && b.x < a.x + a.width - rounding && a.y < b.y + b.height - rounding &&
         b.y < a.y + a.height - rounding;
}

struct Case {
  float width;
  float height;
  float scale;
};
// From the smallest screens that are still sold to a dense large one (no source).
constexpr std::array cases = {Case{800, 600, 1},      Case{900, 600, 1},     Case{1280, 800, 1},
                              Case{1366, 768, 1.25F}, Case{1600, 1000, 1},   Case{1920, 1080, 1.5F},
                              Case{2560, 1440, 2},    Case{3840, 2160, 3},   Case{900, 600, 3},
                              Case{3840, 600, 0.75F}, Case{600, 2160, 0.75F}};

}  // namespace

TEST_CASE("panes cover the window without overlap or gap, at every size and whatever the user shifted") {
  for (const Case& each : cases)
    for (const float column : {0.05F, 0.26F, 0.9F})
      for (const float foot : {0.05F, 0.18F, 0.9F})
        for (const bool folded : {false, true}) {
          CAPTURE(each.width);
          CAPTURE(each.scale);
          CAPTURE(column);
          CAPTURE(foot);
          const Layout got = layout_of(each.width, each.height, each.scale, {column, foot}, folded);
          const std::array panes = {got.answer, got.column, got.scene, got.foot};
          float sum = 0.0F;
          for (const Rectangle& pane : panes) {
            CHECK(pane.x >= 0.0F);
            CHECK(pane.y >= 0.0F);
            CHECK(pane.width >= 0.0F);
            CHECK(pane.height >= 0.0F);
            CHECK(pane.x + pane.width <= each.width + 1e-2F);
            CHECK(pane.y + pane.height <= each.height + 1e-2F);
            sum += area(pane);
          }
          for (std::size_t i = 0; i < panes.size(); ++i)
            for (std::size_t j = i + 1; j < panes.size(); ++j) CHECK(!overlap(panes[i], panes[j]));
          CHECK(std::abs(sum - each.width * each.height) <= 1e-5F * each.width * each.height);
        }
}

TEST_CASE("each pane keeps its least size from 900 x 600 times the scale on") {
  for (const Case& each : cases) {
    if (each.width < 900.0F * each.scale || each.height < 600.0F * each.scale) continue;
    for (const float column : {0.05F, 0.9F})
      for (const float foot : {0.05F, 0.9F}) {
        CAPTURE(each.width);
        CAPTURE(each.scale);
        const Layout got = layout_of(each.width, each.height, each.scale, {column, foot}, false);
        CHECK(got.answer.height >= 84.0F * each.scale);
        CHECK(got.column.width >= 288.0F * each.scale);
        CHECK(got.scene.width >= 400.0F * each.scale);
        CHECK(got.scene.height >= 200.0F * each.scale);
        CHECK(got.foot.height >= 112.0F * each.scale);
      }
  }
}

TEST_CASE("a window of no size, or of a size that is no number, has panes of finite size") {
  for (const float side : {0.0F, -5.0F, std::nanf("")}) {
    const Layout got = layout_of(side, side, 1.0F, {}, false);
    for (const Rectangle& pane : {got.answer, got.column, got.scene, got.foot}) {
      CHECK(std::isfinite(pane.width));
      CHECK(pane.width >= 0.0F);
      CHECK(std::isfinite(pane.height));
      CHECK(pane.height >= 0.0F);
    }
  }
}

TEST_CASE("for a customer column and foot fold away") {
  const Layout got = layout_of(1280.0F, 800.0F, 1.0F, {}, true);
  CHECK(got.column.width == 0.0F);
  CHECK(got.foot.height == 0.0F);
  CHECK(got.scene.width == 1280.0F);
}
