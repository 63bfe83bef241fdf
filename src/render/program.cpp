#include "render/program.h"

#include <vector>

namespace baywright::render {

namespace {

template <typename Length, typename Log>
std::string log_of(GLuint name, Length length_of, Log log) {
  GLint length = 0;
  length_of(name, GL_INFO_LOG_LENGTH, &length);
  std::vector<char> text(static_cast<std::size_t>(length > 0 ? length : 0) + 1, '\0');
  log(name, static_cast<GLsizei>(text.size()), nullptr, text.data());
  return text.data();
}

std::variant<ShaderName, std::string> compiled(GLenum kind, const char* text) {
  ShaderName shader(glCreateShader(kind));
  glShaderSource(shader.name(), 1, &text, nullptr);
  glCompileShader(shader.name());
  GLint done = GL_FALSE;
  glGetShaderiv(shader.name(), GL_COMPILE_STATUS, &done);
  if (done != GL_TRUE)
    return "the driver refuses a shader: " + log_of(shader.name(), glGetShaderiv, glGetShaderInfoLog);
  return shader;
}

}  // namespace

std::variant<Program, std::string> Program::make(const char* vertex, const char* fragment) {
  auto first = compiled(GL_VERTEX_SHADER, vertex);
  if (auto* fault = std::get_if<std::string>(&first)) return std::move(*fault);
  auto second = compiled(GL_FRAGMENT_SHADER, fragment);
  if (auto* fault = std::get_if<std::string>(&second)) return std::move(*fault);

  ProgramName name(glCreateProgram());
  for (const auto* shader : {&first, &second}) glAttachShader(name.name(), std::get<ShaderName>(*shader).name());
  glLinkProgram(name.name());
  GLint done = GL_FALSE;
  glGetProgramiv(name.name(), GL_LINK_STATUS, &done);
  if (done != GL_TRUE)
    return "the driver refuses a shader program: " + log_of(name.name(), glGetProgramiv, glGetProgramInfoLog);
  return Program(std::move(name));
}

}  // namespace baywright::render
