#include "viewer/glide.h"

#include <algorithm>

namespace baywright::viewer {

void Glide::go(double to, double now, double seconds) {
  from_ = at(now);
  to_ = to;
  start_ = now;
  seconds_ = seconds;
}

double Glide::at(double now) const {
  if (!moving(now)) return to_;
  const double t = std::clamp((now - start_) / seconds_, 0.0, 1.0);
  return from_ + (to_ - from_) * t * t * (3.0 - 2.0 * t);
}

}  // namespace baywright::viewer
