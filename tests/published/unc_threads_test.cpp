// 4-40 and 6-32 UNC. ASME B1.1 was not at hand: a chart of internal threads (2B) and a chart of UNC dimensions, made
// apart; drills from a tap and clearance chart of a machining shop; ASME B18.2.8 as the Machinery's Handbook 31 has it.
#include "standards/fasteners.h"
#include "support/check_mm.h"

#include <array>
#include <doctest/doctest.h>
#include <string>
#include <string_view>

using namespace baywright::standards;
using baywright::test::check_mm;

namespace {

constexpr double exactly = 1e-9;
constexpr double inch = 25.4;

struct Row {
  std::string_view id;
  double major_in;                                   // both charts
  int per_inch;                                      //
  double pitch_diameter_in;                          // the chart of internal threads: its smallest, which is basic
  double minor_in, minor_allowance;                  // the same, rounded to 0.104 for 6-32
  double area_in2;                                   // both charts
  double major, pitch, pitch_diameter, minor, area;  // mm and mm2, by hand
};
constexpr std::array<Row, 2> rows{
    {{"4-40", 0.1120, 40, 0.0958, 0.0849, 0.0001, 0.00604, 2.8448, 0.6350, 2.4324, 2.1574, 3.892},
     {"6-32", 0.1380, 32, 0.1177, 0.1040, 0.0003, 0.00909, 3.5052, 0.79375, 2.9896, 2.6459, 5.861}}};

const fasteners::Thread& thread(std::string_view id) {
  REQUIRE(fasteners::thread(id) != nullptr);
  return *fasteners::thread(id);
}

}  // namespace

TEST_CASE("UNC basic dimensions by two charts") {
  for (const Row& row : rows) {
    CAPTURE(row.id);
    const fasteners::Thread& one = thread(row.id);
    check_mm(one.major.nominal, row.major_in * inch, exactly);
    check_mm(one.pitch.nominal, inch / row.per_inch, exactly);
    check_mm(fasteners::pitch_diameter(one) / inch, row.pitch_diameter_in, 0.00005);
    check_mm(fasteners::minor_diameter(one) / inch, row.minor_in, row.minor_allowance);
    check_mm(fasteners::stress_area(one) / (inch * inch), row.area_in2, 0.00001);
    check_mm(one.major.nominal, row.major, exactly);
    check_mm(one.pitch.nominal, row.pitch, exactly);
    check_mm(fasteners::pitch_diameter(one), row.pitch_diameter, 0.00006);
    check_mm(fasteners::minor_diameter(one), row.minor, 0.00006);
    check_mm(fasteners::stress_area(one), row.area, 0.0006);
  }
}

TEST_CASE("UNC drills: a machining shop's chart and ASME B18.2.8") {
  // Number drills are thousandths of an inch: No. 43 0.0890, No. 36 0.1065.
  check_mm(thread("4-40").tap_drill.nominal, 0.0890 * inch, 0.0005);
  check_mm(thread("6-32").tap_drill.nominal, 0.1065 * inch, 0.0005);
  // B18.2.8 close, normal, loose; close and loose are of low confidence, and normal alone was read clearly.
  check_mm(thread("4-40").hole.fine.nominal, 3.0, exactly);
  check_mm(thread("4-40").hole.medium.nominal, 3.3, exactly);
  check_mm(thread("4-40").hole.coarse.nominal, 3.7, exactly);
  check_mm(thread("6-32").hole.fine.nominal, 3.6, exactly);
  check_mm(thread("6-32").hole.medium.nominal, 3.9, exactly);
  check_mm(thread("6-32").hole.coarse.nominal, 4.4, exactly);
  // The shop's chart has other classes: No. 32 and No. 30 for 4-40, No. 27 and No. 25 for 6-32. Both are shown.
  CHECK(thread("4-40").hole.fine.elsewhere.find("2.946") != std::string::npos);
  CHECK(thread("4-40").hole.coarse.elsewhere.find("3.264") != std::string::npos);
  CHECK(thread("6-32").hole.fine.elsewhere.find("3.658") != std::string::npos);
  CHECK(thread("6-32").hole.coarse.elsewhere.find("3.797") != std::string::npos);
  for (const Row& row : rows) {  // every class lets the screw through
    CHECK(thread(row.id).hole.fine.nominal > row.major);
    CHECK(thread(row.id).hole.fine.nominal < thread(row.id).hole.medium.nominal);
    CHECK(thread(row.id).hole.medium.nominal < thread(row.id).hole.coarse.nominal);
  }
}

TEST_CASE("M3 and 6-32, which are mixed up, differ by 0.505 in d and 0.294 in pitch") {
  check_mm(thread("6-32").major.nominal - thread("M3").major.nominal, 0.5052, exactly);
  check_mm(thread("6-32").pitch.nominal - thread("M3").pitch.nominal, 0.29375, exactly);
}
