// PCI-SIG M.2 Rev 1.0, Table 41 (read): key M and B 3.3 V with a peak of 2500 mA, key A and E 2000 mA. Card slots (PCI
// Express CEM) and EDSFF (SFF-TA-1006, -1008): from memory, and marked so.
#include "support/check_ratio.h"
#include "thermal/budget.h"
#include "thermal/heat.h"

#include <doctest/doctest.h>

using namespace baywright;
using namespace baywright::thermal;

TEST_CASE("what slots may give") {
  test::check_ratio(m2_budget('M')->watts, 8.25, 1e-12);
  CHECK(m2_budget('M')->peak);
  CHECK(m2_budget('M')->known == tolerance::Known::read);
  test::check_ratio(m2_budget('E')->watts, 6.6, 1e-12);
  CHECK(!m2_budget('X'));
  CHECK(card_slot_budget(16)->watts == 75.0);
  CHECK(card_slot_budget(4)->watts == 25.0);
  CHECK(!card_slot_budget(2));
  CHECK(edsff_budget(parts::Form::e1_s, 9.5)->watts == 20.0);
  CHECK(edsff_budget(parts::Form::e3_l, 16.8)->watts == 70.0);
  CHECK(!edsff_budget(parts::Form::e1_s, 7.0));
  for (const auto& row :
       {card_slot_budget(16), edsff_budget(parts::Form::e1_s, 9.5), plug_budget(standards::connectors::Plug::u2)})
    CHECK(row->known == tolerance::Known::memory);
}

TEST_CASE("reported temperatures: tools take 273 off (nvme-cli, practice)") {
  CHECK(celsius_of_log(343) == 70);
  CHECK(celsius_of_log(358) == 85);
}
