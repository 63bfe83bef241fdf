// What a seating takes, for the demonstration builds and for small ones: counts from the builds' own holes, standards'
// names and sizes as ISO tables quoted by the FastenersWB and BOLTS data have them (secondary), the rest common
// practice, no source.
#include "plans/shopping.h"

#include "build/edit.h"
#include "commands/../support/check_mm.h"
#include "fit/check.h"
#include "fit/host.h"
#include "fit/seat.h"
#include "plans/mounting.h"

#include <algorithm>
#include <doctest/doctest.h>

using namespace baywright;
using namespace baywright::plans;
using test::check_mm;

namespace {

std::vector<Item> listed(const build::Build& build, const std::string& drive, const std::string& place) {
  fit::Options options;
  options.drive = drive;
  options.place = place;
  const fit::Check check = fit::check(build, options);
  REQUIRE(check.seatings.size() == 1);
  const fit::Host host = fit::compile(build);
  const auto of = [](const auto& all, const std::string& name) {
    return std::find_if(all.begin(), all.end(), [&](const auto& each) { return each.name == name; });
  };
  const auto at = of(build.places, place);
  REQUIRE(at != build.places.end());
  const build::Drive& what = *of(build.drives, drive);
  const fit::Seating& seating = check.seatings.front();
  const fit::Seated seated = fit::seats(what, seating.questions)
                                 ? fit::seat(host, build, what, static_cast<int>(at - build.places.begin()))
                                 : fit::Seated{fit::Scene(&host.scene)};
  return shopping(build, seated, seating);
}

build::Build demo(const std::string& name) {
  auto got = build::read(std::string(BAYWRIGHT_SOURCE) + "/models/builds/" + name + ".build.toml");
  if (const auto* fault = std::get_if<parts::Fault>(&got)) FAIL(fault->text());
  return std::get<build::Build>(std::move(got));
}

const Item& item(const std::vector<Item>& all, ItemKind kind) {
  const auto found = std::find_if(all.begin(), all.end(), [kind](const Item& each) { return each.kind == kind; });
  REQUIRE_MESSAGE(found != all.end(), word(kind));
  return *found;
}

bool has(const Item& item, Remark remark) {
  return std::find(item.remarks.begin(), item.remarks.end(), remark) != item.remarks.end();
}

const Exchange& exchange(const Item& item, Condition condition) {
  const auto found = std::find_if(item.exchanges.begin(), item.exchanges.end(),
                                  [condition](const Exchange& each) { return each.condition == condition; });
  REQUIRE(found != item.exchanges.end());
  return *found;
}

std::size_t count(const std::vector<Item>& all, ItemKind kind) {
  return static_cast<std::size_t>(
      std::count_if(all.begin(), all.end(), [kind](const Item& each) { return each.kind == kind; }));
}

/// A drive on a panel of 1 mm, by one line of `fixing` and what raises it.
build::Build panel(const std::string& raised, const std::string& fixing) {
  auto got = build::read_text(R"(title = "t"
[[part]]
name = "side"
solid = { plate = [300, 200, 1.0] }
[[panel]]
name = "left"
on = { part = "side", face = "top", at = [60.0, 60.0], toward = "+x" }
takes = "2.5in"
bus = "sata 6"
)" + raised + R"(
fixing = { holes = [[14.0, -30.86], [14.0, 30.86], [90.6, -30.86], [90.6, 30.86]], screw = "M3", sheet = "1.0 ±0.05", )" +
                                  fixing + R"( }
[[drive]]
name = "disk"
use = "2.5in/7"
bus = "sata 6"
rows = ["row 1", "row 2"]
)",
                              "in-a-test.build.toml");
  if (const auto* fault = std::get_if<parts::Fault>(&got)) FAIL(fault->text());
  return std::get<build::Build>(std::move(got));
}

}  // namespace

