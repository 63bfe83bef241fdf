#include "viewer/window.h"
