// `make`: what is printed, as programs that are not ours read it.
#include "commands/run.h"
#include "support/check_mm.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstring>
#include <doctest/doctest.h>
#include <glm/geometric.hpp>
#include <glm/vec2.hpp>
#include <numbers>
#include <regex>

using namespace baywright;
using test::check_mm;

namespace {

const std::string demo = test::source_path("models/builds/panel.build.toml");
constexpr double pi = std::numbers::pi;

/// A figure of what admesh says about the file as it is.
double figure(const std::string& said, const std::string& name) {
  std::smatch found;
  CAPTURE(name);
  REQUIRE(std::regex_search(said, found, std::regex(name + R"(\s*[:=]\s*(-?[0-9.]+))")));
  return std::stod(found[1]);
}

/// Watertight, of one shell, its normals right, and of that volume, mm³.
void check_solid(const test::Folder& folder, const std::string& file, double volume, double allowed) {
  const test::Run run = folder.spawn("/usr/bin/admesh", {file});
  CAPTURE(run.out);
  CHECK(run.status == 0);
  CHECK(figure(run.out, "Total disconnected facets") == 0.0);
  CHECK(figure(run.out, "Number of parts") == 1.0);
  for (const char* flaw : {"Degenerate facets", "Edges fixed", "Facets removed", "Facets added", "Facets reversed",
                           "Backwards edges", "Normals fixed"})
    CHECK(figure(run.out, flaw) == 0.0);
  check_mm(figure(run.out, "Volume"), volume, allowed);
}

/// How near each level edge of a binary STL's triangles comes to the z axis.
std::vector<double> level_edges(const std::string& stl) {
  std::vector<double> out;
  for (std::size_t at = 84; at + 50 <= stl.size(); at += 50) {
    std::array<std::array<float, 3>, 4> read{};
    std::memcpy(read.data(), stl.data() + at, 48);
    for (std::size_t i = 0; i < 3; ++i) {
      const auto& from = read[1 + i];
      const auto& to = read[1 + (i + 1) % 3];
      if (from[2] != to[2]) continue;
      const glm::dvec2 a(from[0], from[1]);
      const glm::dvec2 way = glm::dvec2(to[0], to[1]) - a;
      const double nearest = std::clamp(-glm::dot(a, way) / glm::dot(way, way), 0.0, 1.0);
      out.push_back(glm::length(a + nearest * way));
    }
  }
  return out;
}

/// The figures behind a group code of an entity, which begins at `at`, until the next one.
std::vector<double> figures_of(const std::vector<std::string>& lines, std::size_t at, const std::string& code) {
  std::vector<double> out;
  for (std::size_t i = at + 1; i + 1 < lines.size() && lines[i] != "0"; i += 2)
    if (lines[i] == code) out.push_back(std::stod(lines[i + 1]));
  return out;
}

std::vector<double> circles_of_dxf(const std::vector<std::string>& lines) {
  std::vector<double> out;
  for (std::size_t i = 0; i < lines.size(); ++i)
    if (lines[i] == "CIRCLE") out.push_back(2.0 * figures_of(lines, i, "40").at(0));
  return out;
}

/// What is left of the largest closed line, mm²: the others and the circles are openings.
double area_of_dxf(const std::vector<std::string>& lines) {
  double largest = 0.0;
  double all = 0.0;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (lines[i] != "LWPOLYLINE") continue;
    const std::vector<double> x = figures_of(lines, i, "10");
    const std::vector<double> y = figures_of(lines, i, "20");
    double twice = 0.0;
    for (std::size_t k = 0; k < x.size(); ++k) {
      const std::size_t next = (k + 1) % x.size();
      twice += x[k] * y[next] - x[next] * y[k];
    }
    largest = std::max(largest, 0.5 * std::abs(twice));
    all += 0.5 * std::abs(twice);
  }
  double out = 2.0 * largest - all;
  for (const double diameter : circles_of_dxf(lines)) out -= pi / 4.0 * diameter * diameter;
  return out;
}

}  // namespace