TEST_CASE("a panel takes a screw and a spacer for each of its four holes, and never a 6-32") {
  const auto all = listed(demo("panel"), "flat drive", "laser cut");
  const Item& screw = item(all, ItemKind::screw);
  CHECK(screw.designation == "ISO 7045 M3 x 8");
  CHECK(screw.count == 4);
  CHECK(exchange(screw, Condition::other_driver).designation == "ISO 14583 M3 x 8");
  const Exchange& inch = exchange(screw, Condition::other_thread);
  CHECK(never(inch.condition));
  check_mm(inch.mm, 0.5052, 1e-4);  // 0.060 + 6 x 0.013 inch is 3.5052, ASME B1.1 from memory
  const Item& spacer = item(all, ItemKind::spacer);
  CHECK(spacer.designation ==
        "spacer round, 5.0 long, bore 3.2");  // ISO 273, fine series, as an engineering site quotes it
  CHECK(spacer.count == 4);
  CHECK(has(spacer, Remark::measure_length));  // the build says 0.1; moulded ones have 0.25, common practice
  // Holes of 4.1 at most are wider than the 3.58 of ISO 273 medium, H13; yet 8 - 0.2 - 1.55 - 5.1 - 0.55 is 0.6 mm of
  // thread, and two turns are 1.0.
  CHECK(has(screw, Remark::no_washer));
  CHECK(count(all, ItemKind::washer) == 0);
  CHECK(item(all, ItemKind::drive).in_build);
}

TEST_CASE("washers are listed under wide holes where the screws still hold, and not under ordinary holes") {
  // 6 - 1.05 - 0.55 - 2.1 is 2.3 mm of thread; 2.5 is the most without the washer: 6 - 0.95 - 1.9 is 3.15 and too deep.
  const auto wide = listed(panel("spacers = \"3.0 ±0.1\"", "length = 6.0, diameter = \"4.0 ±0.1\""), "disk", "left");
  const Item& washer = item(wide, ItemKind::washer);
  CHECK(washer.designation == "M3 plain washer ISO 7089");
  CHECK(washer.count == 4);
  CHECK(exchange(washer, Condition::smaller_washer).designation == "M3 small plain washer ISO 7092");
  const auto narrow = listed(panel("spacers = \"3.0 ±0.1\"", "length = 6.0, diameter = \"3.5 ±0.05\""), "disk", "left");
  CHECK(count(narrow, ItemKind::washer) == 0);
  CHECK(!has(item(narrow, ItemKind::screw), Remark::no_washer));
}

TEST_CASE("where a washer takes too much thread the next usual screw that holds is listed with it") {
  // 4 - 1.05 - 1.6 is 1.35 of thread and two turns are 1.0: not with the 0.55 of a washer. 5 holds with it by 1.8, and
  // goes in by 5 - 0.95 - 1.4 - 0.45, which is 2.2 of the 2.5 that SFF-8201 allows; without it 5 goes too deep.
  const auto all = listed(panel("spacers = \"1.5 ±0.1\"", "length = 4.0, diameter = \"4.24 ±0.1\""), "disk", "left");
  const Item& screw = item(all, ItemKind::screw);
  CHECK(screw.designation == "ISO 7045 M3 x 5");
  CHECK(count(all, ItemKind::washer) == 1);
  const Item& spacer = item(all, ItemKind::spacer);
  CHECK(has(spacer, Remark::wide_spacer));
  check_mm(spacer.outside, 4.34 + 2.0, 1e-12);  // 1 mm of seat on each side: common practice, no source
}

TEST_CASE("where the build names a screw of a wrong length the list has the one that the finding names") {
  const auto tower = listed(demo("tower-bay"), "old disk", "lower cage");
  const Item& inch = item(tower, ItemKind::screw);
  CHECK(inch.designation == "6-32 UNC pan head x 1/8 in");
  CHECK(inch.count == 4);
  CHECK(has(inch, Remark::wrong_length));
  check_mm(inch.named, 6.35, 1e-12);
  CHECK(exchange(inch, Condition::other_thread).designation == "M3");
  const auto box = listed(demo("panel"), "flat drive", "screws from the box");
  const Item& metric = item(box, ItemKind::screw);
  CHECK(metric.designation == "ISO 7045 M3 x 8");  // as the build's own comment says
  CHECK(has(metric, Remark::wrong_length));
}

