#pragma once
// How the rows of fasteners name a thread and compare its name.
#include <cctype>
#include <string>
#include <string_view>

namespace baywright::standards::fasteners {

/// "M3 tap drill"
inline std::string of(std::string_view thread, std::string_view what) {
  return std::string(thread) + " " + std::string(what);
}

/// "m2.5" is "M2.5".
inline bool same_thread(std::string_view a, std::string_view b) {
  if (a.size() != b.size()) return false;
  for (std::size_t i = 0; i < a.size(); ++i) {
    if (std::toupper(static_cast<unsigned char>(a[i])) != std::toupper(static_cast<unsigned char>(b[i]))) return false;
  }
  return true;
}

}  // namespace baywright::standards::fasteners
