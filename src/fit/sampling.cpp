#include "fit/sampling.h"

#include "fit/replay.h"
#include "geometry/limits.h"
#include "tolerance/draw.h"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <exception>
#include <limits>
#include <mutex>
#include <system_error>
#include <thread>

namespace baywright::fit {

namespace {

constexpr double infinite = std::numeric_limits<double>::infinity();
constexpr double three_sigma = 0.00135;    // of a normal variable lies below minus three sigma
constexpr std::int64_t block_size = 1024;  // builds; the whole is cut the same way for any number of threads

/// The least `count` of many values, in whatever order they come.
class Least {
 public:
  explicit Least(std::size_t count) : count_(count) {}

  void add(double value) {
    if (!(value < most_)) return;
    kept_.push_back(value);
    if (kept_.size() >= 2 * count_ + block_size) cut();
  }

  /// The greatest of them; infinite where as many were not finite.
  [[nodiscard]] double last() {
    if (kept_.size() < count_) return infinite;
    cut();
    return *std::max_element(kept_.begin(), kept_.end());
  }

 private:
  void cut() {
    if (kept_.size() <= count_) return;
    const auto end = kept_.begin() + static_cast<std::ptrdiff_t>(count_);
    std::nth_element(kept_.begin(), end - 1, kept_.end());
    most_ = *(end - 1);
    kept_.erase(end, kept_.end());
  }

  std::size_t count_;
  double most_ = infinite;
  std::vector<double> kept_;
};

/// The room that a gap has beyond what is asked: surely no less than `low`, no more than `high`.
struct Room {
  double low = infinite;
  double high = infinite;
};

/// A pair or sum with its elements as places in the replay's list.
struct Measure {
  std::vector<Near> pairs;
  const Sum* sum = nullptr;
};

/// What all threads read.
struct Plan {
  const Trial& trial;
  std::vector<int> elements;      // that have to be put anew
  std::vector<int> drawn;         // dimensions, in order
  std::vector<double> values;     // nominal, one a dimension
  std::vector<Measure> measures;  // one a gap
};

void draw_if_it_varies(Plan& plan, int dimension) {
  const tolerance::Dimension& d = plan.trial.dimensions[static_cast<std::size_t>(dimension)];
  if (!d.open() && !d.exact()) plan.drawn.push_back(dimension);
}

/// Where an element is put into the list, with all that moves it.
int replayed(Plan& plan, int element) {
  const auto known = std::find(plan.elements.begin(), plan.elements.end(), element);
  if (known != plan.elements.end()) return static_cast<int>(known - plan.elements.begin());
  const Element& put = plan.trial.scene->element(element);
  for (const Motion& motion : put.motions) draw_if_it_varies(plan, motion.dimension);
  for (const parts::Share& share : put.made_from->bore.shares) draw_if_it_varies(plan, share.dimension);
  plan.elements.push_back(element);
  return static_cast<int>(plan.elements.size()) - 1;
}

Plan planned(const Trial& trial) {
  Plan plan{trial, {}, {}, {}, {}};
  for (const tolerance::Dimension& d : trial.dimensions) plan.values.push_back(d.nominal);
  if (trial.scene != nullptr) std::copy(trial.scene->values.begin(), trial.scene->values.end(), plan.values.begin());
  for (const AskedGap& gap : trial.gaps) {
    Measure measure;
    for (Near pair : gap.pairs) {
      pair.a = replayed(plan, pair.a);
      pair.b = replayed(plan, pair.b);
      measure.pairs.push_back(pair);
    }
    if (gap.sum) {
      measure.sum = &*gap.sum;
      for (const auto* terms : {&gap.sum->terms, &gap.sum->off_terms})
        for (const auto& [dimension, factor] : *terms) draw_if_it_varies(plan, dimension);
    }
    plan.measures.push_back(std::move(measure));
  }
  std::sort(plan.drawn.begin(), plan.drawn.end());
  plan.drawn.erase(std::unique(plan.drawn.begin(), plan.drawn.end()), plan.drawn.end());
  return plan;
}

/// One thread's builds: what it draws, puts and measures, in memory that is used again.
class Worker {
 public:
  Worker(const Plan& plan, std::uint64_t seed) : plan_(plan), seed_(seed), values_(plan.values) {
    if (plan.trial.scene != nullptr) replay_.emplace(*plan.trial.scene, plan.elements);
  }

