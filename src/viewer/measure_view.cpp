#include "viewer/measure_view.h"

#include "build/part_face.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace baywright::viewer {

namespace {

constexpr float pick_reach = 6.0F;  // pixels in which edges and holes are preferred to a face

/// Holes that parts have and their solids do not show: those of boards, and those of panels and bay floors.
std::vector<HoleAxis> holes_of(const Shown& shown) {
  std::vector<HoleAxis> out;
  for (std::size_t i = 0; i < shown.build.parts.size(); ++i) {
    const parts::Part& part = shown.build.parts[i].part;
    const geometry::Pose& pose = shown.host.parts[i].frame.pose;
    const std::vector<double> values = parts::nominal_values(part);
    for (const parts::Hole& hole : part.holes)
      for (const bool up : {false, true})
        out.push_back({pose.point({hole.x, hole.y, parts::outer_face(part, 2, up).at(values)}),
                       pose.direction({0.0, 0.0, up ? 1.0 : -1.0}), hole.diameter});
  }
  for (const build::Place& place : shown.build.places) {
    const auto* bay = std::get_if<build::Bay>(&place.socket);
    if (bay == nullptr || !bay->fixing || bay->fixing->side) continue;
    const auto at = static_cast<std::size_t>(&place - shown.build.places.data());
    const geometry::Pose& pose = shown.host.places[at].frame.pose;  // x across, y along the drive, z out of the face
    for (std::size_t i = 0; i < bay->fixing->holes.size(); ++i) {
      const auto [along, right] = bay->fixing->middle(i);
      out.push_back({pose.point({right, along, 0.0}), pose.turn[2], bay->fixing->width(i).nominal});
    }
  }
  return out;
}

const render::Thing* thing_of(const Shown& shown, int element) {
  const auto found = std::find_if(shown.model.things.begin(), shown.model.things.end(),
                                  [&](const render::Thing& each) { return each.element == element; });
  return found == shown.model.things.end() ? nullptr : &*found;
}

std::string name_of(const render::Thing& thing) {
  return thing.body.empty() || thing.body == thing.part ? thing.part : thing.body + " of " + thing.part;
}

/// "2: 9.10 mm apart".
std::string headline(const KeptMeasurement& kept) {
  return std::to_string(kept.number) + ": " + words_of(kept.measurement, kept.picked[0], kept.picked[1]).front();
}

ImVec2 on_screen(const geometry::Vec2& p) {
  return {static_cast<float>(p.x), static_cast<float>(p.y)};
}

}  // namespace

void MeasureView::leave() {
  *this = {};
}

float MeasureView::height(const Ui& ui) const {
  return ui.px(168.0F + 26.0F * static_cast<float>(measurements_.kept().size()));
}

/// Another build, or the same one changed: what was picked is no longer there.
void MeasureView::look(const Session& session) {
  if (of_ == session.seen()) return;
  leave();
  of_ = session.seen();
  if (of_) holes_ = holes_of(*of_);
}

std::optional<Picked> MeasureView::under(const Session& session, const SceneView& view) const {
  const ImVec2 mouse = ImGui::GetIO().MousePos;
  const auto ray = view.ray(mouse.x, mouse.y);
  const double eye = view.camera.distance();
  const Sight sight{ray.from, ray.along, std::isfinite(eye) ? -eye : -std::numeric_limits<double>::max()};
  const auto met = [&](const render::Thing& thing) {
    auto out = pick(thing.placed, sight, static_cast<double>(pick_reach) * view.per_pixel(), holes_);
    if (out) out->element = thing.element;
    return out;
  };
  if (!view.over) return std::nullopt;
  if (const render::Thing* thing = view.pointed ? thing_of(view.shown, *view.pointed) : nullptr) return met(*thing);
  // What is seen through is not told by the picture: the nearest that is shown.
  const std::set<std::string> hidden = session.looking.not_shown(view.shown.model);
  std::optional<Picked> best;
  for (const render::Thing& thing : view.shown.model.things) {
    if (hidden.contains(thing.part)) continue;
    auto found = met(thing);
    if (found && (!best || glm::dot(found->at - best->at, sight.along) < 0.0)) best = std::move(found);
  }
  return best;
}

bool MeasureView::clicked(Session& session, const SceneView& view) {
  look(session);
  auto found = under(session, view);
  if (!found) return true;
  std::string name = name_of(*thing_of(view.shown, found->element)) + ", " + words_of(*found);
  if (!measurements_.pick(std::move(*found), std::move(name)))
    session.say("Three measurements are kept: clear one (Delete takes the newest) to measure another.");
  return true;
}

