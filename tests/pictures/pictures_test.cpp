// Whole pictures against those that were looked at (golden/), and what a picture shows against what the geometry says.
#include "geometry/overlap.h"
#include "geometry/section.h"
#include "output/paint.h"
#include "render/offscreen.h"
#include "render/picture.h"
#include "support/png_picture.h"
#include "support/shown_build.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <doctest/doctest.h>
#include <filesystem>
#include <fstream>
#include <map>

using namespace baywright;
using geometry::Vec3;

namespace {

constexpr int width = 640;
constexpr int height = 400;

render::Canvas& canvas() {
  static auto made = render::Offscreen::make();
  if (const auto* fault = std::get_if<std::string>(&made)) FAIL(*fault);
  return std::get<render::Offscreen>(made).canvas();
}

struct Thin {
  std::unique_ptr<test::ShownBuild> shown = test::shown_build("thin-desktop", "card with tall fins");
  render::Model model = render::model_of(shown->build, shown->seated, shown->seating);

  [[nodiscard]] render::Look look(const render::Wish& wish) const {
    const double aspect = static_cast<double>(width) / (height - render::band_height(width, height));
    return render::look_at(model, shown->seating, wish, aspect);
  }
  [[nodiscard]] render::Image picture(const render::Look& look) const {
    const auto answer = output::answer_of(shown->seating, shown->build.method);
    auto drawn = render::picture_of(canvas(), model, look, answer, width, height);
    if (const auto* fault = std::get_if<std::string>(&drawn)) FAIL(*fault);
    return std::get<render::Image>(std::move(drawn));
  }
};

/// The share of pixels that differ by more than two levels in any channel; 1 for pictures of unequal size. Drivers
/// differ by one level on interpolated edges.
double differing(const render::Image& a, const render::Image& b, render::Image& difference) {
  difference = a;
  if (a.width != b.width || a.height != b.height) return 1.0;
  std::size_t count = 0;
  for (std::size_t i = 0; i < a.rgba.size(); i += 4) {
    int most = 0;
    for (std::size_t k = 0; k < 3; ++k) most = std::max(most, std::abs(a.rgba[i + k] - b.rgba[i + k]));
    if (most > 2) ++count;
    for (std::size_t k = 0; k < 3; ++k)
      difference.rgba[i + k] = static_cast<std::uint8_t>(most > 2 ? 0 : 200 + a.rgba[i + k] / 5);
  }
  return 4.0 * static_cast<double>(count) / static_cast<double>(a.rgba.size());
}

constexpr double allowed = 0.005;  // of the pixels

void write(const std::string& name, const render::Image& image) {
  std::ofstream(name, std::ios::binary) << output::to_png(image.rgba, image.width, image.height);
}

/// How far the picture is from the golden one of that name, as a share of its pixels.
double from_golden(const std::string& name, const render::Image& image) {
  const std::string golden = std::string(BAYWRIGHT_SOURCE) + "/tests/pictures/golden/" + name + ".png";
  const auto want = test::read_png(golden);
  render::Image difference;
  return want ? differing(image, *want, difference) : 1.0;
}

/// Beyond what is allowed the picture and what differs are left in the build folder.
void check_golden(const std::string& name, const render::Image& image) {
  const std::string golden = std::string(BAYWRIGHT_SOURCE) + "/tests/pictures/golden/" + name + ".png";
  const auto want = test::read_png(golden);
  render::Image difference = image;
  const double share = want ? differing(image, *want, difference) : 1.0;
  if (share > allowed) {
    write(name + ".actual.png", image);
    write(name + ".difference.png", difference);
  }
  INFO(name, ": ", 100.0 * share, " % of the pixels differ; see ", std::filesystem::current_path().string(), '/', name,
       ".actual.png and .difference.png; drawn by ", canvas().driver());
  CHECK(share <= allowed);
}

const render::Wish whole{};
const render::Wish section{{}, true, false, {}, false};
const render::Wish apart{{}, false, true, {}, false};

std::map<std::uint32_t, double> pixels(const render::Frame& frame, int across, int down) {
  canvas().draw(frame, across, down);
  std::map<std::uint32_t, double> out;
  for (const std::uint32_t id : canvas().read_ids().id) ++out[id];
  return out;
}

/// True to scale and a little askew, so that no edge runs along the pixels' rows.
render::Camera askew(render::Camera camera) {
  camera.up = glm::normalize(camera.up + 0.31 * camera.right());
  camera.perspective = false;
  return camera;
}

}  // namespace

