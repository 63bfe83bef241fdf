#include "viewer/help_pane.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <utility>

namespace baywright::viewer {

namespace {

/// What is done with the hand and has no key of its own.
constexpr std::array<std::pair<const char*, const char*>, 10> by_hand = {{
    {"drag the scene", "Turn it. Also the arrows."},
    {"Shift, drag", "Move it; also the right button, or Shift and the arrows."},
    {"wheel, two fingers", "Come nearer to what is under the pointer."},
    {"click a part", "Choose it."},
    {"double click", "Fly to it."},
    {"drag a band", "Change that length."},
    {"double click a band", "Type the length; on the keyboard, a figure."},
    {"drag a hole", "Move it on the plan; with Ctrl by tenths."},
    {"arrows on either", "0.1 mm; with Shift 1, with Alt 0.01."},
    {"drop a file", "Open it."},
}};

/// Lays the entries out in columns of that height, from (x, y), and draws them if asked. Returns how many columns.
int flow(const Ui& ui, float left, float top, float wide, float tall, bool drawn) {
  const float row = line_of(ui.fonts.small) + ui.px(3.0F);
  int column = 0;
  float y = 0.0F;
  const auto x = [&] { return left + static_cast<float>(column) * wide; };
  const auto next_if_beyond = [&](float height) {
    if (y > 0.0F && y + height > tall) ++column, y = 0.0F;
  };
  const auto entry = [&](std::string_view key, std::string_view does, float keys) {
    const auto lines = lines_of(ui.fonts.small, does, wide - keys - ui.px(18.0F), 3);
    next_if_beyond(row * static_cast<float>(lines.size()));
    if (drawn) write(ui.fonts.small_bold, x(), top + y, ui.text(), key, keys - ui.px(6.0F));
    for (const std::string& line : lines) {
      if (drawn) write(ui.fonts.small, x() + keys, top + y, ui.quiet(), line);
      y += line_of(ui.fonts.small);
    }
    y += ui.px(4.0F);
  };
  const auto heading = [&](std::string_view text) {
    if (y > 0.0F) y += ui.px(8.0F);
    next_if_beyond(3.0F * row);
    if (drawn) write(ui.fonts.bold, x(), top + y, ui.text(), text);
    y += line_of(ui.fonts.bold) + ui.px(3.0F);
  };
  std::string_view group;
  for (const ActionRow& each : actions()) {
    if (each.group != group) heading(group = each.group);
    entry(text(each.chords.front()), each.does, ui.px(96.0F));
  }
  heading("By hand");
  for (const auto& [how, does] : by_hand) entry(how, does, ui.px(140.0F));
  return column + 1;
}

}  // namespace

void HelpPane::draw(Ui& ui, Session& session, const Rectangle& screen) {
  const float edge = ui.px(24.0F);
  const Rectangle page = page_begin(ui, screen, ui.px(1080.0F), ui.px(690.0F));
  write(ui.fonts.bold, page.x + edge, page.y + ui.px(16.0F), ui.text(), "What each key does");
  float close_x = page.x + page.width - edge - width_of(ui.fonts.small, "close") - ui.px(14.0F);
  if (word_button(ui, "close help", close_x, page.y + ui.px(12.0F), "close", false).chosen) session.page = Page::none;
  const int columns = page.width > ui.px(900.0F) ? 3 : page.width > ui.px(500.0F) ? 2 : 1;
  const float wide = (page.width - 2.0F * edge) / static_cast<float>(columns);
  const float top = page.y + ui.px(52.0F);
  const float seen = std::max(page.height - ui.px(66.0F), 1.0F);
  const float step = line_of(ui.fonts.small);
  // What is taller than the page scrolls.
  float tall = seen;
  while (flow(ui, 0.0F, 0.0F, wide, tall, false) > columns) tall += step;
  const float down = scroll_.take(ui, tall, {page.x, top, page.width - ui.px(10.0F), seen});
  ImDrawList& list = *ImGui::GetWindowDrawList();
  list.PushClipRect({page.x, top}, {page.x + page.width, top + seen}, true);
  flow(ui, page.x + edge, std::round(top - down), wide, tall, true);
  list.PopClipRect();
  page_end();
}

}  // namespace baywright::viewer
