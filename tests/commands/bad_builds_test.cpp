// What is wrong in a build file is said once, at its place, with what would be right. The lines and columns are those
// of data/bench.build.toml, counted by hand in characters.
#include "commands/slips.h"

#include <doctest/doctest.h>
#include <string>
#include <vector>

using namespace baywright;
using test::checked;

namespace {

void check_slips(const std::vector<test::Slip>& slips) {
  test::check_slips("bench.build.toml", slips);
}

constexpr const char* by = "\"9.1 ±0.2\"";
constexpr const char* tray = "{ plate = [150, 110, 1.2] }";
constexpr const char* under = "under = { part = \"board\", by = \"9.1 ±0.2\" }\n";
constexpr const char* wears =
    "wears = [ { pad = \"1.0 ±0.1\", compress = \"30 %\" }, { heatsink = \"fin-heatsink-3\" } ]\n";

}  // namespace

TEST_CASE("the bench build itself is taken") {
  const test::Run run = checked(test::source_text("tests/commands/data/bench.build.toml"));
  CHECK(run.err == "");
  CHECK(run.status == 1);  // its heatsink is marginal under the tray
}

TEST_CASE("slips of TOML and of keys") {
  check_slips({
      {"clearance = 0.5", "clearance = 0.5\nclearance = 0.6", "3:13", "cannot redefine"},
      {"clearance = 0.5", "clearance = ", "2:13", "valid TOML"},
      {"", "x = [[[[", "25:9", "valid TOML"},
      {"clearance = 0.5", "clearence = 0.5", "2:1", "did you mean `clearance`?"},
      {"toward = \"+x\"", "twoard = \"+x\"", "15:63", "did you mean `toward`?"},
      {by, "{ length = \"9.1\", sorce = \"x\" }", "11:50", "did you mean `source`?"},
      {"", "\n[[prt]]\nx = 1\n", "26:3", "did you mean `part`?"},
      {tray, "{ ball = 3 }", "10:11", "known keys: box, cylinder, plate or prism"},
      {"clearance = 0.5", "clearance = \"0.5\"", "2:13", "it must be a number"},
      {"\"A bench build\"", "7", "1:13", "it must be text in quotes"},
      {"\"A bench build\"", "\" \"", "1:13", "`title` is empty"},
      {"\"A bench build\"", "\"two\\nlines\"", "1:13", "one line of plain text"},
      {"\"A bench build\"", "\"red \\u001b[31m\"", "1:13", "one line of plain text"},
      {"under = { part = \"board\", by = \"9.1 ±0.2\" }", "under = \"board\"", "11:9", "it must be a table"},
      {tray, "{ plate = \"150\" }", "10:19", "it must be a list"},
      {tray, "{ plate = [150, 110] }", "10:19", "it must have 3"},
      {"", "\n[drive]\n", "26:1", "cannot redefine"},
      {"\"m2/2280-S2-M\"", "\"2280 NVMe\"", "22:9", "did you mean `m2/2280-"},
  });
}

TEST_CASE("a key that is missing is named, and no good key is called unknown") {
  check_slips({
      {"title     = \"A bench build\"\n", "", "1:1", "has no `title`"},
      {"use   = \"m2/2280-S2-M\"\n", "", "20:1", "a drive has no `use`"},
      {"name  = \"tray\"\n", "", "8:1", "a part has no `name`"},
      {"solid = { plate = [150, 110, 1.2] }\n", "", "8:1", "neither `use` nor `solid`"},
      {under, "", "8:1", "`tray` has no place"},
      {under, "under = { part = \"board\" }\n", "11:9", "`under` has no `by`"},
      {under, "beside = { part = \"board\", by = 3 }\n", "11:10", "`beside` has no `side`"},
      {", toward = \"+x\"", "", "15:11", "`on` has no `toward`"},
      {"lengths = [2280]\n", "", "13:1", "a slot has no `lengths`"},
      {tray, "{ }", "10:9", "no form"},
      {tray, "{ plate = [150, 110, 1.2], box = [1, 2, 3] }", "10:42", "two forms"},
      {"\"fin-heatsink-3\"", "{ length = 70, width = 22, height = 3, fins = 9 }", "24:65", "a heatsink has no `base`"},
      {"", "\n[[apart]]\nbetween = [\"card\", \"tray\"]\n", "26:1", "has no `clearance`"},
  });
}

