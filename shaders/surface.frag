#version 330 core
in vec4 tint;
in float front;
in float back;

uniform float cover;  // of the whole surface

out vec4 colour;

void main() { colour = vec4(tint.rgb * min(gl_FrontFacing ? front : back, 1.0), tint.a * cover); }
