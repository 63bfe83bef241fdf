#include "render/canvas.h"

#include "render/ground_shadow.h"
#include "render/program.h"
#include "render/shaders.h"
#include "render/target.h"
#include "render/uploads.h"

#include <algorithm>
#include <cmath>
#include <cstring>
#include <glm/gtc/matrix_transform.hpp>

namespace baywright::render {

using geometry::Vec3;

namespace {

constexpr int samples = 4;            // a pixel, where the driver has them
constexpr int most_pixels = 1 << 25;  // a gigabyte with their samples
constexpr int least_version = 33;

/// Of the depth range: coplanar faces are seen in the order of drawing. A few steps of the depth buffer, and so little
/// that a hundred surfaces move by less than a hundredth of a percent of the room.
constexpr float nearer_each = 4e-7F;
constexpr float nearer_most = 2e-4F;

constexpr double pulled_pixels = 1.5;  // lines off their faces, toward the eye
constexpr float dash_pixels = 10.0F;
constexpr float back_cover = 0.45F;  // of glass: its far side covers less, so that it has an inside

/// All that drawing relies on, whatever was drawn before it.
void set_state() {
  for (const int off : {GL_SCISSOR_TEST, GL_STENCIL_TEST, GL_CULL_FACE, GL_FRAMEBUFFER_SRGB, GL_COLOR_LOGIC_OP,
                        GL_POLYGON_OFFSET_FILL, GL_RASTERIZER_DISCARD, GL_SAMPLE_MASK, GL_SAMPLE_ALPHA_TO_COVERAGE,
                        GL_PRIMITIVE_RESTART, GL_DEPTH_CLAMP, GL_BLEND, GL_DEPTH_TEST})
    glDisable(static_cast<GLenum>(off));
  glEnable(GL_MULTISAMPLE);
  glPolygonMode(GL_FRONT_AND_BACK, GL_FILL);
  glFrontFace(GL_CCW);
  glDepthFunc(GL_LEQUAL);
  glDepthRange(0.0, 1.0);
  glClearDepth(1.0);
  glBlendEquation(GL_FUNC_ADD);
  glBlendFunc(GL_SRC_ALPHA, GL_ONE_MINUS_SRC_ALPHA);
  glColorMask(GL_TRUE, GL_TRUE, GL_TRUE, GL_TRUE);
  glDepthMask(GL_TRUE);
  glActiveTexture(GL_TEXTURE0);
  glBindSampler(0, 0);
  glBindBuffer(GL_PIXEL_PACK_BUFFER, 0);
  glBindBuffer(GL_PIXEL_UNPACK_BUFFER, 0);
  for (const int zero : {GL_PACK_ROW_LENGTH, GL_PACK_SKIP_ROWS, GL_PACK_SKIP_PIXELS})
    glPixelStorei(static_cast<GLenum>(zero), 0);
  glPixelStorei(GL_PACK_ALIGNMENT, 4);
}

/// Gives back, at its end, the framebuffers and the viewport that were there, and leaves the rest of OpenGL's state as
/// it is in a new context but for the blend function, which whoever blends sets anyway.
class Borrowed {
 public:
  Borrowed() {
    glGetIntegerv(GL_DRAW_FRAMEBUFFER_BINDING, &draw_);
    glGetIntegerv(GL_READ_FRAMEBUFFER_BINDING, &read_);
    glGetIntegerv(GL_VIEWPORT, viewport_.data());
    set_state();
  }
  ~Borrowed() {
    for (const int off : {GL_CLIP_DISTANCE0, GL_CULL_FACE, GL_DEPTH_TEST, GL_BLEND})
      glDisable(static_cast<GLenum>(off));
    glDepthMask(GL_TRUE);
    glDepthFunc(GL_LESS);
    glUseProgram(0);
    glBindVertexArray(0);
    glBindBuffer(GL_ARRAY_BUFFER, 0);
    glBindTexture(GL_TEXTURE_2D, 0);
    glBindFramebuffer(GL_DRAW_FRAMEBUFFER, static_cast<GLuint>(draw_));
    glBindFramebuffer(GL_READ_FRAMEBUFFER, static_cast<GLuint>(read_));
    glViewport(viewport_[0], viewport_[1], viewport_[2], viewport_[3]);
  }
  Borrowed(const Borrowed&) = delete;
  Borrowed& operator=(const Borrowed&) = delete;