void MeasureView::draw_pick(Ui& ui, const SceneView& view, const Picked& picked, bool sure) const {
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const ImU32 rim = colour(ui.palette->scene);
  const auto line = [&](const geometry::Vec3& a, const geometry::Vec3& b) {
    const geometry::Vec2 from = view.pixel(a);
    const geometry::Vec2 to = view.pixel(b);
    if (!std::isfinite(from.x) || !std::isfinite(to.x)) return;
    if (sure) list.AddLine(on_screen(from), on_screen(to), rim, ui.px(4.5F));
    list.AddLine(on_screen(from), on_screen(to), sure ? ui.text() : ui.quiet(), ui.px(sure ? 2.5F : 1.5F));
  };
  for (const auto& [a, b] : picked.outline) line(a, b);
  if (!sure) return;
  const ImVec2 at = on_screen(view.pixel(picked.at));
  list.AddCircleFilled(at, ui.px(5.0F), rim);
  list.AddCircleFilled(at, ui.px(3.5F), ui.text());
}

void MeasureView::draw_dimension(Ui& ui, const SceneView& view, const KeptMeasurement& kept,
                                 std::vector<Rectangle>& taken) const {
  const geometry::Vec2 a = view.pixel(kept.measurement.from);
  const geometry::Vec2 b = view.pixel(kept.measurement.to);
  if (!std::isfinite(a.x) || !std::isfinite(b.x)) return;
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const double length = glm::distance(a, b);
  const geometry::Vec2 along = length > 1e-6 ? (b - a) / length : geometry::Vec2(1.0, 0.0);
  const geometry::Vec2 tick = static_cast<double>(ui.px(6.0F)) * geometry::Vec2(-along.y, along.x);
  const auto line = [&](const geometry::Vec2& p, const geometry::Vec2& q) {
    list.AddLine(on_screen(p), on_screen(q), colour(ui.palette->scene), ui.px(4.5F));
    list.AddLine(on_screen(p), on_screen(q), ui.text(), ui.px(2.0F));
  };
  line(a, b);
  for (const geometry::Vec2& end : {a, b}) line(end - tick, end + tick);
  const std::string figure = headline(kept);
  const float wide = width_of(ui.fonts.bold, figure);
  const float high = line_of(ui.fonts.bold);
  const geometry::Vec2 middle = 0.5 * (a + b);
  // Beside its line, wholly in the picture, and below another figure that stands there.
  const float room_x = std::max(view.at.x + ui.px(8.0F), view.at.x + view.at.width - wide - ui.px(14.0F));
  const float room_y = std::max(view.at.y + ui.px(6.0F), view.at.y + view.at.height - high - ui.px(8.0F));
  const float x = std::clamp(static_cast<float>(middle.x) + ui.px(14.0F), view.at.x + ui.px(8.0F), room_x);
  float y = std::clamp(static_cast<float>(middle.y) - 0.5F * high, view.at.y + ui.px(6.0F), room_y);
  for (const Rectangle& other : taken)
    if (x < other.x + other.width && other.x < x + wide && y < other.y + other.height && other.y < y + high)
      y = std::min(other.y + other.height, room_y);
  const Rectangle box{x - ui.px(6.0F), y - ui.px(3.0F), wide + ui.px(12.0F), high + ui.px(6.0F)};
  list.AddRectFilled({box.x, box.y}, {box.x + box.width, box.y + box.height}, colour(ui.palette->scene, 0.92F),
                     ui.px(4.0F));
  list.AddRect({box.x, box.y}, {box.x + box.width, box.y + box.height}, colour(ui.palette->bar_line), ui.px(4.0F));
  write(ui.fonts.bold, x, y, ui.text(), figure);
  taken.push_back({x, y, wide, high + ui.px(10.0F)});
}

