#include "fit/path_search.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <queue>

namespace baywright::fit {

using geometry::Vec2;

namespace {

constexpr int side = 64;           // cells a freedom: half a degree and 1 to 2 mm
constexpr int coarsest = 16;       // cells that are tried as one block first
constexpr double unsure_cost = 8;  // against 1 for a free cell
constexpr double turn_cost = 6;    // a person prefers few motions
constexpr int most_repairs = 24;   // paths whose steps failed
constexpr int most_outs = 120;     // nodes at which the way out is tried

enum class Cell : char { unknown, free, unsure, closed };

class Grid {
 public:
  explicit Grid(const Freedoms& freedoms) : freedoms_(freedoms), cells_(side * side, Cell::unknown) {
    for (int i = 0; i < side; i += coarsest)
      for (int j = 0; j < side; j += coarsest) fill(i, j, coarsest);
  }
  [[nodiscard]] Cell at(int i, int j) const { return cells_[index(i, j)]; }
  void close(int i, int j) { cells_[index(i, j)] = Cell::closed; }

  /// The first column and row lie on p = 0 and q = 0, so that a path may begin there.
  [[nodiscard]] Vec2 node(int i, int j) const {
    return {freedoms_.p_most * i / (side - 1), freedoms_.q_most * j / (side - 1)};
  }
  [[nodiscard]] static std::size_t index(int i, int j) { return static_cast<std::size_t>(i * side + j); }

 private:
  void fill(int i, int j, int size) {
    const double half = 0.5 * size;
    const double step_p = freedoms_.p_most / (side - 1);
    const double step_q = freedoms_.q_most / (side - 1);
    const double bound = freedoms_.reach(half * step_p, half * step_q);
    const double middle_p = std::clamp(step_p * (i - 0.5 + half), 0.0, freedoms_.p_most);
    const double middle_q = std::clamp(step_q * (j - 0.5 + half), 0.0, freedoms_.q_most);
    const double gap = freedoms_.gap(middle_p, middle_q, bound);
    if (size > 1 && std::abs(gap) < bound) {
      for (const int di : {0, size / 2})
        for (const int dj : {0, size / 2}) fill(i + di, j + dj, size / 2);
      return;
    }
    const Cell cell = gap >= bound ? Cell::free : gap <= -bound ? Cell::closed : Cell::unsure;
    for (int a = i; a < i + size; ++a)
      for (int b = j; b < j + size; ++b) cells_[index(a, b)] = cell;
  }

