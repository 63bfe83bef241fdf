#pragma once
// What is drawn into: framebuffers of one size. Internal to the room.
#include "render/handle.h"

namespace baywright::render {

/// A colour texture with depth before it.
struct Target {
  int width = 0;
  int height = 0;
  Texture colour;
  Renderbuffer depth;
  Framebuffer framebuffer;

  [[nodiscard]] bool usable() const { return width > 0; }
};

/// `format`: GL_RGBA8, GL_R32UI or GL_R8. Not usable where the driver refuses. Leaves its framebuffer bound.
[[nodiscard]] Target make_target(int width, int height, GLenum format, bool with_depth);

/// The same with several samples a pixel, which only a blit can read.
struct Sampled {
  Renderbuffer colour;
  Renderbuffer depth;
  Framebuffer framebuffer;
};
[[nodiscard]] Sampled make_sampled(int width, int height, int samples);

}  // namespace baywright::render
