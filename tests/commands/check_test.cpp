// `check` on the demonstration builds: verdicts, exit status, text and JSON. The expected gaps are worked out here from
// the stack: PCI-SIG M.2 Specification Rev 1.0 (2013), Table 14 (stand-off of class H4.2: 2.45 ±0.03, on 0.05 of
// solder, Figure 71), Table 2 (card 0.80 ±0.08), Figure 3 (parts of S3: 1.40 ±0.10); the rest as the build file gives
// it.
#include "commands/run.h"
#include "support/check_mm.h"

#include <doctest/doctest.h>
#include <map>
#include <nlohmann/json.hpp>

using namespace baywright;
using nlohmann::json;
using test::check_mm;

namespace {

const std::string thin = test::source_path("models/builds/thin-desktop.build.toml");
const std::string laptop = test::source_path("models/builds/laptop.build.toml");
const std::string tower = test::source_path("models/builds/tower.build.toml");

test::Run check(std::vector<std::string> arguments) {
  arguments.insert(arguments.begin(), "check");
  return test::Folder().run(arguments);
}

json seatings(const std::string& file, std::vector<std::string> options = {}) {
  options.insert(options.begin(), {file, "--json"});
  const test::Run run = check(options);
  REQUIRE(run.err == "");
  return json::parse(run.out).at("seatings");
}

const json& seating(const json& all, const std::string& drive, const std::string& place) {
  for (const json& each : all)
    if (each.at("drive") == drive && each.at("place") == place) return each;
  FAIL("no seating of " << drive << " in " << place);
  return all;
}

const json& gap(const json& seating, const std::string& first, const std::string& second) {
  for (const json& finding : seating.at("findings"))
    if (finding.at("between") == json::array({first, second})) return finding.at("gap");
  FAIL("no gap between " << first << " and " << second);
  return seating;
}

bool has_refusal(const json& seating, const std::string& kind) {
  for (const json& finding : seating.at("findings"))
    if (finding.at("kind") == kind && finding.at("verdict") == "does not fit") return true;
  return false;
}

}  // namespace

TEST_CASE("thin desktop: one heatsink fits, one is marginal, one does not fit") {
  const json all = seatings(thin);
  REQUIRE(all.size() == 3);
  // 9.10 - (2.45 + 0.05 + 0.80 + 1.40 + 0.7 * 1.00) = 3.70 above the pad; limits add up to 0.20 + 0.10 + 0.10 + 0.08 +
  // 0.7 * 0.10 + 0.03 * (a share for the tilt, at most 1) = at most 0.58.
  const std::map<std::string, std::pair<std::string, double>> want = {
      {"card with flat spreader", {"flat spreader", 1.70}},
      {"card with low fins", {"low fin heatsink", 0.70}},
      {"card with tall fins", {"tall fin heatsink", -0.30}}};
  for (const auto& [drive, what] : want) {
    CAPTURE(drive);
    const json& found = gap(seating(all, drive, "rear slot"), what.first, "tray");
    check_mm(found.at("nominal"), what.second, 1e-9);
    check_mm(found.at("min"), what.second - 0.565, 0.015);
    check_mm(found.at("asked"), 0.5, 0.0);
  }
  CHECK(seating(all, "card with flat spreader", "rear slot").at("verdict") == "fits");
  CHECK(seating(all, "card with low fins", "rear slot").at("verdict") == "marginal");
  CHECK(seating(all, "card with tall fins", "rear slot").at("verdict") == "does not fit");
}

TEST_CASE("exit status: each drive at one place, every place, marginal accepted") {
  CHECK(check({thin}).status == 1);
  CHECK(check({thin, "--every"}).status == 1);
  CHECK(check({thin, "--drive", "card with flat spreader"}).status == 0);
  CHECK(check({thin, "--drive", "card with low fins"}).status == 1);
  CHECK(check({thin, "--drive", "card with low fins", "--accept-marginal"}).status == 0);
  CHECK(check({thin, "--drive", "card with tall fins", "--accept-marginal"}).status == 1);
  CHECK(check({tower}).status == 0);             // each drive fits somewhere ...
  CHECK(check({tower, "--every"}).status == 1);  // ... but not everywhere
  CHECK(check({tower, "--every", "--place", "upper slot"}).status == 0);
  CHECK(check({tower, "--drive", "card with tower fins", "--place", "lower slot"}).status == 1);
  CHECK(check({laptop}).status == 1);  // the cased drive goes nowhere
}

TEST_CASE("tower: the answer differs by slot") {
  const json all = seatings(tower);
  CHECK(seating(all, "card with tower fins", "upper slot").at("verdict") == "fits");
  CHECK(seating(all, "card with tower fins", "lower slot").at("verdict") == "does not fit");
  CHECK(seating(all, "card with flat spreader", "upper slot").at("verdict") == "fits");
  CHECK(seating(all, "card with flat spreader", "lower slot").at("verdict") == "fits");
  // H4.2: 2.50; card 0.80; D2 parts 1.25; pad 0.70; fins 14.00: 19.25 under a cooler at 16.50.
  check_mm(gap(seating(all, "card with tower fins", "lower slot"), "tower fin heatsink", "graphics card cooler")
               .at("nominal"),
           -2.75, 1e-9);
}

