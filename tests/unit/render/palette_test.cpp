// Colours by figures, so that nobody makes one prettier and unreadable: the floors are 3:1 of WCAG 2 for marks (1.4.11)
// and 4.5:1 for text (1.4.3), and a CIEDE2000 of 25 between verdicts (our own).
#include "render/palette.h"

#include "output/mark.h"
#include "render/clearance_map.h"
#include "support/colour_difference.h"

#include <cmath>
#include <doctest/doctest.h>

using namespace baywright;

TEST_CASE("CIEDE2000 is as its authors have it") {
  // Sharma, Wu, Dalal (2005), table 1: pairs 1, 2, 3, 7, 9, 11, 17, 25 and 34.
  const struct {
    test::Triple first, second;
    double difference;
  } pairs[] = {{{50.0, 2.6772, -79.7751}, {50.0, 0.0, -82.7485}, 2.0425},
               {{50.0, 3.1571, -77.2803}, {50.0, 0.0, -82.7485}, 2.8615},
               {{50.0, 2.8361, -74.0200}, {50.0, 0.0, -82.7485}, 3.4412},
               {{50.0, 0.0, 0.0}, {50.0, -1.0, 2.0}, 2.3669},
               {{50.0, 2.4900, -0.0010}, {50.0, -2.4900, 0.0009}, 7.1792},
               {{50.0, 2.4900, -0.0010}, {50.0, -2.4900, 0.0011}, 7.2195},
               {{50.0, 2.5, 0.0}, {73.0, 25.0, -18.0}, 27.1492},
               {{60.2574, -34.0099, 36.2677}, {60.4626, -34.1751, 39.4387}, 1.2644},
               {{2.0776, 0.0795, -1.1350}, {0.9033, -0.0636, -0.5514}, 0.9082}};
  for (const auto& pair : pairs) {
    CAPTURE(pair.difference);
    CHECK(std::abs(test::ciede2000(pair.first, pair.second) - pair.difference) < 5e-5);
    CHECK(std::abs(test::ciede2000(pair.second, pair.first) - pair.difference) < 5e-5);
  }
}

TEST_CASE("verdicts keep apart from each other and from the ground for every kind of colour vision") {
  using enum fit::Verdict;
  for (const bool dark : {false, true}) {
    CAPTURE(dark);
    const render::Palette& colours = render::palette(dark);
    for (const test::Eye eye : test::eyes) {
      CAPTURE(static_cast<int>(eye));
      for (const fit::Verdict verdict : {fits, marginal, does_not_fit, undecided})
        for (const std::string& ground : {colours.background, colours.band})
          CHECK(test::contrast(test::seen(output::colour(verdict, dark), eye), test::seen(ground, eye)) >= 3.0);
      for (const auto& [a, b] : {std::pair(fits, marginal), {fits, does_not_fit}, {marginal, does_not_fit}})
        CHECK(test::ciede2000(test::lab(test::seen(output::colour(a, dark), eye)),
                              test::lab(test::seen(output::colour(b, dark), eye))) >= 25.0);
    }
    for (const std::string& ground : {colours.background, colours.band}) {
      CHECK(test::contrast(test::linear(colours.ink), test::linear(ground)) >= 11.0);
      CHECK(test::contrast(test::linear(colours.quiet), test::linear(ground)) >= 4.5);
    }
  }
}

TEST_CASE("the scale of a clearance map grows lighter all along for every kind of colour vision") {
  for (const test::Eye eye : test::eyes) {
    CAPTURE(static_cast<int>(eye));
    double before = -1.0;
    for (int i = 0; i <= 20; ++i) {
      const double lightness = test::lab(test::seen(render::hex(render::clearance_colour(i / 20.0)), eye))[0];
      CHECK(lightness > before + 1.0);
      before = lightness;
    }
  }
  CHECK(render::hex(render::clearance_colour(-3.0)) == render::hex(render::clearance_colour(0.0)));
  CHECK(render::hex(render::clearance_colour(std::nan(""))) == render::hex(render::clearance_colour(1.0)));
}

TEST_CASE("colours are read and written as six digits") {
  CHECK(render::hex(render::colour_of("#0B63A5")) == "#0B63A5");
  CHECK(render::hex(render::colour_of("blue")) == "#000000");
}
