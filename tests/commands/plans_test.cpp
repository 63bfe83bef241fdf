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
  CHECK(run.out.find("how far to keep off copper is") != std::string::npos);
}

TEST_CASE("a plan that is applied makes a file in which the drive fits, and leaves comments as they are") {
  const test::Folder folder;
  const std::vector<std::string> drive = {"--drive", "card with tall fins"};
  const test::Run before = folder.run({"check", demo("thin-desktop"), drive[0], drive[1]});
  CHECK(before.status == 1);
  for (const char* const number : {"1", "2", "6"}) {  // a spacer, no heatsink, an opening
    CAPTURE(number);
    const std::string name = std::string("mended-") + number + ".build.toml";
    const test::Run run = folder.run({"plans", demo("thin-desktop"), "--apply", number, "-o", name});
    CHECK(run.status == 0);
    CHECK(test::lines(run.out).at(0).starts_with("wrote plan " + std::string(number)));
    const std::string mended = folder.read(name);
    int comments = 0;
    for (const std::string& line : test::lines(test::source_text("models/builds/thin-desktop.build.toml"))) {
      if (line.find('#') == std::string::npos) continue;
      CHECK(mended.find(line.substr(line.find('#'))) != std::string::npos);
      ++comments;
    }
    CHECK(comments >= 5);
    const test::Run check = folder.run({"check", name, drive[0], drive[1]});
    CHECK(check.status == 0);
    CHECK(check.out.find("card with tall fins in rear slot: fits") != std::string::npos);
    CHECK(folder.run({"plans", demo("thin-desktop"), "--apply", number, "-o", "-"}).out == mended);
  }
}

TEST_CASE("a plan that makes it fit in some builds only is written, with status 1") {
  const test::Folder folder;
  const auto plans = [&](std::vector<std::string> more) {
    more.insert(more.begin(), {"plans", demo("seven-mm-bay"), "--drive", "disk of 9.5", "--place", "own bay"});
    return folder.run(more).status;
  };
  CHECK(plans({}) == 1);
  CHECK(plans({"--apply", "1", "-o", "maybe.build.toml"}) == 1);
  CHECK(folder.names() == std::vector<std::string>{"maybe.build.toml"});
}

TEST_CASE("plans refuses what it cannot do") {
  const test::Folder folder;
  test::check_refused(folder.run({"plans", demo("thin-desktop"), "--apply", "99", "-o", "x.toml"}), 2,
                      demo("thin-desktop"), "there is no plan 99");
  test::check_refused(folder.run({"plans", demo("thin-desktop"), "--apply", "1"}), 2, "baywright:", "--output");
  test::check_refused(folder.run({"plans", demo("thin-desktop"), "--apply", "1", "-o", demo("thin-desktop")}), 2,
                      "baywright:", "--output is the build file itself");
  test::check_refused(folder.run({"plans", demo("thin-desktop"), "--seconds", "0"}), 2,
                      "baywright:", "--seconds must lie above 0");
  test::check_refused(folder.run({"plans", demo("thin-desktop"), "--drive", "card with tal fins"}), 2,
                      demo("thin-desktop"), "did you mean");
  test::check_refused(folder.run({"plans", "nowhere.build.toml"}), 2, "nowhere.build.toml", "");
  CHECK(folder.names().empty());
  CHECK(folder.run({"plans", demo("thin-desktop"), "--apply", "1", "-o", "no/such/folder.toml"}).status == 3);
  CHECK(folder.run({"plans", demo("thin-desktop")}, "/dev/full").status == 3);
}

TEST_CASE("plans that are cut short say so") {
  const test::Folder folder;
  const test::Run run = folder.run({"plans", demo("thin-desktop"), "--seconds", "0.000001"});
  CHECK(run.status == 0);  // another drive needs no trial
  const std::string all = run.out.substr(0, run.out.find("\n\n"));
  CHECK(all.find("stopped") != std::string::npos);
  const test::Run json = folder.run({"plans", demo("thin-desktop"), "--seconds", "0.000001", "--json"});
  CHECK(json.out.find("\"whole\": false") != std::string::npos);
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
  std::vector<std::string> arguments = {test::source_path("tests/commands/schema.py"),
                                        test::source_path("models/plans.schema.json")};
  std::string all;
  const auto add = [&](const std::string& name, std::vector<std::string> options) {
    options.insert(options.begin(), "plans");
    options.push_back("--json");
    const std::string out = folder.run(options).out;
    folder.write(name, out);
    arguments.push_back(folder.path() / name);
    all += out;
  };
  for (const char* const name : {"thin-desktop", "welded-cage"}) add(std::string(name) + ".json", {demo(name)});
  add("edge.json", {demo("edge"), "--drive", "flat drive", "--place", "slit, straight plug"});
  add("cage.json", {demo("tower-bay"), "--drive", "second drive in the double bracket", "--place", "upper cage"});
  add("fits.json", {demo("thin-desktop"), "--drive", "card with flat spreader"});
  const test::Run run = folder.spawn("/usr/bin/python3", arguments);
  if (run.status == 77) MESSAGE("python3-jsonschema is missing: install it (third_party/packages.txt), or run ./start");
  CHECK(run.err == "");
  CHECK(run.status == 0);
  // The outputs have to show what the schema is about.
  for (const char* const kind : {"spacer", "no heatsink", "other heatsink", "lower heatsink", "other drive", "opening",
                                 "other pad", "other place", "turned", "adapter"}) {
    CAPTURE(kind);
    CHECK(all.find("\"kind\": \"" + std::string(kind) + '"') != std::string::npos);
  }
  CHECK(all.find("\"contradiction\": {") != std::string::npos);
  CHECK(all.find("\"tallest\": {") != std::string::npos);
}
