// `new`, `parts`, help.
#include "commands/run.h"

#include <algorithm>
#include <doctest/doctest.h>

using namespace baywright;

TEST_CASE("a new build file is taken by check as it is") {
  for (const std::string kind : {"under-tray", "compare", "bay", "panel"}) {
    CAPTURE(kind);
    const test::Folder folder;
    const test::Run made = folder.run({"new", kind, "-o", "my.build.toml"});
    CHECK(made.status == 0);
    CHECK(made.err == "");
    CHECK(made.out.find("my.build.toml") != std::string::npos);
    CHECK(folder.names() == std::vector<std::string>{"my.build.toml"});
    const test::Run run = folder.run({"check", "my.build.toml"});
    CHECK((run.status == 0 || run.status == 1));
    CHECK(run.err == "");
    CHECK(run.out.find("Taken as exact: ") == std::string::npos);
    CHECK(folder.run({"new", kind, "-o", "-"}).out == folder.read("my.build.toml"));
    CHECK(folder.read("my.build.toml").find("power off") != std::string::npos);  // the caution, where measuring begins
  }
}

TEST_CASE("parts are found by words, and one that is left is shown with limits, source and how it is known") {
  const test::Folder folder;
  const test::Run all = folder.run({"parts"});
  CHECK(all.status == 0);
  for (const std::string each : {"board/mini-itx", "fin-heatsink-3", "m2/M/H4.2", "m2/SIZE-HEIGHT-KEYS"})
    CHECK(all.out.find(each) != std::string::npos);
  const test::Run fins = folder.run({"parts", "FIN", "heatsink"});
  CHECK(fins.out.find("fin-heatsink-4") != std::string::npos);
  CHECK(fins.out.find("flat-spreader") == std::string::npos);
  const test::Run one = folder.run({"parts", "flat", "spreader"});
  CHECK(one.out.find("invented for the demo builds") != std::string::npos);
  // PCI-SIG M.2 Specification Rev 1.0, Table 2 and Figures 3 and 4.
  const test::Run card = folder.run({"parts", "m2/2280-D2-M"});
  CHECK(card.status == 0);
  for (const std::string each :
       {"card thickness", "0.80 ±0.08", "22.00 ±0.15", "80.00 ±0.15", "1.25 ±0.10", "Table 2", "(read)"}) {
    CAPTURE(each);
    CHECK(card.out.find(each) != std::string::npos);
  }
  folder.write("my-plate.part.toml",
               "title = \"My plate\"\nsource = \"its drawing\"\nsolid = { box = [1, 2, \"3 ±0.5\"] }\n");
  const test::Run own = folder.run({"parts", "my-plate"});
  CHECK(own.out.find("3.00 ±0.50") != std::string::npos);
  CHECK(own.out.find("its drawing") != std::string::npos);
}

TEST_CASE("words find a part in any order, and a figure counts as a whole") {
  const test::Folder folder;
  const test::Run one = folder.run({"parts", "3mm", "HEATSINK"});
  CHECK(one.status == 0);
  CHECK(one.out.starts_with("fin-heatsink-3: "));
  CHECK(folder.run({"parts", "heatsink", "3", "mm"}).out == one.out);
  CHECK(folder.run({"parts", "heatsink", "3.0"}).out == one.out);
  const test::Run none = folder.run({"parts", "fin", "heatsink", "1"});  // there is a 14, and no 1
  CHECK(none.status == 2);
  CHECK(none.out == "");
  const test::Run several = folder.run({"parts", "M.2", "socket", "class"});
  CHECK(several.out.starts_with("5 parts\n"));  // PCI-SIG M.2 Specification Rev 1.0, Table 10: H2.3 to H4.2
  test::check_refused(folder.run({"parts", "fin-heatsnk-3"}), 2, "baywright: ", "did you mean `fin-heatsink-3`?");
}

