// What the trade takes for granted. Each of these is common practice, no source.
#include "standards/m2.h"
#include "support/check_mm.h"

#include <doctest/doctest.h>
#include <string>

using namespace baywright::standards;
using baywright::test::check_mm;

namespace {

/// Where the screw stands for a card of this name, from the seating plane.
double screw_of(std::string_view name) {
  const auto read = m2::read_card_name(name);
  REQUIRE(std::holds_alternative<m2::CardName>(read));
  for (const m2::Length& row : m2::lengths()) {
    if (row.code == std::get<m2::CardName>(read).length) return row.along.nominal;
  }
  return -1.0;
}

}  // namespace

TEST_CASE("a card is held at the hole marked with its length") {
  check_mm(screw_of("2280-?-M"), 80.0, 1e-9);    // common practice, no source
  check_mm(screw_of("2242-?-B+M"), 42.0, 1e-9);  // common practice, no source
}

TEST_CASE("a short card with key M is sold and used") {
  // Common practice, no source: 2230 with key M. It mates and may use four lanes, though no table lists the type.
  const auto read = m2::read_card_name("2230-S3-M");
  REQUIRE(std::holds_alternative<m2::CardName>(read));
  CHECK(!m2::listed_type(std::get<m2::CardName>(read)));
  CHECK(m2::mates('M', "M"));
  CHECK(m2::may_carry('M', "M").pcie_lanes == 4);
}
