#pragma once
// A family without rows(), which all_rows.cpp does not call either.
#include "tolerance/dimension.h"

namespace baywright::standards::ropes {

using tolerance::Dimension;

[[nodiscard]] const Dimension& thickness();

}  // namespace baywright::standards::ropes
