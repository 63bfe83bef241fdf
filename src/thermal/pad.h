#pragma once
// A soft pad that is pressed between two faces. Lengths in m here as elsewhere in this room; ratios of lengths are the
// same in mm.
#include <optional>

namespace baywright::thermal {

/// The share by which a gap presses a pad of this free thickness: 0.3 is 30 %. Below 0: it does not touch.
[[nodiscard]] double compression(double gap, double free_thickness);

/// Pressed within this range a gap filler touches everywhere and does not bleed oil: a rule of thumb of pad makers'
/// tutorials (secondary). A pad's own sheet goes before it. What pressure that takes differs from pad to pad, and no
/// general figure has a source: none is given.
struct Compressed {
  double least = 0.20;
  double most = 0.45;
};

/// The gaps that keep a pad within that range whatever its thickness within its limits: from thickest (1 - most) to
/// thinnest (1 - least). None where its limits are wider than the range lets them be.
struct Window {
  double low = 0.0;
  double high = 0.0;
};
[[nodiscard]] std::optional<Window> window(double thinnest, double thickest, const Compressed& range = {});

/// How a gap with limits holds a pad with limits. Both can be so at once.
struct Contact {
  double least = 0.0;     // compression: widest gap, thinnest pad
  double most = 0.0;      // narrowest gap, thickest pad
  bool too_loose = true;  // it may not touch everywhere
  bool too_tight = true;  // it may bleed oil, and the card bends
};
[[nodiscard]] Contact contact(double gap_low, double gap_high, double thinnest, double thickest,
                              const Compressed& range = {});

/// K/W through a layer; `each_face` is the resistance of each contact, m2 K/W. Infinite without area or conductivity.
[[nodiscard]] double layer_resistance(double thickness, double conductivity, double area, double each_face = 0.0);

}  // namespace baywright::thermal
