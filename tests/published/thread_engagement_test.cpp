// How much thread a screw needs.
#include "standards/fasteners.h"
#include "support/check_mm.h"

#include <array>
#include <doctest/doctest.h>
#include <string_view>

using namespace baywright::standards;
using baywright::test::check_mm;

TEST_CASE("engagement at which screw and nut are equally strong") {
  // Le = 4 As/(pi d2), the form of FED-STD-H28/2B, worked out from d and P by hand.
  struct Row {
    std::string_view id;
    double length;
  };
  for (const Row& row : std::array<Row, 6>{
           {{"M1.6", 1.178}, {"M2", 1.517}, {"M2.5", 1.956}, {"M3", 2.394}, {"M3.5", 2.774}, {"M4", 3.153}}}) {
    CAPTURE(row.id);
    const fasteners::Thread& thread = *fasteners::thread(row.id);
    const double length = fasteners::equal_strength_engagement(thread);
    check_mm(length, row.length, 0.0006);
    CHECK(length > 0.73 * thread.major.nominal);
    CHECK(length < 0.80 * thread.major.nominal);
    CHECK(length < thread.major.nominal);  // so the rule of 1 d in steel is on the safe side
  }
}

TEST_CASE("rules of thumb for engagement, in diameters") {
  // Three public guides: steel 1.0; cast iron 1.5, one adds brass; aluminium 2.0 (one: 1.5 to 2.0); zinc 2.0 to 2.5 and
  // plastic 2.0 to 2.5, of which we take the larger.
  CHECK(fasteners::engagement_in_diameters("steel") == 1.0);
  CHECK(fasteners::engagement_in_diameters("cast iron") == 1.5);
  CHECK(fasteners::engagement_in_diameters("brass") == 1.5);
  CHECK(fasteners::engagement_in_diameters("aluminium") == 2.0);
  CHECK(fasteners::engagement_in_diameters("zinc") == 2.5);
  CHECK(fasteners::engagement_in_diameters("plastic") == 2.5);
  CHECK(fasteners::engagement_in_diameters("cheese") == 0.0);
}
