#include "render/target.h"

namespace baywright::render {

namespace {

Renderbuffer stored(int width, int height, int samples, GLenum format) {
  auto out = generated<Renderbuffer>(glGenRenderbuffers);
  glBindRenderbuffer(GL_RENDERBUFFER, out.name());
  glRenderbufferStorageMultisample(GL_RENDERBUFFER, samples, format, width, height);
  glBindRenderbuffer(GL_RENDERBUFFER, 0);
  return out;
}

/// Forgets errors of before; whether there was none.
bool no_error() {
  bool none = true;
  for (int i = 0; i < 16 && glGetError() != GL_NO_ERROR; ++i) none = false;  // a lost context never stops to say so
  return none;
}

bool complete() {
  return no_error() && glCheckFramebufferStatus(GL_FRAMEBUFFER) == GL_FRAMEBUFFER_COMPLETE;
}

}  // namespace

Target make_target(int width, int height, GLenum format, bool with_depth) {
  (void)no_error();
  Target out;
  out.colour = generated<Texture>(glGenTextures);
  glBindTexture(GL_TEXTURE_2D, out.colour.name());
  const GLint filter = format == GL_R32UI ? GL_NEAREST : GL_LINEAR;
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, filter);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, filter);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_S, GL_CLAMP_TO_EDGE);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_T, GL_CLAMP_TO_EDGE);
  const GLenum given = format == GL_R32UI ? GL_RED_INTEGER : format == GL_R8 ? GL_RED : GL_RGBA;
  glTexImage2D(GL_TEXTURE_2D, 0, static_cast<GLint>(format), width, height, 0, given,
               format == GL_R32UI ? GL_UNSIGNED_INT : GL_UNSIGNED_BYTE, nullptr);
  glBindTexture(GL_TEXTURE_2D, 0);

  out.framebuffer = generated<Framebuffer>(glGenFramebuffers);
  glBindFramebuffer(GL_FRAMEBUFFER, out.framebuffer.name());
  glFramebufferTexture2D(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_TEXTURE_2D, out.colour.name(), 0);
  if (with_depth) {
    out.depth = stored(width, height, 0, GL_DEPTH_COMPONENT24);
    glFramebufferRenderbuffer(GL_FRAMEBUFFER, GL_DEPTH_ATTACHMENT, GL_RENDERBUFFER, out.depth.name());
  }
  if (!complete()) return {};
  out.width = width;
  out.height = height;
  return out;
}

Sampled make_sampled(int width, int height, int samples) {
  (void)no_error();
  Sampled out;
  out.colour = stored(width, height, samples, GL_RGBA8);
  out.depth = stored(width, height, samples, GL_DEPTH_COMPONENT24);
  out.framebuffer = generated<Framebuffer>(glGenFramebuffers);
  glBindFramebuffer(GL_FRAMEBUFFER, out.framebuffer.name());
  glFramebufferRenderbuffer(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_RENDERBUFFER, out.colour.name());
  glFramebufferRenderbuffer(GL_FRAMEBUFFER, GL_DEPTH_ATTACHMENT, GL_RENDERBUFFER, out.depth.name());
  return complete() ? std::move(out) : Sampled{};
}

}  // namespace baywright::render
