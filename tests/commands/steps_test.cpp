// `steps` on the demonstration builds. What must come before what is common practice, no source; that no torque is
// promised follows from there being none in the sources.
#include "commands/run.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

using namespace baywright;
using nlohmann::json;

namespace {

test::Run steps(const std::string& build, std::vector<std::string> options) {
  options.insert(options.begin(), {"steps", test::source_path("models/builds/" + build + ".build.toml")});
  return test::Folder().run(options);
}

/// Index of the first step of that action about `what` (empty: anything); -1: none.
int at(const json& all, const std::string& action, const std::string& what = {}) {
  for (std::size_t i = 0; i < all["steps"].size(); ++i) {
    const json& step = all["steps"][i];
    if (step["action"] == action && (what.empty() || step["what"] == what)) return static_cast<int>(i);
  }
  return -1;
}

const json& step(const json& all, int index) {
  return all["steps"].at(static_cast<std::size_t>(index));
}

bool warns(const json& step, const std::string& hazard) {
  return std::any_of(step["cautions"].begin(), step["cautions"].end(),
                     [&](const json& caution) { return caution["hazard"] == hazard; });
}

}  // namespace

TEST_CASE("steps: power off and static before a hand goes in, the tray out before the card, back after its screw") {
  const test::Run run = steps("thin-desktop", {"--drive", "card with flat spreader", "--json"});
  CHECK(run.status == 0);
  const json all = json::parse(run.out);
  CHECK(at(all, "back up") == 0);
  CHECK(warns(all["steps"][0], "loss of data"));
  CHECK(at(all, "power off") == 1);
  for (const char* hazard : {"mains", "battery", "power supply"}) CHECK(warns(all["steps"][1], hazard));
  CHECK(warns(all["steps"][2], "static"));
  const std::vector<int> order = {at(all, "touch metal"),
                                  at(all, "take out", "tray"),
                                  at(all, "peel", "pad"),
                                  at(all, "lay pad", "pad"),
                                  at(all, "set heatsink", "flat spreader"),
                                  at(all, "put in", "card with flat spreader"),
                                  at(all, "screw", "M2"),
                                  at(all, "put back", "tray"),
                                  at(all, "start up")};
  CHECK(order.front() == 2);
  CHECK(std::is_sorted(order.begin(), order.end()));
  CHECK(std::adjacent_find(order.begin(), order.end()) == order.end());
  CHECK(all["tools"] == json::array({"ordinary PH0 driver"}));
}

TEST_CASE("steps: a screw that no driver reaches later is driven before the cooler goes back") {
  const json all = json::parse(steps("under-the-cooler", {"--place", "middle slot", "--json"}).out);
  REQUIRE(at(all, "screw") >= 0);
  CHECK(at(all, "take out", "cooler") >= 0);
  CHECK(at(all, "take out", "cooler") < at(all, "screw"));
  CHECK(at(all, "screw") < at(all, "put back", "cooler"));
}

TEST_CASE("steps: where holes are drilled, chips and eyes are warned of before anything goes in") {
  const json all = json::parse(steps("panel", {"--drive", "flat drive", "--place", "laser cut", "--json"}).out);
  const int drill = at(all, "drill");
  REQUIRE(drill >= 0);
  for (const char* hazard : {"swarf", "eyes", "sharp edges"}) CHECK(warns(step(all, drill), hazard));
  CHECK(drill < at(all, "put in"));
  const json& screws = step(all, at(all, "screw"));
  CHECK(screws["count"] == 4);
  CHECK(screws["length"] == 8.0);
  CHECK(step(all, at(all, "set spacers"))["length"] == 5.0);
}

TEST_CASE("steps: what does not fit has none, and says where to look") {
  const test::Run run = steps("thin-desktop", {});  // the worst of three
  CHECK(run.status == 1);
  CHECK(test::lines(run.out)[0] == "card with tall fins in rear slot: does not fit, so there is nothing to mount yet.");
  CHECK(run.out.find("card with flat spreader in rear slot") != std::string::npos);
}

TEST_CASE("steps: the text fits on a page and promises no torque") {
  const test::Run run = steps("thin-desktop", {"--drive", "card with flat spreader"});
  CHECK(run.status == 0);
  const auto lines = test::lines(run.out);
  CHECK(lines[0] == "card with flat spreader in rear slot (fits): 12 steps; tool: ordinary PH0 driver.");
  CHECK(lines.size() <= 60);
  for (const std::string& line : lines) CHECK(line.size() <= 100);
  CHECK(run.out.find("No source gives a torque") != std::string::npos);
  CHECK(run.out.find(" N m") == std::string::npos);
}

TEST_CASE("steps --json is what its schema says") {
  const test::Folder folder;
  std::vector<std::string> arguments = {test::source_path("tests/commands/schema.py"),
                                        test::source_path("models/steps.schema.json")};
  int number = 0;
  for (const auto& [build, place] : std::vector<std::pair<std::string, std::string>>{
           {"thin-desktop", "rear slot"}, {"panel", "laser cut"}, {"carrier", "slot 4"}}) {
    const std::string name = std::to_string(++number) + ".json";
    folder.write(name, steps(build, {"--place", place, "--json"}).out);
    arguments.push_back(folder.path() / name);
  }
  const test::Run run = folder.spawn("/usr/bin/python3", arguments);
  if (run.status == 77) MESSAGE("python3-jsonschema is missing: install it (third_party/packages.txt), or run ./start");
  CHECK(run.err == "");
  CHECK(run.status == 0);
}
