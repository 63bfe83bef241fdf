#version 330 core
// A line as a strip of four corners on the screen, since OpenGL need not draw lines wider than one pixel. One instance a
// line; the corner's number says which end and which side.
layout(location = 0) in vec3 from;
layout(location = 1) in vec3 to;
layout(location = 2) in float start;  // mm of the chain of lines before this one

layout(location = 3) in vec3 face;  // normals of the faces on either side; zero: an edge, always drawn
layout(location = 4) in vec3 other_face;

uniform mat4 clip;
uniform vec4 eye;          // a point and 1, or a direction and 0
uniform vec4 cut;
uniform vec2 window;       // pixels
uniform float half_width;  // pixels
uniform float pull;        // toward the eye, in clip depth: off the faces that meet at the line
uniform float pixels_per_mm;

noperspective out vec2 place;  // pixels along the line and across it
noperspective out float chain;  // pixels from where the chain starts
flat out float span;           // the line's pixels

void main() {
  vec4 a = clip * vec4(from, 1.0);
  vec4 b = clip * vec4(to, 1.0);
  float near_a = a.z + a.w;  // negative: before the near plane, perhaps behind the eye
  float near_b = b.z + b.w;
  float s = near_a < 0.0 && near_b > 0.0 ? near_a / (near_a - near_b) : 0.0;
  float t = near_b < 0.0 && near_a > 0.0 ? near_a / (near_a - near_b) : 1.0;
  vec4 first = mix(a, b, s);
  vec4 last = mix(a, b, t);
  vec3 to_eye = eye.xyz - eye.w * from;
  bool no_outline = dot(face, to_eye) * dot(other_face, to_eye) > 0.0;
  bool gone = no_outline || (near_a <= 0.0 && near_b <= 0.0);

  vec2 start_pixel = first.xy / first.w * window * 0.5;
  vec2 end_pixel = last.xy / last.w * window * 0.5;
  span = distance(start_pixel, end_pixel);
  vec2 along = span > 1e-4 ? (end_pixel - start_pixel) / span : vec2(1.0, 0.0);
  vec2 across = vec2(-along.y, along.x);

  bool at_end = (gl_VertexID & 1) != 0;
  float side = (gl_VertexID & 2) != 0 ? 1.0 : -1.0;
  float reach = half_width + 1.0;  // the rim is softened over a pixel
  vec2 pixel = at_end ? end_pixel + along * reach : start_pixel - along * reach;
  pixel += across * side * reach;
  place = vec2(at_end ? span + reach : -reach, side * reach);
  chain = (start + (at_end ? t : s) * distance(from, to)) * pixels_per_mm + (at_end ? reach : -reach);

  vec4 end = at_end ? last : first;
  gl_Position = gone ? vec4(2.0, 2.0, 2.0, 1.0)
                     : vec4(pixel / (window * 0.5) * end.w, max(end.z - pull, -end.w), end.w);
  gl_ClipDistance[0] = dot(cut, vec4(mix(from, to, at_end ? t : s), 1.0));
}
