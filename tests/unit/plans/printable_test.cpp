// Parts to print, against tables of screws and the closed forms of prisms.
#include "plans/printable.h"

#include "plans/printed_mark.h"
#include "support/check_mm.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <limits>
#include <numbers>

using namespace baywright;
using namespace baywright::plans;
using test::check_mm;
namespace general = standards::general_tolerances;

namespace {

const std::string panel = R"(title = "a panel"
[[part]]
name = "side"
solid = { plate = [300, 200, 1.5] }
[[part]]
name = "angle"
solid = { prism = { outline = [[0, 0], [8, 0], [8, 2], [2, 2], [2, 20], [0, 20]], holes = [[[0.5, 5], [1.5, 5], [1, 7]]], height = 30 } }
above = { part = "side", by = 50 }
[[part]]
name = "mother"
use = "board/mini-itx"
above = { part = "side", by = 90 }
[[panel]]
name = "left"
on = { part = "side", face = "top", at = [60.0, 30.0], toward = "+y" }
takes = "2.5in"
bus = "sata 6"
spacers = "5.0 ±0.1"
fixing = { holes = [[14.0, -30.86], [14.0, 30.86], [90.6, -30.86], [90.6, 30.86]], diameter = "3.4 ±0.1", screw = "M3", sheet = 1.5 }
[[drive]]
name = "disk"
use = "2.5in/7"
bus = "sata 6"
)";

build::Build read(const std::string& text) {
  auto got = build::read_text(text, "in-a-test.build.toml");
  if (const auto* fault = std::get_if<parts::Fault>(&got)) FAIL(fault->text());
  return std::get<build::Build>(std::move(got));
}

Printable made(const std::string& asked, const char* way = "fdm") {
  auto got = printable(read(panel), asked, *general::printing(way));
  if (const auto* why = std::get_if<std::string>(&got)) FAIL(*why);
  return std::get<Printable>(std::move(got));
}

geometry::Solid solid(const Printable& part) {
  auto got = printed(part);
  if (const auto* why = std::get_if<geometry::Refusal>(&got)) FAIL(why->reason);
  return std::get<geometry::Solid>(std::move(got));
}

void check_refused(const std::string& asked, const std::string& says) {
  CAPTURE(asked);
  const auto got = printable(read(panel), asked, *general::printing("fdm"));
  REQUIRE(std::holds_alternative<std::string>(got));
  CAPTURE(std::get<std::string>(got));
  CHECK(std::get<std::string>(got).find(says) != std::string::npos);
}

/// Least distance of a polygon's sides from a point, and the farthest corner.
std::pair<double, double> radii(const Outline& polygon, const Vec2& middle) {
  double least = std::numeric_limits<double>::infinity();
  double most = 0.0;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Vec2 a = polygon[i] - middle;
    const Vec2 b = polygon[(i + 1) % polygon.size()] - middle;
    least = std::min(least, std::abs(a.x * b.y - a.y * b.x) / glm::distance(a, b));
    most = std::max(most, glm::length(a));
  }
  return {least, most};
}

double area_of(const Outline& outline) {
  double twice = 0.0;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Vec2& a = outline[i];
    const Vec2& b = outline[(i + 1) % outline.size()];
    twice += a.x * b.y - a.y * b.x;
  }
  return 0.5 * twice;
}

/// A closed mesh without a flaw.
const geometry::Mesh& mesh_of(const geometry::Solid& shape) {
  REQUIRE(shape.mesh() != nullptr);
  CHECK(shape.mesh()->closed());
  for (const geometry::MeshFlaw& flaw : shape.mesh()->flaws())
    CHECK(flaw.kind == geometry::MeshFlaw::Kind::split_vertices);
  return *shape.mesh();
}

}  // namespace

