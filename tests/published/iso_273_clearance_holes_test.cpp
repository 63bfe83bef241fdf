// Clearance holes. ISO 273 itself was not at hand. Two sources made apart: an engineering reference page (fine H12,
// medium H13, coarse H14) and an encyclopaedia page after Tabellenbuch Metall, 45th edition; they agree in every cell.
#include "standards/fasteners.h"
#include "support/check_mm.h"

#include <array>
#include <doctest/doctest.h>
#include <string_view>

using namespace baywright::standards;
using baywright::test::check_mm;

namespace {

constexpr double exactly = 1e-9;

struct Row {
  std::string_view id;
  double d, fine, medium, coarse;
  double fine_width, medium_width, coarse_width;  // ISO 286-1: H12, H13, H14 of up to 3 and of 3 to 6
};
constexpr std::array<Row, 6> rows{{
    {"M1.6", 1.6, 1.7, 1.8, 2.0, 0.10, 0.14, 0.25},
    {"M2", 2.0, 2.2, 2.4, 2.6, 0.10, 0.14, 0.25},
    {"M2.5", 2.5, 2.7, 2.9, 3.1, 0.10, 0.14, 0.30},
    {"M3", 3.0, 3.2, 3.4, 3.6, 0.12, 0.18, 0.30},
    {"M3.5", 3.5, 3.7, 3.9, 4.2, 0.12, 0.18, 0.30},
    {"M4", 4.0, 4.3, 4.5, 4.8, 0.12, 0.18, 0.30},
}};

}  // namespace

TEST_CASE("ISO 273 by two pages: fine, medium and coarse") {
  for (const Row& row : rows) {
    CAPTURE(row.id);
    REQUIRE(fasteners::thread(row.id) != nullptr);
    const fasteners::Clearance& hole = fasteners::thread(row.id)->hole;
    check_mm(hole.fine.low(), row.fine, exactly);
    check_mm(hole.medium.low(), row.medium, exactly);
    check_mm(hole.coarse.low(), row.coarse, exactly);
    check_mm(hole.fine.high() - hole.fine.low(), row.fine_width, exactly);
    check_mm(hole.medium.high() - hole.medium.low(), row.medium_width, exactly);
    check_mm(hole.coarse.high() - hole.coarse.low(), row.coarse_width, exactly);
  }
}

TEST_CASE("radial play in clearance holes, and the fastener formulas of ASME Y14.5") {
  // (hole - d)/2, by hand.
  constexpr std::array<std::array<double, 3>, 6> play{{{0.05, 0.10, 0.20},
                                                       {0.10, 0.20, 0.30},
                                                       {0.10, 0.20, 0.30},
                                                       {0.10, 0.20, 0.30},
                                                       {0.10, 0.20, 0.35},
                                                       {0.15, 0.25, 0.40}}};
  for (std::size_t i = 0; i < rows.size(); ++i) {
    CAPTURE(rows[i].id);
    const fasteners::Thread& thread = *fasteners::thread(rows[i].id);
    check_mm((thread.hole.fine.nominal - thread.major.nominal) / 2.0, play[i][0], exactly);
    check_mm((thread.hole.medium.nominal - thread.major.nominal) / 2.0, play[i][1], exactly);
    check_mm((thread.hole.coarse.nominal - thread.major.nominal) / 2.0, play[i][2], exactly);
  }
  // Floating fastener, T = H - F with the smallest hole and the largest screw (from memory): 0.40 for M3 medium.
  const fasteners::Thread& m3 = *fasteners::thread("M3");
  check_mm(m3.hole.medium.low() - m3.major.high(), 0.40, exactly);
  // Two holes drilled by hand, each 0.5 off, may be 1.0 apart from their drawn pitch; coarse holes take up 0.3 a side.
  CHECK(2.0 * (m3.hole.coarse.nominal - m3.major.nominal) / 2.0 < 1.0);
}
