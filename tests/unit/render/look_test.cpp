// What a frame holds for a way of looking.
#include "render/look.h"

#include "geometry/section.h"
#include "render/picture.h"
#include "render/rounding.h"
#include "support/shown_build.h"

#include <cmath>
#include <doctest/doctest.h>
#include <set>

using namespace baywright;
using geometry::Vec3;

namespace {

struct Thin {
  std::unique_ptr<test::ShownBuild> shown = test::shown_build("thin-desktop", "card with tall fins");
  render::Model model = render::model_of(shown->build, shown->seated, shown->seating);

  [[nodiscard]] render::Look look(const render::Wish& wish) const {
    return render::look_at(model, shown->seating, wish, 1.6);
  }
  [[nodiscard]] std::uint32_t id(const std::string& part, const std::string& body) const {
    for (const auto& thing : model.things)
      if (thing.part == part && thing.body == body) return static_cast<std::uint32_t>(thing.element + 1);
    return 0;
  }
};

const render::Surface* surface(const render::Frame& frame, std::uint32_t id) {
  for (const auto& each : frame.surfaces)
    if (each.id == id) return &each;
  return nullptr;
}

/// Things that are seen through: they are not to be picked.
int glass(const render::Frame& frame) {
  int out = 0;
  for (const auto& each : frame.surfaces) out += !each.over && each.id == 0 && each.colour.cover < 0.5F ? 1 : 0;
  return out;
}

int over(const render::Frame& frame) {
  int out = 0;
  for (const auto& each : frame.surfaces) out += each.over ? 1 : 0;
  return out;
}

double area_of(const render::Mesh& mesh) {
  const auto at = [&](std::size_t i) { return Vec3(mesh.at[i][0], mesh.at[i][1], mesh.at[i][2]); };
  double out = 0.0;
  for (std::size_t i = 0; i + 2 < mesh.at.size(); i += 3)
    out += 0.5 * glm::length(glm::cross(at(i + 1) - at(i), at(i + 2) - at(i)));
  return out;
}

}  // namespace

TEST_CASE("a tray before the drive is glass unless it is chosen, and a hidden part is not there") {
  const Thin thin;
  const std::uint32_t tray = thin.id("tray", "tray");
  const std::uint32_t board = thin.id("board", "board");
  render::Look look = thin.look({});
  render::Frame frame = render::frame_of(thin.model, look);
  CHECK(glass(frame) == 1);
  CHECK(surface(frame, tray) == nullptr);
  REQUIRE(surface(frame, board) != nullptr);
  CHECK(surface(frame, board)->colour.cover == 1.0F);
  look.chosen = static_cast<int>(tray) - 1;
  frame = render::frame_of(thin.model, look);
  CHECK(glass(frame) == 0);
  CHECK(surface(frame, tray) != nullptr);
  look.chosen.reset();
  look.hidden.insert("tray");
  frame = render::frame_of(thin.model, look);
  CHECK(glass(frame) == 0);
  CHECK(surface(frame, tray) == nullptr);
  look.ghosted.insert("board");
  CHECK(glass(render::frame_of(thin.model, look)) == 1);
}

TEST_CASE("overlaps lie over everything with the grid of what does not fit, and only where things stand in place") {
  const Thin thin;
  render::Look look = thin.look({});
  const render::Frame frame = render::frame_of(thin.model, look);
  CHECK(over(frame) == 9);
  for (const auto& each : frame.surfaces)
    if (each.over) CHECK(each.pattern == render::Pattern::grid);
  look.finding = 1;  // a gap that is clear
  CHECK(over(render::frame_of(thin.model, look)) == 0);
  CHECK(over(render::frame_of(thin.model, thin.look({{}, false, true, {}, false}))) == 0);
  look = thin.look({});
  look.put_in = 0.4;
  CHECK(over(render::frame_of(thin.model, look)) == 0);
}

