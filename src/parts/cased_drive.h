#pragma once
// A cased drive as a part: a box of the published size, its holes and its connector. Frame of standards/drives.h: x
// from the connector end, y = 0 at the edge called datum Y with the body at y < 0, z up from the base. A 5.25-inch
// device is measured from its bezel backward.
#include "parts/part.h"
#include "standards/drives.h"

#include <optional>
#include <string>
#include <vector>

namespace baywright::parts {

/// A threaded hole that a screw of the machine may use.
struct MountHole {
  std::string name;                          // "row 1", "side hole 2"
  bool side = false;                         // in the side faces; else in the base
  bool left = false;                         // at the edge y = 0; else at the other one
  std::vector<tolerance::Dimension> along;   // sums to x
  std::vector<tolerance::Dimension> across;  // base: sums to the distance from the edge y = 0. side: to z
  bool promised = true;                      // the standard wants it on every drive

  [[nodiscard]] double x() const;      // nominal, mm
  [[nodiscard]] double aside() const;  // nominal: distance from the edge y = 0, or z, mm
};

struct CasedDrive {
  Part part;  // no bodies where its height is not known
  Coordinate width;
  Coordinate height;
  Coordinate end;  // x of the far end
  std::vector<MountHole> holes;
  std::string thread;
  std::optional<standards::drives::Depth> bottom;  // what its holes take
  std::optional<standards::drives::Depth> side;
  std::optional<standards::drives::Tongue> tongue;
  Coordinate tongue_y;        // of the connector's centre
  double tongue_z = 0.0;      // how much higher than in a drive of this form it stands, mm
  double tongue_aside = 0.0;  // how far it stands off where a drive of this form has it, toward y = 0, mm
  bool from_bezel = false;    // 5.25-inch: the connector is at the far end

  /// Whether its size is known: it has a case.
  [[nodiscard]] bool whole() const;
};

/// Measured sizes replace those of the standard; `height` is needed where no standard height is named.
struct MeasuredCase {
  std::optional<tolerance::Dimension> height;
  std::optional<tolerance::Dimension> length;
  bool old = false;  // an old drive, of the obsolete length
};

/// "2.5in", "3.5in" with a height code of the standard, or an empty one.
[[nodiscard]] CasedDrive cased_drive(const standards::drives::Family& family, const standards::drives::Height* height,
                                     const MeasuredCase& measured);
[[nodiscard]] CasedDrive edsff_drive(const standards::drives::Edsff& form, const MeasuredCase& measured);
[[nodiscard]] CasedDrive device_5_25(const MeasuredCase& measured);
[[nodiscard]] std::vector<MountHole> holes_5_25();  // as SFF-8551 has them

}  // namespace baywright::parts
