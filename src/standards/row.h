#pragma once
// Writing a published figure as a row: the same few shapes in every table.
#include "tolerance/dimension.h"

#include <string>
#include <utility>

namespace baywright::standards {

using tolerance::Dimension;
using tolerance::Known;

/// nominal ±half, mm.
inline Dimension plus_minus(std::string name, double nominal, double half, std::string source,
                            Known known = Known::read) {
  return {std::move(name), nominal, half, half, std::move(source), known};
}

/// A maximum: bounds the upper side only.
inline Dimension at_most(std::string name, double maximum, std::string source, Known known = Known::read) {
  return {std::move(name), maximum, tolerance::open_side, 0.0, std::move(source), known};
}

/// A minimum: bounds the lower side only.
inline Dimension at_least(std::string name, double minimum, std::string source, Known known = Known::read) {
  return {std::move(name), minimum, 0.0, tolerance::open_side, std::move(source), known};
}

/// A figure for which the source gives no limits. They are unknown, not zero, so the source says so.
inline Dimension untoleranced(std::string name, double nominal, std::string source, Known known = Known::read) {
  return {std::move(name), nominal, 0.0, 0.0, std::move(source) + "; no tolerance published", known};
}

/// Arithmetic on other rows.
inline Dimension derived(std::string name, double nominal, double half, std::string source) {
  return plus_minus(std::move(name), nominal, half, std::move(source), Known::derived);
}

/// A row of which another source gives another figure: both are shown.
inline Dimension but(Dimension row, std::string elsewhere) {
  row.elsewhere = std::move(elsewhere);
  return row;
}

}  // namespace baywright::standards
