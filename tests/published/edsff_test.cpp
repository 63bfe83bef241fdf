// EDSFF: a drive maker's table of E1 sizes; the form factors of NVMe-MI (thicknesses) and of DMTF Redfish (lengths of
// E3, "approximately"); a storage course's table (width of E3). SFF-TA-1006, 1007 and 1008 were not read.
#include "standards/drives.h"
#include "support/check_mm.h"

#include <array>
#include <doctest/doctest.h>
#include <string_view>

using namespace baywright::standards;
using baywright::test::check_mm;
using baywright::tolerance::Known;

namespace {

constexpr double exactly = 1e-9;

const drives::Edsff& form(std::string_view id) {
  REQUIRE(drives::edsff(id) != nullptr);
  return *drives::edsff(id);
}

}  // namespace

TEST_CASE("EDSFF sizes and powers") {
  struct Row {
    std::string_view id, form;
    double width, length, thickness, watts;
  };
  constexpr std::array<Row, 11> rows{{
      {"e1s/5.9", "E1.S", 31.50, 111.49, 5.9, 12},
      {"e1s/8", "E1.S", 31.50, 111.49, 8.01, 16},
      {"e1s/9.5", "E1.S", 33.75, 118.75, 9.5, 20},
      {"e1s/15", "E1.S", 33.75, 118.75, 15, 25},
      {"e1s/25", "E1.S", 33.75, 118.75, 25, 25},
      {"e1l/9.5", "E1.L", 38.40, 318.75, 9.5, 25},
      {"e1l/18", "E1.L", 38.40, 318.75, 18, 40},
      {"e3s/1t", "E3.S", 76, 112.75, 7.5, 25},
      {"e3s/2t", "E3.S", 76, 112.75, 16.8, 40},
      {"e3l/1t", "E3.L", 76, 142.2, 7.5, 40},
      {"e3l/2t", "E3.L", 76, 142.2, 16.8, 70},
  }};
  CHECK(drives::edsff().size() == rows.size());
  for (const Row& row : rows) {
    CAPTURE(row.id);
    CHECK(form(row.id).form == row.form);
    check_mm(form(row.id).width.nominal, row.width, exactly);
    check_mm(form(row.id).length.nominal, row.length, exactly);
    check_mm(form(row.id).thickness.nominal, row.thickness, exactly);
    CHECK(form(row.id).watts == row.watts);
    CHECK(form(row.id).width.known == Known::secondary);
  }
}

TEST_CASE("EDSFF: an E3 2T is 9.30 thicker than a 1T") {
  check_mm(form("e3s/2t").thickness.nominal - form("e3s/1t").thickness.nominal, 9.30, exactly);
  check_mm(form("e3l/2t").thickness.nominal - form("e3l/1t").thickness.nominal, 9.30, exactly);
}
