// The search on builds small enough to reckon by hand.
#include "fit/check.h"
#include "fit/host.h"
#include "fit/seat.h"
#include "plans/mounting.h"
#include "plans/plan.h"
#include "plans/shopping.h"
#include "support/check_mm.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <string>

using namespace baywright;
using plans::Kind;
using test::check_mm;

namespace {

// A card of 2.45 stand-off, 0.05 solder, 0.80 board and 1.50 chips: 4.80 high, in the worst case more. The tray is too
// near by tenths.
constexpr const char* tray = "solid = { plate = [150, 130, 1.2] }  # measured";

std::string thin(const std::string& solid = tray, const std::string& beyond = "") {
  return "title = \"t\"\n[[part]]\nname = \"board\"\nsolid = { plate = [160, 140, 1.6] }\n[[part]]\nname = \"tray\"\n"
         "removable = true\nunder = { part = \"board\", by = \"4.8 ±0.1\" }\n" +
         solid + "\n" + beyond +
         "[[slot]]\nname = \"slot\"\non = { part = \"board\", face = \"back\", at = [40, 70], toward = \"+x\" }\n"
         "socket = \"m2/M/H4.2\"\nlengths = [2280]\nbus = \"pcie 4.0 x4\"\n"
         "[[drive]]\nname = \"card\"\nuse = \"m2/2280-S3-M\"\nbus = \"pcie 4.0 x4\"\n";
}

plans::Search search(const std::string& text, plans::Options options = {}) {
  options.seconds = 1000.0;
  const auto found = plans::search(text, "t.build.toml", options);
  if (const auto* fault = std::get_if<parts::Fault>(&found)) FAIL(fault->text());
  return std::get<plans::Search>(found);
}

const plans::Plan* of_kind(const plans::Search& search, Kind kind) {
  const auto found = std::find_if(search.plans.begin(), search.plans.end(), [&](const plans::Plan& plan) {
    return plan.changes.size() == 1 && plan.changes.front().kind == kind;
  });
  return found == search.plans.end() ? nullptr : &*found;
}

}  // namespace

TEST_CASE("a search that is stopped has what it found till then and says that it is not whole") {
  const plans::Search all = search(thin());
  CHECK(all.whole);
  REQUIRE(all.plans.size() >= 2);
  plans::Options options;
  bool early = true;
  int of_all = 0;
  options.progress = [&](int done, int of) {
    early = early && done <= of;
    of_all = of;
    return done < 3;
  };
  const plans::Search some = search(thin(), options);
  CHECK(!some.whole);
  CHECK(early);
  CHECK(of_all > 3);
  CHECK(some.tried < all.tried);
  CHECK(!some.plans.empty());
  options.progress = [](int, int) { return false; };
  const plans::Search none = search(thin(), options);
  CHECK(!none.whole);
  CHECK(none.plans.empty());
}

TEST_CASE("a tray is raised no farther than the shelf beyond it lets it") {
  const plans::Plan* raised = nullptr;
  const plans::Search free = search(thin());
  raised = of_kind(free, Kind::spacer);
  REQUIRE(raised != nullptr);
  const double lift = raised->changes.front().value - raised->changes.front().from;
  CHECK(lift > 0.0);
  // The tray's far side is at 4.8 + 1.2 = 6.0. A shelf 0.2 beyond the least lift that mends it lets it; one 0.2 short
  // of it would be crushed.
  const auto shelf = [&](double beyond) {
    return "[[part]]\nname = \"shelf\"\nsolid = { plate = [150, 130, 2] }\nat = [5, 5, " +
           std::to_string(-6.0 - beyond - 2.0) + "]\nremovable = true\n";
  };
  CHECK(of_kind(search(thin(tray, shelf(lift + 0.2))), Kind::spacer) != nullptr);
  CHECK(of_kind(search(thin(tray, shelf(lift - 0.2))), Kind::spacer) == nullptr);
}

