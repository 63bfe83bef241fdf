#include "viewer/ui.h"

#include "output/mark.h"
#include "viewer/group_painter.h"

#include <algorithm>
#include <cmath>

namespace baywright::viewer {

namespace {

constexpr ImGuiWindowFlags plain = ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove |
                                   ImGuiWindowFlags_NoSavedSettings | ImGuiWindowFlags_NoNav |
                                   ImGuiWindowFlags_NoScrollWithMouse;

float size_of(const ImFont* font) {
  return font->FontSize * ImGui::GetIO().FontGlobalScale;
}

/// How many bytes of the text stand within `room`, whole characters only.
std::size_t fitting(const ImFont* font, std::string_view text, float room) {
  const char* rest = nullptr;
  (void)font->CalcTextSizeA(size_of(font), room, 0.0F, text.data(), text.data() + text.size(), &rest);
  return static_cast<std::size_t>(rest - text.data());
}

std::string shortened(const ImFont* font, std::string_view text, float room) {
  if (width_of(font, text) <= room) return std::string(text);
  const std::string_view mark = "\u2026";
  std::string out(text.substr(0, fitting(font, text, std::max(0.0F, room - width_of(font, mark)))));
  while (out.ends_with(' ')) out.pop_back();
  return out += mark;
}

}  // namespace

bool Ui::took(const Chord& chord) {
  const auto found = std::find(chords.begin(), chords.end(), chord);
  if (found == chords.end()) return false;
  chords.erase(found);
  return true;
}

void pane_begin(const char* name, const Rectangle& at, ImU32 background, bool above) {
  ImGui::SetNextWindowPos({at.x, at.y});
  ImGui::SetNextWindowSize({std::max(at.width, 1.0F), std::max(at.height, 1.0F)});
  ImGui::PushStyleColor(ImGuiCol_WindowBg, background);
  ImGui::PushStyleVar(ImGuiStyleVar_WindowMinSize, {1.0F, 1.0F});
  ImGui::Begin(name, nullptr,
               plain | (above ? ImGuiWindowFlags_NoFocusOnAppearing : ImGuiWindowFlags_NoBringToFrontOnFocus));
}

void pane_end() {
  ImGui::End();
  ImGui::PopStyleVar();
  ImGui::PopStyleColor();
}

Rectangle page_begin(Ui& ui, const Rectangle& screen, float width, float height) {
  const float edge = ui.px(16.0F);
  const float wide = std::min(width, screen.width - 2.0F * edge);
  const float high = std::min(height, screen.height - 2.0F * edge);
  const Rectangle at{std::round(screen.x + 0.5F * (screen.width - wide)),
                     std::round(screen.y + 0.5F * (screen.height - high)), wide, high};
  ImGui::SetNextWindowPos({screen.x, screen.y});
  ImGui::SetNextWindowSize({screen.width, screen.height});
  ImGui::PushStyleColor(ImGuiCol_WindowBg, IM_COL32(0, 0, 0, 110));
  ImGui::Begin("page", nullptr, plain);
  ImDrawList& list = *ImGui::GetWindowDrawList();
  list.AddRectFilled({at.x, at.y}, {at.x + wide, at.y + high}, colour(ui.palette->pane), ui.px(6.0F));
  list.AddRect({at.x, at.y}, {at.x + wide, at.y + high}, colour(ui.palette->line), ui.px(6.0F));
  return at;
}

void page_end() {
  ImGui::End();
  ImGui::PopStyleColor();
}

Touch touch(Ui& ui, const std::string& id, const Rectangle& at, bool reachable) {
  Touch out;
  if (!(at.width >= 1.0F) || !(at.height >= 1.0F)) return out;
  ImGui::SetCursorScreenPos({at.x, at.y});
  out.chosen = ImGui::InvisibleButton(id.c_str(), {at.width, at.height});
  out.pointed = ImGui::IsItemHovered();
  out.held = ImGui::IsItemActive();
  out.let_go = ImGui::IsItemDeactivated();
  out.twice = out.pointed && ImGui::IsMouseDoubleClicked(ImGuiMouseButton_Left);
  if (!reachable) return out;
  out.stood_on = ui.stops.add(id);
  if (!out.stood_on) return out;
  if (!ui.typing && (ui.took({"Enter"}) || ui.took({"Space"}))) out.chosen = true;
  const float off = ui.px(1.5F);
  // Over all else: what is pointed at or stood on is filled by its pane only afterwards.
  ImGui::GetForegroundDrawList()->AddRect({at.x + off, at.y + off}, {at.x + at.width - off, at.y + at.height - off},
                                          colour(ui.palette->focus), ui.px(4.0F), 0, ui.px(2.0F));
  return out;
}

float width_of(const ImFont* font, std::string_view text) {
  return font->CalcTextSizeA(size_of(font), 1e9F, 0.0F, text.data(), text.data() + text.size()).x;
}

float line_of(const ImFont* font) {
  return std::round(1.06F * size_of(font));
}

float write(const ImFont* font, float x, float y, ImU32 ink, std::string_view text, float room) {
  const std::string shown = shortened(font, text, room);
  ImGui::GetWindowDrawList()->AddText(font, size_of(font), {std::round(x), std::round(y)}, ink, shown.c_str());
  return width_of(font, shown);
}

void write_right(const ImFont* font, float right, float y, ImU32 ink, std::string_view text, float room) {
  const std::string shown = shortened(font, text, room);
  write(font, right - width_of(font, shown), y, ink, shown);
}

std::vector<std::string> lines_of(const ImFont* font, std::string_view text, float room, int most) {
  std::vector<std::string> out;
  while (!text.empty() && static_cast<int>(out.size()) < most) {
    if (static_cast<int>(out.size()) + 1 == most) {
      out.push_back(shortened(font, text, room));
      break;
    }
    std::size_t end = fitting(font, text, room);
    if (end < text.size()) {
      const std::size_t space = text.rfind(' ', end);
      if (space != std::string_view::npos && space > 0) end = space;
      end = std::max<std::size_t>(end, 1);
    }
    out.emplace_back(text.substr(0, end));
    text.remove_prefix(end);
    while (text.starts_with(' ')) text.remove_prefix(1);
  }
  return out;
}

float write_lines(const ImFont* font, float x, float y, ImU32 ink, std::string_view text, float room, int most) {
  float height = 0.0F;
  for (const std::string& line : lines_of(font, text, room, most)) {
    write(font, x, y + height, ink, line);
    height += line_of(font);
  }
  return height;
}

Touch word_button(Ui& ui, const std::string& id, float& x, float y, std::string_view text, bool on, bool able) {
  const ImFont* font = on ? ui.fonts.small_bold : ui.fonts.small;
  const float side = ui.px(7.0F);
  const float height = ui.px(26.0F);
  const Rectangle at{x, y, width_of(font, text) + 2.0F * side, height};
  Touch touched = touch(ui, id, at, able);
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const bool lit = able && (touched.pointed || touched.stood_on);
  if (lit) list.AddRectFilled({at.x, at.y}, {at.x + at.width, at.y + height}, colour(ui.palette->raised), ui.px(4.0F));
  const ImU32 ink = on || lit ? ui.text() : able ? ui.quiet() : colour(ui.palette->bar_line);
  write(font, x + side, y + 0.5F * (height - size_of(font)), ink, text);
  if (on)
    list.AddLine({at.x + side, at.y + height - ui.px(3.0F)}, {at.x + at.width - side, at.y + height - ui.px(3.0F)}, ink,
                 ui.px(1.5F));
  x += at.width;
  if (!able) touched = {};
  return touched;
}

void draw_mark(const Ui& ui, fit::Verdict verdict, float x, float y, float size) {
  output::Group group;
  output::draw_mark(group, verdict, {0.0, 0.0}, static_cast<double>(size), ui.palette->dark);
  paint(group, *ImGui::GetWindowDrawList(), ui.fonts, std::round(x), std::round(y), 0);
}

void draw_pattern(const Ui& ui, fit::Verdict verdict, bool overlap, const Rectangle& at) {
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const ImVec2 low{at.x, at.y};
  const ImVec2 high{at.x + at.width, at.y + at.height};
  const ImU32 ink = colour(output::colour(verdict, ui.palette->dark).c_str());
  const ImU32 paper = colour(ui.palette->pane);
  list.AddRectFilled(low, high, paper);
  list.PushClipRect(low, high, true);
  const float pitch = ui.px(12.0F);
  if (overlap && verdict == fit::Verdict::does_not_fit) {
    for (float x = low.x + 0.5F * pitch; x < high.x; x += pitch)
      list.AddLine({x, low.y}, {x, high.y}, ink, ui.px(3.0F));
    for (float y = low.y + 0.5F * pitch; y < high.y; y += pitch)
      list.AddLine({low.x, y}, {high.x, y}, ink, ui.px(3.0F));
  }
  if (verdict == fit::Verdict::marginal)
    for (float x = low.x + 0.5F * pitch; x < high.x; x += pitch)
      for (float y = low.y + 0.5F * pitch; y < high.y; y += pitch) list.AddCircleFilled({x, y}, ui.px(2.0F), ink);
  list.PopClipRect();
  list.AddRect({low.x - 1.0F, low.y - 1.0F}, {high.x + 1.0F, high.y + 1.0F}, paper, 0.0F, 0, ui.px(4.0F));
  list.AddRect(low, high, ink, 0.0F, 0, ui.px(2.0F));
}

}  // namespace baywright::viewer
