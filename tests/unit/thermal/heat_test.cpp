// A seating's heat: power from the sheet, room from the check, budget from the slot.
#include "thermal/heat.h"

#include "fit/check.h"
#include "fit/seat.h"
#include "support/check_ratio.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <string>

using namespace baywright;
using namespace baywright::thermal;

namespace {

/// A card under a lid so many mm over the board, wearing what is said.
Heat heat_at(const std::string& lid, const std::string& wears, const Stated& stated, bool removable = true) {
  const std::string text =
      "title = \"x\"\n[[part]]\nname = \"board\"\nsolid = { plate = [200, 120, 1.6] }\n"
      "[[part]]\nname = \"lid\"\nsolid = { plate = [200, 120, 1] }\nabove = { part = \"board\", by = " +
      lid + " }\nremovable = " + (removable ? "true" : "false") +
      "\n[[slot]]\nname = \"slot\"\non = { part = \"board\", at = [20, 60], toward = \"+x\" }\nsocket = "
      "\"m2/M/H4.2\"\nlengths = [2280]\nbus = \"pcie 4.0 x4\"\n"
      "[[drive]]\nname = \"card\"\nuse = \"m2/2280-S3-M\"\nbus = \"pcie 4.0 x4\"\n" +
      wears;
  const auto read = build::read_text(text, std::string(BAYWRIGHT_SOURCE) + "/models/builds/in-a-test.build.toml");
  const auto* build = std::get_if<build::Build>(&read);
  REQUIRE(build != nullptr);
  const fit::Host host = fit::compile(*build);
  const fit::Seating seating = fit::check_seating(host, *build, build->drives[0], 0, {});
  const fit::Seated seated = fit::seat(host, *build, build->drives[0], 0);
  return heat_of(build->drives[0], build->places[0], seated, seating, stated);
}

}  // namespace

TEST_CASE("a card without a stated power has a budget and no temperature") {
  const Heat heat = heat_at("20", "", {});
  CHECK(!heat.warmth);
  CHECK(heat.unknown == Unknown::no_power);
  REQUIRE(heat.budget);
  test::check_ratio(heat.budget->watts, 8.25, 1e-12);
  CHECK(heat.draw->unknown == 1);
  CHECK(!heat.draw->over);
}

TEST_CASE("a lid near the card is seen in the answer, and the room is noted") {
  const Stated stated{4.0, {}, {}};
  const Heat near = heat_at("7.0", "", stated);
  const Heat nearer = heat_at("6.2", "", stated);
  REQUIRE(near.warmth);
  REQUIRE(nearer.warmth);
  // Still air of a few millimetres is all that is between: less of it lets more heat through to the lid.
  CHECK(nearer.warmth->composite().high < near.warmth->composite().high);
  const auto& remarks = near.warmth->remarks;
  CHECK(std::find(remarks.begin(), remarks.end(), Remark::room_shallow) != remarks.end());
}

TEST_CASE("a drive that does not fit has no temperature") {
  const Stated stated{4.0, {}, {}};
  for (const Heat& heat : {heat_at("3", "", stated), heat_at("7", "", stated, false)}) {  // in it; no way in under it
    CHECK(!heat.warmth);
    CHECK(heat.unknown == Unknown::not_seated);
    CHECK(!heat.draw);
  }
}

TEST_CASE("a heatsink cools, and its pad's worst case is looked at") {
  const Stated stated{5.0, {}, {}};
  const Heat bare = heat_at("40", "", stated);
  const Heat worn = heat_at(
      "40", "wears = [ { pad = \"1.0 ±0.1\", compress = \"30 %\" }, { heatsink = \"fin-heatsink-14\" } ]\n", stated);
  REQUIRE(worn.warmth);
  CHECK(worn.warmth->composite().high < bare.warmth->composite().high);
  REQUIRE(worn.contact);
  CHECK(!bare.contact);
  // Held at 0.70: the thin pad is pressed by 22.2 %, the thick one by 36.4 %.
  test::check_ratio(worn.contact->least, 1.0 - 0.7 / 0.9, 1e-9);
  test::check_ratio(worn.contact->most, 1.0 - 0.7 / 1.1, 1e-9);
}

TEST_CASE("limits against the interval: below, within, above") {
  const Interval found{330.0, 350.0};
  CHECK(outlook(found, {{}, 360.0, {}}) == Outlook::stays_below);
  CHECK(outlook(found, {{}, 340.0, {}}) == Outlook::may_throttle);
  CHECK(outlook(found, {{}, 330.0, {}}) == Outlook::likely_throttles);
  CHECK(outlook(found, {}) == Outlook::no_limit);
  CHECK(outlook(found, {{}, {}, 360.0}) == Outlook::stays_below);
}

TEST_CASE("drives that draw more together than their slot gives") {
  const auto slot = card_slot_budget(4);
  const std::vector<std::optional<double>> four = {7.0, 7.0, 7.0, std::nullopt};
  CHECK(!draw(*slot, four).over);
  CHECK(draw(*slot, four).unknown == 1);
  const std::vector<std::optional<double>> more = {7.0, 7.0, 7.0, 4.5};
  CHECK(draw(*slot, more).over);
}

TEST_CASE("two cards on one carrier draw from one slot, and only together too much") {
  const auto read = build::read(std::string(BAYWRIGHT_SOURCE) + "/models/builds/carrier.build.toml");
  const auto* build = std::get_if<build::Build>(&read);
  REQUIRE(build != nullptr);
  const auto drive = std::find_if(build->drives.begin(), build->drives.end(), [](const build::Drive& each) {
    return each.worn && each.worn->adapter->drives == 2;
  });
  const auto place = std::find_if(build->places.begin(), build->places.end(),
                                  [](const build::Place& each) { return each.name == "slot 4"; });
  REQUIRE(drive != build->drives.end());
  REQUIRE(place != build->places.end());
  const int at = static_cast<int>(place - build->places.begin());
  const fit::Host host = fit::compile(*build);
  const fit::Seating seating = fit::check_seating(host, *build, *drive, at, {});
  const fit::Seated seated = fit::seat(host, *build, *drive, at);
  const auto heat_with = [&](std::optional<double> watts) {
    return heat_of(*drive, *place, seated, seating, {watts, {}, {}});
  };
  // 25 W for an x8 slot: PCI Express Card Electromechanical Specification, from memory.
  CHECK(!heat_with(13.0).draw->over);
  CHECK(heat_with(13.0).shared->over);
  CHECK(!heat_with(12.0).shared->over);
  CHECK(!heat_with({}).shared->over);
  CHECK(heat_with({}).shared->unknown == 2);
}
