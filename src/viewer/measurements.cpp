#include "viewer/measurements.h"

#include <algorithm>
#include <utility>

namespace baywright::viewer {

bool Measurements::pick(Picked picked, std::string name) {
  if (kept_.size() >= most) return false;
  if (!first_) {
    first_ = std::move(picked);
    first_name_ = std::move(name);
    return true;
  }
  int number = 1;
  for (const KeptMeasurement& each : kept_)
    if (each.number == number) ++number;
  const Measurement measurement = measured(*first_, picked);
  KeptMeasurement made{
      number, {std::move(*first_), std::move(picked)}, {std::move(first_name_), std::move(name)}, measurement};
  first_.reset();
  order_.push_back(number);
  looked_at_ = number;
  const auto behind = std::find_if(kept_.begin(), kept_.end(), [&](const auto& each) { return each.number > number; });
  kept_.insert(behind, std::move(made));
  return true;
}

void Measurements::clear(int number) {
  std::erase_if(kept_, [&](const KeptMeasurement& each) { return each.number == number; });
  std::erase(order_, number);
  if (looked_at_ == number) looked_at_ = order_.empty() ? 0 : order_.back();
}

void Measurements::back() {
  if (first_)
    first_.reset();
  else if (!order_.empty())
    clear(order_.back());
}

}  // namespace baywright::viewer
