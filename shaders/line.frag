#version 330 core
noperspective in vec2 place;
noperspective in float chain;
flat in float span;

uniform vec4 tint;
uniform float half_width;
uniform float dash;  // pixels of a dash with its gap; 0: drawn through

out vec4 colour;

void main() {
  float beyond = max(max(-place.x, place.x - span), 0.0);
  float cover = clamp(half_width + 0.5 - length(vec2(beyond, place.y)), 0.0, 1.0);
  if (dash > 0.0) {
    float off = abs(mod(chain, dash) - 0.3 * dash);  // from the middle of a dash, which is six tenths long
    cover *= clamp(0.3 * dash + 0.5 - min(off, dash - off), 0.0, 1.0);
  }
  if (cover <= 0.0) discard;
  colour = vec4(tint.rgb, tint.a * cover);
}
