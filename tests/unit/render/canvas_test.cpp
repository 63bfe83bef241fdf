#include "render/canvas.h"

#include "render/offscreen.h"
#include "render/shape.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdlib>
#include <doctest/doctest.h>
#include <epoxy/gl.h>
#include <functional>
#include <new>
#include <numbers>

using namespace baywright::render;
using baywright::geometry::Bounds;
using baywright::geometry::Pose;
using baywright::geometry::Solid;
using baywright::geometry::Vec3;

namespace {

constexpr Colour white{1, 1, 1, 1};
constexpr Colour black{0, 0, 0, 1};
constexpr Colour blue{0x0B / 255.0F, 0x63 / 255.0F, 0xA5 / 255.0F, 1};
constexpr int width = 400;
constexpr int height = 300;

std::shared_ptr<const Mesh> box(const Vec3& size) {
  return shape_of({std::get<Solid>(Solid::box(size)), Pose{}}).mesh;
}

Surface flat(const Vec3& size, const Vec3& at, std::uint32_t id, const Colour& colour) {
  Surface surface;
  surface.mesh = box(size);
  surface.shift = at;
  surface.id = id;
  surface.colour = colour;
  surface.lit = false;
  return surface;
}

/// Looked at down z, true to scale: 2 pixels a millimetre, the origin in the middle.
Frame from_above(std::vector<Surface> surfaces) {
  Frame frame;
  frame.camera = {.height = height / 2.0, .perspective = false};
  frame.room = {{-100, -75, -50}, {100, 75, 50}};
  frame.background = white;
  frame.surfaces = std::move(surfaces);
  return frame;
}

bool same(const Image& image, int x, int y, const Colour& colour, int allowed = 0) {
  const std::uint8_t* pixel = &image.rgba[4 * static_cast<std::size_t>(y * image.width + x)];
  const auto near = [&](int i, float want) { return std::abs(pixel[i] - std::lround(want * 255.0F)) <= allowed; };
  return near(0, colour.red) && near(1, colour.green) && near(2, colour.blue) && pixel[3] == 255;
}

/// How many pixels have the colour.
int count(const Image& image, const Colour& colour) {
  int found = 0;
  for (int y = 0; y < image.height; ++y)
    for (int x = 0; x < image.width; ++x) found += same(image, x, y, colour) ? 1 : 0;
  return found;
}

int count(const Ids& ids, std::uint32_t id) {
  return static_cast<int>(std::count(ids.id.begin(), ids.id.end(), id));
}

/// Runs the test with a canvas. Where no driver is, says so for all to see, and checks the refusal instead.
void with_canvas(const std::function<void(Canvas&)>& test) {
  auto made = Offscreen::make();
  if (const auto* refusal = std::get_if<std::string>(&made)) {
    MESSAGE("NO PICTURES HERE, SO NOTHING OF THE CANVAS IS TESTED: ", *refusal);
    CHECK(refusal->find("libegl-mesa0") != std::string::npos);
    return;
  }
  Canvas& canvas = std::get<Offscreen>(made).canvas();
  CAPTURE(canvas.driver());
  test(canvas);
  CHECK(glGetError() == GL_NO_ERROR);
}

Image drawn(Canvas& canvas, const Frame& frame) {
  canvas.draw(frame, width, height);
  return canvas.read();
}

}  // namespace

TEST_CASE("a cube covers its face times the scale, in its own colour, and is where its number says") {
  with_canvas([](Canvas& canvas) {
    const Image image = drawn(canvas, from_above({flat({40, 30, 20}, {10, 5, 0}, 7, blue)}));
    CHECK(image.width == width);
    CHECK(image.height == height);
    CHECK(std::abs(count(image, blue) - 80 * 60) < 48);    // a hundredth
    CHECK(same(image, 200 + 20 + 3, 150 - 10 - 3, blue));  // its lower left corner: y goes up, rows go down
    CHECK(same(image, 200 + 20 - 3, 150 - 10 - 3, white));
    const Ids ids = canvas.read_ids();
    CHECK(std::abs(count(ids, 7) - 80 * 60) < 48);
    CHECK(count(ids, 7) + count(ids, 0) == width * height);
    CHECK(ids.id[(150 - 10 - 3) * width + 200 + 20 + 3] == 7);
  });
}

