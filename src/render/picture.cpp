#include "render/picture.h"

#include "output/lettering.h"
#include "output/mark.h"
#include "output/paint.h"
#include "render/palette.h"
#include "render/put_in.h"

#include <algorithm>
#include <cmath>

namespace baywright::render {

using geometry::Bounds;
using geometry::Vec2;
using geometry::Vec3;
using output::Area;
using output::Group;
using output::Text;

namespace {

/// The drive and its socket with some of what surrounds it; no more of the machine than there is. Where no drive is
/// seated more of it, so that the place is recognized.
Bounds near_drive(const Model& model) {
  const Vec3 size = model.drive.high - model.drive.low;
  const bool seated =
      std::any_of(model.things.begin(), model.things.end(), [](const Thing& each) { return each.drive; });
  const double margin = (seated ? 0.12 : 1.0) * std::max({size.x, size.y, size.z});
  return {glm::max(model.drive.low - Vec3(margin), model.bounds.low),
          glm::min(model.drive.high + Vec3(margin), model.bounds.high)};
}

/// Square on the plane, true to scale, with the drive in the middle.
Camera square_on(const geometry::View& view, const Bounds& room, double aspect) {
  constexpr double margin = 1.12;
  Camera out;
  out.perspective = false;
  out.toward = view.normal();
  out.up = view.up;
  Vec2 low(1e300);
  Vec2 high(-1e300);
  for (int i = 0; i < 8; ++i) {
    low = glm::min(low, view.flat(room.corner(i)));
    high = glm::max(high, view.flat(room.corner(i)));
  }
  const Vec2 middle = 0.5 * (low + high);
  out.target = view.point + view.right * middle.x + view.up * middle.y;
  out.height = margin * std::max(high.y - low.y, (high.x - low.x) / aspect);
  return out;
}

double band_scale(int width, int height) {
  // Letters keep their size down to where the band would fill the picture.
  const double least = std::min({1.0, width / 480.0, height / 300.0});
  return std::clamp(std::min(width / 1280.0, height / 640.0), least, 3.0);
}

/// Mark, word and sentence; the sentence in two lines at most, with what is looked at on the right.
Group band(const output::Answer& answer, int width, int height, double scale, const Palette& colours, bool dark) {
  Group out;
  out.name = "answer";
  const auto px = [scale](double at_scale_1) { return scale * at_scale_1; };
  const double high = height;
  Area plate;
  plate.outlines = {{{0.0, 0.0}, {static_cast<double>(width), 0.0}, {static_cast<double>(width), high}, {0.0, high}}};
  plate.colour = colours.band;
  out.add(std::move(plate));
  out.add(
      output::Line{{{0.0, high - 0.5}, {static_cast<double>(width), high - 0.5}}, false, {1.0, colours.edge, false}});
  output::draw_mark(out, answer.verdict, {px(20.0), px(22.0)}, px(40.0), dark);
  const double left = px(78.0);
  const double right = width - px(20.0);
  out.add(Text{{left, px(37.0)}, answer.word, px(22.0), output::Anchor::start, true, false, false, colours.ink});
  const double after = left + output::text_width(answer.word, px(22.0), true) + px(24.0);
  if (right - after > px(60.0))
    out.add(Text{{right, px(37.0)},
                 output::shortened(answer.what, right - after, px(15.0), true),
                 px(15.0),
                 output::Anchor::end,
                 true,
                 false,
                 false,
                 colours.ink});
  double size = 16.0;
  if (output::text_width(answer.sentence, px(size)) > right - left) size = 14.0;
  double y = px(60.0);
  for (std::string& line : output::broken(answer.sentence, right - left, px(size), 2)) {
    out.add(Text{{left, y}, std::move(line), px(size), output::Anchor::start, false, false, false, colours.ink});
    y += px(18.0);
  }
  return out;
}

Group shifted(Group notes, double down) {
  for (output::Item& item : notes.items) {
    if (auto* line = std::get_if<output::Line>(&item.drawn))
      for (Vec2& p : line->points) p.y += down;
    if (auto* area = std::get_if<Area>(&item.drawn))
      for (output::Outline& outline : area->outlines)
        for (Vec2& p : outline) p.y += down;
    if (auto* disc = std::get_if<output::Disc>(&item.drawn)) disc->centre.y += down;
    if (auto* text = std::get_if<Text>(&item.drawn)) text->at.y += down;
    if (auto* group = std::get_if<Group>(&item.drawn)) *group = shifted(std::move(*group), down);
  }
  return notes;
}

}  // namespace

int band_height(int width, int height) {
  return std::min(height / 2, static_cast<int>(std::lround(88.0 * band_scale(width, height))));
}

Look look_at(const Model& model, const fit::Seating& seating, const Wish& wish, double aspect) {
  Look out;
  out.dark = wish.dark;
  out.clearance_of = wish.clearance_of;
  out.apart = wish.apart ? 1.0 : 0.0;
  // What is taken apart is shown both where it stands and where it goes.
  const Bounds room = out.apart > 0.0 ? grown(near_drive(model), model, out.apart, 1.0) : near_drive(model);
  out.camera = facing(wish.side.value_or(Side::whole), model.place, room, aspect);
  // A card that stands up is seen from its component side.
  const bool upright = std::abs(glm::dot(model.face, model.place.turn[2])) < 0.5;
  if (!wish.side && upright && glm::dot(model.face, out.camera.toward) < 0.0)
    out.camera = turned(out.camera, model.place.turn[2], 90.0, 0.0);
  if (wish.section) {
    out.cut = cut_through(model, seating, std::nullopt);
    if (!wish.side) out.camera = square_on(*out.cut, room, aspect);
  }
  return out;
}

std::variant<Image, std::string> picture_of(Canvas& canvas, const Model& model, const Look& asked,
                                            const output::Answer& answer, int width, int height) {
  Look look = asked;
  look.scale = band_scale(width, height);
  const int top = band_height(width, height);
  canvas.draw(frame_of(model, look), width, height - top);
  const Image below = canvas.read();
  Image out{width, height,
            std::vector<std::uint8_t>(static_cast<std::size_t>(width) * static_cast<std::size_t>(top) * 4, 255)};
  out.rgba.insert(out.rgba.end(), below.rgba.begin(), below.rgba.end());
  Group all;
  all.add(shifted(notes_on(model, look, width, height - top), top));
  all.add(band(answer, width, top, look.scale, palette(look.dark), look.dark));
  if (auto fault = output::paint_over(out.rgba, width, height, all)) return *fault;
  return out;
}

}  // namespace baywright::render
