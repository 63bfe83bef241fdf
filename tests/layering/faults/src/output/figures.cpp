#include "fit/finding.h"
#include "fit/clearance.h"
#include "geometry/section.h"
#include "geometry/gap.h"
#include <nlohmann/json.hpp>
#include <CLI/CLI.hpp>
#include <EGL/egl.h>
#include "geometry/overlap.h"
