// What is wrong about bays, panels, fixings, links, adapters and drives of all forms is said once, at its place, with
// what would be right. The lines and columns are where the slip stands in data/bays.build.toml, in characters.
#include "commands/slips.h"

#include <doctest/doctest.h>

using namespace baywright;
using test::check_slips;

namespace {

constexpr const char* bays = "bays.build.toml";

}  // namespace

TEST_CASE("the bench of bays itself is taken") {
  const test::Run run = test::checked(test::source_text("tests/commands/data/bays.build.toml"));
  CHECK(run.err == "");
  CHECK(run.status == 1);  // the ruler has no bay
}

TEST_CASE("what the standards do not list is refused with what they do") {
  check_slips(
      bays,
      {
          {"\"2.5in/7\"", "\"2.5in/8\"", "35:9", "lists no height `8` for a 2.5-inch drive; it lists 5, 7, 8.47, 9.5"},
          {"\"2.5in/7\"", "\"2.5in/\"", "35:9", "lists no height ``"},
          {"\"e1s/9.5\"", "\"e1s/9\"", "41:8", "did you mean `e1s/8`, `e1s/5.9` or `e1s/9.5`?"},
          {"\"e1s/9.5\"", "\"e2/9.5\"", "41:8", "did you mean `e1s/9.5`, `e1l/9.5` or"},
          {"\"3.5in\"", "\"3in\"", "18:10", "there is no bay for `3in`; did you mean `3.5in`, `2.5in` or"},
          {"\"3.5in\"", "\"e2\"", "18:10", "there is no bay for `e2`; did you mean `e1"},
          {"\"pcie/x8\"", "\"pcie/x2\"", "10:10", "did you mean `pcie/x1`, `pcie/x4` or `pcie/x8`?"},
          {"\"pcie/x8\"", "\"mini card\"", "10:10", "did you mean `mini card/"},
          {"\"M3\"", "\"M5\"", "31:95",
           "there is no thread `M5`; the threads are M1.6, M2, M2.5, M3, M3.5, M4, 4-40 or 6-32"},
          {"\"laser\"", "\"saw\"", "31:78",
           "no way of making holes; it must be hand drill, drill press, laser or print"},
          {"\"adapter/2.5in-in-3.5in\"", "\"adapter/2.5-in-3.5\"", "37:22", "did you mean `adapter/2.5in-in-3.5in`,"},
          {"\"adapter/2.5in-in-3.5in\"", "\"adapter/m2-on-x4\"", "37:22",
           "takes an M.2 card, and this is a 2.5-inch drive"},
          {"bus    = \"sata 6\"", "bus    = \"sas 24\"", "22:10",
           "no such SAS rate; write the rate in Gb/s: \"sas 3\", \"sas 6\" or \"sas 12\""},
      });
}

TEST_CASE("a bay that contradicts itself") {
  check_slips(
      bays,
      {
          {"height = 30", "height = 2", "19:10", "the bay is 2.00 high and its drive stands 2.00 over the floor"},
          {"width = 103", "width = 50", "19:10",
           "50.00 wide, less than half of its drive; such a drive is 101.60 wide"},
          {"depth = 150", "depth = 132", "23:10", "hole 2 lies beyond the bay's depth of 132.00"},
          {"height = 30", "height = 10.3", "23:10", "hole 1 lies over the bay's height of 10.30"},
          {"through = \"sides\", holes = [[28.5, 6.35], [130.1, 6.35]]", "holes = [[28.5, -50]]", "23:10",
           "hole 1 lies outside the bay's width of 103.00"},
          {"[130.1, 6.35]", "[130.1, -3]", "23:10", "hole 2 lies under the bay's floor, at -3.00"},
          {"[28.5, 6.35]", "[-28.5, 6.35]", "23:10", "hole 1 lies before the drive's end, at -28.50"},
          {"[130.1, 6.35]", "[30.5, 6.35]", "23:10", "hole 2 runs into hole 1"},
          {"cable  = 30", "cable  = 30\nbackplane = true", "21:10", "a bay with a backplane has no cable"},
          {"cable  = 30", "backplane = true\nspacers = 2", "22:11", "the drive is raised twice"},
          {"depth = 150 }\nraised = 2\ncable  = 30", "behind = 50 }\nbackplane = true", "19:10",
           "a backplane leaves no room behind"},
          {"raised = 2", "stands = \"on edge\"", "23:22", "is screwed through the floor at its side holes"},
          {"takes  = \"3.5in\"", "takes  = \"e1s\"", "21:10", "a bay with a backplane has no cable"},
          {"takes  = \"3.5in\"", "takes  = \"e1s\"\nbackplane = false", "24:10", "no holes of EDSFF drives are known"},
      });
}