TEST_CASE("a table that is missing is named") {
  const std::string bench = test::source_text("tests/commands/data/bench.build.toml");
  const std::size_t part = bench.find("[[part]]");
  const std::size_t slot = bench.find("[[slot]]");
  const std::size_t drive = bench.find("[[drive]]");
  const std::string place = "x.build.toml:1:1: ";
  test::check_refused(checked(bench.substr(0, part) + bench.substr(slot)), 2, place, "no part; begin with [[part]]");
  test::check_refused(checked(bench.substr(0, slot) + bench.substr(drive)), 2, place,
                      "no place for a drive; add a [[slot]]");
  test::check_refused(checked(bench.substr(0, drive)), 2, place, "no drive; add a [[drive]]");
}

TEST_CASE("slips of lengths") {
  check_slips({
      {by, "\"9.1 ±0.2 furlongs\"", "11:42", "an unknown unit; write mm, cm, in"},
      {by, "9.1 ±0.2", "11:36", "the character `±` (U+00B1) stands outside quotes; put a text or a length"},
      {by, "\"9,1\"", "11:34", "a decimal comma; write a decimal point"},
      {by, "nan", "11:32", "not a usable figure"},
      {by, "inf", "11:32", "not a usable figure"},
      {by, "-inf", "11:32", "not a usable figure"},
      {by, "\"nan\"", "11:33", "no figure"},
      {by, "\"inf\"", "11:33", "no figure"},
      {by, "1e308", "11:32", "-100000 and 100000 mm"},
      {by, "\"1e308\"", "11:34", "an unknown unit"},
      {by, "\"99999999999999999999\"", "11:33", "beyond 100000 mm"},
      {by, "-9.1", "11:32", "must not be negative"},
      {by, "true", "11:32", "write a number in mm"},
      {by, "{ length = \"9.1\", known = \"guess\" }", "11:58", "no way of knowing"},
      {"1.2]", "-1.2]", "10:30", "-1.20 mm; it must be more than nothing"},
      {"1.2]", "0]", "10:30", "0.00 mm; it must be more than nothing"},
      {"1.2]", "\"1.2 ±1.2\"]", "10:30", "its lower limit must be more than nothing"},
      {"1.2]", "nan]", "10:30", "not a usable figure"},
      {"clearance = 0.5", "clearance = -1", "2:13", "it must be 0 or more"},
      {"clearance = 0.5", "clearance = nan", "2:13", "not a usable figure"},
      {"150, 110, 1.2]", "\"?\", 110, \"?\"]", "10:30", "`tray thickness` is a second \"?\", beside `tray length`"},
  });
}

TEST_CASE("slips of solids") {
  check_slips({
      {tray, "{ prism = { outline = [[0,0],[10,10],[10,0],[0,10]], height = 2 } }", "10:9",
       "the outline crosses itself near (5.00, 5.00)"},
      {tray, "{ prism = { outline = [[0,0],[10,10]], height = 2 } }", "10:31", "at least three points"},
      {tray, "{ prism = { outline = [[0,0],[10,0],[20,0]], height = 2 } }", "10:31", "lies on one line"},
      {tray, "{ prism = { outline = [[0,0],[10,10],[0,nan]], height = 2 } }", "10:46", "not a usable pair"},
      {tray, "{ prism = { outline = [[0,0],[9,0],[0,9]], holes = [[[20,1],[21,1],[20,2]]], height = 2 } }", "10:9",
       "hole 1"},
      {tray, "{ cylinder = { diameter = 5, height = 3, bore = 6 } }", "10:9", "leaves no wall"},
      {tray, "{ cylinder = { diameter = 5, height = 3, bore = \"4.95 ±0.1\" } }", "10:9", "leaves no wall"},
      {"\"fin-heatsink-3\"", "{ length = 70, width = 22, height = 3, fins = 9, base = 4 }", "24:65", "no solid"},
      {"\"fin-heatsink-3\"", "{ length = 70, width = 22, height = 3, base = 1 }", "24:111", "without fins has no base"},
      {"\"fin-heatsink-3\"", "{ length = 70, width = 22, height = 3, base = 1, fins = 61 }", "24:121", "from 0 to 60"},
  });
}

