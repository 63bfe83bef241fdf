// Outlines from DXF and SVG: against areas by hand, against libdxflib's own reading, and every prefix of a file.
#include "parts/flat_drawing.h"

#include "parts/document.h"
#include "support/check_mm.h"

#include <cmath>
#include <doctest/doctest.h>
#include <dxflib/dl_creationadapter.h>
#include <dxflib/dl_dxf.h>
#include <fstream>
#include <numbers>
#include <sstream>
#include <string>
#include <vector>

namespace {

using namespace baywright;
using geometry::Outline;
using geometry::Vec2;
using test::check_mm;

std::string file_text(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  return std::string(std::istreambuf_iterator<char>(in), {});
}

double area(const Outline& outline) {
  double sum = 0.0;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Vec2& a = outline[i];
    const Vec2& b = outline[(i + 1) % outline.size()];
    sum += a.x * b.y - b.x * a.y;
  }
  return 0.5 * sum;
}

std::string dxf(const std::string& entities, const std::string& units = "4") {
  return "0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n" + units + "\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n" + entities +
         "0\nENDSEC\n0\nEOF\n";
}

std::string line(double x1, double y1, double x2, double y2) {
  std::ostringstream out;
  out << "0\nLINE\n8\n0\n10\n" << x1 << "\n20\n" << y1 << "\n11\n" << x2 << "\n21\n" << y2 << "\n";
  return out.str();
}

const std::string square = line(0, 0, 40, 0) + line(40, 30, 40, 0) + line(40, 30, 0, 30) + line(0, 30, 0, 0);
const std::string circle = "0\nCIRCLE\n8\n0\n10\n10\n20\n12\n40\n1.6\n";

std::string svg(const std::string& inside,
                const std::string& head = "width=\"40mm\" height=\"30mm\" viewBox=\"0 0 40 30\"") {
  return "<?xml version=\"1.0\"?>\n<!-- a panel -->\n<svg xmlns=\"http://www.w3.org/2000/svg\" " + head + ">\n" +
         inside + "\n</svg>\n";
}

parts::FlatOutline from_dxf(const std::string& text, std::optional<double> unit = {}) {
  return parts::outline_of(parts::read_flat_dxf(text, "p.dxf"), "p.dxf", unit);
}

parts::FlatOutline from_svg(const std::string& text, std::optional<double> unit = {}) {
  return parts::outline_of(parts::read_flat_svg(text, "p.svg"), "p.svg", unit);
}

template <class Read>
std::string fault_of(const Read& read) {
  try {
    (void)read();
  } catch (const parts::Stop& stop) {
    return stop.fault.text();
  }
  return "read";
}

/// What libdxflib sees of a drawing.
struct Seen : DL_CreationAdapter {
  std::vector<DL_CircleData> circles;
  std::vector<DL_LineData> lines;
  std::vector<DL_ArcData> arcs;
  std::vector<DL_VertexData> corners;
  void addCircle(const DL_CircleData& data) override { circles.push_back(data); }
  void addLine(const DL_LineData& data) override { lines.push_back(data); }
  void addArc(const DL_ArcData& data) override { arcs.push_back(data); }
  void addVertex(const DL_VertexData& data) override { corners.push_back(data); }
};

const std::string demo = BAYWRIGHT_SOURCE "/models/builds/drawn-panel.dxf";

}  // namespace

TEST_CASE("DXF: lines in any order and sense make an outline, a circle a hole") {
  const parts::FlatOutline got = from_dxf(dxf(square + circle));
  check_mm(area(got.outline), 1200.0, 1e-9);
  CHECK(got.outline.size() == 4);
  REQUIRE(got.round.size() == 1);
  check_mm(got.round[0].x, 10.0, 0.0);
  check_mm(got.round[0].y, 12.0, 0.0);
  check_mm(got.round[0].diameter, 3.2, 0.0);
  REQUIRE(got.holes.size() == 1);
  for (const Vec2& p : got.holes[0]) check_mm(glm::distance(p, Vec2(10.0, 12.0)), 1.6, 1e-9);  // on the circle
  const double whole = std::numbers::pi * 1.6 * 1.6;
  CHECK(std::abs(area(got.holes[0])) < whole);
  CHECK(std::abs(area(got.holes[0])) > whole - parts::hole_mm * 2.0 * std::numbers::pi * 1.6);
}

