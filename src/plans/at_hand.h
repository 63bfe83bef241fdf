#pragma once
// What plans may use: what is sold, or what the build's shelf has. Inside the room.
#include "build/build.h"

#include <string>
#include <string_view>
#include <vector>

namespace baywright::plans {

/// Something that is put between, or two of it.
struct Lift {
  std::string_view what;
  double length = 0.0;  // mm
  double limit = 0.0;   // ± mm
  std::string source{};
  tolerance::Known known = tolerance::Known::practice;
};

/// One or two washers of a thread; none where the shelf lists its spacers.
[[nodiscard]] std::vector<Lift> washers_at_hand(const build::Build& build, std::string_view thread);
/// Lengths of plain spacers, mm, ascending.
[[nodiscard]] std::vector<double> spacers_at_hand(const build::Build& build);
/// Plain spacers of that length, as they are sold.
[[nodiscard]] Lift spacers_of(double length);
/// Lengths of screws of a thread, mm; those nearest to `wanted` first.
[[nodiscard]] std::vector<double> screws_at_hand(const build::Build& build, const std::string& thread, double wanted);

/// "M3 x 6" as a file says it, in quotes.
[[nodiscard]] std::string screw_text(const std::string& thread, double length);

/// Says in the source of a length that it was changed by that.
void add_source(tolerance::Dimension& dimension, const Lift& lift);

}  // namespace baywright::plans
