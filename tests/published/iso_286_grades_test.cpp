// ISO 286-1 standard tolerances IT5 to IT16, µm. IT5 to IT11: two public tables that agree, IT12 to IT14: the second of
// them alone; IT15 and IT16: from memory, ten times IT10 and IT11.
#include "standards/general_tolerances.h"
#include "support/check_mm.h"

#include <array>
#include <cmath>
#include <doctest/doctest.h>
#include <limits>

using namespace baywright::standards;
using baywright::test::check_mm;
using general_tolerances::grade;

namespace {

constexpr double exactly = 1e-12;

struct Row {
  double over, to;
  std::array<int, 12> micrometres;  // IT5 to IT16
};
constexpr std::array<Row, 9> rows{{{0, 3, {4, 6, 10, 14, 25, 40, 60, 100, 140, 250, 400, 600}},
                                   {3, 6, {5, 8, 12, 18, 30, 48, 75, 120, 180, 300, 480, 750}},
                                   {6, 10, {6, 9, 15, 22, 36, 58, 90, 150, 220, 360, 580, 900}},
                                   {10, 18, {8, 11, 18, 27, 43, 70, 110, 180, 270, 430, 700, 1100}},
                                   {18, 30, {9, 13, 21, 33, 52, 84, 130, 210, 330, 520, 840, 1300}},
                                   {30, 50, {11, 16, 25, 39, 62, 100, 160, 250, 390, 620, 1000, 1600}},
                                   {50, 80, {13, 19, 30, 46, 74, 120, 190, 300, 460, 740, 1200, 1900}},
                                   {80, 120, {15, 22, 35, 54, 87, 140, 220, 350, 540, 870, 1400, 2200}},
                                   {120, 180, {18, 25, 40, 63, 100, 160, 250, 400, 630, 1000, 1600, 2500}}}};

double it(int number, double size) {
  return grade(number, size).value_or(std::numeric_limits<double>::quiet_NaN());
}

}  // namespace

TEST_CASE("ISO 286-1: every cell, up to and including the upper bound") {
  for (const Row& row : rows) {
    for (int number = 5; number <= 16; ++number) {
      CAPTURE(row.to);
      CAPTURE(number);
      const double want = row.micrometres[static_cast<std::size_t>(number - 5)] / 1000.0;
      check_mm(it(number, row.to), want, exactly);
      check_mm(it(number, (row.over + row.to) / 2.0), want, exactly);
      if (row.over > 0.0) check_mm(it(number, std::nextafter(row.over, 1e9)), want, exactly);
    }
  }
  check_mm(it(5, 1.0), 0.004, exactly);  // a table that starts "over 1" is wrong: the first row starts at 0
}

TEST_CASE("ISO 286-1: where there is none") {
  CHECK(!grade(4, 10.0).has_value());
  CHECK(!grade(17, 10.0).has_value());
  CHECK(!grade(7, 0.0).has_value());
  CHECK(!grade(7, -1.0).has_value());
  CHECK(!grade(7, 180.001).has_value());
  CHECK(!grade(7, std::numeric_limits<double>::quiet_NaN()).has_value());
  CHECK(grade(13, 1.0).has_value());
  CHECK(!grade(14, 1.0).has_value());
  CHECK(grade(14, 1.001).has_value());
}

TEST_CASE("ISO 286-1: a printed error, and the formula behind the table") {
  // A supplier's table gives h6 of 18 to 30 as 0 to -0.030: a misprint of -0.013.
  check_mm(it(6, 25.0), 0.013, exactly);
  // From memory: i = 0.45 cbrt(D) + 0.001 D µm, D the geometric mean of the bounds in mm; IT6 10 i, IT7 16 i, IT8 25 i.
  // The standard rounds them, of small sizes by more than the 8 % that are allowed here.
  for (const Row& row : rows) {
    CAPTURE(row.to);
    if (row.over < 6.0) continue;
    const double size = std::sqrt(row.over * row.to);
    const double i = 0.45 * std::cbrt(size) + 0.001 * size;
    check_mm(it(6, row.to) * 1000.0 / (10.0 * i), 1.0, 0.08);
    check_mm(it(7, row.to) * 1000.0 / (16.0 * i), 1.0, 0.08);
    check_mm(it(8, row.to) * 1000.0 / (25.0 * i), 1.0, 0.08);
    check_mm(it(11, row.to), 10.0 * it(6, row.to), 0.0051);  // each fifth grade is tenfold, rounded
  }
}

TEST_CASE("ISO 286-1: four fits of 25 mm, from memory with the widths of the table") {
  struct Fit {
    double hole_low, shaft_high;  // H7, and the upper deviation of g6 h6 k6 p6, µm
    double least_gap, most_gap;
  };
  const double hole_width = it(7, 25.0) * 1000.0;
  const double shaft_width = it(6, 25.0) * 1000.0;
  for (const Fit& fit : std::array<Fit, 4>{{{0, -7, 7, 41}, {0, 0, 0, 34}, {0, 15, -15, 19}, {0, 35, -35, -1}}}) {
    check_mm(fit.hole_low - fit.shaft_high, fit.least_gap, exactly);
    check_mm(fit.hole_low + hole_width - (fit.shaft_high - shaft_width), fit.most_gap, 1e-9);
  }
}
