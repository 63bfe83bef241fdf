// Geometry between two drives is asked for a pair at a time, the one as what the other's machine holds already; gaps
// are between two parts, so pairs are all there is to ask. The search gives each drive in turn one of its places, or
// none, and keeps the assignment that seats the most.
#include "fit/together.h"

#include "fit/clearance.h"
#include "fit/connect.h"
#include "fit/seat.h"

#include <algorithm>
#include <map>
#include <tuple>
#include <utility>

namespace baywright::fit {

namespace links = standards::links;

namespace {

constexpr long most_steps = 200'000;  // of the search; some seconds where every step is a new pair

struct Option {
  int place;
  Verdict verdict;
  double rate;  // MB/s
};

class Search {
 public:
  Search(const build::Build& build, const Check& check, const Options& options, bool accept_marginal)
      : build_(build), options_(options), accept_marginal_(accept_marginal) {
    for (const build::Drive& drive : build.drives) {
      std::vector<Option> list;
      for (const Seating& seating : check.seatings)
        if (seating.drive == drive.name && good(seating.verdict))
          list.push_back(
              {place_of(seating.place), seating.verdict, seating.link ? links::megabytes(*seating.link) : 0.0});
      std::stable_sort(list.begin(), list.end(), [](const Option& a, const Option& b) { return a.rate > b.rate; });
      places_.push_back(std::move(list));
    }
    chosen_.assign(build.drives.size(), -1);
    best_ = chosen_;
    // Drives with few places first: their conflicts show early.
    for (std::size_t i = 0; i < build.drives.size(); ++i) order_.push_back(i);
    std::stable_sort(order_.begin(), order_.end(),
                     [&](std::size_t a, std::size_t b) { return places_[a].size() < places_[b].size(); });
  }

  void run() { place_next(0, 0); }

  [[nodiscard]] const std::vector<int>& best() const { return best_; }
  [[nodiscard]] bool whole() const { return steps_ <= most_steps; }
  [[nodiscard]] const std::vector<Option>& options_of(std::size_t drive) const { return places_[drive]; }

  /// The link of a drive at its place once what the other used places take from it is gone.
  [[nodiscard]] Connection connection(std::size_t drive, const std::vector<int>& chosen) const {
    const int place = chosen[drive];
    build::Place left = build_.places[static_cast<std::size_t>(place)];
    for (std::size_t other = 0; other < chosen.size(); ++other) {
      if (chosen[other] < 0 || other == drive) continue;
      for (const build::Share& share : build_.places[static_cast<std::size_t>(chosen[other])].shares)
        if (share.place == place) left.bus = share.leaves;
    }
    return connect(build_.drives[drive], left);
  }

  /// Which of the drives that found a place keeps another one from one of its own, and by what.
  [[nodiscard]] InTheWay in_the_way(std::size_t drive, int place) {
    InTheWay out{build_.places[static_cast<std::size_t>(place)].name, {}, {}, {}};
    const auto by = [&](std::size_t other) {
      out.drive = build_.drives[other].name;
      out.at = build_.places[static_cast<std::size_t>(best_[other])].name;
    };
    for (std::size_t other = 0; other < best_.size(); ++other) {
      const int there = best_[other];
      if (there < 0 || (there == place && share_adapter(drive, other))) continue;
      if (there == place || shares_link(drive, place, other)) {
        by(other);
        return out;
      }
    }
    for (std::size_t other = 0; other < best_.size(); ++other) {
      if (best_[other] < 0) continue;
      const Finding* found = beside(other, best_[other], drive, place);
      if (found == nullptr) found = beside(drive, place, other, best_[other]);
      if (found == nullptr) continue;
      by(other);
      out.between = *found;
      return out;
    }
    return out;
  }

 private:
  /// Whether the two places take too much from each other.
  [[nodiscard]] bool shares_link(std::size_t drive, int place, std::size_t other) const {
    std::vector<int> two(best_.size(), -1);
    two[drive] = place;
    two[other] = best_[other];
    return connection(drive, two).questions.bus.answer != Answer::yes ||
           connection(other, two).questions.bus.answer != Answer::yes;
  }

  [[nodiscard]] bool good(Verdict verdict) const {
    return verdict == Verdict::fits || (accept_marginal_ && verdict == Verdict::marginal);
  }

  [[nodiscard]] int place_of(const std::string& name) const {
    const auto found = std::find_if(build_.places.begin(), build_.places.end(),
                                    [&](const build::Place& place) { return place.name == name; });
    return static_cast<int>(found - build_.places.begin());
  }

  /// Two drives in one adapter: the same name, another position in it.
  [[nodiscard]] bool share_adapter(std::size_t a, std::size_t b) const {
    const auto& one = build_.drives[a].worn;
    const auto& other = build_.drives[b].worn;
    return one && other && one->adapter == other->adapter && one->name == other->name &&
           one->position != other->position;
  }