 private:
  GLint draw_ = 0;
  GLint read_ = 0;
  std::array<GLint, 4> viewport_{};
};

void clip_by_plane(const Frame& frame) {
  if (frame.plane) glEnable(GL_CLIP_DISTANCE0);
}

/// How far, in clip depth, a point comes nearer to the eye by so many pixels' worth of mm.
float pull_of(const Camera& camera, const glm::dmat4& clip, int height, double pixels) {
  const double mm = pixels * camera.height / height;  // at the target
  if (!camera.perspective) return static_cast<float>(-(clip * glm::dvec4(camera.toward, 0.0)).z * mm);
  // Clip depth is a * w - b for w mm before the eye, and a share p of w nearer is b * p / (1 - p) less.
  const double b = -(clip * glm::dvec4(camera.target + camera.toward * camera.distance(), 1.0)).z;
  const double p = std::min(mm / camera.distance(), 0.5);
  return static_cast<float>(b * p / (1.0 - p));
}

/// Where the eye is, in a mesh's coordinates, with 1; or, where it is infinitely far, which way, with 0.
glm::vec4 eye_of(const Camera& camera, const Vec3& shift) {
  if (!camera.perspective) return {glm::vec3(camera.toward), 0.0F};
  return {glm::vec3(camera.target + camera.toward * camera.distance() - shift), 1.0F};
}

bool glass(const Surface& surface) {
  return surface.colour.cover < 1.0F;
}

/// Rows from the top.
template <typename Each>
void flip(std::vector<Each>& rows, int width, int height) {
  for (std::ptrdiff_t top = 0, bottom = height - 1; top < bottom; ++top, --bottom)
    std::swap_ranges(rows.begin() + top * width, rows.begin() + (top + 1) * width, rows.begin() + bottom * width);
}

}  // namespace

struct Canvas::Data {
  Program surface;
  Program pattern;
  Program line;
  Program ids;
  GroundShadow shadow;
  std::string driver;
  int largest = 0;        // pixels a side
  int sample_count = 0;   // that the driver has
  bool software = false;  // it draws on the processor

  Uploads uploads{};
  Sampled sampled{};
  Target picture{};
  Frame frame{};  // drawn last
  bool drawn = false;

  Data(Program with_surface, Program with_pattern, Program with_line, Program with_ids, GroundShadow with_shadow)
      : surface(std::move(with_surface)),
        pattern(std::move(with_pattern)),
        line(std::move(with_line)),
        ids(std::move(with_ids)),
        shadow(std::move(with_shadow)) {}

