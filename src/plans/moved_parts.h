#pragma once
// Whether moving a part of the machine harms the machine itself. Inside the room.
#include "build/build.h"
#include "tolerance/stack.h"

namespace baywright::plans {

/// `after` is `before` with parts that stand elsewhere. True where a moved part runs into another one, at some limits
/// within which it did not run into it before, or where it would have to pass through one on its way.
[[nodiscard]] bool crushes(const build::Build& before, const build::Build& after, tolerance::Method method);

}  // namespace baywright::plans
