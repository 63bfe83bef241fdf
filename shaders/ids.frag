#version 330 core
uniform uint id;
out uint colour;
void main() { colour = id; }
