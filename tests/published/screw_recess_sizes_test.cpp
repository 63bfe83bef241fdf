// Which cross recess a thread has, and the blades that turn it.
// ISO 7045, recess number of pan head screws, as a fastener dealer's table headed with it gives it (secondary): M1.6
// and M2: 0; M2.5 and M3: 1; M3.5 and M4: 2. Tables headed ISO 7045 that hold DIN 7985 give M2 the number 1. Inch
// threads: a public chart of screw numbers and recess sizes (secondary): 2 to 4: 1; 5 to 9: 2. Shafts: a fastener
// dealer's page on screwdrivers (secondary): sizes 0, 1, 2 are "roughly" 3, 5 and 6 mm thick.
#include "standards/tools.h"
#include "support/check_mm.h"

#include <doctest/doctest.h>

using namespace baywright::standards;
using baywright::test::check_mm;
using baywright::tolerance::Known;

TEST_CASE("the recess of each thread") {
  CHECK(tools::recess("M1.6") == "PH0");
  CHECK(tools::recess("M2") == "PH0");
  CHECK(tools::recess("M2.5") == "PH1");
  CHECK(tools::recess("M3") == "PH1");
  CHECK(tools::recess("M3.5") == "PH2");
  CHECK(tools::recess("M4") == "PH2");
  CHECK(tools::recess("4-40") == "PH1");
  CHECK(tools::recess("6-32") == "PH2");
  CHECK(tools::recess("M5").empty());
}

TEST_CASE("shafts are 3, 5 and 6 mm thick by recess") {
  int seen = 0;
  for (const tools::Driver& row : tools::drivers()) {
    if (row.lever) continue;
    ++seen;
    check_mm(row.shaft.nominal, row.recess == "PH0" ? 3.0 : row.recess == "PH1" ? 5.0 : 6.0, 1e-9);
    CHECK(row.shaft.known == Known::secondary);
  }
  CHECK(seen == 9);
}
