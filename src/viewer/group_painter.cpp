#include "viewer/group_painter.h"

#include "geometry/triangulation.h"
#include "output/mark.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace baywright::viewer {

namespace {

using output::Vec2;

class Painter {
 public:
  Painter(ImDrawList& list, const Fonts& fonts, float x, float y, ImU32 halo)
      : list_(list), fonts_(fonts), x_(x), y_(y), halo_(halo) {}

  void paint(const output::Group& group) {
    if (group.clip) list_.PushClipRect(at(group.clip->low), at(group.clip->high), true);
    for (const output::Item& item : group.items) std::visit([this](const auto& drawn) { paint(drawn); }, item.drawn);
    if (group.clip) list_.PopClipRect();
  }

 private:
  [[nodiscard]] ImVec2 at(const Vec2& p) const { return {x_ + static_cast<float>(p.x), y_ + static_cast<float>(p.y)}; }

  void stroke(const Vec2& from, const Vec2& to, const output::Pen& pen) {
    const ImU32 ink = colour(pen.colour.c_str());
    const auto width = std::max(1.0F, static_cast<float>(pen.width));
    if (!pen.dashed) return list_.AddLine(at(from), at(to), ink, width);
    const double length = glm::length(to - from);
    const double dash = 4.0 * std::max(1.0, pen.width);
    if (!(length > 0.0) || length > 1e5) return;
    for (double done = 0.0; done < length; done += 1.75 * dash)
      list_.AddLine(at(from + (to - from) * (done / length)),
                    at(from + (to - from) * (std::min(length, done + dash) / length)), ink, width);
  }

  void paint(const output::Line& line) {
    if (line.points.empty()) return;
    if (line.pen.dashed) {
      for (std::size_t i = 1; i < line.points.size(); ++i) stroke(line.points[i - 1], line.points[i], line.pen);
      if (line.closed) stroke(line.points.back(), line.points.front(), line.pen);
      return;
    }
    std::vector<ImVec2> points;
    for (const Vec2& p : line.points) points.push_back(at(p));
    list_.AddPolyline(points.data(), static_cast<int>(points.size()), colour(line.pen.colour.c_str()),
                      line.closed ? ImDrawFlags_Closed : ImDrawFlags_None,
                      std::max(1.0F, static_cast<float>(line.pen.width)));
  }

  void paint(const output::Area& area) {
    if (!area.colour.empty() && !area.outlines.empty()) {
      const ImU32 fill = colour(area.colour.c_str());
      // Softened edges would show where triangles meet.
      const ImDrawListFlags kept = std::exchange(list_.Flags, list_.Flags & ~ImDrawListFlags_AntiAliasedFill);
      const std::vector<output::Outline> holes(area.outlines.begin() + 1, area.outlines.end());
      const std::vector<Vec2> corners = geometry::triangles(area.outlines.front(), holes);
      for (std::size_t i = 0; i + 2 < corners.size(); i += 3)
        list_.AddTriangleFilled(at(corners[i]), at(corners[i + 1]), at(corners[i + 2]), fill);
      list_.Flags = kept;
    }
    const output::Strokes strokes = output::strokes(area);
    for (const auto& [from, to] : strokes.lines) stroke(from, to, area.pen);
    for (const Vec2& dot : strokes.dots)
      list_.AddCircleFilled(at(dot), std::max(1.0F, static_cast<float>(area.pen.width)),
                            colour(area.pen.colour.c_str()));
  }

  void paint(const output::Disc& disc) {
    const auto radius = static_cast<float>(disc.radius);
    if (!disc.colour.empty()) list_.AddCircleFilled(at(disc.centre), radius, colour(disc.colour.c_str()));
    if (disc.pen)
      list_.AddCircle(at(disc.centre), radius, colour(disc.pen->colour.c_str()), 0,
                      std::max(1.0F, static_cast<float>(disc.pen->width)));
  }

  /// The font whose size is nearest: letters are drawn at the size that was asked for.
  [[nodiscard]] const ImFont* font(bool bold, float size) const {
    const std::array plain = {fonts_.small, fonts_.text, fonts_.large};
    const std::array heavy = {fonts_.small_bold, fonts_.bold, fonts_.word};
    const auto& any = bold ? heavy : plain;
    const float dense = 1.0F / ImGui::GetIO().FontGlobalScale;
    return *std::min_element(any.begin(), any.end(), [&](const ImFont* a, const ImFont* b) {
      return std::abs(a->FontSize - size * dense) < std::abs(b->FontSize - size * dense);
    });
  }

  void paint(const output::Text& text) {
    const float drawn = static_cast<float>(text.size) * em_height;
    const ImFont* face = font(text.bold, drawn);
    const float width = face->CalcTextSizeA(drawn, 1e9F, 0.0F, text.text.c_str()).x;
    ImVec2 start = at(text.at);
    start.y -= face->Ascent * drawn / face->FontSize;
    if (text.anchor == output::Anchor::middle) start.x -= 0.5F * width;
    if (text.anchor == output::Anchor::end) start.x -= width;
    start = {std::round(start.x), std::round(start.y)};
    if (text.haloed) {
      const float rim = std::max(1.0F, 0.14F * drawn);
      for (int i = 0; i < 8; ++i) {
        const float angle = 0.785398F * static_cast<float>(i);
        list_.AddText(face, drawn, {start.x + rim * std::cos(angle), start.y + rim * std::sin(angle)}, halo_,
                      text.text.c_str());
      }
    }
    list_.AddText(face, drawn, start, colour(text.colour.c_str()), text.text.c_str());
  }

  ImDrawList& list_;
  const Fonts& fonts_;
  float x_;
  float y_;
  ImU32 halo_;
};

}  // namespace

void paint(const output::Group& group, ImDrawList& list, const Fonts& fonts, float x, float y, ImU32 halo) {
  Painter(list, fonts, x, y, halo).paint(group);
}

}  // namespace baywright::viewer
