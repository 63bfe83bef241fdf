#version 330 core
// As surface.frag, with a pattern in screen space over it. A program of its own: a software driver takes both ways of every
// branch.
in vec4 tint;
in float front;
in float back;

uniform float cover;
uniform bool dots;  // else a grid
uniform vec4 pattern_colour;
uniform float scale;  // pixels for what is one pixel at scale 1

out vec4 colour;

// How much of this pixel the pattern covers: a pitch of 12 pixels, dots of radius 2.6, lines of 3.
float covered() {
  vec2 off = abs(mod(gl_FragCoord.xy / scale, 12.0) - 6.0);
  float radius = dots ? 2.6 : 1.5;
  float soft = 0.5 / scale;
  return 1.0 - smoothstep(radius - soft, radius + soft, dots ? length(off) : min(off.x, off.y));
}

void main() {
  colour = vec4(tint.rgb * min(gl_FrontFacing ? front : back, 1.0), tint.a * cover);
  colour = mix(colour, vec4(pattern_colour.rgb, 1.0), covered() * pattern_colour.a);
}
