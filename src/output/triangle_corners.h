#pragma once
// A surface as the writers of files to print take it.
#include <array>
#include <span>

namespace baywright::output {

/// mm, three a triangle, counter-clockwise seen from outside. Of a length that three divides not, the rest is left out.
using Corners = std::span<const std::array<float, 3>>;

}  // namespace baywright::output
