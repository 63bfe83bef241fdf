#pragma once
// What was measured and is kept: up to three at a time, each with a number that stays while it is kept. No toolkit.
#include "viewer/measuring.h"

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace baywright::viewer {

struct KeptMeasurement {
  int number = 1;  // the lowest that was free
  std::array<Picked, 2> picked;
  std::array<std::string, 2> names;  // of what was picked, in words
  Measurement measurement;
};

class Measurements {
 public:
  static constexpr std::size_t most = 3;

  /// The first of two, or the second, which makes a measurement. Refused (false) where as many are kept as can be.
  bool pick(Picked picked, std::string name);
  void clear(int number);
  /// Takes back what was picked last: the first of two, else the newest measurement.
  void back();

  [[nodiscard]] const std::vector<KeptMeasurement>& kept() const { return kept_; }  // by number
  [[nodiscard]] const std::optional<Picked>& first() const { return first_; }       // of the next one
  [[nodiscard]] const std::string& first_name() const { return first_name_; }
  /// The number of the measurement that is told in full: the newest, or the one `look_at` was called with.
  [[nodiscard]] int looked_at() const { return looked_at_; }
  void look_at(int number) { looked_at_ = number; }

 private:
  std::vector<KeptMeasurement> kept_;
  std::vector<int> order_;  // their numbers, the newest last
  std::optional<Picked> first_;
  std::string first_name_;
  int looked_at_ = 0;
};

}  // namespace baywright::viewer
