#include <CLI/CLI.hpp>
#include "viewer/window.h"
#include <GL/gl.h>
#include <nlohmann/json.hpp>
