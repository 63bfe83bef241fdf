// `plans` as users run it.
#include "commands/run.h"

#include <doctest/doctest.h>
#include <set>

using namespace baywright;

namespace {

std::string demo(const std::string& name) {
  return test::source_path("models/builds/" + name + ".build.toml");
}

}  // namespace

TEST_CASE("plans answers in its first line and offers different kinds of change") {
  const test::Folder folder;
  const test::Run run = folder.run({"plans", demo("thin-desktop")});
  CHECK(run.status == 0);
  CHECK(run.err.empty());
  const std::vector<std::string> lines = test::lines(run.out);
  REQUIRE(!lines.empty());
  CHECK(lines[0].starts_with("card with tall fins in rear slot: does not fit; "));
  std::set<std::string> kinds;
  for (const std::string& line : lines)
    if (line.size() > 4 && line[0] >= '1' && line[0] <= '9' && line[1] == '.') kinds.insert(line.substr(4));
  CHECK(kinds.size() >= 4);
  // Where metal is worked the caution is there.
  CHECK(run.out.find("eye protection") != std::string::npos);
  CHECK(run.out.find("how far to keep off copper is yours to judge") != std::string::npos);
}

TEST_CASE("a plan that is applied makes a file in which the drive fits, and leaves comments as they are") {
  const test::Folder folder;
  const test::Run run = folder.run({"plans", demo("thin-desktop"), "--apply", "1", "-o", "mended.build.toml"});
  CHECK(run.status == 0);
  CHECK(folder.read("mended.build.toml").find("# four screws") != std::string::npos);
  CHECK(folder.run({"check", "mended.build.toml", "--drive", "card with tall fins"}).status == 0);
  CHECK(folder.run({"check", demo("thin-desktop"), "--drive", "card with tall fins"}).status == 1);
}

TEST_CASE("plans refuses what it cannot do") {
  const test::Folder folder;
  test::check_refused(folder.run({"plans", demo("thin-desktop"), "--apply", "99", "-o", "x.toml"}), 2,
                      demo("thin-desktop"), "there is no plan 99");
  test::check_refused(folder.run({"plans", demo("thin-desktop"), "--apply", "1"}), 2, "baywright:", "--output");
  test::check_refused(folder.run({"plans", demo("thin-desktop"), "--seconds", "0"}), 2, "baywright:", "--seconds");
  test::check_refused(folder.run({"plans", demo("thin-desktop"), "--drive", "card with tal fins"}), 2,
                      demo("thin-desktop"), "did you mean");
  CHECK(folder.names().empty());
}

TEST_CASE("plans says what is left where it fits, and why where nothing helps") {
  const test::Folder folder;
  const test::Run fits = folder.run({"plans", demo("thin-desktop"), "--drive", "card with flat spreader"});
  CHECK(fits.status == 0);
  CHECK(test::lines(fits.out).at(0) == "card with flat spreader in rear slot: fits already.");
  CHECK(fits.out.find("The tallest heatsink with the same foot that fits is ") != std::string::npos);
  const test::Run none = folder.run({"plans", demo("welded-cage")});
  CHECK(none.status == 1);
  CHECK(none.out.find("Thick drive and welded cage cannot be had together here.") != std::string::npos);
  // 12.7 less its 0.1, less the 0.3 asked: by hand.
  CHECK(none.out.find("from 15.00 to 12.30 mm") != std::string::npos);
}

TEST_CASE("plans --json is what its schema says") {
  const test::Folder folder;
  std::vector<std::string> arguments = {test::source_path("tests/commands/plans_schema.py"),
                                        test::source_path("models/plans.schema.json")};
  const auto add = [&](const std::string& name, std::vector<std::string> options) {
    options.insert(options.begin(), "plans");
    options.push_back("--json");
    folder.write(name, folder.run(options).out);
    arguments.push_back(name);
  };
  for (const char* const name : {"thin-desktop", "edge", "tower-bay", "welded-cage"})
    add(std::string(name) + ".json", {demo(name)});
  add("fits.json", {demo("thin-desktop"), "--drive", "card with flat spreader"});
  const test::Run run = folder.spawn("/usr/bin/python3", arguments);
  CAPTURE(run.out);
  CAPTURE(run.err);
  if (run.status == 77) MESSAGE("python3-jsonschema is missing: install it (third_party/packages.txt), or run ./start");
  CHECK(run.status == 0);
  CHECK(run.out.find(" checked") != std::string::npos);
}
