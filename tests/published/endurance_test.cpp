// Endurance, capacity and cells. A drive maker's page for 1432 TB, 1800 GB, 5 years (prints 0.43, cut off); a hosting
// page for 0.25 writes a day (logwash); herosys.com.tw for 3504 TB. The unit of written data: libnvme `types.h` (1000
// blocks of 512 bytes). Blocks of a label: IDEMA LBA1-03, from memory. The rest is arithmetic on 10^9, 2^30 and 365
// days.
#include "value/endurance.h"

#include "support/check_ratio.h"
#include "value/capacity.h"
#include "value/cell_type.h"

#include <doctest/doctest.h>

using namespace baywright::value;
using baywright::test::check_ratio;

TEST_CASE("drive writes per day and TB written") {
  const double dwpd = writes_per_day(1432.0, 1800.0, 5.0);
  check_ratio(dwpd, 0.435921, 1e-5);
  CHECK(static_cast<int>(dwpd * 100.0) == 43);  // as printed
  check_ratio(dwpd * 1800.0, 784.658, 1e-5);
  check_ratio(terabytes_written(0.25, 1000.0, 4.0), 365.0, 1e-12);
  check_ratio(writes_per_day(3504.0, 1920.0, 5.0), 1.0, 1e-12);
  // Two capacities of one series.
  check_ratio(writes_per_day(600.0, 1000.0, 5.0), 0.328767, 1e-5);
  check_ratio(writes_per_day(1200.0, 2000.0, 5.0), writes_per_day(600.0, 1000.0, 5.0), 1e-12);
}

TEST_CASE("years at one's own writing, and the warranty that ends first") {
  check_ratio(years_until(600.0, 20.0), 82.1918, 1e-5);
  check_ratio(years_until(600.0, 100.0), 16.4384, 1e-5);
  check_ratio(years_until(1200.0, 400.0), 8.21918, 1e-5);
  CHECK(warranty_end(5.0, 600.0, 100.0) == 5.0);
  check_ratio(warranty_end(5.0, 150.0, 100.0), 4.10959, 1e-5);
}

TEST_CASE("units of an NVMe drive's log") {
  check_ratio(terabytes_of_units(1'171'875'000), 600.0, 1e-12);
  check_ratio(terabytes_of_units(12'345'678), 6.320987136, 1e-12);
}

TEST_CASE("what a label's gigabytes are in binary") {
  check_ratio(gibibytes(1000.0), 931.322575, 1e-8);
  check_ratio(tebibytes(1000.0), 0.909494702, 1e-8);
  check_ratio(gibibytes(500.0), 465.661287, 1e-8);
  check_ratio(gibibytes(256.0), 238.418579, 1e-8);
  check_ratio(gibibytes(480.0), 447.034836, 1e-8);
  check_ratio(tebibytes(2000.0), 1.818989404, 1e-8);
  check_ratio(tebibytes(4000.0), 3.637978807, 1e-8);
}

TEST_CASE("blocks of labelled drives") {
  CHECK(blocks(250.0) == 488'397'168);
  CHECK(blocks(500.0) == 976'773'168);
  CHECK(blocks(1000.0) == 1'953'525'168);
  CHECK(blocks(2000.0) == 3'907'029'168);
  CHECK(blocks(4000.0) == 7'814'037'168);
  CHECK(*blocks(1000.0) * 512 == 1'000'204'886'016);
  CHECK(!blocks(32.0));
  CHECK(!blocks(931.5));
}

TEST_CASE("bits and levels of a cell") {
  CHECK(bits(CellType::tlc) == 3);
  CHECK(states(CellType::tlc) == 8);
  CHECK(states(CellType::qlc) == 16);
  CHECK(read_cell_type("3-bit MLC") == CellType::tlc);
  CHECK(read_cell_type("mlc") == CellType::mlc);
  CHECK(!read_cell_type("V-memory"));
}
