#version 330 core
// How dark the shadow below is: what stands higher throws less.
out vec4 colour;
void main() { colour = vec4(1.0 - 0.6 * gl_FragCoord.z); }
