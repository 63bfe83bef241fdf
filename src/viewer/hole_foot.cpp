#include "viewer/hole_foot.h"

#include "output/drill_tables.h"
#include "output/words.h"
#include "viewer/hole_table.h"
#include "viewer/template_file.h"

namespace baywright::viewer {

namespace {

void write_it(Session& session, const HolePlan& plan) {
  session.commit();
  const auto written = write_template(plan, session.shown()->build.title, session.document()->path());
  if (const auto* why = std::get_if<std::string>(&written)) return session.say(*why, true);
  session.say(std::get<WrittenTemplate>(written).say);
}

}  // namespace

void draw_hole_foot(Ui& ui, Session& session, const Placing& placing, const Rectangle& at) {
  pane_begin("hole foot", at, colour(ui.palette->band));
  if (const HolePlan* plan = placing.plan(); plan != nullptr && session.document() && at.height >= 1.0F) {
    ImGui::GetWindowDrawList()->AddLine({at.x, at.y + 0.5F}, {at.x + at.width, at.y + 0.5F}, colour(ui.palette->line));
    const float edge = ui.px(24.0F);
    const Rectangle inner{at.x + edge, at.y + ui.px(10.0F), at.width - 2.0F * edge, at.height - ui.px(16.0F)};
    const float end = inner.y + inner.height;
    float y = inner.y;
    if (!plan->drilling) {
      write(ui.fonts.bold, inner.x, y, ui.text(), "No template", inner.width);
      y += line_of(ui.fonts.bold) + ui.px(3.0F);
      write_lines(ui.fonts.text, inner.x, y, ui.quiet(), plan->refused, inner.width, 3);
    } else {
      const float words = width_of(ui.fonts.small, "template") + ui.px(14.0F);
      float x = inner.x + inner.width - words;
      ImGui::GetWindowDrawList()->AddRect({x, y - ui.px(4.0F)}, {x + words, y + ui.px(22.0F)},
                                          colour(ui.palette->bar_line), ui.px(4.0F));
      if (word_button(ui, "write template", x, y - ui.px(4.0F), "template", false).chosen) write_it(session, *plan);
      write(ui.fonts.bold, inner.x, y, ui.text(), "The order of drilling", inner.width - words - ui.px(12.0F));
      y += line_of(ui.fonts.bold) + ui.px(3.0F);
      const float row = line_of(ui.fonts.small);
      const auto say = [&](const ImFont* font, ImU32 ink, const std::string& text, int most) {
        const int room = std::min(most, static_cast<int>((end - y) / row));
        if (room > 0) y += write_lines(font, inner.x, y, ink, text, inner.width, room) + ui.px(2.0F);
      };
      say(ui.fonts.small, ui.text(), order_words(*plan), 2);
      for (const std::string& caution : output::cautions(true, false)) say(ui.fonts.small_bold, ui.text(), caution, 2);
      for (const std::string& answer : output::drill_answers(*plan->drilling))
        say(ui.fonts.small, ui.quiet(), answer, 2);
    }
  }
  pane_end();
}

}  // namespace baywright::viewer