TEST_CASE("what is nearer hides what is behind, and what has no number hides only where it is opaque") {
  with_canvas([](Canvas& canvas) {
    Frame frame = from_above({flat({20, 20, 5}, {0, 0, 0}, 1, blue), flat({10, 20, 5}, {0, 0, 10}, 2, black),
                              flat({10, 10, 5}, {10, 0, 20}, 0, black)});
    CHECK(std::abs(count(drawn(canvas, frame), blue) - 400) < 8);
    Ids ids = canvas.read_ids();
    CHECK(std::abs(count(ids, 1) - 400) < 8);
    CHECK(std::abs(count(ids, 2) - 800) < 8);
    frame.surfaces[2].colour.cover = 0.5F;
    canvas.draw(frame, width, height);
    ids = canvas.read_ids();
    CHECK(std::abs(count(ids, 1) - 800) < 8);
    frame.surfaces[0].over = true;
    canvas.draw(frame, width, height);
    CHECK(std::abs(count(canvas.read_ids(), 1) - 1600) < 16);
  });
}

TEST_CASE("the plane takes away what is before it, unless a surface says otherwise") {
  with_canvas([](Canvas& canvas) {
    Frame frame =
        from_above({flat({40, 40, 40}, {-20, -20, -20}, 1, blue), flat({10, 10, 60}, {30, 30, -30}, 2, black)});
    frame.plane = Plane{{5, 0, 0}, {1, 0, 0}};
    frame.surfaces[1].cut = false;
    CHECK(std::abs(count(drawn(canvas, frame), blue) - 50 * 80) < 40);
    CHECK(std::abs(count(canvas.read_ids(), 1) - 50 * 80) < 40);
    CHECK(std::abs(count(canvas.read_ids(), 2) - 20 * 20) < 4);
    // A face in the plane goes, so that it does not flicker through a cap: here the near side, and one looks inside.
    frame.plane = Plane{{0, 0, 20}, {0, 0, 1}};
    frame.surfaces.push_back(flat({100, 100, 1}, {-50, -50, 19.998}, 3, black));
    canvas.draw(frame, width, height);
    CHECK(count(canvas.read_ids(), 1) == 0);
  });
}

TEST_CASE("what is drawn over shows through, as large as it is") {
  with_canvas([](Canvas& canvas) {
    Frame frame =
        from_above({flat({40, 40, 40}, {-20, -20, -20}, 1, black), flat({10, 10, 10}, {-5, -5, -5}, 2, blue)});
    CHECK(count(drawn(canvas, frame), blue) == 0);
    frame.surfaces[1].over = true;
    CHECK(std::abs(count(drawn(canvas, frame), blue) - 400) < 4);
    CHECK(std::abs(count(canvas.read_ids(), 2) - 400) < 4);
  });
}

TEST_CASE("dots and grid cover their share of an area, at every scale") {
  with_canvas([](Canvas& canvas) {
    Frame frame = from_above({flat({120, 72, 5}, {-60, -36, 0}, 1, white)});
    frame.surfaces[0].pattern_colour = black;
    for (const float scale : {1.0F, 2.0F, 3.0F}) {
      frame.scale = scale;
      // A pitch of 12: dots of radius 2.6, lines of 3.
      for (const auto& [pattern, share] :
           {std::pair{Pattern::dots, std::numbers::pi * 2.6 * 2.6 / 144.0},
            std::pair{Pattern::grid, 1.0 - 81.0 / 144.0}, std::pair{Pattern::none, 0.0}}) {
        frame.surfaces[0].pattern = pattern;
        const Image image = drawn(canvas, frame);
        double dark = 0.0;
        for (std::size_t i = 0; i < image.rgba.size(); i += 4) dark += (255 - image.rgba[i]) / 255.0;
        CHECK(std::abs(dark / (240.0 * 144.0) - share) < 0.02);
      }
    }
  });
}

