#pragma once
// Names of OpenGL objects that are deleted with their owner. Internal to the room, as is all that includes epoxy.
#include <epoxy/gl.h>
#include <utility>

namespace baywright::render {

template <void (*drop)(GLuint)>
class Handle {
 public:
  Handle() = default;  // none
  explicit Handle(GLuint name) : name_(name) {}
  Handle(Handle&& other) noexcept : name_(std::exchange(other.name_, 0)) {}
  Handle& operator=(Handle&& other) noexcept {
    std::swap(name_, other.name_);
    return *this;
  }
  ~Handle() {
    if (name_ != 0) drop(name_);
  }
  [[nodiscard]] GLuint name() const { return name_; }

 private:
  GLuint name_ = 0;
};

inline void drop_buffer(GLuint name) {
  glDeleteBuffers(1, &name);
}
inline void drop_vertex_array(GLuint name) {
  glDeleteVertexArrays(1, &name);
}
inline void drop_texture(GLuint name) {
  glDeleteTextures(1, &name);
}
inline void drop_renderbuffer(GLuint name) {
  glDeleteRenderbuffers(1, &name);
}
inline void drop_framebuffer(GLuint name) {
  glDeleteFramebuffers(1, &name);
}
inline void drop_program(GLuint name) {
  glDeleteProgram(name);
}
inline void drop_shader(GLuint name) {
  glDeleteShader(name);
}

using Buffer = Handle<drop_buffer>;
using VertexArray = Handle<drop_vertex_array>;
using Texture = Handle<drop_texture>;
using Renderbuffer = Handle<drop_renderbuffer>;
using Framebuffer = Handle<drop_framebuffer>;
using ProgramName = Handle<drop_program>;
using ShaderName = Handle<drop_shader>;

/// glGenBuffers and its like.
template <typename Kind, typename Generate>
Kind generated(Generate generate) {
  GLuint name = 0;
  generate(1, &name);
  return Kind(name);
}

}  // namespace baywright::render
