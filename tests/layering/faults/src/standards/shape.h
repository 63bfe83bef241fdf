#pragma once
#include "geometry/solid.h"
