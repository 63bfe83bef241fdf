#include "viewer/mounting_pane.h"

#include "output/shopping_text.h"
#include "output/steps_text.h"

#include <algorithm>
#include <string>
#include <utility>

namespace baywright::viewer {

void MountingPane::update(const Session& session) {
  const Rest& rest = session.rest();
  if (of_ == session.seen() && rest_.plans == rest.plans && rest_.grid == rest.grid) return;
  if (of_ != session.seen()) scroll_.to_top();
  of_ = session.seen();
  rest_ = rest;
  page_ = session.mounting();
}

float MountingPane::flow(const Ui& ui, float x, float y, float room, bool drawn) const {
  constexpr int most = 1000;  // lines: the page scrolls
  const float top = y;
  const auto lines = [&](const ImFont* font, float at, ImU32 ink, const std::string& text) {
    for (const std::string& line : lines_of(font, text, x + room - at, most)) {
      if (drawn) write(font, at, y, ink, line);
      y += line_of(font);
    }
  };
  const auto lead = [&](const ImFont* font, float at, ImU32 ink, const std::string& text) {
    if (drawn) write(font, at, y, ink, text);
  };
  for (std::size_t i = 0; i < page_.heading.size(); ++i) {
    lines(i == 0 ? ui.fonts.bold : ui.fonts.text, x, ui.text(), page_.heading[i]);
    y += ui.px(4.0F);
  }
  const float step_x = x + ui.px(34.0F);
  const float caution = width_of(ui.fonts.small_bold, "Caution") + ui.px(10.0F);
  int number = 0;
  for (const plans::Step& step : page_.mounting.steps) {
    y += ui.px(8.0F);
    const std::string count = std::to_string(++number);
    lead(ui.fonts.bold, step_x - ui.px(12.0F) - width_of(ui.fonts.bold, count), ui.text(), count);
    lines(ui.fonts.text, step_x, ui.text(), output::say(step));
    for (const plans::Hazard hazard : step.hazards) {
      y += ui.px(2.0F);
      lead(ui.fonts.small_bold, step_x, ui.text(), "Caution");
      lines(ui.fonts.small, step_x + caution, ui.text(), output::say(hazard));
    }
  }
  if (page_.items.empty()) return y - top;
  y += ui.px(22.0F);
  if (drawn)
    ImGui::GetWindowDrawList()->AddLine({x, y - ui.px(10.0F)}, {x + room, y - ui.px(10.0F)}, colour(ui.palette->line));
  for (std::size_t i = 0; i < page_.shopping.size(); ++i)
    lines(i == 0 ? ui.fonts.bold : ui.fonts.text, x, ui.text(), page_.shopping[i]);
  const float kind_x = step_x;
  const float what_x = kind_x + ui.px(86.0F);
  const float note_x = what_x + ui.px(56.0F);
  for (const bool owned : {false, true}) {
    if (std::none_of(page_.items.begin(), page_.items.end(),
                     [&](const plans::Item& item) { return item.in_build == owned; }))
      continue;
    y += ui.px(10.0F);
    lines(ui.fonts.small_bold, x, ui.quiet(), owned ? "In the build already" : "To buy");
    for (const plans::Item& item : page_.items) {
      if (item.in_build != owned) continue;
      y += ui.px(5.0F);
      const output::ItemWords words = output::words_of(item);
      const std::string count = std::to_string(item.count);
      lead(ui.fonts.bold, step_x - ui.px(12.0F) - width_of(ui.fonts.bold, count), ui.text(), count);
      lead(ui.fonts.text, kind_x, ui.text(), std::string(plans::word(item.kind)));
      lines(ui.fonts.text, what_x, ui.text(), words.what);
      for (const auto& [label, note] : words.notes) {
        lead(ui.fonts.small, what_x, ui.quiet(), label);
        lines(ui.fonts.small, note_x, ui.quiet(), note);
      }
    }
  }
  return y - top;
}

void MountingPane::draw(Ui& ui, Session& session, const Rectangle& screen) {
  if (!session.seen()) {
    session.page = Page::none;
    return;
  }
  update(session);
  const float edge = ui.px(28.0F);
  const float head = ui.px(52.0F);
  const float foot = line_of(ui.fonts.small) + ui.px(22.0F);
  const float wanted = std::min(ui.px(880.0F), screen.width - ui.px(32.0F)) - 2.0F * edge;
  const float tall = flow(ui, 0.0F, 0.0F, wanted, false);
  const Rectangle page = page_begin(ui, screen, wanted + 2.0F * edge, std::max(tall + head + foot, ui.px(200.0F)));
  write(ui.fonts.bold, page.x + edge, page.y + ui.px(16.0F), ui.quiet(), "Steps");
  float x =
      page.x + page.width - edge - width_of(ui.fonts.small, "copy") - width_of(ui.fonts.small, "close") - ui.px(28.0F);
  if (word_button(ui, "copy steps", x, page.y + ui.px(12.0F), "copy", false).chosen) session.act(Action::copy_answer);
  if (word_button(ui, "close steps", x, page.y + ui.px(12.0F), "close", false).chosen) session.page = Page::none;
  const Rectangle room{page.x + edge, page.y + head, page.width - 2.0F * edge,
                       std::max(page.height - head - foot, 1.0F)};
  const float down = scroll_.take(ui, tall, {room.x, room.y, room.width + ui.px(14.0F), room.height});
  ImDrawList& list = *ImGui::GetWindowDrawList();
  list.PushClipRect({page.x, room.y}, {page.x + page.width, room.y + room.height}, true);
  flow(ui, room.x, std::round(room.y - down), room.width, true);
  list.PopClipRect();
  write(ui.fonts.small, room.x, page.y + page.height - foot + ui.px(8.0F), ui.quiet(),
        tall > room.height ? "Ctrl+C copies it as text. The wheel and the arrows show more. Escape goes back."
                           : "Ctrl+C copies it as text. Escape goes back.",
        room.width);
  page_end();
}

}  // namespace baywright::viewer