TEST_CASE("caps have the area of the exact cut, and neighbours differ in their hatch") {
  const Thin thin;
  const render::Look look = thin.look({{}, true, false, {}, false});
  REQUIRE(look.cut.has_value());
  const render::Frame frame = render::frame_of(thin.model, look);
  REQUIRE(frame.plane.has_value());
  int caps = 0;
  for (const auto& thing : thin.model.things) {
    double cut = 0.0;
    for (const auto& region : geometry::section(thing.placed, *look.cut)) cut += geometry::area(region);
    double drawn = 0.0;
    for (const auto& each : frame.surfaces)
      if (each.id == static_cast<std::uint32_t>(thing.element + 1) && !each.cut) drawn += area_of(*each.mesh);
    CAPTURE(thing.part);
    CAPTURE(thing.body);
    CHECK(std::abs(drawn - cut) < 1e-3 + 1e-5 * cut);
    caps += cut > 0.0 ? 1 : 0;
  }
  CHECK(caps >= 8);  // board, tray, socket, card, chips, pad, heatsink's base and a fin
}

TEST_CASE("a clearance map has the distance's colour at every corner and ends at what it found") {
  const Thin thin;
  render::Wish wish;
  wish.clearance_of = "tray";
  const render::Frame frame = render::frame_of(thin.model, thin.look(wish));
  const render::Surface* tray = surface(frame, thin.id("tray", "tray"));
  REQUIRE(tray != nullptr);
  REQUIRE(tray->mesh->colour.size() == tray->mesh->at.size());
  CHECK(tray->mesh->at.size() > 3000);
  // Within the fins it is at the near end; 50 mm beside the card nothing but the board is near, 9.1 mm away.
  float darkest = 1.0F;
  for (std::size_t i = 0; i < tray->mesh->at.size(); ++i) darkest = std::min(darkest, tray->mesh->colour[i].green);
  CHECK(darkest < 0.15F);
}

TEST_CASE("letters over a picture keep in it and apart from each other at every size") {
  const Thin thin;
  for (const auto& [width, height] : {std::pair(1280, 712), {640, 340}, {1920, 1000}, {400, 400}})
    for (const bool section : {false, true}) {
      CAPTURE(width);
      CAPTURE(section);
      render::Wish wish;
      wish.section = section;
      render::Look look = thin.look(wish);
      look.scale = width < 1000 ? 0.75 : 1.0;
      const output::Group notes = render::notes_on(thin.model, look, width, height);
      std::vector<output::Box> boxes;
      for (const auto& item : notes.items) {
        const auto* text = std::get_if<output::Text>(&item.drawn);
        if (text == nullptr) continue;
        CHECK(text->size >= 13.0 * look.scale - 1e-9);
        const output::Box box = output::box_of(*text);
        CHECK(box.low.x >= 0.0);
        CHECK(box.low.y >= 0.0);
        CHECK(box.high.x <= width);
        CHECK(box.high.y <= height);
        for (const output::Box& other : boxes) {
          const bool apart = box.low.x >= other.high.x || other.low.x >= box.high.x || box.low.y >= other.high.y ||
                             other.low.y >= box.high.y;
          CHECK(apart);
        }
        boxes.push_back(box);
      }
      CHECK(boxes.size() >= (section ? 4 : 3));  // a section has a scale bar, too
    }
}

TEST_CASE("scales are 1, 2 or 5 times a power of ten") {
  const struct {
    double value, up, down;
  } rows[] = {{1.0, 1.0, 1.0},  {1.1, 2.0, 1.0},    {0.3, 0.5, 0.2},
              {7.0, 10.0, 5.0}, {50.0, 50.0, 50.0}, {2000.1, 5000.0, 2000.0}};
  for (const auto& row : rows) {
    CHECK(std::abs(render::rounded_up(row.value) - row.up) < 1e-12 * row.up);
    CHECK(std::abs(render::rounded_down(row.value) - row.down) < 1e-12 * row.down);
  }
  CHECK(render::rounded_up(std::nan("")) == 1.0);
  CHECK(render::rounded_down(0.0) == 1.0);
}