TEST_CASE("half a cover is half of either colour") {
  with_canvas([](Canvas& canvas) {
    auto area = std::make_shared<Mesh>();
    area->at = {{-20, -20, 0}, {20, -20, 0}, {20, 20, 0}, {-20, -20, 0}, {20, 20, 0}, {-20, 20, 0}};
    area->normal.assign(6, {0, 0, 1});
    Surface glass;
    glass.mesh = area;
    glass.colour = {0, 0, 0, 0.5F};
    glass.lit = false;
    Image image = drawn(canvas, from_above({glass}));
    CHECK(same(image, 200, 150, {0.5F, 0.5F, 0.5F, 1}, 1));
    area->colour.assign(6, Colour{1, 0, 0, 1});
    glass.mesh = std::make_shared<Mesh>(*area);
    image = drawn(canvas, from_above({glass}));
    CHECK(same(image, 200, 150, {1, 0.5F, 0.5F, 1}, 1));
  });
}

TEST_CASE("lines are as wide as asked, stop behind solids and follow their dashes") {
  with_canvas([](Canvas& canvas) {
    auto strokes = std::make_shared<Strokes>();
    strokes->at = {{-50, 0, 0}, {0, 0, 0}, {0, 0, 0}, {50, 0, 0}};
    Frame frame = from_above({});
    frame.edges.push_back({.strokes = strokes, .colour = black, .width = 3.0F});
    frame.scale = 2.0F;
    CHECK(std::abs(count(drawn(canvas, frame), black) - 200 * 6) < 30);
    frame.surfaces = {flat({20, 20, 5}, {-10, -10, 10}, 0, blue)};
    CHECK(std::abs(count(drawn(canvas, frame), black) - 160 * 6) < 30);
    frame.edges[0].over = true;
    CHECK(std::abs(count(drawn(canvas, frame), black) - 200 * 6) < 30);
    frame.edges[0].dashed = true;  // 12 of 20 pixels, over both lines as one
    CHECK(std::abs(count(drawn(canvas, frame), black) - 120 * 6) < 60);
    frame.edges[0].dashed = false;
    frame.plane = Plane{{25, 0, 0}, {1, 0, 0}};
    CHECK(std::abs(count(drawn(canvas, frame), black) - 150 * 6) < 30);

    auto outline = std::make_shared<Strokes>(*strokes);  // the edge of a roof: one face looks up, the other does not
    frame.plane.reset();
    frame.edges[0].strokes = outline;
    outline->faces = {{0, 0, 1}, {0, 1, -1}, {0, 0, 1}, {0, 1, 1}};
    CHECK(std::abs(count(drawn(canvas, frame), black) - 100 * 6) < 30);
  });
}

TEST_CASE("the edges of a cube are not eaten by its faces, from all sides and distances") {
  with_canvas([](Canvas& canvas) {
    const Solid cube = std::get<Solid>(Solid::box({40, 40, 40}));
    const Shape shape = shape_of({cube, Pose{}});
    Surface faces;
    faces.mesh = shape.mesh;
    faces.colour = white;
    Frame frame;
    frame.background = white;
    frame.surfaces = {faces};
    frame.edges = {{.strokes = shape.edges, .colour = black, .width = 1.5F}};
    frame.room = {{0, 0, 0}, {40, 40, 40}};
    for (const double across : {0.0, 25.0, 140.0, 260.0}) {
      frame.camera = turned(facing(Side::whole, Pose{}, frame.room, 4.0 / 3.0), {0, 0, 1}, across, 0);
      for (const double height_mm : {70.0, 150.0}) {
        frame.camera.height = height_mm;
        const Image image = drawn(canvas, frame);
        // Along each edge that is seen, one pixel in reach is dark at every step.
        int seen = 0;
        int missing = 0;
        for (std::size_t i = 0; i < shape.edges->at.size(); i += 2) {
          const auto at = [&](std::size_t k) {
            return Vec3(shape.edges->at[k][0], shape.edges->at[k][1], shape.edges->at[k][2]);
          };
          const Vec3 eye = frame.camera.target + frame.camera.toward * frame.camera.distance();
          int toward_eye = 0;
          for (int axis = 0; axis < 3; ++axis) {  // of the two faces that meet there
            const double side = at(i)[axis];
            if (side == at(i + 1)[axis] && (side > 20 ? eye[axis] > 40 : eye[axis] < 0)) ++toward_eye;
          }
          if (toward_eye == 0) continue;
          ++seen;
          for (double t = 0.05; t < 0.96; t += 0.05) {
            const Vec3 p = frame.camera.pixel(glm::mix(at(i), at(i + 1), t), width, height);
            int darkest = 255;
            for (int y = -1; y <= 1; ++y)
              for (int x = -1; x <= 1; ++x) {
                const auto index = 4 * (static_cast<std::size_t>(p.y + y) * width + static_cast<std::size_t>(p.x + x));
                darkest = std::min<int>(darkest, image.rgba[index]);
              }
            if (darkest > 100) ++missing;
          }
        }
        CHECK(seen >= 7);
        CHECK(missing == 0);
      }
    }
  });
}

