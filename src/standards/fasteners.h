#pragma once
// Screws, nuts, washers, stand-offs, press-in parts and the holes for them: ISO metric M1.6 to M4, 4-40 and 6-32 UNC.
// All lengths mm. No ISO text was at hand: every figure is quoted from others or from habit, and each row says which.
#include "tolerance/dimension.h"

#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace baywright::standards::fasteners {

using tolerance::Dimension;

/// Clearance holes. Metric: ISO 273 with the grades H12, H13, H14. Inch: close, normal and loose drill of ASME B18.2.8;
/// shop charts have other classes, which stand in `elsewhere`.
struct Clearance {
  Dimension fine, medium, coarse;
};
struct Thread {
  std::string_view id;             // "M1.6" "M2" "M2.5" "M3" "M3.5" "M4" "4-40" "6-32"
  Dimension major;                 // d, basic: no screw is thicker
  std::optional<Dimension> screw;  // major diameter of a 6g screw: always below d; none known of inch threads
  Dimension pitch;                 // basic
  Dimension tap_drill;
  Clearance hole;
};
[[nodiscard]] std::span<const Thread> threads();
[[nodiscard]] const Thread* thread(std::string_view id);  // capitals or not; null: no such thread

// ISO 724 basic dimensions, the same form for UNC; mm.
[[nodiscard]] double pitch_diameter(const Thread& thread);  // d - 0.649519 P
[[nodiscard]] double minor_diameter(const Thread& thread);  // D1 = d - 1.082532 P
[[nodiscard]] double core_diameter(const Thread& thread);   // d3 = d - 1.226869 P
/// mm2. Metric: ISO 898-1, pi/4 (d - 0.938194 P)^2. Inch: ASME B1.1, pi/4 (d - 0.9743 P)^2.
[[nodiscard]] double stress_area(const Thread& thread);
/// mm of thread at which screw and an equally strong nut are equally strong: 4 As/(pi d2), the form of FED-STD-H28/2B.
[[nodiscard]] double equal_strength_engagement(const Thread& thread);

enum class Shape { socket_cap, pan, flat, button };  // ISO 4762; 7045 and 14583; 7046 and 2009; 7380-1
struct Head {
  Shape shape;
  std::string_view thread;
  Dimension diameter;  // its high limit is what clearance needs; of a flat head: theoretical, sharp
  Dimension height;
  std::string_view driver;        // "PH1", "PH1 or T10" (ISO 7045 or 14583), "2.5 mm hexagon"
  std::optional<Dimension> made;  // diameter that a flat head really has; none on other shapes
};
[[nodiscard]] std::span<const Head> heads();
[[nodiscard]] const Head* head(Shape shape, std::string_view thread);  // capitals or not; null: none published

struct Washer {
  std::string_view standard;  // "ISO 7089" "ISO 7092"
  std::string_view thread;
  Dimension bore, outside, thickness;
};
[[nodiscard]] std::span<const Washer> washers();

/// Hexagon nuts, ISO 4032.
struct Nut {
  std::string_view thread;
  Dimension across_flats, height;
  Dimension corners;  // across them, at least
};
[[nodiscard]] std::span<const Nut> nuts();

/// Lengths that are sold, ascending, mm: under the head, of flat heads over all. Metric ISO 7045; 6-32 and 4-40: inch
/// fractions, practice. Empty: no such thread, or none known.
[[nodiscard]] std::span<const double> screw_lengths(std::string_view thread);

/// Hex stand-offs that are sold, and plain spacers; market sizes, no standard.
struct Standoff {
  std::string_view thread;
  double across_flats;          // corners are 1.1547 of it apart
  bool stud;                    // one end with a stud, male-female
  double stud_length;           // 0 without one
  std::vector<double> lengths;  // without the stud, ascending
};
[[nodiscard]] std::span<const Standoff> standoffs();
[[nodiscard]] std::span<const double> spacer_lengths();
[[nodiscard]] const Dimension& standoff_length_limit();  // ±0.1 of brass, practice; nominal 0
[[nodiscard]] const Dimension& spacer_length_limit();    // ±0.25 of moulded nylon, practice; nominal 0

/// What is pressed into a sheet or melted into plastic.
struct PressIn {
  std::string_view kind;  // "nut" "stand-off" "heat-set insert"
  std::string_view thread;
  Dimension hole;                   // to drill
  Dimension body;                   // diameter; of a stand-off across flats
  std::optional<Dimension> flange;  // nuts: diameter
  std::optional<Dimension> height;  // nuts: above the sheet; inserts: length
};
[[nodiscard]] std::span<const PressIn> press_ins();

/// Thread engagement that rules of thumb ask of the nut's material, as a multiple of d: "steel" 1, "cast iron" and
/// "brass" 1.5, "aluminium" 2, "zinc" and "plastic" 2.5; 0: no rule known. Three public guides that agree; one other
/// page asks 1.5 of steel.
[[nodiscard]] double engagement_in_diameters(std::string_view material);

/// Every row of this family, for the list of sources.
[[nodiscard]] std::vector<Dimension> rows();

}  // namespace baywright::standards::fasteners
