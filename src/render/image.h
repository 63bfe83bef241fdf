#pragma once
// A picture in memory.
#include <cstdint>
#include <vector>

namespace baywright::render {

/// Rows from the top, four bytes a pixel: red, green, blue, 255. sRGB values, as a screen takes them.
struct Image {
  int width = 0;
  int height = 0;
  std::vector<std::uint8_t> rgba;
};

/// Which thing is at each pixel, from the top: `Surface::id`, 0 for none.
struct Ids {
  int width = 0;
  int height = 0;
  std::vector<std::uint32_t> id;
};

}  // namespace baywright::render