  const Freedoms& freedoms_;
  std::vector<Cell> cells_;
};

struct Visit {
  double cost = std::numeric_limits<double>::infinity();
  int from = -1;  // state
};

constexpr std::array<std::array<int, 2>, 4> steps = {{{1, 0}, {-1, 0}, {0, 1}, {0, -1}}};

/// A state is a cell and the step by which it was entered.
int state_of(int i, int j, int step) {
  return (i * side + j) * 4 + step;
}

std::vector<Visit> visits(const Grid& grid, const Freedoms& freedoms) {
  std::vector<Visit> seen(static_cast<std::size_t>(side) * side * 4);
  using Entry = std::pair<double, int>;
  std::priority_queue<Entry, std::vector<Entry>, std::greater<>> waiting;
  for (int step = 0; step < 4; ++step) {
    seen[static_cast<std::size_t>(step)].cost = 0.0;
    waiting.push({0.0, step});
  }
  while (!waiting.empty()) {
    const auto [cost, state] = waiting.top();
    waiting.pop();
    if (cost > seen[static_cast<std::size_t>(state)].cost) continue;
    const int i = state / 4 / side;
    const int j = state / 4 % side;
    for (int step = 0; step < 4; ++step) {
      const int ni = i + steps[static_cast<std::size_t>(step)][0];
      const int nj = j + steps[static_cast<std::size_t>(step)][1];
      if (ni < 0 || nj < 0 || ni >= side || nj >= side || grid.at(ni, nj) == Cell::closed) continue;
      if (!freedoms.allowed(grid.node(i, j), grid.node(ni, nj))) continue;
      const double next =
          cost + (grid.at(ni, nj) == Cell::free ? 1.0 : unsure_cost) + (step == state % 4 ? 0.0 : turn_cost);
      Visit& visit = seen[static_cast<std::size_t>(state_of(ni, nj, step))];
      if (!(next < visit.cost)) continue;
      visit = {next, state};
      waiting.push({next, state_of(ni, nj, step)});
    }
  }
  return seen;
}

/// Reached cells by cost, each once, with its cheapest state.
std::vector<std::pair<double, int>> reached(const std::vector<Visit>& seen) {
  std::vector<std::pair<double, int>> out;
  for (int cell = 0; cell < side * side; ++cell) {
    std::pair<double, int> best = {std::numeric_limits<double>::infinity(), -1};
    for (int step = 0; step < 4; ++step)
      best = std::min(best, {seen[static_cast<std::size_t>(cell * 4 + step)].cost, cell * 4 + step});
    if (std::isfinite(best.first)) out.push_back(best);
  }
  std::sort(out.begin(), out.end());
  return out;
}

/// The cells of the path to a state, and of these the corners.
std::vector<int> corners_to(const std::vector<Visit>& seen, int state) {
  std::vector<int> corners = {state};
  for (int at = state; seen[static_cast<std::size_t>(at)].from >= 0; at = seen[static_cast<std::size_t>(at)].from) {
    const int before = seen[static_cast<std::size_t>(at)].from;
    if (before % 4 != at % 4 || seen[static_cast<std::size_t>(before)].from < 0) corners.push_back(before);
  }
  std::reverse(corners.begin(), corners.end());
  return corners;
}

}  // namespace

std::optional<std::vector<Vec2>> find_path(const Freedoms& freedoms, const PathJudge& judge) {
  Grid grid(freedoms);
  std::vector<char> tried(side * side, 0);
  int outs = 0;
  for (int repair = 0; repair < most_repairs; ++repair) {
    const std::vector<Visit> seen = visits(grid, freedoms);
    int goal = -1;
    for (const auto& [cost, state] : reached(seen)) {
      const int i = state / 4 / side;
      const int j = state / 4 % side;
      // 1: it does not get out from there, 2: it does. Every fourth cell each way is asked.
      char& known = tried[Grid::index(i, j)];
      if (known == 1 || (known == 0 && (i % 4 != 0 || (j % 4 != 0 && j != side - 1)))) continue;
      if (known == 0) {
        if (++outs > most_outs) break;
        known = judge.out(grid.node(i, j)) ? 2 : 1;
      }
      if (known != 2) continue;
      goal = state;
      break;
    }
    if (goal < 0) return std::nullopt;
    std::vector<Vec2> path;
    bool holds = true;
    const std::vector<int> corners = corners_to(seen, goal);
    for (std::size_t k = 0; k < corners.size() && holds; ++k) {
      const int i = corners[k] / 4 / side;
      const int j = corners[k] / 4 % side;
      if (k == 0) {
        path.push_back(grid.node(i, j));
        continue;
      }
      // Cell by cell, so that the one that fails is known.
      int at_i = corners[k - 1] / 4 / side;
      int at_j = corners[k - 1] / 4 % side;
      if (judge.free(path.back(), grid.node(i, j))) {
        path.push_back(grid.node(i, j));
        continue;
      }
      holds = false;
      while (at_i != i || at_j != j) {
        const Vec2 from = grid.node(at_i, at_j);
        at_i += (i > at_i) - (i < at_i);
        at_j += (j > at_j) - (j < at_j);
        if (judge.free(from, grid.node(at_i, at_j))) continue;
        grid.close(at_i, at_j);
        break;
      }
    }
    if (holds) return path;
  }
  return std::nullopt;
}

}  // namespace baywright::fit
