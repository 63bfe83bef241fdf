// Mini cards and mSATA: PCI Express Mini CEM 1.2 as two footprint libraries draw it that were made apart, one of them
// kicad-footprints 6.0.11; JEDEC MO-300 takes the same outline for mSATA. Thickness and heights: memory.
#include "standards/mini_cards.h"
#include "support/check_mm.h"

#include <doctest/doctest.h>

using namespace baywright::standards;
using baywright::test::check_mm;
using baywright::tolerance::Known;

namespace {

constexpr double exactly = 1e-9;

}  // namespace

TEST_CASE("mini card: width and tongue about the notch") {
  check_mm(mini_cards::width().nominal, 30.00, exactly);
  check_mm(mini_cards::edge_to_notch().nominal, 11.15, exactly);
  check_mm(mini_cards::width().nominal - mini_cards::edge_to_notch().nominal, 18.85, exactly);
  check_mm(mini_cards::tongue_width().nominal, 25.60, exactly);
  check_mm(mini_cards::tongue_start().nominal, 8.95, exactly);
  check_mm(mini_cards::tongue_width().nominal - mini_cards::tongue_start().nominal, 16.65, exactly);
  // The tongue stands in the middle: (30.00 - 25.60)/2 on either side.
  check_mm(mini_cards::edge_to_notch().nominal - mini_cards::tongue_start().nominal, 2.20, exactly);
  check_mm((mini_cards::width().nominal - mini_cards::tongue_width().nominal) / 2.0, 2.20, exactly);
  check_mm(mini_cards::notch_width().nominal, 1.50, exactly);
  check_mm(mini_cards::notch_depth().nominal, 4.00, exactly);
  check_mm(mini_cards::shoulder().nominal, 3.30, exactly);
  check_mm(mini_cards::shoulder_corner().nominal, 0.80, exactly);
}

TEST_CASE("mini card: lengths and holes, full and half") {
  check_mm(mini_cards::full_length().nominal, 50.95, exactly);
  check_mm(mini_cards::half_length().nominal, 26.80, exactly);
  check_mm(mini_cards::full_hole().nominal, 48.05, exactly);
  check_mm(mini_cards::half_hole().nominal, 23.90, exactly);
  check_mm(mini_cards::full_hole().nominal - mini_cards::half_hole().nominal, 24.15, exactly);
  check_mm(mini_cards::full_length().nominal - mini_cards::full_hole().nominal, 2.90, exactly);
  check_mm(mini_cards::half_length().nominal - mini_cards::half_hole().nominal, 2.90, exactly);
  check_mm(mini_cards::hole_from_edge().nominal, 2.90, exactly);
  check_mm(mini_cards::hole_diameter().nominal, 2.60, exactly);
  check_mm(mini_cards::pad().nominal, 5.80, exactly);
  // Across: -8.25 and +15.95 from the notch, 24.20 apart.
  check_mm(mini_cards::edge_to_notch().nominal - mini_cards::hole_from_edge().nominal, 8.25, exactly);
  check_mm(mini_cards::width().nominal - 2.0 * mini_cards::hole_from_edge().nominal, 24.20, exactly);
}

TEST_CASE("mini card: further bare areas and the socket") {
  check_mm(mini_cards::full_bare_near().nominal + mini_cards::pad().nominal, 26.80, exactly);  // from 21.00
  check_mm(mini_cards::full_bare_far().nominal + mini_cards::pad().nominal, 36.25, exactly);   // from 30.45
  check_mm(mini_cards::half_bare().nominal + mini_cards::pad().nominal, 11.90, exactly);       // from 6.10
  check_mm(mini_cards::posts_apart().nominal, 25.00, exactly);
  check_mm(mini_cards::large_post_hole().nominal, 1.60, exactly);
  check_mm(mini_cards::small_post_hole().nominal, 1.10, exactly);
  check_mm(mini_cards::pitch().nominal, 0.80, exactly);
  check_mm(mini_cards::side_offset().nominal, 0.40, exactly);
  // 26 contacts of a side fit on the tongue: 25 steps of 0.80.
  CHECK(25.0 * mini_cards::pitch().nominal < mini_cards::tongue_width().nominal);
}

TEST_CASE("mini card: thickness and heights are memory, and say so") {
  check_mm(mini_cards::thickness().low(), 0.90, exactly);
  check_mm(mini_cards::thickness().high(), 1.10, exactly);
  check_mm(mini_cards::top_parts().high(), 2.40, exactly);
  check_mm(mini_cards::bottom_parts().high(), 1.35, exactly);
  CHECK(mini_cards::thickness().known == Known::memory);
  CHECK(mini_cards::top_parts().known == Known::memory);
  CHECK(mini_cards::bottom_parts().known == Known::memory);
}
