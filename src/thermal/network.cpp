#include "thermal/network.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace baywright::thermal {

namespace {

constexpr double highest = 5000.0;  // K: beyond, nothing is looked for

/// Solves a x = b in place by elimination with pivoting; false where a is singular.
bool eliminate(std::vector<std::vector<double>>& a, std::vector<double>& b) {
  const std::size_t n = b.size();
  for (std::size_t column = 0; column < n; ++column) {
    std::size_t pivot = column;
    for (std::size_t row = column + 1; row < n; ++row)
      if (std::abs(a[row][column]) > std::abs(a[pivot][column])) pivot = row;
    if (!(std::abs(a[pivot][column]) > 0.0)) return false;
    std::swap(a[pivot], a[column]);
    std::swap(b[pivot], b[column]);
    for (std::size_t row = column + 1; row < n; ++row) {
      const double share = a[row][column] / a[column][column];
      for (std::size_t k = column; k < n; ++k) a[row][k] -= share * a[column][k];
      b[row] -= share * b[column];
    }
  }
  for (std::size_t row = n; row-- > 0;) {
    for (std::size_t k = row + 1; k < n; ++k) b[row] -= a[row][k] * b[k];
    b[row] /= a[row][row];
  }
  return true;
}

double largest(const std::vector<double>& values) {
  double out = 0.0;
  for (const double value : values) out = std::isnan(value) ? value : std::max(out, std::abs(value));
  return out;
}

}  // namespace

int Network::body(double watts) {
  bodies_.push_back({watts, false, 0.0});
  return static_cast<int>(bodies_.size()) - 1;
}

int Network::fixed(double kelvin) {
  bodies_.push_back({0.0, true, kelvin});
  return static_cast<int>(bodies_.size()) - 1;
}

void Network::way(int from, int to, Flow flow) {
  ways_.push_back({from, to, std::move(flow)});
}

void Network::conduct(int from, int to, double watts_per_kelvin) {
  way(from, to, [watts_per_kelvin](double hot, double cold) { return watts_per_kelvin * (hot - cold); });
}

std::vector<double> Network::excess(const std::vector<double>& kelvin) const {
  std::vector<double> out;
  for (const Body& body : bodies_) out.push_back(body.watts);
  for (const Way& way : ways_) {
    const auto from = static_cast<std::size_t>(way.from);
    const auto to = static_cast<std::size_t>(way.to);
    const double watts = way.flow(kelvin[from], kelvin[to]);
    out[from] -= watts;
    out[to] += watts;
  }
  return out;
}

std::optional<Network::Steady> Network::solve() const {
  // Newton's method with halved steps, all bodies a little over the warmest that is fixed to begin with.
  std::vector<std::size_t> free;
  double start = 0.0;
  double watts = 0.0;
  for (std::size_t i = 0; i < bodies_.size(); ++i) {
    if (!bodies_[i].held) free.push_back(i);
    start = std::max(start, bodies_[i].kelvin);
    watts += bodies_[i].watts;
  }
  Steady out;
  for (const Body& body : bodies_) out.kelvin.push_back(body.held ? body.kelvin : start + 1.0);
  const auto only_free = [&](const std::vector<double>& all) {
    std::vector<double> some;
    for (const std::size_t i : free) some.push_back(all[i]);
    return some;
  };
  const double enough = 1e-12 * std::max(watts, 1.0);
  std::vector<double> left = only_free(excess(out.kelvin));
  for (int round = 0; round < 200 && !(largest(left) <= enough); ++round) {
    const std::size_t n = free.size();
    std::vector<std::vector<double>> slope(n, std::vector<double>(n));
    for (std::size_t column = 0; column < n; ++column) {
      constexpr double step = 1e-4;  // K
      std::vector<double> beside = out.kelvin;
      beside[free[column]] += step;
      const std::vector<double> there = only_free(excess(beside));
      for (std::size_t row = 0; row < n; ++row) slope[row][column] = (left[row] - there[row]) / step;
    }
    std::vector<double> change = left;
    if (!eliminate(slope, change)) return std::nullopt;
    double share = 1.0;
    bool better = false;
    for (int halved = 0; halved < 40 && !better; ++halved, share *= 0.5) {
      std::vector<double> next = out.kelvin;
      bool sane = true;
      for (std::size_t i = 0; i < n; ++i) {
        next[free[i]] += share * change[i];
        sane = sane && next[free[i]] > 1.0 && next[free[i]] < highest;
      }
      if (!sane) continue;
      std::vector<double> now = only_free(excess(next));
      if (!(largest(now) < largest(left))) continue;
      better = true;
      out.kelvin = std::move(next);
      left = std::move(now);
    }
    if (!better) break;  // as close as doubles come, or stuck: the balance below tells
  }
  out.imbalance = largest(left);
  if (!(out.imbalance <= 1e-9 * std::max(watts, 1.0))) return std::nullopt;
  const std::vector<double> all = excess(out.kelvin);
  for (std::size_t i = 0; i < bodies_.size(); ++i)
    if (bodies_[i].held) out.watts_out += all[i];
  return out;
}

}  // namespace baywright::thermal
