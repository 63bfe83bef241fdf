// What a build file says about its places and about drives of all forms, out of the file in which every key stands
// (tests/commands/data/everything.build.toml): the expected figures are those of its text.
#include "build/build.h"
#include "support/check_mm.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <string>

using namespace baywright;
using build::Bay;
using build::Build;
using build::Drive;
using build::Place;
using test::check_mm;

namespace {

const Build& everything() {
  static const auto got = build::read(std::string(BAYWRIGHT_SOURCE) + "/tests/commands/data/everything.build.toml");
  if (const auto* fault = std::get_if<parts::Fault>(&got)) FAIL(fault->text());
  return std::get<Build>(got);
}

template <typename Named>
const Named& named(const std::vector<Named>& all, const std::string& name) {
  const auto found = std::find_if(all.begin(), all.end(), [&](const Named& each) { return each.name == name; });
  REQUIRE(found != all.end());
  return *found;
}

const Place& place(const std::string& name) {
  return named(everything().places, name);
}

const Bay& bay(const std::string& name) {
  return std::get<Bay>(place(name).socket);
}

}  // namespace

TEST_CASE("what a place shares is found by name, also where it stands farther down") {
  const Build& build = everything();
  const auto& shares = place("wide slot").shares;
  REQUIRE(shares.size() == 2);
  CHECK(build.places.at(static_cast<std::size_t>(shares[0].place)).name == "front slot");
  CHECK(shares[0].leaves.size() == 2);
  CHECK(build.places.at(static_cast<std::size_t>(shares[1].place)).name == "card slot");
  CHECK(shares[1].leaves.empty());
  const auto& mini = place("mini slot").shares;
  REQUIRE(mini.size() == 1);
  CHECK(build.places.at(static_cast<std::size_t>(mini[0].place)).name == "disk bay");
  CHECK(mini[0].leaves.empty());  // "nothing" is the default
}

TEST_CASE("what a place holds is a drive of its own, and no candidate") {
  const Build& build = everything();
  const Place& mini = place("mini slot");
  REQUIRE(mini.holds >= 0);
  const Drive& there = build.held.at(static_cast<std::size_t>(mini.holds));
  CHECK(there.name == "radio card");
  CHECK(there.half);
  CHECK(std::none_of(build.drives.begin(), build.drives.end(), [](const Drive& d) { return d.name == "radio card"; }));
  CHECK(place("wide slot").holds == -1);
}

TEST_CASE("a bay, a panel, and what is taken where nothing is said") {
  const Bay& disk = bay("disk bay");
  CHECK(!disk.panel);
  CHECK(disk.form == parts::Form::drive_3_5);
  check_mm(disk.width.value().dimension.nominal, 103.0, 0.0);
  check_mm(disk.behind.value().dimension.plus, 1.0, 0.0);
  check_mm(disk.raised.value().dimension.nominal, 2.0, 0.0);
  CHECK(!disk.spacers);
  CHECK(disk.fixing.value().side);
  CHECK(disk.fixing.value().thread == "6-32");
  REQUIRE(disk.fixing.value().holes.size() == 2);
  check_mm(disk.fixing.value().holes[1][0], 130.1, 0.0);
  check_mm(disk.fixing.value().holes[1][1], 6.35, 0.0);
  const Bay& spot = bay("floor spot");
  CHECK(spot.panel);
  CHECK(spot.spacers);
  CHECK(!spot.fixing.value().side);
  CHECK(place("floor spot").back);
  CHECK(bay("edge bay").standoffs);
  CHECK(bay("edge bay").on_edge);
  CHECK(bay("ruler bay").backplane);  // the one default that depends on the form
  CHECK(!bay("front bay").backplane);
  CHECK(!bay("front bay").fixing.has_value());
}

TEST_CASE("drives of other forms, and adapters") {
  const auto& drives = everything().drives;
  CHECK(named(drives, "server disk").plug == standards::connectors::Plug::u3);
  CHECK(named(drives, "big disk").plug == standards::connectors::Plug::sas);  // that of its bus
  CHECK(named(drives, "measured disk").rows.size() == 4);
  CHECK(!named(drives, "disk of no height").cased.whole());
  CHECK(named(drives, "measured disk").cased.whole());
  const Drive& carried = named(drives, "carried card");
  CHECK(carried.form == parts::Form::m2);
  CHECK(carried.outer() == parts::Form::add_in_card);
  CHECK(carried.worn.value().position == 2);
  CHECK(carried.bracket == parts::Bracket::low);
  const Drive& bracketed = named(drives, "bracketed disk");
  CHECK(bracketed.outer() == parts::Form::drive_3_5);
  CHECK(bracketed.worn.value().name == "disk bracket");
  check_mm(bracketed.worn.value().raised.value().dimension.nominal, 1.8, 0.0);
  CHECK(named(drives, "extended card").worn.value().name == "adapter of extended card");
}