TEST_CASE("an opening is offered however the file writes the sheet") {
  for (const std::string& solid :
       {std::string(tray), std::string("[part.solid]  # of steel\n# measured\nplate = [150, 130, 1.2]"),
        std::string("solid.plate = [150, 130, 1.2]")}) {
    CAPTURE(solid);
    const std::string text = thin(solid);
    const plans::Search found = search(text);
    const plans::Plan* opening = of_kind(found, Kind::opening);
    REQUIRE(opening != nullptr);
    const auto changed = build::edited(text, opening->edits, "t.build.toml");
    REQUIRE(std::holds_alternative<std::string>(changed));
    const std::string& after = std::get<std::string>(changed);
    CHECK(after.find("prism") != std::string::npos);
    CHECK(after.find("plate = [150, 130") == std::string::npos);
    CHECK((solid.find("# measured") == std::string::npos || after.find("# measured") != std::string::npos));
  }
}

TEST_CASE("where nothing fits both parts are named, and the least change of one length that would do") {
  const auto text = build::file_text(BAYWRIGHT_SOURCE "/models/builds/welded-cage.build.toml");
  REQUIRE(std::holds_alternative<std::string>(text));
  const plans::Search found = search(std::get<std::string>(text));
  CHECK(found.whole);
  CHECK(found.plans.empty());
  REQUIRE(found.contradiction.has_value());
  CHECK(found.contradiction->first == "thick drive");
  CHECK(found.contradiction->second == "welded cage");
  // Roof 12.7, 0.1 less at its least, 0.3 asked; a drive's height is known as a maximum, without a limit above.
  check_mm(found.contradiction->from, 15.0, 1e-9);
  check_mm(found.contradiction->value, 12.7 - 0.1 - 0.3, 1e-9);
}

TEST_CASE("spacers whose holding is unknown do not stand before a plan that leaves nothing unchecked") {
  // The card's chips are 0.0 to 0.1 too high: spacers under the tray mend it, so does leaving the heatsink off.
  std::string text = thin();
  text.replace(text.find("by = \"4.8"), 9, "by = \"5.8");
  text +=
      "wears = [ { pad = \"0.5 ±0\" }, { name = \"fins\", heatsink = { length = 60, width = 22, height = 2.0 } } ]\n";
  const plans::Search found = search(text);
  REQUIRE(found.plans.size() >= 2);
  const auto unchecked = [](const plans::Plan& plan) {
    return std::any_of(plan.cautions.begin(), plan.cautions.end(), plans::unchecked);
  };
  CHECK_FALSE(unchecked(found.plans.front()));
  CHECK(std::is_partitioned(found.plans.begin(), found.plans.end(),
                            [&](const plans::Plan& plan) { return !unchecked(plan); }));
  CHECK(of_kind(found, Kind::no_heatsink) != nullptr);
  const plans::Plan* spacers = of_kind(found, Kind::spacer);
  REQUIRE(spacers != nullptr);
  CHECK(unchecked(*spacers));
}

