// `steps --shopping` as a user runs it; the table is read by Python's csv module, which knows nothing of ours.
#include "commands/run.h"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

using namespace baywright;
using nlohmann::json;

namespace {

test::Run shop(const std::string& build, std::vector<std::string> options) {
  options.insert(options.begin(), {"steps", test::source_path("models/builds/" + build + ".build.toml"), "--shopping"});
  return test::Folder().run(options);
}

/// The rows as Python's csv reads them, each an object by the heading.
json table(const test::Folder& folder, const std::string& text) {
  folder.write("list.csv", text);
  const test::Run run = folder.spawn(
      "/usr/bin/python3",
      {"-c",
       "import csv, json; print(json.dumps(list(csv.DictReader(open('list.csv', newline='', encoding='utf-8')))))"});
  REQUIRE(run.status == 0);
  return json::parse(run.out);
}

}  // namespace

TEST_CASE("steps --shopping: the first line counts, the text keeps to 100 columns") {
  const test::Run run = shop("thin-desktop", {"--drive", "card with flat spreader"});
  CHECK(run.status == 0);
  const auto lines = test::lines(run.out);
  CHECK(lines[0] == "To fit card with flat spreader in rear slot: 2 things to buy, 3 are in the build already (drive,");
  CHECK(lines[1] == "heatsink, stand-off).");
  for (const std::string& line : lines) CHECK(line.size() <= 104);  // bytes; ± has two
}

TEST_CASE("steps --shopping: a marginal seating has its list, a wrong screw the right one, and both end with 1") {
  const test::Run marginal = shop("panel", {"--drive", "flat drive", "--place", "hand drilled"});
  CHECK(marginal.status == 1);
  CHECK(marginal.out.find("Only some builds fit.") != std::string::npos);
  CHECK(marginal.out.find("   4  screw      ISO 7045 M3 x 8\n") != std::string::npos);
  const test::Run wrong = shop("tower-bay", {"--drive", "old disk", "--place", "lower cage"});
  CHECK(wrong.status == 1);
  CHECK(wrong.out.find("Its screws are wrong") != std::string::npos);
  CHECK(wrong.out.find("6-32 UNC pan head x 1/8 in") != std::string::npos);
}

TEST_CASE("steps --shopping: what does not fit has no list, and a table keeps its heading") {
  const test::Run text = shop("thin-desktop", {});
  CHECK(text.status == 1);
  CHECK(test::lines(text.out)[0] ==
        "card with tall fins in rear slot: does not fit, so there is nothing to mount yet.");
  const test::Run csv = shop("thin-desktop", {"--csv"});
  CHECK(csv.status == 1);
  CHECK(test::lines(csv.out).size() == 1);
  CHECK(csv.err.find("does not fit") != std::string::npos);
}

TEST_CASE("steps --shopping --csv: names with quotes, commas and formulas arrive whole and are no formulas") {
  const test::Folder folder;
  std::string text = test::source_text("models/builds/thin-desktop.build.toml");
  text = test::with(text, "name  = \"card with flat spreader\"", R"(name  = "=cmd()|\"x\",'y'")");
  text = test::with(text, "name = \"flat spreader\"", R"x(name = "@SUM(A1,\"2\")")x");
  folder.write("x.build.toml", text);
  const test::Run run = folder.run({"steps", "x.build.toml", "--drive", "=cmd()|\"x\",'y'", "--shopping", "--csv"});
  CHECK(run.status == 0);
  const json rows = table(folder, run.out);
  REQUIRE(rows.size() == 5);
  CHECK(rows[0]["kind"] == "screw");
  CHECK(rows[0]["count"] == "1");
  CHECK(rows[3]["name"] == R"('@SUM(A1,"2"))");
  CHECK(rows[4]["name"] == R"('=cmd()|"x",'y')");
  for (const json& row : rows) {
    CHECK(row.size() == 11);  // a field more or less is no row of this table
    for (const auto& [key, value] : row.items()) {
      REQUIRE(value.is_string());
      const auto field = value.get<std::string>();
      CHECK(std::string("=+-@").find(field.empty() ? 'x' : field[0]) == std::string::npos);
    }
  }
}

TEST_CASE("steps names the shopping list, and --csv goes with it, --json does not") {
  const std::string build = test::source_path("models/builds/thin-desktop.build.toml");
  const test::Folder folder;
  const test::Run run = folder.run({"steps", build, "--drive", "card with flat spreader"});
  CHECK(test::lines(run.out).back() == "What to buy for it: baywright steps --shopping");
  CHECK(folder.run({"steps", build, "--csv"}).status == 2);
  CHECK(folder.run({"steps", build, "--shopping", "--json"}).status == 2);
}
