// Screw heads. No ISO text was at hand; each shape has two sources made apart, named at its case.
#include "standards/fasteners.h"
#include "support/check_mm.h"

#include <array>
#include <doctest/doctest.h>
#include <string_view>
#include <vector>

using namespace baywright::standards;
using baywright::test::check_mm;
using baywright::tolerance::Known;
using fasteners::Shape;

namespace {

constexpr double exactly = 1e-12;

const fasteners::Head& head_of(Shape shape, std::string_view thread) {
  const fasteners::Head* const found = fasteners::head(shape, thread);
  REQUIRE(found != nullptr);
  return *found;
}

struct Row {
  std::string_view thread;
  double across, high;               // of the first source
  double most_across, least_across;  // of the second
  double most_high, least_high;
  std::string_view driver;
};

void check_head(Shape shape, const Row& row) {
  CAPTURE(row.thread);
  const fasteners::Head& one = head_of(shape, row.thread);
  check_mm(one.diameter.nominal, row.across, exactly);
  check_mm(one.height.nominal, row.high, exactly);
  check_mm(one.diameter.high(), row.most_across, exactly);
  check_mm(one.diameter.low(), row.least_across, exactly);
  check_mm(one.height.high(), row.most_high, exactly);
  check_mm(one.height.low(), row.least_high, exactly);
  CHECK(one.driver == row.driver);
}

}  // namespace

TEST_CASE("ISO 4762 socket cap heads") {
  // First: FastenersWB (GPL-2) and BOLTS (LGPL, CC-BY-SA), which agree; an engineering reference page has the same.
  // Second: a gear site's table after ISO 4762, where the plain diameter is not printed but its smallest is.
  for (const Row& row : std::array<Row, 5>{{{"M1.6", 3.0, 1.6, 3.0, 2.86, 1.6, 1.46, "1.5 mm hexagon"},
                                            {"M2", 3.8, 2.0, 3.8, 3.62, 2.0, 1.86, "1.5 mm hexagon"},
                                            {"M2.5", 4.5, 2.5, 4.5, 4.32, 2.5, 2.36, "2 mm hexagon"},
                                            {"M3", 5.5, 3.0, 5.5, 5.32, 3.0, 2.86, "2.5 mm hexagon"},
                                            {"M4", 7.0, 4.0, 7.0, 6.78, 4.0, 3.82, "3 mm hexagon"}}}) {
    check_head(Shape::socket_cap, row);
  }
  // A table of cap screws in circulation has 5.20 and 6.64 as the smallest heads of M3 and M4.
  CHECK(head_of(Shape::socket_cap, "M3").diameter.low() > 5.25);
  CHECK(head_of(Shape::socket_cap, "M4").diameter.low() > 6.70);
  CHECK(head_of(Shape::socket_cap, "M3").diameter.elsewhere.find("5.68") !=
        std::string::npos);  // knurled, the gear site
  CHECK(fasteners::head(Shape::socket_cap, "M3.5") == nullptr);
}

TEST_CASE("ISO 7045 and 14583 pan heads") {
  // First: FastenersWB, whose ISO 14583 is the same but has no M1.6. Second: a fastener supplier's table of ISO 7045.
  for (const Row& row : std::array<Row, 6>{{{"M1.6", 3.2, 1.3, 3.2, 2.9, 1.3, 1.16, "PH0"},
                                            {"M2", 4.0, 1.6, 4.0, 3.7, 1.6, 1.46, "PH0 or T6"},
                                            {"M2.5", 5.0, 2.1, 5.0, 4.7, 2.1, 1.96, "PH1 or T8"},
                                            {"M3", 5.6, 2.4, 5.6, 5.3, 2.4, 2.26, "PH1 or T10"},
                                            {"M3.5", 7.0, 2.6, 7.0, 6.64, 2.6, 2.46, "PH2 or T15"},
                                            {"M4", 8.0, 3.1, 8.0, 7.64, 3.1, 2.92, "PH2 or T20"}}}) {
    check_head(Shape::pan, row);
  }
  // Two pages headed ISO 7045 are wrong, one with the heads of DIN 7985 (M3 6.0 x 2.52), one with heights of 1.8
  // and 2.4.
  CHECK(head_of(Shape::pan, "M3").diameter.high() < 5.9);
  CHECK(head_of(Shape::pan, "M3").height.high() > 2.3);
  CHECK(head_of(Shape::pan, "M4").height.high() > 3.0);
}

