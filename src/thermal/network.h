#pragma once
// Bodies of one temperature each, joined by ways for heat, in steady state.
#include <functional>
#include <optional>
#include <vector>

namespace baywright::thermal {

/// W that flow from `from` to `to`; grows with the first temperature and falls with the second, both K.
using Flow = std::function<double(double from, double to)>;

class Network {
 public:
  /// A body in which so many W arise, at least 0. Returns its index.
  int body(double watts);
  /// Something that keeps its temperature whatever it is given: air, a wall. Returns its index.
  int fixed(double kelvin);
  /// A way for heat between two of them.
  void way(int from, int to, Flow flow);
  /// One with so many W/K, at least 0.
  void conduct(int from, int to, double watts_per_kelvin);

  struct Steady {
    std::vector<double> kelvin;  // by index
    double watts_out = 0.0;      // into all that is fixed
    double imbalance = 0.0;      // W: the largest difference between what a body is given and gives off
  };
  /// None where no steady state was found: a body that gives its heat to nothing, a flow that is no number.
  [[nodiscard]] std::optional<Steady> solve() const;

 private:
  struct Body {
    double watts = 0.0;
    bool held = false;
    double kelvin = 0.0;
  };
  struct Way {
    int from = 0;
    int to = 0;
    Flow flow;
  };
  [[nodiscard]] std::vector<double> excess(const std::vector<double>& kelvin) const;

  std::vector<Body> bodies_;
  std::vector<Way> ways_;
};

}  // namespace baywright::thermal