TEST_CASE("a sheet whose screws are named is raised with the screws that then hold it") {
  std::string text = thin();
  text.insert(text.find("removable"), "screws = \"M3 x 6\"\n");
  const plans::Search found = search(text);
  const plans::Plan* raised = of_kind(found, Kind::spacer);
  REQUIRE(raised != nullptr);
  CHECK(std::find(raised->cautions.begin(), raised->cautions.end(), plans::Caution::screws_longer) ==
        raised->cautions.end());
  // They go 6 - 1.2 = 4.8 in now. A lift of 0.5 ±0.05 leaves 4.25 or more, over the one diameter of 3 that is asked.
  const double lift = raised->changes.front().value - raised->changes.front().from;
  check_mm(lift, 0.5, 1e-9);
  CHECK(raised->changes.front().screw == 0.0);
  // Over spacers of 2 ±0.25 they would go in 2.55 at the least: screws that are 2 longer do.
  const plans::Search high = search("shelf = { spacers = [2] }\n" + text);
  raised = of_kind(high, Kind::spacer);
  REQUIRE(raised != nullptr);
  check_mm(raised->changes.front().screw, 8.0, 1e-9);
  const auto changed = build::edited("shelf = { spacers = [2] }\n" + text, raised->edits, "t.build.toml");
  REQUIRE(std::holds_alternative<std::string>(changed));
  CHECK(std::get<std::string>(changed).find("\"M3 x 8\"") != std::string::npos);
  const auto read = build::read_text(std::get<std::string>(changed), "t.build.toml");
  REQUIRE(std::holds_alternative<build::Build>(read));
  const build::HostPart& tray = std::get<build::Build>(read).parts.at(1);
  REQUIRE(tray.spacers.has_value());
  check_mm(tray.spacers->dimension.nominal, 2.0, 1e-12);
  check_mm(tray.spacers->dimension.plus, 0.25, 1e-12);
  CHECK(tray.spacers->dimension.known == tolerance::Known::practice);
  // With screws of 4, which go in 2.8, the longest that goes no deeper is 4 again: 2.3 at that lift, and too little.
  std::string shorter = text;
  shorter.replace(shorter.find("M3 x 6"), 6, "M3 x 4");
  const plans::Search other = search(shorter);
  raised = of_kind(other, Kind::spacer);
  REQUIRE(raised != nullptr);
  CHECK(std::find(raised->cautions.begin(), raised->cautions.end(), plans::Caution::no_screw_suits) !=
        raised->cautions.end());
}

TEST_CASE("over spacers a sheet gets screws as deep as before, and where these are too short nobody is sold them") {
  std::string text = thin();
  text.insert(text.find("removable"), "screws = \"M3 x 4\"\n");
  text = "shelf = { spacers = [1] }\n" + text;
  const plans::Search found = search(text);
  const plans::Plan* raised = of_kind(found, Kind::spacer);
  REQUIRE(raised != nullptr);
  check_mm(raised->changes.front().screw, 5.0, 1e-12);  // 5 - 1 is today's 4 - 0; ISO 7045 M3: 4, 5, 6, 8 ...
  const auto changed = build::edited(text, raised->edits, "t.build.toml");
  REQUIRE(std::holds_alternative<std::string>(changed));
  CHECK(std::get<std::string>(changed).find("and spacers") == std::string::npos);  // `by` is nobody's note
  const auto read = build::read_text(std::get<std::string>(changed), "t.build.toml");
  REQUIRE(std::holds_alternative<build::Build>(read));
  const build::Build& build = std::get<build::Build>(read);
  // 1.2 of sheet, 1.25 of spacer and one diameter, 3: 5.45; ISO 7045 M3 x 5 goes 2.55 in.
  const fit::Check check = fit::check(build, {});
  const fit::Host host = fit::compile(build);
  const fit::Seated seated = fit::seat(host, build, build.drives[0], 0);
  int said = 0;
  for (const plans::Step& step : plans::mounting(build, seated, check.seatings.at(0)).steps) {
    if (step.action != plans::Action::put_back) continue;
    check_mm(step.longer_screw, 5.45, 1e-9);
    ++said;
  }
  CHECK(said == 1);
  int listed = 0;
  for (const plans::Item& item : plans::shopping(build, seated, check.seatings.at(0))) {
    if (item.kind != plans::ItemKind::screw || item.part.empty()) continue;
    CHECK(item.designation == "ISO 7045 M3, at least 5.45 long");
    ++listed;
  }
  CHECK(listed == 1);
}

TEST_CASE("a further plan does not put spacers on top of those that the last one left") {
  std::string text = thin();
  text.insert(text.find("removable"),
              "screws = \"M3 x 6\"\nspacers = { length = \"1 ±0.25\", known = \"practice\" }\n");
  text = "shelf = { spacers = [1, 3], screws = [\"M3 x 6\", \"M3 x 8\"] }\n" + text;
  const plans::Search found = search(text);
  const plans::Plan* raised = of_kind(found, Kind::spacer);
  REQUIRE(raised != nullptr);
  const plans::Change& change = raised->changes.front();
  check_mm(change.spacer, 3.0, 1e-12);
  check_mm(change.spacer_now, 1.0, 1e-12);
  check_mm(change.value - change.from, 2.0, 1e-12);
  check_mm(change.screw, 8.0, 1e-12);  // M3 x 6 would go in 6 - 1.2 - 3.25 = 1.55
}

