// What may be a refusal has to be asked before it is used as a solid.
#include "geometry/solid.h"

using namespace baywright::geometry;

Solid box() {
#ifdef FAULT
  return Solid::box({80.0, 22.0, 0.8});  // refused: could not convert .*variant|no viable conversion from .*variant
#else
  return std::get<Solid>(Solid::box({80.0, 22.0, 0.8}));
#endif
}
