#include "output/stack_column.h"

#include "support/check_mm.h"
#include "unit/output/demos.h"

#include <doctest/doctest.h>
#include <limits>

using namespace baywright;
using namespace baywright::output;
using baywright::test::check_mm;

namespace {

double sum(const std::vector<Band>& bands) {
  double out = 0.0;
  for (const Band& band : bands) out += band.length;
  return out;
}

}  // namespace

TEST_CASE("bands add up to the gap, for every gap of every demo") {
  int columns = 0;
  int overlaps = 0;
  for (const Demo& demo : all_demos())
    for (const fit::Finding& finding : demo.seating.findings) {
      const StackColumn column = stack_column(finding, demo.seated);
      if (!column.refused.empty()) continue;
      ++columns;
      overlaps += finding.gap->nominal < 0.0 ? 1 : 0;
      CAPTURE(finding.between[0]);
      CAPTURE(finding.between[1]);
      check_mm(sum(column.open) - sum(column.close), finding.gap->nominal, 1e-9);
      for (const auto* bands : {&column.open, &column.close})
        for (const Band& band : *bands) CHECK(band.length > 0.0);
    }
  CHECK(columns > 40);
  CHECK(overlaps >= 2);
}

TEST_CASE("the stack under the tray stands as it is built up") {
  const auto all = demos("thin-desktop");
  REQUIRE(all.size() == 3);
  const Demo& tall = all[2];
  REQUIRE(tall.seating.deciding);
  const StackColumn column = stack_column(tall.seating.findings[*tall.seating.deciding], tall.seated);
  REQUIRE(column.refused == "");
  // The demo's own measures: tray 9.1, heatsink 4, pad 1 pressed by 30 %. Card 0.80, S3 parts 1.40, solder 0.05,
  // stand-off of class H4.2 2.45: PCI-SIG M.2 Specification Rev 1.0 (2013), Tables 2 and 14, Figures 3 and 40 to 61.
  REQUIRE(column.open.size() == 1);
  check_mm(column.open[0].length, 9.1, 1e-9);
  check_mm(column.open[0].plus, 0.2, 1e-9);
  REQUIRE(column.close.size() == 7);
  CHECK(column.close[0].name == "solder");
  check_mm(column.close[0].length, 0.05, 1e-9);
  check_mm(column.close[1].length + column.close[2].length, 2.45,
           1e-9);  // the seat carries what the stand-off does not
  check_mm(column.close[3].length, 0.80, 1e-9);
  check_mm(column.close[4].length, 1.40, 1e-9);
  check_mm(column.close[5].length, 0.70, 1e-9);
  check_mm(column.close[5].minus, 0.07, 1e-9);
  check_mm(column.close[6].length, 4.00, 1e-9);
  CHECK(column.close[5].value == "1.00 ±0.10, counts 0.70");
  check_mm(column.away, {0.0, 0.0, -1.0}, 1e-9);  // out of the board's back, as in the section
  check_mm(column_scale(column, 120.0), 10.0, 0.0);
  check_mm(column_scale(column, 90.0), 8.0, 0.0);
}

TEST_CASE("no stack is drawn where there is none") {
  const auto all = demos("thin-desktop");
  REQUIRE_FALSE(all.empty());
  fit::Finding finding = all[2].seating.findings.at(*all[2].seating.deciding);
  finding.toward = glm::normalize(geometry::Vec3(0.0, 0.6, 0.8));
  CHECK(stack_column(finding, all[2].seated).refused.find("slanting") != std::string::npos);
  finding = all[2].seating.findings.at(*all[2].seating.deciding);
  finding.chain.clear();
  CHECK(stack_column(finding, all[2].seated).refused.find("exact") != std::string::npos);
  finding.gap.reset();
  CHECK(stack_column(finding, all[2].seated).refused.find("No gap") == 0);
}

TEST_CASE("a figure never rounds to the other side of what is asked") {
  CHECK(over_or_clear(-0.3, 0.5) == "0.30 over");
  CHECK(over_or_clear(0.252109, 0.5) == "0.25 clear");
  CHECK(over_or_clear(0.4996, 0.5) == "0.4996 clear");
  CHECK(over_or_clear(-0.004, 0.0) == "0.004 over");
  CHECK(over_or_clear(0.0, 0.0) == "0.00 clear");
  CHECK(over_or_clear(-std::numeric_limits<double>::infinity(), 0.5) == "not known");
  CHECK(over_or_clear(std::numeric_limits<double>::quiet_NaN(), 0.5) == "not known");
}
