#version 330 core
// One of the two directions of a soft blur.
uniform sampler2D picture;
uniform ivec2 along;
uniform int reach;  // texels

out vec4 colour;

void main() {
  ivec2 here = ivec2(gl_FragCoord.xy);
  ivec2 last = textureSize(picture, 0) - 1;
  float sum = 0.0;
  float weights = 0.0;
  for (int i = -reach; i <= reach; ++i) {
    float x = float(i) / float(reach + 1);
    float weight = (1.0 - x * x) * (1.0 - x * x);
    sum += weight * texelFetch(picture, clamp(here + i * along, ivec2(0), last), 0).r;
    weights += weight;
  }
  colour = vec4(sum / weights);
}
