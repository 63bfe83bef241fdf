#pragma once
// Cased drives and 5.25-inch devices as published: sizes, mounting holes, threads, the serial connector. Frame: x from
// the connector end, y = 0 at the edge that SFF-8201 calls datum Y with the body at y < 0, z up from the base. Seen
// from the connector end with the label up, that edge is on the left. Datum letters differ from standard to standard
// (in SFF-8300 Y is the connector end), so rows say in words where they start. 5.25-inch devices alone are measured
// from the rear face of the bezel, x backward into the machine. All lengths in mm. No table of these standards was read
// itself: features and datums were seen in their figures, the numbers are others' transcriptions.
#include "tolerance/dimension.h"

#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace baywright::standards::drives {

using tolerance::Dimension;

struct Height {
  std::string_view code;  // as people say it: "5" "7" "8.47" "9.5" "10.5" "12.7" "15" "17" "19.05"; "17.8" "26.1" "42"
  Dimension height;       // above the base
};

/// A hole's distance along x, as the sum of the rows that the standard measures it by (row 2 of a 3.5-inch drive: from
/// row 1). Never empty.
struct HoleRow {
  std::string_view name;  // "row 1", "side hole 2"
  std::vector<Dimension> along;
  bool required = true;            // false: an alternative or an older one, which a drive may lack
  [[nodiscard]] double x() const;  // nominal, mm
};

/// What may be screwed into a hole. Caution: a screw that reaches past `most` meets what is inside the drive.
struct Depth {
  Dimension thread;  // full thread that the standard promises, at least
  Dimension most;    // the farthest that a screw's end may reach behind the face; where the standard gives none, the
                     // promised thread counts and the row says so
  std::optional<Dimension> warned;  // a smaller figure that one maker gives
};

/// Drives that are low enough promise less.
struct Thin {
  double up_to;      // nominal height, mm, itself included
  Depth side_screw;  // bottom holes may be missing
};

/// The serial connector's tongue and where it stands; U.2 and U.3 are taken to have the same place (memory). The
/// limits of a basic dimension are half of its position or profile zone, about the datum that the row names.
struct Tongue {
  Dimension length;        // 33.39 across
  Dimension from_edge;     // 13.43, its end from datum Y
  Dimension offset;        // its centre off the drive's, toward datum Y: 4.80, 20.68; has the limits of `position`
  Dimension position;      // 0 ± half of the position zone of 0.76: how far off its place across it may be
  Dimension height;        // of its datum surface above the base: 3.50 ±0.38
  Dimension up_from_side;  // the same surface above the centre of the side holes: 0.50, -2.85; instead of `height`
  Dimension recess;        // bottom of the mating recess from bottom row 1, toward the connector end: 9.40, 36.38
  std::optional<Dimension> recess_from_side;  // the same from side hole 1, where the standard offers it: 23.60
  Dimension depth;                            // of the recess behind its face, derived: 4.90
  Dimension beyond;                           // its face beyond the drive's end: 0.30, 0 on a 3.5-inch drive
  Dimension body_width;                       // 42.73
  Dimension body_height;                      // 4.00, at the base
  Dimension clear_length;                     // 37.20 across: kept free over and under the tongue, down to the recess
  Dimension clear_height;                     // at least 1.50
  Dimension clear_ends;                       // 1.00 at both ends, from the face outward
};

/// A family of cased drives.
struct Family {
  std::string_view id;     // "2.5in" "3.5in"
  std::string_view title;  // "2.5-inch drive"
  std::vector<Height> heights;
  Dimension width;
  std::optional<Dimension> flat;             // diameter about the side holes within which `width` has its lower limit
  Dimension length;                          // a maximum: nothing bounds it below
  std::optional<Dimension> obsolete_length;  // of old drives
  std::vector<HoleRow> bottom_rows;
  std::vector<HoleRow> side_rows;
  Dimension bottom_from_edge;  // first column from datum Y
  Dimension bottom_across;     // between the two columns
  Dimension side_up;           // height of the side holes above the base
  std::string_view thread;     // "M3" "6-32"
  Depth bottom_screw;
  Depth side_screw;
  std::optional<Thin> thin;
  Tongue tongue;
};
[[nodiscard]] std::span<const Family> families();
[[nodiscard]] const Family* family(std::string_view id);                          // null: no such family
[[nodiscard]] const Height* height(const Family& family, std::string_view code);  // null: no such height

/// 2.5-inch drives of 7 mm and less need not have bottom holes, and promise less thread at the side.
[[nodiscard]] bool bottom_holes_promised(const Family& family, const Height& height);
[[nodiscard]] Depth bottom_depth(const Family& family, const Height& height);  // of such holes as there are
[[nodiscard]] Depth side_depth(const Family& family, const Height& height);

/// A device for a 5.25-inch bay (SFF-8551).
struct Device {
  Dimension width, height, bezel_height, bezel_width, bezel_thickness, length;
  Dimension button;                   // its front before the bezel's rear face
  Dimension first_hole, second_hole;  // behind the bezel; the second from the first
  Dimension bottom_from_edge, bottom_across;
  Dimension side_low,
      side_high;               // heights of the side holes: every device has the low ones, the high ones are optional
  std::string_view thread;     // "M3"
  Dimension least_engagement;  // two threads
};
[[nodiscard]] const Device& device_5_25();
/// SFF-8501: height, width, length, hole pitch, heights of the side holes, in this order. Thread 6-32.
[[nodiscard]] const std::vector<Dimension>& full_height_disk();

/// EDSFF. Tolerances of all of them are not published where we could read. No E2: of that only a thickness is known.
struct Edsff {
  std::string_view id;    // "e1s/5.9" "e1s/8" "e1s/9.5" "e1s/15" "e1s/25" "e1l/9.5" "e1l/18" "e3s/1t" "e3s/2t" "e3l/1t"
                          // "e3l/2t"
  std::string_view form;  // "E1.S" "E1.L" "E3.S" "E3.L"
  std::string_view title;
  Dimension width, length, thickness;
  double watts;  // what the form is made for; 0: not known
};
[[nodiscard]] std::span<const Edsff> edsff();
[[nodiscard]] const Edsff* edsff(std::string_view id);  // null: no such form

/// Every row of this file, for the list of sources. A row that belongs to several forms stands once.
[[nodiscard]] std::vector<Dimension> rows();

}  // namespace baywright::standards::drives