TEST_CASE("the shadow darkens the ground beside what stands on it, and only of what throws one") {
  with_canvas([](Canvas& canvas) {
    Frame frame = from_above({flat({40, 40, 10}, {-20, -20, 0}, 1, blue)});
    frame.room = {{-20, -20, 0}, {20, 20, 10}};
    frame.ground = Plane{{0, 0, 0}, {0, 0, 1}};
    frame.shadow = {0, 0, 0, 0.5F};
    const Image shaded = drawn(canvas, frame);
    CHECK(count(shaded, white) < width * height - 80 * 80 - 1000);
    CHECK_FALSE(same(shaded, 200 + 42, 150, white, 10));  // at the foot
    CHECK(same(shaded, 10, 10, white));
    CHECK(std::abs(count(shaded, blue) - 6400) < 64);  // none on what throws it
    frame.surfaces[0].shades = false;
    CHECK(count(drawn(canvas, frame), white) > width * height - 80 * 80 - 100);
    frame.surfaces[0].shades = true;
    CHECK(drawn(canvas, frame).rgba == shaded.rgba);
    frame.camera.toward = {0, 0, -1};  // from below the ground
    CHECK(count(drawn(canvas, frame), white) > width * height - 80 * 80 - 100);
  });
}

TEST_CASE("the same frame gives the same bytes, whatever was drawn before") {
  with_canvas([](Canvas& canvas) {
    Frame frame = from_above({});
    frame.room = {{-30, -30, 0}, {30, 30, 20}};
    frame.camera = facing(Side::whole, Pose{}, frame.room, 4.0 / 3.0);
    frame.ground = Plane{};
    frame.shadow = {0, 0, 0, 0.4F};
    for (int i = 0; i < 6; ++i) {
      frame.surfaces.push_back(flat({8, 8, 4.0 + i}, {-30 + 10.0 * i, -20 + 5.0 * i, 0}, 1, blue));
      frame.surfaces.back().lit = true;
      frame.surfaces.back().colour.cover = i % 2 == 0 ? 1.0F : 0.4F;
    }
    const Image first = drawn(canvas, frame);
    canvas.draw(from_above({flat({50, 50, 5}, {}, 1, black)}), 123, 77);
    (void)canvas.read_ids();
    CHECK(drawn(canvas, frame).rgba == first.rgba);
    auto other = Offscreen::make();
    REQUIRE(std::holds_alternative<Offscreen>(other));
    CHECK(drawn(std::get<Offscreen>(other).canvas(), frame).rgba == first.rgba);
  });
}

TEST_CASE("a moving frame is the same picture, but for its softened rims") {
  with_canvas([](Canvas& canvas) {
    Frame frame = from_above({flat({40, 30, 20}, {10.2, 5.3, 0}, 7, blue)});
    const Image still = drawn(canvas, frame);
    frame.moving = true;
    const Image moving = drawn(canvas, frame);
    std::size_t differ = 0;
    for (std::size_t i = 0; i < still.rgba.size(); ++i) differ += still.rgba[i] == moving.rgba[i] ? 0U : 1U;
    CHECK(differ < 4 * (80 + 60) * 2);
    CHECK(std::abs(count(moving, blue) - 80 * 60) < 96);
  });
}

TEST_CASE("a new mesh at an old address is drawn as it is") {
  with_canvas([](Canvas& canvas) {
    alignas(Mesh) std::array<std::byte, sizeof(Mesh)> place{};
    for (int i = 1; i <= 5; ++i) {
      Frame frame = from_above({flat({1, 1, 1}, {}, 1, blue)});
      frame.surfaces[0].mesh = std::shared_ptr<const Mesh>(new (place.data()) Mesh(*box({10.0 * i, 10, 5})),
                                                           [](const Mesh* mesh) { mesh->~Mesh(); });
      CHECK(std::abs(count(drawn(canvas, frame), blue) - 20 * i * 20) < 4);
      const std::weak_ptr<const Mesh> watched = frame.surfaces[0].mesh;
      frame.surfaces.clear();
      canvas.draw(frame, width, height);  // the canvas holds what it drew last, and no more
      CHECK(watched.expired());
    }
  });
}

