// Parts by construction: heatsinks, M.2 cards, turns, and what is no solid. Expected figures are worked out here.
#include "parts/library.h"
#include "parts/m2_card.h"
#include "parts/part.h"
#include "parts/part_file.h"
#include "support/check_mm.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <numbers>
#include <string>

using namespace baywright;
using geometry::Outline;
using geometry::Vec2;
using parts::Body;
using parts::Part;
using test::check_mm;

namespace {

/// The heatsink of { ... } as written, or the fault.
std::variant<Part, parts::Fault> heatsink(const std::string& fields) {
  try {
    const toml::table document = parts::parse_document("heatsink = { " + fields + " }", "x.toml");
    parts::Fields all(document, "x.toml", "a test");
    return parts::heatsink_part(all.table("heatsink", "a heatsink"), "test", {});
  } catch (const parts::Stop& stop) {
    return stop.fault;
  }
}

std::variant<Part, parts::Fault> solid(const std::string& form) {
  try {
    const toml::table document = parts::parse_document("solid = { " + form + " }", "x.toml");
    parts::Fields all(document, "x.toml", "a test");
    Part part;
    parts::add_solid(part, all.table("solid", "a solid"), "p", {});
    return part;
  } catch (const parts::Stop& stop) {
    return stop.fault;
  }
}

double volume(const Part& part, const Body& body) {
  const auto made = parts::shape(body, parts::nominal_values(part));
  REQUIRE(std::holds_alternative<parts::Shaped>(made));
  return std::get<parts::Shaped>(made).solid.volume();
}

const Body& body_called(const Part& part, const std::string& name) {
  const auto found =
      std::find_if(part.bodies.begin(), part.bodies.end(), [&](const Body& b) { return b.name == name; });
  REQUIRE(found != part.bodies.end());
  return *found;
}

double side(const Part& part, const Body& body, int axis, bool high) {
  const auto at = static_cast<std::size_t>(axis);
  return (high ? body.high : body.low)[at].at(parts::nominal_values(part));
}

standards::m2::CardName name_of(const char* text) {
  const auto name = standards::m2::read_card_name(text);
  REQUIRE(std::holds_alternative<standards::m2::CardName>(name));
  return std::get<standards::m2::CardName>(name);
}

/// Area of a half disc that is drawn with 16 chords on the circle.
double half_disc(double radius) {
  return 0.5 * 16.0 * radius * radius * std::sin(std::numbers::pi / 16.0);
}

}  // namespace

TEST_CASE("fins stand flush with the sides, the gaps half as wide again") {
  const auto got = heatsink("length = 70, width = 22, base = 1, fins = 9, height = 3");
  REQUIRE(std::holds_alternative<Part>(got));
  const Part& part = std::get<Part>(got);
  REQUIRE(part.bodies.size() == 10);
  // 22 = 9 fins and 8 gaps of 1.5 fins: a fin of 22 / 21.
  const double fin = 22.0 / 21.0;
  for (int i = 0; i < 9; ++i) {
    CAPTURE(i);
    const Body& body = body_called(part, "fin " + std::to_string(i + 1));
    check_mm(side(part, body, 0, false), -11.0 + 2.5 * fin * i, 1e-12);
    check_mm(side(part, body, 0, true), -11.0 + 2.5 * fin * i + fin, 1e-12);
    check_mm(side(part, body, 1, false), 0.0, 0.0);
    check_mm(side(part, body, 1, true), 70.0, 0.0);
    check_mm(side(part, body, 2, false), 1.0, 0.0);
    check_mm(side(part, body, 2, true), 3.0, 0.0);
  }
  check_mm(side(part, body_called(part, "fin 9"), 0, true), 11.0, 1e-12);
  check_mm(parts::outer_face(part, 2, true).at(parts::nominal_values(part)), 3.0, 0.0);
}

