#include "viewer/answer_pane.h"

#include "output/answer_words.h"

#include <algorithm>
#include <set>

namespace baywright::viewer {

namespace {

/// "2 of 3 drives fit somewhere"; while the background works: that it does.
std::string summary(const Session& session) {
  if (!session.rest().grid) return "asking the other places \u2026";
  std::set<std::string> fitting;
  std::set<std::string> drives;
  std::set<std::string> places;
  for (const Cell& cell : *session.rest().grid) {
    drives.insert(cell.choice.drive);
    places.insert(cell.choice.place);
    if (cell.verdict == fit::Verdict::fits) fitting.insert(cell.choice.drive);
  }
  const std::size_t all = drives.size();
  if (all * places.size() == 1) return "the only drive, the only place";
  if (all == 1) return fitting.empty() ? "it fits at none of the places" : "it fits somewhere";
  return std::to_string(fitting.size()) + " of " + std::to_string(all) + " drives " +
         (fitting.size() == 1 ? "fits" : "fit") + " somewhere";
}

/// The names at the right, which open drives x places. Returns their width.
float draw_choice(Ui& ui, Session& session, const Rectangle& at) {
  const Choice& choice = session.seen()->choice;
  const std::string names = choice.drive + " in " + choice.place;
  const std::string below = summary(session);
  const float room = 0.34F * at.width;
  const float wide = std::min(room, std::max(width_of(ui.fonts.bold, names), width_of(ui.fonts.small, below)));
  const float right = at.x + at.width - ui.px(24.0F);
  const Rectangle box{right - wide - ui.px(10.0F), at.y + ui.px(12.0F), wide + ui.px(20.0F), ui.px(58.0F)};
  const bool able = enabled(Action::grid, session.standing());
  const Touch touched = touch(ui, "choice", box, able);
  ImDrawList& list = *ImGui::GetWindowDrawList();
  if (able && (touched.pointed || touched.stood_on))
    list.AddRectFilled({box.x, box.y}, {box.x + box.width, box.y + box.height}, colour(ui.palette->raised),
                       ui.px(4.0F));
  write_right(ui.fonts.bold, right, at.y + ui.px(19.0F), ui.text(), names, wide);
  write_right(ui.fonts.small, right, at.y + ui.px(44.0F), ui.quiet(), below, wide);
  if (touched.chosen) session.act(Action::grid);
  return box.width;
}

}  // namespace

void draw_answer(Ui& ui, Session& session, const Rectangle& at) {
  pane_begin("answer", at, colour(ui.palette->band));
  if (session.seen()) {
    const output::Answer said = output::answer_of(session.seen()->seating, session.seen()->build.method);
    const float taken = draw_choice(ui, session, at);
    draw_mark(ui, said.verdict, at.x + ui.px(22.0F), at.y + ui.px(20.0F), ui.px(40.0F));
    const float x = at.x + ui.px(80.0F);
    const float room = at.width - taken - ui.px(80.0F + 40.0F);
    const std::string word = session.tried() ? "with this change: " + said.word : said.word;
    const std::vector<std::string> lines = lines_of(ui.fonts.text, said.sentence, room, 2);
    const bool one = lines.size() < 2;
    write(ui.fonts.word, x, at.y + ui.px(one ? 13.0F : 6.0F), ui.text(), word, room);
    float y = at.y + ui.px(one ? 46.0F : 36.0F);
    for (const std::string& line : lines) {
      write(ui.fonts.text, x, y, ui.text(), line);
      y += line_of(ui.fonts.text);
    }
  } else {
    write(ui.fonts.word, at.x + ui.px(24.0F), at.y + ui.px(28.0F), ui.text(), "Nothing is open");
  }
  ImGui::GetWindowDrawList()->AddLine({at.x, at.y + at.height - 0.5F}, {at.x + at.width, at.y + at.height - 0.5F},
                                      colour(ui.palette->line));
  pane_end();
}

}  // namespace baywright::viewer
