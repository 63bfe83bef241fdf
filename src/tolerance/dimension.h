#pragma once
// A length with limits, a source, and how it is known. All lengths in mm.
#include <limits>
#include <string>
#include <string_view>
#include <variant>

namespace baywright::tolerance {

/// How a figure is known. The same words in code, files and output.
enum class Known {
  read,       // seen in the source itself
  secondary,  // quoted by another
  practice,   // common trade practice, no source
  memory,     // unconfirmed
  measured,   // by the user
  derived,    // arithmetic on other dimensions
};

[[nodiscard]] std::string_view word(Known known);

inline constexpr double open_side = std::numeric_limits<double>::infinity();

/// Limits are nominal - minus .. nominal + plus.
struct Dimension {
  std::string name;      // "card thickness"
  double nominal = 0.0;  // mm, finite
  double minus = 0.0;    // mm, >= 0; `open_side` where nothing bounds it below
  double plus = 0.0;     // mm, >= 0; `open_side` where nothing bounds it above
  std::string source;    // "PCI-SIG M.2 Rev 1.0, Table 2"; empty: none was given
  Known known = Known::measured;
  bool uniform = false;  // every value between the limits equally likely; else normal, limits at three sigma, cut there
  std::string elsewhere{};  // where sources disagree: the other figure and who gives it, in words; empty: none is known to
  bool asked = false;       // its file leaves it open ("?"): its value is being worked out

  [[nodiscard]] double low() const { return nominal - minus; }
  [[nodiscard]] double high() const { return nominal + plus; }
  [[nodiscard]] bool open() const { return minus == open_side || plus == open_side; }
  [[nodiscard]] bool exact() const { return minus == 0.0 && plus == 0.0; }
};

}  // namespace baywright::tolerance
