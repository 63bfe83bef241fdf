// `new`, `parts`, help.
#include "commands/run.h"

#include <doctest/doctest.h>

using namespace baywright;

TEST_CASE("a new build file is taken by check as it is") {
  for (const std::string kind : {"under-tray", "compare"}) {
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
