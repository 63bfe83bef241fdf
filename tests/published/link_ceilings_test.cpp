// What a pair of drive and slot lets through: line rates as in link_rates_test.cpp; PCIe 4 x4 in PCIe 3 x2 is
// arithmetic on them. eMMC HS400 (200 MHz, both edges, 8 bits): trac.gateworks.com, wiki MMC, version 22 (secondary).
#include "support/check_ratio.h"
#include "value/appraisal.h"

#include <doctest/doctest.h>

using namespace baywright;
using namespace baywright::value;
using standards::links::Link;
using standards::links::Protocol;
using test::check_ratio;

namespace {

double here(const Link& drive, const Link& slot) {
  Offer offer;
  offer.bus = drive;
  const auto found = ceiling(offer, {&slot, 1});
  return found ? found->megabytes : -1.0;
}

}  // namespace

TEST_CASE("ceilings of drive and slot, MB/s") {
  const Link pcie3{Protocol::pcie, 3, 4};
  const Link pcie4{Protocol::pcie, 4, 4};
  const Link pcie5{Protocol::pcie, 5, 4};
  const Link sata{Protocol::sata, 3, 1};
  check_ratio(here(pcie3, pcie3), 3938.46, 1e-5);
  check_ratio(here(pcie4, pcie4), 7876.92, 1e-5);
  check_ratio(here(pcie5, pcie5), 15753.85, 1e-5);
  check_ratio(here(pcie4, {Protocol::pcie, 3, 2}), 1969.23, 1e-5);
  check_ratio(here(sata, sata), 600.0, 1e-12);
  CHECK(here(pcie4, sata) == 0.0);  // M.2 is a shape: the slot does not speak the drive's protocol
  REQUIRE(present("emmc") != nullptr);
  CHECK(present("emmc")->ceiling == 400.0);
  CHECK(present("tape") == nullptr);
}

TEST_CASE("price a gigabyte: 1 TB at 80") {
  Offer offer;
  offer.name = "x";
  offer.price = 80.0;
  offer.gigabytes = 1000.0;
  const Wishes none;
  check_ratio(*appraise({&offer, 1}, {&none, 1}).front().per_gigabyte, 0.08, 1e-12);
}