void MeasureView::paint(Ui& ui, Session& session, const SceneView& view) {
  look(session);
  if (!ui.typing && ui.took({"Delete"})) measurements_.back();
  ImDrawList& list = *ImGui::GetWindowDrawList();
  list.PushClipRect({view.at.x, view.at.y}, {view.at.x + view.at.width, view.at.y + view.at.height}, true);
  for (const HoleAxis& hole : holes_) {
    // Seen from its side of the sheet only; what lies before it is not asked, so it is drawn faint.
    const geometry::Vec3 sight =
        view.ray(static_cast<float>(view.pixel(hole.at).x), static_cast<float>(view.pixel(hole.at).y)).along;
    if (!(glm::dot(sight, hole.axis) < -0.1)) continue;
    const geometry::Vec3 x = geometry::square_to(hole.axis);
    const geometry::Vec3 y = glm::cross(hole.axis, x);
    for (int i = 0; i < 24; ++i) {
      const double turn = 0.2617993877991494 * i;
      list.PathLineTo(on_screen(view.pixel(hole.at + 0.5 * hole.diameter * (std::cos(turn) * x + std::sin(turn) * y))));
    }
    list.PathStroke(colour(ui.palette->quiet, 0.7F), ImDrawFlags_Closed, ui.px(1.0F));
  }
  if (const auto found = under(session, view)) draw_pick(ui, view, *found, false);
  for (const KeptMeasurement& kept : measurements_.kept())
    for (const Picked& each : kept.picked) draw_pick(ui, view, each, true);
  if (measurements_.first()) draw_pick(ui, view, *measurements_.first(), true);
  std::vector<Rectangle> taken;
  for (const KeptMeasurement& kept : measurements_.kept()) draw_dimension(ui, view, kept, taken);
  list.PopClipRect();
}

void MeasureView::draw_words(Ui& ui, const Session& session, const Rectangle& at) {
  look(session);
  pane_begin("measure", at, colour(ui.palette->pane));
  ImDrawList& list = *ImGui::GetWindowDrawList();
  list.AddLine({at.x, at.y + 0.5F}, {at.x + at.width, at.y + 0.5F}, colour(ui.palette->line));
  list.AddLine({at.x + at.width - 0.5F, at.y}, {at.x + at.width - 0.5F, at.y + at.height}, colour(ui.palette->line));
  const float edge = ui.px(20.0F);
  const float room = at.width - 2.0F * edge;
  const float end = at.y + at.height - ui.px(8.0F);
  float y = at.y + ui.px(8.0F);
  const auto say = [&](const ImFont* font, ImU32 ink, const std::string& text, int most) {
    const int lines = std::min(most, static_cast<int>((end - y) / line_of(font)));
    if (lines > 0) y += write_lines(font, at.x + edge, y, ink, text, room, lines) + ui.px(1.0F);
  };
  for (const KeptMeasurement& kept : measurements_.kept()) {
    const bool full = kept.number == measurements_.looked_at();
    const std::string number = std::to_string(kept.number);
    const float word = width_of(ui.fonts.small, "clear") + ui.px(14.0F);
    float word_x = at.x + at.width - edge - word + ui.px(7.0F);
    if (word_button(ui, "clear " + number, word_x, y - ui.px(3.0F), "clear", false).chosen) {
      measurements_.clear(kept.number);
      break;
    }
    const Rectangle box{at.x + edge - ui.px(6.0F), y - ui.px(3.0F), room - word, ui.px(26.0F)};
    if (touch(ui, "measured " + number, box).chosen) measurements_.look_at(kept.number);
    write(full ? ui.fonts.bold : ui.fonts.text, at.x + edge, y, ui.text(), headline(kept), room - word);
    y += ui.px(26.0F);
    if (!full) continue;
    const auto words = words_of(kept.measurement, kept.picked[0], kept.picked[1]);
    for (std::size_t i = 1; i < words.size(); ++i) say(ui.fonts.small, ui.text(), words[i], 2);
    for (std::size_t i = 0; i < kept.names.size(); ++i)
      say(ui.fonts.small, ui.quiet(), (i == 0 ? "from " : "to ") + kept.names[i], 2);
    y += ui.px(4.0F);
  }
  const std::size_t count = measurements_.kept().size();
  if (measurements_.first()) {
    say(ui.fonts.small_bold, ui.text(), "From " + measurements_.first_name(), 2);
    say(ui.fonts.small, ui.quiet(), "Now the second one.", 1);
  } else if (count == 0) {
    say(ui.fonts.small_bold, ui.text(), "Measure", 1);
    say(ui.fonts.small, ui.quiet(), "Click a face, an edge or a hole, then another one. Escape leaves.", 2);
  } else {
    say(ui.fonts.small, ui.quiet(),
        count < Measurements::most ? "Click two more to measure again. Delete clears the newest."
                                   : "Three are kept. Clear one to measure another.",
        2);
  }
  pane_end();
}

}  // namespace baywright::viewer