TEST_CASE("a spacer has the screw's clearance hole and what printing shrinks") {
  // ISO 273, medium: 3.4 for M3, 2.9 for M2.5, as an engineering reference page gives it. 0.1 to 0.3 under size is a
  // print shop's figure for FDM; none is published for the others.
  const Printable fdm = made("spacer M3 8");
  CHECK(fdm.name == "spacer M3");
  check_mm(fdm.holes[0].asked, 3.4, 1e-12);
  check_mm(fdm.holes[0].drawn, 3.6, 1e-12);
  check_mm(fdm.outside, 6.0, 1e-12);
  check_mm(fdm.height, 8.0, 1e-12);
  CHECK(!fdm.uncut.empty());
  check_mm(made("shim m2.5 0.5").holes[0].drawn, 3.1, 1e-12);
  check_mm(made("shim M2.5 1/16 in").height, 1.5875, 1e-12);
  for (const char* way : {"sla", "sls"}) check_mm(made("spacer M3 8", way).holes[0].drawn, 3.4, 1e-12);
  // The wall is thick enough where twice the thread would not be.
  check_mm(made("spacer M2 8").outside, 2.4 + 0.2 + 2.0 * 1.2, 1e-12);
  // 3.86: one maker's insert for M3, in the FastenersWB data.
  check_mm(made("stand-off M3 8").holes[0].asked, 3.86, 1e-12);
}

TEST_CASE("a spacer for a place is as high as the build says") {
  const Printable spacer = made("spacer left");
  check_mm(spacer.height, 5.0, 1e-12);
  REQUIRE(spacer.needed.has_value());
  check_mm(spacer.needed->plus, 0.1, 1e-12);
}

TEST_CASE("no printed hole is smaller than drawn and nothing larger outside") {
  for (const char* asked : {"shim M1.6 1", "spacer M3 8", "stand-off M4 20"}) {
    CAPTURE(asked);
    const Printable part = made(asked);
    const geometry::Solid shape = solid(part);
    REQUIRE(shape.holes().size() == 1);
    const auto [hole, corner] = radii(shape.holes()[0], Vec2(0.0));
    check_mm(hole, 0.5 * part.holes[0].drawn, 1e-9);
    CHECK(corner <= 0.5 * part.holes[0].drawn + 0.02);
    CHECK(corner > 0.5 * part.holes[0].drawn + 1e-4);  // a polygon round it, not on it
    const auto [side, outside] = radii(shape.outline(), Vec2(0.0));
    check_mm(outside, 0.5 * part.outside, 1e-9);
    CHECK(side >= 0.5 * part.outside - 0.02);
  }
}

TEST_CASE("plates are made flat with the holes of their places") {
  const Printable side = made("side");
  check_mm(side.height, 1.5, 1e-12);
  REQUIRE(side.holes.size() == 4);
  // The connector end stands at (60, 30) and looks up the panel: its first hole is 14 along, half of 61.72 aside.
  CHECK(std::any_of(side.holes.begin(), side.holes.end(),
                    [](const PrintedHole& each) { return glm::distance(each.at, Vec2(60.0 - 30.86, 44.0)) < 1e-9; }));
  const double round = std::numbers::pi / 4.0 * 3.6 * 3.6 * 1.5;
  check_mm(solid(side).volume(), 300.0 * 200.0 * 1.5 - 4.0 * round, 4.0 * std::numbers::pi * 3.6 * 0.02 * 1.5);
  const Printable angle = made("angle");
  check_mm(solid(angle).volume(), (8.0 * 2.0 + 2.0 * 18.0 - 1.0) * 30.0, 1e-9);
  CHECK(angle.openings.size() == 1);
}

TEST_CASE("a guide reaches the datum edges and has holes for the pilot") {
  const Printable guide = made("guide left");
  REQUIRE(guide.holes.size() == 4);
  double left = 1e9;
  double lower = 1e9;
  for (const Vec2& p : guide.outline) left = std::min(left, p.x), lower = std::min(lower, p.y);
  check_mm(left, 0.0, 1e-12);
  check_mm(lower, 0.0, 1e-12);
  // A pilot of 1.5 to 2: common practice, no source.
  for (const PrintedHole& each : guide.holes) check_mm(each.asked, 2.0, 1e-12);
  const std::vector<PrintedHole> holes = made("side").holes;
  for (std::size_t i = 0; i < holes.size(); ++i) check_mm(glm::distance(guide.holes[i].at, holes[i].at), 0.0, 1e-9);
}

