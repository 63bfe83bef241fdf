#include "viewer/screen.h"

#include "viewer/answer_pane.h"
#include "viewer/customer_pane.h"
#include "viewer/grid_pane.h"
#include "viewer/hole_foot.h"
#include "viewer/question_pane.h"

#include <algorithm>

namespace baywright::viewer {

std::variant<std::unique_ptr<Screen>, std::string> Screen::make(Settings settings, fit::Options options) {
  std::vector<render::Canvas> canvases;
  while (canvases.size() < 3) {
    auto made = render::Canvas::make();
    if (auto* fault = std::get_if<std::string>(&made)) return std::move(*fault);
    canvases.push_back(std::get<render::Canvas>(std::move(made)));
  }
  return std::unique_ptr<Screen>(new Screen(std::move(settings), std::move(options), std::move(canvases[0]),
                                            std::move(canvases[1]), std::move(canvases[2])));
}

std::optional<std::string> Screen::set_scale(float scale, float dense) {
  ui_.scale = scale;
  dense_ = dense;
  return make_fonts(scale, dense, ui_.fonts);
}

void Screen::dispatch() {
  // A field that takes letters keeps them; what is pressed with Ctrl is never meant for it alone, save its own.
  const auto wanted = std::exchange(ui_.chords, {});
  for (const Chord& chord : wanted) {
    const auto action = action_of(chord);
    if (!action) continue;
    const bool letter = !chord.ctrl && chord.key.size() == 1;
    const bool of_fields = chord.ctrl && (chord.key == "c" || chord.key == "z" || chord.key == "y");
    if (ui_.typing && (letter || of_fields || chord.key == "Home")) continue;
    const bool asked =
        session_.page == Page::unsaved || session_.page == Page::recovery || session_.page == Page::conflict;
    if (asked && *action != Action::leave && *action != Action::next_stop && *action != Action::previous_stop &&
        *action != Action::larger && *action != Action::smaller)
      continue;
    if (*action == Action::next_stop) ui_.stops.move(1);
    if (*action == Action::previous_stop) ui_.stops.move(-1);
    if (*action == Action::leave && session_.page == Page::none && !ui_.stops.at().empty()) ui_.stops.leave();
    session_.act(*action);
  }
}

/// The lines between the panes can be shifted.
void Screen::split(const Layout& layout, const Rectangle& all) {
  const float grip = ui_.px(8.0F);
  Fractions& kept = session_.settings.fractions;
  const ImVec2 mouse = ImGui::GetIO().MousePos;
  const auto line = [&](const char* name, const Rectangle& at, ImGuiMouseCursor cursor) {
    pane_begin(name, at, 0, true);
    const Touch touched = touch(ui_, name, at, false);
    if (touched.pointed || touched.held) ImGui::SetMouseCursor(cursor);
    pane_end();
    return touched.held;
  };
  const Rectangle& column = layout.column;
  if (line("column edge", {column.x + column.width - 0.5F * grip, column.y, grip, column.height},
           ImGuiMouseCursor_ResizeEW))
    kept.column = std::clamp(mouse.x / std::max(all.width, 1.0F), 0.05F, 0.9F);
  if (line("foot edge", {0.0F, layout.foot.y - 0.5F * grip, all.width, grip}, ImGuiMouseCursor_ResizeNS))
    kept.foot = std::clamp(1.0F - mouse.y / std::max(all.height, 1.0F), 0.05F, 0.9F);
}

SceneTool* Screen::tool() {
  if (session_.mode != Mode::measure) measure_view_.leave();
  if (session_.mode == Mode::holes) placing_.look(session_);
  if (session_.mode != Mode::holes || placing_.plan() == nullptr) placing_.leave();
  if (placing_.plan() != nullptr) return &hole_view_;
  return session_.mode == Mode::measure && session_.seen() ? &measure_view_ : nullptr;
}

void Screen::draw_column(const Rectangle& at) {
  if (placing_.plan() != nullptr) return hole_column_.draw(ui_, session_, placing_, at);
  if (session_.mode != Mode::measure) return stack_.draw(ui_, session_, at);
  const float below = std::min(measure_view_.height(ui_), 0.5F * at.height);
  stack_.draw(ui_, session_, {at.x, at.y, at.width, at.height - below});
  measure_view_.draw_words(ui_, session_, {at.x, at.y + at.height - below, at.width, below});
}

void Screen::draw_panes(const Rectangle& all, double now) {
  if (session_.customer && session_.shown()) return draw_customer(ui_, session_, before_, after_, all, dense_, now);
  const Layout layout = layout_of(all.width, all.height, ui_.scale, session_.settings.fractions, false);
  draw_answer(ui_, session_, layout.answer);
  SceneTool* const held = tool();
  draw_column(layout.column);
  Rectangle scene = layout.scene;
  if (session_.page == Page::findings && session_.seen()) {
    const float wide = std::min(ui_.px(380.0F), 0.5F * scene.width);
    scene.width -= wide;
    scene_.draw(ui_, session_, session_.seen(), scene, dense_, now, "scene", true, held);
    findings_.draw(ui_, session_, {scene.x + scene.width, scene.y, wide, scene.height});
  } else {
    scene_.draw(ui_, session_, session_.seen(), scene, dense_, now, "scene", true, held);
  }
  if (placing_.plan() != nullptr)
    draw_hole_foot(ui_, session_, placing_, layout.foot);
  else
    foot_.draw(ui_, session_, layout.foot);
  split(layout, all);
}

void Screen::draw_page(const Rectangle& all) {
  switch (session_.page) {
    case Page::none:
    case Page::findings:
      return;
    case Page::help:
      return help_.draw(ui_, session_, all);
    case Page::open:
      return open_.draw(ui_, session_, all);
    case Page::grid:
      return draw_grid(ui_, session_, all);
    case Page::steps:
      return mounting_.draw(ui_, session_, all);
    case Page::shortlist:
      return shortlist_.draw(ui_, session_, all);
    case Page::unsaved:
    case Page::recovery:
    case Page::conflict:
      return draw_question(ui_, session_, all);
  }
}

/// What has just happened, over the scene's foot; a fault stays until it is left.
void Screen::draw_notice(const Rectangle& all) {
  std::string text = session_.notice();
  const bool fault = !text.empty() && session_.notice_is_fault();
  if (text.empty() && session_.document() && session_.document()->fault())
    text = session_.document()->fault()->text() + " What is shown is the build before that.";
  if (text.empty()) return;
  const float room = std::min(0.7F * all.width, ui_.px(760.0F));
  const auto lines = lines_of(ui_.fonts.text, text, room - ui_.px(40.0F), 4);
  float wide = 0.0F;
  for (const std::string& line : lines) wide = std::max(wide, width_of(ui_.fonts.text, line));
  const float row = line_of(ui_.fonts.text);
  const float high = row * static_cast<float>(lines.size()) + ui_.px(20.0F) + (fault ? row : 0.0F);
  const Rectangle at{std::round(0.5F * (all.width - wide)) - ui_.px(20.0F), ui_.px(96.0F), wide + ui_.px(40.0F), high};
  pane_begin("notice", at, colour(ui_.palette->pane), true);
  ImGui::GetWindowDrawList()->AddRect({at.x, at.y}, {at.x + at.width, at.y + high},
                                      colour(fault ? ui_.palette->text : ui_.palette->bar_line));
  float y = at.y + ui_.px(10.0F);
  for (const std::string& line : lines) {
    write(ui_.fonts.text, at.x + ui_.px(20.0F), y, ui_.text(), line);
    y += row;
  }
  if (fault) write(ui_.fonts.small, at.x + ui_.px(20.0F), y, ui_.quiet(), "Escape puts this away.");
  pane_end();
}

void Screen::draw(std::vector<Chord> chords, double now) {
  now_ = now;
  ui_.palette = &palette(session_.settings.dark);
  set_style(*ui_.palette, ui_.scale);
  ui_.chords = std::move(chords);
  ui_.typing = ImGui::GetIO().WantTextInput;
  const ImVec2 size = ImGui::GetIO().DisplaySize;
  const Rectangle all{0.0F, 0.0F, size.x, size.y};
  const Page page = session_.page;
  const bool covered = page != Page::none && page != Page::findings;
  ui_.stops.begin();
  if (page != Page::open) open_.closed();
  if (page != Page::help) help_.closed();
  if (page != Page::steps) mounting_.closed();
  if (page != Page::shortlist) shortlist_.closed();
  if (covered) {
    // What lies below is drawn, but out of reach for the keyboard as it is for the mouse.
    Stops kept = std::exchange(ui_.stops, {});
    std::vector<Chord> held = std::exchange(ui_.chords, {});
    draw_panes(all, now);
    ui_.stops = std::move(kept);
    ui_.chords = std::move(held);
    draw_page(all);
  } else {
    draw_panes(all, now);
  }
  draw_notice(all);
  dispatch();
  ui_.stops.end();
}

}  // namespace baywright::viewer
