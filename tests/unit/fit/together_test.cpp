// Several drives at once, against a search through all assignments that knows nothing of how ours goes.
#include "fit/together.h"

#include "support/check_mm.h"

#include <doctest/doctest.h>
#include <random>
#include <string>
#include <vector>

using namespace baywright;

namespace {

build::Build read(const std::string& text) {
  auto read = build::read_text(text, "x.build.toml");
  if (const auto* fault = std::get_if<parts::Fault>(&read)) FAIL(fault->text());
  return std::get<build::Build>(std::move(read));
}

fit::Together together(const build::Build& build) {
  return fit::together(build, fit::check(build, {}), {}, false);
}

constexpr const char* case_floor = R"(title = "t"
[[part]]
name = "floor"
solid = { plate = [400, 900, 1] }
)";

std::string bay(int index, const std::string& height, const std::string& rest = {}) {
  return "[[bay]]\nname = \"bay " + std::to_string(index) + "\"\non = { part = \"floor\", at = [20, " +
         std::to_string(60 + 90 * index) + "], toward = \"+x\" }\ntakes = \"2.5in\"\ninside = { height = " + height +
         " }\nbus = \"sata 6\"\n" + rest;
}

std::string drive(int index, const std::string& height) {
  return "[[drive]]\nname = \"drive " + std::to_string(index) + "\"\nuse = \"2.5in/" + height +
         "\"\nbus = \"sata 6\"\n";
}

/// The most drives that any assignment seats, by trying all of them.
std::size_t most_by_hand(const build::Build& build, const fit::Check& check) {
  const std::size_t places = build.places.size();
  const std::size_t drives = build.drives.size();
  std::size_t most = 0;
  std::vector<std::size_t> at(drives, 0);  // 0: none, else place + 1
  while (true) {
    std::size_t seated = 0;
    bool good = true;
    for (std::size_t d = 0; d < drives && good; ++d) {
      if (at[d] == 0) continue;
      ++seated;
      good = check.seatings[d * places + at[d] - 1].verdict == fit::Verdict::fits;
      for (std::size_t e = 0; e < drives && good; ++e) {
        if (e == d || at[e] == 0) continue;
        good = at[e] != at[d];
        for (const build::Share& share : build.places[at[d] - 1].shares)
          good = good && share.place + 1 != static_cast<int>(at[e]);
      }
    }
    if (good) most = std::max(most, seated);
    std::size_t next = 0;
    while (next < drives && ++at[next] > places) at[next++] = 0;
    if (next == drives) return most;
  }
}

}  // namespace

TEST_CASE("as many drives are seated as any assignment seats") {
  std::mt19937_64 random(20261125);
  const auto pick = [&](int count) { return std::uniform_int_distribution<int>(0, count - 1)(random); };
  const std::vector<std::string> bays = {"5.3", "7.3", "9.8", "15.1"};
  const std::vector<std::string> drives = {"5", "7", "9.5", "15"};
  int all = 0;
  int not_all = 0;
  for (int round = 0; round < 60; ++round) {
    std::string text = case_floor;
    for (int i = 0; i < 4; ++i) {
      const int other = pick(4);
      const std::string share = pick(3) == 0 && other != i ? "shares = [{ with = \"bay " + std::to_string(other) +
                                                                 "\", leaves = \"nothing\" }]\n"
                                                           : "";
      text += bay(i, bays[static_cast<std::size_t>(pick(4))], share);
    }
    for (int i = 0; i < 4; ++i) text += drive(i, drives[static_cast<std::size_t>(pick(4))]);
    const build::Build build = read(text);
    const fit::Check check = fit::check(build, {});
    const fit::Together found = fit::together(build, check, {}, false);
    CAPTURE(text);
    REQUIRE(found.whole);
    CHECK(found.assigned.size() == most_by_hand(build, check));
    CHECK(found.assigned.size() + found.left.size() == 4);
    ++(found.left.empty() ? all : not_all);
  }
  CHECK(all > 5);
  CHECK(not_all > 5);
}