TEST_CASE("one fin stands in the middle, no fins make a plate") {
  const auto one = heatsink("length = 40, width = 20, base = 2, fins = 1, height = 10");
  REQUIRE(std::holds_alternative<Part>(one));
  const Part& part = std::get<Part>(one);
  REQUIRE(part.bodies.size() == 2);
  check_mm(side(part, part.bodies[1], 0, false), -side(part, part.bodies[1], 0, true), 1e-12);
  CHECK(side(part, part.bodies[1], 0, true) > 0.0);
  const auto plate = heatsink("length = 40, width = 20, height = 2");
  REQUIRE(std::holds_alternative<Part>(plate));
  REQUIRE(std::get<Part>(plate).bodies.size() == 1);
  check_mm(volume(std::get<Part>(plate), std::get<Part>(plate).bodies[0]), 1600.0, 1e-9);  // mm³
}

TEST_CASE("what is no solid is refused, also where only a limit makes it so") {
  CHECK(std::holds_alternative<parts::Fault>(heatsink("length = 70, width = 22, base = 4, fins = 9, height = 3")));
  CHECK(std::holds_alternative<Part>(heatsink("length = 70, width = 22, base = 2.9, fins = 9, height = \"3 ±0.05\"")));
  CHECK(std::holds_alternative<parts::Fault>(
      heatsink("length = 70, width = 22, base = 2.9, fins = 9, height = \"3 ±0.2\"")));
  CHECK(std::holds_alternative<Part>(solid("cylinder = { diameter = 5, height = 3, bore = \"4.8 ±0.1\" }")));
  const auto thin = solid("cylinder = { diameter = 5, height = 3, bore = \"4.95 ±0.1\" }");
  REQUIRE(std::holds_alternative<parts::Fault>(thin));
  CHECK(std::get<parts::Fault>(thin).line == 1);
  CHECK(std::get<parts::Fault>(thin).text().find("no wall") != std::string::npos);
}

TEST_CASE("solids fill what they say") {
  const auto cylinder = solid("cylinder = { diameter = 6, height = 12, bore = 3.2 }");
  REQUIRE(std::holds_alternative<Part>(cylinder));
  const Part& tube = std::get<Part>(cylinder);
  check_mm(volume(tube, tube.bodies[0]), std::numbers::pi * (9.0 - 2.56) * 12.0, 1e-9);  // mm³
  check_mm(side(tube, tube.bodies[0], 0, false), -3.0, 0.0);                             // its axis is the z axis
  const auto prism =
      solid("prism = { outline = [[5, 5], [35, 5], [35, 15], [15, 15], [15, 35], [5, 35]], height = 2 }");
  REQUIRE(std::holds_alternative<Part>(prism));
  const Part& angle = std::get<Part>(prism);
  check_mm(volume(angle, angle.bodies[0]), (300.0 + 200.0) * 2.0, 1e-9);  // mm³
  check_mm(side(angle, angle.bodies[0], 0, false), 5.0, 0.0);             // where it was drawn
}

TEST_CASE("an M.2 card has the outline of the standard") {
  // PCI-SIG M.2 Specification Rev 1.0 (2013): 22 wide from y = 4.00 (Figures 4 and 16), tab 19.85 wide (Figure 16),
  // notch 1.20 wide and 3.50 deep with a round end, half hole 3.50 (Figures 18 to 21), card 0.80 thick (Table 2).
  const double thickness = 0.80;
  const auto notch = [](double radius) { return 2.0 * radius * (3.5 - radius) + half_disc(radius); };
  struct Case {
    const char* name;
    double length;
    int notches;
  };
  for (const Case& each :
       {Case{"2280-D2-M", 80.0, 1}, {"2242-S3-B", 42.0, 1}, {"2280-S2-B+M", 80.0, 2}, {"22110-D5-BM", 110.0, 2}}) {
    CAPTURE(each.name);
    const Part part = parts::m2_card(name_of(each.name), {}).part;
    check_mm(volume(part, body_called(part, "edge")), (19.85 * 4.0 - each.notches * notch(0.6)) * thickness,
             1e-9);  // mm³
    check_mm(volume(part, body_called(part, "card")), (22.0 * (each.length - 4.0) - half_disc(1.75)) * thickness, 1e-9);
    check_mm(side(part, body_called(part, "card"), 1, true), each.length, 0.0);
    check_mm(side(part, body_called(part, "card"), 2, false), -0.80, 0.0);
    REQUIRE(part.holes.size() == 1);
    check_mm(part.holes[0].y, each.length, 0.0);
  }
}

