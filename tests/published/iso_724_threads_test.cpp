// ISO metric coarse threads M1.6 to M4. No text of ISO 261, 724 or 965 was at hand. Two sources made apart:
//   a  a thread chart of a machining shop and one of a fastener supplier, which agree (pitch, d2, D1, d3, tap drill);
//      four decimals here are the formula's, equal to both charts in each digit that they print;
//   b  a public chart of limiting dimensions after ANSI/ASME B1.13M: largest and smallest of 6g, basic as 6h.
// b's minor diameter of M3, 2.458, is cut off and not rounded, hence its allowance.
#include "standards/fasteners.h"
#include "support/check_mm.h"

#include <array>
#include <doctest/doctest.h>
#include <string_view>

using namespace baywright::standards;
using baywright::test::check_mm;

namespace {

constexpr double exactly = 1e-12;
constexpr double printed = 0.0005;   // three decimals
constexpr double derived = 0.00005;  // four

struct Row {
  std::string_view id;
  double d, pitch, pitch_diameter, minor, core, area, drill;
  double chart_pitch_diameter, chart_minor;  // of b
  double most_6g, least_6g;                  // of b
};
constexpr std::array<Row, 6> rows{{
    {"M1.6", 1.6, 0.35, 1.3727, 1.2211, 1.1706, 1.2700, 1.25, 1.373, 1.221, 1.581, 1.496},
    {"M2", 2.0, 0.40, 1.7402, 1.5670, 1.5093, 2.0732, 1.60, 1.740, 1.567, 1.981, 1.886},
    {"M2.5", 2.5, 0.45, 2.2077, 2.0129, 1.9479, 3.3908, 2.05, 2.208, 2.013, 2.480, 2.380},
    {"M3", 3.0, 0.50, 2.6752, 2.4587, 2.3866, 5.0308, 2.50, 2.675, 2.458, 2.980, 2.874},
    {"M3.5", 3.5, 0.60, 3.1103, 2.8505, 2.7639, 6.7752, 2.90, 3.110, 2.850, 3.479, 3.354},
    {"M4", 4.0, 0.70, 3.5453, 3.2422, 3.1412, 8.7787, 3.30, 3.545, 3.242, 3.978, 3.838},
}};

const fasteners::Thread& thread(std::string_view id) {
  const fasteners::Thread* const found = fasteners::thread(id);
  REQUIRE(found != nullptr);
  return *found;
}

}  // namespace

TEST_CASE("ISO 724 by two charts: diameters, pitches and tap drills") {
  for (const Row& row : rows) {
    CAPTURE(row.id);
    const fasteners::Thread& one = thread(row.id);
    check_mm(one.major.nominal, row.d, exactly);
    check_mm(one.pitch.nominal, row.pitch, exactly);
    check_mm(one.tap_drill.nominal, row.drill, exactly);
    check_mm(fasteners::pitch_diameter(one), row.pitch_diameter, derived);
    check_mm(fasteners::minor_diameter(one), row.minor, derived);
    check_mm(fasteners::core_diameter(one), row.core, derived);
    check_mm(fasteners::pitch_diameter(one), row.chart_pitch_diameter, printed);
    check_mm(fasteners::minor_diameter(one), row.chart_minor, row.id == "M3" ? 0.001 : printed);
  }
}

TEST_CASE("Mechanical Engineer's Data Handbook, 8.2.4: pitches and tapping drills") {
  struct Printed {
    std::string_view id;
    double pitch, drill;
  };
  for (const Printed& row : std::array<Printed, 5>{
           {{"M1.6", 0.35, 1.25}, {"M2", 0.4, 1.6}, {"M2.5", 0.45, 2.05}, {"M3", 0.5, 2.5}, {"M4", 0.7, 3.3}}}) {
    CAPTURE(row.id);
    check_mm(thread(row.id).pitch.nominal, row.pitch, exactly);
    check_mm(thread(row.id).tap_drill.nominal, row.drill, exactly);
  }
}

TEST_CASE("ISO 965 class 6g by a chart of limiting dimensions: what a screw measures is below d") {
  for (const Row& row : rows) {
    CAPTURE(row.id);
    REQUIRE(thread(row.id).screw.has_value());
    check_mm(thread(row.id).screw->high(), row.most_6g, exactly);
    check_mm(thread(row.id).screw->low(), row.least_6g, exactly);
    CHECK(thread(row.id).screw->high() < row.d);
  }
}

TEST_CASE("ISO 898-1 stress areas, mm2") {
  // Four decimals from the formula; the standard's own printed 1.27 2.07 3.39 5.03 6.78 8.78 are from memory.
  constexpr std::array<double, 6> from_memory{1.27, 2.07, 3.39, 5.03, 6.78, 8.78};
  for (std::size_t i = 0; i < rows.size(); ++i) {
    CAPTURE(rows[i].id);
    const double area = fasteners::stress_area(thread(rows[i].id));
    check_mm(area, rows[i].area, derived);
    check_mm(area, from_memory[i], 0.005);
  }
}

TEST_CASE("threads by name, and a known error of a public scad file") {
  CHECK(fasteners::thread("m2.5") == fasteners::thread("M2.5"));
  CHECK(fasteners::thread("M5") == nullptr);
  CHECK(fasteners::thread("") == nullptr);
  CHECK(fasteners::threads().size() == 8);
  // nuts_and_bolts.scad of MCAD gives 1.6 as the major diameter of M2: that is M1.6, or the tap drill of M2.
  CHECK(thread("M2").major.nominal > 1.9);
}
