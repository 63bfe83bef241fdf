#include "viewer/palette.h"

#include "output/mark.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>
#include <doctest/doctest.h>
#include <string>

using namespace baywright;
using viewer::Palette;
using viewer::palette;

namespace {

/// Relative luminance and contrast ratio of WCAG 2.2, from sRGB (its definitions, from memory).
double luminance(const std::string& hex) {
  std::array<double, 3> linear{};
  for (std::size_t i = 0; i < 3; ++i) {
    const double c = static_cast<double>(std::strtol(hex.substr(1 + 2 * i, 2).c_str(), nullptr, 16)) / 255.0;
    linear[i] = c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
  }
  return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2];
}

double contrast(const std::string& a, const std::string& b) {
  const double one = luminance(a);
  const double two = luminance(b);
  return (std::max(one, two) + 0.05) / (std::min(one, two) + 0.05);
}

}  // namespace

TEST_CASE("contrast is measured as defined") {
  CHECK(std::abs(contrast("#000000", "#FFFFFF") - 21.0) <= 1e-9);   // WCAG 2: the largest there is
  CHECK(std::abs(contrast("#777777", "#FFFFFF") - 4.48) <= 0.005);  // the well-known grey just below 4.5 (memory)
}

TEST_CASE("every text of the window can be read on every background of it, light and dark") {
  for (const bool dark : {false, true}) {
    const Palette& p = palette(dark);
    for (const char* background : {p.pane, p.band, p.raised, p.scene}) {
      CAPTURE(background);
      CHECK(contrast(p.text, background) >= 7.0);
      CHECK(contrast(p.quiet, background) >= 4.5);
      CHECK(contrast(p.focus, background) >= 3.0);
    }
    for (const char* bar : {p.bar, p.other_bar}) CHECK(contrast(p.text, bar) >= 7.0);  // grips and whiskers
    CHECK(contrast(p.bar_line, p.pane) >= 3.0);
    CHECK(contrast(p.bar, p.other_bar) > 1.1);  // bands that meet are told apart
  }
}

TEST_CASE("marks stand off from every background of the window") {
  for (const bool dark : {false, true})
    for (const char* background : {palette(dark).pane, palette(dark).band, palette(dark).raised, palette(dark).scene})
      for (const fit::Verdict verdict :
           {fit::Verdict::fits, fit::Verdict::marginal, fit::Verdict::does_not_fit, fit::Verdict::undecided}) {
        CAPTURE(background);
        CHECK(contrast(output::colour(verdict, dark), background) >= 3.0);
      }
}
