#pragma once
// Several drives at once: one place for each, in which all fit beside each other.
#include "fit/check.h"

namespace baywright::fit {

/// As many drives as fit at once, each at a place of its own (or beside its neighbours in an adapter of the same name),
/// with what places take from each other (`shares`) and with the drives in each other's way. Among equals the faster
/// links come first. `check` is that of the same build and options.
[[nodiscard]] Together together(const build::Build& build, const Check& check, const Options& options,
                                bool accept_marginal);

}  // namespace baywright::fit
