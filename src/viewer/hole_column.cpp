#include "viewer/hole_column.h"

#include <algorithm>
#include <array>
#include <utility>

namespace baywright::viewer {

namespace {

constexpr float least_row = 24.0F;  // pixels at scale 1

/// Where the cells of a row begin, as shares of its width: number, x, y, hole, meets, edge.
constexpr std::array<float, 6> cells = {0.0F, 0.08F, 0.25F, 0.42F, 0.62F, 0.85F};
/// Of a narrow column, whose rows have two lines: number, x, y, edge; below them hole and what it meets.
constexpr std::array<float, 4> narrow_cells = {0.0F, 0.12F, 0.42F, 0.74F};

bool narrow(const Ui& ui, const Rectangle& at) {
  return at.width < ui.px(270.0F);
}

}  // namespace

void HoleColumn::update(const Session& session, const Placing& placing) {
  if (of_ == session.shown()) return;
  of_ = session.shown();
  const HolePlan& plan = *placing.plan();
  std::vector<HoleRow> all = hole_rows(plan, *of_);
  rows_.clear();
  for (const HoleRow& head : all) {
    if (plan.marks[head.mark].kind != HoleMark::Kind::place) continue;
    rows_.push_back(head);
    for (const HoleRow& row : all)
      if (plan.marks[row.mark].number > 0 && plan.marks[row.mark].place == plan.marks[head.mark].place)
        rows_.push_back(row);
  }
  for (const HoleRow& row : all)  // the part's own, whatever they are called
    if (std::none_of(rows_.begin(), rows_.end(), [&](const HoleRow& each) { return each.mark == row.mark; }))
      rows_.push_back(row);
  words_ = hole_words(plan, *of_);
  if (std::exchange(place_, of_->choice.place) == of_->choice.place) return;
  for (first_ = 0; first_ + 1 < rows_.size() && !plan.marks[rows_[first_].mark].chosen;) ++first_;
}

void HoleColumn::draw(Ui& ui, Session& session, Placing& placing, const Rectangle& at) {
  pane_begin("hole table", at, colour(ui.palette->pane));
  if (at.width >= 1.0F && placing.plan() != nullptr) {
    update(session, placing);
    const float edge = ui.px(20.0F);
    const Rectangle inner{at.x + edge, at.y + ui.px(12.0F), at.width - 2.0F * edge, at.height - ui.px(22.0F)};
    write(ui.fonts.small_bold, inner.x, inner.y, ui.text(), "Holes of " + placing.plan()->part, inner.width);
    float y = inner.y + line_of(ui.fonts.small);
    y += write_lines(ui.fonts.small, inner.x, y, ui.quiet(),
                     "mm from its left and lower edge; a place is its connector end", inner.width, 3) +
         ui.px(6.0F);
    y += draw_table(ui, session, placing, {inner.x, y, inner.width, inner.y + inner.height - y}) + ui.px(8.0F);
    draw_words(ui, placing, {inner.x, y, inner.width, inner.y + inner.height - y});
  }
  ImGui::GetWindowDrawList()->AddLine({at.x + at.width - 0.5F, at.y}, {at.x + at.width - 0.5F, at.y + at.height},
                                      colour(ui.palette->line));
  pane_end();
}

float HoleColumn::draw_table(Ui& ui, Session& session, Placing& placing, const Rectangle& at) {
  const bool two_lines = narrow(ui, at);
  const float line = line_of(ui.fonts.small);
  const float head = line + ui.px(6.0F);
  const auto title = [&](float share, const char* text) {
    write(ui.fonts.small_bold, at.x + share * at.width, at.y, ui.text(), text);
  };
  if (two_lines) {
    title(narrow_cells[1], "x");
    title(narrow_cells[2], "y");
    title(narrow_cells[3], "edge");
  } else {
    title(cells[1], "x");
    title(cells[2], "y");
    title(cells[3], "hole");
    title(cells[4], "meets");
    title(cells[5], "edge");
  }
  ImGui::GetWindowDrawList()->AddLine({at.x, at.y + head - ui.px(3.0F)}, {at.x + at.width, at.y + head - ui.px(3.0F)},
                                      colour(ui.palette->line));
  const float row = two_lines ? 2.0F * line + ui.px(6.0F) : std::max(ui.px(least_row), line + ui.px(4.0F));
  // The table takes what it needs, but leaves room for what was found.
  const float room = std::max(row, at.height - head - std::max(0.3F * at.height, ui.px(76.0F)));
  const std::size_t fits = std::max<std::size_t>(1, static_cast<std::size_t>(room / row));
  const std::size_t most = rows_.size() > fits ? rows_.size() - fits : 0;
  const ImVec2 mouse = ImGui::GetIO().MousePos;
  const bool over = mouse.x >= at.x && mouse.x < at.x + at.width && mouse.y >= at.y && mouse.y < at.y + at.height;
  const float wheel = over && session.page == Page::none ? ImGui::GetIO().MouseWheel : 0.0F;
  if (wheel > 0.0F && first_ > 0) --first_;
  if (wheel < 0.0F) ++first_;
  if (placing.chosen() != followed_) {
    followed_ = placing.chosen();
    for (std::size_t i = 0; i < rows_.size(); ++i)
      if (followed_ == rows_[i].mark) first_ = i < first_ ? i : i >= first_ + fits ? i + 1 - fits : first_;
  }
  first_ = std::min(first_, most);
  float y = at.y + head;
  for (std::size_t i = first_; i < std::min(rows_.size(), first_ + fits); ++i, y += row)
    draw_row(ui, session, placing, rows_[i], {at.x, y, at.width, row}, two_lines);
  if (most == 0) return y - at.y;
  float x = at.x - ui.px(7.0F);
  if (first_ > 0 && word_button(ui, "rows above", x, y, std::to_string(first_) + " above", false).chosen) --first_;
  if (first_ < most && word_button(ui, "rows below", x, y, std::to_string(most - first_) + " more below", false).chosen)
    ++first_;
  return y + ui.px(26.0F) - at.y;
}

void HoleColumn::draw_row(Ui& ui, Session& session, Placing& placing, const HoleRow& row, const Rectangle& at,
                          bool two_lines) {
  const HolePlan& plan = *placing.plan();
  if (row.mark >= plan.marks.size()) return;
  const HoleMark& mark = plan.marks[row.mark];
  const bool on = placing.chosen() == row.mark;
  const float line = line_of(ui.fonts.small);
  const float top = two_lines ? at.y + ui.px(2.0F) : at.y + 0.5F * (at.height - line);
  if (on)
    ImGui::GetWindowDrawList()->AddRectFilled({at.x - ui.px(6.0F), at.y},
                                              {at.x + at.width + ui.px(6.0F), at.y + at.height},
                                              colour(ui.palette->raised), ui.px(3.0F));
  const auto cell = [&](std::size_t i) {
    return at.x + (two_lines ? narrow_cells[std::min<std::size_t>(i, 3)] : cells[i]) * at.width;
  };
  const ImU32 ink = mark.chosen || on ? ui.text() : ui.quiet();
  if (mark.kind == HoleMark::Kind::place) {
    // Its name, then its two figures where those of the holes stand.
    const float from = two_lines ? at.x : cell(3);
    write(mark.chosen ? ui.fonts.small_bold : ui.fonts.small, from, top, ink, mark.name, at.x + at.width - from);
  } else {
    write(ui.fonts.small_bold, at.x, top, ink, row.number);
    const ImU32 warn = row.short_of.empty() ? ink : ui.text();
    const float mark_size = ui.px(12.0F);
    const float edge_x = cell(two_lines ? 3 : 5);
    if (!row.short_of.empty())
      draw_mark(ui, fit::Verdict::marginal, edge_x - mark_size - ui.px(3.0F), top + ui.px(2.0F), mark_size);
    write(row.short_of.empty() ? ui.fonts.small : ui.fonts.small_bold, edge_x, top, warn, row.edge,
          at.x + at.width - edge_x);
    const bool nothing = row.meets_none;
    const ImFont* font = nothing ? ui.fonts.small_bold : ui.fonts.small;
    if (two_lines) {
      const std::string meets = row.meets.empty()                   ? ""
                                : mark.kind == HoleMark::Kind::hole ? ", meets " + row.meets
                                                                    : ", " + row.meets;
      write(font, cell(1), top + line, nothing ? ui.text() : ui.quiet(), row.size + meets, at.x + at.width - cell(1));
    } else {
      write(ui.fonts.small, cell(3), top, ink, row.size, cell(4) - cell(3) - ui.px(4.0F));
      write(font, cell(4), top, ink, row.meets, edge_x - cell(4) - ui.px(row.short_of.empty() ? 4.0F : 19.0F));
    }
  }
  for (int axis = 0; axis < 2; ++axis) {
    const float x = cell(static_cast<std::size_t>(axis) + 1);
    const float y = two_lines && mark.kind == HoleMark::Kind::place ? top + line : top;
    draw_cell(ui, session, placing, row, axis, x, y, cell(static_cast<std::size_t>(axis) + 2) - x - ui.px(4.0F));
  }
  const Touch touched =
      touch(ui, "hole row " + std::to_string(row.mark), {at.x - ui.px(4.0F), at.y, at.width + ui.px(8.0F), at.height});
  if (touched.chosen || touched.stood_on) placing.choose(row.mark);
}

void HoleColumn::draw_cell(Ui& ui, Session& session, Placing& placing, const HoleRow& row, int axis, float x, float y,
                           float room) {
  const HoleMark& mark = placing.plan()->marks[row.mark];
  const auto i = static_cast<std::size_t>(axis);
  if (types(row.mark, axis)) {
    const TextField::Outcome outcome = typing_->field.draw(ui, x - ui.px(4.0F), y - ui.px(4.0F), room + ui.px(6.0F));
    if (outcome == TextField::Outcome::typing) return;
    if (outcome == TextField::Outcome::entered)
      if (auto fault = placing.type(session, axis, typing_->field.text()))
        return typing_->field.refuse(std::move(*fault));
    typing_.reset();
    return;
  }
  write(ui.fonts.small, x, y, mark.chosen || placing.chosen() == row.mark ? ui.text() : ui.quiet(), row.at[i], room);
  if (!mark.moves()) return;
  const float width = std::min(width_of(ui.fonts.small, row.at[i]), room);
  const float under = y + line_of(ui.fonts.small);
  ImGui::GetWindowDrawList()->AddLine({x, under}, {x + width, under}, ui.quiet());  // it can be typed
  const Touch touched = touch(ui, "place figure " + std::to_string(row.mark) + (axis == 0 ? " x" : " y"),
                              {x - ui.px(3.0F), y - ui.px(3.0F), std::max(room, ui.px(24.0F)),
                               std::max(line_of(ui.fonts.small) + ui.px(6.0F), ui.px(24.0F))});
  if (touched.chosen || touched.stood_on) placing.choose(row.mark);
  if (touched.chosen) typing_ = Typing{row.mark, axis, TextField(row.at[i])};
  if (!touched.stood_on || typing_) return;
  if (std::string digit = typed_digit(ui); !digit.empty())
    typing_ = Typing{row.mark, axis, TextField(std::move(digit))};
}

void HoleColumn::draw_words(Ui& ui, const Placing& placing, const Rectangle& at) const {
  float y = at.y;
  const float line = line_of(ui.fonts.small);
  const float end = at.y + at.height;
  const auto say = [&](std::optional<fit::Verdict> verdict, const std::string& text, int most) {
    const int room = static_cast<int>((end - y) / line);
    if (room < 1) return;
    const float off = verdict ? ui.px(20.0F) : 0.0F;
    if (verdict) draw_mark(ui, *verdict, at.x, y + ui.px(1.0F), ui.px(13.0F));
    y += write_lines(ui.fonts.small, at.x + off, y, verdict ? ui.text() : ui.quiet(), text, at.width - off,
                     std::min(room, most)) +
         ui.px(5.0F);
  };
  if (typing_ && !typing_->field.fault().empty()) return say(fit::Verdict::does_not_fit, typing_->field.fault(), 4);
  const auto chosen = placing.chosen();
  if (!chosen && words_.empty())
    say({}, "Drag a mark in the plan, nudge it with the arrows, or click a figure and type it.", 3);
  // Of the chosen hole first.
  const std::string own = chosen ? "Hole " + std::to_string(placing.plan()->marks[*chosen].number) : "";
  const auto of_chosen = [&](const HoleWord& word) {
    return !own.empty() && (word.say.starts_with(own + ' ') || word.say.starts_with(own + ':'));
  };
  for (const bool first : {true, false})
    for (const HoleWord& word : words_)
      if (of_chosen(word) == first && y + line <= end) say(word.verdict, word.say, 4);
}

}  // namespace baywright::viewer
