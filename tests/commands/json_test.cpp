// `check --json` and the build files against the schemas that are published with them. The scripts hold the schemas
// against slips too, so that a schema that lets everything through fails.
#include "commands/run.h"

#include <doctest/doctest.h>
#include <filesystem>

using namespace baywright;

namespace {

/// The distribution's Python, which has python3-jsonschema of third_party/packages.txt.
void check_script(const test::Folder& folder, const std::string& script, std::vector<std::string> arguments) {
  arguments.insert(arguments.begin(), test::source_path("tests/commands/" + script));
  const test::Run run = folder.spawn("/usr/bin/python3", arguments);
  CAPTURE(run.out);
  CAPTURE(run.err);
  if (run.status == 77) MESSAGE("python3-jsonschema is missing: install it (third_party/packages.txt), or run ./start");
  CHECK(run.status == 0);
  CHECK(run.out.find(" checked") != std::string::npos);
}

}  // namespace

TEST_CASE("check --json is what its schema says") {
  const test::Folder folder;
  std::vector<std::string> arguments = {test::source_path("models/check.schema.json")};
  const auto add = [&](const std::string& name, std::vector<std::string> options) {
    options.insert(options.begin(), "check");
    options.push_back("--json");
    folder.write(name, folder.run(options).out);
    arguments.push_back(name);
  };
  for (const char* const demo : {"thin-desktop", "laptop", "tower"}) {
    const std::string file = test::source_path("models/builds/" + std::string(demo) + ".build.toml");
    add(std::string(demo) + ".json", {file});
    add(std::string(demo) + "-rss.json", {file, "--method", "rss"});
    add(std::string(demo) + "-sampled.json", {file, "--method", "sampled", "--builds", "3000"});
  }
  add("everything.json", {test::source_path("tests/commands/data/everything.build.toml")});
  add("together.json", {test::source_path("tests/commands/data/everything.build.toml"), "--together"});
  const std::string bench = test::source_text("tests/commands/data/bench.build.toml");
  folder.write("solve.build.toml", test::with(bench, "\"9.1 ±0.2\"", "\"?\""));
  add("solve.json", {"solve.build.toml"});
  folder.write("open.build.toml", test::with(bench, "\"9.1 ±0.2\"", "\"max 9.5\""));
  add("open.json", {"open.build.toml"});
  check_script(folder, "check_schema.py", arguments);
}

TEST_CASE("build files are what their schema says") {
  const test::Folder folder;
  std::vector<std::string> arguments = {test::source_path("models/build.schema.json"), BAYWRIGHT_PROGRAM};
  for (const auto& entry : std::filesystem::directory_iterator(test::source_path("models/builds")))
    if (entry.path().string().ends_with(".build.toml")) arguments.push_back(entry.path());
  REQUIRE(arguments.size() >= 2 + 3);  // the demonstration builds are there
  arguments.push_back(test::source_path("tests/commands/data/bench.build.toml"));
  arguments.push_back(test::source_path("tests/commands/data/bays.build.toml"));
  arguments.push_back(test::source_path("tests/commands/data/everything.build.toml"));
  for (const char* const kind : {"under-tray", "compare", "bay", "panel"}) {
    REQUIRE(folder.run({"new", kind, "-o", std::string(kind) + ".build.toml"}).status == 0);
    arguments.push_back(std::string(kind) + ".build.toml");
  }
  check_script(folder, "build_schema.py", arguments);
}