TEST_CASE("sizes that cannot be drawn leave no picture and do no harm") {
  with_canvas([](Canvas& canvas) {
    const Frame frame = from_above({flat({40, 30, 20}, {}, 7, blue)});
    CHECK(canvas.read().rgba.empty());  // nothing drawn yet
    CHECK(canvas.read_ids().id.empty());
    canvas.draw(frame, 0, 100);
    canvas.draw(frame, 100, -5);
    CHECK(canvas.read().rgba.empty());
    canvas.draw(frame, 1, 1);
    CHECK(canvas.read().rgba.size() == 4);
    canvas.draw(frame, 1'000'000, 1'000'000);
    CHECK(canvas.read().rgba.empty());
    CHECK(std::abs(count(drawn(canvas, frame), blue) - 80 * 60) < 48);
    Frame empty;  // no room, no surface, a mesh of nothing
    empty.surfaces.resize(2);
    empty.edges.resize(1);
    empty.surfaces[1].mesh = std::make_shared<Mesh>();
    CHECK(count(drawn(canvas, empty), black) == width * height);
  });
}

TEST_CASE("drawing leaves the state of OpenGL as a window's other drawing needs it") {
  with_canvas([](Canvas& canvas) {
    Frame frame = from_above({flat({40, 30, 20}, {}, 7, {1, 0, 0, 0.5F})});
    frame.plane = Plane{};
    frame.ground = Plane{{0, 0, -10}, {0, 0, 1}};
    frame.shadow = {0, 0, 0, 0.5F};
    GLuint own = 0;
    glGenFramebuffers(1, &own);
    glBindFramebuffer(GL_FRAMEBUFFER, own);
    glViewport(3, 4, 50, 60);
    // What a window may have left on.
    for (const int on : {GL_SCISSOR_TEST, GL_CULL_FACE, GL_FRAMEBUFFER_SRGB}) glEnable(static_cast<GLenum>(on));
    glColorMask(GL_FALSE, GL_TRUE, GL_TRUE, GL_TRUE);
    glDepthMask(GL_FALSE);
    const Image image = drawn(canvas, frame);
    (void)canvas.read_ids();
    const auto value = [](GLenum of) {
      std::array<GLint, 4> got{};
      glGetIntegerv(of, got.data());
      return got;
    };
    CHECK(value(GL_DRAW_FRAMEBUFFER_BINDING)[0] == static_cast<GLint>(own));
    CHECK(value(GL_READ_FRAMEBUFFER_BINDING)[0] == static_cast<GLint>(own));
    CHECK(value(GL_VIEWPORT) == std::array<GLint, 4>{3, 4, 50, 60});
    for (const int zero : {GL_CURRENT_PROGRAM, GL_VERTEX_ARRAY_BINDING, GL_ARRAY_BUFFER_BINDING, GL_TEXTURE_BINDING_2D,
                           GL_PIXEL_PACK_BUFFER_BINDING})
      CHECK(value(static_cast<GLenum>(zero))[0] == 0);
    for (const int off : {GL_DEPTH_TEST, GL_BLEND, GL_CULL_FACE, GL_CLIP_DISTANCE0, GL_SCISSOR_TEST})
      CHECK(glIsEnabled(static_cast<GLenum>(off)) == GL_FALSE);
    CHECK(value(GL_DEPTH_WRITEMASK)[0] == GL_TRUE);
    CHECK(value(GL_COLOR_WRITEMASK) == std::array<GLint, 4>{1, 1, 1, 1});
    glBindFramebuffer(GL_FRAMEBUFFER, 0);
    glDeleteFramebuffers(1, &own);
    CHECK(image.rgba == drawn(canvas, frame).rgba);
  });
}

TEST_CASE("a canvas outside of any context is refused in words") {
  { (void)Offscreen::make(); }  // gone again, with its context
  const auto made = Canvas::make();
  REQUIRE(std::holds_alternative<std::string>(made));
  CHECK(std::get<std::string>(made).find("OpenGL") != std::string::npos);
}