TEST_CASE("a spacer is watertight, of its volume, and its hole is not under size") {
  const test::Folder folder;
  const test::Run run = folder.run({"make", demo, "--part", "spacer M3 8", "-o", "spacer.stl"});
  CHECK(run.err == "");
  CHECK(run.status == 0);
  CHECK(run.out.starts_with(
      "made spacer M3, 8.00 mm: hole 3.60 (3.40 and 0.20 for what printing shrinks), 6.00 across:\n  spacer.stl\n"));
  CHECK(run.out.find("Holes come out 3.30 to 3.50") != std::string::npos);
  CHECK(run.out.find("caliper") != std::string::npos);
  CHECK(run.out.find("do not use it near heat") != std::string::npos);
  for (const std::string& line : test::lines(run.out)) CHECK(line.size() <= 103);  // ± has two bytes
  CHECK(folder.names() == std::vector<std::string>{"spacer.stl"});
  // The tube's closed form; both rings lie on or within 0.02 of their circles, on the side that takes material away.
  const double tube = pi / 4.0 * (36.0 - 3.6 * 3.6) * 8.0;
  const double off = pi * (6.0 + 3.6) * 0.02 * 8.0;
  check_solid(folder, "spacer.stl", tube - 0.5 * off, 0.5 * off);
  const std::vector<double> edges = level_edges(folder.read("spacer.stl"));
  CHECK(edges.size() > 48);
  const double hole = *std::min_element(edges.begin(), edges.end());
  CHECK(hole >= 1.8 - 1e-6);  // what single precision leaves of it
  CHECK(hole <= 1.82);
  CHECK(folder.run({"make", demo, "--part", "spacer M3 8", "-o", "-"}).out == folder.read("spacer.stl"));
}

TEST_CASE("plates and guides are watertight") {
  const test::Folder folder;
  const test::Run plate = folder.run({"make", demo, "--part", "panel", "-o", "panel.stl"});
  CHECK(plate.err == "");
  CHECK(plate.out.find("made panel, 165.00 x 260.00 x 1.50 mm: 12 holes of several sizes") == 0);
  CHECK(plate.out.find("Beyond 100 mm") != std::string::npos);
  // Of the twelve holes four are 3.4 and eight are 4.0, each with 0.2.
  const double holes = pi / 4.0 * (4.0 * 3.6 * 3.6 + 8.0 * 4.2 * 4.2);
  check_solid(folder, "panel.stl", (165.0 * 260.0 - holes) * 1.5, pi * (4.0 * 3.6 + 8.0 * 4.2) * 0.02 * 1.5);
  const test::Run guide = folder.run({"make", demo, "--part", "guide hand drilled", "-o", "guide.stl"});
  CHECK(guide.out.find(": 4 holes of 2.20 (2.00 and 0.20 for what") != std::string::npos);
  CHECK(guide.out.find("datum edges A and B") != std::string::npos);
  CHECK(guide.out.find("eye protection") != std::string::npos);
  // Holes at 64 and 140.6 from the left, 14.14 and 75.86 from below; 10 beyond them; a corner of 3 is cut off.
  check_solid(folder, "guide.stl", (150.6 * 85.86 - 4.5 - pi * 2.2 * 2.2) * 3.0, 4.0 * pi * 2.2 * 0.02 * 3.0);
}