TEST_CASE("what cannot be made is refused with what can") {
  check_refused("spcer M3 8", "did you mean `spacer`?");
  check_refused("sied", "did you mean `side`?");
  check_refused("spacer lfet", "did you mean `spacer left`?");
  check_refused("",
                "it can be side, angle, spacer left, guide left, spacer M3 8, shim M3 0.5, stand-off M3 10, bracket "
                "2.5in or adapter 2.5in in 3.5in");
  check_refused("mother", "and no board");
  check_refused("spacer M33 8", "there is no thread `M33`; it must be M1.6, M2");
  check_refused("spacer", "wants a thread and a length, as `spacer M3 8`");
  check_refused("bracket", "it can be 2.5in, 3.5in or left");
  check_refused("adapter", "what can be made is `adapter 2.5in in 3.5in`");
  check_refused("spacer M3", "wants a thread and a length, as `spacer M3 8`");
  check_refused("spacer M3 ", "the length of");
  check_refused("spacer M3 8,5", "the length of `spacer M3 8,5`");
  check_refused("spacer M3 nan", "the length of");
  check_refused("spacer M3 8 ±0.1", "has limits");
  for (const char* length : {"0", "-8", "0.99", "101", "10000"})
    check_refused(std::string("spacer M3 ") + length, "1.00 to 100.00");
  check_refused("shim M3 0.05", "0.10 to 3.00");
  check_refused("stand-off M3 5", "5.74 to 100.00");
  check_refused("stand-off 6-32 10", "no size of a heat-set insert for 6-32");
  check_refused("guide side", "nothing that can be made is called `guide side`");
  check_refused("brackt 2.5in", "did you mean `bracket`?");
}

TEST_CASE("a bracket has the drive's side holes and stands clear of its bend") {
  // SFF-8201, Table 3-1, as transcribed: side holes 14.00 and 90.60 from the connector end, 3.00 over the base. M3: ISO
  // 273 coarse 3.6, ISO 7045 pan head 5.6.
  const Printable part = made("bracket 2.5in thickness 1.5 raised 8 foot 20");
  REQUIRE(part.bent.has_value());
  const Bent& bent = *part.bent;
  check_mm(bent.radius, 1.5, 1e-12);
  check_mm(bent.upright, 8.0 + 3.0 + 2.0 * 3.6, 1e-12);  // two diameters from the edge: common practice, no source
  check_mm(bent.foot, 20.0, 1e-12);
  CHECK(part.uncut == "");
  // Flat: straight legs and the bend. pi/180 90 (r + K t), K 0.33 to 0.45, a bend calculator's page.
  check_mm(bent.allowance, std::numbers::pi / 2.0 * (1.5 + 0.39 * 1.5), 1e-12);
  check_mm(part.outline[2].y, (20.0 - 3.0) + bent.allowance + (18.2 - 3.0), 1e-9);
  check_mm(part.outline[2].x, 76.6 + 4.0 * 3.6, 1e-9);
  REQUIRE(part.holes.size() == 4);
  check_mm(part.holes[2].at.x - part.holes[0].at.x, 76.6, 1e-9);
  check_mm(part.outline[2].y - part.holes[1].at.y, 7.2, 1e-9);
  // What bends so that 2.1 of sheet go into it, 1 mm thick round 1 mm (a page on K-factors), lies between both limits.
  CHECK(general::bend_allowance(90.0, 1.0, 1.0, general::neutral_line().least) < 2.1);
  CHECK(general::bend_allowance(90.0, 1.0, 1.0, general::neutral_line().most) > 2.1);

  const geometry::Solid shape = solid(part);
  const geometry::Mesh& mesh = mesh_of(shape);
  check_mm(mesh.bounds().low, {0.0, 0.0, 0.0}, 1e-12);
  check_mm(mesh.bounds().high, {20.0, 18.2, 91.0}, 1e-9);
  // Two plates and a quarter of a tube, less four holes of 3.8; arcs and circles are off by 0.02 at most.
  const double profile = (17.0 + 15.2) * 1.5 + std::numbers::pi / 4.0 * (9.0 - 2.25);
  const double holes = 4.0 * std::numbers::pi / 4.0 * 3.8 * 3.8 * 1.5;
  const double off = std::numbers::pi / 2.0 * 4.5 * 0.02 * 91.0 + 4.0 * std::numbers::pi * 3.8 * 0.02 * 1.5;
  check_mm(mesh.volume(), profile * 91.0 - holes, off);
  // The holes are through both legs where the drive has them: 11 up, and in the foot as far out.
  for (const double along : {7.2, 83.8}) {
    CHECK(!mesh.contains({0.75, 11.0, along}));
    CHECK(!mesh.contains({bent.foot_hole, 0.75, along}));
    CHECK(mesh.contains({0.75, 11.0 + 2.0, along}));
    CHECK(mesh.contains({bent.foot_hole - 2.0, 0.75, along}));
  }
}

