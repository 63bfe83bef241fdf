#include "viewer/customer_pane.h"

#include "output/answer_words.h"
#include "output/rank_text.h"
#include "viewer/plan_words.h"

#include <algorithm>
#include <utility>

namespace baywright::viewer {

namespace {

/// `rows`: room for so many lines of the heading, so that what stands beside each other is level.
void draw_caption(Ui& ui, const std::string& heading, const Shown& shown, const Rectangle& at, int rows) {
  const output::Answer said = output::answer_of(shown.seating, shown.build.method);
  write_lines(ui.fonts.small, at.x, at.y, ui.quiet(), heading, at.width, rows);
  const float y = at.y + static_cast<float>(rows) * line_of(ui.fonts.small) + ui.px(4.0F);
  draw_mark(ui, said.verdict, at.x, y + ui.px(2.0F), ui.px(34.0F));
  write(ui.fonts.calm, at.x + ui.px(50.0F), y - ui.px(4.0F), ui.text(), said.word, at.width - ui.px(50.0F));
  write_lines(ui.fonts.large, at.x, y + ui.px(46.0F), ui.text(), said.plain, at.width, 3);
}

/// How far the drive is in, as a line with a handle.
void draw_scrubber(Ui& ui, Session& session, const Rectangle& at, double now) {
  ImDrawList& list = *ImGui::GetWindowDrawList();
  write(ui.fonts.text, at.x, at.y + ui.px(4.0F), ui.text(), "How it goes in");
  float x = at.x + ui.px(120.0F);
  if (word_button(ui, "play", x, at.y, "play", false).chosen) session.act(Action::put_in);
  const float from = x + ui.px(16.0F);
  const float to = at.x + at.width;
  const float y = at.y + ui.px(13.0F);
  const Touch touched = touch(ui, "scrubber", {from, at.y, std::max(to - from, 1.0F), ui.px(26.0F)});
  if (touched.held)
    session.looking.put_in.jump(
        std::clamp(static_cast<double>((ImGui::GetIO().MousePos.x - from) / std::max(to - from, 1.0F)), 0.0, 1.0));
  if (touched.stood_on)
    for (const auto& [key, by] : {std::pair{"Left", -0.05}, std::pair{"Right", 0.05}})
      if (ui.took({key})) session.looking.put_in.jump(std::clamp(session.looking.put_in.at(now) + by, 0.0, 1.0));
  const float at_x = from + (to - from) * static_cast<float>(session.looking.put_in.at(now));
  list.AddLine({from, y}, {to, y}, colour(ui.palette->bar_line), ui.px(2.0F));
  list.AddCircleFilled({at_x, y}, ui.px(8.0F), ui.text());
}

/// Which drive of the open shortlist to take, and why, over all else. Returns its height; 0 where no list is open.
float draw_advice(Ui& ui, const Session& session, const Rectangle& screen) {
  if (session.buying() == nullptr || session.buying_waits()) return 0.0F;
  const float edge = ui.px(32.0F);
  const std::string advice = output::rank_answer(*session.buying()).front();
  const auto lines = lines_of(ui.fonts.large, advice, screen.width - 2.0F * edge, 3);
  const float high = line_of(ui.fonts.large) * static_cast<float>(lines.size()) + ui.px(24.0F);
  pane_begin("advice", {screen.x, screen.y, screen.width, high}, colour(ui.palette->band));
  float y = screen.y + ui.px(12.0F);
  for (const std::string& line : lines) {
    write(ui.fonts.large, screen.x + edge, y, ui.text(), line);
    y += line_of(ui.fonts.large);
  }
  pane_end();
  return high;
}

}  // namespace

void draw_customer(Ui& ui, Session& session, ScenePane& before, ScenePane& after, const Rectangle& all, float dense,
                   double now) {
  const float advice = draw_advice(ui, session, all);
  const Rectangle screen{all.x, all.y + advice, all.width, std::max(all.height - advice, 1.0F)};
  const std::shared_ptr<const Shown> remedy = session.remedy();
  const float captions = std::min(ui.px(190.0F), 0.4F * screen.height);
  const bool way = !session.shown()->model.way_in.empty() || (remedy && !remedy->model.way_in.empty());
  const float foot = ui.px(way ? 56.0F : 12.0F);
  const float high = std::max(screen.height - captions - foot, 1.0F);
  const float wide = remedy ? 0.5F * screen.width : screen.width;
  const Rectangle left{screen.x, screen.y + captions, wide, high};
  const Rectangle right{screen.x + wide, screen.y + captions, wide, high};

  pane_begin("captions", {screen.x, screen.y, screen.width, captions}, colour(ui.palette->scene));
  const float edge = ui.px(32.0F);
  const std::string name = session.shown()->choice.drive + " in " + session.shown()->choice.place;
  const std::string change = remedy ? "With the change: " + words_of(*session.remedy_plan()).change : std::string();
  const float narrow = wide - 2.0F * edge - ui.px(48.0F);
  const int rows = width_of(ui.fonts.small, change) > narrow ? 2 : 1;
  draw_caption(ui, remedy ? "As it is: " + name : name, *session.shown(),
               {screen.x + edge, screen.y + ui.px(18.0F), narrow, captions}, rows);
  if (remedy) draw_caption(ui, change, *remedy, {right.x + edge, screen.y + ui.px(18.0F), narrow, captions}, rows);
  float x = screen.x + screen.width - ui.px(16.0F) - width_of(ui.fonts.small, "back") - ui.px(14.0F);
  if (word_button(ui, "back", x, screen.y + ui.px(10.0F), "back", false).chosen) session.act(Action::customer);
  pane_end();

  before.draw(ui, session, session.shown(), left, dense, now, "before", false);
  if (remedy) {
    after.follow(before);
    after.draw(ui, session, remedy, right, dense, now, "after", false);
    before.follow(after);
  }
  pane_begin("motion", {screen.x, screen.y + captions + high, screen.width, foot}, colour(ui.palette->scene));
  if (way)
    draw_scrubber(ui, session,
                  {screen.x + edge, screen.y + captions + high + ui.px(8.0F), screen.width - 2.0F * edge, foot}, now);
  pane_end();
}

}  // namespace baywright::viewer
