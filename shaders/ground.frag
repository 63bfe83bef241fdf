#version 330 core
in vec2 place;
uniform sampler2D picture;
uniform vec4 tint;
out vec4 colour;
void main() { colour = vec4(tint.rgb, tint.a * texture(picture, place).r); }