  /// What keeps the second drive from its place while the first one is in; null: nothing.
  [[nodiscard]] const Finding* beside(std::size_t first, int at, std::size_t second, int there) {
    const auto key = std::tuple(first, at, second, there);
    if (const auto known = beside_.find(key); known != beside_.end()) return known->second ? &*known->second : nullptr;
    build::Build with = build_;
    with.places[static_cast<std::size_t>(at)].holds = static_cast<int>(with.held.size());
    with.held.push_back(build_.drives[first]);
    const Host host = compile(with);
    const build::Drive& drive = build_.drives[second];
    std::vector<Finding> findings;
    if (at != there) {
      findings = check_seating(host, with, drive, there, options_).findings;
    } else {
      const Seated seated = seat(host, with, drive, there);
      findings = clearances(host, with, seated, drive, options_);
      std::erase_if(findings, [&](const Finding& each) { return of_adapter(each, drive.worn->name); });
    }
    std::optional<Finding>& worst = beside_[key];
    for (Finding& each : findings)
      if (each.verdict && !good(*each.verdict) && (!worst || *each.verdict > *worst->verdict)) worst = std::move(each);
    return worst ? &*worst : nullptr;
  }

  /// A finding about the adapter that both share.
  [[nodiscard]] static bool of_adapter(const Finding& finding, const std::string& name) {
    return finding.between[0].starts_with(name) || finding.between[1].starts_with(name);
  }

  /// Whether all the places that are used leave each other enough.
  [[nodiscard]] bool shared_well() const {
    for (std::size_t i = 0; i < chosen_.size(); ++i)
      if (chosen_[i] >= 0 && connection(i, chosen_).questions.bus.answer != Answer::yes) return false;
    return true;
  }

  [[nodiscard]] bool may(std::size_t drive, int place) {
    for (std::size_t other = 0; other < chosen_.size(); ++other) {
      if (chosen_[other] < 0) continue;
      if (chosen_[other] == place && !share_adapter(drive, other)) return false;
    }
    chosen_[drive] = place;
    bool possible = shared_well();
    for (std::size_t other = 0; possible && other < chosen_.size(); ++other)
      if (other != drive && chosen_[other] >= 0)
        possible = !beside(other, chosen_[other], drive, place) && !beside(drive, place, other, chosen_[other]);
    chosen_[drive] = -1;
    return possible;
  }

  void place_next(std::size_t depth, std::size_t seated) {
    if (seated > most_) {
      most_ = seated;
      best_ = chosen_;
    }
    if (depth == order_.size() || seated + (order_.size() - depth) <= most_ || ++steps_ > most_steps) return;
    const std::size_t drive = order_[depth];
    for (const Option& option : places_[drive]) {
      if (most_ == order_.size()) return;
      if (!may(drive, option.place)) continue;
      chosen_[drive] = option.place;
      place_next(depth + 1, seated + 1);
      chosen_[drive] = -1;
    }
    place_next(depth + 1, seated);
  }

  const build::Build& build_;
  Options options_;
  bool accept_marginal_;
  std::vector<std::vector<Option>> places_;  // by drive, the fastest first
  std::vector<std::size_t> order_;
  std::vector<int> chosen_;  // place by drive, -1: none
  std::vector<int> best_;
  std::size_t most_ = 0;
  long steps_ = 0;
  std::map<std::tuple<std::size_t, int, std::size_t, int>, std::optional<Finding>> beside_;
};

}  // namespace

Together together(const build::Build& build, const Check& check, const Options& options, bool accept_marginal) {
  Search search(build, check, options, accept_marginal);
  search.run();
  Together out;
  out.whole = search.whole();
  const std::vector<int>& best = search.best();
  for (std::size_t i = 0; i < best.size(); ++i) {
    const build::Drive& drive = build.drives[i];
    const std::vector<Option>& places = search.options_of(i);
    if (best[i] < 0) {
      Left left{drive.name, {}, {}, {}, {}};
      for (const Seating& seating : check.seatings)
        if (seating.drive == drive.name && seating.questions.form_factor.answer == Answer::with_adapter)
          left.with_adapter.push_back(seating.place);
      for (const Seating& seating : check.seatings)
        if (seating.drive == drive.name && seating.verdict == Verdict::marginal && !accept_marginal)
          left.marginal_alone.push_back(seating.place);
      for (const Option& option : places) {
        left.fits_alone.push_back(build.places[static_cast<std::size_t>(option.place)].name);
        left.in_the_way.push_back(search.in_the_way(i, option.place));
      }
      out.left.push_back(std::move(left));
      continue;
    }
    const auto option = std::find_if(places.begin(), places.end(), [&](const Option& o) { return o.place == best[i]; });
    out.assigned.push_back({drive.name, build.places[static_cast<std::size_t>(best[i])].name, option->verdict,
                            search.connection(i, best).link});
  }
  for (std::size_t place = 0; place < build.places.size(); ++place) {
    if (std::find(best.begin(), best.end(), static_cast<int>(place)) == best.end()) continue;
    for (const build::Share& share : build.places[place].shares)
      out.costs.push_back({build.places[place].name, share.with, share.leaves});
  }
  return out;
}

}  // namespace baywright::fit
