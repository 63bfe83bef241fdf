#include "viewer/question_pane.h"

namespace baywright::viewer {

namespace {

/// Index of the answer that was chosen; -1: none yet.
int ask(Ui& ui, const Rectangle& screen, const std::string& question, const std::string& more,
        const std::vector<std::string>& answers) {
  const Rectangle page = page_begin(ui, screen, ui.px(560.0F), ui.px(190.0F));
  const float edge = ui.px(24.0F);
  float y = page.y + ui.px(20.0F);
  write(ui.fonts.large, page.x + edge, y, ui.text(), question, page.width - 2.0F * edge);
  y += line_of(ui.fonts.large) + ui.px(8.0F);
  write_lines(ui.fonts.text, page.x + edge, y, ui.quiet(), more, page.width - 2.0F * edge, 3);
  float x = page.x + edge;
  int chosen = -1;
  for (std::size_t i = 0; i < answers.size(); ++i) {
    const float wide = width_of(ui.fonts.bold, answers[i]) + ui.px(28.0F);
    const Rectangle at{x, page.y + page.height - ui.px(56.0F), wide, ui.px(34.0F)};
    const std::string id = "answer " + answers[i];
    if (ui.stops.at().empty() && i == 0) ui.stops.go(id);  // Enter gives the first, which loses nothing
    const Touch touched = touch(ui, id, at);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    if (touched.pointed || touched.stood_on)
      list.AddRectFilled({at.x, at.y}, {at.x + wide, at.y + at.height}, colour(ui.palette->raised), ui.px(4.0F));
    list.AddRect({at.x, at.y}, {at.x + wide, at.y + at.height}, colour(ui.palette->bar_line), ui.px(4.0F));
    write(ui.fonts.bold, at.x + ui.px(14.0F), at.y + ui.px(8.0F), ui.text(), answers[i]);
    if (touched.chosen) chosen = static_cast<int>(i);
    x += wide + ui.px(12.0F);
  }
  page_end();
  return chosen;
}

}  // namespace

void draw_question(Ui& ui, Session& session, const Rectangle& screen) {
  if (!session.document()) {
    session.page = Page::none;
    return;
  }
  const std::string name = session.document()->path().filename().string();
  switch (session.page) {
    case Page::unsaved:
      switch (ask(ui, screen, "Save the changes?", name + " has changes that are not saved.",
                  {"Save", "Discard", "Cancel"})) {
        case 0:
          return session.answer_unsaved(Session::Leave::save);
        case 1:
          return session.answer_unsaved(Session::Leave::discard);
        case 2:
          return session.answer_unsaved(Session::Leave::stay);
        default:
          return;
      }
    case Page::recovery: {
      const bool older = session.document()->recovery() && session.document()->recovery()->older;
      const int said = ask(ui, screen, "Take up what was not saved?",
                           "An earlier run ended with changes to " + name + " that were not saved." +
                               (older ? " The file was written after them." : " They can be undone."),
                           {"Take them up", "Throw them away"});
      if (said >= 0) session.answer_recovery(said == 0);
      return;
    }
    case Page::conflict: {
      const int said = ask(ui, screen, "The file was changed outside",
                           name +
                               " was changed here and by somebody else. Their text can be taken as a step that can "
                               "be undone, or yours written over it.",
                           {"Take theirs", "Write mine over it"});
      if (said >= 0) session.answer_conflict(said == 0);
      return;
    }
    default:
      return;
  }
}

}  // namespace baywright::viewer