TEST_CASE("notches sit at the keys' places") {
  // Pin n of 75 at x = (38 - n) * 0.25, 38 on the centre line (Figure 16); key B takes pins 12 to 19, key M 59 to 66
  // (Figures 18 to 21): centres at 5.625 toward pin 1 and 6.125 away from it; the notch is 1.20 wide and 3.50 deep.
  const auto centres = [](const char* name) {
    const Part part = parts::m2_card(name_of(name), {}).part;
    std::vector<double> out;
    for (const Vec2& p : body_called(part, "edge").outline)
      if (std::abs(p.y - 3.5) < 1e-9) out.push_back(p.x);  // the deepest point of each notch
    return out;
  };
  REQUIRE(centres("2280-S2-M").size() == 1);
  check_mm(centres("2280-S2-M")[0], -6.125, 1e-12);
  REQUIRE(centres("2280-S2-B").size() == 1);
  check_mm(centres("2280-S2-B")[0], 5.625, 1e-12);
  REQUIRE(centres("2280-S2-B+M").size() == 2);
  check_mm(centres("2280-S2-B+M")[0], -6.125, 1e-12);
  check_mm(centres("2280-S2-B+M")[1], 5.625, 1e-12);
  const Part part = parts::m2_card(name_of("2280-S2-M"), {}).part;
  int on_edge = 0;
  for (const Vec2& p : body_called(part, "edge").outline)
    if (p.y == 0.0 && std::abs(std::abs(p.x + 6.125) - 0.6) < 1e-12) ++on_edge;
  CHECK(on_edge == 2);
}

TEST_CASE("the height code or what was measured decides how high the parts stand") {
  // Figure 3: D2 has parts up to 1.35 on both sides, nominal 1.25 ±0.10; S codes have none below.
  const Part code = parts::m2_card(name_of("2280-D2-M"), {}).part;
  check_mm(side(code, body_called(code, "chips"), 2, true), 1.25, 1e-12);
  check_mm(side(code, body_called(code, "chips underneath"), 2, false), -0.80 - 1.25, 1e-12);
  const auto has_below = [](const Part& part) {
    return std::any_of(part.bodies.begin(), part.bodies.end(),
                       [](const Body& b) { return b.name == "chips underneath"; });
  };
  CHECK(has_below(code));
  CHECK(!has_below(parts::m2_card(name_of("2280-S2-M"), {}).part));
  tolerance::Dimension top;
  top.nominal = 1.7;
  const Part own = parts::m2_card(name_of("2280-?-M"), {top, std::nullopt}).part;
  check_mm(side(own, body_called(own, "chips"), 2, true), 1.7, 1e-12);
  CHECK(!has_below(own));
}