TEST_CASE("a bracket for a place is as high as it, and one that bending would spoil is only printed") {
  const Printable low = made("bracket left");
  check_mm(low.bent->raised, 5.0, 1e-12);
  CHECK(low.uncut.find("`raised 6.80` or more") != std::string::npos);
  CHECK(made("bracket left thickness 1").uncut == "");
  CHECK(made("bracket 2.5in").uncut == "");  // what is not given serves both
  CHECK(made("bracket 2.5in thickness 4").uncut.find("at most 3.00 thick") != std::string::npos);
  // 3.5-inch drives: SFF-8301, side holes at 28.50, 70.10 and 130.10, 6.35 over the base.
  CHECK(made("bracket 3.5in").holes.size() == 6);
  const Printable melted = made("bracket 2.5in insert M3 thickness 6");
  CHECK(melted.uncut != "");
  check_mm(melted.holes[0].asked, 3.86, 1e-12);
  (void)mesh_of(solid(melted));
  check_refused("bracket 2.5in thickness 0.9", "`thickness` is 1.00 to 10.00 mm, not 0.90");
  check_refused("bracket 2.5in thickness nan", "`thickness`: ");
  check_refused("bracket 2.5in foot 12", "`foot` is 14.00 to 100.00 mm, not 12.00");
  check_refused("bracket 2.5in raised 1", "`raised 3.80` or more");
  CHECK(made("bracket 2.5in raised 3.80 foot 14.00").uncut.find("`raised 6.80` or more") != std::string::npos);
  CHECK(made("bracket 2.5in raised 6.80 foot 14.00").uncut.find("`foot 17.00` or more") != std::string::npos);
  CHECK(made("bracket 2.5in raised 6.80 foot 17.00").uncut == "");
  check_refused("bracket 2.5in raised 95", "a leg would be longer than 100.00");
  check_refused("bracket 2.5in raised", "`raised` wants a value");
  check_refused("bracket 2.5in raised 8 raised 9", "stands there twice");
  check_refused("bracket 2.5in screw M33", "there is no thread `M33`");
  check_refused("bracket 2.5in insert M3", "5.74 long: `thickness` must be that or more");
  check_refused("bracket 2.5in insert M3 screw M3", "exclude each other");
  check_refused("bracket 2.5in width 8",
                "may stand thickness, raised, foot, screw or insert, each with its value, not `width 8`");
  check_refused("bracket lefd", "did you mean `left`?");
}