TEST_CASE("a card takes one M2 screw with a low head, its stand-off, its pad and its heatsink") {
  const auto all = listed(demo("thin-desktop"), "card with flat spreader", "rear slot");
  const Item& screw = item(all, ItemKind::screw);
  CHECK(screw.count == 1);
  CHECK(screw.designation == "M2 x 3 with a low head, for M.2 cards");
  // PCI-SIG M.2 Rev 1.0 allows 1.20 over the card; ISO 7045 M2 is 1.60 high.
  check_mm(exchange(screw, Condition::head_too_high).mm, 0.40, 1e-9);
  CHECK(item(all, ItemKind::standoff).count == 1);
  CHECK(!item(all, ItemKind::pad).in_build);
  CHECK(item(all, ItemKind::heatsink).name == "flat spreader");
  CHECK(item(all, ItemKind::heatsink).in_build);
  CHECK(all.size() == 5);
}

TEST_CASE("nothing is listed for what does not fit for another reason than its screws") {
  CHECK(listed(demo("thin-desktop"), "card with tall fins", "rear slot").empty());
}

TEST_CASE("stand-offs that nuts hold take nuts and no screws, and a length that is not sold is said") {
  const auto nuts = listed(
      panel("standoffs = \"6.0 ±0.1\"", "length = \"2.0 ±0.1\", diameter = \"3.4 ±0.1\", nut = true"), "disk", "left");
  CHECK(item(nuts, ItemKind::nut).designation == "M3 hexagon nut ISO 4032");
  CHECK(item(nuts, ItemKind::nut).count == 4);
  CHECK(item(nuts, ItemKind::standoff).designation == "hex stand-off M3, 6 long, stud 2, studs at both ends");
  CHECK(has(item(nuts, ItemKind::standoff), Remark::length_not_sold));  // studs that are sold are 6 long
  CHECK(count(nuts, ItemKind::screw) == 0);
  const auto screws =
      listed(panel("standoffs = \"6.0 ±0.1\"", "length = \"2.0 ±0.1\", diameter = \"3.4 ±0.1\""), "disk", "left");
  CHECK(item(screws, ItemKind::screw).designation == "ISO 7045 M3");
  CHECK(has(item(screws, ItemKind::screw), Remark::length_open));
}

TEST_CASE("spacers and screws that the file names for a tray are bought, driven and set, and not forgotten") {
  auto text = build::file_text(BAYWRIGHT_SOURCE "/models/builds/thin-desktop.build.toml");
  REQUIRE(std::holds_alternative<std::string>(text));
  std::string more = std::get<std::string>(text);
  more.insert(more.find("removable = true"), "screws = \"M3 x 8\"\nspacers = \"3 ±0.25\"\n");
  const auto read = build::read_text(more, BAYWRIGHT_SOURCE "/models/builds/thin-desktop.build.toml");
  if (const auto* fault = std::get_if<parts::Fault>(&read)) FAIL(fault->text());
  const build::Build& build = std::get<build::Build>(read);
  int spacers = 0;
  int screws = 0;
  for (const Item& item : listed(build, "card with flat spreader", "rear slot")) {
    if (item.part != "tray") continue;
    CAPTURE(item.designation);
    CHECK(item.count == 4);
    CHECK(has(item, Remark::at_each_screw));
    spacers += item.kind == ItemKind::spacer && item.designation == "spacer round, 3.0 long, bore 3.2" ? 1 : 0;
    screws += item.kind == ItemKind::screw && item.designation == "ISO 7045 M3 x 8" ? 1 : 0;
  }
  CHECK(spacers == 1);
  CHECK(screws == 1);
  const fit::Check check = fit::check(build, {});
  const fit::Host host = fit::compile(build);
  const Mounting order = mounting(build, fit::seat(host, build, build.drives[0], 0), check.seatings.at(0));
  CHECK(std::find(order.tools.begin(), order.tools.end(), "ordinary PH1 driver") != order.tools.end());  // M3: ISO 7045
  for (const Step& step : order.steps) {
    if (step.what != "tray") continue;
    REQUIRE(step.screws.has_value());
    CHECK(step.screws->length == 8.0);
    if (step.action == Action::put_back) check_mm(step.length, 3.0, 1e-12);
  }
}