TEST_CASE("a panel that contradicts itself") {
  check_slips(bays,
              {
                  {"holes = [[14, -30.86], [90.6, 30.86]]", "holes = []", "31:21", "`holes` is empty"},
                  {"[[14, -30.86], [90.6, 30.86]]", "[14, -30.86]", "31:22",
                   "a point of this list is not a pair; it must list pairs [a, b] in mm"},
                  {"[90.6, 30.86]", "[90.6]", "31:36", "not a pair"},
                  {"[90.6, 30.86]", "[90.6, nan]", "31:36", "not a usable pair of figures"},
                  {"diameter = 3.4", "diameter = 3,4", "31:66", "valid TOML"},
                  {"diameter = 3.4", "diameter = \"3,4\"", "31:65", "a decimal comma; write a decimal point"},
                  {"diameter = 3.4", "diameter = 3.0", "31:63", "a screw M3, 3.00 thick, does not pass a hole of 3.00"},
                  {"drilled = \"laser\"", "through = \"sides\"", "31:78", "a panel has no sides"},
                  {"screw = \"M3\", ", "", "31:96", "a screw has a thread"},
                  {"length = 8, sheet = 1.2", "length = 8", "31:11", "`fixing` has no `sheet`"},
                  {"spacers = 5", "inside = { height = 20 }", "29:10", "a panel has no inside"},
                  {"takes   = \"2.5in\"", "takes   = \"5.25in\"", "28:11",
                   "only 2.5in and 3.5in drives are screwed to a panel"},
                  {"fixing  = { holes = [[14", "fixin  = { holes = [[14", "31:1", "did you mean `fixing`?"},
              });
}

TEST_CASE("spacers without holes, and places without what they need") {
  check_slips(
      bays,
      {
          {"fixing = { through = \"sides\", holes = [[28.5, 6.35], [130.1, 6.35]], diameter = 4.0, sheet = 1.0 }\n",
           "standoffs = 5\n", "23:13", "raised twice"},
          {"raised = 2\ncable  = 30\nbus    = \"sata 6\"\nfixing = { through = \"sides\", holes = [[28.5, 6.35], "
           "[130.1, 6.35]], diameter = 4.0, sheet = 1.0 }\n",
           "bus = \"sata 6\"\nspacers = 5\n", "21:11", "stand at holes; add `fixing`"},
          {"takes  = \"3.5in\"\n", "", "15:1", "a bay has no `takes`"},
          {"\"pcie/x8\"\nsplits = [4, 4]", "\"mini card/half\"", "7:1", "`card slot` has no `standoff`"},
          {"splits = [4, 4]", "standoff = 2", "11:12", "a PCIe slot has no `standoff`"},
          {"cable  = 30", "lengths = [2280]", "21:1", "a bay knows no key `lengths`"},
      });
}

TEST_CASE("links that are split and shared") {
  check_slips(
      bays,
      {
          {"splits = [4, 4]", "splits = [4, 4, 4]", "11:10", "the links have 12 lanes together, the slot's body has 8"},
          {"splits = [4, 4]", "splits = [3, 4]", "11:10", "a link has no 3 lanes; list links of 1, 2, 4 or 8 lanes"},
          {"with = \"cage\"", "with = \"cag\"", "13:20", "no other place; did you mean `cage`"},
          {"with = \"cage\"", "with = \"card slot\"", "13:20",
           "which is no other place; did you mean `spot` or `cage`?"},
          {"with = \"cage\", ", "", "13:11", "what a place shares has no `with`"},
          {"leaves = \"nothing\"", "leaves = \"half\"", "13:37", "neither PCIe, SATA nor SAS"},
          {"leaves = \"nothing\" }", "leaves = \"nothing\" }, { with = \"cage\" }", "13:59", "`cage` is listed twice"},
      });
}

TEST_CASE("plugs that do not speak the bus") {
  check_slips(bays,
              {
                  {"bus   = \"sata 6\"", "bus   = \"sata 6\"\nplug = \"u2\"", "37:8",
                   "does not speak SATA 6 Gb/s; sata speaks SATA, sas SAS, u2 and u3 PCIe"},
                  {"bus   = \"sata 6\"", "bus   = \"sas 12\"\nplug = \"sata\"", "37:8", "does not speak SAS 12 Gb/s"},
                  {"bus   = \"sata 6\"", "bus   = \"sata 6\"\nplug = \"esata\"", "37:8",
                   "`esata` is no plug; it must be sata, sas, u2 or u3"},
                  {"use   = \"2.5in/7\"\nbus   = \"sata 6\"\nwears = [{ adapter = \"adapter/2.5in-in-3.5in\" }]",
                   "use   = \"3.5in/26.1\"\nbus   = \"pcie 4.0 x4\"", "36:9", "a 3.5-inch drive does not speak PCIe"},
                  {"\"e1s/9.5\"\nbus  = \"pcie 4.0 x4\"", "\"e1s/9.5\"\nbus  = \"sata 6\"", "42:8",
                   "an E1.S drive speaks PCIe"},
                  {"cable  = 30", "plug   = \"esata\"", "21:10", "`esata` is no plug"},
                  {"use  = \"e1s/9.5\"", "use  = \"2.5in/15\"\nplug = \"sas\"", "42:8", "does not speak PCIe 4.0 x4"},
              });
}

