// A refusal is not a shape.
#include "geometry/solid.h"

using namespace baywright::geometry;

#ifdef FAULT
Solid shape(const Refusal& made) {
  return made;  // refused: could not convert .*Refusal|no viable conversion from .*Refusal
}
#else
Solid shape(const Solid& made) {
  return made;
}
#endif
