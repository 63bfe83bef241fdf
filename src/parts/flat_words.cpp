#include "parts/flat_words.h"

#include "parts/document.h"

#include <charconv>
#include <cmath>

namespace baywright::parts {

void stop_flat(const std::string& file, int line, const std::string& what, const std::string& right) {
  throw Stop{{file, line, 0, what, right}};
}

std::string_view trimmed(std::string_view text) {
  constexpr std::string_view blanks = " \t\r\n\f\v";
  const std::size_t first = text.find_first_not_of(blanks);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(blanks) - first + 1);
}

std::optional<double> flat_figure(std::string_view text) {
  text = trimmed(text);
  if (!text.empty() && text.front() == '+') text.remove_prefix(1);
  double value = 0.0;
  const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (fault != std::errc() || end != text.data() + text.size()) return std::nullopt;
  constexpr double largest = 1e6;
  if (!(std::abs(value) <= largest)) return std::nullopt;
  return value;
}

void add_stroke(FlatDrawing& drawing, const Stroke& stroke, const std::string& file) {
  if (drawing.strokes.size() + drawing.circles.size() >= most_strokes)
    stop_flat(file, stroke.line, "the drawing has more than " + std::to_string(most_strokes) + " lines and arcs",
              "keep the outline and its holes, and take out what else is drawn");
  drawing.strokes.push_back(stroke);
}

Stroke arc_between(const geometry::Vec2& from, const geometry::Vec2& to, double sweep, int line) {
  Stroke out{from, to, std::nullopt, line};
  const geometry::Vec2 chord = to - from;
  const double length = glm::length(chord);
  const double half = std::sin(0.5 * sweep);
  if (!(std::abs(sweep) > 1e-9) || !(length > 0.0) || !(std::abs(half) > 1e-12)) return out;
  Arc arc;
  arc.radius = std::abs(0.5 * length / half);
  arc.sweep = sweep;
  // Left of the chord for a turn to the left of less than half a circle.
  const geometry::Vec2 left(-chord.y / length, chord.x / length);
  arc.centre = 0.5 * (from + to) + left * (0.5 * length * std::cos(0.5 * sweep) / half);
  arc.start = std::atan2(from.y - arc.centre.y, from.x - arc.centre.x);
  out.arc = arc;
  return out;
}

}  // namespace baywright::parts
