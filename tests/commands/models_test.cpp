// Parts from model files, as a user meets them: what is refused, what is noted, what is undecided.
#include "commands/run.h"

#include <doctest/doctest.h>
#include <string>
#include <utility>
#include <vector>

using namespace baywright;

namespace {

/// A block of 150 x 110 x 10 as a surface: what is under the board in place of the bench build's tray.
const std::string block =
    "v 0 0 0\nv 150 0 0\nv 150 110 0\nv 0 110 0\nv 0 0 10\nv 150 0 10\nv 150 110 10\nv 0 110 10\n"
    "f 1 4 3 2\nf 5 6 7 8\nf 1 2 6 5\nf 2 3 7 6\nf 3 4 8 7\nf 4 1 5 8\n";

std::string build_with(const std::string& part) {
  return test::with(test::source_text("tests/commands/data/bench.build.toml"), "solid = { plate = [150, 110, 1.2] }",
                    part);
}

/// White space as one blank: text is wrapped to the terminal.
std::string unwrapped(const std::string& text) {
  std::string out;
  for (const char c : text)
    if (!(c == ' ' || c == '\n')) {
      out += c;
    } else if (!out.empty() && out.back() != ' ') {
      out += ' ';
    }
  return out;
}

test::Run checked(const std::string& file, const std::string& content, const std::string& more) {
  const test::Folder folder;
  folder.write(file, content);
  folder.write("x.build.toml", build_with("model = \"" + file + "\"\n" + more));
  return folder.run({"check", "x.build.toml"});
}

void check_says(const test::Run& run, const std::string& says) {
  CAPTURE(run.err);
  CAPTURE(run.out);
  CHECK(run.status < 2);
  CHECK(unwrapped(run.out).find(says) != std::string::npos);
}

}  // namespace

TEST_CASE("one bad model of each kind, with its message") {
  const std::string head = "v 0 0 0\nv 1 0 0\nv 0 1 0\n";
  struct Bad {
    std::string file;
    std::string content;
    std::string says;  // the whole line
  };
  const std::vector<Bad> bad = {
      {"x.obj", "", "x.obj: the file is empty; bring the model again from where it was drawn"},
      {"x.obj", head,
       "x.obj: the file has no triangles; bring the model as a surface of triangles, not as lines or curves"},
      {"x.obj", head + "f 1 2 7\n",
       "x.obj:4:7: corner 7 is not there: the file has 3 `v` lines; bring the file whole, as its program wrote it"},
      {"x.obj", "v 1,5 0 0\n",
       "x.obj:1:3: `1,5` has a comma; figures are written with a decimal point and stand apart by spaces"},
      {"x.obj", "v 1e 0 0\n", "x.obj:1:3: `1e` is no figure; a figure is written as 12.5 or 1.25e1"},
      {"x.obj", "v inf 0 0\n", "x.obj:1:3: `inf` is no usable figure; it must be finite and within -1e9 and 1e9"},
      {"x.obj", head + "f 1 1 2\n",
       "x.obj: this surface has no thickness: 1.00 x 0.00 x 0.00 mm; a model goes round a body"},
      {"x.stl", "solid a\nfacet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex 1 0 0\nvertex 1 1 0\nvertex 0 1 0\n",
       "x.stl:7:1: this facet has more than three corners; STL knows triangles only"},
      {"x.stl", "garbage that goes on",
       "x.stl: byte 20: the file ends within the head of an STL file; text begins with `solid`, and a binary file "
       "has "
       "84 bytes and 50 for each triangle"},
      {"x.stl", std::string(200, '\1'),
       "x.stl: byte 80: 16843009 triangles need 842150534 bytes, and the file has 200; bring the file whole, as its "
       "program wrote it"},
      {"x.ply", "ply\n", "x.ply: a model in this format is not read; bring it as .obj or .stl"},
  };
  for (const Bad& each : bad) {
    CAPTURE(each.says);
    test::Run run = checked(each.file, each.content, "unit = \"mm\"\nup = \"+z\"\n");
    test::check_refused(run, 2, "", each.says);
  }
  const test::Folder folder;
  folder.write("x.build.toml", build_with("model = \"x.obj\""));
  test::check_refused(folder.run({"check", "x.build.toml"}), 2,
                      "x.build.toml:10:9: ", "there is no file `x.obj`; give its path as seen from this file's folder");
  folder.write("x.build.toml", build_with("model = \".\""));
  test::check_refused(folder.run({"check", "x.build.toml"}), 2, "", "this is a folder; give a file inside it");
}

