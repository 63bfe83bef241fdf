#include "viewer/hole_view.h"

#include "tolerance/reading.h"
#include "viewer/arrow_step.h"

#include <array>
#include <cmath>

namespace baywright::viewer {

namespace {

constexpr float ruler = 36.0F;        // pixels at scale 1: how broad they are
constexpr float rest_reach = 7.0F;    // pixels at scale 1 in which a mark comes to rest
constexpr float least_pitch = 36.0F;  // pixels at scale 1 between two figures of a ruler
constexpr float target = 24.0F;       // pixels at scale 1: the least that can be pointed at

std::string id_of(std::size_t mark) {
  return "mark " + std::to_string(mark);
}

ImVec2 on_screen(const Vec2& p) {
  return {static_cast<float>(p.x), static_cast<float>(p.y)};
}

/// The least of 1, 2, 5, 10 ... mm that is so many pixels.
double pitch_of(double pixels_a_mm, double least) {
  for (const double step : {1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0})
    if (step * pixels_a_mm >= least) return step;
  return 1000.0;
}

/// Letters with a rim of the background, so that they can be read over lines.
void write_over(Ui& ui, const ImFont* font, float x, float y, const std::string& text) {
  const float off = ui.px(1.0F);
  for (const auto& [dx, dy] : {std::pair{-off, 0.0F}, std::pair{off, 0.0F}, std::pair{0.0F, -off}, std::pair{0.0F, off},
                               std::pair{-off, -off}, std::pair{off, off}, std::pair{-off, off}, std::pair{off, -off}})
    write(font, x + dx, y + dy, colour(ui.palette->scene), text);
  write(font, x, y, ui.text(), text);
}

}  // namespace

void HoleView::adapt(render::Look& look, const Shown& shown) const {
  const HolePlan* plan = placing_->plan();
  if (plan == nullptr) return;
  look.cut.reset();
  look.apart = 0.0;
  look.put_in = 1.0;
  look.clearance_of.reset();
  look.chosen.reset();
  look.finding = shown.seating.findings.size();  // none of them: what runs into what is hidden stays hidden
  look.hidden.clear();
  for (const render::Thing& thing : shown.model.things) {
    if (thing.drive)
      look.ghosted.insert(thing.part);
    else if (thing.part != plan->part && !thing.part.ends_with(" socket"))
      look.hidden.insert(thing.part);
  }
}

Vec2 HoleView::pixel(const SceneView& view, const Vec2& flat) const {
  return view.pixel(placing_->plan()->pose.point({flat, 0.0}));
}

Vec2 HoleView::flat(const SceneView& view, float x, float y) const {
  const geometry::Pose back = placing_->plan()->pose.inverse();
  const auto ray = view.ray(x, y);
  const geometry::Vec3 from = back.point(ray.from);
  const geometry::Vec3 along = back.direction(ray.along);
  const double t = std::abs(along.z) > 1e-9 ? -from.z / along.z : 0.0;
  return Vec2(from + t * along);
}

void HoleView::take_arrows(Ui& ui, Session& session) {
  const std::string& at = ui.stops.at();
  const bool own = at.empty() || at.starts_with("mark ") || at.starts_with("hole row ") || at == "scene";
  if (ui.typing || !own || !placing_->chosen()) return;
  if (const Vec2 by = arrow_step(ui); by != Vec2(0.0)) placing_->nudge(session, by);
}

void HoleView::take(Ui& ui, Session& session, const SceneView& view) {
  if (placing_->plan() == nullptr) return;
  take_arrows(ui, session);
  const auto& marks = placing_->plan()->marks;
  const ImVec2 mouse = ImGui::GetIO().MousePos;
  bool held = false;
  // Holes before places, so that a hole near a place's own mark can be had.
  std::vector<std::size_t> order;
  for (const bool places : {false, true})
    for (std::size_t i = 0; i < marks.size(); ++i)
      if ((marks[i].kind == HoleMark::Kind::place) == places) order.push_back(i);
  for (const std::size_t i : order) {
    const HoleMark mark = placing_->plan()->marks[i];
    const Vec2 p = pixel(view, mark.at);
    const double half = std::max(0.5 * mark.diameter / view.per_pixel(), 0.5 * static_cast<double>(ui.px(target)));
    const Rectangle at{static_cast<float>(p.x - half), static_cast<float>(p.y - half), static_cast<float>(2.0 * half),
                       static_cast<float>(2.0 * half)};
    if (at.x < view.at.x || at.y < view.at.y || at.x + at.width > view.at.x + view.at.width ||
        at.y + at.height > view.at.y + view.at.height)
      continue;
    const Touch touched = touch(ui, id_of(i), at);
    if (touched.stood_on || touched.chosen || touched.held) placing_->choose(i);
    if (touched.pointed) ImGui::SetMouseCursor(mark.moves() ? ImGuiMouseCursor_ResizeAll : ImGuiMouseCursor_NotAllowed);
    if (touched.held) {
      held = true;
      if (!hand_) hand_ = Hand{flat(view, mouse.x, mouse.y), mark.at, mouse.x, mouse.y, false};
      if (std::hypot(mouse.x - hand_->x, mouse.y - hand_->y) > ui.px(3.0F)) hand_->moved = true;
      if (hand_->moved)
        placing_->drag(session, hand_->mark + flat(view, mouse.x, mouse.y) - hand_->from, ImGui::GetIO().KeyCtrl,
                       static_cast<double>(ui.px(rest_reach)) * view.per_pixel());
    }
  }
  if (hand_ && !held) {
    if (hand_->moved) placing_->let_go(session);
    hand_.reset();
  }
}

bool HoleView::clicked(Session&, const SceneView&) {
  placing_->choose(std::nullopt);
  return true;
}

void HoleView::draw_mark(Ui& ui, const SceneView& view, std::size_t index) const {
  const HoleMark& mark = placing_->plan()->marks[index];
  const Vec2 p = pixel(view, mark.at);
  const ImVec2 at = on_screen(p);
  const bool on = placing_->chosen() == index;
  const bool stood_on = ui.stops.at() == id_of(index);
  const ImU32 ink = mark.chosen || on ? ui.text() : ui.quiet();
  const float line = ui.px(on ? 2.0F : 1.2F);
  ImDrawList& list = *ImGui::GetWindowDrawList();
  float reach = ui.px(7.0F);
  if (mark.kind == HoleMark::Kind::place) {
    const float half = ui.px(5.0F);
    list.AddRectFilled({at.x - half, at.y - half}, {at.x + half, at.y + half}, colour(ui.palette->scene));
    list.AddRect({at.x - half, at.y - half}, {at.x + half, at.y + half}, ink, 0.0F, 0, line);
    write_over(ui, mark.chosen ? ui.fonts.small_bold : ui.fonts.small, at.x + half + ui.px(on ? 12.0F : 4.0F),
               at.y - 0.5F * line_of(ui.fonts.small), mark.name);
  } else {
    const float radius = std::max(static_cast<float>(0.5 * mark.diameter / view.per_pixel()), ui.px(3.0F));
    reach = radius + ui.px(4.0F);
    list.AddCircleFilled(at, radius, colour(ui.palette->scene));
    if (!mark.moves())
      for (int i = 0; i < 12; i += 2) {  // dashed: it does not move
        list.PathArcTo(at, radius, 0.5236F * static_cast<float>(i), 0.5236F * static_cast<float>(i + 1), 6);
        list.PathStroke(ink, 0, line);
      }
    else
      list.AddCircle(at, radius, ink, 0, line);
    list.AddLine({at.x - reach, at.y}, {at.x + reach, at.y}, ink, ui.px(1.0F));
    list.AddLine({at.x, at.y - reach}, {at.x, at.y + reach}, ink, ui.px(1.0F));
    write_over(ui, on || mark.chosen ? ui.fonts.small_bold : ui.fonts.small, at.x + radius + ui.px(3.0F),
               at.y - radius - line_of(ui.fonts.small) + ui.px(2.0F), std::to_string(mark.number));
  }
  if (on || stood_on) list.AddCircle(at, reach + ui.px(4.0F), colour(ui.palette->focus), 0, ui.px(1.5F));
}

void HoleView::draw_ruler(Ui& ui, const SceneView& view, bool level) const {
  const HolePlan& plan = *placing_->plan();
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const Rectangle& at = view.at;
  const float wide = ui.px(ruler);
  const ImVec2 low = level ? ImVec2{at.x, at.y + at.height - wide} : ImVec2{at.x, at.y};
  const ImVec2 high = level ? ImVec2{at.x + at.width, at.y + at.height} : ImVec2{at.x + wide, at.y + at.height - wide};
  list.AddRectFilled(low, high, colour(ui.palette->pane));
  list.AddLine(level ? low : ImVec2{high.x, low.y}, level ? ImVec2{high.x, low.y} : high, colour(ui.palette->line),
               ui.px(1.0F));
  list.PushClipRect(level ? ImVec2{low.x + wide, low.y} : low, high, true);
  const double pixels = 1.0 / view.per_pixel();
  const int axis = level ? 0 : 1;
  const double step = pitch_of(pixels, static_cast<double>(ui.px(level ? least_pitch : 30.0F)));
  const double small = step >= 5.0 ? step / 5.0 : step == 2.0 ? 1.0 : 0.5;
  const auto place = [&](double mm) {
    Vec2 p(0.0);
    p[axis] = mm;
    const Vec2 found = pixel(view, p);
    return static_cast<float>(level ? found.x : found.y);
  };
  const auto tick = [&](double mm, float length, ImU32 ink, float width) {
    const float q = place(mm);
    if (level)
      list.AddLine({q, low.y}, {q, low.y + length}, ink, width);
    else
      list.AddLine({high.x - length, q}, {high.x, q}, ink, width);
  };
  // Only along the part: beyond its edges nothing is measured.
  const int count = static_cast<int>(std::min(plan.size[axis] / small + 1e-6, 20000.0));
  for (int i = 0; i <= count; ++i) {
    const double mm = i * small;
    const bool written = std::abs(std::remainder(mm, step)) < 1e-6;
    tick(mm, ui.px(written ? 9.0F : 5.0F), ui.quiet(), ui.px(1.0F));
    if (!written) continue;
    const std::string text = std::to_string(std::lround(mm));
    const float width = width_of(ui.fonts.small, text);
    const float q = place(mm);
    if (level)
      write(ui.fonts.small, q - 0.5F * width, low.y + ui.px(10.0F), ui.quiet(), text);
    else
      write(ui.fonts.small, std::max(low.x + ui.px(1.0F), high.x - ui.px(11.0F) - width),
            q - 0.5F * line_of(ui.fonts.small) - ui.px(1.0F), ui.quiet(), text);
  }
  tick(plan.size[axis], ui.px(9.0F), ui.text(), ui.px(1.5F));
  tick(0.0, ui.px(9.0F), ui.text(), ui.px(1.5F));
  if (const auto chosen = placing_->chosen()) {
    const float q = place(plan.marks[*chosen].at[axis]);
    const float size = ui.px(6.0F);
    if (level)
      list.AddTriangleFilled({q, low.y}, {q - size, low.y + size}, {q + size, low.y + size}, ui.text());
    else
      list.AddTriangleFilled({high.x, q}, {high.x - size, q + size}, {high.x - size, q - size}, ui.text());
  }
  list.PopClipRect();
}

void HoleView::draw_rulers(Ui& ui, const SceneView& view) const {
  draw_ruler(ui, view, false);
  draw_ruler(ui, view, true);
  const float wide = ui.px(ruler);
  write(ui.fonts.small, view.at.x + ui.px(5.0F), view.at.y + view.at.height - 0.5F * (wide + line_of(ui.fonts.small)),
        ui.quiet(), "mm");
}

void HoleView::paint(Ui& ui, Session&, const SceneView& view) {
  const HolePlan* plan = placing_->plan();
  if (plan == nullptr) return;
  ImDrawList& list = *ImGui::GetWindowDrawList();
  list.PushClipRect({view.at.x, view.at.y}, {view.at.x + view.at.width, view.at.y + view.at.height}, true);
  for (const geometry::Outline& outline : plan->outline)
    for (std::size_t i = 0; i < outline.size(); ++i)
      list.AddLine(on_screen(pixel(view, outline[i])), on_screen(pixel(view, outline[(i + 1) % outline.size()])),
                   ui.quiet(), ui.px(1.0F));
  const auto dashed = [&](const Vec2& a, const Vec2& b) {
    const double length = glm::distance(a, b);
    const double dash = static_cast<double>(ui.px(8.0F));
    for (double done = 0.0; done < length && length > 0.0; done += 1.6 * dash)
      list.AddLine(on_screen(a + (b - a) * (done / length)),
                   on_screen(a + (b - a) * (std::min(length, done + dash) / length)), ui.text(), ui.px(1.0F));
  };
  if (plan->drilling)
    for (const auto& [from, to] : plan->drilling->bends) dashed(pixel(view, from), pixel(view, to));
  if (const auto& rests = placing_->rests()) {
    if (rests->x) dashed(pixel(view, {*rests->x, 0.0}), pixel(view, {*rests->x, plan->size.y}));
    if (rests->y) dashed(pixel(view, {0.0, *rests->y}), pixel(view, {plan->size.x, *rests->y}));
  }
  for (std::size_t i = 0; i < plan->marks.size(); ++i)
    if (placing_->chosen() != i) draw_mark(ui, view, i);
  if (const auto chosen = placing_->chosen()) draw_mark(ui, view, *chosen);
  draw_rulers(ui, view);
  // What is dragged says where it is and what holds it, at the top where no hand is.
  if (const auto chosen = placing_->chosen()) {
    const HoleMark& mark = plan->marks[*chosen];
    const std::string where = mark.name + ":  x " + tolerance::in_words(std::round(mark.at.x * 1e3) / 1e3) + "   y " +
                              tolerance::in_words(std::round(mark.at.y * 1e3) / 1e3);
    const float room = view.at.width - ui.px(ruler + 28.0F);
    const float x = view.at.x + ui.px(ruler + 14.0F);
    const auto lines = lines_of(ui.fonts.small, placing_->words(), room, 2);
    float wide = width_of(ui.fonts.bold, where);
    for (const std::string& line : lines) wide = std::max(wide, width_of(ui.fonts.small, line));
    const float high = line_of(ui.fonts.bold) + line_of(ui.fonts.small) * static_cast<float>(lines.size());
    list.AddRectFilled({x - ui.px(6.0F), view.at.y + ui.px(2.0F)},
                       {x + std::min(wide, room) + ui.px(6.0F), view.at.y + high + ui.px(8.0F)},
                       colour(ui.palette->scene, 0.9F), ui.px(4.0F));
    write(ui.fonts.bold, x, view.at.y + ui.px(4.0F), ui.text(), where, room);
    float y = view.at.y + ui.px(4.0F) + line_of(ui.fonts.bold);
    for (const std::string& line : lines) {
      write(ui.fonts.small, x, y, ui.quiet(), line, room);
      y += line_of(ui.fonts.small);
    }
  }
  list.PopClipRect();
}

}  // namespace baywright::viewer