TEST_CASE("DXF: ends within 0.01 join, farther apart they are open, and where is said") {
  const auto closed = [&](double gap) {
    return line(0, 0, 40, 0) + line(40, 0, 40, 30) + line(40, 30, 0, 30) + line(0, 30, 0, gap);
  };
  CHECK(fault_of([&] { return from_dxf(dxf(closed(0.0099))); }) == "read");
  const std::string open = fault_of([&] { return from_dxf(dxf(closed(0.02))); });
  CHECK(open.find("p.dxf:") == 0);
  CHECK(open.find("the outline is open at (0.00, 0.02) mm") != std::string::npos);
}

TEST_CASE("DXF: bulges and arcs, by the areas of circles") {
  // A slot of two half circles of radius 2 and two straight sides of 30.
  const std::string slot =
      "0\nLWPOLYLINE\n8\n0\n90\n4\n70\n1\n10\n0\n20\n0\n10\n30\n20\n0\n42\n1\n10\n30\n20\n4\n10\n0\n20\n4\n42\n1\n";
  const double want = 30.0 * 4.0 + std::numbers::pi * 4.0;
  CHECK(std::abs(area(from_dxf(dxf(slot)).outline) - want) < 0.01 * 4.0 * std::numbers::pi);
  const std::string arcs = line(0, 0, 30, 0) + "0\nARC\n8\n0\n10\n30\n20\n2\n40\n2\n50\n270\n51\n90\n" +
                           line(0, 4, 30, 4) + "0\nARC\n8\n0\n10\n0\n20\n2\n40\n2\n50\n90\n51\n270\n";
  CHECK(std::abs(area(from_dxf(dxf(arcs)).outline) - want) < 0.01 * 4.0 * std::numbers::pi);
  const std::string old =
      "0\nPOLYLINE\n8\n0\n66\n1\n70\n1\n0\nVERTEX\n8\n0\n10\n0\n20\n0\n0\nVERTEX\n8\n0\n10\n30\n20\n0\n42\n1\n"
      "0\nVERTEX\n8\n0\n10\n30\n20\n4\n0\nVERTEX\n8\n0\n10\n0\n20\n4\n42\n1\n0\nSEQEND\n8\n0\n";
  CHECK(std::abs(area(from_dxf(dxf(old)).outline) - want) < 0.01 * 4.0 * std::numbers::pi);
  const std::string halves = square +
                             "0\nARC\n8\n0\n10\n20\n20\n15\n40\n5\n50\n0\n51\n180\n"
                             "0\nARC\n8\n0\n10\n20\n20\n15\n40\n5\n50\n180\n51\n0\n";
  CHECK(from_dxf(dxf(halves)).round.size() == 1);  // two halves of a circle are a round hole
}

TEST_CASE("units: the file's, else the one that is given, else refused") {
  check_mm(from_dxf(dxf(square, "1")).outline[2].x - from_dxf(dxf(square, "1")).outline[0].x, 40.0 * 25.4, 1e-9);
  const std::string silent = fault_of([&] { return from_dxf(dxf(square, "0")); });
  CHECK(silent.find("does not say its unit") != std::string::npos);
  check_mm(area(from_dxf(dxf(square, "0"), 10.0).outline), 120000.0, 1e-6);
  const std::string rect = "<rect x=\"1\" y=\"2\" width=\"10\" height=\"5\"/>";
  check_mm(area(from_svg(svg(rect, "width=\"8cm\" height=\"6cm\" viewBox=\"0 0 40 30\"")).outline), 200.0, 1e-9);
  CHECK(fault_of([&] {
          return from_svg(svg(rect, "width=\"40\" height=\"30\" viewBox=\"0 0 40 30\""));
        }).find("does not say its unit") != std::string::npos);
}

