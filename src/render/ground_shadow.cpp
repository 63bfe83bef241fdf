#include "render/ground_shadow.h"

#include "render/shaders.h"

#include <algorithm>
#include <cmath>
#include <glm/gtc/matrix_transform.hpp>
#include <glm/matrix.hpp>
#include <limits>

namespace baywright::render {

using geometry::Vec3;

namespace {

constexpr int texels = 128;      // a side: it is soft, so no finer
constexpr int reach = 7;         // texels that the blur reaches
constexpr double margin = 0.16;  // of the larger side of the room, round it: more than the blur reaches

/// What lies exactly in the plane is left away, so that it does not flicker through the cap.
constexpr double behind_plane_mm = 1e-3;

}  // namespace

glm::vec4 cut_of(const std::optional<Plane>& plane, bool cut, const Vec3& shift) {
  if (!plane || !cut) return {0.0F, 0.0F, 0.0F, 1.0F};
  const double level = glm::dot(plane->normal, plane->point - shift) - behind_plane_mm;
  return {glm::vec3(-plane->normal), static_cast<float>(level)};
}

std::variant<GroundShadow, std::string> GroundShadow::make() {
  auto height = Program::make(shaders::surface_vert, shaders::height_frag);
  auto blur = Program::make(shaders::square_vert, shaders::blur_frag);
  auto ground = Program::make(shaders::square_vert, shaders::ground_frag);
  for (auto* each : {&height, &blur, &ground})
    if (auto* fault = std::get_if<std::string>(each)) return std::move(*fault);
  GroundShadow out(std::get<Program>(std::move(height)), std::get<Program>(std::move(blur)),
                   std::get<Program>(std::move(ground)));
  out.square_ = generated<VertexArray>(glGenVertexArrays);
  out.picture_ = make_target(texels, texels, GL_R8, false);
  out.half_done_ = make_target(texels, texels, GL_R8, false);
  return out;
}

GroundShadow::Key GroundShadow::key_of(const Frame& frame, Uploads& uploads) {
  Key key;
  for (const Surface& surface : frame.surfaces) {
    const Uploaded* uploaded = surface.shades ? uploads.of(surface.mesh) : nullptr;
    if (uploaded == nullptr) continue;
    const Vec3& shift = surface.shift;
    key.surfaces.emplace_back(uploaded->serial, shift.x, shift.y, shift.z, surface.cut);
  }
  const auto add = [&](const Vec3& v) { key.places.insert(key.places.end(), {v.x, v.y, v.z}); };
  add(frame.room.low);
  add(frame.room.high);
  for (const auto& plane : {frame.ground, frame.plane})
    if (plane) {
      add(plane->point);
      add(plane->normal);
    }
  return key;
}

/// The picture's square round the room's foot print, and how high the room stands.
void GroundShadow::place(const Frame& frame) {
  const Vec3 up = frame.ground->normal;
  const Vec3 u = geometry::square_to(up);
  const Vec3 v = glm::cross(up, u);
  Vec3 low{std::numeric_limits<double>::infinity()};
  Vec3 high = -low;
  for (int i = 0; i < 8; ++i) {
    const Vec3 off = frame.room.corner(i) - frame.ground->point;
    const Vec3 p{glm::dot(off, u), glm::dot(off, v), glm::dot(off, up)};
    low = glm::min(low, p);
    high = glm::max(high, p);
  }
  const Vec3 middle = (low + high) / 2.0;
  const double half = std::max({(high.x - low.x) / 2.0, (high.y - low.y) / 2.0, 1e-3}) * (1.0 + 2.0 * margin);
  const double tall = std::max(high.z, 1e-3) * 1.02;  // with a little below the ground, where things stand on it
  const Vec3 foot = frame.ground->point + middle.x * u + middle.y * v + up * (0.98 * tall / 2.0);
  to_world_ = {glm::dvec4(half * u, 0.0), glm::dvec4(half * v, 0.0), glm::dvec4(up * (tall / 2.0) * 1.02, 0.0),
               glm::dvec4(foot, 1.0)};
}

void GroundShadow::throw_down(const Frame& frame, Uploads& uploads) {
  glBindFramebuffer(GL_FRAMEBUFFER, picture_.framebuffer.name());
  glViewport(0, 0, texels, texels);
  glClearColor(0.0F, 0.0F, 0.0F, 0.0F);
  glClear(GL_COLOR_BUFFER_BIT);
  glDisable(GL_DEPTH_TEST);
  glEnable(GL_BLEND);
  glBlendEquation(GL_MAX);
  height_.use();
  const glm::dmat4 down = glm::inverse(to_world_);
  for (const Surface& surface : frame.surfaces) {
    const Uploaded* uploaded = surface.shades ? uploads.of(surface.mesh) : nullptr;
    if (uploaded == nullptr) continue;
    height_.set("clip", glm::mat4(glm::translate(down, surface.shift)));
    height_.set("cut", cut_of(frame.plane, surface.cut, surface.shift));
    glBindVertexArray(uploaded->arrays.name());
    glDrawArrays(GL_TRIANGLES, 0, uploaded->count);
  }
  glBlendEquation(GL_FUNC_ADD);
  glDisable(GL_BLEND);
}

void GroundShadow::blur() const {
  blur_.use();
  blur_.set("clip", glm::mat4(1.0F));
  blur_.set("picture", 0);
  blur_.set("reach", reach);
  glBindVertexArray(square_.name());
  const auto pass = [&](const Target& from, const Target& to, int x, int y) {
    glBindFramebuffer(GL_FRAMEBUFFER, to.framebuffer.name());
    glBindTexture(GL_TEXTURE_2D, from.colour.name());
    blur_.set("along", x, y);
    glDrawArrays(GL_TRIANGLE_STRIP, 0, 4);
  };
  pass(picture_, half_done_, 1, 0);
  pass(half_done_, picture_, 0, 1);
  glBindTexture(GL_TEXTURE_2D, 0);
}

void GroundShadow::prepare(const Frame& frame, Uploads& uploads) {
  shown_ = picture_.usable() && half_done_.usable() && frame.ground && frame.shadow.cover > 0.0F &&
           frame.room.low.x <= frame.room.high.x && glm::dot(frame.camera.toward, frame.ground->normal) > 1e-3;
  if (!shown_) return;
  Key key = key_of(frame, uploads);
  if (key_ != key) {
    place(frame);
    throw_down(frame, uploads);
    blur();
    key_ = std::move(key);
  }
  shown_ = !key_->surfaces.empty();
}

void GroundShadow::draw(const Frame& frame, const glm::dmat4& clip) const {
  if (!shown_) return;
  ground_.use();
  const glm::dmat4 flat =
      glm::translate(glm::dmat4(1.0),
                     -glm::dot(Vec3(to_world_[3]) - frame.ground->point, frame.ground->normal) * frame.ground->normal);
  ground_.set("clip", glm::mat4(clip * flat * to_world_));
  ground_.set("picture", 0);
  Colour tint = frame.shadow;
  const double slant = glm::dot(frame.camera.toward, frame.ground->normal);
  tint.cover *= static_cast<float>(std::min(1.0, 4.0 * slant));  // fades where it is seen edge on
  ground_.set("tint", tint);
  glBindTexture(GL_TEXTURE_2D, picture_.colour.name());
  glBindVertexArray(square_.name());
  glDrawArrays(GL_TRIANGLE_STRIP, 0, 4);
  glBindTexture(GL_TEXTURE_2D, 0);
}

}  // namespace baywright::render
