#pragma once
#include "geometry/third.h"