TEST_CASE("pictures are as they were when they were looked at") {
  const Thin thin;
  check_golden("thin-desktop-whole", thin.picture(thin.look(whole)));
  check_golden("thin-desktop-section", thin.picture(thin.look(section)));
  check_golden("thin-desktop-apart", thin.picture(thin.look(apart)));
}

TEST_CASE("the comparison sees a part that is missing, a cut that is moved and a colour that is wrong") {
  const Thin thin;
  render::Look look = thin.look(whole);
  look.hidden.insert("pad");
  look.hidden.insert("tall fin heatsink");
  CHECK(from_golden("thin-desktop-whole", thin.picture(look)) > allowed);
  look = thin.look(section);
  look.cut->point += 1.5 * look.cut->normal();  // from the middle fin into the air beside it
  CHECK(from_golden("thin-desktop-section", thin.picture(look)) > allowed);
  Thin wrong;
  for (render::Thing& thing : wrong.model.things)
    if (thing.part == "tall fin heatsink") thing.material = render::Material::card;
  CHECK(from_golden("thin-desktop-apart", wrong.picture(wrong.look(apart))) > allowed);
}

TEST_CASE("a picture is the same twice") {
  const Thin thin;
  const render::Image first = thin.picture(thin.look(whole));
  (void)thin.picture(thin.look(section));
  CHECK((thin.picture(thin.look(whole)).rgba == first.rgba));
}

TEST_CASE("whole shows the drive at a useful size and apart shows each part of it") {
  const Thin thin;
  for (const render::Wish& wish : {whole, apart}) {
    const auto count = pixels(render::frame_of(thin.model, thin.look(wish)), width, height);
    double drive = 0.0;
    for (const render::Thing& thing : thin.model.things) {
      const auto found = count.find(static_cast<std::uint32_t>(thing.element + 1));
      const double own = found == count.end() ? 0.0 : found->second;
      CAPTURE(thing.part);
      CAPTURE(thing.body);
      if (thing.drive) drive += own;
      if (wish.apart && thing.drive && !thing.body.starts_with("fin")) CHECK(own > 0.0);
    }
    CHECK(drive > (wish.apart ? 0.05 : 0.1) * width * height);
  }
}

TEST_CASE("caps cover as many pixels as the exact cut has area") {
  const Thin thin;
  render::Look look = thin.look(section);
  look.camera = askew(look.camera);
  render::Frame frame = render::frame_of(thin.model, look);
  std::erase_if(frame.surfaces, [](const auto& each) { return each.cut || each.over; });
  constexpr int across = 1600;
  constexpr int down = 1000;
  const double pixel = std::pow(look.camera.height / down, 2);
  const auto count = pixels(frame, across, down);
  int compared = 0;
  for (const render::Thing& thing : thin.model.things) {
    if (!thing.drive) continue;  // the board and the tray go on beyond the picture
    double area = 0.0;
    for (const auto& region : geometry::section(thing.placed, *look.cut)) area += geometry::area(region);
    if (area < 5.0) continue;
    CAPTURE(thing.part);
    CAPTURE(thing.body);
    const auto found = count.find(static_cast<std::uint32_t>(thing.element + 1));
    REQUIRE(found != count.end());
    CHECK(std::abs(found->second * pixel - area) <= 0.01 * area);
    ++compared;
  }
  CHECK(compared >= 5);  // card, chips, pad, the heatsink's base and a fin
}

TEST_CASE("an overlap covers as many pixels from above as the two parts share") {
  const Thin thin;
  render::Look look = thin.look({render::Side::top, false, false, {}, false});
  look.camera = askew(look.camera);
  render::Frame frame = render::frame_of(thin.model, look);
  std::erase_if(frame.surfaces, [](const auto& each) { return !each.over; });
  REQUIRE(frame.surfaces.size() == 9);
  for (auto& each : frame.surfaces) each.id = 7;
  constexpr int across = 1600;
  constexpr int down = 1000;
  const double pixel = std::pow(look.camera.height / down, 2);
  double area = 0.0;
  for (const render::Overlap& overlap : thin.model.overlaps) {
    const auto& a = thin.shown->seated.scene.element(overlap.elements[0]);
    const auto& b = thin.shown->seated.scene.element(overlap.elements[1]);
    const Vec3 middle = 0.5 * (glm::max(a.bounds.low, b.bounds.low) + glm::min(a.bounds.high, b.bounds.high));
    for (const auto& region : geometry::overlap(a.placed, b.placed, {middle, {1, 0, 0}, {0, 1, 0}}))
      area += geometry::area(region);
  }
  REQUIRE(area > 500.0);
  CHECK(std::abs(pixels(frame, across, down)[7] * pixel - area) <= 0.01 * area);
}
