#pragma once
// What the rows of M.2 cite.
#include <string>
#include <string_view>

namespace baywright::standards::m2 {

/// The place in the one revision that was read.
inline std::string rev1(std::string_view place) {
  return "PCI-SIG M.2 Specification Rev 1.0 (2013), " + std::string(place);
}

/// Table 2 and section 2.3: the limit of any card dimension that names none.
inline constexpr double general_limit = 0.15;

}  // namespace baywright::standards::m2
