#pragma once
// Where things go when a seating is taken apart along the way that it came in.
#include "fit/seated.h"
#include "fit/seating.h"
#include "render/model.h"

namespace baywright::render {

/// Sets `Thing::apart`. The drive goes the way that it came, far enough to be clear of its place; what it wears lifts
/// off outward, each a step farther; screws go out along their axes; stand-offs and a cable's plug away from what holds
/// them; parts of the machine that come out first lie farthest, the first outermost.
void take_apart(Model& model, const fit::Seated& seated, const fit::Seating& seating);

}  // namespace baywright::render