TEST_CASE("laptop: wrong by form factor, by length, by key, by bus") {
  const json all = seatings(laptop);
  REQUIRE(all.size() == 10);
  const json& cased = seating(all, "cased drive", "main slot");
  CHECK(has_refusal(cased, "form factor"));
  CHECK(cased.at("questions").at("form factor").at("answer") == "no");
  const json& key = seating(all, "short SATA card", "main slot");  // key B into a socket with key M
  CHECK(has_refusal(key, "interface"));
  CHECK(key.at("questions").at("form factor").at("answer") == "yes");
  CHECK(key.at("questions").at("bus").at("answer") == "yes");
  const json& bus = seating(all, "short PCIe card", "small slot");  // wired for SATA only
  CHECK(has_refusal(bus, "bus"));
  CHECK(bus.at("questions").at("form factor").at("answer") == "yes");
  CHECK(bus.at("questions").at("interface").at("answer") == "yes");
  CHECK(has_refusal(seating(all, "SATA long card", "small slot"), "length"));
  for (const json& each : all) CHECK(each.at("verdict") != "undecided");
}

TEST_CASE("clearance and method") {
  // 1.70 nominal, 1.12 at the least: 1.2 asked is met by some builds, 2.5 by none.
  const std::vector<std::string> flat = {thin, "--drive", "card with flat spreader"};
  const auto verdict = [&](const std::string& clearance) {
    return seatings(thin, {"--drive", "card with flat spreader", "--clearance", clearance})
        .at(0)
        .at("verdict")
        .get<std::string>();
  };
  CHECK(verdict("0") == "fits");
  CHECK(verdict("1.2") == "marginal");
  CHECK(verdict("2.5") == "does not fit");
  const test::Run rss = check({thin, "--method", "rss"});
  CHECK(test::lines(rss.out).front().find("root sum square") != std::string::npos);
  CHECK(test::lines(check({thin}).out).front().find("root sum square") == std::string::npos);
  // Root sum square of 0.20, 0.10, 0.10, 0.08, 0.07 and about 0.028: 0.2685.
  const json all = seatings(thin, {"--method", "rss"});
  check_mm(gap(seating(all, "card with low fins", "rear slot"), "low fin heatsink", "tray").at("min"), 0.70 - 0.2685,
           1e-3);
}

TEST_CASE("text: the first line answers, no line is wider than 100 columns, no colour outside a terminal") {
  const std::map<std::string, std::string> first = {
      {thin, "2 of 3 drives"}, {laptop, "4 of 5 drives fit"}, {tower, "Both drives fit"}};
  for (const auto& [file, answer] : first) {
    CAPTURE(file);
    for (const char* const command : {"check", "explain"}) {
      const test::Run run = test::Folder().run({command, file});
      CHECK(run.err == "");
      CHECK(run.out.find('\x1b') == std::string::npos);
      for (const std::string& line : test::lines(run.out)) {
        CAPTURE(line);
        const auto columns = std::count_if(line.begin(), line.end(), [](char c) { return (c & 0xC0) != 0x80; });
        CHECK((columns <= 100 || line.find(' ') == std::string::npos));  // a path has no space to break it at
      }
    }
  }
  const std::string only =
      test::lines(check({tower, "--drive", "card with tower fins", "--place", "lower slot"}).out).front();
  CHECK(only == "card with tower fins in lower slot: does not fit.");
  CHECK(test::lines(check({laptop, "--drive", "cased drive"}).out).front().find("fits") != std::string::npos);
  CHECK(check({thin}).out.find("power off, unplug") != std::string::npos);
}

TEST_CASE("the same input gives the same output") {
  for (const std::string& file : {thin, laptop, tower})
    for (const std::vector<std::string>& arguments :
         {std::vector<std::string>{"check", file}, {"check", file, "--json"}, {"explain", file}}) {
      const test::Run first = test::Folder().run(arguments);
      CHECK(!first.out.empty());
      CHECK(first.out == test::Folder().run(arguments).out);
    }
}

TEST_CASE("a distance to be solved for is enough, and 0.02 less is not") {
  const std::string build = test::source_text("models/builds/thin-desktop.build.toml");
  const std::string known = "by = { length = \"9.1 ±0.2\", source = \"caliper, three places, tray screwed down\" }";
  const test::Folder folder;
  const auto run_with = [&](const std::string& by) {
    folder.write("x.build.toml", test::with(build, known, "by = " + by));
    return folder.run({"check", "x.build.toml", "--drive", "card with low fins"});
  };
  const test::Run solved = run_with("\"?\"");
  CHECK(solved.err == "");
  CHECK(solved.status == 0);      // at that distance it fits
  std::string said = solved.out;  // on one line
  for (std::size_t at = 0; (at = said.find("\n               ", at)) != std::string::npos;) said.replace(at, 16, " ");
  const std::string says = "`tray under board`, must be at least 8.88 mm for a fit, at least ";
  const std::size_t at = said.find(says);
  REQUIRE(at != std::string::npos);
  // 2.50 + 0.80 + 1.40 + 0.70 + 3.00 = 8.40, limits 0.35 and at most 0.03 of the stand-off, clearance 0.50; and the
  // 0.10 of the caliper with which the distance will be measured.
  const double least = std::stod(said.substr(at + says.size()));
  check_mm(least, 9.37, 0.015);
  CHECK(run_with(std::to_string(least)).status == 0);
  CHECK(run_with(std::to_string(least - 0.02)).status == 1);
}