  /// One room a gap.
  void build(std::uint64_t number, std::vector<Room>& rooms) {
    draw(number);
    if (replay_) replay_->put(std::span(values_).first(plan_.trial.scene->values.size()));
    for (std::size_t i = 0; i < rooms.size(); ++i) {
      const Measure& measure = plan_.measures[i];
      rooms[i] = measure.sum != nullptr ? of_sum(*measure.sum) : of_pairs(measure.pairs);
    }
  }

 private:
  void draw(std::uint64_t number) {
    constexpr int none = -1;
    int pair = none;
    std::array<double, 2> chances{};
    for (const int dimension : plan_.drawn) {
      if (dimension / 2 != pair) {
        pair = dimension / 2;
        chances = tolerance::chances(seed_, number, static_cast<std::uint32_t>(pair));
      }
      const auto at = static_cast<std::size_t>(dimension);
      values_[at] = tolerance::drawn(plan_.trial.dimensions[at], chances[at % 2]);
    }
  }

  [[nodiscard]] double moved(const std::vector<std::pair<int, double>>& terms) const {
    double sum = 0.0;
    for (const auto& [dimension, factor] : terms) {
      const auto at = static_cast<std::size_t>(dimension);
      sum += factor * (values_[at] - plan_.values[at]);
    }
    return sum;
  }

  [[nodiscard]] Room of_sum(const Sum& sum) const {
    const double room = sum.base + moved(sum.terms) - std::abs(sum.off + moved(sum.off_terms));
    return {room, room};
  }

  /// The pair that looks closest is measured first: then most others are seen to be farther by their boxes alone.
  [[nodiscard]] Room of_pairs(const std::vector<Near>& pairs) {
    bounds_.clear();
    for (const Near& pair : pairs) {
      const double apart = replay_->at_least(pair.a, pair.b);
      bounds_.push_back(apart > 0.0 ? apart - pair.asked : -infinite);
    }
    const auto first = static_cast<std::size_t>(std::min_element(bounds_.begin(), bounds_.end()) - bounds_.begin());
    Room least = of_pair(pairs[first]);
    for (std::size_t i = 0; i < pairs.size(); ++i) {
      if (i == first || bounds_[i] >= least.high) continue;
      const Room other = of_pair(pairs[i]);
      least = {std::min(least.low, other.low), std::min(least.high, other.high)};
    }
    return least;
  }

  [[nodiscard]] Room of_pair(const Near& pair) {
    const Measured found = replay_->gap(pair.a, pair.b);
    const Room room{found.mm - found.error - pair.asked, found.mm + found.error - pair.asked};
    if (std::isnan(room.low) || std::isnan(room.high)) return {-infinite, infinite};  // never taken for enough
    return room;
  }

  const Plan& plan_;
  std::uint64_t seed_;
  std::vector<double> values_;
  std::vector<double> bounds_;
  std::optional<Replay> replay_;
};

/// Counts and tails, gathered from all threads: sums of whole numbers and sets, so the order does not matter.
class Tally {
 public:
  Tally(std::size_t gaps, const Options& options)
      : builds_(options.sampling.builds), progress_(options.progress), gaps_(gaps) {
    const auto beyond = static_cast<std::size_t>(std::floor(three_sigma * static_cast<double>(builds_)));
    low_.assign(gaps, Least(beyond + 1));
    high_.assign(gaps, Least(beyond + 1));
  }

