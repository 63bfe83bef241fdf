#include "viewer/foot_pane.h"

#include "output/plan_words.h"
#include "tolerance/reading.h"
#include "viewer/plan_words.h"

#include <algorithm>
#include <cmath>

namespace baywright::viewer {

namespace {

/// To a hundredth, never more than there is; what would then be nothing is said in full.
std::string at_least(double mm) {
  const double down = std::floor(mm * 100.0 + 1e-6) / 100.0;
  return tolerance::in_words(down > 0.0 ? down : mm);
}

}  // namespace

void FootPane::draw(Ui& ui, Session& session, const Rectangle& at) {
  pane_begin("foot", at, colour(ui.palette->band));
  if (session.shown() && at.height >= 1.0F) {
    ImGui::GetWindowDrawList()->AddLine({at.x, at.y + 0.5F}, {at.x + at.width, at.y + 0.5F}, colour(ui.palette->line));
    const float edge = ui.px(24.0F);
    const Rectangle inner{at.x + edge, at.y + ui.px(10.0F), at.width - 2.0F * edge, at.height - ui.px(22.0F)};
    const plans::Search* search = session.search();
    if (session.shown()->seating.verdict == fit::Verdict::fits && !session.tried())
      draw_room(ui, session, inner);
    else if (search != nullptr)
      draw_tiles(ui, session, *search, inner);
    else if (session.rest().plans)
      write_lines(ui.fonts.text, inner.x, inner.y, ui.text(), std::get<parts::Fault>(*session.rest().plans).text(),
                  inner.width, 3);
    else
      write(ui.fonts.bold, inner.x, inner.y, ui.quiet(), "Looking for what would make it fit \u2026", inner.width);
  }
  pane_end();
}

void FootPane::draw_tiles(Ui& ui, Session& session, const plans::Search& search, const Rectangle& at) {
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const float heading = line_of(ui.fonts.bold) + ui.px(4.0F);
  if (search.plans.empty()) {
    write(ui.fonts.bold, at.x, at.y, ui.text(), "Nothing that was tried makes it fit", at.width);
    std::string why = search.contradiction ? output::say(*search.contradiction) : std::string();
    if (!search.whole) why += " The search was cut short.";
    write_lines(ui.fonts.text, at.x, at.y + heading, ui.quiet(), why, at.width, 3);
    pointed_ = false;
    return;
  }
  write(ui.fonts.bold, at.x, at.y, ui.text(),
        search.whole ? "What would make it fit" : "What would make it fit (the search was cut short)", at.width);

  const float gap = ui.px(12.0F);
  const std::size_t count = search.plans.size();
  const auto fit_in = std::max<std::size_t>(1, static_cast<std::size_t>((at.width + gap) / (ui.px(210.0F) + gap)));
  const std::size_t shown = std::min(count, fit_in);
  if (session.tried() && *session.tried() < first_) first_ = *session.tried();
  if (session.tried() && *session.tried() >= first_ + shown) first_ = *session.tried() + 1 - shown;
  first_ = std::min(first_, count - shown);
  const std::size_t left = count - first_ - shown;
  float x_words = at.x + at.width - ui.px(150.0F);  // the others by words, at the right of the heading
  if (first_ > 0 &&
      word_button(ui, "tiles before", x_words, at.y - ui.px(4.0F), std::to_string(first_) + " before", false).chosen)
    --first_;
  if (left > 0 &&
      word_button(ui, "tiles after", x_words, at.y - ui.px(4.0F), std::to_string(left) + " more", false).chosen)
    ++first_;

  const float wide = std::min(ui.px(300.0F), (at.width + gap) / static_cast<float>(shown) - gap);
  bool any = false;
  for (std::size_t i = first_; i < first_ + shown; ++i) {
    const plans::Plan& plan = search.plans[i];
    const Rectangle tile{at.x + static_cast<float>(i - first_) * (wide + gap), at.y + heading, wide,
                         at.height - heading};
    const Touch touched = touch(ui, "plan " + std::to_string(i), tile);
    const bool on = session.tried() == i;
    const ImVec2 low{tile.x, tile.y};
    const ImVec2 high{tile.x + tile.width, tile.y + tile.height};
    list.AddRectFilled(low, high, colour(on ? ui.palette->raised : ui.palette->pane), ui.px(6.0F));
    list.AddRect(low, high, on ? ui.text() : colour(ui.palette->line), ui.px(6.0F), 0, ui.px(on ? 1.5F : 1.0F));
    const TileWords words = words_of(plan);
    draw_mark(ui, plan.after.verdict, tile.x + ui.px(12.0F), tile.y + ui.px(10.0F), ui.px(20.0F));
    const float x = tile.x + ui.px(42.0F);
    const float room = tile.width - ui.px(52.0F);
    const float row = line_of(ui.fonts.small);
    float y = tile.y + ui.px(7.0F);
    // The change takes what lines the result and the price leave.
    const int lines = std::clamp(static_cast<int>((tile.height - ui.px(12.0F)) / row) - 2, 1, 4);
    y += write_lines(ui.fonts.small_bold, x, y, ui.text(), words.change, room, lines);
    if (y + row <= tile.y + tile.height) write(ui.fonts.small, x, y, ui.text(), words.result, room);
    y += row;
    if (y + row <= tile.y + tile.height) write(ui.fonts.small, x, y, ui.quiet(), words.price, room);
    if (touched.chosen) {
      session.apply_plan(i);
      pointed_ = false;
      return;  // the plans are of the build as it was
    }
    if (touched.pointed || touched.stood_on) {
      session.try_plan(i);
      any = true;
    }
  }
  if (pointed_ && !any) session.try_plan(std::nullopt);
  pointed_ = any;
}

void FootPane::draw_room(Ui& ui, const Session& session, const Rectangle& at) {
  const fit::Seating& seating = session.shown()->seating;
  write(ui.fonts.bold, at.x, at.y, ui.text(), "How much room is left", at.width);
  float y = at.y + line_of(ui.fonts.bold) + ui.px(6.0F);
  const auto say = [&](const std::string& what, const std::string& figure) {
    if (y + line_of(ui.fonts.text) > at.y + at.height + ui.px(6.0F)) return;
    const float wide = write(ui.fonts.bold, at.x, y, ui.text(), figure, at.width);
    write(ui.fonts.text, at.x + wide + ui.px(10.0F), y, ui.quiet(), what, at.width - wide - ui.px(10.0F));
    y += line_of(ui.fonts.text) + ui.px(2.0F);
  };
  if (seating.deciding) {
    const fit::GapFigures& gap = *seating.findings[*seating.deciding].gap;
    say("to spare at worst, beyond the " + tolerance::in_words(gap.asked) + " asked",
        std::isfinite(gap.min) ? at_least(gap.min - gap.asked) + " mm" : "not known");
  } else {
    say("nothing comes near it", "no gap decides");
  }
  if (!session.rest().tallest) return say("asking for the tallest heatsink", "\u2026");
  if (const auto& tallest = *session.rest().tallest)
    say("is the tallest heatsink of the same foot; " + tolerance::in_words(tallest->now) + " now, against " +
            tallest->against,
        at_least(tallest->height) + " mm");
}

}  // namespace baywright::viewer
