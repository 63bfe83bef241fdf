// Files to print, byte by byte as their formats have it.
#include "output/stl.h"

#include <cstring>
#include <doctest/doctest.h>
#include <vector>

using namespace baywright::output;

TEST_CASE("an STL is 84 bytes and 50 a triangle, little-endian, with unit normals") {
  const std::vector<std::array<float, 3>> corners = {{0, 0, 0}, {2, 0, 0}, {0, 3, 0}, {1, 1, 1},
                                                     {1, 1, 1}, {2, 2, 2}, {9, 9, 9}};  // the last one is left over
  const std::string stl = to_stl(corners);
  REQUIRE(stl.size() == 84 + 2 * 50);
  CHECK(!stl.starts_with("solid"));
  CHECK(stl.substr(80, 4) == std::string("\x02\0\0\0", 4));
  const std::string one("\0\0\x80\x3F", 4);  // 1.0 of IEEE 754
  const std::string zero(4, '\0');
  CHECK(stl.substr(84, 12) == zero + zero + one);
  CHECK(stl.substr(84 + 50, 12) == zero + zero + zero);  // no area, no normal
  CHECK(to_stl({}).size() == 84);
}
