#include "viewer/help_pane.h"

#include <algorithm>
#include <array>
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

}  // namespace

void draw_help(Ui& ui, Session& session, const Rectangle& screen) {
  const float row = line_of(ui.fonts.small) + ui.px(3.0F);
  const float edge = ui.px(24.0F);
  const Rectangle page = page_begin(ui, screen, ui.px(1080.0F), ui.px(640.0F));
  write(ui.fonts.bold, page.x + edge, page.y + ui.px(16.0F), ui.text(), "What each key does");
  float close_x = page.x + page.width - edge - width_of(ui.fonts.small, "close") - ui.px(14.0F);
  if (word_button(ui, "close help", close_x, page.y + ui.px(12.0F), "close", false).chosen) session.page = Page::none;
  const int columns = page.width > ui.px(900.0F) ? 3 : 2;
  const float wide = (page.width - 2.0F * edge) / static_cast<float>(columns);
  const float top = page.y + ui.px(52.0F);
  const float bottom = page.y + page.height - ui.px(14.0F);
  float x = page.x + edge;
  float y = top;
  const float key_room = ui.px(96.0F);
  const auto entry = [&](std::string_view key, std::string_view does, float keys) {
    const auto lines = lines_of(ui.fonts.small, does, wide - keys - ui.px(18.0F), 3);
    if (y + row * static_cast<float>(lines.size()) > bottom) x += wide, y = top;
    write(ui.fonts.small_bold, x, y, ui.text(), key, keys - ui.px(6.0F));
    for (const std::string& line : lines) {
      write(ui.fonts.small, x + keys, y, ui.quiet(), line);
      y += line_of(ui.fonts.small);
    }
    y += ui.px(4.0F);
  };
  const auto heading = [&](std::string_view text) {
    if (y > top) y += ui.px(8.0F);
    if (y + 3.0F * row > bottom) x += wide, y = top;
    write(ui.fonts.bold, x, y, ui.text(), text);
    y += line_of(ui.fonts.bold) + ui.px(3.0F);
  };
  std::string_view group;
  for (const ActionRow& each : actions()) {
    if (each.group != group) heading(group = each.group);
    entry(text(each.chords.front()), each.does, key_room);
  }
  heading("By hand");
  for (const auto& [how, does] : by_hand) entry(how, does, ui.px(140.0F));
  page_end();
}

}  // namespace baywright::viewer