TEST_CASE("an adapter plate has the base holes of both drives") {
  // SFF-8201: rows at 14.00 and 90.60, columns 61.72 apart; SFF-8301: rows at 41.28, 85.73 and 117.48, columns 95.25.
  const Printable plate = made("adapter 2.5in in 3.5in");
  REQUIRE(plate.holes.size() == 10);
  check_mm(plate.outline[2].y, 101.6, 1e-9);
  const auto at = [&](double x, double y) {
    return std::any_of(plate.holes.begin(), plate.holes.end(), [&](const PrintedHole& each) {
      return glm::distance(each.at, Vec2(x - 14.0 + 7.2, y + 50.8)) < 1e-9;
    });
  };
  for (const double side : {-0.5, 0.5}) {
    for (const double x : {14.0, 90.6}) CHECK(at(x, side * 61.72));
    for (const double x : {41.28, 85.73, 117.48}) CHECK(at(x, side * 95.25));
  }
  const double round = std::numbers::pi / 4.0 * 3.8 * 3.8 * 3.0;
  check_mm(solid(plate).volume(), (117.48 - 14.0 + 14.4) * 101.6 * 3.0 - 10.0 * round,
           10.0 * std::numbers::pi * 3.8 * 0.02 * 3.0);
  CHECK(plate.uncut.find("`width 109.65` or more") != std::string::npos);
  CHECK(made("adapter 2.5in in 3.5in width 109.65").uncut == "");
  check_refused("adapter 2.5in in 3.5in screw 6-32", "leave a wall of less than 1.20");
  check_refused("adapter 2.5in in 3.5in insert M3", "`thickness` must be that or more");
  check_refused("adapter 2.5in in 3.5in thickness 0.5", "`thickness` is 1.00 to 10.00");
  check_refused("adapter 3.5in in 2.5in", "what can be made is `adapter 2.5in in 3.5in`");
}

TEST_CASE("a mark leaves the height between the faces as it is") {
  for (const char* asked : {"spacer M3 8", "spacer M2 1", "spacer M4 2.2", "stand-off M4 20", "shim M3 0.5",
                            "shim M3 0.9", "shim M2.5 1/16 in", "guide left"}) {
    CAPTURE(asked);
    const Printable plain = made(asked);
    auto got = marked(plain);
    REQUIRE(std::holds_alternative<Printable>(got));
    const Printable& part = std::get<Printable>(got);
    const geometry::Solid shape = solid(part);
    const geometry::Mesh& mesh = mesh_of(shape);
    check_mm(mesh.bounds().low.z, 0.0, 1e-12);
    check_mm(mesh.bounds().high.z, plain.height, 1e-12);
    double figures = 0.0;
    for (const Outline& stroke : part.mark->strokes) figures += area_of(stroke) * part.mark->depth;
    CHECK(figures > 1.0);
    const double bare = solid(plain).volume();
    if (plain.outside == 0.0) {
      check_mm(mesh.volume(), bare - figures, 1e-6);
      continue;
    }
    const double tab = area_of(marked_outline(part)) - area_of(solid(plain).outline());
    CHECK(tab > part.mark->tab_width * (part.mark->tab_end - 0.5 * plain.outside) - 1e-9);
    check_mm(mesh.volume(), bare + tab * part.mark->tab_height - figures, 1e-6);
    // Both faces are whole: nothing of the figures lies on the part itself.
    for (const Outline& stroke : part.mark->strokes)
      for (const Vec2& p : stroke) CHECK(p.x > 0.5 * plain.outside);
  }
  CHECK(std::get<Printable>(marked(made("spacer M3 8"))).mark->text == "8.0");
  CHECK(std::get<Printable>(marked(made("shim M3 0.25"))).mark->text == "0.25");
  CHECK(std::get<Printable>(marked(made("shim M3 1/16 in"))).mark->text == "1.59");
  CHECK(std::get<Printable>(marked(made("guide left"))).mark->text == "2.0");
  check_mm(std::get<Printable>(marked(made("spacer M3 8"))).mark->depth, 0.4, 1e-12);
  check_mm(std::get<Printable>(marked(made("shim M3 0.5"))).mark->depth, 0.5, 1e-12);  // through
  CHECK(std::holds_alternative<std::string>(marked(made("side"))));
}
