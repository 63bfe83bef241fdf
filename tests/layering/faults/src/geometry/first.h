#pragma once
#include "geometry/second.h"
