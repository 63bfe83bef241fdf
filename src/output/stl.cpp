#include "output/stl.h"

#include <bit>
#include <cstdint>
#include <glm/geometric.hpp>
#include <glm/vec3.hpp>

namespace baywright::output {

namespace {

constexpr std::size_t heading_bytes = 80;

void add(std::string& out, std::uint32_t value, int bytes) {
  for (int i = 0; i < bytes; ++i) out += static_cast<char>((value >> (8 * i)) & 0xFFU);
}

void add(std::string& out, const glm::dvec3& point) {
  for (int i = 0; i < 3; ++i) add(out, std::bit_cast<std::uint32_t>(static_cast<float>(point[i])), 4);
}

glm::dvec3 wide(const std::array<float, 3>& corner) {
  return {corner[0], corner[1], corner[2]};
}

}  // namespace

std::string to_stl(Corners corners) {
  std::string out = "Baywright: figures in mm";  // never "solid", which would say that text follows
  out.resize(heading_bytes, ' ');
  add(out, static_cast<std::uint32_t>(corners.size() / 3), 4);
  for (std::size_t i = 0; i + 2 < corners.size(); i += 3) {
    const glm::dvec3 a = wide(corners[i]);
    const glm::dvec3 b = wide(corners[i + 1]);
    const glm::dvec3 c = wide(corners[i + 2]);
    const glm::dvec3 across = glm::cross(b - a, c - a);
    const double area = glm::length(across);
    add(out, area > 0.0 ? across / area : glm::dvec3(0.0));
    for (const glm::dvec3& each : {a, b, c}) add(out, each);
    add(out, 0, 2);
  }
  return out;
}

}  // namespace baywright::output