  [[nodiscard]] bool resize(int width, int height);
  void draw_surface(const Surface& each, const glm::dmat4& clip, std::size_t order);
  void draw_mesh(const Program& with, const Surface& each, const glm::dmat4& clip, std::size_t order);
  void draw_surfaces(bool over, const glm::dmat4& clip);
  void draw_glass(bool over, const glm::dmat4& clip);
  void draw_edges(bool over, const glm::dmat4& clip);
  void draw_ids(bool over, const glm::dmat4& clip);
  void draw_all();
  [[nodiscard]] bool open_samples();
  void resolve() const;
};

bool Canvas::Data::resize(int width, int height) {
  if (picture.width == width && picture.height == height) return true;
  picture = {};
  sampled = {};
  if (width > largest || height > largest || static_cast<std::int64_t>(width) * height > most_pixels) return false;
  picture = make_target(width, height, GL_RGBA8, true);
  return picture.usable();
}

void Canvas::Data::draw_mesh(const Program& with, const Surface& each, const glm::dmat4& clip, std::size_t order) {
  const Uploaded* uploaded = uploads.of(each.mesh);
  if (uploaded == nullptr) return;
  const Camera& camera = frame.camera;
  with.set("clip", glm::mat4(glm::translate(clip, each.shift)));
  with.set("cut", cut_of(frame.plane, each.cut, each.shift));
  with.set("nearer", std::min(nearer_each * static_cast<float>(order), nearer_most));
  with.set("to_eye", glm::mat3(glm::transpose(geometry::Mat3(camera.right(), camera.up, camera.toward))));
  with.set("lit", each.lit ? 1 : 0);
  if (!uploaded->coloured) glVertexAttrib4f(2, each.colour.red, each.colour.green, each.colour.blue, 1.0F);
  glBindVertexArray(uploaded->arrays.name());
  glDrawArrays(GL_TRIANGLES, 0, uploaded->count);
}

void Canvas::Data::draw_surface(const Surface& each, const glm::dmat4& clip, std::size_t order) {
  const Program& with = each.pattern == Pattern::none ? surface : pattern;
  with.use();
  with.set("cover", each.colour.cover);
  if (each.pattern != Pattern::none) {
    with.set("dots", each.pattern == Pattern::dots ? 1 : 0);
    with.set("pattern_colour", each.pattern_colour);
    with.set("scale", frame.scale);
  }
  draw_mesh(with, each, clip, order);
}

void Canvas::Data::draw_surfaces(bool over, const glm::dmat4& clip) {
  for (std::size_t i = 0; i < frame.surfaces.size(); ++i) {
    const Surface& each = frame.surfaces[i];
    if (each.over == over && !glass(each)) draw_surface(each, clip, i);
  }
}

/// The farthest first, and of what is lit its far side first. Glass hides nothing, but for flat volumes drawn over all.
void Canvas::Data::draw_glass(bool over, const glm::dmat4& clip) {
  std::vector<std::pair<double, std::size_t>> order;  // mm toward the eye
  for (std::size_t i = 0; i < frame.surfaces.size(); ++i) {
    const Surface& each = frame.surfaces[i];
    const Uploaded* uploaded = each.over == over && glass(each) ? uploads.of(each.mesh) : nullptr;
    if (uploaded != nullptr) order.emplace_back(glm::dot(uploaded->middle + each.shift, frame.camera.toward), i);
  }
  if (order.empty()) return;
  std::sort(order.begin(), order.end());
  glEnable(GL_BLEND);
  glEnable(GL_CULL_FACE);
  glDepthMask(GL_FALSE);
  for (const auto& [depth, i] : order) {
    const Surface& each = frame.surfaces[i];
    if (each.lit) {
      Surface inside = each;
      inside.colour.cover *= back_cover;
      inside.pattern = Pattern::none;
      glCullFace(GL_FRONT);
      draw_surface(inside, clip, i);
      glCullFace(GL_BACK);
      draw_surface(each, clip, i);
      continue;
    }
    glDisable(GL_CULL_FACE);
    if (over) {  // a volume as one layer: its depth first, then what is nearest
      glColorMask(GL_FALSE, GL_FALSE, GL_FALSE, GL_FALSE);
      glDepthMask(GL_TRUE);
      draw_surface(each, clip, i);
      glDepthMask(GL_FALSE);
      glColorMask(GL_TRUE, GL_TRUE, GL_TRUE, GL_TRUE);
    }
    draw_surface(each, clip, i);
    glEnable(GL_CULL_FACE);
  }
  glDepthMask(GL_TRUE);
  glDisable(GL_CULL_FACE);
  glDisable(GL_BLEND);
}

void Canvas::Data::draw_edges(bool over, const glm::dmat4& clip) {
  line.use();
  const double pixels_per_mm = picture.height / frame.camera.height;
  line.set("window", static_cast<float>(picture.width), static_cast<float>(picture.height));
  line.set("pixels_per_mm", static_cast<float>(pixels_per_mm));
  glEnable(GL_BLEND);
  glDepthMask(GL_FALSE);
  for (const Edges& each : frame.edges) {
    const Uploaded* uploaded = each.over == over ? uploads.of(each.strokes) : nullptr;
    if (uploaded == nullptr) continue;
    const float width = each.width * frame.scale;
    line.set("clip", glm::mat4(glm::translate(clip, each.shift)));
    line.set("cut", cut_of(frame.plane, each.cut, each.shift));
    line.set("eye", eye_of(frame.camera, each.shift));
    line.set("tint", each.colour);
    line.set("half_width", width / 2.0F);
    line.set("pull", pull_of(frame.camera, clip, picture.height, pulled_pixels + static_cast<double>(width) / 2.0));
    line.set("dash", each.dashed ? dash_pixels * frame.scale : 0.0F);
    glBindVertexArray(uploaded->arrays.name());
    glDrawArraysInstanced(GL_TRIANGLE_STRIP, 0, 4, uploaded->count);
  }
  glDepthMask(GL_TRUE);
  glDisable(GL_BLEND);
}

void Canvas::Data::draw_all() {
  shadow.prepare(frame, uploads);
  const bool with_samples = open_samples();
  glBindFramebuffer(GL_FRAMEBUFFER, (with_samples ? sampled.framebuffer : picture.framebuffer).name());
  glViewport(0, 0, picture.width, picture.height);
  const Colour& background = frame.background;
  glClearColor(background.red, background.green, background.blue, 1.0F);
  glClear(GL_COLOR_BUFFER_BIT | GL_DEPTH_BUFFER_BIT);
  const glm::dmat4 clip = frame.camera.clip(static_cast<double>(picture.width) / picture.height, frame.room);

  glEnable(GL_DEPTH_TEST);
  clip_by_plane(frame);
  draw_surfaces(false, clip);
  glDisable(GL_CLIP_DISTANCE0);
  glEnable(GL_BLEND);
  glDepthMask(GL_FALSE);
  shadow.draw(frame, clip);
  glDepthMask(GL_TRUE);
  glDisable(GL_BLEND);
  clip_by_plane(frame);
  draw_edges(false, clip);
  draw_glass(false, clip);

  glClear(GL_DEPTH_BUFFER_BIT);
  draw_surfaces(true, clip);
  draw_glass(true, clip);
  draw_edges(true, clip);
  glDisable(GL_CLIP_DISTANCE0);
  if (with_samples) resolve();
}

/// Whether several samples a pixel are to be drawn, and can. A software driver takes three times as long for them.
bool Canvas::Data::open_samples() {
  if (sample_count < 2 || (frame.moving && software)) return false;
  if (sampled.framebuffer.name() == 0) sampled = make_sampled(picture.width, picture.height, sample_count);
  if (sampled.framebuffer.name() == 0) sample_count = 0;  // not enough memory: do not ask again
  return sample_count > 1;
}

void Canvas::Data::resolve() const {
  glBindFramebuffer(GL_READ_FRAMEBUFFER, sampled.framebuffer.name());
  glBindFramebuffer(GL_DRAW_FRAMEBUFFER, picture.framebuffer.name());
  glBlitFramebuffer(0, 0, picture.width, picture.height, 0, 0, picture.width, picture.height, GL_COLOR_BUFFER_BIT,
                    GL_NEAREST);
}

/// What is opaque and has no identifier hides what is behind it; what is seen through or drawn over does not.
void Canvas::Data::draw_ids(bool over, const glm::dmat4& clip) {
  ids.use();
  for (std::size_t i = 0; i < frame.surfaces.size(); ++i) {
    const Surface& each = frame.surfaces[i];
    if (each.over == over && (each.id != 0 || (!over && !glass(each)))) {
      ids.set("id", each.id);
      draw_mesh(ids, each, clip, i);
    }
  }
}

std::variant<Canvas, std::string> Canvas::make() {
  const auto* version = reinterpret_cast<const char*>(glGetString(GL_VERSION));  // NOLINT: bytes of a text
  if (version == nullptr) return "there is no OpenGL here: no context is current";
  if (!epoxy_is_desktop_gl() || epoxy_gl_version() < least_version)
    return "pictures need OpenGL 3.3, and this driver has " + std::string(version);

  auto surface = Program::make(shaders::surface_vert, shaders::surface_frag);
  auto pattern = Program::make(shaders::surface_vert, shaders::pattern_frag);
  auto line = Program::make(shaders::line_vert, shaders::line_frag);
  auto ids = Program::make(shaders::surface_vert, shaders::ids_frag);
  for (auto* each : {&surface, &pattern, &line, &ids})
    if (auto* fault = std::get_if<std::string>(each)) return std::move(*fault);
  const Borrowed borrowed;
  auto shadow = GroundShadow::make();
  if (auto* fault = std::get_if<std::string>(&shadow)) return std::move(*fault);

  auto data = std::make_unique<Data>(std::get<Program>(std::move(surface)), std::get<Program>(std::move(pattern)),
                                     std::get<Program>(std::move(line)), std::get<Program>(std::move(ids)),
                                     std::get<GroundShadow>(std::move(shadow)));
  const auto* renderer = reinterpret_cast<const char*>(glGetString(GL_RENDERER));  // NOLINT: bytes of a text
  data->driver = std::string(renderer != nullptr ? renderer : "an unnamed driver") + ", OpenGL " + version;
  for (const char* name : {"llvmpipe", "softpipe", "SWR"})
    data->software = data->software || data->driver.find(name) != std::string::npos;
  GLint texture = 0;
  GLint buffer = 0;
  glGetIntegerv(GL_MAX_TEXTURE_SIZE, &texture);
  glGetIntegerv(GL_MAX_RENDERBUFFER_SIZE, &buffer);
  glGetIntegerv(GL_MAX_SAMPLES, &data->sample_count);
  data->largest = std::min(texture, buffer);
  data->sample_count = std::min(data->sample_count, samples);
  return Canvas(std::move(data));
}

Canvas::Canvas(std::unique_ptr<Data> data) : data_(std::move(data)) {}
Canvas::Canvas(Canvas&&) noexcept = default;
Canvas& Canvas::operator=(Canvas&&) noexcept = default;
Canvas::~Canvas() = default;

void Canvas::draw(const Frame& frame, int width, int height) {
  if (width < 1 || height < 1) return;
  const Borrowed borrowed;
  data_->frame = frame;
  data_->uploads.prune();
  data_->drawn = data_->resize(width, height);
  if (data_->drawn) data_->draw_all();
}

Image Canvas::read() const {
  if (!data_->drawn) return {};
  const Borrowed borrowed;
  const Target& picture = data_->picture;
  const auto count = static_cast<std::size_t>(picture.width) * static_cast<std::size_t>(picture.height);
  std::vector<std::uint32_t> pixels(count);
  glBindFramebuffer(GL_READ_FRAMEBUFFER, picture.framebuffer.name());
  glReadPixels(0, 0, picture.width, picture.height, GL_RGBA, GL_UNSIGNED_BYTE, pixels.data());
  flip(pixels, picture.width, picture.height);
  Image image{picture.width, picture.height, std::vector<std::uint8_t>(4 * count)};
  std::memcpy(image.rgba.data(), pixels.data(), image.rgba.size());
  for (std::size_t i = 3; i < image.rgba.size(); i += 4) image.rgba[i] = 255;
  return image;
}

Ids Canvas::read_ids() const {
  if (!data_->drawn) return {};
  const Borrowed borrowed;
  const int width = data_->picture.width;
  const int height = data_->picture.height;
  const Target target = make_target(width, height, GL_R32UI, true);
  if (!target.usable()) return {};
  glViewport(0, 0, width, height);
  const std::array<GLuint, 4> none{};
  glClearBufferuiv(GL_COLOR, 0, none.data());
  glEnable(GL_DEPTH_TEST);
  clip_by_plane(data_->frame);
  const glm::dmat4 clip = data_->frame.camera.clip(static_cast<double>(width) / height, data_->frame.room);
  for (const bool over : {false, true}) {
    glClear(GL_DEPTH_BUFFER_BIT);
    data_->draw_ids(over, clip);
  }
  Ids ids{width, height,
          std::vector<std::uint32_t>(static_cast<std::size_t>(width) * static_cast<std::size_t>(height))};
  glReadPixels(0, 0, width, height, GL_RED_INTEGER, GL_UNSIGNED_INT, ids.id.data());
  flip(ids.id, width, height);
  return ids;
}

unsigned Canvas::texture() const {
  return data_->picture.colour.name();
}

std::string Canvas::driver() const {
  return data_->driver;
}

}  // namespace baywright::render
