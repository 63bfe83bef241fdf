// The search on builds small enough to reckon by hand.
#include "plans/plan.h"
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
