// The search goes by the number of changes, fewest first, so what it has when it is stopped is the best there is of
// that number. What holds a change that suffices alone is not tried: that cuts the combinations down to those of
// changes of which none is enough. A plan that fits wherever it is checked comes before one that leaves limits to the
// user, however few changes that one has.
#include "fit/seat.h"
#include "plans/contradiction.h"
#include "plans/plan.h"
#include "plans/trial.h"

#include <algorithm>
#include <map>
#include <tuple>
#include <utility>

namespace baywright::plans {

namespace {

/// A drive at a place, with the moves that bring it there.
struct Seat {
  std::size_t drive;
  std::size_t place;
  std::vector<Change> moves;
};

/// What a plan asks for: by key of the change how much of it; and how many limits nothing checks.
struct Asks {
  std::map<std::string, double> changes;
  std::ptrdiff_t unchecked = 0;
};

std::ptrdiff_t unchecked_of(const std::vector<Caution>& cautions) {
  return std::count_if(cautions.begin(), cautions.end(), unchecked);
}

struct Found {
  Plan plan;
  Asks asks;
};

bool as_little(const Asks& a, const Asks& b) {
  return std::all_of(a.changes.begin(), a.changes.end(),
                     [&](const auto& ask) { return ask.second <= b.changes.at(ask.first) + 1e-12; });
}

/// Whether a plan that asks `a` and fits makes one needless that asks `b`: all its changes are among those of `b`, and
/// fewer of them, or each as small; and it leaves no more unchecked.
bool makes_needless(const Asks& a, const Asks& b) {
  if (a.unchecked > b.unchecked) return false;
  if (!std::all_of(a.changes.begin(), a.changes.end(), [&](const auto& ask) { return b.changes.contains(ask.first); }))
    return false;
  return a.changes.size() < b.changes.size() || as_little(a, b);
}

/// How hard a price is to pay: what bends or voids comes last.
int weight(Price price) {
  switch (price) {
    case Price::screws:
      return 1;
    case Price::warmer:
    case Price::slower:
      return 2;
    case Price::less_capacity:
      return 3;
    case Price::warranty:
      return 4;
    case Price::metal_work:
      return 5;
    case Price::undone_hardly:
      return 6;
  }
  return 0;
}

auto rank(const Plan& plan) {
  int hard = 0;
  int price = 0;
  for (const Change& change : plan.changes) {
    hard += change.reversible ? 0 : 1;
    for (const Price each : change.prices) price += weight(each);
  }
  return std::tuple(plan.after.verdict, unchecked_of(plan.cautions), plan.changes.size(), hard, price, -plan.room);
}

class Searching {
 public:
  Searching(const build::Build& build, const fit::Check& check, std::size_t worst, std::string_view text,
            const std::filesystem::path& file, const Options& options)
      : build_(build),
        check_(check),
        before_(check.seatings[worst]),
        heatsinks_(heatsinks_of_library(build, file)),
        options_(options),
        trials_(text, file, build, check, before_, options) {
    for (std::size_t d = 0; d < build.drives.size(); ++d)
      for (std::size_t p = 0; p < build.places.size(); ++p) add_seat(d, p);
    // Moves cost nothing to try: how they turn out is known already.
    std::stable_sort(seats_.begin(), seats_.end(),
                     [](const Seat& a, const Seat& b) { return a.moves.size() > b.moves.size(); });
    catalogues_.resize(seats_.size());
  }

  void run() {
    for (int changes = 1; changes <= std::clamp(options_.most_changes, 1, 3) && !trials_.stopped(); ++changes) {
      const auto most = static_cast<std::size_t>(changes);
      counting_ = true;
      each(most);
      counting_ = false;
      each(most);
    }
  }

  [[nodiscard]] std::vector<Plan> plans() {
    const bool fits = std::any_of(found_.begin(), found_.end(),
                                  [](const Found& each) { return each.plan.after.verdict == fit::Verdict::fits; });
    if (fits) std::erase_if(found_, [](const Found& each) { return each.plan.after.verdict != fit::Verdict::fits; });
    std::vector<Plan> out;
    for (std::size_t i = 0; i < found_.size(); ++i)
      if (!needless(i)) out.push_back(std::move(found_[i].plan));
    std::stable_sort(out.begin(), out.end(), [](const Plan& a, const Plan& b) { return rank(a) < rank(b); });
    return out;
  }

  [[nodiscard]] Trials& trials() { return trials_; }

 private:
  void add_seat(std::size_t drive, std::size_t place) {
    Seat seat{drive, place, {}};
    if (build_.drives[drive].name != before_.drive)
      seat.moves.push_back({.kind = Kind::other_drive,
                            .what = before_.drive,
                            .to = build_.drives[drive].name,
                            .prices = {Price::less_capacity}});
    if (build_.places[place].name != before_.place && !seat.moves.empty())
      return;  // neither the drive nor the place that was asked about
    if (build_.places[place].name != before_.place)
      seat.moves.push_back({.kind = Kind::other_place, .what = before_.drive, .to = build_.places[place].name});
    seats_.push_back(std::move(seat));
  }

  [[nodiscard]] const fit::Seating& now(const Seat& seat) const {
    return check_.seatings[seat.drive * build_.places.size() + seat.place];
  }

  [[nodiscard]] const std::vector<Option>& catalogue(std::size_t seat) {
    if (!catalogues_[seat])
      catalogues_[seat] =
          plans::options({build_, build_.drives[seats_[seat].drive], static_cast<int>(seats_[seat].place)},
                         now(seats_[seat]), heatsinks_);
    return *catalogues_[seat];
  }