TEST_CASE("two drives that each fit alone can be in each other's way") {
  // Two bays one over the other without a roof between: 20 mm from floor to floor.
  const std::string shelves = std::string(case_floor) + R"([[part]]
name = "shelf"
solid = { plate = [400, 5, 1] }
above = { part = "floor", by = 20, at = [0, 0] }
)" +
                              "[[bay]]\nname = \"lower\"\non = { part = \"floor\", at = [20, 60], toward = \"+x\" "
                              "}\ntakes = \"2.5in\"\nbus = \"sata 6\"\n"
                              "[[bay]]\nname = \"upper\"\non = { part = \"shelf\", face = \"back\", at = [20, 2], "
                              "toward = \"+x\" }\ntakes = \"2.5in\"\n"
                              "bus = \"sata 6\"\n";
  const fit::Together thick = together(read(shelves + drive(1, "15") + drive(2, "15")));
  REQUIRE(thick.left.size() == 1);
  CHECK(thick.left[0].fits_alone.size() == 2);
  // Each place is named with who keeps the drive out of it: one is taken, in the other the two overlap, 15 + 15 in 20.
  REQUIRE(thick.left[0].in_the_way.size() == 2);
  int overlaps = 0;
  for (const fit::InTheWay& each : thick.left[0].in_the_way) {
    CHECK(each.drive == thick.assigned[0].drive);
    CHECK(each.at == thick.assigned[0].place);
    CHECK(each.between.has_value() == (each.place != each.at));
    if (!each.between) continue;
    ++overlaps;
    CHECK(each.between->between[1] == each.drive);
    REQUIRE(each.between->gap.has_value());
    test::check_mm(each.between->gap->nominal, 20.0 - 30.0, 1e-9);
  }
  CHECK(overlaps == 1);
  CHECK(together(read(shelves + drive(1, "9.5") + drive(2, "9.5"))).left.empty());
}

TEST_CASE("a place that takes lanes leaves a slower link, and one that takes all leaves none") {
  const auto slots = [](const std::string& leaves) {
    return read(R"(title = "t"
[[part]]
name = "board"
solid = { plate = [200, 200, 1.6] }
[[slot]]
name = "first"
on = { part = "board", at = [20, 40], toward = "+x" }
socket = "m2/M/H4.2"
lengths = [2280]
bus = "pcie 4.0 x4"
shares = [{ with = "second", leaves = )" +
                leaves + R"( }]
[[slot]]
name = "second"
on = { part = "board", at = [20, 120], toward = "+x" }
socket = "m2/M/H4.2"
lengths = [2280]
bus = "pcie 3.0 x4"
[[drive]]
name = "one"
use = "m2/2280-S2-M"
bus = "pcie 4.0 x4"
[[drive]]
name = "two"
use = "m2/2280-S2-M"
bus = "pcie 4.0 x4"
)");
  };
  const fit::Together slower = together(slots("\"pcie 3.0 x2\""));
  REQUIRE(slower.assigned.size() == 2);
  CHECK(slower.assigned[0].place == "first");
  REQUIRE(slower.assigned[1].link.has_value());
  CHECK(standards::links::in_words(*slower.assigned[1].link) == "PCIe 3.0 x2");
  REQUIRE(slower.costs.size() == 1);
  CHECK(slower.costs[0].with == "second");
  CHECK(together(slots("\"nothing\"")).left.size() == 1);
}

TEST_CASE("one carrier has as many places as sockets, and each but the first wants the slot split") {
  const auto carrier = [](const std::string& splits) {
    std::string text = R"(title = "t"
[[part]]
name = "board"
solid = { plate = [300, 200, 1.6] }
[[slot]]
name = "slot"
on = { part = "board", at = [57.1, 100], toward = "+x" }
socket = "pcie/x8"
bus = "pcie 4.0 x8"
)" + splits;
    for (const char* position : {"1", "2"})
      text += std::string("[[drive]]\nname = \"card ") + position +
              "\"\nuse = \"m2/2280-S2-M\"\nbus = \"pcie 4.0 x4\"\nwears = [{ adapter = \"adapter/m2-on-x8\", name = "
              "\"carrier\", "
              "position = " +
              position + " }]\n";
    return together(read(text));
  };
  CHECK(carrier("splits = [4, 4]\n").left.empty());
  const fit::Together unsplit = carrier("");
  REQUIRE(unsplit.left.size() == 1);
  CHECK(unsplit.left[0].drive == "card 2");
  CHECK(unsplit.left[0].fits_alone.empty());
}