TEST_CASE("keys of another form of drive") {
  check_slips(
      bays,
      {
          {"use  = \"e1s/9.5\"", "use  = \"e1s/9.5\"\nplug = \"u2\"", "42:8", "an E1.S drive has no `plug`"},
          {"use   = \"2.5in/7\"", "use   = \"2.5in/7\"\ntop   = 2", "36:9", "a 2.5-inch drive has no `top`"},
          {"use   = \"2.5in/7\"", "use   = \"2.5in/7\"\nslots = 2", "36:9", "a 2.5-inch drive has no `slots`"},
          {"use  = \"e1s/9.5\"", "use  = \"add-in card/x4\"\nrows = [\"row 1\"]", "42:8",
           "an add-in card has no `rows`"},
          {"use  = \"e1s/9.5\"", "use  = \"add-in card/x4\"\nslots = 2\ntop = 20", "42:9",
           "the card's width is given twice"},
          {"use  = \"e1s/9.5\"", "use  = \"add-in card/x4\"\nslots = 9", "42:9", "a card is not 9.00 slots wide"},
          {"use  = \"e1s/9.5\"", "use  = \"m2/2280-D2-M\"\nbracket = \"low\"", "42:11",
           "an M.2 card has no bracket; take it out, or let it wear a carrier"},
          {"use  = \"e1s/9.5\"", "use  = \"m2/2280-D2-M\"\nheight = 2", "42:10", "an M.2 card has no `height`"},
          {"use  = \"e1s/9.5\"", "use  = \"msata\"\nlength = 50", "42:10", "a mini card has no `length`"},
          {"use  = \"e1s/9.5\"\nbus  = \"pcie 4.0 x4\"", "use  = \"3.5in/26.1\"\nbus  = \"sata 6\"\nold = true", "43:7",
           "a 3.5-inch drive has no `old`"},
          {"use   = \"2.5in/7\"", "use   = \"2.5in/7\"\nold = true\nlength = 101", "36:7",
           "the drive's length is given twice"},
          {"use   = \"2.5in/7\"", "use   = \"2.5in/7\"\nrows = [\"row 3\"]", "36:8",
           "there is no `row 3` on a 2.5-inch drive, 7 mm; its rows are row 1, row 2, side hole 1 or side hole 2"},
          {"{ adapter = \"adapter/2.5in-in-3.5in\" }", "{ adapter = \"adapter/2.5in-in-3.5in\", position = 2 }",
           "37:59", "`adapter/2.5in-in-3.5in` holds one drive"},
          {"{ adapter = \"adapter/2.5in-in-3.5in\" }", "{ adapter = \"adapter/2.5in-in-3.5in\", compress = \"30 %\" }",
           "37:59", "an adapter has no `compress`"},
          {"{ adapter = \"adapter/2.5in-in-3.5in\" }",
           "{ adapter = \"adapter/2.5in-in-3.5in\" }, { adapter = \"adapter/2.5in-in-3.5in\" }", "37:62",
           "the drive wears two adapters"},
          {"{ adapter = \"adapter/2.5in-in-3.5in\" }", "{ pad = 1 }", "37:9", "`disk` is no M.2 card"},
          {"{ adapter = \"adapter/2.5in-in-3.5in\" }", "{ adapter = \"adapter/u2-on-m2\", raised = 3 }", "37:51",
           "`adapter/u2-on-m2` does not raise its drive"},
      });
}

TEST_CASE("what sits at a place already must be of its form") {
  check_slips(
      bays,
      {
          {"cable  = 30", "holds = { name = \"there\", use = \"2.5in/7\" }", "21:33",
           "the place takes a 3.5-inch drive and cannot hold a 2.5-inch drive, 7 mm"},
          {"cable  = 30", "holds = { name = \"there\", use = \"3.5in\" }", "21:33", "how high `there` is was not said"},
          {"cable  = 30", "holds = { name = \"there\", use = \"soldered\" }", "21:33", "cannot hold a soldered chip"},
          {"splits = [4, 4]", "holds = { name = \"there\", use = \"add-in card/x16\" }", "11:33",
           "an x16 card does not go into an x8 slot that is closed at its end"},
          {"\"pcie/x8\"\nsplits = [4, 4]",
           "\"mini card/half\"\nstandoff = 2.7\nholds = { name = \"there\", use = \"mini card/full\" }", "12:33",
           "the socket has no posts for a full card"},
          {"\"pcie/x8\"\nsplits = [4, 4]",
           "\"m2/M/H4.2\"\nlengths = [2242]\nholds = { name = \"there\", use = \"m2/2280-D2-M\" }", "12:33",
           "the place has no stand-off for a 2280"},
          {"cable  = 30", "holds = { name = \"there\", use = \"3.5in/26.1\", plug = \"sata\" }", "21:54",
           "a plug whose `bus` is not said"},
          {"cable  = 30", "holds = { name = \"disk\", use = \"3.5in/26.1\" }", "34:9", "the name `disk` is taken"},
      });
}
