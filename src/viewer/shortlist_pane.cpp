#include "viewer/shortlist_pane.h"

#include "output/words.h"

#include <algorithm>
#include <cmath>

namespace baywright::viewer {

namespace {

std::string id_of(std::size_t offer) {
  return "offer " + std::to_string(offer);
}

/// What the list is in order by, of the columns that can be chosen.
value::Column order_of(const plans::Buying& buying) {
  return buying.by.column.value_or(value::Column::per_gigabyte);
}

}  // namespace

void ShortlistPane::update(const Session& session) {
  const plans::Buying* buying = session.buying();
  if (buying == nullptr) {
    *this = {};
    return;
  }
  if (!session.buying_waits() && of_ == session.rest().buying && by_ == buying->by.column) return;
  of_ = session.rest().buying;
  by_ = buying->by.column;
  heads_ = output::rank_columns(*buying);
  cells_.clear();
  for (std::size_t i = 0; i < buying->offers.size(); ++i) cells_.push_back(output::rank_cells(*buying, i));
  answer_ = output::rank_answer(*buying);
  if (const std::string unused = output::unused_columns(*buying); !unused.empty()) answer_.push_back(unused);
}

void ShortlistPane::take_keys(Ui& ui, Session& session, float row) {
  const plans::Buying& buying = *session.buying();
  if (!at_ || *at_ >= buying.offers.size()) at_ = buying.choice.taken ? *buying.choice.taken : buying.order.front();
  if (!ui.stops.at().starts_with("offer ")) return;
  std::size_t place = 0;
  while (place + 1 < buying.order.size() && buying.order[place] != *at_) ++place;
  std::size_t to = place;
  if (ui.took({"Up"}) && to > 0) --to;
  if (ui.took({"Down"}) && to + 1 < buying.order.size()) ++to;
  if (ui.took({"Home"})) to = 0;
  if (ui.took({"End"})) to = buying.order.size() - 1;
  const auto brought = [&](std::size_t at) {
    scroll_.show(static_cast<float>(at) * row, static_cast<float>(at + 1) * row);
  };
  if (to != place) {
    at_ = buying.order[to];
    ui.stops.go(id_of(*at_));
    brought(to);
  }
  const int by = (ui.took({"Right"}) ? 1 : 0) - (ui.took({"Left"}) ? 1 : 0);
  if (by == 0) return;
  std::vector<value::Column> sortable;
  for (const output::RankColumn& head : heads_)
    if (head.sorts) sortable.push_back(*head.sorts);
  const auto now = std::find(sortable.begin(), sortable.end(), order_of(buying));
  const int count = static_cast<int>(sortable.size());
  const int next = (static_cast<int>(now - sortable.begin()) + by + count) % count;
  session.sort_by(sortable[static_cast<std::size_t>(next)]);
  const auto& order = session.buying()->order;
  brought(static_cast<std::size_t>(std::find(order.begin(), order.end(), *at_) - order.begin()));
}

ShortlistPane::Columns ShortlistPane::columns_in(const Ui& ui, const Rectangle& at) const {
  const float gap = ui.px(18.0F);
  Columns out;
  out.fit_room = std::min(ui.px(190.0F), 0.24F * at.width);
  out.fit = at.x + at.width - out.fit_room;
  float right = out.fit - ui.px(26.0F);
  out.right.assign(heads_.size(), 0.0F);
  for (std::size_t c = heads_.size() - 1; c-- > 1;) {
    float wide = width_of(ui.fonts.small_bold, heads_[c].heading);
    for (const auto& cells : cells_) wide = std::max(wide, width_of(ui.fonts.small, cells[c]));
    out.right[c] = right;
    right -= wide + gap;
  }
  out.name = at.x;
  out.name_above = right - at.x < ui.px(160.0F);
  out.name_room = std::max((out.name_above ? out.fit - ui.px(26.0F) : right) - at.x, 1.0F);
  return out;
}

float ShortlistPane::draw_answer(Ui& ui, const Session& session, const Rectangle& at, bool drawn) const {
  float y = at.y;
  const auto say = [&](const ImFont* font, ImU32 ink, const std::string& text, int most) {
    for (const std::string& line : lines_of(font, text, at.width, most)) {
      if (drawn) write(font, at.x, y, ink, line);
      y += line_of(font);
    }
    y += ui.px(3.0F);
  };
  if (session.buying_waits())
    say(ui.fonts.bold, ui.quiet(), session.document() ? "Trying each drive in the machine \u2026" : "Reading \u2026",
        1);
  else
    for (std::size_t i = 0; i < answer_.size(); ++i)
      say(i == 0 ? ui.fonts.bold : ui.fonts.small, i == 0 ? ui.text() : ui.quiet(), answer_[i], i == 0 ? 3 : 2);
  if (!session.document())
    say(ui.fonts.small, ui.text(), "No machine is open, so none was tried in one. Ctrl+O opens a build file.", 2);
  return y - at.y;
}

void ShortlistPane::draw_head(Ui& ui, Session& session, const Columns& columns, const Rectangle& at) {
  const value::Column by = order_of(*session.buying());
  for (std::size_t c = 0; c < heads_.size(); ++c) {
    const output::RankColumn& head = heads_[c];
    const bool on = head.sorts == by;
    const float side = ui.px(7.0F);  // of a word button
    float x = columns.right[c] + side - width_of(on ? ui.fonts.small_bold : ui.fonts.small, head.heading) - 2.0F * side;
    if (c == 0) x = columns.name - side;
    if (!head.sorts) {
      write(ui.fonts.small, columns.fit, at.y + ui.px(5.0F), ui.quiet(), head.heading, columns.fit_room);
      continue;
    }
    if (word_button(ui, "sort " + head.heading, x, at.y, head.heading, on).chosen) session.sort_by(*head.sorts);
  }
  ImGui::GetWindowDrawList()->AddLine({at.x, at.y + at.height - 1.0F}, {at.x + at.width, at.y + at.height - 1.0F},
                                      colour(ui.palette->line));
}

void ShortlistPane::draw_row(Ui& ui, const Session& session, const Columns& columns, std::size_t offer,
                             const Rectangle& at, bool lit) const {
  const plans::Buying& buying = *session.buying();
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const bool taken = !session.buying_waits() && buying.choice.taken == offer;
  if (lit)
    list.AddRectFilled({at.x - ui.px(8.0F), at.y}, {at.x + at.width + ui.px(8.0F), at.y + at.height},
                       colour(ui.palette->raised), ui.px(4.0F));
  const float line = line_of(ui.fonts.small);
  const float top = at.y + 0.5F * (at.height - 2.0F * line);
  const auto& cells = cells_[offer];
  const ImFont* font = taken ? ui.fonts.small_bold : ui.fonts.small;
  const std::string take = "the one to take";
  write(font, columns.name, top, ui.text(), cells[0] + (taken && columns.name_above ? ", " + take : ""),
        columns.name_room);
  if (taken && !columns.name_above) write(font, columns.name, top + line, ui.text(), take, columns.name_room);
  for (std::size_t c = 1; c + 1 < cells.size(); ++c)
    write_right(ui.fonts.small, columns.right[c], columns.name_above ? top + line : top, ui.text(), cells[c]);
  if (session.buying_waits()) {
    write(ui.fonts.small, columns.fit, top, ui.quiet(), session.document() ? "\u2026" : "-");
  } else if (const auto& tried = buying.tried[offer]) {
    const float size = ui.px(15.0F);
    draw_mark(ui, tried->seating.verdict, columns.fit, top + 0.5F * (line - size), size);
    write(ui.fonts.small_bold, columns.fit + ui.px(22.0F), top, ui.text(), cells.back(),
          columns.fit_room - ui.px(22.0F));
    const float room = columns.fit_room - ui.px(22.0F);
    const std::string place = "in " + tried->seating.place;
    const std::string more = place + "; a change would do";  // the details say which
    write(ui.fonts.small, columns.fit + ui.px(22.0F), top + line, ui.quiet(),
          tried->plan && width_of(ui.fonts.small, more) <= room ? more : place, room);
  } else {
    write(ui.fonts.small, columns.fit, top, ui.quiet(), session.document() ? "not tried" : "-");
  }
  list.AddLine({at.x, at.y + at.height}, {at.x + at.width, at.y + at.height}, colour(ui.palette->line));
}

void ShortlistPane::draw_rows(Ui& ui, Session& session, const Columns& columns, const Rectangle& at, float row) {
  const std::vector<std::size_t> order = session.buying()->order;  // a copy: choosing one changes it
  const float down =
      scroll_.take(ui, row * static_cast<float>(order.size()), {at.x, at.y, at.width + ui.px(16.0F), at.height});
  ImDrawList& list = *ImGui::GetWindowDrawList();
  list.PushClipRect({at.x - ui.px(10.0F), at.y}, {at.x + at.width + ui.px(10.0F), at.y + at.height + 1.0F}, true);
  const ImVec2 moved = ImGui::GetIO().MouseDelta;
  const bool mouse_moved = moved.x != 0.0F || moved.y != 0.0F;  // a mouse that lies still does not hold the keyboard up
  std::optional<std::size_t> chosen;
  std::optional<std::size_t> first;  // wholly in sight
  bool seen = false;                 // the one that is stood on
  for (std::size_t i = 0; i < order.size(); ++i) {
    const Rectangle box{at.x, std::round(at.y - down) + static_cast<float>(i) * row, at.width, row};
    if (box.y + row <= at.y || box.y >= at.y + at.height) continue;
    const bool whole = box.y >= at.y - 1.0F && box.y + row <= at.y + at.height + 1.0F;
    const bool lit = at_ == order[i];
    draw_row(ui, session, columns, order[i], box, lit);
    if (!whole) continue;
    if (!first) first = order[i];
    seen = seen || lit;
    const Touch touched = touch(ui, id_of(order[i]), {box.x - ui.px(8.0F), box.y, box.width + ui.px(16.0F), row});
    if (touched.pointed && mouse_moved) at_ = order[i];
    if (touched.stood_on && !mouse_moved) at_ = order[i];
    if (touched.chosen) chosen = order[i];
  }
  list.PopClipRect();
  if (ui.stops.at().empty() && first) ui.stops.go(id_of(seen ? *at_ : *first));
  if (chosen) session.seat_offer(*chosen);
}

void ShortlistPane::draw_details(Ui& ui, const Session& session, const Rectangle& at) const {
  const plans::Buying& buying = *session.buying();
  if (!at_ || *at_ >= buying.offers.size() || session.buying_waits()) return;
  const float line = line_of(ui.fonts.small);
  const std::vector<std::string> details = output::rank_details(buying, *at_);
  float y = at.y + line;
  std::size_t told = 0;
  for (; told < details.size(); ++told) {
    const auto lines = lines_of(ui.fonts.small, details[told], at.width, 4);
    if (y + line * static_cast<float>(lines.size()) > at.y + at.height) break;
    for (const std::string& each : lines) {
      write(ui.fonts.small, at.x, y, ui.text(), each);
      y += line;
    }
    y += ui.px(2.0F);
  }
  const float wide = write(ui.fonts.small_bold, at.x, at.y, ui.text(), buying.offers[*at_].name, 0.6F * at.width);
  if (told < details.size())
    write(ui.fonts.small, at.x + wide + ui.px(14.0F), at.y, ui.quiet(),
          std::to_string(details.size() - told) + " more to say than there is room for: Ctrl+C has all of it",
          at.width - wide - ui.px(14.0F));
}

void ShortlistPane::draw_title(Ui& ui, Session& session, const Rectangle& page, float edge) {
  const std::string name = session.shortlist() ? session.shortlist()->file.filename().string() : std::string();
  float x =
      page.x + page.width - edge - width_of(ui.fonts.small, "copy") - width_of(ui.fonts.small, "close") - ui.px(28.0F);
  write(ui.fonts.bold, page.x + edge, page.y + ui.px(16.0F), ui.quiet(), "Shortlist: " + name,
        x - page.x - edge - ui.px(20.0F));
  const bool able = enabled(Action::copy_answer, session.standing());
  if (word_button(ui, "copy shortlist", x, page.y + ui.px(12.0F), "copy", false, able).chosen)
    session.act(Action::copy_answer);
  if (word_button(ui, "close shortlist", x, page.y + ui.px(12.0F), "close", false).chosen) session.page = Page::none;
}

void ShortlistPane::draw(Ui& ui, Session& session, const Rectangle& screen) {
  const float edge = ui.px(28.0F);
  const float head = ui.px(50.0F);
  const float heads = ui.px(28.0F);  // of the columns
  const float foot = line_of(ui.fonts.small) + ui.px(22.0F);
  const float row = 2.0F * line_of(ui.fonts.small) + ui.px(10.0F);
  const float wide = std::min(ui.px(1180.0F), screen.width - ui.px(32.0F));
  update(session);
  const plans::Buying* buying = session.buying();
  const bool ready = buying != nullptr && !buying->order.empty();
  if (ready) take_keys(ui, session, row);
  update(session);
  const Rectangle unplaced{0.0F, 0.0F, wide - 2.0F * edge, 0.0F};
  const float answer = ready ? draw_answer(ui, session, unplaced, false) : 0.0F;
  const float all = ready ? row * static_cast<float>(buying->order.size()) : 0.0F;
  const float most = head + answer + heads + all + ui.px(190.0F) + foot;
  const Rectangle page = page_begin(ui, screen, wide, std::max(most, ui.px(300.0F)));
  const Rectangle inner{page.x + edge, page.y + head, page.width - 2.0F * edge, 0.0F};
  const float end = page.y + page.height - foot;
  draw_title(ui, session, page, edge);
  if (!ready) {
    const parts::Fault* fault = session.buying_fault();
    write_lines(ui.fonts.text, inner.x, inner.y, ui.text(),
                fault != nullptr         ? fault->text()
                : session.buying_waits() ? "Trying each drive \u2026"
                                         : "The list has no drives.",
                inner.width, 5);
    page_end();
    return;
  }
  draw_answer(ui, session, inner, true);
  const float head_y = inner.y + answer + ui.px(8.0F);
  const Columns columns = columns_in(ui, inner);
  draw_head(ui, session, columns, {inner.x, head_y, inner.width, heads});
  const float rows_y = head_y + heads;
  const float details = std::min(ui.px(170.0F), 0.4F * (end - rows_y));
  const float room = std::min(all, end - rows_y - details - ui.px(14.0F));
  const float rows_high = std::max(std::floor(room / row + 1e-3F), 1.0F) * row;  // whole rows
  draw_rows(ui, session, columns, {inner.x, rows_y, inner.width, rows_high}, row);
  if (session.page == Page::shortlist) {
    const float y = rows_y + rows_high + ui.px(14.0F);
    draw_details(ui, session, {inner.x, y, inner.width, end - y});
  }
  write(ui.fonts.small, inner.x, end + ui.px(8.0F), ui.quiet(),
        "Enter shows the drive in the machine. A heading, or Left and Right, puts the list in order. Ctrl+C copies it.",
        inner.width);
  page_end();
}

}  // namespace baywright::viewer