TEST_CASE("SVG: the same plate by each element, y turned up from the lower edge") {
  const char* const plates[] = {
      "<rect width=\"40\" height=\"30\"/>",
      "<polygon points=\"0,0 40,0 40,30 0,30\"/>",
      "<path d=\"M0 0H40V30H0Z\"/>",
      "<path d=\"m 0,0 40,0 0,30 -40,0 z\"/>",
      "<g transform=\"translate(40 30) rotate(180)\"><path d=\"M0 0 40 0 40 30 0 30 0 0\"/></g>",
      "<line x1=\"0\" y1=\"0\" x2=\"40\" y2=\"0\"/><polyline points=\"40 0 40 30 0 30 0 0\"/>",
  };
  for (const char* plate : plates) {
    CAPTURE(plate);
    const parts::FlatOutline got = from_svg(svg(std::string(plate) + "<circle cx=\"10\" cy=\"10\" r=\"1.6\"/>"));
    check_mm(area(got.outline), 1200.0, 1e-9);
    REQUIRE(got.round.size() == 1);
    check_mm(got.round[0].x, 10.0, 1e-9);
    check_mm(got.round[0].y, 20.0, 1e-9);
  }
  // Quarters of circles of radius 5 at the corners, as rx and as arcs.
  const double want = 1200.0 - (4.0 - std::numbers::pi) * 25.0;
  for (const char* round : {"<rect width=\"40\" height=\"30\" rx=\"5\"/>",
                            "<path d=\"M5 0H35A5 5 0 0 1 40 5V25a5,5 0 01-5,5H5A5 5 0 0 1 0 25V5A5 5 0 0 1 5 0z\"/>"})
    CHECK(std::abs(area(from_svg(svg(round)).outline) - want) < 0.01 * 10.0 * std::numbers::pi);
  // A circle of radius 10 of four curves: their middles lie 0.02 % outside it (a common figure, by hand from 0.5523).
  const std::string curves = "<path d=\"M20 5C25.523 5 30 9.477 30 15S1 1 1 1\"/>";  // S is not understood
  CHECK(fault_of([&] { return from_svg(svg(curves)); }).find("`S` is not understood") != std::string::npos);
  const std::string bezier =
      "<path d=\"M20 5C25.523 5 30 9.477 30 15C30 20.523 25.523 25 20 25C14.477 25 10 20.523 10 15"
      "C10 9.477 14.477 5 20 5Z\"/>";
  CHECK(std::abs(area(from_svg(svg(bezier)).outline) / (100.0 * std::numbers::pi) - 1.0) < 1e-3);
}

TEST_CASE("what is wrong is named, with its line") {
  struct Case {
    std::string text;
    std::string want;
  };
  const std::vector<Case> cases = {
      {dxf(square + line(40, 0, 50, 0)), "more than two lines meet at (40.00, 0.00)"},
      {dxf(line(0, 0, 40, 30) + line(40, 30, 40, 0) + line(40, 0, 0, 30) + line(0, 30, 0, 0)), "crosses itself"},
      {dxf(square + "0\nCIRCLE\n8\n0\n10\n39\n20\n12\n40\n1.6\n"), "p.dxf:"},
      {dxf("0\nTEXT\n8\n0\n10\n0\n20\n0\n"), "nothing is drawn"},
      {dxf("0\nCIRCLE\n8\n0\n10\n39\n20\n12\n40\n1,6\n"), "`1,6` is no usable figure"},
      {dxf("0\nCIRCLE\n8\n0\n10\n39\n40\n1.6\n"), "this CIRCLE has no group 20"},
      {dxf(square).substr(0, 150), "ends before its EOF"},
      {"no drawing\n", "no group code"},
  };
  for (const Case& each : cases) {
    CAPTURE(each.want);
    const std::string fault = fault_of([&] { return from_dxf(each.text); });
    CHECK(fault.find(each.want) != std::string::npos);
    CHECK(fault.find("p.dxf") == 0);
  }
  // A bend is no outline, though it ends nowhere; anything but a straight line is no bend.
  const auto on_bend = [](const std::string& entity) {
    return "0\n" + entity + "\n8\nBend\n10\n10\n20\n0\n11\n10\n21\n30\n";
  };
  const parts::FlatOutline bent = from_dxf(dxf(square + on_bend("LINE")));
  REQUIRE(bent.bends.size() == 1);
  check_mm(bent.bends[0].to.x, 10.0, 1e-9);
  check_mm(bent.bends[0].to.y, 30.0, 1e-9);
  CHECK_THROWS_AS((void)from_dxf(dxf(square + on_bend("SPLINE"))), parts::Stop);
  const parts::FlatOutline skipped = from_dxf(dxf(square + "0\nSPLINE\n8\n0\n0\nTEXT\n8\n0\n0\nTEXT\n8\n0\n"));
  CHECK(skipped.passed_over == std::map<std::string, int>{{"SPLINE", 1}, {"TEXT", 2}});
}

