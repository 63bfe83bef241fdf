// Dry air. U.S. Standard Atmosphere 1976 at sea level, as Debian's python3-fluids 1.0.22 gives it
// (fluids.atmosphere.ATMOSPHERE_1976(0)); handbook values for warmer air (Incropera, Table A.4) from memory.
#include "thermal/air.h"

#include "support/check_ratio.h"

#include <doctest/doctest.h>

using namespace baywright::thermal;
using baywright::test::check_ratio;

TEST_CASE("air at sea level as the standard atmosphere has it") {
  const auto air = air_at(288.15);
  REQUIRE(air);
  check_ratio(air->conductivity, 0.0253259, 1e-5);
  check_ratio(air->viscosity, 1.46072e-5, 1e-5);
}

TEST_CASE("warmer air within 2 % of a handbook") {
  struct Row {
    double kelvin, viscosity, conductivity, prandtl;
  };
  for (const Row& row :
       {Row{300, 15.89e-6, 26.3e-3, 0.707}, Row{350, 20.92e-6, 30.0e-3, 0.700}, Row{400, 26.41e-6, 33.8e-3, 0.690}}) {
    const auto air = air_at(row.kelvin);
    REQUIRE(air);
    check_ratio(air->viscosity, row.viscosity, 0.02);
    check_ratio(air->conductivity, row.conductivity, 0.02);
    check_ratio(air->prandtl, row.prandtl, 0.02);
  }
}