  /// `rooms`: gap by gap, build after build.
  void add(const std::vector<std::vector<Room>>& rooms, std::int64_t count) {
    const std::lock_guard lock(mutex_);
    for (std::int64_t build = 0; build < count; ++build) {
      bool fits = true;
      bool may_fit = true;
      const std::vector<Room>& each = rooms[static_cast<std::size_t>(build)];
      for (std::size_t i = 0; i < gaps_.size(); ++i) {
        const bool enough = each[i].low >= -geometry::touch_mm;
        const bool may_be = each[i].high >= -geometry::touch_mm;
        gaps_[i].enough += enough ? 1 : 0;
        gaps_[i].unsettled += may_be && !enough ? 1 : 0;
        fits = fits && enough;
        may_fit = may_fit && may_be;
        low_[i].add(each[i].low);
        high_[i].add(-each[i].high);
      }
      fit_ += fits ? 1 : 0;
      unsettled_ += may_fit && !fits ? 1 : 0;
    }
    done_ += count;
    if (progress_) progress_(done_, builds_);
  }

  [[nodiscard]] Sampled result() {
    for (std::size_t i = 0; i < gaps_.size(); ++i) {
      gaps_[i].low = low_[i].last();
      gaps_[i].high = -high_[i].last();
    }
    return {builds_, fit_, unsettled_, gaps_};
  }

 private:
  std::mutex mutex_;
  std::int64_t builds_;
  std::function<void(std::int64_t, std::int64_t)> progress_;
  std::int64_t done_ = 0;
  std::int64_t fit_ = 0;
  std::int64_t unsettled_ = 0;
  std::vector<SampledGap> gaps_;
  std::vector<Least> low_;
  std::vector<Least> high_;
};

/// Blocks of builds until none is left; what goes wrong on a thread is thrown by the one that waits.
class Run {
 public:
  Run(const Plan& plan, const Options& options, Tally& tally) : plan_(plan), options_(options), tally_(tally) {}

  void on(int threads) {
    std::vector<std::thread> others;
    for (int i = 1; i < threads; ++i) {
      try {
        others.emplace_back([this] { work(); });
      } catch (const std::system_error&) {
        break;  // the system gives no more: fewer do it as well
      }
    }
    work();
    for (std::thread& other : others) other.join();
    if (fault_) std::rethrow_exception(fault_);
  }

 private:
  void work() try {
    Worker worker(plan_, options_.sampling.seed);
    std::vector<std::vector<Room>> rooms(block_size, std::vector<Room>(plan_.measures.size()));
    const std::int64_t builds = options_.sampling.builds;
    for (std::int64_t first = next_.fetch_add(block_size); first < builds; first = next_.fetch_add(block_size)) {
      const std::int64_t count = std::min(block_size, builds - first);
      for (std::int64_t i = 0; i < count; ++i)
        worker.build(static_cast<std::uint64_t>(first + i), rooms[static_cast<std::size_t>(i)]);
      tally_.add(rooms, count);
    }
  } catch (...) {
    const std::lock_guard lock(mutex_);
    fault_ = std::current_exception();
    next_ = options_.sampling.builds;  // nobody goes on
  }

  const Plan& plan_;
  const Options& options_;
  Tally& tally_;
  std::atomic<std::int64_t> next_{0};
  std::mutex mutex_;
  std::exception_ptr fault_;
};

int threads_for(const Options& options) {
  const std::int64_t blocks = (options.sampling.builds + block_size - 1) / block_size;
  const auto all = static_cast<std::int64_t>(std::max(1U, std::thread::hardware_concurrency()));
  return static_cast<int>(std::min<std::int64_t>(options.threads > 0 ? options.threads : all, blocks));
}

}  // namespace

Sampled sample(const Trial& trial, const Options& options) {
  if (trial.gaps.empty()) return {options.sampling.builds, options.sampling.builds, 0, {}};
  const Plan plan = planned(trial);
  Options asked = options;
  asked.sampling.builds = std::clamp<std::int64_t>(options.sampling.builds, 1, most_builds);
  Tally tally(trial.gaps.size(), asked);
  Run(plan, asked, tally).on(threads_for(asked));
  return tally.result();
}

}  // namespace baywright::fit