TEST_CASE("libdxflib reads the same lines, arcs, circles and corners from the demo") {
  const std::string text = file_text(demo);
  const parts::FlatDrawing got = parts::read_flat_dxf(text, "demo");
  Seen seen;
  DL_Dxf reader;
  REQUIRE(reader.in(demo, &seen));
  REQUIRE(seen.circles.size() == got.circles.size());
  CHECK(got.circles.size() == 12);
  for (std::size_t i = 0; i < got.circles.size(); ++i) {
    check_mm(got.circles[i].centre.x, seen.circles[i].cx, 1e-12);
    check_mm(got.circles[i].centre.y, seen.circles[i].cy, 1e-12);
    check_mm(got.circles[i].radius, seen.circles[i].radius, 1e-12);
  }
  REQUIRE(seen.lines.size() == 2);
  REQUIRE(seen.arcs.size() == 2);
  REQUIRE(seen.corners.size() == 12);
  REQUIRE(got.strokes.size() == 16);
  for (std::size_t i = 0; i < 12; ++i) {  // the polyline's strokes come first
    check_mm(got.strokes[i].from.x, seen.corners[i].x, 1e-12);
    check_mm(got.strokes[i].from.y, seen.corners[i].y, 1e-12);
    CHECK(got.strokes[i].arc.has_value() == (seen.corners[i].bulge != 0.0));
  }
  check_mm(got.strokes[12].to.y, seen.lines[0].y2, 1e-12);
  check_mm(got.strokes[13].arc->radius, seen.arcs[0].radius, 1e-12);
  check_mm(got.strokes[13].arc->start * 180.0 / std::numbers::pi, seen.arcs[0].angle1, 1e-9);
  const parts::FlatOutline outline = parts::outline_of(got, "demo", {});
  CHECK(outline.holes.size() == 13);
  CHECK(outline.round.size() == 12);
  CHECK(outline.passed_over == std::map<std::string, int>{{"TEXT", 1}});
}

TEST_CASE("every beginning of a file is read or refused with its place") {
  const std::string whole_dxf = file_text(demo);
  const std::string whole_svg =
      svg("<g transform=\"scale(1)\"><path d=\"M5 0H35A5 5 0 0 1 40 5V25C40 28 38 30 35 30H5L0 25V5z\"/></g>"
          "<circle cx='10' cy=\"10\" r=\"1.6\"/><text x=\"1\">a</text>");
  int refused = 0;
  int good = 0;
  const auto count = [&](const std::string& fault) {
    (fault == "read" ? good : refused) += 1;
    CHECK((fault == "read" || fault.find("p.") == 0));
  };
  for (std::size_t size = 0; size <= whole_dxf.size(); ++size)
    count(fault_of([&] { return from_dxf(whole_dxf.substr(0, size)); }));
  for (std::size_t size = 0; size <= whole_svg.size(); ++size)
    count(fault_of([&] { return from_svg(whole_svg.substr(0, size)); }));
  CHECK(good >= 2);
  CHECK(refused > 1200);
}