TEST_CASE("slips of places and names") {
  check_slips({
      {"name  = \"tray\"", "name  = \"board\"", "9:9", "the name `board` is taken"},
      {"name  = \"card\"", "name  = \"rear slot\"", "21:9", "the name `rear slot` is taken"},
      {"under = { part = \"board\"", "under = { part = \"tray\"", "8:1", "hangs on itself in a circle"},
      {"under = { part = \"board\"", "under = { part = \"bord\"", "11:18", "did you mean `board`?"},
      {"under = { part = \"board\"", "under = { part = \"ceiling\"", "11:18", "the parts are board or tray"},
      {under, "under = { part = \"board\", by = 9 }\nabove = { part = \"board\", by = 9 }\n", "12:9", "placed twice"},
      {under, "beside = { part = \"board\", by = 3, side = \"x\" }\n", "11:43", "it must be +x, -x, +y or -y"},
      {under, "on = { part = \"board\", face = \"front\" }\n", "11:31", "top or back"},
      {under, "on = { part = \"board\", by = 3 }\n", "11:24", "`on` knows no key `by`"},
      {under, "at = [0, 0]\n", "11:6", "it must have 3"},
      {under, "at = [0, 0, 0]\nturn = 45\n", "12:8", "0, 90, 180 or 270"},
      {"solid = { plate = [180, 110, 1.6] }",
       "solid = { plate = [180, 110, 1.6] }\nunder = { part = \"tray\", by = 3 }", "7:9",
       "the first part is the world"},
      {"on      = { part = \"board\"", "on      = { part = \"tary\"", "15:20", "did you mean `tray`?"},
      {"[45.0, 55.0]", "[45.0, 155.0]", "15:49",
       "the place's y lies off its part, at 155.00; it must lie from 0.00 to 110.00"},
      {"[45.0, 55.0]", "[-1, 55.0]", "15:49",
       "the place's x lies off its part, at -1.00; it must lie from 0.00 to 180.00"},
      {"[45.0, 55.0]", "[nan, 55.0]", "15:50", "not a usable figure"},
      {"\"back\"", "\"left\"", "15:36", "it must be top, back, +x, -x, +y or -y"},
      {"toward = \"+x\"", "toward = \"+z\"", "15:72", "it must be +x, -x, +y or -y"},
      {"", "\n[[apart]]\nbetween = [\"card\", \"try\"]\nclearance = 1\n", "27:11", "did you mean `tray`?"},
      {"", "\n[[apart]]\nbetween = [\"card\"]\nclearance = 1\n", "27:11", "does not name two parts"},
      {"", "\n[[apart]]\nbetween = [\"card\", \"rear slot\"]\nclearance = 1\n", "27:11", "`rear slot socket`"},
      {"", "\n[[apart]]\nbetween = [\"card\", \"tray\"]\nclearance = -1\n", "28:13", "0 or more"},
  });
}

