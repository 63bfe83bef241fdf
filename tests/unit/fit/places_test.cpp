// Every kind of drive against every kind of place; limits in a bay against brute force; a bay turned round; the pitch
// of holes against the fixed-fastener formula. Sizes: SFF-8201, SFF-8301, SFF-8551 and EDSFF lists as transcribed in
// public files (each named beside its row under src/standards); the rest is by construction.
#include "fit/limits.h"
#include "fit/seat.h"
#include "geometry/gap.h"
#include "support/check_mm.h"
#include "support/whole_build.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <limits>
#include <map>
#include <string>
#include <utility>
#include <vector>

namespace {

using namespace baywright;
using fit::Code;
using fit::Element;
using fit::Kind;
using fit::Verdict;
using test::bay;
using test::drive;

constexpr const char* all_buses = R"(["sata 6", "sas 12", "pcie 4.0 x16"])";

/// A drive as it comes, and the form of place that it goes to.
struct Comes {
  std::string use;
  std::string bus;
  std::string form;
};

std::vector<Comes> all_drives() {
  std::vector<Comes> out = {{"m2/2280-S2-M", "pcie 4.0 x4", "m2"},
                            {"m2/2280-D2-B+M", "sata 6", "m2"},
                            {"mini card/full", "pcie 2.0 x1", "mini"},
                            {"msata", "sata 6", "mini"},
                            {"5.25in", "sata 6", "5.25in"}};
  for (const char* height : {"5", "7", "8.47", "9.5", "10.5", "12.7", "15", "17", "19.05"})
    for (const char* bus : {"sata 6", "sas 12", "pcie 4.0 x4"})
      out.push_back({std::string("2.5in/") + height, bus, "2.5in"});
  for (const char* height : {"17.8", "26.1", "42"})
    for (const char* bus : {"sata 6", "sas 12"}) out.push_back({std::string("3.5in/") + height, bus, "3.5in"});
  for (const auto& [of, sizes] :
       std::map<std::string, std::vector<std::string>>{{"e1s", {"5.9", "8", "9.5", "15", "25"}},
                                                       {"e1l", {"9.5", "18"}},
                                                       {"e3s", {"1t", "2t"}},
                                                       {"e3l", {"1t", "2t"}}})
    for (const std::string& size : sizes) out.push_back({of + "/" + size, "pcie 4.0 x4", of});
  for (const char* lanes : {"x1", "x4", "x8", "x16"})
    out.push_back({std::string("add-in card/") + lanes, std::string("pcie 4.0 ") + lanes, "card"});
  return out;
}

/// A roomy place of each form, wired for all.
std::string place_for(const std::string& form) {
  const std::string board =
      "[[part]]\nname = \"board\"\nsolid = { plate = [305, 244, 1.57] }\n[[slot]]\nname = \"slot\"\non = { part = "
      "\"board\", "
      "at = [57.1, 100], toward = \"+x\" }\nbus = " +
      std::string(all_buses) + "\n";
  if (form == "m2") return board + "socket = \"m2/M/H4.2\"\nlengths = [2280]\n";
  if (form == "mini") return board + "socket = \"mini card/full\"\nstandoff = 4.0\n";
  if (form == "card") return board + "socket = \"pcie/x16\"\nbracket = \"full\"\n";
  const bool plugs = form == "2.5in" || form == "3.5in" || form == "5.25in";
  return bay(form, plugs ? "plug = \"u2\"" : "", "bay", all_buses);
}

TEST_CASE("every drive goes where its form goes, and to no other place as it is") {
  const std::vector<std::string> forms = {"m2", "mini", "card", "2.5in", "3.5in", "5.25in", "e1s", "e1l", "e3s", "e3l"};
  int fits = 0;
  int refused = 0;
  for (const Comes& each : all_drives())
    for (const std::string& form : forms) {
      CAPTURE(each.use);
      CAPTURE(each.bus);
      CAPTURE(form);
      const fit::Seating seated = test::seating(place_for(form) + drive(each.use, each.bus));
      if (each.form == form) {
        CHECK(seated.verdict == Verdict::fits);
        CHECK(seated.questions.form_factor.answer == fit::Answer::yes);
        ++fits;
        continue;
      }
      CHECK(seated.verdict == Verdict::does_not_fit);
      CHECK(seated.findings.at(0).kind == Kind::form_factor);
      const Code code = seated.questions.form_factor.why.code;
      CHECK((code == Code::other_form || code == Code::adapter_needed));
      ++refused;
    }
  CHECK(fits == 53);
  CHECK(refused == 9 * 53);
}

struct Tight {
  std::string form, use, bus;
  std::string inside;  // that it just fits
  std::string tight;   // and that it does not
};

TEST_CASE("each cased drive fits a bay of its largest size, and not one that is no larger than its smallest") {
  const std::vector<Tight> rows = {
      {"2.5in", "2.5in/5", "sata 6", "height = 5.20", "height = 4.80"},
      {"2.5in", "2.5in/7", "sata 6", "height = 7.20", "height = 6.50"},
      {"2.5in", "2.5in/8.47", "sata 6", "height = 8.47", "height = 7.97"},
      {"2.5in", "2.5in/9.5", "sata 6", "height = 9.70", "height = 9.30"},
      {"2.5in", "2.5in/10.5", "sata 6", "height = 10.50", "height = 10.00"},
      {"2.5in", "2.5in/12.7", "sata 6", "height = 12.70", "height = 12.20"},
      {"2.5in", "2.5in/15", "pcie 4.0 x4", "height = 15.00", "height = 14.50"},
      {"2.5in", "2.5in/17", "sata 6", "height = 17.00", "height = 16.50"},
      {"2.5in", "2.5in/19.05", "sata 6", "height = 19.05", "height = 18.55"},
      // Nothing bounds the height of a 3.5-inch drive below, so its width has to refuse it.
      {"3.5in", "3.5in/17.8", "sata 6", "height = 17.80, width = 101.85", "width = 101.35"},
      {"3.5in", "3.5in/26.1", "sata 6", "height = 26.10, width = 101.85", "width = 101.35"},
      {"3.5in", "3.5in/42", "sas 12", "height = 42.00, width = 101.85", "width = 101.35"},
      {"5.25in", "5.25in", "sata 6", "height = 41.53, width = 146.05, depth = 202.80", "width = 146.00"},
      {"e1s", "e1s/5.9", "pcie 4.0 x4", "height = 5.9, width = 31.50, depth = 111.49", "height = 5.8"},
      {"e1s", "e1s/8", "pcie 4.0 x4", "height = 8.01, width = 31.50, depth = 111.49", "height = 7.9"},
      {"e1s", "e1s/9.5", "pcie 4.0 x4", "height = 9.5, width = 33.75, depth = 118.75", "depth = 111.5"},
      {"e1s", "e1s/15", "pcie 4.0 x4", "height = 15, width = 33.75, depth = 118.75", "height = 9.5"},
      {"e1s", "e1s/25", "pcie 4.0 x4", "height = 25, width = 33.75, depth = 118.75", "height = 15"},
      {"e1l", "e1l/9.5", "pcie 4.0 x4", "height = 9.5, width = 38.40, depth = 318.75", "width = 38.3"},
      {"e1l", "e1l/18", "pcie 4.0 x4", "height = 18, width = 38.40, depth = 318.75", "height = 9.5"},
      {"e3s", "e3s/1t", "pcie 4.0 x4", "height = 7.5, width = 76, depth = 112.75", "width = 75.9"},
      {"e3s", "e3s/2t", "pcie 4.0 x4", "height = 16.8, width = 76, depth = 112.75", "height = 7.5"},
      {"e3l", "e3l/1t", "pcie 4.0 x4", "height = 7.5, width = 76, depth = 142.2", "depth = 112.75"},
      {"e3l", "e3l/2t", "pcie 4.0 x4", "height = 16.8, width = 76, depth = 142.2", "height = 7.5"},
  };
  for (const Tight& row : rows) {
    CAPTURE(row.use);
    const auto in = [&](const std::string& inside) {
      const std::string plug = row.form == "2.5in" || row.form == "3.5in" ? "plug = \"u2\"\n" : "";
      return test::seating(bay(row.form, plug + "inside = { " + inside + " }", "bay", all_buses) +
                           drive(row.use, row.bus));
    };
    CHECK(in(row.inside).verdict == Verdict::fits);
    const fit::Seating refused = in(row.tight);
    CHECK(refused.verdict == Verdict::does_not_fit);
    CHECK(refused.findings.at(0).kind == Kind::clearance);
    CHECK(refused.findings.at(0).between == std::array<std::string, 2>{"drive", "bay"});
  }
}

TEST_CASE("cards that go to a place of their form are refused there for their length, keys, lanes or wires") {
  const std::string x4 = R"("pcie 4.0 x4")";
  struct Refused {
    std::string place, use, bus;
    Kind kind;
    Code code;
  };
  const std::string board =
      "[[part]]\nname = \"board\"\nsolid = { plate = [305, 244, 1.57] }\n[[slot]]\nname = \"slot\"\non = { part = "
      "\"board\", "
      "at = [57.1, 100], toward = \"+x\" }\n";
  const Refused rows[] = {
      {"socket = \"m2/M/H4.2\"\nlengths = [2242]\nbus = " + x4, "m2/2280-S2-M", "pcie 4.0 x4", Kind::length,
       Code::size_too_long},
      {"socket = \"m2/M/H4.2\"\nlengths = [2280]\nbus = " + x4, "m2/2280-S2-B", "pcie 4.0 x2", Kind::interface,
       Code::key_meets_not},
      {"socket = \"m2/M/H4.2\"\nlengths = [2280]\nbus = " + x4, "m2/2280-S2-B+M", "sata 6", Kind::bus,
       Code::bus_absent},
      {"socket = \"mini card/half\"\nstandoff = 4.0\nbus = \"sata 3\"", "msata", "sata 6", Kind::length,
       Code::full_card},
      {"socket = \"mini card/full\"\nstandoff = 4.0\nbus = \"sata 3\"", "mini card/half", "pcie 2.0 x1", Kind::length,
       Code::half_card},
      {"socket = \"mini card/full\"\nstandoff = 4.0\nbus = \"sata 3\"", "mini card/full", "pcie 2.0 x1", Kind::bus,
       Code::bus_absent},
      {"socket = \"pcie/x8\"\nbus = " + x4, "add-in card/x16", "pcie 4.0 x16", Kind::interface, Code::slot_too_short},
      {"socket = \"pcie/x4\"\nbracket = \"low\"\nbus = " + x4, "add-in card/x4", "pcie 4.0 x4", Kind::bracket,
       Code::bracket_differs},
  };
  for (const Refused& row : rows) {
    CAPTURE(row.place);
    CAPTURE(row.use);
    const fit::Seating seated = test::seating(board + row.place + "\n" + drive(row.use, row.bus));
    CHECK(seated.verdict == Verdict::does_not_fit);
    CHECK(seated.findings.at(0).kind == row.kind);
    CHECK(seated.findings.at(0).why.code == row.code);
  }
}

// ---- limits against brute force

build::Build read(const std::string& text) {
  auto built = build::read_text("title = \"bay\"\n" + text, "bay.build.toml");
  if (const auto* fault = std::get_if<parts::Fault>(&built)) FAIL(fault->text());
  return std::get<build::Build>(std::move(built));
}

double gap_at(const build::Build& build, int a, int b, const std::vector<double>& values) {
  const fit::Host host = fit::compile(build, values);
  const fit::Seated seated = fit::seat(host, build, build.drives[0], 0, values);
  double least = std::numeric_limits<double>::infinity();
  for (const geometry::Piece& p : seated.scene.element(a).placed.solid.pieces())
    for (const geometry::Piece& q : seated.scene.element(b).placed.solid.pieces())
      least = std::min(
          least, geometry::gap(p, seated.scene.element(a).placed.pose, q, seated.scene.element(b).placed.pose).mm);
  return least;
}

struct Tally {
  int pairs = 0;
  int square = 0;
  int overlapping = 0;
};

void hold_pair(const build::Build& build, const fit::Seated& seated, int a, int b, Tally& tally) {
  const fit::Scene& scene = seated.scene;
  const fit::GapLimits found = fit::limits(scene, scene.element(a), scene.element(b), tolerance::Method::worst);
  CAPTURE(scene.element(a).part + ", " + scene.element(a).body);
  CAPTURE(scene.element(b).part + ", " + scene.element(b).body);
  std::vector<int> moving;
  for (const Element* element : {&scene.element(a), &scene.element(b)})
    for (const fit::Motion& motion : element->motions) {
      const tolerance::Dimension& d = scene.dimension(motion.dimension);
      if (d.exact() || std::find(moving.begin(), moving.end(), motion.dimension) != moving.end()) continue;
      moving.push_back(motion.dimension);
    }
  REQUIRE(moving.size() <= 10);
  double least = std::numeric_limits<double>::infinity();
  double most = -least;
  for (unsigned corner = 0; corner < (1u << moving.size()); ++corner) {
    std::vector<double> values = scene.values;
    for (std::size_t i = 0; i < moving.size(); ++i) {
      const tolerance::Dimension& d = scene.dimension(moving[i]);
      const double side = (corner >> i & 1u) != 0 ? d.plus : -d.minus;
      if (std::isfinite(side)) values[static_cast<std::size_t>(moving[i])] += side;
    }
    const double gap = gap_at(build, a, b, values);
    least = std::min(least, gap);
    most = std::max(most, gap);
  }
  constexpr double rounding = 1e-6;  // mm: nothing in a bay tilts, so chains are exact
  CHECK(least >= found.min - rounding);
  ++tally.pairs;
  if (found.min < 0.0) ++tally.overlapping;
  // A cable's plug ends where walls begin, so it leaves their side at some corners and is then farther off than its
  // limits along that side say; and it counts the drive's width beside its own place. Both err on the safe side.
  if (scene.element(a).body == "plug") return;
  if (std::isfinite(found.max)) CHECK(most <= found.max + rounding);
  const geometry::Vec3 n = found.direction;
  const bool facing = std::abs(gap_at(build, a, b, scene.values) - found.nominal) < 1e-9;
  if (!facing || std::max({std::abs(n.x), std::abs(n.y), std::abs(n.z)}) < 1.0 - 1e-9 || found.min < 0.0) return;
  ++tally.square;
  test::check_mm(found.min, least, rounding);
}

void hold_bay(const std::string& text, Tally& tally) {
  const build::Build build = read(text);
  const fit::Host host = fit::compile(build);
  const fit::Seated seated = fit::seat(host, build, build.drives[0], 0);
  for (int a = seated.scene.first_element(); a < seated.scene.element_count(); ++a) {
    if (!seated.brings(a)) continue;
    for (int b = 0; b < seated.scene.element_count(); ++b)
      if (!seated.brings(b) && !seated.mates.contains(std::minmax(a, b))) hold_pair(build, seated, a, b, tally);
  }
}

const std::string lid =
    "[[part]]\nname = \"lid\"\nsolid = { plate = [400, 300, 1.0] }\nabove = { part = \"floor\", by = \"31 ±0.4\" }\n";

TEST_CASE("limits of every gap in a bay equal brute force over all corners") {
  Tally tally;
  const std::string inside =
      "inside = { width = \"71.2 ±0.3\", height = \"13.0 ±0.2\", depth = \"104 ±0.5\", behind = \"36 ±1\" }\n";
  hold_bay(bay("2.5in", "raised = \"1.5 ±0.1\"\ncable = \"33 ±2\"\n" + inside) + lid + drive("2.5in/9.5", "sata 6"),
           tally);
  hold_bay(
      bay("2.5in", "spacers = \"2.0 ±0.1\"\n" + inside +
                       "fixing = { holes = [[14.0, -30.86], [90.6, 30.86]], diameter = \"3.6 ±0.1\", screw = \"M3\", "
                       "length = 4, sheet = 1.0 }") +
          lid + drive("2.5in/12.7", "sata 6"),
      tally);
  hold_bay(
      bay("3.5in",
          "cable = \"33 ±2\"\ninside = { width = \"102.5 ±0.3\", height = \"26.5 ±0.2\" }\n"
          "fixing = { through = \"sides\", holes = [[28.5, 6.35]], diameter = 4.2, screw = \"6-32\", sheet = 1.0 }") +
          lid + drive("2.5in/15", "sata 6", "wears = [{ adapter = \"adapter/2.5in-in-3.5in\" }]"),
      tally);
  CHECK(tally.pairs >= 39);
  CHECK(tally.square >= 20);
  CHECK(tally.overlapping >= 1);
}

TEST_CASE("limits of every gap of a drive on its edge equal brute force over all corners") {
  Tally tally;
  hold_bay(bay("2.5in",
               "stands = \"on edge\"\ncable = \"33 ±2\"\ninside = { width = \"11 ±0.3\", height = \"72 ±0.3\" }\n"
               "fixing = { holes = [[14.0, 1.7], [90.6, 1.7]], diameter = 3.6, screw = \"M3\", sheet = 1.0 }") +
               drive("2.5in/9.5", "sata 6"),
           tally);
  CHECK(tally.pairs >= 6);
  CHECK(tally.square >= 3);
}

// ---- symmetry

/// All gaps, by the two parts.
std::map<std::array<std::string, 2>, fit::GapFigures> gaps(const std::string& text) {
  std::map<std::array<std::string, 2>, fit::GapFigures> out;
  for (const fit::Finding& finding : test::seating(text).findings)
    if (finding.gap && finding.why.code == Code::gap) out[finding.between] = *finding.gap;
  return out;
}

TEST_CASE("a bay has the same gaps whichever way it points and on either face") {
  const auto turned = [](const std::string& face, const std::string& toward, const std::string& stands) {
    return "[[part]]\nname = \"plate\"\nsolid = { plate = [300, 300, 2.0] }\n[[bay]]\nname = \"bay\"\non = { part = "
           "\"plate\", "
           "face = \"" +
           face + "\", at = [150, 150], toward = \"" + toward +
           "\" }\ntakes = \"2.5in\"\nbus = \"sata 6\"\nstands = \"" + stands +
           "\"\nraised = \"1.5 ±0.1\"\ncable = \"33 ±2\"\ninside = { width = \"73 ±0.3\", height = \"74 ±0.2\", depth "
           "= \"104 ±0.5\", "
           "behind = \"36 ±1\" }\n" +
           drive("2.5in/9.5", "sata 6");
  };
  for (const char* stands : {"flat", "on edge"}) {
    const auto first = gaps(turned("top", "+x", stands));
    CHECK(first.size() >= 3);
    for (const char* face : {"top", "back"})
      for (const char* toward : {"+x", "-x", "+y", "-y"}) {
        CAPTURE(std::string(stands) + ' ' + face + ' ' + toward);
        const auto other = gaps(turned(face, toward, stands));
        REQUIRE(other.size() == first.size());
        for (const auto& [between, figures] : first) {
          const fit::GapFigures& there = other.at(between);
          test::check_mm(there.nominal, figures.nominal, 1e-9);
          test::check_mm(there.min, figures.min, 1e-9);
          if (std::isfinite(figures.max)) test::check_mm(there.max, figures.max, 1e-9);
        }
      }
  }
}

// ---- the fixed fastener

TEST_CASE("ASME Y14.5, fixed fastener, from memory: H - F = T1 + T2 just does") {
  // T2: SFF-8201's position zone of 0.50 for the drive's holes. T1: twice what the process is off either way. F: 3.00.
  struct Row {
    std::string drilled;
    double t1;
  };
  for (const Row& row : {Row{"hand drill", 1.00}, Row{"drill press", 0.50}, Row{"laser", 0.30}, Row{"print", 0.60}}) {
    CAPTURE(row.drilled);
    const auto with = [&](double diameter) {
      return test::seating(
          bay("2.5in",
              "fixing = { holes = [[14.0, -30.86], [90.6, -30.86], [14.0, 30.86], [90.6, 30.86]], diameter = " +
                  std::to_string(diameter) + ", drilled = \"" + row.drilled +
                  "\", screw = \"M3\", length = 3.0, sheet = 1.0 }",
              "panel") +
          drive("2.5in/9.5", "sata 6"));
    };
    const fit::Seating enough = with(3.00 + row.t1 + 0.50);
    CHECK(enough.verdict == Verdict::fits);
    test::check_mm(test::the(enough, Code::hole_reach).gap->min, 0.0, 1e-6);
    const fit::Seating less = with(3.00 + row.t1 + 0.50 - 0.01);
    CHECK(less.verdict == Verdict::marginal);
    test::check_mm(test::the(less, Code::hole_reach).gap->min, -0.01, 1e-6);
  }
}

}  // namespace
