// Link rates after line code. PCIe: the Linux kernel's drivers/pci/pci.h gives Mb/s a lane after encoding (2500 x 8/10,
// 5000 x 8/10, 8000, 16000 and 32000 x 128/130). SATA: encyclopaedia articles, 150, 300 and 600 MB/s.
#include "standards/links.h"

#include <array>
#include <cmath>
#include <doctest/doctest.h>

using namespace baywright::standards;
using links::Link;
using links::Protocol;

namespace {

void check_rate(const Link& link, double megabytes) {
  CAPTURE(links::in_words(link));
  CAPTURE(links::megabytes(link));
  CHECK(std::abs(links::megabytes(link) - megabytes) <= 0.001);
}

}  // namespace

TEST_CASE("PCIe 1 to 5, MB/s") {
  struct Row {
    int generation;
    double gigatransfers, x1, x2, x4, x8, x16;
  };
  constexpr std::array<Row, 5> table{{{1, 2.5, 250, 500, 1000, 2000, 4000},
                                      {2, 5, 500, 1000, 2000, 4000, 8000},
                                      {3, 8, 984.615, 1969.231, 3938.462, 7876.923, 15753.846},
                                      {4, 16, 1969.231, 3938.462, 7876.923, 15753.846, 31507.692},
                                      {5, 32, 3938.462, 7876.923, 15753.846, 31507.692, 63015.385}}};
  for (const Row& row : table) {
    const Link x1{.protocol = Protocol::pcie, .generation = row.generation, .lanes = 1};
    CHECK(links::gigatransfers(x1) == row.gigatransfers);
    CHECK(links::known(x1) == baywright::tolerance::Known::secondary);
    check_rate(x1, row.x1);
    check_rate({.protocol = Protocol::pcie, .generation = row.generation, .lanes = 2}, row.x2);
    check_rate({.protocol = Protocol::pcie, .generation = row.generation, .lanes = 4}, row.x4);
    check_rate({.protocol = Protocol::pcie, .generation = row.generation, .lanes = 8}, row.x8);
    check_rate({.protocol = Protocol::pcie, .generation = row.generation, .lanes = 16}, row.x16);
  }
}

TEST_CASE("two lanes of one generation are four of the one before, from PCIe 3 on") {
  CHECK(links::megabytes({.protocol = Protocol::pcie, .generation = 4, .lanes = 2}) ==
        links::megabytes({.protocol = Protocol::pcie, .generation = 3, .lanes = 4}));
}

TEST_CASE("SATA 1.5, 3 and 6 Gb/s, MB/s") {
  check_rate({.protocol = Protocol::sata, .generation = 1, .lanes = 1}, 150);
  check_rate({.protocol = Protocol::sata, .generation = 2, .lanes = 1}, 300);
  check_rate({.protocol = Protocol::sata, .generation = 3, .lanes = 1}, 600);
}
