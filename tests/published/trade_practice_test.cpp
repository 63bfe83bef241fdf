// What the trade takes for granted. Each of these is common practice, no source.
#include "standards/m2.h"
#include "standards/tools.h"
#include "support/check_mm.h"

#include <doctest/doctest.h>
#include <string>

using namespace baywright::standards;
using baywright::test::check_mm;
using baywright::tolerance::Known;

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

TEST_CASE("blades and handles of common drivers") {
  // Lengths of the ordinary blades and of the stubby ones for PH1 and PH2: ISO 8764-2, from memory: 60, 80, 100; 25.
  // Handles, long blades, the stubby PH0 and the low ratchet (18 of bit, 12 of head): common practice, no source.
  const auto row = [](std::string_view recess, std::string_view kind) {
    for (const tools::Driver& each : tools::drivers())
      if (each.recess == recess && each.kind == kind) return each;
    FAIL("no such driver");
    return tools::Driver{};
  };
  const struct {
    std::string_view recess;
    double ordinary, handle, handle_length;
  } wanted[] = {{"PH0", 60.0, 20.0, 85.0}, {"PH1", 80.0, 27.0, 95.0}, {"PH2", 100.0, 33.0, 105.0}};
  for (const auto& each : wanted) {
    const tools::Driver ordinary = row(each.recess, "ordinary");
    check_mm(ordinary.shaft_length.nominal, each.ordinary, 1e-9);
    CHECK(ordinary.shaft_length.known == Known::memory);
    check_mm(ordinary.handle.nominal, each.handle, 1e-9);
    check_mm(ordinary.handle_length.nominal, each.handle_length, 1e-9);
    CHECK(ordinary.handle.known == Known::practice);
    const tools::Driver stubby = row(each.recess, "stubby");
    check_mm(stubby.shaft_length.nominal, 25.0, 1e-9);
    CHECK(stubby.shaft_length.known == (each.recess == "PH0" ? Known::practice : Known::memory));
    const tools::Driver low = row(each.recess, "low");
    check_mm(low.shaft_length.nominal + low.handle_length.nominal, 30.0, 1e-9);
    CHECK(low.handle.known == Known::practice);
    CHECK(row(each.recess, "long").shaft_length.known == Known::practice);
  }
}