TEST_CASE("plans use what lies on the shelf and nothing else") {
  const plans::Search found = search("shelf = { spacers = [3, 8] }\n" + thin());
  const plans::Plan* raised = of_kind(found, Kind::spacer);
  REQUIRE(raised != nullptr);
  check_mm(raised->changes.front().value - raised->changes.front().from, 3.0, 1e-9);
}

TEST_CASE("a board is raised no farther than its connectors may move in the rear opening") {
  const auto raised = [](const std::string& opening) {
    return search(
        "title = \"t\"\nclearance = 2\n[[part]]\nname = \"floor\"\nsolid = { plate = [300, 300, 1] }\nremovable = "
        "true\n[[part]]\nname = "
        "\"board\"\nuse = \"board/mini-itx\"\nabove = { part = \"floor\", by = \"6.5 ±0.1\" }\n" +
        opening +
        "[[slot]]\nname = \"slot\"\non = { part = \"board\", face = \"back\", at = [45, -70], toward = \"+x\" "
        "}\nsocket "
        "= \"m2/M/H4.2\"\nlengths = [2280]\nbus = \"pcie 4.0 x4\"\n[[drive]]\nname = \"card\"\nuse = "
        "\"m2/2280-S3-M\"\nbus = \"pcie 4.0 x4\"\n");
  };
  const auto moves = [](const plans::Plan& plan) {
    return std::find(plan.cautions.begin(), plan.cautions.end(), plans::Caution::opening_moves) != plan.cautions.end();
  };
  const plans::Search unknown = raised("");
  const plans::Plan* plan = of_kind(unknown, Kind::spacer);
  REQUIRE(plan != nullptr);
  CHECK(moves(*plan));
  const double lift = plan->changes.front().value - plan->changes.front().from;
  const auto of_room = [&](double up) {
    return raised("rear_opening = { up = \"" + std::to_string(up) + " ±0.1\", down = 0 }\n");
  };
  // A washer or spacer is up to 0.25 longer than it says, and the room 0.1 less.
  const plans::Search enough = of_room(lift + 0.36);
  plan = of_kind(enough, Kind::spacer);
  REQUIRE(plan != nullptr);
  CHECK_FALSE(moves(*plan));
  CHECK(plan->edits.size() == 4);
  CHECK(of_kind(of_room(lift - 0.2), Kind::spacer) == nullptr);
}

TEST_CASE("an opening says how far the heatsink then stands out of the sheet") {
  const auto file = build::file_text(BAYWRIGHT_SOURCE "/models/builds/thin-desktop.build.toml");
  REQUIRE(std::holds_alternative<std::string>(file));
  std::string text = std::get<std::string>(file);
  text.replace(text.find("heatsink = \"fin-heatsink-4\""), 27,
               "heatsink = { length = 60, width = 22, height = \"5.4 ±0.1\" }");
  const plans::Search found = search(text);
  const plans::Plan* cut = of_kind(found, Kind::opening);
  REQUIRE(cut != nullptr);
  CHECK(std::find(cut->cautions.begin(), cut->cautions.end(), plans::Caution::stands_out) != cut->cautions.end());
  // Stand-off 2.45, solder 0.05, card 0.80, chips 1.40, pad 0.70 and 5.4 are 10.80, less 9.1 to the tray and its 1.2.
  // The limits add up: 0.20 tray, 0.10 heatsink, 0.10 chips, 0.08 card, 0.07 pad, some 0.03 stand-off and
  // 0.10 of the sheet.
  CHECK(cut->changes.front().through == "tall fin heatsink");
  check_mm(cut->changes.front().out, 10.80 - 9.1 - 1.2, 1e-6);
  check_mm(cut->changes.front().out_most, 0.50 + 0.55 + 0.03 + 0.10, 0.005);
}
