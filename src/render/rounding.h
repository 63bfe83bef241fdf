#pragma once
// Round figures for scales and pitches: 1, 2 or 5 times a power of ten.

namespace baywright::render {

/// The least of them that is not below `value`; 1 for what is not above 0 or not finite.
[[nodiscard]] double rounded_up(double value);

/// The largest of them that is not above `value`; 1 for what is not above 0 or not finite.
[[nodiscard]] double rounded_down(double value);

}  // namespace baywright::render