TEST_CASE("slips of what the library and the standard know") {
  check_slips({
      {"solid = { plate = [150, 110, 1.2] }", "use   = \"board/mini-itxx\"", "10:9", "did you mean `board/mini-itx`?"},
      {"\"fin-heatsink-3\"", "\"fin-heatsink-33\"", "24:65", "did you mean `fin-heatsink-3`?"},
      {"\"fin-heatsink-3\"", "\"board/mini-itx\"", "24:65", "name a heatsink"},
      {"\"m2/2280-S2-M\"", "\"2.5inch\"", "22:9", "did you mean `2.5in`, `2.5in/5` or `2.5in/7`?"},
      {"\"m2/2280-S2-M\"", "\"m2/2281-S2-M\"", "22:9", "no M.2 card has length 81"},
      {"\"m2/2280-S2-M\"", "\"m2/2280-S9-M\"", "22:9", "codes are S1 S2 S3"},
      {"\"m2/2280-S2-M\"", "\"m2/2280-S2-X\"", "22:9", "keys are"},
      {"\"m2/2280-S2-M\"", "\"m2/2280-?-M\"", "22:9", "give `top`"},
      {"m2/M/H4.2", "m2/M/H4.3", "16:11", "the classes are H2.3, H2.5, H2.8, H3.2 or H4.2"},
      {"m2/M/H4.2", "m2/Z/H4.2", "16:11", "there is no key Z"},
      {"m2/M/H4.2", "usb", "16:11", "names no socket"},
      {"[2280]", "[2281]", "17:11", "there is no card size 2281"},
      {"[2280]", "[]", "17:11", "`lengths` is empty"},
      {"[2280]", "2280", "17:11", "it must be a list"},
      {"lengths = [2280]", "lengths = [2280]\nsoldered = [2242]", "18:12", "2242 is not among `lengths`"},
      {"m2/M/H4.2", "pcie/x4", "17:11", "a PCIe slot has no `lengths`"},
      {"[\"pcie 4.0 x4\"]", "[\"pcie 9 x4\"]", "18:11", "no such PCIe generation"},
      {"[\"pcie 4.0 x4\"]", "\"usb\"", "18:11", "neither PCIe, SATA nor SAS"},
      {"[\"pcie 4.0 x4\"]", "[]", "18:11", "`bus` is empty"},
      {"bus   = \"pcie 4.0 x4\"", "bus   = [\"pcie 4.0 x4\", \"sata 6\"]", "23:9", "a drive speaks one bus"},
      {"30 %", "95 %", "24:42", "from 0 to 90 %"},
      {"\"30 %\"", "\"nan\"", "24:42", "from 0 to 90 %"},
      {"\"30 %\"", "30", "24:42", "with its sign"},
      {wears, "wears = [ {} ]\n", "24:11", "neither a pad nor a heatsink"},
      {wears, "wears = [ { heatsink = \"fin-heatsink-3\" }, { pad = 1 } ]\n", "24:52", "from the card outward"},
      {"wears =", "is = \"cach\"\nwears =", "24:6", "it must be drive or cache module"},
      {"clearance = 0.5", "method = \"best\"", "2:10", "\"worst\", \"rss\" or \"sampled\""},
      {"clearance = 0.5", "measured_with = \"tape\"", "2:17", "\"caliper\" or \"rule\""},
      {"clearance = 0.5", "shelf.spacers = []", "2:17", "`spacers` is empty"},
      {"clearance = 0.5", "shelf.spacers = [3, 5, 3.0]", "2:17", "spacers of 3.00 are listed twice"},
      {"clearance = 0.5", "shelf.spacers = [0]", "2:17", "is none"},
      {"clearance = 0.5", "shelf.screws = [\"M3 x 6\", \"m3 x 6.0\"]", "2:16", "listed twice"},
      {"clearance = 0.5", "shelf.screws = [\"M3 x 6 ±1\"]", "2:16", "no length of a screw"},
      {"clearance = 0.5", "shelf.screws = [\"M3x6\", \"M3 x 6\"]", "2:16", "listed twice"},  // the same screw
      {"clearance = 0.5", "shelf.screws = [\"4 x M3 x 6\"]", "2:16", "leave the count out: \"M3 x 6\""},
      {"clearance = 0.5", "shelf.screws = [\"M9 x 6\"]", "2:16", "there is no thread `M9`"},
      {"clearance = 0.5", "shelf.heatsinks = [\"fin-heatsnk-4\"]", "2:19", "fin-heatsink-4"},
  });
}

TEST_CASE("a fault in a part file is told there") {
  const test::Folder folder;
  folder.write("bent.part.toml", test::source_text("tests/commands/data/bent.part.toml"));
  folder.write("x.build.toml",
               test::with(test::source_text("tests/commands/data/bench.build.toml"), "\"fin-heatsink-3\"", "\"bent\""));
  test::check_refused(folder.run({"check", "x.build.toml"}), 2, "./bent.part.toml:3:12: ", "no solid");
}

TEST_CASE("a part file beside the build comes before the library's") {
  const test::Folder folder;
  const std::string bench = test::source_text("tests/commands/data/bench.build.toml");
  folder.write("x.build.toml", bench);
  folder.write("fin-heatsink-3.part.toml", "title = \"Lower\"\nheatsink = { length = 70, width = 22, height = 1 }\n");
  CHECK(folder.run({"check", "x.build.toml"}).status == 0);  // 1 mm in place of 3: two more millimetres of room
}

TEST_CASE("fifty thousand parts that hang on each other are no trouble") {
  std::string text = "title = \"A tall pile\"\n[[part]]\nname = \"p0\"\nsolid = { box = [9, 9, 9] }\n";
  for (int i = 1; i <= 50'000; ++i)
    text += "[[part]]\nname=\"p" + std::to_string(i) + "\"\nsolid={box=[1,1,1]}\non={part=\"p" +
            std::to_string(i % 50'000 + 1) + "\"}\n";
  const test::Run run = checked(text);
  test::check_refused(run, 2, "x.build.toml:", "hangs on itself in a circle");
}
