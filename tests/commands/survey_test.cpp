// Many drives in many machines: the same lines however the run was cut up, and the answers that `check` gives.
#include "commands/run.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <filesystem>
#include <fstream>

using namespace baywright;

namespace {

const std::string list =
    "name,use,bus,pad,compress,heatsink\n"
    "plain card,m2/2280-S3-M,pcie 4.0 x4,,,\n"
    "\"card, with fins\",m2/2280-S3-M,pcie 4.0 x4,1.0 ±0.1,30 %,fin-heatsink-3\n"
    "short card,m2/2242-S2-M,pcie 4.0 x4,,,\n"
    "the same short card,m2/2242-S2-M,pcie 4.0 x4,,,\n"
    "2.5-inch drive,2.5in/7,sata 6,,,\n"
    "\"it is called \"\"board\"\"\",m2/2280-S3-M,pcie 4.0 x4,,,\n";

/// Two demo machines and a list.
void prepare(const test::Folder& folder) {
  std::filesystem::create_directory(folder.path() / "machines");
  for (const char* name : {"laptop", "thin-desktop", "seven-mm-bay"})
    folder.write(std::string("machines/") + name + ".build.toml",
                 test::source_text(std::string("models/builds/") + name + ".build.toml"));
  folder.write("drives.csv", list);
}

}  // namespace

TEST_CASE("a survey has one line a drive, place and machine, and answers as check does") {
  const test::Folder folder;
  prepare(folder);
  const test::Run run = folder.run({"survey", "machines", "drives.csv", "--json-lines"});
  CHECK(run.status <= 1);
  CHECK(run.err.empty());
  const std::vector<std::string> lines = test::lines(run.out);
  // laptop and seven-mm-bay have 2 places, thin-desktop 1; six drives.
  CHECK(lines.size() == 6 * 5);
  const auto count = [&](const std::string& part) {
    return std::count_if(lines.begin(), lines.end(),
                         [&](const std::string& line) { return line.find(part) != std::string::npos; });
  };
  // What README.md says of the thin desktop: this card with low fins is marginal.
  CHECK(count("\"host\":\"thin-desktop.build.toml\",\"drive\":\"card, with fins\",\"place\":\"rear slot\",\"verdict\":"
              "\"marginal\"") == 1);
  CHECK(count("\"host\":\"thin-desktop.build.toml\",\"drive\":\"2.5-inch drive\",\"place\":\"rear slot\",\"verdict\":"
              "\"does not fit\"") == 1);
  CHECK(count("\"drive\":\"it is called \\\"board\\\"\"") == 5);
}

TEST_CASE("a drive that has the name of a part of the machine is still held against it") {
  const test::Folder folder;
  prepare(folder);
  folder.write("tray.csv",
               "name,use,bus,pad,compress,heatsink\ntray,m2/2280-S3-M,pcie 4.0 x4,1.0 ±0.1,30 %,fin-heatsink-3\n");
  const test::Run run = folder.run({"survey", "machines/thin-desktop.build.toml", "tray.csv", "--json-lines"});
  CHECK(run.out.find("\"verdict\":\"marginal\"") != std::string::npos);
}

TEST_CASE("a survey that was cut off goes on to the same file") {
  const test::Folder folder;
  prepare(folder);
  CHECK(folder.run({"survey", "machines", "drives.csv", "-o", "whole.jsonl", "--threads", "1"}).status <= 1);
  const std::string whole = folder.read("whole.jsonl");
  for (const std::size_t left :
       {std::size_t{0}, std::size_t{40}, whole.size() / 3, whole.size() / 2, whole.size() - 1, whole.size()}) {
    folder.write("part.jsonl", whole.substr(0, left));
    const test::Run run = folder.run({"survey", "machines", "drives.csv", "-o", "part.jsonl", "--threads", "2"});
    CHECK(run.status <= 1);
    CHECK(folder.read("part.jsonl") == whole);
    CHECK(run.out.find("30 seatings") != std::string::npos);
  }
}