  /// Every plan of so many changes: tried, or counted.
  void each(std::size_t changes) {
    for (std::size_t i = 0; i < seats_.size() && !trials_.stopped(); ++i) {
      if (seats_[i].moves.size() > changes) continue;
      std::vector<const Option*> chosen;
      extend(i, chosen, 0, changes - seats_[i].moves.size());
    }
  }

  void extend(std::size_t seat, std::vector<const Option*>& chosen, std::size_t from, std::size_t more) {
    if (trials_.stopped()) return;
    if (more == 0) {
      visit(seats_[seat], chosen);
      return;
    }
    const std::vector<Option>& all = catalogue(seat);
    for (std::size_t i = from; i < all.size(); ++i) {
      const Option& option = all[i];
      const bool clash = std::any_of(chosen.begin(), chosen.end(), [&](const Option* other) {
        return std::any_of(option.holds.begin(), option.holds.end(), [&](const std::string& hold) {
          return std::find(other->holds.begin(), other->holds.end(), hold) != other->holds.end();
        });
      });
      if (clash) continue;
      chosen.push_back(&option);
      extend(seat, chosen, i + 1, more - 1);
      chosen.pop_back();
    }
  }

  void visit(const Seat& seat, const std::vector<const Option*>& chosen) {
    if (seat.moves.empty() && chosen.empty()) return;
    if (counting_) {
      ++of_;
      return;
    }
    ++done_;
    if (options_.progress && !options_.progress(done_, of_)) trials_.stop();
    Asks asks;
    for (const Change& move : seat.moves) asks.changes[std::string(word(move.kind)) + ' ' + move.to] = 1.0;
    std::vector<Caution> cautions;
    for (const Option* option : chosen) {
      asks.changes[option->key] = option->amount;
      for (const Caution caution : option->cautions) add_once(cautions, caution);
    }
    asks.unchecked = unchecked_of(cautions);
    const bool needless = std::any_of(found_.begin(), found_.end(), [&](const Found& each) {
      return each.plan.after.verdict == fit::Verdict::fits && makes_needless(each.asks, asks);
    });
    if (needless) return;
    auto plan = trials_.run(build_.drives[seat.drive].name, build_.places[seat.place].name, seat.moves, chosen);
    if (plan) found_.push_back({std::move(*plan), std::move(asks)});
  }

  /// Of those that ask the same the one with most room stays, then the first.
  [[nodiscard]] bool needless(std::size_t which) const {
    const Found& one = found_[which];
    for (std::size_t i = 0; i < found_.size(); ++i) {
      const Found& other = found_[i];
      if (i == which || other.plan.after.verdict > one.plan.after.verdict || !makes_needless(other.asks, one.asks))
        continue;
      if (!makes_needless(one.asks, other.asks)) return true;
      if (other.plan.room > one.plan.room || (other.plan.room == one.plan.room && i < which)) return true;
    }
    return false;
  }

  const build::Build& build_;
  const fit::Check& check_;
  const fit::Seating& before_;
  std::vector<parts::Part> heatsinks_;
  const Options& options_;
  Trials trials_;
  std::vector<Seat> seats_;
  std::vector<std::optional<std::vector<Option>>> catalogues_;
  std::vector<Found> found_;
  bool counting_ = false;
  int done_ = 0;
  int of_ = 0;
};

/// The seating that is asked about, in the check of all.
std::size_t asked_for(const fit::Check& all, const fit::Options& options) {
  fit::Check some;
  std::vector<std::size_t> which;
  for (std::size_t i = 0; i < all.seatings.size(); ++i) {
    const fit::Seating& seating = all.seatings[i];
    if ((!options.drive.empty() && seating.drive != options.drive) ||
        (!options.place.empty() && seating.place != options.place))
      continue;
    some.seatings.push_back(seating);
    which.push_back(i);
  }
  return which.empty() ? all.seatings.size() : which[fit::worst(some)];
}

}  // namespace

std::variant<Search, parts::Fault> search(std::string_view text, const std::filesystem::path& file,
                                          const Options& options) {
  auto read = build::read_text(text, file);
  if (auto* fault = std::get_if<parts::Fault>(&read)) return std::move(*fault);
  const build::Build& build = std::get<build::Build>(read);
  fit::Options all = options.fit;
  all.drive.clear();
  all.place.clear();
  const fit::Check check = fit::check(build, all);
  const std::size_t worst = asked_for(check, options.fit);
  if (worst >= check.seatings.size())
    return parts::Fault{file.string(), 0, 0, "it has no such drive or place", "name them as the file does"};
  Search out;
  out.before = check.seatings[worst];
  out.drive = out.before.drive;
  out.place = out.before.place;
  out.title = check.title;
  out.method = check.method;
  out.sampling = check.sampling;
  out.clearance = check.clearance;
  if (out.before.verdict == fit::Verdict::fits) return out;
  Searching searching(build, check, worst, text, file, options);
  searching.run();
  out.whole = !searching.trials().stopped();
  out.tried = searching.trials().tried();
  out.plans = searching.plans();
  const bool fits = !out.plans.empty() && out.plans.front().after.verdict == fit::Verdict::fits;
  if (!fits) out.contradiction = contradict(build, out.before, options.fit);
  return out;
}

}  // namespace baywright::plans