TEST_CASE("a guessed unit and axis are noted with the size as read and as it would be") {
  check_says(checked("x.obj", block, ""),
             "Note: Tray (x.obj) states no unit and no way up: read as mm it is 150.00 x 110.00 x 10.00 mm; as in it "
             "would be 3810.00 x 2794.00 x 254.00 mm. Its axis +z was taken as up. Say it with `unit` and `up`.");
  check_says(checked("x.obj", block, "unit = \"mm\"\n"),
             "Note: Tray (x.obj) states no way up: its axis +z was taken as up. Say it with `up`.");
  const test::Run said = checked("x.obj", block, "unit = \"mm\"\nup = \"+z\"\n");
  check_says(said, "tray");
  CHECK(said.out.find("x.obj") == std::string::npos);
}

TEST_CASE("a model answers as the solid of its form does") {
  const test::Folder folder;
  folder.write("x.obj", block);
  folder.write("model.build.toml", build_with("model = \"x.obj\"\nunit = \"mm\"\nup = \"+z\""));
  folder.write("solid.build.toml", build_with("solid = { box = [\"150 ±0\", \"110 ±0\", \"10 ±0\"] }"));
  const test::Run model = folder.run({"explain", "model.build.toml"});
  const test::Run solid = folder.run({"explain", "solid.build.toml"});
  CHECK(model.status == solid.status);
  CHECK(model.out.find("clears tray by") != std::string::npos);
  CHECK(model.out == solid.out);
}

TEST_CASE("mended and open surfaces are noted, and what stands in the box of an open one is undecided") {
  // The lid's square 5 6 7 8 wound the other way and given twice.
  const std::string odd = test::with(block, "f 5 6 7 8\n", "f 8 7 6 5\nf 8 7 6 5\nf 1 1 2\n");
  check_says(checked("x.obj", odd, "unit = \"mm\"\nup = \"+z\"\n"), "Note: Tray (x.obj) was mended: ");
  const std::string open = test::with(block, "f 5 6 7 8\n", "");
  const std::string keys = "unit = \"mm\"\nup = \"+z\"\n";
  check_says(checked("x.obj", open, keys), "Note: Tray (x.obj) has no inside: 4 open edges, the first near ");
  // A hood under the board with its mouth down: the card is in the box of a surface that is open below.
  std::string hood = test::with(block, "f 1 4 3 2\n", "");
  for (std::size_t at = 0; (at = hood.find(" 10\n", at)) != std::string::npos;) hood.replace(at, 4, " 40\n");
  const test::Folder folder;
  folder.write("x.obj", hood);
  folder.write("x.build.toml", test::with(build_with("model = \"x.obj\"\n" + keys),
                                          "under = { part = \"board\", by = \"9.1 ±0.2\" }", "at = [0, 0, -30]"));
  const test::Run run = folder.run({"check", "x.build.toml"});
  CHECK(run.status == 1);
  check_says(run, "undecided It could not be settled whether stand-off clears tray (about 10.00 mm). So do card,");
}

TEST_CASE("a way through the mouth of an open surface is not taken for a free one") {
  // Four walls without floor or lid, 20 mm over the card: as a surface nothing is in the way of a card that leaves
  // upward.
  const std::string walls =
      "v 0 0 0\nv 260 0 0\nv 260 160 0\nv 0 160 0\nv 0 0 40\nv 260 0 40\nv 260 160 40\nv 0 160 40\n"
      "f 1 2 6 5\nf 2 3 7 6\nf 3 4 8 7\nf 4 1 5 8\n";
  const test::Folder folder;
  folder.write("walls.obj", walls);
  folder.write(
      "x.build.toml",
      "title = \"x\"\n[[part]]\nname = \"board\"\nsolid = { plate = [200, 120, 1.57] }\n[[part]]\nname = \"walls\"\n"
      "model = \"walls.obj\"\nunit = \"mm\"\nup = \"+z\"\nat = [-30, -20, 24]\n[[slot]]\nname = \"slot\"\non = { part "
      "= "
      "\"board\", at = [20, 60], toward = \"+x\" }\nsocket = \"m2/M/H4.2\"\nlengths = [2280]\nbus = \"pcie 4.0 x4\"\n"
      "[[drive]]\nname = \"card\"\nuse = \"m2/2280-S3-M\"\nbus = \"pcie 4.0 x4\"\n");
  check_says(folder.run({"check", "x.build.toml"}), "The usual way, at 20 degrees, is blocked by walls, but it enters");
}

TEST_CASE("the demo's heatsink is what its script writes") {
  const test::Folder folder;
  const test::Run run = folder.spawn("/usr/bin/python3", {test::source_path("models/make_pin_heatsink.py")});
  CHECK(run.status == 0);
  CHECK(run.out.size() > 100'000);
  CHECK(run.out == test::source_text("models/parts/pin-heatsink-4.obj"));
}