TEST_CASE("shards together are the whole survey") {
  const test::Folder folder;
  prepare(folder);
  std::vector<std::string> whole = test::lines(folder.run({"survey", "machines", "drives.csv", "--json-lines"}).out);
  std::vector<std::string> parts;
  for (const char* shard : {"1/4", "2/4", "3/4", "4/4"})
    for (const std::string& line :
         test::lines(folder.run({"survey", "machines", "drives.csv", "--json-lines", "--shard", shard}).out))
      parts.push_back(line);
  std::sort(whole.begin(), whole.end());
  std::sort(parts.begin(), parts.end());
  CHECK(whole == parts);
}

TEST_CASE("a folder of drives is read as well as a table") {
  const test::Folder folder;
  prepare(folder);
  std::filesystem::create_directory(folder.path() / "drives");
  folder.write("drives/a.toml", "[[drive]]\nname = \"short card\"\nuse = \"m2/2242-S2-M\"\nbus = \"pcie 4.0 x4\"\n");
  folder.write("drives/b.toml", "[[drive]]\nname = \"2.5-inch drive\"\nuse = \"2.5in/7\"\nbus = \"sata 6\"\n");
  const std::string table = folder.run({"survey", "machines", "drives.csv", "--json-lines"}).out;
  for (const std::string& line : test::lines(folder.run({"survey", "machines", "drives", "--json-lines"}).out))
    CHECK(table.find(line.substr(line.find("\"host\""))) != std::string::npos);
}

TEST_CASE("what is wrong with a survey's input is said before anything is written") {
  const test::Folder folder;
  prepare(folder);
  const auto refused = [&](const std::string& table, const std::string& place, const std::string& says) {
    folder.write("bad.csv", table);
    test::check_refused(folder.run({"survey", "machines", "bad.csv", "-o", "out.jsonl"}), 2, place, says);
    CHECK_FALSE(std::filesystem::exists(folder.path() / "out.jsonl"));
  };
  refused("", "bad.csv: ", "the first line names the columns");
  refused("name,use\nx,m2/2280-S3-M\n", "bad.csv:1: ", "no `bus`");
  refused("name,use,bus,hieght\n", "bad.csv:1:14: ", "did you mean `height`?");
  refused("name,use,bus,use\n", "bad.csv:1:14: ", "twice");
  refused("name,use,bus\n", "bad.csv", "no drive");
  refused("name,use,bus\nx,m2/2280-S3-M\n", "bad.csv:2: ", "2 fields");
  refused("name,use,bus\nx,\"m2/2280-S3-M,pcie 4.0 x4\n", "bad.csv:2:", "quote");
  refused("name,use,bus\nx,m2/2280-S3-M,pcie 4.0 x4\ny,m2/9980-S3-M,pcie 4.0 x4\n", "bad.csv:3:3: ", "m2/9980-S3-M");
  refused("name,use,bus,top\nx,m2/2280-S3-M,pcie 4.0 x4,1;4\n", "bad.csv:2:28: ", "1;4");
  refused("name,use,bus\n,m2/2280-S3-M,pcie 4.0 x4\n", "bad.csv:2: ", "no name");
  test::check_refused(folder.run({"survey", "machines", "drives.csv", "--shard", "5/4"}), 2, "baywright: ", "k/n");
  test::check_refused(folder.run({"survey", "nowhere", "drives.csv"}), 2, "nowhere", "there is no such file");
  test::check_refused(folder.run({"survey", "machines", "drives.txt"}), 2, "drives.txt: ", ".csv");
  folder.write("machines/zz.build.toml", "title = 3\n");
  test::check_refused(folder.run({"survey", "machines", "drives.csv"}), 2, "machines/zz.build.toml:1:", "title");
}

