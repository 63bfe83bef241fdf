// A command line that cannot be meant: exit 2, one line, what would be right.
#include "commands/run.h"

#include <doctest/doctest.h>

using namespace baywright;

TEST_CASE("slips of the command line") {
  const test::Folder folder;
  folder.write("x.build.toml", test::source_text("tests/commands/data/bench.build.toml"));
  struct Slip {
    std::vector<std::string> arguments;
    std::string place;
    std::string says;
  };
  const std::string x = "x.build.toml";
  const std::vector<Slip> slips = {
      {{}, "baywright: ", "see baywright --help"},
      {{"chek", x}, "baywright: ", "there is no command `chek`; did you mean `check`?"},
      {{"frobnicate"},
       "baywright: ",
       "the commands are check, explain, plans, draw, drill, make, steps, picture, view, parts, survey, rank, report or new"},
      {{"--json"}, "baywright: ", "see baywright --help"},
      {{"check"}, "baywright: ", "FILE is required; see baywright check --help"},
      {{"check", x, "--jsn"}, "baywright: ", "--jsn"},
      {{"check", x, x}, "baywright: ", "not expected"},
      {{"check", x, "--drive", "crad"}, "x.build.toml: ", "there is no drive `crad`; did you mean `card`?"},
      {{"check", x, "--place", "front"}, "x.build.toml: ", "there is no place `front`; it has rear slot"},
      {{"check", x, "--drive", ""}, "baywright: ", "the name is empty"},
      {{"check", x, "--drive"}, "baywright: ", "--drive"},
      {{"check", x, "--clearance", "-0.1"}, "baywright: ", "--clearance must lie from 0 to 1000 mm"},
      {{"check", x, "--clearance", "nan"}, "baywright: ", "--clearance must lie from 0 to 1000 mm"},
      {{"check", x, "--clearance", "inf"}, "baywright: ", "--clearance must lie from 0 to 1000 mm"},
      {{"check", x, "--clearance", "0,5"}, "baywright: ", "--clearance"},
      {{"check", x, "--method", "best"}, "baywright: ", "worst,rss,sampled"},
      {{"check", x, "--builds", "0"}, "baywright: ", "--builds must lie from 1 to 100000000"},
      {{"check", x, "--builds", "100000001"}, "baywright: ", "--builds must lie from 1 to 100000000"},
      {{"check", x, "--builds", "many"}, "baywright: ", "--builds"},
      {{"check", x, "--seed", "-1"}, "baywright: ", "--seed"},
      {{"check", x, "--threads", "0"}, "baywright: ", "--threads must lie from 1 to 1024"},
      {{"check", x, "--together", "--every"}, "baywright: ", "--every excludes --together"},
      {{"check", x, "--together", "--drive", "card"}, "baywright: ", "--drive excludes --together"},
      {{"explain", x, "--drive", "crad"}, "x.build.toml: ", "did you mean `card`?"},
      {{"draw", x}, "baywright: ", "--output is required"},
      {{"draw", x, "-o", "x.xyz"}, "baywright: ", "ends in .svg"},
      {{"draw", "y.build.toml", "-o", "x.svg"}, "y.build.toml: ", "there is no such file"},
      {{"draw", x, "-o", "x.svg", "--place", "reer slot"}, "x.build.toml: ", "did you mean `rear slot`?"},
      {{"make", x, "-o", "x.stl"}, "baywright: ", "--part is required"},
      {{"make", x, "--part", "shim M3 1"}, "baywright: ", "--output is required"},
      {{"make", x, "--part", "", "-o", "x.stl"}, "baywright: ", "the name is empty"},
      {{"make", x, "--part", "shim M3 1", "-o", "x.obj"}, "baywright: x.obj", "ends in .stl, .3mf or .dxf"},
      {{"make", x, "--part", "shim M3 1", "-o", "x.stl", "--process", "cast"}, "baywright: ", "fdm,sla,sls"},
      {{"new", "under-tray"}, "baywright: ", "--output is required"},
      {{"new", "over-tray", "-o", "y.build.toml"}, "baywright: ", "it must be under-tray, compare, bay or panel"},
      {{"parts", "unobtainium"}, "baywright: ", "the library has nothing for `unobtainium`"},
      {{"parts", "m2/2280-D9-M"}, "baywright: ", "codes are S1 S2 S3"},
  };
  for (const Slip& slip : slips) {
    CAPTURE(slip.says);
    test::check_refused(folder.run(slip.arguments), 2, slip.place, slip.says);
  }
  CHECK(folder.names() == std::vector<std::string>{x});  // none of them wrote anything
}
