// Which drive to buy, as a user asks it.
#include "commands/run.h"

#include <doctest/doctest.h>

using namespace baywright;

namespace {

const std::string list = test::source_path("models/shelf/old-laptop.csv").string();
const std::string machine = test::source_path("models/builds/old-laptop.build.toml").string();

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("the demo: which drive and why, the fastest is no use in this slot, the cache module is no drive") {
  const test::Folder folder;
  const test::Run run = folder.run({"rank", list, "--build", machine, "--daily", "30", "--now", "hdd"});
  CHECK(run.status == 0);
  CHECK(run.err.empty());
  const std::vector<std::string> lines = test::lines(run.out);
  CHECK(lines.front().starts_with("Take Plain SATA card 2 TB: it fits M.2 slot"));
  // 720 TB at 30 GB a day of 365 days a year: 65.75 years.
  CHECK(has(run.out, "65.8"));
  CHECK(has(run.out, "The fastest, Quick PCIe card 1 TB: does not fit in M.2 slot."));
  CHECK(has(run.out, "A cache for another drive"));
  CHECK(has(run.out, "Whether it has DRAM is not stated."));
  CHECK(has(run.out, "No TBW is stated"));
  CHECK(has(run.out, "compare it between drives of one capacity only"));
  CHECK(has(run.out, "power off, unplug"));
  for (const std::string& line : lines) {
    CAPTURE(line);
    CHECK(line.size() <= 100 + 10);  // bytes; °C and ± have two
  }
}

TEST_CASE("another column, weights, and a slot without a build") {
  const test::Folder folder;
  const auto first = [&](std::vector<std::string> more) {
    more.insert(more.begin(), {"rank", list});
    return test::lines(folder.run(more).out).front();
  };
  CHECK(first({"--sort", "price", "--bus", "sata 6"}) == "Take Plain SATA card 1 TB: it costs the least, 62.90 EUR.");
  CHECK(first({"--sort", "read"}) == "Take Quick PCIe card 1 TB: it has the fastest read, 7000 MB/s.");
  CHECK(first({"--weigh", "warranty=5,price=1", "--bus", "sata 6"})
            .starts_with("Take Sturdy SATA card 1 TB: it scores "));
  const test::Run none = folder.run({"rank", list, "--build", machine, "--place", "M.2 slot", "--sort", "read"});
  CHECK(has(none.out,
            "Take Sturdy SATA card 1 TB: it fits M.2 slot, and it has the fastest read of those that fit, 560"));
}

TEST_CASE("a list of which nothing goes there ends with 1") {
  const test::Folder folder;
  folder.write("x.csv", "name,use,bus\nquick,m2/2280-S3-M,pcie 4.0 x4\n");
  const test::Run run = folder.run({"rank", "x.csv", "--build", machine});
  CHECK(run.status == 1);
  CHECK(test::lines(run.out).front() == "quick does not go there.");
}

TEST_CASE("a table for a spreadsheet has as many fields in each line") {
  const test::Folder folder;
  const test::Run run = folder.run({"rank", list, "--build", machine, "--daily", "home", "--csv"});
  CHECK(run.status == 0);
  const std::vector<std::string> lines = test::lines(run.out);
  CHECK(lines.size() == 6);
  const auto commas = [](const std::string& line) {
    int count = 0;
    bool quoted = false;
    for (const char c : line) {
      if (c == '"') quoted = !quoted;
      count += !quoted && c == ',' ? 1 : 0;
    }
    return count;
  };
  for (const std::string& line : lines) CHECK(commas(line) == commas(lines.front()));
  CHECK(lines[1].starts_with("1,Plain SATA card 2 TB,EUR,yes,109,2000,"));
}

TEST_CASE("rank --json is what its schema says") {
  const test::Folder folder;
  std::vector<std::string> arguments = {test::source_path("tests/commands/rank_schema.py"),
                                        test::source_path("models/rank.schema.json")};
  const auto add = [&](const std::string& name, std::vector<std::string> options) {
    options.insert(options.begin(), "rank");
    options.push_back("--json");
    folder.write(name, folder.run(options).out);
    arguments.push_back(name);
  };
  add("demo.json", {list, "--build", machine, "--daily", "30", "--now", "emmc"});
  add("bare.json", {list});
  add("slot.json", {list, "--bus", "pcie 3.0 x2", "--daily", "video", "--weigh", "price=1,tbw=1"});
  folder.write("odd.csv",
               "name,family,price,capacity,cells,tbw,warranty,dwpd,use,bus\n"
               "a,f,60,500,QLC,20,5,,soldered,pcie 3.0 x2\nb,f,80,1000,,,5,0.2,,\nc,,,,,,,,,\n");
  add("odd.json", {"odd.csv", "--daily", "300", "--now", "nvme3"});
  const test::Run run = folder.spawn("/usr/bin/python3", arguments);
  CAPTURE(run.out);
  CAPTURE(run.err);
  if (run.status == 77) MESSAGE("python3-jsonschema is missing: install it (third_party/packages.txt), or run ./start");
  CHECK(run.status == 0);
  CHECK(has(run.out, " checked"));
}

TEST_CASE("what is wrong with the list, the machine or an option is named in one line") {
  const test::Folder folder;
  folder.write("x.csv", "name,price\na,5 EUR\nb,5 USD\n");
  folder.write("use.csv", "name,use,bus\na,m2/2280-S3-M,pcie 4.0 x4\nb,m2/2280-Z9-M,pcie 4.0 x4\n");
  folder.write("x.txt", "name\na\n");
  test::check_refused(folder.run({"rank", "no.csv"}), 2, "no.csv: ", "there is no such file");
  test::check_refused(folder.run({"rank", "x.txt"}), 2, "x.txt: ", ".csv nor a .toml");
  test::check_refused(folder.run({"rank", "x.csv"}), 2, "x.csv:3:3: ", "this price is in USD, those before in EUR");
  test::check_refused(folder.run({"rank", "use.csv", "--build", machine}), 2, "use.csv:3:3: ", "Z9");
  test::check_refused(folder.run({"rank", list, "--build", "no.build.toml"}), 2, "no.build.toml: ", "no such file");
  test::check_refused(folder.run({"rank", list, "--build", machine, "--place", "M.2 slop"}), 2, machine + ": ",
                      "did you mean `M.2 slot`?");
  const std::string ours = "baywright: ";
  test::check_refused(folder.run({"rank", list, "--place", "x"}), 2, ours, "--build");
  test::check_refused(folder.run({"rank", list, "--sort", "prize"}), 2, ours, "did you mean `price`?");
  test::check_refused(folder.run({"rank", list, "--sort", "years"}), 2, ours, "--sort years wants --daily");
  test::check_refused(folder.run({"rank", list, "--weigh", "price=0"}), 2, ours, "`price=0` is no weight");
  test::check_refused(folder.run({"rank", list, "--daily", "vidoe"}), 2, ours, "did you mean `video`?");
  test::check_refused(folder.run({"rank", list, "--now", "tape"}), 2, ours, "--now `tape` is not known");
  test::check_refused(folder.run({"rank", list, "--bus", "usb"}), 2, ours, "--bus `usb`");
  test::check_refused(folder.run({"rank", list, "--build", machine, "--air", "900"}), 2, ours, "--air must lie");
}

TEST_CASE("beside a drive that does not fit stands what would make it fit, with that drive and no other") {
  const test::Folder folder;
  folder.write("x.csv",
               "name,use,bus,pad,compress,heatsink\n"
               "tall,m2/2280-S3-M,pcie 4.0 x4,1.0 ±0.1,30 %,fin-heatsink-4\nbare,m2/2280-S3-M,pcie 4.0 x4,,,\n");
  const std::string thin = test::source_path("models/builds/thin-desktop.build.toml");
  const std::string text = folder.run({"rank", "x.csv", "--build", thin}).out;
  const std::size_t tall = text.find("\ntall\n");
  REQUIRE(tall != std::string::npos);
  CHECK(text.find("What would make it fit: ") > tall);
  CHECK(text.find("in place of tall") == std::string::npos);
  const std::string json = folder.run({"rank", "x.csv", "--build", thin, "--json"}).out;
  CHECK(has(json, "\"plan\": {"));
  CHECK(has(json, "\"plan\": null"));
}

TEST_CASE("a drive that is called as a part of the machine is held against that part all the same") {
  const test::Folder folder;
  folder.write("x.csv", "name,use,bus\nbottom cover,m2/2280-S3-B+M,sata 6\n");
  const test::Run run = folder.run({"rank", "x.csv", "--build", machine});
  CHECK(run.status == 0);
  CHECK(has(run.out, "bottom cover' clear bottom cover by"));
}

namespace {

/// A slot for 2280 alone, on two lanes of PCIe 3.
const std::string narrow =
    "title = \"x\"\n[[part]]\nname = \"board\"\nsolid = { plate = [200, 120, 1.6] }\n[[slot]]\nname = \"slot\"\n"
    "on = { part = \"board\", at = [20, 60], toward = \"+x\" }\nsocket = \"m2/M/H4.2\"\nlengths = [2280]\n"
    "bus = \"pcie 3.0 x2\"\n";

/// The answer, above the table, in one line.
std::string headline(const test::Run& run) {
  std::string out = run.out.substr(0, run.out.find("\n\n"));
  for (char& c : out) c = c == '\n' ? ' ' : c;
  return out;
}

}  // namespace

TEST_CASE("a drive that is too short for the slot has no temperature in rows for other programs either") {
  const test::Folder folder;
  folder.write("m.build.toml", narrow);
  folder.write("x.csv", "name,use,bus,power\nlong,m2/2280-S3-M,pcie 3.0 x4,4\nshort,m2/2230-S3-M,pcie 3.0 x4,4\n");
  const std::string json = folder.run({"rank", "x.csv", "--build", "m.build.toml", "--json"}).out;
  const std::size_t second = json.find("\"name\": \"short\"");
  REQUIRE(second != std::string::npos);
  CHECK(!has(json.substr(0, second), "\"warm_from_c\": null"));
  CHECK(has(json.substr(second), "\"warm_from_c\": null"));
  CHECK(has(json.substr(second), "\"heat\": []"));
  CHECK(has(json.substr(second), "\"outlook\": null"));
}

TEST_CASE("who writes much learns beside the answer what dense cells do, and which drive has none") {
  const test::Folder folder;
  folder.write("m.build.toml", narrow);
  folder.write("x.csv",
               "name,use,bus,price (EUR),capacity,tbw,warranty,read,cells\n"
               "cheap,m2/2280-S3-M,pcie 4.0 x4,70,1 TB,600,5,7000,QLC\n"
               "sound,m2/2280-S3-M,pcie 4.0 x4,90.50,1 TB,700,5,7000,TLC\n");
  const auto top = [&](const std::string& daily) {
    return headline(folder.run({"rank", "x.csv", "--build", "m.build.toml", "--daily", daily, "--now", "sata"}));
  };
  CHECK(has(top("120"), "cheap: QLC has 4 bits a cell"));
  CHECK(has(top("120"), "Without that limit: sound (TLC), which costs 20.50 EUR more."));
  CHECK(!has(top("10"), "bits a cell"));
  const std::string page =
      folder.run({"report", "m.build.toml", "--shortlist", "x.csv", "--daily", "120", "--now", "sata", "-o", "-"}).out;
  CHECK(has(page, "reads large files about "));  // nothing is said of writing
  CHECK(page.find("which costs 20.50") < page.find("class=\"facts\""));
}

TEST_CASE("a card that is too long for a slot that would not find it either is told both") {
  const test::Folder folder;
  folder.write("m.build.toml", test::with(test::with(narrow, "pcie 3.0 x2", "sata 6"), "[2280]", "[2242]"));
  folder.write("x.csv", "name,use,bus\nlong,m2/2280-S3-M,pcie 4.0 x4\n");
  const std::string rank = folder.run({"rank", "x.csv", "--build", "m.build.toml"}).out;
  CHECK(has(rank, "does not go there"));
  CHECK(has(rank, "2280"));
  CHECK(has(rank, "SATA 6 Gb/s"));
  const std::string page = folder.run({"report", "m.build.toml", "--shortlist", "x.csv", "-o", "-"}).out;
  const std::string lead = page.substr(page.find("class=\"lead\""), 900);
  CHECK(has(lead, "is longer than the slot holds"));
  CHECK(has(lead, "only; the drive, which speaks"));
}

TEST_CASE("a plan that holds only if the board has a hole there is said as that") {
  const test::Folder folder;
  folder.write("m.build.toml", test::with(narrow, "[2280]", "[2242]"));
  folder.write("x.csv", "name,use,bus\nlong,m2/2280-S3-M,pcie 4.0 x4\n");
  const std::string rank = folder.run({"rank", "x.csv", "--build", "m.build.toml"}).out;
  CHECK(has(rank, "What might make it fit: a stand-off at the 2280 hole"));
  CHECK(has(rank, "Only if the board has a hole"));
  const std::string page = folder.run({"report", "m.build.toml", "--shortlist", "x.csv", "-o", "-"}).out;
  const std::string lead = page.substr(0, page.find("id=\"pictures\""));
  CHECK(has(lead, "may fit with a change"));
  CHECK(has(lead, "Only if the board has a hole or a nut there"));
  CHECK(has(page, "at the <bdi>2280</bdi> hole of"));
  CHECK(has(page, "if there is neither a hole nor a nut, stop here"));  // the step
}

TEST_CASE("a build in the place of a list and a list in that of a build are said to be that") {
  const test::Folder folder;
  folder.write("x.csv", " \n");
  test::check_refused(folder.run({"rank", "x.csv"}), 2, "x.csv", "names its columns");
  test::check_refused(folder.run({"rank", machine}), 2, "baywright: ", "looks like a build file");
  test::check_refused(folder.run({"report", list, "--shortlist", machine, "-o", "x.html"}), 2,
                      "baywright: ", "looks like a build file");
  test::check_refused(folder.run({"report", list, "-o", "x.html"}), 2, "baywright: ", "looks like a list");
  folder.write("de.csv", "name,use,bus,Preis\na,m2/2280-S3-M,pcie 4.0 x4,70\n");
  test::check_refused(folder.run({"rank", "de.csv"}), 2, "de.csv", "it is called `price` here");
}

TEST_CASE("the answer does not rest on an endurance that nobody states, and says what it rests on") {
  const test::Folder folder;
  folder.write("m.build.toml", narrow);
  folder.write("x.csv",
               "name,use,bus,price (EUR),capacity,tbw,warranty,read,colour\n"
               "silent,m2/2280-S3-M,pcie 4.0 x4,50,1 TB,,5,7000,\nsoon,m2/2280-S3-M,pcie 4.0 x4,55,1 TB,30,5,7100,\n"
               "good,m2/2280-S3-M,pcie 4.0 x4,80,1 TB,600,5,7000,\n");
  const test::Run run = folder.run({"rank", "x.csv", "--build", "m.build.toml", "--daily", "100"});
  const std::string top = headline(run);
  CAPTURE(top);
  CHECK(
      top.starts_with("Take good: it fits slot, a GB costs the least of those known to endure 100 GB a day, 0.080 EUR, "
                      "and its warranty ends after 5 years (at 100 GB a day its TBW is written after 16.4 years)."));
  CHECK(has(top, "silent (it states no TBW); soon (its TBW is written after 0.8 years, before its warranty ends)."));
  CHECK(has(top,
            "The slot makes 3 of these drives read equally fast: each is held to 1969 MB/s by the slot (raw link "
            "rate; less in practice)."));
  CHECK(has(top, "The column `colour` is not known here and passed over."));
  CHECK(has(run.out, "\n! soon"));
  CHECK(has(run.out, "  5/16.4  fits"));
  CHECK(has(run.out, "fits\n* it may go there, and no other that may is"));  // the legend stands under the table
  const std::string sorted = headline(folder.run({"rank", "x.csv", "--build", "m.build.toml", "--sort", "read"}));
  CAPTURE(sorted);
  CHECK(has(sorted,
            "its read is held to 1969 MB/s by the slot (raw link rate; less in practice) as is that of 2 others"));
  CHECK(!has(sorted, "fastest"));
  const test::Run rows = folder.run({"rank", "x.csv", "--csv"});
  CHECK(rows.status == 0);
  CHECK(rows.err == "x.csv: The column `colour` is not known here and passed over.\n");
}
