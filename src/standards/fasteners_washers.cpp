// Washers and hexagon nuts.
#include "standards/fasteners.h"
#include "standards/fasteners_names.h"
#include "standards/row.h"

#include <array>

namespace baywright::standards::fasteners {

namespace {

struct WasherSizes {
  std::string_view standard, thread;
  double bore, most_outside, least_outside, thickness, limit;
};
constexpr std::array<WasherSizes, 10> washer_rows{{
    {"ISO 7089", "M1.6", 1.7, 4.0, 3.7, 0.3, 0.05},
    {"ISO 7089", "M2", 2.2, 5.0, 4.7, 0.3, 0.05},
    {"ISO 7089", "M2.5", 2.7, 6.0, 5.7, 0.5, 0.05},
    {"ISO 7089", "M3", 3.2, 7.0, 6.64, 0.5, 0.05},
    {"ISO 7089", "M4", 4.3, 9.0, 8.64, 0.8, 0.10},
    {"ISO 7092", "M1.6", 1.7, 3.5, 3.2, 0.3, 0.05},
    {"ISO 7092", "M2", 2.2, 4.5, 4.2, 0.3, 0.05},
    {"ISO 7092", "M2.5", 2.7, 5.0, 4.7, 0.5, 0.05},
    {"ISO 7092", "M3", 3.2, 6.0, 5.7, 0.5, 0.05},
    {"ISO 7092", "M4", 4.3, 8.0, 7.64, 0.5, 0.05},
}};

Washer washer(const WasherSizes& row) {
  const std::string source = std::string(row.standard) + " as the FastenersWB and BOLTS data give it";
  const std::string name = of(row.thread, row.standard == "ISO 7089" ? "washer" : "small washer");
  const std::string lower_from_memory = source + "; its lower limit from memory";
  return {.standard = row.standard,
          .thread = row.thread,
          .bore = at_least(name + ", bore", row.bore, source, Known::secondary),
          .outside = {name + ", outside", row.most_outside, row.most_outside - row.least_outside, 0.0,
                      lower_from_memory, Known::secondary},
          .thickness = plus_minus(name + ", thickness", row.thickness, row.limit, lower_from_memory, Known::secondary)};
}

struct NutSizes {
  std::string_view thread;
  double across_flats, height, corners;
};
// Across corners: the figures of BOLTS, but for M1.6, where it has that of DIN 934.
constexpr std::array<NutSizes, 6> nut_rows{{
    {"M1.6", 3.2, 1.3, 3.41},
    {"M2", 4.0, 1.6, 4.32},
    {"M2.5", 5.0, 2.0, 5.45},
    {"M3", 5.5, 2.4, 6.01},
    {"M3.5", 6.0, 2.8, 6.58},
    {"M4", 7.0, 3.2, 7.66},
}};

Dimension nut_corners(const NutSizes& row) {
  const std::string name = of(row.thread, "nut across corners");
  if (row.thread == "M1.6") {
    return but(at_least(name, row.corners, "ISO 4032, from memory", Known::memory), "3.48 in BOLTS, as in DIN 934");
  }
  return but(at_least(name, row.corners, "ISO 4032 as the BOLTS data give it", Known::secondary),
             "up to 0.1 more in the FastenersWB data, which round up");
}

Nut nut(const NutSizes& row) {
  const std::string source = "ISO 4032 as the FastenersWB and BOLTS data give it";
  return {.thread = row.thread,
          .across_flats = at_most(of(row.thread, "nut across flats"), row.across_flats, source, Known::secondary),
          .height = at_most(of(row.thread, "nut height"), row.height, source, Known::secondary),
          .corners = nut_corners(row)};
}

}  // namespace

std::span<const Washer> washers() {
  static const std::vector<Washer> rows = [] {
    std::vector<Washer> made;
    for (const WasherSizes& row : washer_rows) made.push_back(washer(row));
    return made;
  }();
  return rows;
}

std::span<const Nut> nuts() {
  static const std::vector<Nut> rows = [] {
    std::vector<Nut> made;
    for (const NutSizes& row : nut_rows) made.push_back(nut(row));
    return made;
  }();
  return rows;
}

}  // namespace baywright::standards::fasteners
