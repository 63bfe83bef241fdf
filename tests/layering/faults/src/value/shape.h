#pragma once
#include "geometry/solid.h"
#include <glm/vec3.hpp>
