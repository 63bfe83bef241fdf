#include "viewer/stops.h"

#include <algorithm>

namespace baywright::viewer {

void Stops::begin() {
  seen_.clear();
}

bool Stops::add(const std::string& id) {
  seen_.push_back(id);
  return id == at_;
}

void Stops::end() {
  if (wanted_) at_ = *wanted_;
  wanted_.reset();
  const auto found = std::find(seen_.begin(), seen_.end(), at_);
  if (found == seen_.end()) at_.clear();  // it is no longer there
  if (moves_ != 0 && !seen_.empty()) {
    const int count = static_cast<int>(seen_.size());
    int to = moves_ > 0 ? moves_ - 1 : count + moves_;
    if (found != seen_.end()) to = static_cast<int>(found - seen_.begin()) + moves_;
    at_ = seen_[static_cast<std::size_t>((to % count + count) % count)];
  }
  moves_ = 0;
}

}  // namespace baywright::viewer
