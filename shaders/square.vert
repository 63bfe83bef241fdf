#version 330 core
// A square of four corners without a buffer: the whole target, or wherever `clip` puts it.
uniform mat4 clip;
out vec2 place;  // 0..1
void main() {
  place = vec2(gl_VertexID & 1, gl_VertexID >> 1);
  gl_Position = clip * vec4(2.0 * place - 1.0, 0.0, 1.0);
}
