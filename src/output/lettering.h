#pragma once
// How much room text takes on a sheet, so that it can be laid out without a font at hand.
#include <string>
#include <string_view>
#include <vector>

namespace baywright::output {

inline constexpr double smallest_text = 2.5;  // mm, of the em: the least that an office printer keeps legible

/// Blanks in place of control characters and of bytes that are no UTF-8: what is left breaks no format.
[[nodiscard]] std::string printable(std::string_view text);

/// Width in mm of UTF-8 text at `size` mm an em. Advances of DejaVu Sans, the widest of the sans serif faces that the
/// sheet's font list commonly ends in: what has room in it has room in Helvetica, Arial and Inter.
[[nodiscard]] double text_width(std::string_view text, double size, bool bold = false);

/// The text, cut short with an ellipsis where it is wider than `width` mm.
[[nodiscard]] std::string shortened(std::string_view text, double width, double size, bool bold = false);

/// Lines no wider than `width` mm, broken at spaces; no more than `most`, the last of them cut short where text is
/// left.
[[nodiscard]] std::vector<std::string> broken(std::string_view text, double width, double size, std::size_t most,
                                              bool bold = false);

/// Centres that keep their order and stand apart by the sum of their half sizes, each as near to its wish as the others
/// allow, from `low` to `high` where that much room is. `wanted` ascending; both lists of one length. All in mm.
[[nodiscard]] std::vector<double> spread(std::vector<double> wanted, const std::vector<double>& half_sizes, double low,
                                         double high);

}  // namespace baywright::output
