#pragma once
// Limits where a drawing states none: ISO 2768-1, the grades of ISO 286-1, and what a modder's processes hold. Lengths
// in mm, angles in degrees. No ISO text was at hand; the figures are those that several copies agree on.
//
// Neither table limits form: after ISO 8015 a size within its limits may still be bowed, so bow is a row of its own.
#include "tolerance/dimension.h"

#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace baywright::standards::general_tolerances {

using tolerance::Dimension;

enum class Class { fine, medium, coarse, very_coarse };  // f m c v
/// ISO 2768-1 Table 1: ± mm for a linear size; none below 0.5, above 4000, and where the table has a dash.
[[nodiscard]] std::optional<double> linear(Class tolerance_class, double size);
/// Table 2, from memory: ± mm for a radius or chamfer; none below 0.5.
[[nodiscard]] std::optional<double> broken_edge(Class tolerance_class, double size);
/// Table 3, from memory: ± degrees for an angle whose shorter leg is so many mm, above 0; none otherwise.
[[nodiscard]] std::optional<double> angle(Class tolerance_class, double shorter_leg);

/// ISO 286-1: the standard tolerance of grade IT5..IT16, mm, for a size above 0 and up to 180 mm; none otherwise, nor
/// of IT14 and above for sizes up to 1 mm.
[[nodiscard]] std::optional<double> grade(int it, double size);

/// What a process holds. None: the process makes nothing of that kind.
struct Process {
  std::string_view id;  // "hand drill" "drill press" "laser" "saw" "print"
  std::string_view title;
  std::optional<Dimension> position;  // 0 ± of a hole's place, either axis
  std::optional<Dimension> diameter;  // a hole comes out by this much over (or, negative, under) its drill or drawing
  std::optional<Dimension> size;      // 0 ± of a cut length up to 100 mm
};
[[nodiscard]] std::span<const Process> processes();
[[nodiscard]] const Process* process(std::string_view id);  // null: no such process

/// What a way of printing holds, lengths up to 100 mm: "fdm" (the process "print"), "sla" or "sls". Null: no such way.
[[nodiscard]] std::span<const Process> prints();
[[nodiscard]] const Process* printing(std::string_view way);

[[nodiscard]] const Dimension& printed_wall();  // at least so thick round a hole, practice
[[nodiscard]] const Dimension& insert_wall();   // the same round a heat-set insert, practice
[[nodiscard]] const Dimension& pilot_drill();   // before the size of the hole, practice

/// Rules for holes in a plate, as multiples of the hole's diameter d and the sheet's thickness t; practice.
[[nodiscard]] double edge_distance_in_diameters();  // 2: hole centre to edge
[[nodiscard]] double web_in_thicknesses();          // 2: between hole edges
/// 2: from a hole's edge to a bend, and the bend's radius inside on top. Practice; a metal stamper's page asks 4 of a
/// countersunk hole.
[[nodiscard]] double bend_distance_in_thicknesses();

/// Where the line that keeps its length lies, as a share of the thickness from the inside (the K-factor): 0.33 to 0.45,
/// by material, radius and tools, as a bend calculator's page gives it.
struct NeutralLine {
  double least = 0.0;
  double most = 0.0;
};
[[nodiscard]] NeutralLine neutral_line();
/// Flat sheet that goes into a bend by `degrees` out of flat, mm: pi/180 degrees (r + K t), of the same page.
[[nodiscard]] double bend_allowance(double degrees, double inside_radius, double thickness, double neutral);

/// Every row of this family, for the list of sources. Tables 2 and 3 are not in it: no text of them was seen.
[[nodiscard]] std::vector<Dimension> rows();

}  // namespace baywright::standards::general_tolerances