TEST_CASE("another clearance between two parts") {
  const std::string build = test::source_text("models/builds/thin-desktop.build.toml");
  const test::Folder folder;
  const auto asked = [&](const std::string& a, const std::string& b) {
    folder.write("x.build.toml", build + "\n[[apart]]\nbetween = [\"" + a + "\", \"" + b + "\"]\nclearance = 1.3\n");
    const test::Run run = folder.run({"check", "x.build.toml", "--json", "--drive", "card with flat spreader"});
    REQUIRE(run.err == "");
    return gap(json::parse(run.out).at("seatings").at(0), "flat spreader", "tray").at("asked").get<double>();
  };
  check_mm(asked("flat spreader", "tray"), 1.3, 0.0);
  check_mm(asked("tray", "flat spreader"), 1.3, 0.0);
  check_mm(asked("card with flat spreader", "tray"), 1.3, 0.0);
  check_mm(asked("card with low fins", "tray"), 0.5, 0.0);
  check_mm(asked("flat spreader", "rear slot socket"), 0.5, 0.0);
}

TEST_CASE("lengths that were taken as exact are named") {
  const std::string bench = test::source_text("tests/commands/data/bench.build.toml");
  const test::Folder folder;
  folder.write("x.build.toml", test::with(bench, "by = \"9.1 ±0.2\"", "by = 9.1"));
  const test::Run run = folder.run({"check", "x.build.toml"});
  CHECK(run.out.find("Taken as exact") != std::string::npos);
  CHECK(run.out.find("tray under board") != std::string::npos);
  folder.write("y.build.toml", test::with(test::with(bench, "by = \"9.1 ±0.2\"", "by = 9.1"), "clearance = 0.5",
                                          "clearance = 0.5\nmeasured_with = \"caliper\""));
  CHECK(folder.run({"check", "y.build.toml"}).out.find("Taken as exact") == std::string::npos);
}

TEST_CASE("explain prints the chain behind a gap") {
  const test::Run run = test::Folder().run({"explain", thin, "--drive", "card with low fins"});
  CHECK(run.err == "");
  CHECK(run.status == 1);
  for (const std::string each :
       {"tray under board", "9.10 ±0.20", "card thickness", "0.80 ±0.08", "stand-off height",
        "PCI-SIG M.2 Specification Rev 1.0", "caliper, three places", "(measured)", "(read)"}) {
    CAPTURE(each);
    CHECK(run.out.find(each) != std::string::npos);
  }
}

TEST_CASE("a drive whose height is only known as a maximum is to be measured, and a stud that is too long has a cure") {
  const test::Folder folder;
  // SFF-8301 gives heights of 3.5-inch drives as maxima, and 3.8 as the most that a screw may reach in.
  folder.write("plate.build.toml", R"(title = "plate"
[[part]]
name = "plate"
solid = { plate = [220, 140, 3] }
[[part]]
name = "glass"
solid = { plate = [220, 140, 4] }
above = { part = "plate", by = 22 }
[[panel]]
name = "holes"
on = { part = "plate", at = [20, 60], toward = "+x" }
takes = "3.5in"
standoffs = 6
bus = "sata 6"
fixing = { holes = [[41.28, -47.625], [41.28, 47.625]], diameter = 4.4, sheet = 3, screw = "6-32", length = 6 }
[[drive]]
name = "disk"
use = "3.5in/17.8"
bus = "sata 6"
)");
  const std::string out = folder.run({"check", "plate.build.toml"}).out;
  CHECK(out.find("2.20 more than the 3.80") != std::string::npos);
  CHECK(out.find("Spacers with") != std::string::npos);
  // With a stud that is right only the height is open: 22 - 6 leaves 16, less the 0.1 to which a caliper reads.
  folder.write("right.build.toml", test::with(folder.read("plate.build.toml"), "length = 6 }", "length = 3 }"));
  const std::string right = folder.run({"check", "right.build.toml"}).out;
  CHECK(right.find("Measure `3.5-inch drive height, 17.8 mm` (`height`) to ±0.10") != std::string::npos);
  CHECK(right.find("fits up to 15.90;") != std::string::npos);
  // Far from everything that is said, and no gap is left unnamed without a word.
  folder.write("far.build.toml", test::with(test::with(folder.read("right.build.toml"), "by = 22", "by = 90"),
                                            "standoffs = 6", "standoffs = 15"));
  CHECK(folder.run({"check", "far.build.toml"}).out.find("Nothing comes nearer than") != std::string::npos);
}
