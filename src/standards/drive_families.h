#pragma once
// The tables that drives.h is put together from, and what they share.
#include "standards/drives.h"

#include <string>
#include <string_view>

namespace baywright::standards::drives {

[[nodiscard]] Family drive_2_5();
[[nodiscard]] Family drive_3_5();

/// Across, a 5.25-inch device and a full-height disk are as wide (SFF-8551, SFF-8501).
inline constexpr double width_5_25 = 146.05;

/// Where the serial connector of one family stands; everything else of it is the same part in both.
struct Place {
  std::string_view drive;   // "2.5-inch drive"
  std::string_view source;  // the standard and its table
  double offset, up_from_side, recess;
  std::string_view zones;  // whose position and profile zones are meant
};
/// Without `recess_from_side`, `depth` and `beyond`, which the caller derives.
[[nodiscard]] Tongue tongue(const Place& place);

/// SFF-8223 gives the depth, SFF-8323 the same part: 14.00 to the first hole, less 9.40 to the recess, and 0.30 proud.
[[nodiscard]] double tongue_depth();

}  // namespace baywright::standards::drives
