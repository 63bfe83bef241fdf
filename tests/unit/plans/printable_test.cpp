// Parts to print, against tables of screws and the closed forms of prisms.
#include "plans/printable.h"

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
  CHECK(!flat(fdm));
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
  check_refused("", "it can be side, angle, spacer left, guide left, spacer M3 8, shim M3 0.5 or stand-off M3 10");
  check_refused("mother", "and no board");
  check_refused("spacer M33 8", "there is no thread `M33`; it must be M1.6, M2");
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
}
