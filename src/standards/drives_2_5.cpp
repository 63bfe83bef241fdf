// 2.5-inch drives: SFF-8201, and SFF-8223 for the place of the serial connector.
#include "standards/drive_families.h"
#include "standards/row.h"

namespace baywright::standards::drives {

namespace {

constexpr std::string_view table = "SFF-8201 rev 3.4, Table 3-1, as transcribed in two public files";
constexpr std::string_view serial_source = "SFF-8223 rev 2.7, Table 3-1, as transcribed in a public file";

constexpr double first_hole = 14.00;  // from the connector end, bottom and side
constexpr double last_hole = 90.60;
constexpr double recess = 9.40;  // bottom of the connector's recess from the first hole
constexpr double face = 0.30;    // of the connector beyond the drive's end

std::string source() {
  return std::string(table);
}

Dimension size(std::string_view what, double nominal, double half) {
  return plus_minus("2.5-inch drive " + std::string(what), nominal, half, source(), Known::secondary);
}

/// A basic dimension to a hole: half of the position zone of 0.50 either way, about the drive's datums.
Dimension hole(std::string_view what, double basic) {
  constexpr double zone = 0.50;
  return plus_minus("2.5-inch drive " + std::string(what), basic, zone / 2.0, source() + "; basic; position zone 0.50",
                    Known::secondary);
}

Height height(std::string_view code, double nominal, double plus, double minus) {
  return {code, Dimension{.name = "2.5-inch drive height, " + std::string(code) + " mm",
                          .nominal = nominal,
                          .minus = minus,
                          .plus = plus,
                          .source = source(),
                          .known = Known::secondary}};
}

/// The limits of every height that the table does not make an exception of.
Height height(std::string_view code, double nominal) {
  return height(code, nominal, 0.0, 0.50);
}

/// SFF-8201 has no maximum: a screw that ends within the promised thread is safe in every drive.
Depth screw(std::string_view where, double thread) {
  const std::string name = "2.5-inch drive " + std::string(where);
  return {.thread =
              but(at_least(name + ", full thread", thread, source() + ", whose figure says minimum", Known::secondary),
                  "a public bay model calls the same figure a maximum penetration"),
          .most = at_most(name + ", end of the screw", thread,
                          "SFF-8201 gives no maximum: the thread that it promises counts", Known::derived),
          .warned = {}};
}

Tongue serial() {
  Tongue made = tongue({.drive = "2.5-inch drive",
                        .source = serial_source,
                        .offset = 4.80,
                        .up_from_side = 0.50,
                        .recess = recess,
                        .zones = ""});
  made.beyond = untoleranced("2.5-inch drive, connector face beyond the end", face,
                             std::string(serial_source) + "; a reference dimension", Known::secondary);
  made.depth = derived("2.5-inch drive, connector tongue's depth", tongue_depth(), 0.0,
                       "SFF-8201 and SFF-8223: first hole 14.00, less recess 9.40, and face 0.30 beyond the end; no "
                       "tolerance published");
  return made;
}

}  // namespace

double tongue_depth() {
  return first_hole - recess + face;
}

Family drive_2_5() {
  constexpr double thin_up_to = 7.00;
  return {.id = "2.5in",
          .title = "2.5-inch drive",
          .heights = {height("5", 5.00, 0.20, 0.20), height("7", 7.00, 0.20, 0.50), height("8.47", 8.47),
                      height("9.5", 9.50, 0.20, 0.20), height("10.5", 10.50), height("12.7", 12.70),
                      height("15", 15.00), height("17", 17.00), height("19.05", 19.05)},
          .width = size("width", 69.85, 0.25),
          .flat = untoleranced("2.5-inch drive, flat about a side hole, diameter", 8.00, source(), Known::secondary),
          .length = but(at_most("2.5-inch drive length", 100.45, source(), Known::secondary),
                        "the same table lists 100.50 for the serial connector of SFF-8223, 100.20 for SFF-8212 and "
                        "110.20 for SFF-8222, under letters that its figures do not show"),
          .obsolete_length = at_most("2.5-inch drive length, obsolete", 101.85, source(), Known::secondary),
          .bottom_rows = {{"row 1", {hole("bottom row 1 from the connector end", first_hole)}},
                          {"row 2", {hole("bottom row 2 from the connector end", last_hole)}}},
          .side_rows = {{"side hole 1", {hole("side hole 1 from the connector end", first_hole)}},
                        {"side hole 2", {hole("side hole 2 from the connector end", last_hole)}}},
          .bottom_from_edge = hole("bottom column from the edge", 4.07),
          .bottom_across = but(hole("bottom columns apart", 61.72),
                               "61.92 in the same transcriber's model, against its own table: a typing error"),
          .side_up = but(hole("side hole above the base", 3.00),
                         "3.60 in a public 5.25-inch adapter; 4.07 in two public models, which is the bottom hole's "
                         "distance from the edge"),
          .thread = "M3",
          .bottom_screw = screw("bottom hole", 2.5),
          .side_screw = screw("side hole", 3.0),
          .thin = Thin{.up_to = thin_up_to, .side_screw = screw("side hole where the height is 7.00 or less", 2.0)},
          .tongue = serial()};
}

}  // namespace baywright::standards::drives
