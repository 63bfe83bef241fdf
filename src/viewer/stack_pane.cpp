#include "viewer/stack_pane.h"

#include "output/mark.h"
#include "output/words.h"
#include "render/camera.h"
#include "tolerance/reading.h"
#include "viewer/arrow_step.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <tuple>
#include <utility>

namespace baywright::viewer {

namespace {

constexpr int most_rows = 4;  // of what is in the chain and no band

std::string subject(const fit::Finding& finding) {
  const std::string first = output::subject(finding, 0);
  const std::string second = output::subject(finding, 1);
  if (first.empty() || second.empty()) return first + second;
  return first + " and " + second;
}

std::string plain(double value) {
  std::string text = tolerance::in_words(std::round(value * 1000.0) / 1000.0);
  return text;
}

}  // namespace

std::optional<Handle> StackPane::handle_of(const Session& session, const std::string& name) const {
  if (session.tried()) return std::nullopt;  // what is only shown is not changed
  for (const Handle& handle : session.handles())
    if (!handle.band.empty() && handle.band == name) return handle;
  return std::nullopt;
}

const fit::ChainLink* StackPane::link_of(const std::string& name) const {
  if (!of_ || !finding_) return nullptr;
  for (const fit::ChainLink& link : of_->seating.findings[*finding_].chain)
    if (link.dimension.name == name) return &link;
  return nullptr;
}

void StackPane::update(const Session& session) {
  if (of_ == session.seen() && finding_ == session.finding()) return;
  of_ = session.seen();
  finding_ = session.finding();
  column_ = {};
  if (!of_ || !finding_) return;
  column_ = output::stack_column(of_->seating.findings[*finding_], of_->seated);
  const render::Camera usual = render::facing(render::Side::whole, of_->model.place, of_->model.bounds, 1.0);
  down_ = glm::dot(column_.away, usual.up) < -0.1;
}

void StackPane::draw(Ui& ui, Session& session, const Rectangle& at) {
  update(session);
  pane_begin("stack", at, colour(ui.palette->pane));
  if (at.width >= 1.0F && of_) {
    const float edge = ui.px(16.0F);
    const Rectangle inner{at.x + edge, at.y + ui.px(12.0F), at.width - 2.0F * edge, at.height - ui.px(22.0F)};
    if (!finding_) {
      draw_questions(ui, session, inner);
    } else {
      const bool refused = !column_.refused.empty();
      write(ui.fonts.small_bold, inner.x, inner.y, ui.text(), refused ? "The chain" : "The stack, to scale",
            inner.width);
      const float heading = line_of(ui.fonts.small);
      write(ui.fonts.small, inner.x, inner.y + heading, ui.quiet(), subject(of_->seating.findings[*finding_]),
            inner.width);
      const float foot = draw_foot(ui, session, inner, true);
      const float top = 2.0F * heading + ui.px(10.0F);
      const Rectangle column{inner.x, inner.y + top, inner.width, inner.height - top - foot - ui.px(10.0F)};
      if (refused)
        draw_refused(ui, session, column);
      else
        draw_column(ui, session, column);
      draw_foot(ui, session, inner, false);
    }
  }
  ImGui::GetWindowDrawList()->AddLine({at.x + at.width - 0.5F, at.y}, {at.x + at.width - 0.5F, at.y + at.height},
                                      colour(ui.palette->line));
  pane_end();
}

// --- the column ---

void StackPane::draw_column(Ui& ui, Session& session, const Rectangle& at) {
  const float row = line_of(ui.fonts.small);
  const StackColumns columns = columns_of(at, ui.scale);
  LabelHeights heights;
  std::vector<Label> open;
  std::vector<Label> close;
  // As many lines as there is room for: names are whole before values are, and values before they go.
  bool short_gap = false;
  float sum = 0.0F;
  float other = 0.0F;
  for (const auto& [most_name, most_value, rows_of_gap] :
       {std::tuple{3, 2, 3}, std::tuple{2, 1, 3}, std::tuple{1, 1, 3}, std::tuple{1, 1, 1}}) {
    short_gap = rows_of_gap == 1;
    heights.gap = line_of(ui.fonts.bold) + static_cast<float>(rows_of_gap) * row + ui.px(4.0F);
    sum = heights.gap;
    other = 0.0F;
    open.clear(), close.clear(), heights.open.clear(), heights.close.clear();
    const auto label = [&](const output::Band& band, float room, int names, int values, std::vector<Label>& to,
                           std::vector<float>& height) {
      to.push_back(
          {lines_of(ui.fonts.small_bold, band.name, room, names), lines_of(ui.fonts.small, band.value, room, values)});
      height.push_back(row * static_cast<float>(to.back().name.size() + to.back().value.size()) + ui.px(3.0F));
      return height.back();
    };
    const bool few = column_.open.size() <= 2;  // then there is room at the left, however full the right is
    for (const output::Band& band : column_.open)
      other += label(band, columns.left, few ? 3 : most_name, few ? 2 : most_value, open, heights.open);
    for (const output::Band& band : column_.close)
      sum += label(band, columns.right_width, most_name, most_value, close, heights.close);
    if (std::max(sum, other) <= at.height) break;
  }
  // Where that is still too much, the shortest bands go without a label; a click on one names it below.
  const bool full = std::max(sum, other) > at.height;
  const Rectangle area{at.x, at.y, at.width, at.height - (full ? row : 0.0F)};
  int unnamed = 0;
  const auto thin_out = [&](const std::vector<output::Band>& bands, std::vector<Label>& labels,
                            std::vector<float>& high, float taken) {
    while (taken > area.height) {
      std::size_t least = bands.size();
      for (std::size_t i = 0; i < bands.size(); ++i)
        if (high[i] > 0.0F && (least == bands.size() || bands[i].length < bands[least].length)) least = i;
      if (least == bands.size()) return;
      taken -= std::exchange(high[least], 0.0F);
      labels[least] = {};
      ++unnamed;
    }
  };
  thin_out(column_.close, close, heights.close, sum);
  thin_out(column_.open, open, heights.open, other);
  const std::optional<float> hold = hand_ ? std::optional(hand_->per_mm) : std::nullopt;
  const StackLayout layout = layout_of(column_, area, ui.scale, down_, heights, hold);
  ImDrawList& list = *ImGui::GetWindowDrawList();
  list.PushClipRect({at.x - ui.px(8.0F), at.y - ui.px(6.0F)},
                    {at.x + at.width + ui.px(12.0F), at.y + at.height + ui.px(6.0F)}, true);
  for (const StackBox& box : layout.boxes)
    draw_band(ui, session, layout, box, columns, (box.open ? open : close)[box.band]);
  draw_gap(ui, layout, columns, short_gap);
  if (unnamed > 0)
    write_right(ui.fonts.small, at.x + at.width, at.y + at.height - row, ui.quiet(), std::to_string(unnamed) + " more",
                at.width);
  list.PopClipRect();
}

void StackPane::draw_band(Ui& ui, Session& session, const StackLayout& layout, const StackBox& box,
                          const StackColumns& columns, const Label& label) {
  const output::Band& band = (box.open ? column_.open : column_.close)[box.band];
  const std::optional<Handle> handle = handle_of(session, band.name);
  const fit::ChainLink* link = link_of(band.name);
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const Rectangle& r = box.at;
  const ImVec2 low{r.x, r.y};
  const ImVec2 high{r.x + r.width, r.y + r.height};
  const float row = line_of(ui.fonts.small);

  // A thin band is still 24 pixels to point at, with its label: the label is its larger target.
  const float label_x = box.open ? columns.narrow - ui.px(5.0F) - columns.left : columns.right;
  const float room = box.open ? columns.left : columns.right_width;
  const std::string id = "band " + band.name + (box.open ? " open " : " close ") + std::to_string(box.band);
  const Touch on_label =
      touch(ui, id, {label_x - ui.px(4.0F), box.label - ui.px(1.0F), room + ui.px(8.0F), box.label_height});
  const Touch on_bar = touch(ui, id + " bar", r, label.name.empty());  // what has no label is stood on itself
  const bool lit = on_label.pointed || on_bar.pointed || on_label.stood_on || on_bar.stood_on ||
                   (hand_ && handle && hand_->handle.path == handle->path);

  list.AddRectFilled(low, high, colour(box.band % 2 == 0 ? ui.palette->bar : ui.palette->other_bar));
  list.AddRect(low, high, lit ? ui.text() : colour(ui.palette->bar_line), 0.0F, 0, lit ? ui.px(2.0F) : ui.px(1.0F));
  // The limits as a whisker at the far end. An open side is dashed and has no cap.
  const float x = box.open ? r.x + 0.5F * r.width : r.x + ui.px(8.0F);
  const float outward = layout.down ? 1.0F : -1.0F;
  for (const auto& [limit, sign] : {std::pair{band.minus, -1.0F}, std::pair{band.plus, 1.0F}}) {
    if (!(limit > 0.0)) continue;
    const bool ends = std::isfinite(limit);
    const float length = ends ? layout.per_mm * static_cast<float>(std::min(limit, 1e4)) : ui.px(12.0F);
    const float to = box.end + sign * outward * length;
    if (ends) {
      list.AddLine({x, box.end}, {x, to}, ui.text(), ui.px(1.0F));
      list.AddLine({x - ui.px(3.0F), to}, {x + ui.px(3.0F), to}, ui.text(), ui.px(1.0F));
    } else {
      for (float done = 0.0F; done < length; done += ui.px(4.0F))
        list.AddLine({x, box.end + sign * outward * done},
                     {x, box.end + sign * outward * std::min(length, done + ui.px(2.0F))}, ui.text(), ui.px(1.0F));
    }
  }

  // Its label, with a leader where it had to give way.
  const float middle = r.y + 0.5F * r.height;
  const float label_middle = box.label + 0.5F * row;
  const float from = box.open ? columns.narrow - ui.px(4.0F) : columns.right - ui.px(3.0F);
  if (!label.name.empty())
    list.AddLine({from, label_middle}, {box.open ? r.x : r.x + r.width, middle}, colour(ui.palette->bar_line));
  float y = box.label;
  const auto write_line = [&](const ImFont* font, ImU32 ink, const std::string& line) {
    if (box.open)
      write_right(font, label_x + room, y, ink, line);
    else
      write(font, label_x, y, ink, line);
    y += row;
  };
  for (const std::string& line : label.name) write_line(ui.fonts.small_bold, ui.text(), line);
  if (handle && types(*handle))
    draw_field(ui, session, label_x, y - ui.px(3.0F), std::max(ui.px(92.0F), room));
  else
    for (const std::string& line : label.value) write_line(ui.fonts.small, ui.quiet(), line);
  if (handle && !label.value.empty()) {  // a line below says that this one can be changed
    const float width = width_of(ui.fonts.small, label.value.back());
    const float under = box.open ? label_x + room - width : label_x;
    list.AddLine({under, y}, {under + width, y}, ui.quiet());
  }

  if (on_label.chosen || on_bar.chosen || on_label.stood_on || on_bar.stood_on) {
    if (on_label.chosen && chosen_ == band.name && handle && on_label.stood_on)
      typing_ = Typing{*handle, TextField(plain(handle->nominal))};
    if (!(hand_ && hand_->moved)) chosen_ = band.name;
  }
  if (!handle) return;
  const double sensitivity = link == nullptr ? 1.0 : std::abs(link->sensitivity);
  hold(ui, session, on_bar, *handle, sensitivity, layout.down, layout.per_mm);
  hold(ui, session, on_label, *handle, sensitivity, layout.down, layout.per_mm);
}

void StackPane::hold(Ui& ui, Session& session, const Touch& touched, const Handle& handle, double sensitivity,
                     bool grows_down, float per_mm) {
  if (touched.twice) {
    session.cancel();
    hand_.reset();
    typing_ = Typing{handle, TextField(plain(handle.nominal))};
    return;
  }
  if (touched.pointed || touched.held) ImGui::SetMouseCursor(ImGuiMouseCursor_ResizeNS);
  const float mouse = ImGui::GetIO().MousePos.y;
  if (touched.held && !hand_) hand_ = Hand{handle, std::max(sensitivity, 0.05), mouse, per_mm, false};
  if (hand_ && hand_->handle.path == handle.path && touched.held) {
    const float by = (grows_down ? mouse - hand_->from_y : hand_->from_y - mouse);
    if (std::abs(by) > ui.px(3.0F)) hand_->moved = true;
    const double wanted = hand_->handle.nominal + static_cast<double>(by / hand_->per_mm) / hand_->sensitivity;
    // A hand is steadied to the step of the length.
    const double step = std::max(hand_->handle.step, 1e-3);
    if (hand_->moved) session.drag(hand_->handle, std::round(wanted / step) * step);
  }
  if (hand_ && hand_->handle.path == handle.path && touched.let_go) {
    session.commit();
    hand_.reset();
  }
  if (!touched.stood_on || typing_) return;
  if (const geometry::Vec2 by = arrow_step(ui); by != geometry::Vec2(0.0)) return session.nudge(handle, by.x + by.y);
  if (std::string digit = typed_digit(ui); !digit.empty()) typing_ = Typing{handle, TextField(std::move(digit))};
}

void StackPane::draw_gap(Ui& ui, const StackLayout& layout, const StackColumns& columns, bool short_label) {
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const ImU32 ink = colour(output::colour(column_.verdict, ui.palette->dark).c_str());
  if (layout.gap.height >= 1.0F) draw_pattern(ui, column_.verdict, column_.gap.nominal < 0.0, layout.gap);
  const float from = columns.narrow;
  const float to = layout.gap.x + layout.gap.width + ui.px(4.0F);
  list.AddLine({from, layout.base}, {to, layout.base}, ui.text(), ui.px(2.0F));
  list.AddLine({from, layout.open_end}, {to, layout.open_end}, ink, ui.px(2.0F));
  if (column_.gap.asked > 0.0)
    for (float x = from; x < to; x += ui.px(6.0F))
      list.AddLine({x, layout.asked}, {std::min(to, x + ui.px(3.0F)), layout.asked}, ui.text(), ui.px(1.0F));
  const auto words = [&](double gap) { return output::over_or_clear(gap, column_.gap.asked, column_.about); };
  const float room = columns.right_width;
  const float mark = ui.px(14.0F);
  float y = layout.gap_label;
  list.AddLine({layout.gap.x + layout.gap.width, layout.gap.y + 0.5F * layout.gap.height},
               {columns.right - ui.px(2.0F), y + 0.5F * line_of(ui.fonts.bold)}, ink);
  draw_mark(ui, column_.verdict, columns.right, y + ui.px(2.0F), mark);
  write(ui.fonts.bold, columns.right + mark + ui.px(6.0F), y, ui.text(), words(column_.gap.nominal),
        room - mark - ui.px(6.0F));
  y += line_of(ui.fonts.bold);
  const float row = line_of(ui.fonts.small);
  write(ui.fonts.small, columns.right, y, ui.quiet(), "worst " + words(column_.gap.min), room);
  if (short_label) return;
  write(ui.fonts.small, columns.right, y + row, ui.quiet(), "best " + words(column_.gap.max), room);
  write(ui.fonts.small, columns.right, y + 2.0F * row, ui.quiet(), "asked " + tolerance::in_words(column_.gap.asked),
        room);
}

// --- where there is no column ---

void StackPane::draw_refused(Ui& ui, Session& session, const Rectangle& at) {
  float y = at.y;
  const fit::Finding& finding = of_->seating.findings[*finding_];
  const auto words = [&](double gap) { return output::over_or_clear(gap, column_.gap.asked, column_.about); };
  draw_mark(ui, column_.verdict, at.x, y + ui.px(2.0F), ui.px(18.0F));
  write(ui.fonts.large, at.x + ui.px(26.0F), y, ui.text(), words(column_.gap.nominal), at.width - ui.px(26.0F));
  y += line_of(ui.fonts.large);
  for (const auto& [name, value] : {std::pair{"at worst ", column_.gap.min}, std::pair{"at best ", column_.gap.max}}) {
    write(ui.fonts.small, at.x + ui.px(26.0F), y, ui.quiet(), name + words(value), at.width - ui.px(26.0F));
    y += line_of(ui.fonts.small);
  }
  y += ui.px(10.0F);
  y += write_lines(ui.fonts.small, at.x, y, ui.quiet(), column_.refused, at.width, 4) + ui.px(10.0F);
  for (const fit::ChainLink& link : finding.chain) {
    if (y + 2.0F * line_of(ui.fonts.small) > at.y + at.height) break;
    const std::optional<Handle> handle = handle_of(session, link.dimension.name);
    const float row = line_of(ui.fonts.small);
    const Touch touched = touch(ui, "chain " + link.dimension.name,
                                {at.x - ui.px(4.0F), y, at.width + ui.px(8.0F), 2.0F * row + ui.px(2.0F)});
    if (touched.pointed || touched.stood_on)
      ImGui::GetWindowDrawList()->AddRectFilled({at.x - ui.px(4.0F), y},
                                                {at.x + at.width + ui.px(4.0F), y + 2.0F * row + ui.px(2.0F)},
                                                colour(ui.palette->raised), ui.px(3.0F));
    write(ui.fonts.small_bold, at.x, y, ui.text(), link.dimension.name, at.width);
    if (handle && types(*handle))
      draw_field(ui, session, at.x, y + row - ui.px(3.0F), at.width);
    else
      write(ui.fonts.small, at.x, y + row, ui.quiet(), tolerance::in_words(link.dimension), at.width);
    if (touched.chosen && handle && (touched.twice || chosen_ == link.dimension.name))
      typing_ = Typing{*handle, TextField(plain(handle->nominal))};
    if (touched.chosen || touched.stood_on) chosen_ = link.dimension.name;
    if (handle && touched.stood_on) hold(ui, session, {.stood_on = true}, *handle, 1.0, false, 1.0F);
    y += 2.0F * row + ui.px(6.0F);
  }
}

void StackPane::draw_questions(Ui& ui, const Session& session, const Rectangle& at) {
  const fit::Questions& questions = session.seen()->seating.questions;
  float y = at.y;
  write(ui.fonts.small_bold, at.x, y, ui.text(), "What the place asks", at.width);
  y += line_of(ui.fonts.small) + ui.px(12.0F);
  for (const auto& [name, question] :
       {std::pair{"form factor", &questions.form_factor}, std::pair{"interface", &questions.interface},
        std::pair{"bus", &questions.bus}}) {
    const auto verdict = question->answer == fit::Answer::yes ? fit::Verdict::fits : fit::Verdict::does_not_fit;
    draw_mark(ui, verdict, at.x, y + ui.px(2.0F), ui.px(14.0F));
    write(ui.fonts.small_bold, at.x + ui.px(22.0F), y, ui.text(),
          std::string(name) + ": " + output::word(question->answer), at.width - ui.px(22.0F));
    y += line_of(ui.fonts.small);
    y += write_lines(ui.fonts.small, at.x + ui.px(22.0F), y, ui.quiet(), output::say(question->why),
                     at.width - ui.px(22.0F), 4) +
         ui.px(10.0F);
  }
  if (!session.seen()->seating.findings.empty())
    write_lines(ui.fonts.small, at.x, at.y + at.height - 2.0F * line_of(ui.fonts.small), ui.quiet(),
                "The gaps are in the findings: L, then choose one to see its stack.", at.width, 2);
}

// --- below ---

float StackPane::draw_foot(Ui& ui, Session& session, const Rectangle& at, bool measure_only) {
  std::vector<std::pair<std::string, bool>> rows;  // text, bold
  const int room = at.height > ui.px(420.0F) ? most_rows : 1;
  if (column_.refused.empty() && !column_.aside.empty()) {
    const int count = static_cast<int>(column_.aside.size());
    for (int i = 0; i < std::min(count, room); ++i) {
      const bool more = i == room - 1 && count > room;
      rows.emplace_back(more ? std::to_string(count - i) + " more in the chain, not drawn"
                             : "and " + column_.aside[static_cast<std::size_t>(i)],
                        false);
    }
  }
  std::vector<std::string> source;
  if (typing_ && !typing_->field.fault().empty()) {
    source = lines_of(ui.fonts.small, typing_->field.fault(), at.width, 3);
  } else if (const fit::ChainLink* link = chosen_.empty() ? nullptr : link_of(chosen_)) {
    source = lines_of(ui.fonts.small,
                      link->dimension.name + ", " + tolerance::in_words(link->dimension) + ": " +
                          (link->dimension.source.empty() ? "no source given" : link->dimension.source) + " (" +
                          std::string(tolerance::word(link->dimension.known)) + ')',
                      at.width, 4);
  } else if (!session.handles().empty()) {
    source = lines_of(ui.fonts.small, "Drag a band or type a length; click it for its source.", at.width, 2);
  } else {
    source = lines_of(ui.fonts.small, "Click a band for its source.", at.width, 2);
  }
  const float row = line_of(ui.fonts.small);
  const float height = row * static_cast<float>(rows.size() + source.size()) + ui.px(rows.empty() ? 4.0F : 10.0F);
  if (measure_only) return height;
  float y = at.y + at.height - height;
  for (const auto& [text, bold] : rows) {
    write(bold ? ui.fonts.small_bold : ui.fonts.small, at.x, y, ui.quiet(), text, at.width);
    y += row;
  }
  y = at.y + at.height - row * static_cast<float>(source.size());
  for (const std::string& line : source) {
    write(ui.fonts.small, at.x, y, ui.quiet(), line, at.width);
    y += row;
  }
  return height;
}

void StackPane::draw_field(Ui& ui, Session& session, float x, float y, float room) {
  const TextField::Outcome outcome = typing_->field.draw(ui, x, y, room);
  if (outcome == TextField::Outcome::typing) return;
  if (outcome == TextField::Outcome::entered)
    if (auto fault = session.type(typing_->handle, typing_->field.text()))
      return typing_->field.refuse(std::move(*fault));
  typing_.reset();
}

}  // namespace baywright::viewer
