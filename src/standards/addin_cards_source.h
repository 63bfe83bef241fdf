#pragma once
// What the rows of add-in cards cite, and the rows that each of their files holds.
#include "tolerance/dimension.h"

#include <cstddef>
#include <string>
#include <vector>

namespace baywright::standards::addin_cards {

inline std::string library() {
  return "a public footprint library that is drawn to PCI Express CEM 1.1";
}

inline std::string model() {
  return "a public case model that cites figures of PCI Express CEM";
}

inline std::string both() {
  return library() + ", and " + model();
}

/// Two models of brackets that were made apart.
inline std::string models() {
  return model() + ", and a public model of a slot filler";
}

/// Of the rows of `lane_counts`: the first that has as many lanes.
[[nodiscard]] std::size_t lane_row(int lanes);

[[nodiscard]] std::vector<tolerance::Dimension> bracket_rows();
[[nodiscard]] std::vector<tolerance::Dimension> slot_rows();

}  // namespace baywright::standards::addin_cards
