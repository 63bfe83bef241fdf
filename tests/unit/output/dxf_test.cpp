// Read back by dxflib, which has its own idea of what a DXF file is.
#include "output/dxf.h"

#include "output/printable_words.h"
#include "support/check_mm.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <dxflib/dl_creationadapter.h>
#include <dxflib/dl_dxf.h>
#include <limits>
#include <numbers>
#include <set>
#include <sstream>

using namespace baywright::output;
using baywright::test::check_mm;

namespace {

struct Read : DL_CreationAdapter {
  std::vector<std::pair<std::string, DL_CircleData>> circles;
  std::vector<std::pair<std::string, DL_LineData>> lines;
  std::vector<std::pair<std::string, DL_TextData>> texts;
  std::vector<DL_VertexData> vertices;
  std::vector<int> closed;
  std::set<std::string> layers;
  int units = -1;

  void addLayer(const DL_LayerData& layer) override { layers.insert(layer.name); }
  void addCircle(const DL_CircleData& circle) override { circles.emplace_back(attributes.getLayer(), circle); }
  void addLine(const DL_LineData& line) override { lines.emplace_back(attributes.getLayer(), line); }
  void addText(const DL_TextData& text) override { texts.emplace_back(attributes.getLayer(), text); }
  void addPolyline(const DL_PolylineData& line) override { closed.push_back(line.flags & 1); }
  void addVertex(const DL_VertexData& vertex) override { vertices.push_back(vertex); }
  void setVariableInt(const std::string& key, int value, int) override {
    if (key == "$INSUNITS") units = value;
  }
};

Read read(const std::string& dxf) {
  Read out;
  DL_Dxf reader;
  std::stringstream stream(dxf);
  CHECK(reader.in(stream, &out));
  return out;
}

Sheet plate() {
  Sheet sheet;
  sheet.width = 165.0;
  sheet.height = 260.0;
  Group outline;
  outline.name = "outline";
  outline.add(Line{{{0, 0}, {165, 0}, {165, 260}, {0, 260}}, true, {}});
  Group holes;
  holes.name = "holes";
  holes.add(Disc{{64.0, 260.0 - 14.14}, 1.7, "", Pen{}});
  holes.add(Disc{{1.0 / 3.0, 100.0}, 2.05, "", Pen{}});
  Group notes;
  notes.name = "scale bar & <notes>";
  notes.add(Line{{{10, 20}, {110, 20}}, false, {thin_line, ink, true}});
  notes.add(Text{{30, 40}, "Ø3.40 ±0.10\n0\nCIRCLE ^J \xFF", 3.0, Anchor::middle, false, true, true, ink});
  sheet.all.add(outline);
  sheet.all.add(holes);
  sheet.all.add(notes);
  return sheet;
}

}  // namespace

TEST_CASE("another reader finds circles and lines exactly where they are, in mm from the lower left corner") {
  const Read got = read(to_dxf(plate()));
  CHECK(got.units == 4);  // millimetres
  CHECK(got.layers == std::set<std::string>{"0", "SHEET", "OUTLINE", "HOLES", "SCALE_BAR____NOTES_"});
  REQUIRE(got.circles.size() == 2);  // no third one out of a hostile name
  CHECK(got.circles[0].first == "HOLES");
  check_mm(got.circles[0].second.cx, 64.0, 1e-12);
  check_mm(got.circles[0].second.cy, 14.14, 1e-9);
  check_mm(got.circles[0].second.radius, 1.7, 1e-12);
  check_mm(got.circles[1].second.cx, 1.0 / 3.0, 1e-9);
  REQUIRE(got.lines.size() == 1);
  check_mm(got.lines[0].second.x2 - got.lines[0].second.x1, 100.0, 1e-12);
  check_mm(got.lines[0].second.y1, 240.0, 1e-12);
  REQUIRE(got.closed == std::vector<int>{1});
  REQUIRE(got.vertices.size() == 4);
  check_mm(got.vertices[0].y, 260.0, 1e-12);
  check_mm(got.vertices[2].x, 165.0, 1e-12);
}

TEST_CASE("letters keep to one line and to ASCII") {
  const std::string dxf = to_dxf(plate());
  const Read got = read(dxf);
  REQUIRE(got.texts.size() == 1);
  CHECK(got.texts[0].second.text == "\\U+00D83.40 \\U+00B10.10 0 CIRCLE ^ J  ");
  check_mm(got.texts[0].second.angle, 0.5 * std::numbers::pi, 1e-9);  // that reader turns degrees to radians
  CHECK(std::all_of(dxf.begin(), dxf.end(), [](char c) { return static_cast<unsigned char>(c) < 0x80U; }));
  CHECK(dxf == to_dxf(plate()));
}

TEST_CASE("what a clip hides is cut off and what is no number is left out") {
  Sheet sheet;
  Group group;
  group.name = "view";
  group.clip = Box{{10, 10}, {20, 20}};
  group.add(Line{{{0, 15}, {30, 15}}, false, {}});
  group.add(Line{{{0, 5}, {30, 5}}, false, {}});
  group.add(Line{{{5, 12}, {15, 12}, {15, 30}}, false, {}});
  group.add(Disc{{15, 25}, 1.0, "", Pen{}});
  sheet.all.add(group);
  const double nan = std::numeric_limits<double>::quiet_NaN();
  sheet.all.add(Line{{{nan, 0}, {1, 1}}, false, {}});
  sheet.all.add(Disc{{1, 1}, nan, "", Pen{}});
  sheet.all.add(Line{{{1, 1}, {2, 2}}, false, {thin_line, paper, false}});  // a mask
  const Read got = read(to_dxf(sheet));
  CHECK(got.circles.empty());
  REQUIRE(got.lines.size() == 3);
  check_mm(got.lines[0].second.x1, 10.0, 1e-12);
  check_mm(got.lines[0].second.x2, 20.0, 1e-12);
  check_mm(got.lines[1].second.x1, 10.0, 1e-12);
  check_mm(got.lines[2].second.y2, 210.0 - 20.0, 1e-12);
}

TEST_CASE("a plate to cut has its outline and its holes as asked for") {
  baywright::plans::Printable plate;
  plate.kind = baywright::plans::Printable::Kind::plate;
  plate.outline = {{-5.0, 2.0}, {45.0, 2.0}, {45.0, 32.0}, {-5.0, 32.0}};
  plate.openings = {{{20.0, 10.0}, {24.0, 10.0}, {22.0, 14.0}}};
  plate.holes = {{{0.0, 7.0}, 3.4, 3.6}};
  plate.height = 1.5;
  const Read got = read(to_dxf(printable_cut(plate)));
  CHECK(got.units == 4);
  REQUIRE(got.circles.size() == 1);
  CHECK(got.circles[0].first == "HOLES");
  check_mm(got.circles[0].second.cx, 5.0, 1e-9);
  check_mm(got.circles[0].second.cy, 5.0, 1e-9);
  check_mm(got.circles[0].second.radius, 1.7, 1e-9);
  CHECK(got.closed == std::vector<int>{1, 1});
  REQUIRE(got.vertices.size() == 7);
  check_mm(got.vertices[2].x, 50.0, 1e-9);
  check_mm(got.vertices[2].y, 30.0, 1e-9);
}