TEST_CASE("four quarter turns change nothing, one takes x to y") {
  Part part;
  part.bodies.push_back(parts::box_body("box", {1.0, 2.0, 3.0}, {11.0, 22.0, 33.0}));
  Body bar = parts::round_body("bar", 5.0, -4.0, 6.0, 0.0, 9.0);
  part.bodies.push_back(bar);
  Body prism;  // along x: outline in y and z
  prism.name = "wedge";
  prism.form = Body::Form::prism;
  prism.axis = 0;
  prism.outline = {{0.0, 0.0}, {4.0, 0.0}, {0.0, 3.0}};
  prism.low = {-2.0, 0.0, 0.0};
  prism.high = {5.0, 4.0, 3.0};
  part.bodies.push_back(prism);
  part.holes.push_back({"h", 2.0, 3.0, 1.0});

  const Part once = parts::turned(part, 1);
  check_mm(side(once, once.bodies[0], 0, false), -22.0, 0.0);
  check_mm(side(once, once.bodies[0], 0, true), -2.0, 0.0);
  check_mm(side(once, once.bodies[0], 1, false), 1.0, 0.0);
  check_mm(side(once, once.bodies[0], 2, true), 33.0, 0.0);
  check_mm(once.holes[0].x, -3.0, 0.0);
  check_mm(once.holes[0].y, 2.0, 0.0);
  check_mm(side(once, once.bodies[1], 0, false), 4.0 - 3.0, 1e-12);  // the bar's axis from (5, -4) to (4, 5)
  check_mm(side(once, once.bodies[1], 1, true), 5.0 + 3.0, 1e-12);

  for (const int quarters : {4, -4, 8}) {
    const Part round = parts::turned(part, quarters);
    for (std::size_t b = 0; b < part.bodies.size(); ++b)
      for (int axis = 0; axis < 3; ++axis) {
        check_mm(side(round, round.bodies[b], axis, false), side(part, part.bodies[b], axis, false), 0.0);
        check_mm(side(round, round.bodies[b], axis, true), side(part, part.bodies[b], axis, true), 0.0);
      }
    CHECK(round.bodies[2].outline == part.bodies[2].outline);
  }
  for (int quarters = 0; quarters < 4; ++quarters) {
    CAPTURE(quarters);
    const Part any = parts::turned(part, quarters);
    for (std::size_t b = 0; b < part.bodies.size(); ++b)
      check_mm(volume(any, any.bodies[b]), volume(part, part.bodies[b]), 1e-9);
  }
  check_mm(volume(part, part.bodies[2]), 0.5 * 4.0 * 3.0 * 7.0, 1e-9);  // mm³

  // The right angle of the wedge, at y = 0 and z = 0, goes to x = 0: its long side is then toward -x.
  const auto wedge = parts::shape(once.bodies[2], parts::nominal_values(once));
  REQUIRE(std::holds_alternative<parts::Shaped>(wedge));
  const auto& shaped = std::get<parts::Shaped>(wedge);
  std::vector<geometry::Vec3> corners;
  for (const Vec2& p : shaped.solid.outline()) corners.push_back(shaped.pose.point({p.x, p.y, 0.0}));
  const auto has = [&](double x, double z) {
    return std::any_of(corners.begin(), corners.end(),
                       [&](const geometry::Vec3& c) { return std::abs(c.x - x) < 1e-9 && std::abs(c.z - z) < 1e-9; });
  };
  CHECK(has(0.0, 0.0));
  CHECK(has(-4.0, 0.0));
  CHECK(has(0.0, 3.0));
}

TEST_CASE("the library finds boards and part files, and names the nearest of what it does not have") {
  const auto folders = parts::part_folders(std::string(BAYWRIGHT_SOURCE) + "/models/builds/tower.build.toml");
  // Mini-ITX Addendum 1.1 to the microATX specification: 170 square.
  const auto board = parts::find_part("board/mini-itx", folders);
  REQUIRE(std::holds_alternative<Part>(board));
  const Part& found = std::get<Part>(board);
  check_mm(parts::outer_face(found, 0, true).at(parts::nominal_values(found)), 170.0, 1e-9);
  check_mm(parts::outer_face(found, 1, false).at(parts::nominal_values(found)), -170.0, 1e-9);
  check_mm(parts::outer_face(found, 2, true).at(parts::nominal_values(found)), 0.0, 0.0);
  const auto sink = parts::find_part("fin-heatsink-3", folders);
  REQUIRE(std::holds_alternative<Part>(sink));
  CHECK(std::get<Part>(sink).kind == "heatsink");
  for (const tolerance::Dimension& d : std::get<Part>(sink).dimensions)
    CHECK(d.source == "invented for the demo builds");
  const auto missing = parts::find_part("fin-heatsink-5", folders);
  REQUIRE(std::holds_alternative<parts::Fault>(missing));
  CHECK(std::get<parts::Fault>(missing).file.empty());
  CHECK(std::get<parts::Fault>(missing).right.find("fin-heatsink-") != std::string::npos);
  CHECK(std::holds_alternative<parts::Fault>(parts::find_part("../builds/tower", folders)));
}
