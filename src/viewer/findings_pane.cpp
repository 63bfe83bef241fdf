#include "viewer/findings_pane.h"

#include "output/words.h"

#include <algorithm>

namespace baywright::viewer {

void FindingsPane::draw(Ui& ui, Session& session, const Rectangle& at) {
  pane_begin("findings", at, colour(ui.palette->pane));
  const Shown& shown = *session.seen();
  const std::vector<fit::Finding>& findings = shown.seating.findings;
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const float edge = ui.px(18.0F);
  float x = at.x + edge;
  write(ui.fonts.bold, x, at.y + ui.px(12.0F), ui.text(), "What was found", at.width - 2.0F * edge);
  x = at.x + at.width - edge - width_of(ui.fonts.small, "close") - ui.px(14.0F);
  if (word_button(ui, "close findings", x, at.y + ui.px(8.0F), "close", false).chosen) session.page = Page::none;
  float y = at.y + ui.px(44.0F);
  if (ImGui::IsWindowHovered() && ImGui::GetIO().MouseWheel != 0.0F) {
    if (ImGui::GetIO().MouseWheel < 0.0F) ++first_;
    if (ImGui::GetIO().MouseWheel > 0.0F && first_ > 0) --first_;
  }
  first_ = std::min(first_, findings.empty() ? 0 : findings.size() - 1);
  const float row = line_of(ui.fonts.small);
  std::size_t i = first_;
  for (; i < findings.size(); ++i) {
    const fit::Finding& finding = findings[i];
    const auto lines =
        lines_of(ui.fonts.small, output::say(finding, shown.build.method), at.width - 2.0F * edge - ui.px(26.0F), 5);
    const float high = row * static_cast<float>(lines.size() + 1) + ui.px(10.0F);
    if (y + high > at.y + at.height - ui.px(26.0F)) break;
    const Rectangle box{at.x + ui.px(8.0F), y, at.width - ui.px(16.0F), high};
    const Touch touched = touch(ui, "finding " + std::to_string(i), box);
    const bool here = session.finding() == i;
    if (here || touched.pointed || touched.stood_on)
      list.AddRectFilled({box.x, box.y}, {box.x + box.width, box.y + box.height}, colour(ui.palette->raised),
                         ui.px(4.0F));
    if (finding.verdict) draw_mark(ui, *finding.verdict, at.x + edge, y + ui.px(7.0F), ui.px(14.0F));
    const float text_x = at.x + edge + ui.px(24.0F);
    write(ui.fonts.small_bold, text_x, y + ui.px(5.0F), ui.text(),
          (finding.verdict ? output::word(*finding.verdict) : std::string("note")) + ", " + output::word(finding.kind),
          at.width - 2.0F * edge - ui.px(24.0F));
    float text_y = y + ui.px(5.0F) + row;
    for (const std::string& line : lines) {
      write(ui.fonts.small, text_x, text_y, ui.quiet(), line);
      text_y += row;
    }
    if (touched.chosen) session.choose_finding(i);
    y += high;
  }
  float word_x = at.x + edge - ui.px(7.0F);
  const float word_y = at.y + at.height - ui.px(30.0F);
  if (first_ > 0 && word_button(ui, "findings before", word_x, word_y, std::to_string(first_) + " above", false).chosen)
    --first_;
  if (i < findings.size() &&
      word_button(ui, "findings after", word_x, word_y, std::to_string(findings.size() - i) + " below", false).chosen)
    ++first_;
  list.AddLine({at.x + 0.5F, at.y}, {at.x + 0.5F, at.y + at.height}, colour(ui.palette->line));
  pane_end();
}

}  // namespace baywright::viewer
