// The serial connector's tongue on both families: SFF-8223 and SFF-8323 give the same part, and nearly the same place.
#include "standards/drive_families.h"
#include "standards/row.h"

namespace baywright::standards::drives {

namespace {

/// Rows of one drive's connector.
class Rows {
 public:
  explicit Rows(const Place& place) : place_(place) {}

  [[nodiscard]] Dimension reference(std::string_view what, double nominal) const {
    return untoleranced(name(what), nominal, source() + "; a reference dimension", Known::secondary);
  }
  [[nodiscard]] Dimension zoned(std::string_view what, double nominal, double zone, std::string_view note) const {
    return plus_minus(name(what), nominal, zone / 2.0,
                      source() + "; basic; " + std::string(note) + std::string(place_.zones), Known::secondary);
  }
  [[nodiscard]] Dimension raised(std::string_view what, double nominal) const {
    return but(plus_minus(name(what), nominal, 0.38, source(), Known::secondary),
               "drawn to the tongue's upper face; a public bay model draws the tongue from 2.6 to 4.2 above the base");
  }
  [[nodiscard]] std::string name(std::string_view what) const {
    return std::string(place_.drive) + ", connector " + std::string(what);
  }
  [[nodiscard]] std::string source() const { return std::string(place_.source); }

 private:
  const Place& place_;
};

}  // namespace

Tongue tongue(const Place& place) {
  constexpr double position_zone = 0.76;
  constexpr double profile_zone = 1.00;
  const Rows rows(place);
  return {.length = rows.reference("tongue's length", 33.39),
          .from_edge = rows.reference("tongue's end from the edge", 13.43),
          .offset = rows.zoned("tongue's centre off the drive's", place.offset, position_zone, "position zone 0.76"),
          .position = rows.zoned("tongue off its place across", 0.0, position_zone, "position zone 0.76"),
          .height = rows.raised("tongue's face above the base", 3.50),
          .up_from_side = rows.raised("tongue's face above the side holes", place.up_from_side),
          .recess = rows.zoned("recess from bottom row 1", place.recess, profile_zone, "profile zone 1.00"),
          .recess_from_side = {},
          .depth = {},
          .beyond = {},
          .body_width = rows.reference("body's width", 42.73),
          .body_height = rows.reference("body's height", 4.00),
          .clear_length = rows.reference("clear length about the tongue", 37.20),
          .clear_height =
              at_least(rows.name("clear height over and under the tongue"), 1.50, rows.source(), Known::secondary),
          .clear_ends = untoleranced(rows.name("clear at both ends"), 1.00, rows.source(), Known::secondary)};
}

}  // namespace baywright::standards::drives
