#pragma once
// Sums of doubles without rounding. Internal.
// J. R. Shewchuk, "Adaptive Precision Floating-Point Arithmetic and Fast Robust Geometric Predicates", Discrete &
// Computational Geometry 18 (1997): Two-Sum and Grow-Expansion.
#include <array>
#include <cmath>
#include <cstddef>

namespace baywright::geometry {

/// Terms that do not overlap and rise in size; at most `most` of them, one for each number that was added.
template <std::size_t most>
class ExactSum {
 public:
  void add(double term) {
    double carry = term;
    std::size_t kept = 0;
    for (std::size_t i = 0; i < count_; ++i) {
      const double sum = carry + terms_[i];
      const double part = sum - carry;
      const double lost = (carry - (sum - part)) + (terms_[i] - part);
      if (lost != 0.0) terms_[kept++] = lost;
      carry = sum;
    }
    if (carry != 0.0) terms_[kept++] = carry;
    count_ = kept;
  }
  /// Adds two numbers.
  void add_product(double x, double y) {
    const double product = x * y;
    add(std::fma(x, y, -product));
    add(product);
  }
  /// Adds four numbers.
  void add_product(double x, double y, double z) {
    const double xy = x * y;
    add_product(std::fma(x, y, -xy), z);
    add_product(xy, z);
  }
  [[nodiscard]] int sign() const { return count_ == 0 ? 0 : terms_[count_ - 1] > 0.0 ? 1 : -1; }

 private:
  std::array<double, most> terms_{};
  std::size_t count_ = 0;
};

}  // namespace baywright::geometry
