#include "render/palette.h"

#include <array>
#include <cmath>
#include <cstdio>

namespace baywright::render {

namespace {

// In the order of Material: board, socket, metal, card, chips, pad, heatsink, screw, case_part.
constexpr std::size_t materials = 9;
constexpr std::array<const char*, materials> light = {"#E3E8EC", "#B0B7C2", "#D0D4DA", "#BCCBBC", "#AEB4BD",
                                                      "#E0D3E8", "#C7CDDB", "#C9C4B8", "#DDE2E8"};
constexpr std::array<const char*, materials> dark = {"#3B434C", "#565F6B", "#5C646E", "#4C5F50", "#6B727C",
                                                     "#6D5C78", "#7B8497", "#7D7868", "#434C57"};

Colour mixed(const Colour& a, const Colour& b, float share) {
  return {a.red + (b.red - a.red) * share, a.green + (b.green - a.green) * share, a.blue + (b.blue - a.blue) * share,
          a.cover};
}

}  // namespace

const Palette& palette(bool is_dark) {
  static const Palette on_light{"#FAFBFD", "#F4F5F7", "#15181C", "#565C64", "#7B828B", "#4A5059", "#6F757D", "#9AA2AD"};
  static const Palette on_dark{"#121417", "#1B1E23", "#E8EBEF", "#A9B0B9", "#76808C", "#A7AFBA", "#98A0AA", "#050607"};
  return is_dark ? on_dark : on_light;
}

Colour colour_of(Material material, bool is_dark) {
  return colour_of(std::string((is_dark ? dark : light)[static_cast<std::size_t>(material)]));
}

Colour cut_colour_of(Material material, bool is_dark) {
  const Colour toward = colour_of(is_dark ? palette(true).background : "#FFFFFF");
  return mixed(colour_of(material, is_dark), toward, 0.35F);
}

Colour colour_of(const std::string& hex, float cover) {
  unsigned red = 0;
  unsigned green = 0;
  unsigned blue = 0;
  if (hex.size() != 7 || std::sscanf(hex.c_str(), "#%2x%2x%2x", &red, &green, &blue) != 3) return {0, 0, 0, cover};
  const auto share = [](unsigned value) { return static_cast<float>(value) / 255.0F; };
  return {share(red), share(green), share(blue), cover};
}

std::string hex(const Colour& colour) {
  const auto whole = [](float share) { return static_cast<unsigned>(std::lround(255.0F * share)) & 0xFFU; };
  char out[8];
  std::snprintf(out, sizeof out, "#%02X%02X%02X", whole(colour.red), whole(colour.green), whole(colour.blue));
  return out;
}

}  // namespace baywright::render
