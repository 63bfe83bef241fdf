// A measurement that nobody reads is a mistake.
#include "geometry/gap.h"

using namespace baywright::geometry;

bool measure(const Placed& drive, const Placed& tray) {
#ifdef FAULT
  gap(drive, tray);  // refused: ignoring return value
  return true;
#else
  return gap(drive, tray).relation == Relation::apart;
#endif
}
