#pragma once
// The tolerances of the geometry room, all absolute, all in mm. They live here and nowhere else.

namespace baywright::geometry {

/// Two solids whose gap is known to lie within this of zero touch: whether they share a point is undecided. Chosen at a
/// thousandth of what any tool in the trade resolves (0.001 mm) times 1e-3, and 1e4 times the rounding of a coordinate of
/// 1000 mm. Larger, and a real overlap would be called touching; smaller, and rounding would be called an overlap.
inline constexpr double touch_mm = 1e-9;

/// Solids on the move may overlap by this, mm: faces that slide along each other touch. A thousand times what a gap is
/// sure to, and a thousandth of what any tool in the trade resolves. Smaller, and following them takes ever smaller steps.
inline constexpr double slide_mm = 1e-6;

/// The largest coordinate and the largest size that a solid may have. A double resolves 1.5e-11 mm there, so that
/// `touch_mm` still means something.
inline constexpr double largest_mm = 1e5;

/// The thinnest solid. Thinner is refused as "no thickness": no drive, pad or sheet comes near it.
inline constexpr double thinnest_mm = 1e-6;

/// Chord error of a curve that is drawn as a polygon (sections, silhouettes). Never used for a gap.
inline constexpr double drawn_chord_mm = 1e-3;

}  // namespace baywright::geometry