TEST_CASE("a part's screen keeps to 100 columns, and to a screen where it can") {
  const test::Folder folder;
  for (const std::string part : {"board/atx", "board/mini-itx", "m2/2280-D2-M", "m2/M/H4.2", "fin-heatsink-14"}) {
    CAPTURE(part);
    const std::vector<std::string> shown = test::lines(folder.run({"parts", part}).out);
    CHECK(shown.size() > 3);
    CHECK(shown.size() <= 24);
    for (const std::string& line : shown) {
      CAPTURE(line);
      CHECK(std::count_if(line.begin(), line.end(), [](char c) { return (c & 0xC0) != 0x80; }) <= 100);
    }
  }
  // Two sources that disagree: the addendum says 170, other pages 170.18, which is 6.7 in.
  CHECK(folder.run({"parts", "board/mini-itx"}).out.find("another source: 170.18") != std::string::npos);
}

TEST_CASE("one part is drawn, and of several it is asked which") {
  const test::Folder folder;
  const test::Run drawn = folder.run({"parts", "flat", "2mm", "--draw", "flat.svg"});
  CHECK(drawn.status == 0);
  CHECK(drawn.out == "drew flat-spreader-2: flat.svg\n");
  CHECK(folder.names() == std::vector<std::string>{"flat.svg"});
  const std::string svg = folder.read("flat.svg");
  CHECK(svg.find("2.00 ±0.10") != std::string::npos);
  CHECK(svg.find("first angle") != std::string::npos);
  CHECK(folder.run({"parts", "flat-spreader-2", "--draw", "-"}).out == svg);
  test::check_refused(folder.run({"parts", "fin", "--draw", "fin.svg"}), 2,
                      "baywright: ", "name `fin-heatsink-14`, `fin-heatsink-3` or `fin-heatsink-4`");
  test::check_refused(folder.run({"parts", "m2/SIZE", "--draw", "m2.svg"}), 2, "baywright: ", "name one");
  test::check_refused(folder.run({"parts", "flat", "--draw", "flat.png"}), 2, "baywright: flat.png: ", ".svg");
  test::check_refused(folder.run({"parts", "--draw", "all.svg"}), 2, "baywright: ", "WORDS");
  test::check_refused(folder.run({"parts", "flat-spreader-2", "--draw", "nowhere/flat.svg"}), 3,
                      "baywright: nowhere/flat.svg: ", "No such file");
  CHECK(folder.names() == std::vector<std::string>{"flat.svg"});
}

TEST_CASE("the sources of every dimension are listed and counted, those of one's own parts apart") {
  const test::Folder folder;
  folder.write("my-plate.part.toml", "title = \"My plate\"\nsolid = { box = [1, 2, 3] }\n");
  const test::Run run = folder.run({"parts", "--sources"});
  CHECK(run.status == 0);
  CHECK(run.out.find("  PCI-SIG M.2 Specification Rev 1.0 (2013), Table 2 and Figure 15 (read)\n") !=
        std::string::npos);
  CHECK(run.out.find("flat-spreader-2: heatsink height") != std::string::npos);
  CHECK(run.out.find("my-plate") == std::string::npos);
  REQUIRE(!run.out.empty());
  const std::string last = test::lines(run.out).back();
  for (const std::string word :
       {" dimensions: ", " read", " secondary", " practice", " memory", " measured", " derived"}) {
    CAPTURE(word);
    CHECK(last.find(word) != std::string::npos);
  }
  test::check_refused(folder.run({"parts", "--sources", "flat"}), 2, "baywright: ", "--sources");
}

TEST_CASE("each command has help with an example") {
  const test::Folder folder;
  CHECK(folder.run({"--help"}).out.find("baywright new under-tray") != std::string::npos);
  CHECK(folder.run({"--version"}).out.starts_with("baywright "));
  for (const std::string command : {"check", "explain", "draw", "parts", "new"}) {
    CAPTURE(command);
    const test::Run run = folder.run({command, "--help"});
    CHECK(run.status == 0);
    CHECK(run.err == "");
    CHECK(run.out.find("Example") != std::string::npos);
    CHECK(run.out.find("baywright " + command + " ") != std::string::npos);
  }
  CHECK(folder.run({"check", "--help"}).out.find("Exit status") != std::string::npos);
}

TEST_CASE("what `new` starts from is the common card: 80 long, its screw at the hole marked 80") {
  // Common practice, no source: most cards are 80 long, and most boards come with the screw there.
  const test::Folder folder;
  const std::string text = folder.run({"new", "under-tray", "-o", "-"}).out;
  CHECK(text.find("use   = \"m2/2280-") != std::string::npos);
  CHECK(text.find("lengths = [2280]") != std::string::npos);
}
