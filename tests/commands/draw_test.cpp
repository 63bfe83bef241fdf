// `draw`: a whole file or none, and which seating it shows.
#include "commands/run.h"

#include <doctest/doctest.h>

using namespace baywright;

namespace {

const std::string thin = test::source_path("models/builds/thin-desktop.build.toml");

/// Read whole by Python's XML parser, which refuses anything not well-formed.
bool well_formed(const test::Folder& folder, const std::string& name) {
  const char* const script =
      "import sys, xml.dom.minidom as m; r = m.parse(sys.argv[1]).documentElement; print(r.tagName)";
  return folder.spawn("/usr/bin/python3", {"-c", script, name}).out == "svg\n";
}

}  // namespace

TEST_CASE("a drawing is a well-formed SVG file, and the command says which seating it shows") {
  const test::Folder folder;
  const test::Run run = folder.run({"draw", thin, "-o", "y.svg"});
  CHECK(run.err == "");
  CHECK(run.status == 0);  // the drawing was asked for, and is there; the worst of the three is drawn
  CHECK(run.out.find("card with tall fins in rear slot") != std::string::npos);
  CHECK(run.out.find("does not fit") != std::string::npos);
  CHECK(run.out.find("y.svg") != std::string::npos);
  CHECK(folder.names() == std::vector<std::string>{"y.svg"});
  CHECK(well_formed(folder, "y.svg"));
  folder.write("z.svg", folder.read("y.svg").substr(0, folder.read("y.svg").size() / 2));
  CHECK(!well_formed(folder, "z.svg"));
}

TEST_CASE("the drawing of a seating that was asked for goes to standard output alone") {
  const test::Folder folder;
  const std::vector<std::string> arguments = {"draw", thin, "--drive", "card with flat spreader", "-o", "-"};
  const test::Run run = folder.run(arguments);
  CHECK(run.err == "");
  CHECK(run.status == 0);
  CHECK(run.out.find("card with flat spreader") != std::string::npos);
  folder.write("y.svg", run.out);
  CHECK(well_formed(folder, "y.svg"));
  CHECK(folder.run(arguments).out == run.out);
}

TEST_CASE("a sheet to measure by, of what `new` writes as it is") {
  const test::Folder folder;
  REQUIRE(folder.run({"new", "under-tray", "-o", "desk.build.toml"}).status == 0);
  const test::Run run = folder.run({"draw", "desk.build.toml", "--measure", "-o", "sheet.svg"});
  CHECK(run.err == "");
  CHECK(run.status == 0);
  CHECK(run.out.find("what to measure for my card in rear slot") != std::string::npos);
  CHECK(well_formed(folder, "sheet.svg"));
  const std::string sheet = folder.read("sheet.svg");
  for (const char* const words : {"tray under board", "1st reading", "Zero the caliper", "power off"})
    CHECK(sheet.find(words) != std::string::npos);
}

TEST_CASE("every seating of the demonstration builds can be drawn") {
  const test::Folder folder;
  int drawn = 0;
  for (const char* const demo : {"laptop", "tower"}) {
    const std::string file = test::source_path("models/builds/" + std::string(demo) + ".build.toml");
    const test::Run named = folder.run({"check", file, "--json"});
    for (const std::string drive : {"fast long card", "cased drive", "short SATA card", "card with tower fins"})
      for (const std::string place : {"main slot", "small slot", "lower slot"}) {
        if (named.out.find('"' + drive + '"') == std::string::npos ||
            named.out.find('"' + place + '"') == std::string::npos)
          continue;
        CAPTURE(drive);
        CAPTURE(place);
        const test::Run run = folder.run({"draw", file, "--drive", drive, "--place", place, "-o", "y.svg"});
        CHECK((run.status == 0 || run.status == 1));
        CHECK(run.err == "");
        CHECK(well_formed(folder, "y.svg"));
        ++drawn;
      }
  }
  CHECK(drawn == 7);
}

TEST_CASE("a bad build leaves the drawing that was there") {
  const test::Folder folder;
  folder.write("x.build.toml", "title = ");
  folder.write("y.svg", "an older drawing");
  test::check_refused(folder.run({"draw", "x.build.toml", "-o", "y.svg"}), 2, "x.build.toml:1:", "valid TOML");
  CHECK(folder.read("y.svg") == "an older drawing");
  CHECK(folder.names() == std::vector<std::string>{"x.build.toml", "y.svg"});
}
