#pragma once
#include "geometry/first.h"
