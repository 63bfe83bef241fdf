#include "plans/stroke_figures.h"

#include <array>

namespace baywright::plans {

using geometry::Outline;
using geometry::Vec2;

namespace {

// Common practice, no source: sunk figures print legibly from 5 mm high, of strokes two lines of 0.4 broad.
constexpr double stroke = 0.8;
constexpr double width = 3.4;
constexpr double height = 5.4;
constexpr double gap = 0.3;    // along both strokes that meet in a corner, so 1.41 of it apart
constexpr double space = 1.0;  // between figures

/// Strokes of the figure: top, upper right, lower right, foot, lower left, upper left, middle.
constexpr std::array<unsigned, 10> lit{0b0111111, 0b0000110, 0b1011011, 0b1001111, 0b1100110,
                                       0b1101101, 0b1111101, 0b0000111, 0b1111111, 0b1101111};

/// From one end of its middle line to the other, pointed.
Outline level(double x0, double x1, double y) {
  const double half = 0.5 * stroke;
  x0 += gap;
  x1 -= gap;
  return {{x0, y}, {x0 + half, y - half}, {x1 - half, y - half}, {x1, y}, {x1 - half, y + half}, {x0 + half, y + half}};
}

Outline upright(double x, double y0, double y1) {
  const double half = 0.5 * stroke;
  y0 += gap;
  y1 -= gap;
  return {{x, y0}, {x + half, y0 + half}, {x + half, y1 - half}, {x, y1}, {x - half, y1 - half}, {x - half, y0 + half}};
}

std::array<Outline, 7> strokes() {
  const double left = 0.5 * stroke;
  const double right = width - left;
  const double foot = left;
  const double top = height - left;
  const double middle = 0.5 * height;
  return {level(left, right, top),   upright(right, middle, top), upright(right, foot, middle),
          level(left, right, foot),  upright(left, foot, middle), upright(left, middle, top),
          level(left, right, middle)};
}

double advance(char c) {
  return (c == '.' ? stroke : width) + space;
}

}  // namespace

std::vector<Outline> stroke_figures(const std::string& text, const Vec2& at) {
  const std::array<Outline, 7> all = strokes();
  std::vector<Outline> out;
  Vec2 pen = at;
  const auto add = [&](Outline outline) {
    for (Vec2& p : outline) p += pen;
    out.push_back(std::move(outline));
  };
  for (const char c : text) {
    if (c == '.')
      add({{0.0, 0.0}, {stroke, 0.0}, {stroke, stroke}, {0.0, stroke}});
    else if (c >= '0' && c <= '9')
      for (std::size_t i = 0; i < all.size(); ++i)
        if ((lit[static_cast<std::size_t>(c - '0')] >> i & 1U) != 0) add(all[i]);
    pen.x += advance(c);
  }
  return out;
}

Vec2 figures_size(const std::string& text) {
  Vec2 out(-space, height);
  for (const char c : text) out.x += advance(c);
  return out;
}

}  // namespace baywright::plans