TEST_CASE("ISO 7046 and 2009 flat heads") {
  struct Flat {
    std::string_view thread;
    double sharp, high;             // FastenersWB, ISO 2009
    double most, supplier_most;     // two suppliers' tables of ISO 7046-2
    double least, least_allowance;  // the first supplier's, rounded to one decimal for M3.5 and M4
  };
  for (const Flat& row : std::array<Flat, 5>{{{"M2", 4.4, 1.2, 3.8, 3.8, 3.5, exactly},
                                              {"M2.5", 5.5, 1.5, 4.7, 4.7, 4.4, exactly},
                                              {"M3", 6.3, 1.65, 5.5, 5.5, 5.2, exactly},
                                              {"M3.5", 8.2, 2.35, 7.3, 7.30, 6.9, 0.05},
                                              {"M4", 9.4, 2.7, 8.4, 8.40, 8.0, 0.05}}}) {
    CAPTURE(row.thread);
    const fasteners::Head& one = head_of(Shape::flat, row.thread);
    check_mm(one.diameter.high(), row.sharp, exactly);
    check_mm(one.height.high(), row.high, exactly);
    REQUIRE(one.made.has_value());
    check_mm(one.made->high(), row.most, exactly);
    check_mm(one.made->high(), row.supplier_most, exactly);
    check_mm(one.made->low(), row.least, row.least_allowance);
    CHECK(one.made->known == Known::secondary);
    CHECK(one.made->high() < one.diameter.high());  // a rim is always left of the sharp cone
  }
  check_mm(head_of(Shape::flat, "M1.6").diameter.high(), 3.6, exactly);  // FastenersWB
  check_mm(head_of(Shape::flat, "M1.6").made->high(), 3.0, exactly);     // from memory, and says so
  CHECK(head_of(Shape::flat, "M1.6").made->known == Known::memory);
  // The csh_diam column of FastenersWB (M3 5.3) lies between smallest and largest: it is no maximum.
  CHECK(head_of(Shape::flat, "M3").made->high() > 5.3 + 0.1);
  CHECK(head_of(Shape::flat, "M3").made->low() < 5.3 - 0.05);
}

TEST_CASE("ISO 7380-1 button heads") {
  // FastenersWB; the head circles of a public footprint library have the same diameters (tests/oracles).
  check_mm(head_of(Shape::button, "M3").diameter.high(), 5.7, exactly);
  check_mm(head_of(Shape::button, "M3").height.high(), 1.65, exactly);
  check_mm(head_of(Shape::button, "M4").diameter.high(), 7.6, exactly);
  check_mm(head_of(Shape::button, "M4").height.high(), 2.2, exactly);
  CHECK(fasteners::head(Shape::button, "M2") == nullptr);  // the standard starts at M3
}

TEST_CASE("screw lengths, ISO 7045 and inch fractions") {
  // FastenersWB: M1.6 3 to 16, M2 3 to 20, M2.5 3 to 25, M3 4 to 30.
  struct Range {
    std::string_view thread;
    std::vector<double> lengths;
  };
  for (const Range& range : std::vector<Range>{{"M1.6", {3, 4, 5, 6, 8, 10, 12, 16}},
                                               {"M2", {3, 4, 5, 6, 8, 10, 12, 16, 20}},
                                               {"m2.5", {3, 4, 5, 6, 8, 10, 12, 16, 20, 25}},
                                               {"M3", {4, 5, 6, 8, 10, 12, 16, 20, 25, 30}},
                                               {"M8", {}}}) {
    CAPTURE(range.thread);
    const auto got = fasteners::screw_lengths(range.thread);
    CHECK(std::vector<double>(got.begin(), got.end()) == range.lengths);
  }
  // Common practice, no source: sixteenths of an inch.
  const std::array<int, 6> sixteenths{2, 3, 4, 5, 6, 8};
  for (const std::string_view thread : {"4-40", "6-32"}) {
    const auto got = fasteners::screw_lengths(thread);
    REQUIRE(got.size() == sixteenths.size());
    for (std::size_t i = 0; i < got.size(); ++i) check_mm(got[i], sixteenths[i] * 25.4 / 16.0, exactly);
  }
}

TEST_CASE("an ISO 7045 M2 head stands 0.40 above what M.2 allows a screw") {
  // PCI-SIG M.2 Specification Rev 1.0, Figures 66 to 71: head at most 1.20 high. The difference by hand.
  check_mm(head_of(Shape::pan, "M2").height.high() - 1.20, 0.40, exactly);
}
