#version 330 core
// A corner of a surface: for the picture, for the identifiers and for the shadow.
layout(location = 0) in vec3 at;
layout(location = 1) in vec3 normal;
layout(location = 2) in vec4 colour;

uniform mat4 clip;     // from the mesh's coordinates
uniform vec4 cut;      // kept where dot(cut, (at, 1)) >= 0
uniform float nearer;  // share of the depth range: coplanar faces are seen in the order of drawing
uniform mat3 to_eye;   // world directions to right, up, toward
uniform bool lit;

out vec4 tint;
out float front;  // light on either side
out float back;

// Soft light from all above, a key light from the upper left; no glare.
float light(vec3 n) {
  float sky = 0.5 + 0.5 * dot(n, vec3(0.0, 0.914, 0.406));
  float key = max(0.0, dot(n, vec3(-0.447, 0.496, 0.745)));
  return 0.62 + 0.20 * sky + 0.22 * key;
}

void main() {
  gl_Position = clip * vec4(at, 1.0);
  gl_Position.z -= 2.0 * nearer * gl_Position.w;
  gl_ClipDistance[0] = dot(cut, vec4(at, 1.0));
  tint = colour;
  vec3 n = to_eye * normal;
  front = lit ? light(n) : 1.0;
  back = lit ? light(-n) : 1.0;
}