TEST_CASE("an output of another survey is not carried on") {
  const test::Folder folder;
  prepare(folder);
  folder.write("other.jsonl", "{\"host\":\"someone else\"}\n");
  const test::Run run = folder.run({"survey", "machines", "drives.csv", "-o", "other.jsonl"});
  test::check_refused(run, 2, "baywright: line 1 of the output", "not of this survey");
  CHECK(folder.read("other.jsonl") == "{\"host\":\"someone else\"}\n");
}

TEST_CASE("answers that were made before something changed are not carried on") {
  const test::Folder folder;
  prepare(folder);
  CHECK(folder.run({"survey", "machines", "drives.csv", "-o", "out.jsonl"}).status <= 1);
  const std::string before = folder.read("out.jsonl");
  const auto stale = [&](const std::vector<std::string>& more) {
    std::vector<std::string> arguments = {"survey", "machines", "drives.csv", "-o", "out.jsonl"};
    arguments.insert(arguments.end(), more.begin(), more.end());
    test::check_refused(folder.run(arguments), 2, "baywright: line ", "write to a new file");
    CHECK(folder.read("out.jsonl") == before);
  };
  stale({"--clearance", "0.1"});
  stale({"--method", "rss"});
  folder.write("drives.csv", test::with(list, "fin-heatsink-3", "flat-spreader-2"));
  stale({});
  folder.write("drives.csv", list);
  const std::string machine = folder.read("machines/thin-desktop.build.toml");
  folder.write("machines/thin-desktop.build.toml", test::with(machine, "9.1 ±0.2", "9.3 ±0.2"));
  stale({});
}

TEST_CASE("a length in a list has the limits that the machine's lengths have") {
  // 4.85 over the board less 1.45, 0.80, 1.90 and 0.05 of solder is 0.65; cover 0.20, card 0.08, stand-off 0.03 and
  // the caliper's 0.10 leave 0.24 of it.
  const test::Folder folder;
  const std::string machine =
      "title = \"m\"\nclearance = 0.3\nmeasured_with = \"caliper\"\n[[part]]\nname = \"board\"\nuse = "
      "\"board/mini-itx\"\n[[part]]\nname = \"cover\"\nsolid = { plate = [150, 120, 1.0] }\nabove = { part = "
      "\"board\", "
      "by = \"4.85 ±0.2\" }\nremovable = true\n[[slot]]\nname = \"slot\"\non = { part = \"board\", at = [45, -70], "
      "toward = "
      "\"+x\" }\nsocket = \"m2/M/H3.2\"\nlengths = [2280]\nbus = \"pcie 4.0 x4\"\n";
  folder.write("m.build.toml", machine);
  folder.write("d.csv", "name,use,bus,top\none,m2/2280-?-M,pcie 4.0 x4,1.9\n");
  const std::string told = folder.run({"survey", "m.build.toml", "d.csv", "--json-lines"}).out;
  folder.write("c.build.toml",
               machine + "[[drive]]\nname = \"one\"\nuse = \"m2/2280-?-M\"\nbus = \"pcie 4.0 x4\"\ntop = 1.9\n");
  const std::string checked = folder.run({"check", "c.build.toml"}).out;
  CHECK(checked.find("slot: marginal") != std::string::npos);
  CHECK(told.find("\"verdict\":\"marginal\"") != std::string::npos);
}

TEST_CASE("a price list goes in as it is") {
  const test::Folder folder;
  prepare(folder);
  folder.write("list.csv", "\xEF\xBB\xBFName;Price;Use;Bus\nplain card;79,90;m2/2280-S3-M;pcie 4.0 x4\n");
  const test::Run run = folder.run({"survey", "machines", "list.csv", "--json-lines"});
  CHECK(run.status <= 1);
  CHECK(test::lines(run.out).size() == 5);
  CHECK(run.err == "note: these columns say nothing about fitting and are passed over: price\n");
  folder.write("twice.csv", "name,use,bus\nx,m2/2280-S3-M,pcie 4.0 x4\nx,m2/2242-S3-M,pcie 4.0 x4\n");
  test::check_refused(folder.run({"survey", "machines", "twice.csv"}), 2, "twice.csv:3: ", "there twice");
}
