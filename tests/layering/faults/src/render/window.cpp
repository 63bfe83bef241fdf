#include <GL/gl.h>
#include <GLFW/glfw3.h>
#include <imgui.h>
