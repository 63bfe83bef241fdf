#include "geometry/solid.h"
#include "geometry/section.h"
