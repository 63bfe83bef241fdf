// 3.5-inch drives: SFF-8301, and SFF-8323 for the place of the serial connector.
#include "standards/drive_families.h"
#include "standards/row.h"

namespace baywright::standards::drives {

namespace {

constexpr std::string_view table =
    "SFF-8301, Table 3-1, as transcribed in three public files (their revision labels differ)";
constexpr std::string_view serial_source = "SFF-8323 rev 1.6, Table 3-1, as transcribed in a public file";

constexpr double row_1 = 41.28;         // from the connector end
constexpr double row_1_recess = 36.38;  // bottom of the connector's recess from row 1

std::string source() {
  return std::string(table);
}

Dimension size(std::string_view what, double nominal, double half) {
  return plus_minus("3.5-inch drive " + std::string(what), nominal, half, source(), Known::secondary);
}

/// From one hole to the next, and across.
Dimension step(std::string_view what, double nominal) {
  return size(what, nominal, 0.25);
}

/// From the connector end to the first hole.
Dimension start(std::string_view what, double nominal) {
  return size(what, nominal, 0.50);
}

Height height(std::string_view code, double maximum) {
  return {code, at_most("3.5-inch drive height, " + std::string(code) + " mm", maximum, source(), Known::secondary)};
}

Depth screw(std::string_view where) {
  const std::string name = "3.5-inch drive " + std::string(where);
  const std::string one_source = "SFF-8301, Table 3-1, threads, as transcribed in a public file";
  return {.thread = at_least(name + ", full thread", 3.0, one_source, Known::secondary),
          .most = but(at_most(name + ", end of the screw", 3.8, one_source, Known::secondary),
                      "3.56 (0.140 in) by one maker"),
          .warned = at_most(name + ", end of the screw by one maker", 3.56,
                            "one drive maker's figure of 0.140 in, quoted in a public bay model", Known::secondary)};
}

std::vector<HoleRow> bottom_rows() {
  const Dimension first = start("bottom row 1 from the connector end", row_1);
  return {{"row 1", {first}},
          {"row 2", {first, step("bottom row 2 from row 1", 44.45)}, false},
          {"row 3", {first, step("bottom row 3 from row 1", 76.20)}, false}};
}

std::vector<HoleRow> side_rows() {
  const Dimension first = start("side hole 1 from the connector end", 28.50);
  const Dimension middle =
      but(untoleranced("3.5-inch drive middle side hole from side hole 1", 41.60,
                       "an older edition of SFF-8301, as quoted in a public bay model", Known::secondary),
          "not in the table and figure of the later edition");
  return {{"side hole 1", {first}},
          {"middle side hole", {first, middle}, false},
          {"side hole 2", {first, step("side hole 2 from side hole 1", 101.60)}}};
}

Tongue serial() {
  Tongue made = tongue({.drive = "3.5-inch drive",
                        .source = serial_source,
                        .offset = 20.68,
                        .up_from_side = -2.85,
                        .recess = row_1_recess,
                        .zones = " of SFF-8223, not seen for SFF-8323"});
  made.recess_from_side = untoleranced("3.5-inch drive, connector recess from side hole 1", 23.60,
                                       std::string(serial_source) + "; a reference dimension", Known::secondary);
  made.depth = derived("3.5-inch drive, connector tongue's depth", tongue_depth(), 0.0,
                       "the same part as on a 2.5-inch drive, SFF-8223; no tolerance published");
  made.beyond = derived("3.5-inch drive, connector face beyond the end", tongue_depth() - (row_1 - row_1_recess), 0.0,
                        "the tongue's depth, less row 1 of SFF-8301, and recess of SFF-8323; no tolerance published");
  return made;
}

}  // namespace

Family drive_3_5() {
  return {.id = "3.5in",
          .title = "3.5-inch drive",
          .heights = {height("17.8", 17.80),
                      {"26.1", but(height("26.1", 26.10).height,
                                   "25.4 and 19.9 to 20.2 are older and trade heights, and pass as at most 26.10")},
                      height("42", 42.00)},
          .width = size("width", 101.60, 0.25),
          .flat = {},
          .length = at_most("3.5-inch drive length", 147.00, source(), Known::secondary),
          .obsolete_length = {},
          .bottom_rows = bottom_rows(),
          .side_rows = side_rows(),
          .bottom_from_edge = step("bottom column from the edge", 3.18),
          .bottom_across = step("bottom columns apart", 95.25),
          .side_up = step("side hole above the base", 6.35),
          .thread = "6-32",
          .bottom_screw = screw("bottom hole"),
          .side_screw = screw("side hole"),
          .thin = {},
          .tongue = serial()};
}

}  // namespace baywright::standards::drives
