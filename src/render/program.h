#pragma once
// A linked shader program and its uniforms. Internal to the room.
#include "render/frame.h"
#include "render/handle.h"

#include <glm/mat4x4.hpp>
#include <glm/vec4.hpp>
#include <string>
#include <variant>

namespace baywright::render {

class Program {
 public:
  /// Refused with what the driver says of the shaders.
  [[nodiscard]] static std::variant<Program, std::string> make(const char* vertex, const char* fragment);

  void use() const { glUseProgram(name_.name()); }

  /// Of the program in use. A uniform that the driver found unused is passed over.
  void set(const char* uniform, float value) const { glUniform1f(at(uniform), value); }
  void set(const char* uniform, int value) const { glUniform1i(at(uniform), value); }
  void set(const char* uniform, unsigned value) const { glUniform1ui(at(uniform), value); }
  void set(const char* uniform, float x, float y) const { glUniform2f(at(uniform), x, y); }
  void set(const char* uniform, int x, int y) const { glUniform2i(at(uniform), x, y); }
  void set(const char* uniform, const Colour& c) const { glUniform4f(at(uniform), c.red, c.green, c.blue, c.cover); }
  void set(const char* uniform, const glm::vec4& v) const { glUniform4f(at(uniform), v.x, v.y, v.z, v.w); }
  void set(const char* uniform, const glm::mat3& m) const { glUniformMatrix3fv(at(uniform), 1, GL_FALSE, &m[0][0]); }
  void set(const char* uniform, const glm::mat4& m) const { glUniformMatrix4fv(at(uniform), 1, GL_FALSE, &m[0][0]); }

 private:
  explicit Program(ProgramName name) : name_(std::move(name)) {}
  [[nodiscard]] GLint at(const char* uniform) const { return glGetUniformLocation(name_.name(), uniform); }

  ProgramName name_;
};

}  // namespace baywright::render
