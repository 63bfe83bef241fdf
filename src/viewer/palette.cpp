#include "viewer/palette.h"

namespace baywright::viewer {

namespace {

constexpr Palette light{.dark = false,
                        .pane = "#FFFFFF",
                        .band = "#F4F5F7",
                        .raised = "#E9ECEF",
                        .scene = "#FAFBFD",
                        .text = "#15181C",
                        .quiet = "#50565E",
                        .line = "#CDD2D9",
                        .focus = "#15181C",
                        .bar = "#E9ECEF",
                        .other_bar = "#D3D7DC",
                        .bar_line = "#7F8388"};

constexpr Palette dark_one{.dark = true,
                           .pane = "#121417",
                           .band = "#1B1E23",
                           .raised = "#2A2F36",
                           .scene = "#15181C",
                           .text = "#E8EBEF",
                           .quiet = "#A9B0BA",
                           .line = "#363C45",
                           .focus = "#E8EBEF",
                           .bar = "#2A2F36",
                           .other_bar = "#3A414B",
                           .bar_line = "#7C848F"};

}  // namespace

const Palette& palette(bool dark) {
  return dark ? dark_one : light;
}

}  // namespace baywright::viewer
