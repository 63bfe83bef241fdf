// One frame of 1280 x 800 pixels on whatever driver an off-screen picture gets: on most machines that is the processor.
// `still` has several samples a pixel, `moving` one; 16 ms are sixty frames a second.
#include "render/offscreen.h"
#include "render/shape.h"

#include <benchmark/benchmark.h>
#include <cmath>
#include <epoxy/gl.h>
#include <numbers>

namespace {

using namespace baywright;
using geometry::Solid;
using geometry::Vec2;
using geometry::Vec3;
using render::Frame;

constexpr int width = 1280;
constexpr int height = 800;

void add(Frame& frame, const Solid& solid, const Vec3& at, const render::Colour& colour) {
  const geometry::Placed placed{solid, {geometry::Mat3(1.0), at}};
  const render::Shape shape = render::shape_of(placed);
  frame.room.add(geometry::bounds(placed));
  render::Surface surface;
  surface.mesh = shape.mesh;
  surface.id = static_cast<std::uint32_t>(frame.surfaces.size() + 1);
  surface.colour = colour;
  frame.surfaces.push_back(surface);
  frame.edges.push_back({.strokes = shape.edges, .colour = {0.36F, 0.39F, 0.42F, 1.0F}});
}

Frame start() {
  Frame frame;
  frame.room = geometry::Bounds::empty();
  frame.background = {0.98F, 0.98F, 0.99F, 1.0F};
  frame.shadow = {0.2F, 0.25F, 0.3F, 0.3F};
  return frame;
}

void finish(Frame& frame) {
  frame.ground = render::Plane{{0.0, 0.0, frame.room.low.z}, {0.0, 0.0, 1.0}};
  frame.camera = render::facing(render::Side::whole, geometry::Pose{}, frame.room, double{width} / height);
}

geometry::Outline round(const Vec2& centre, double radius) {
  geometry::Outline ring;
  for (int i = 0; i < 48; ++i) {
    const double angle = 2.0 * std::numbers::pi * i / 48.0;
    ring.push_back(centre + radius * Vec2{std::cos(angle), std::sin(angle)});
  }
  return ring;
}

/// A board with holes, a tray of glass over it, pins, and boxes.
Frame forty_solids() {
  Frame frame = start();
  const render::Colour grey{0.78F, 0.8F, 0.83F, 1.0F};
  add(frame,
      std::get<Solid>(Solid::prism({{0, 0}, {170, 0}, {170, 170}, {0, 170}},
                                   {round({8, 8}, 2), round({162, 8}, 2), round({8, 162}, 2), round({162, 162}, 2)},
                                   1.6)),
      {0, 0, 0}, grey);
  for (int i = 0; i < 8; ++i)
    add(frame, std::get<Solid>(Solid::cylinder(6.0, 3.0, 9.0)), {12.0 + 20.0 * i, 20.0, 1.6}, grey);
  for (int i = 0; i < 30; ++i)
    add(frame, std::get<Solid>(Solid::box({18.0, 14.0, 3.0 + i % 7})),
        {8.0 + 26.0 * (i % 6), 35.0 + 26.0 * std::floor(i / 6.0), 1.6}, grey);
  add(frame, std::get<Solid>(Solid::box({120.0, 90.0, 1.2})), {0, 0, 14}, {0.6F, 0.65F, 0.7F, 0.25F});
  finish(frame);
  return frame;
}

/// A ball of 100,000 triangles.
Frame large_mesh() {
  constexpr int rings = 201;
  constexpr int sides = 250;
  std::vector<Vec3> at{{0, 0, 40}, {0, 0, -40}};
  std::vector<std::array<int, 3>> faces;
  const auto index = [](int ring, int side) { return 2 + (ring - 1) * sides + side % sides; };
  for (int i = 1; i < rings; ++i)
    for (int k = 0; k < sides; ++k) {
      const double down = std::numbers::pi * i / rings;
      const double about = 2.0 * std::numbers::pi * k / sides;
      at.push_back(40.0 * Vec3{std::sin(down) * std::cos(about), std::sin(down) * std::sin(about), std::cos(down)});
      if (i + 1 == rings) continue;
      faces.push_back({index(i, k), index(i + 1, k), index(i + 1, k + 1)});
      faces.push_back({index(i, k), index(i + 1, k + 1), index(i, k + 1)});
    }
  for (int k = 0; k < sides; ++k) {
    faces.push_back({0, index(1, k), index(1, k + 1)});
    faces.push_back({1, index(rings - 1, k + 1), index(rings - 1, k)});
  }
  Frame frame = start();
  add(frame, Solid::mesh(std::get<geometry::Mesh>(geometry::Mesh::make(at, faces))), {0, 0, 0}, {0.8F, 0.8F, 0.8F, 1});
  finish(frame);
  return frame;
}

/// Turned a little before each frame, as by a mouse. `ids`: what is at each pixel, besides.
void draw(benchmark::State& state, Frame (*make)(), bool moving, bool ids) {
  auto made = render::Offscreen::make();
  if (const auto* refusal = std::get_if<std::string>(&made)) return state.SkipWithError(refusal->c_str());
  render::Canvas& canvas = std::get<render::Offscreen>(made).canvas();
  Frame frame = make();
  frame.moving = moving;
  canvas.draw(frame, width, height);  // uploads, compiles
  glFinish();
  for (auto _ : state) {
    frame.camera = render::turned(frame.camera, {0.0, 0.0, 1.0}, 1.0, 0.0);
    canvas.draw(frame, width, height);
    if (ids) benchmark::DoNotOptimize(canvas.read_ids());
    glFinish();
  }
  state.SetLabel(canvas.driver());
}

/// Nothing is kept: what a section plane that is dragged costs besides, as it changes the shadow with each frame.
void drag_plane(benchmark::State& state) {
  auto made = render::Offscreen::make();
  if (const auto* refusal = std::get_if<std::string>(&made)) return state.SkipWithError(refusal->c_str());
  render::Canvas& canvas = std::get<render::Offscreen>(made).canvas();
  Frame frame = forty_solids();
  frame.moving = true;
  double x = 20.0;
  for (auto _ : state) {
    x = x > 150.0 ? 20.0 : x + 0.5;
    frame.plane = render::Plane{{x, 0, 0}, {1, 0, 0}};
    canvas.draw(frame, width, height);
    glFinish();
  }
}

/// An outline of that many corners, half of which bend inward.
void triangulate(benchmark::State& state) {
  geometry::Outline star;
  const auto corners = static_cast<int>(state.range(0));
  for (int i = 0; i < corners; ++i) {
    const double angle = 2.0 * std::numbers::pi * i / corners;
    star.push_back((i % 2 == 0 ? 50.0 : 49.0) * Vec2{std::cos(angle), std::sin(angle)});
  }
  for (auto _ : state) benchmark::DoNotOptimize(render::triangles(star, {}));
}

const auto unit = benchmark::kMillisecond;
BENCHMARK_CAPTURE(draw, forty_moving, forty_solids, true, false)
    ->Unit(unit)
    ->Name("40 solids, moving")
    ->UseRealTime()
    ->MeasureProcessCPUTime();
BENCHMARK_CAPTURE(draw, forty_still, forty_solids, false, false)
    ->Unit(unit)
    ->Name("40 solids, still")
    ->UseRealTime()
    ->MeasureProcessCPUTime();
BENCHMARK_CAPTURE(draw, forty_ids, forty_solids, true, true)
    ->Unit(unit)
    ->Name("40 solids, moving, and which is where")
    ->UseRealTime()
    ->MeasureProcessCPUTime();
BENCHMARK(drag_plane)
    ->Unit(unit)
    ->Name("40 solids, moving, section plane dragged")
    ->UseRealTime()
    ->MeasureProcessCPUTime();
BENCHMARK_CAPTURE(draw, mesh_moving, large_mesh, true, false)
    ->Unit(unit)
    ->Name("100,000 triangles, moving")
    ->UseRealTime()
    ->MeasureProcessCPUTime();
BENCHMARK_CAPTURE(draw, mesh_still, large_mesh, false, false)
    ->Unit(unit)
    ->Name("100,000 triangles, still")
    ->UseRealTime()
    ->MeasureProcessCPUTime();
BENCHMARK(triangulate)->Unit(unit)->Arg(100)->Arg(1000)->Arg(5000)->Name("triangles of a jagged outline, corners");

}  // namespace

BENCHMARK_MAIN();
