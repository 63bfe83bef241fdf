// Stand-offs, spacers, press-in parts and heat-set inserts: market sizes of FastenersWB (GPL-2), one source, no
// standard.
#include "standards/fasteners.h"
#include "support/check_mm.h"

#include <algorithm>
#include <array>
#include <doctest/doctest.h>
#include <string_view>
#include <vector>

using namespace baywright::standards;
using baywright::test::check_mm;
using baywright::tolerance::Known;

namespace {

constexpr double exactly = 1e-12;

struct Row {
  std::string_view thread;
  double across_flats;
  bool stud;
  std::size_t count;
  double shortest, longest;
};

const fasteners::Standoff& standoff(const Row& row) {
  static const fasteners::Standoff none{};
  for (const fasteners::Standoff& one : fasteners::standoffs()) {
    if (one.thread == row.thread && one.across_flats == row.across_flats && one.stud == row.stud) return one;
  }
  FAIL("no such stand-off");
  return none;
}

bool holds(const std::vector<double>& lengths, double length) {
  return std::find(lengths.begin(), lengths.end(), length) != lengths.end();
}

}  // namespace

TEST_CASE("hex stand-offs that are sold") {
  constexpr std::array<Row, 9> rows{{{"M2.5", 5.0, true, 13, 5, 30},
                                     {"M3", 5.0, true, 4, 10, 25},
                                     {"M3", 5.5, true, 28, 5, 60},
                                     {"M3", 6.0, true, 9, 8, 40},
                                     {"M4", 7.0, true, 11, 5, 40},
                                     {"M2.5", 5.0, false, 9, 5, 22},
                                     {"M3", 5.0, false, 4, 5, 20},
                                     {"M3", 5.5, false, 24, 5, 40},
                                     {"M4", 7.0, false, 15, 5, 80}}};
  CHECK(fasteners::standoffs().size() == rows.size());
  for (const Row& row : rows) {
    CAPTURE(row.thread);
    CAPTURE(row.across_flats);
    CAPTURE(row.stud);
    const fasteners::Standoff& one = standoff(row);
    REQUIRE(one.lengths.size() == row.count);
    check_mm(one.lengths.front(), row.shortest, exactly);
    check_mm(one.lengths.back(), row.longest, exactly);
    CHECK(std::is_sorted(one.lengths.begin(), one.lengths.end()));
    check_mm(one.stud_length, !row.stud ? 0.0 : row.thread == "M4" ? 8.0 : 6.0, exactly);
  }
  CHECK(!holds(standoff(rows[2]).lengths, 21));  // male-female of 5.5: there is none
  CHECK(holds(standoff(rows[7]).lengths, 21));
  CHECK(holds(standoff(rows[0]).lengths, 17));
  CHECK(!holds(standoff(rows[5]).lengths, 6));
}

TEST_CASE("plain spacers, and what lengths hold to") {
  // Common practice, no source.
  const auto sold = fasteners::spacer_lengths();
  CHECK(std::vector<double>(sold.begin(), sold.end()) ==
        std::vector<double>{1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20});
  check_mm(fasteners::standoff_length_limit().high(), 0.1, exactly);
  check_mm(fasteners::standoff_length_limit().low(), -0.1, exactly);
  check_mm(fasteners::spacer_length_limit().high(), 0.25, exactly);
  CHECK(fasteners::standoff_length_limit().known == Known::practice);
  CHECK(fasteners::spacer_length_limit().known == Known::practice);
}

TEST_CASE("self-clinching nuts and stand-offs, heat-set inserts") {
  struct Part {
    std::string_view kind, thread;
    double hole, body, flange, height;  // 0: none given
  };
  constexpr std::array<Part, 14> parts{{{"nut", "M2", 4.22, 4.20, 6.35, 1.5},
                                        {"nut", "M2.5", 4.22, 4.20, 6.35, 1.5},
                                        {"nut", "M3", 4.22, 4.20, 6.35, 1.5},
                                        {"nut", "M3.5", 4.75, 4.73, 7.11, 1.5},
                                        {"nut", "M4", 5.41, 5.38, 7.87, 2.0},
                                        {"stand-off", "M3", 4.22, 4.8, 0, 0},
                                        {"stand-off", "M3", 5.41, 6.4, 0, 0},  // the large body
                                        {"stand-off", "M3.5", 5.41, 6.4, 0, 0},
                                        {"stand-off", "M4", 7.14, 7.9, 0, 0},
                                        {"heat-set insert", "M2", 3.07, 3.73, 0, 4.00},
                                        {"heat-set insert", "M2.5", 3.86, 4.55, 0, 5.74},
                                        {"heat-set insert", "M3", 3.86, 4.55, 0, 5.74},
                                        {"heat-set insert", "M3.5", 4.65, 5.33, 0, 7.14},
                                        {"heat-set insert", "M4", 5.51, 6.17, 0, 8.15}}};
  REQUIRE(fasteners::press_ins().size() == parts.size());
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const fasteners::PressIn& one = fasteners::press_ins()[i];
    CAPTURE(one.hole.name);
    CHECK(one.kind == parts[i].kind);
    CHECK(one.thread == parts[i].thread);
    check_mm(one.hole.nominal, parts[i].hole, exactly);
    check_mm(one.body.nominal, parts[i].body, exactly);
    CHECK(one.flange.has_value() == (parts[i].flange > 0.0));
    if (one.flange) check_mm(one.flange->nominal, parts[i].flange, exactly);
    CHECK(one.height.has_value() == (parts[i].height > 0.0));
    if (one.height) check_mm(one.height->nominal, parts[i].height, exactly);
    if (one.kind != "heat-set insert") check_mm(one.hole.high() - one.hole.low(), 0.08, exactly);
    if (one.kind == "nut") CHECK(one.body.nominal < one.hole.low());                // it has to go in
    if (one.kind == "heat-set insert") CHECK(one.body.nominal > one.hole.nominal);  // it has to bite
  }
}