TEST_CASE("a 3MF is a whole archive in millimetres") {
  const test::Folder folder;
  CHECK(folder.run({"make", demo, "--part", "spacer laser cut", "-o", "s.3mf"}).status == 0);
  CHECK(folder.run({"make", demo, "--part", "spacer laser cut", "-o", "s.stl"}).status == 0);
  const test::Run run = folder.spawn("/usr/bin/python3", {"-c", R"(
import zipfile, xml.etree.ElementTree as tree
whole = zipfile.ZipFile("s.3mf")
assert whole.testzip() is None
core = "{http://schemas.microsoft.com/3dmanufacturing/core/2015/02}"
types = tree.fromstring(whole.read("[Content_Types].xml"))
kinds = {each.get("Extension"): each.get("ContentType") for each in types}
start = [each for each in tree.fromstring(whole.read("_rels/.rels")) if each.get("Type").endswith("/3dmodel")]
model = tree.fromstring(whole.read(start[0].get("Target").lstrip("/")))
corners = [[float(each.get(axis)) for axis in "xyz"] for each in model.iter(core + "vertex")]
triangles = [[int(each.get(k)) for k in ("v1", "v2", "v3")] for each in model.iter(core + "triangle")]
sides = {}
for t in triangles:
    for i in range(3):
        sides[t[i], t[(i + 1) % 3]] = sides.get((t[i], t[(i + 1) % 3]), 0) + 1
assert all(n == 1 and sides.get((b, a)) == 1 for (a, b), n in sides.items()), "not closed"
made = {each.get("id") for each in model.iter(core + "object")}
assert [each.get("objectid") in made for each in model.iter(core + "item")] == [True]
print(kinds["model"], model.get("unit"), len(triangles), max(c[2] for c in corners) - min(c[2] for c in corners))
)"});
  CHECK(run.err == "");
  const std::size_t triangles = (folder.read("s.stl").size() - 84) / 50;
  CHECK(run.out ==
        "application/vnd.ms-package.3dmanufacturing-3dmodel+xml millimeter " + std::to_string(triangles) + " 5.0\n");
  const std::string first = folder.read("s.3mf");
  CHECK(folder.run({"make", demo, "--part", "spacer laser cut", "-o", "s.3mf"}).status == 0);
  CHECK(folder.read("s.3mf") == first);
}

TEST_CASE("what is cut has its holes as asked for") {
  const test::Folder folder;
  const test::Run run = folder.run({"make", demo, "--part", "shim M3 0.5", "-o", "shim.dxf"});
  CHECK(test::lines(run.out).at(0) == "made shim M3, 0.50 mm: hole 3.40, 6.00 across: shim.dxf");
  const std::vector<std::string> lines = test::lines(folder.read("shim.dxf"));
  CHECK(std::count(lines.begin(), lines.end(), "CIRCLE") == 2);
  test::check_refused(folder.run({"make", demo, "--part", "spacer M3 8", "-o", "x.dxf"}), 2, demo,
                      "spacer M3 cannot be cut from sheet: it is not flat");
  CHECK(folder.names() == std::vector<std::string>{"shim.dxf"});
}

TEST_CASE("a drawn panel is watertight") {
  const test::Folder folder;
  const std::string drawn = test::source_path("models/builds/drawn-panel.build.toml");
  CHECK(folder.run({"make", drawn, "--part", "panel", "-o", "x.stl"}).status == 0);
  CHECK(folder.run({"make", drawn, "--part", "panel", "-o", "cut.dxf"}).status == 0);
  const double cut = area_of_dxf(test::lines(folder.read("cut.dxf")));  // its holes as asked for: each gets 0.2 more
  double rims = 0.0;
  double more = 0.0;
  for (const double diameter : circles_of_dxf(test::lines(folder.read("cut.dxf")))) {
    more += pi / 4.0 * ((diameter + 0.2) * (diameter + 0.2) - diameter * diameter);
    rims += pi * (diameter + 0.2);
  }
  CHECK(rims > 50.0);
  check_solid(folder, "x.stl", (cut - more) * 1.5, rims * 0.02 * 1.5 + 0.05);  // admesh prints single precision
}

TEST_CASE("openings that single precision makes touch are not written") {
  const test::Folder folder;
  // At 5000 mm single precision has steps of 0.0005 (IEEE 754: 2^12 2^-23).
  folder.write("near.build.toml", R"(title = "two openings"
[[part]]
name = "sheet"
[part.solid.prism]
outline = [[0, 0], [60, 0], [60, 6000], [0, 6000]]
holes = [[[10, 5000], [20, 5000], [15, 5010]], [[10, 4999.9999], [20, 4999.9999], [15, 4990]]]
height = 2
[[panel]]
name = "left"
on = { part = "sheet", face = "top", at = [30.0, 10.0], toward = "+y" }
takes = "2.5in"
bus = "sata 6"
fixing = { holes = [[14.0, 0.0]], diameter = 3.4, sheet = 2.0 }
[[drive]]
name = "disk"
use = "2.5in/7"
bus = "sata 6"
)");
  test::check_refused(folder.run({"make", "near.build.toml", "--part", "sheet", "-o", "x.stl"}), 3, "baywright: x.stl",
                      "closer than single precision tells apart");
  CHECK(folder.names() == std::vector<std::string>{"near.build.toml"});
  CHECK(folder.run({"make", "near.build.toml", "--part", "sheet", "-o", "x.dxf"}).status == 0);
}

TEST_CASE("a bracket is watertight, and its blank has its bend on a layer of its own") {
  const test::Folder folder;
  const test::Run run = folder.run({"make", demo, "--part", "bracket 2.5in", "-o", "b.stl"});
  CHECK(run.err == "");
  CHECK(run.out.starts_with(
      "made bracket for 2.5in, 91.00 mm long, foot 17.20, upright 17.20, 2.00 thick: 4 holes of 3.80\n"));
  CHECK(run.out.find("a longer one meets what is inside") != std::string::npos);
  for (const std::string& line : test::lines(run.out)) CHECK(line.size() <= 104);  // ± has two bytes
  // Two plates, a quarter of a tube, four holes.
  const double profile = 2.0 * 13.2 * 2.0 + pi / 4.0 * (16.0 - 4.0);
  const double holes = 4.0 * pi / 4.0 * 3.8 * 3.8 * 2.0;
  check_solid(folder, "b.stl", profile * 91.0 - holes, pi / 2.0 * 6.0 * 0.02 * 91.0 + 4.0 * pi * 3.8 * 0.02 * 2.0);
  CHECK(folder.run({"make", demo, "--part", "bracket 2.5in", "-o", "b.3mf"}).status == 0);

  const test::Run cut = folder.run({"make", demo, "--part", "bracket 2.5in", "-o", "b.dxf"});
  CHECK(cut.out.find("Cut list: two of these") != std::string::npos);
  CHECK(cut.out.find("Deburr") != std::string::npos);
  const std::vector<std::string> lines = test::lines(folder.read("b.dxf"));
  const auto line = std::find(lines.begin(), lines.end(), "LINE");
  REQUIRE(line != lines.end());
  const auto figure_of = [&](const char* code) {
    const auto found = std::find(line, lines.end(), code);
    REQUIRE(found != lines.end());
    return *(found + 1);
  };
  CHECK(figure_of("8") == "BEND");
  // In the middle of the bend, from the foot's end: what is straight of it, and half of pi/2 (2 + 0.39 2).
  check_mm(std::stod(figure_of("20")), 13.2 + pi / 4.0 * 2.78, 1e-6);
  CHECK(std::count(lines.begin(), lines.end(), "CIRCLE") == 4);
  test::check_refused(folder.run({"make", demo, "--part", "bracket laser cut", "-o", "x.dxf"}), 2, demo, "wants 6.00");
}

TEST_CASE("an adapter plate is watertight") {
  const test::Folder folder;
  CHECK(folder.run({"make", demo, "--part", "adapter 2.5in in 3.5in", "-o", "a.stl"}).err == "");
  check_solid(folder, "a.stl", (117.88 * 101.6 - 10.0 * pi / 4.0 * 3.8 * 3.8) * 3.0, 10.0 * pi * 3.8 * 0.02 * 3.0);
  test::check_refused(folder.run({"make", demo, "--part", "adapter 2.5in in 3.5in", "-o", "a.dxf"}), 2, demo,
                      "`width 109.65` or more");
}

TEST_CASE("a marked spacer is one watertight part of the same height") {
  const test::Folder folder;
  const test::Run run = folder.run({"make", demo, "--part", "spacer M3 8", "--mark", "-o", "s.stl"});
  CHECK(run.out.find("The figures 8.0 are sunk by 0.40 on a tab") != std::string::npos);
  const test::Run read = folder.spawn("/usr/bin/admesh", {"s.stl"});
  CHECK(figure(read.out, "Max Z") - figure(read.out, "Min Z") == 8.0);
  // The tube; a tab 7.8 wide and 2 high to 15 from the middle, which begins 1.5 to 3 from it, less what of it is in the
  // circle: 93.6 to 99.8 mm². An 8 of three strokes lying and four standing, a 0 of two and four, and a point, 0.4
  // deep.
  const double tube = pi / 4.0 * (36.0 - 3.6 * 3.6) * 8.0;
  const double figures = 0.4 * (5.0 * 1.28 + 8.0 * 1.04 + 0.64);
  check_solid(folder, "s.stl", tube + 2.0 * 96.7 - figures, 2.0 * 3.1 + pi * (6.0 + 3.6) * 0.02 * 8.0);
  const test::Run shim = folder.run({"make", demo, "--part", "shim M3 0.5", "--mark", "-o", "shim.stl"});
  CHECK(shim.out.find("The figures 0.5 go right through") != std::string::npos);
  CHECK(figure(folder.spawn("/usr/bin/admesh", {"shim.stl"}).out, "Total disconnected facets") == 0.0);
  test::check_refused(folder.run({"make", demo, "--part", "panel", "--mark", "-o", "x.stl"}), 2, demo, "gets no mark");
}

TEST_CASE("what cannot be made is one line and no file") {
  const test::Folder folder;
  const auto refused = [&](const std::string& part, const std::string& says) {
    test::check_refused(folder.run({"make", demo, "--part", part, "-o", "x.stl"}), 2, demo, says);
  };
  refused("spcer M3 8", "did you mean `spacer`?");
  refused("pannel", "did you mean `panel`?");
  refused("spacer M3 800", "1.00 to 100.00 mm long");
  refused("guide nowhere", "nothing that can be made is called `guide nowhere`");
  CHECK(folder.run({"make", demo, "--part", "shim M3 1", "-o", "no/folder/x.stl"}).status == 3);
  CHECK(folder.names().empty());
}
