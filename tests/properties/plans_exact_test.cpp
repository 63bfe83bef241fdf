// The search against one that tries everything: each change, each pair of changes that are not enough alone, each of
// their variants one after the other, with nothing learnt. Ways in are tried straight only by both.
#include "fit/clearance.h"
#include "fit/connect.h"
#include "fit/host.h"
#include "fit/limits.h"
#include "fit/seat.h"
#include "plans/catalogue.h"
#include "properties/random_builds.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <functional>
#include <map>
#include <set>
#include <tuple>

using namespace baywright;

namespace {

const char* const file = BAYWRIGHT_SOURCE "/tests/properties/parts/random.build.toml";

using Changes = std::vector<plans::Change>;

/// Something that fits, with what it leaves to the user.
struct Way {
  Changes changes;
  std::set<plans::Caution> cautions;
};

/// Which comes first: what fits; fewer limits that nothing checks; fewer changes; changes that can be undone; what
/// costs less, as plans.h ranks prices.
using Rank = std::tuple<int, std::size_t, int, int>;

int cost(plans::Price price) {
  static const std::map<plans::Price, int> costs = {{plans::Price::screws, 1},       {plans::Price::warmer, 2},
                                                    {plans::Price::slower, 2},       {plans::Price::less_capacity, 3},
                                                    {plans::Price::warranty, 4},     {plans::Price::metal_work, 5},
                                                    {plans::Price::undone_hardly, 6}};
  return costs.at(price);
}

Rank rank(const Way& way) {
  using plans::Caution;
  const std::set<Caution> limits = {Caution::screws_longer, Caution::no_screw_suits, Caution::opening_moves,
                                    Caution::brackets_move, Caution::hole_there,     Caution::sheet_only};
  int open = 0;
  for (const Caution caution : way.cautions) open += limits.contains(caution) ? 1 : 0;
  int hard = 0;
  int price = 0;
  for (const plans::Change& change : way.changes) {
    hard += change.reversible ? 0 : 1;
    for (const plans::Price each : change.prices) price += cost(each);
  }
  return {open, way.changes.size(), hard, price};
}

/// Everything that fits, found by trying it.
class All {
 public:
  All(std::string text, const build::Build& build, const plans::Search& search)
      : text_(std::move(text)), build_(build), search_(search) {
    options_.quick = asked_.quick = true;
    check_ = fit::check(build_, options_);
    heatsinks_ = plans::heatsinks_of_library(build, file);
  }

  std::vector<Way> find() {
    for (std::size_t d = 0; d < build_.drives.size(); ++d)
      for (std::size_t p = 0; p < build_.places.size(); ++p) {
        const bool other_drive = build_.drives[d].name != search_.drive;
        const bool other_place = build_.places[p].name != search_.place;
        if (!(other_drive && other_place)) at(d, p, other_drive || other_place);
      }
    return std::move(found_);
  }

 private:
  void at(std::size_t drive, std::size_t place, bool moved) {
    drive_ = drive;
    place_ = place;
    asked_.drive = build_.drives[drive].name;
    asked_.place = build_.places[place].name;
    moves_.clear();
    if (asked_.drive != search_.drive)
      moves_.push_back({.kind = plans::Kind::other_drive, .to = asked_.drive, .prices = {plans::Price::less_capacity}});
    if (asked_.place != search_.place) moves_.push_back({.kind = plans::Kind::other_place, .to = asked_.place});
    const auto all = plans::options({build_, build_.drives[drive], static_cast<int>(place)},
                                    check_.seatings[drive * build_.places.size() + place], heatsinks_);
    if (moved) attempt({});
    std::vector<bool> alone;
    for (const plans::Option& option : all) alone.push_back(attempt({&option}));
    if (moved) return;
    // A pair of which one is enough alone fits no better than that one.
    for (std::size_t i = 0; i < all.size(); ++i)
      for (std::size_t j = i + 1; j < all.size(); ++j)
        if (!alone[i] && !alone[j] &&
            std::find_first_of(all[i].holds.begin(), all[i].holds.end(), all[j].holds.begin(), all[j].holds.end()) ==
                all[i].holds.end())
          attempt({&all[i], &all[j]});
  }

  bool attempt(const std::vector<const plans::Option*>& options) {
    std::vector<build::Edit> edits;
    if (!variants(options, 0, edits)) return false;
    Way one{moves_, {}};
    for (const plans::Option* option : options) {
      one.changes.push_back(option->change);
      one.cautions.insert(option->cautions.begin(), option->cautions.end());
    }
    found_.push_back(std::move(one));
    return true;
  }

  bool variants(const std::vector<const plans::Option*>& options, std::size_t from, std::vector<build::Edit>& edits) {
    if (from == options.size()) return fits(edits);
    return std::any_of(options[from]->variants.begin(), options[from]->variants.end(),
                       [&](const plans::Variant& variant) {
                         std::vector<build::Edit> more = edits;
                         more.insert(more.end(), variant.edits.begin(), variant.edits.end());
                         return variants(options, from + 1, more);
                       });
  }

  bool fits(const std::vector<build::Edit>& edits) {
    const auto text = build::edited(text_, edits, file);
    if (!std::holds_alternative<std::string>(text)) return false;
    const auto read = build::read_text(std::get<std::string>(text), file);
    if (!std::holds_alternative<build::Build>(read)) return false;
    const build::Build& changed = std::get<build::Build>(read);
    if (too_near(changed) || machine_suffers(changed)) return false;
    const fit::Check there = fit::check(changed, asked_);
    if (there.seatings.size() != 1 || there.seatings.front().verdict != fit::Verdict::fits) return false;
    const fit::Check now = fit::check(changed, options_);
    for (std::size_t i = 0; i < now.seatings.size(); ++i) {
      const fit::Seating& seating = now.seatings[i];
      const bool other = seating.drive != asked_.drive && seating.place != asked_.place;
      if (other && check_.seatings[i].verdict == fit::Verdict::fits && seating.verdict != fit::Verdict::fits)
        return false;
    }
    // What ran into each other before may stay so, no deeper.
    const auto depth = [](const fit::Finding& note) {
      return note.why.code == fit::Code::parts_overlap ? note.why.figure("depth") : 0.0;
    };
    return std::all_of(now.notes.begin(), now.notes.end(), [&](const fit::Finding& note) {
      return depth(note) == 0.0 ||
             std::any_of(check_.notes.begin(), check_.notes.end(), [&](const fit::Finding& before) {
               return before.between == note.between && depth(note) <= depth(before) + 1e-6;
             });
    });
  }

  /// Whether parts of the machine come nearer than touching at some limits, which did not before, or stand on the other
  /// side of each other: sheets and boxes square to the axes.
  [[nodiscard]] bool machine_suffers(const build::Build& changed) const {
    const fit::Host was = fit::compile(build_);
    const fit::Host is = fit::compile(changed);
    for (std::size_t i = 0; i < was.parts.size(); ++i)
      for (std::size_t j = 0; j < i; ++j)
        for (int e = 0; e < was.parts[i].count; ++e)
          for (int f = 0; f < was.parts[j].count; ++f) {
            const int a = was.parts[i].first + e;
            const int b = was.parts[j].first + f;
            const double least = least_gap(is, is.parts[i].first + e, is.parts[j].first + f);
            if (least < -1e-6 && least < least_gap(was, a, b) - 1e-6) return true;
            const geometry::Bounds& before_a = was.scene.element(a).bounds;
            const geometry::Bounds& before_b = was.scene.element(b).bounds;
            const geometry::Bounds& after_a = is.scene.element(is.parts[i].first + e).bounds;
            const geometry::Bounds& after_b = is.scene.element(is.parts[j].first + f).bounds;
            const bool over = before_a.low.x < before_b.high.x && before_a.high.x > before_b.low.x &&
                              before_a.low.y < before_b.high.y && before_a.high.y > before_b.low.y;
            if (over && before_a.low.z >= before_b.high.z && after_a.high.z <= after_b.low.z) return true;
            if (over && before_a.high.z <= before_b.low.z && after_a.low.z >= after_b.high.z) return true;
          }
    return false;
  }
  [[nodiscard]] double least_gap(const fit::Host& host, int a, int b) const {
    return fit::limits(host.scene, host.scene.element(a), host.scene.element(b), tolerance::Method::worst, 0.0).min;
  }

  /// Whether a gap where the drive sits is too small, which is mostly enough to say no, and quick. Changes leave drives
  /// and places in their order.
  [[nodiscard]] bool too_near(const build::Build& changed) const {
    const build::Drive& drive = changed.drives[drive_];
    const auto place = static_cast<int>(place_);
    if (!fit::seats(drive, fit::connect(drive, changed.places[place_]).questions)) return false;
    const fit::Host host = fit::compile(changed);
    const auto gaps = fit::clearances(host, changed, fit::seat(host, changed, drive, place), drive, options_);
    return std::any_of(gaps.begin(), gaps.end(),
                       [](const fit::Finding& gap) { return gap.verdict && *gap.verdict != fit::Verdict::fits; });
  }

  std::string text_;
  const build::Build& build_;
  const plans::Search& search_;
  fit::Options options_;
  fit::Check check_;
  std::vector<parts::Part> heatsinks_;
  std::size_t drive_ = 0;
  std::size_t place_ = 0;
  fit::Options asked_;  // for that drive at that place
  Changes moves_;
  std::vector<Way> found_;
};

/// The kinds of change that a plan has.
std::multiset<plans::Kind> kinds(const Changes& changes) {
  std::multiset<plans::Kind> out;
  for (const plans::Change& change : changes) out.insert(change.kind);
  return out;
}

bool within(const std::multiset<plans::Kind>& a, const std::multiset<plans::Kind>& b) {
  return std::includes(b.begin(), b.end(), a.begin(), a.end());
}

/// Of so many builds that have something wrong; at least so many of them need two changes.
void compare(const std::function<std::string()>& make, int builds, int least_pairs) {
  int asked = 0;
  int with_plans = 0;
  int pairs = 0;
  while (asked < builds) {
    const std::string text = make();
    CAPTURE(text);
    const auto read = build::read_text(text, file);
    if (const auto* fault = std::get_if<parts::Fault>(&read)) FAIL(fault->text());
    plans::Options options;
    options.seconds = 1000.0;
    options.fit.quick = true;
    const auto searched = plans::search(text, file, options);
    REQUIRE(std::holds_alternative<plans::Search>(searched));
    const auto& search = std::get<plans::Search>(searched);
    if (search.before.verdict == fit::Verdict::fits) continue;
    ++asked;
    REQUIRE(search.whole);
    const bool some = !search.plans.empty() && search.plans.front().after.verdict == fit::Verdict::fits;
    with_plans += some ? 1 : 0;
    const std::vector<Way> all = All(text, std::get<build::Build>(read), search).find();
    CHECK(some == !all.empty());
    CHECK(search.contradiction.has_value() == !some);
    if (!some || all.empty()) continue;
    const Way& best =
        *std::min_element(all.begin(), all.end(), [](const Way& a, const Way& b) { return rank(a) < rank(b); });
    const plans::Plan& first = search.plans.front();
    CHECK(rank({first.changes, {first.cautions.begin(), first.cautions.end()}}) == rank(best));
    pairs += best.changes.size() == 2 ? 1 : 0;
    // Nothing that fits asks for other kinds of change than all that is shown.
    for (const Way& way : all) {
      const Changes& one = way.changes;
      const bool shown = std::any_of(search.plans.begin(), search.plans.end(),
                                     [&](const plans::Plan& plan) { return within(kinds(plan.changes), kinds(one)); });
      CHECK(shown);
      // Of spacers and washers at one part the thinnest that do.
      for (const plans::Plan& plan : search.plans) {
        const plans::Change& change = plan.changes.front();
        if (plan.changes.size() == 1 && one.size() == 1 && change.kind == plans::Kind::spacer &&
            one[0].kind == change.kind && one[0].what == change.what)
          CHECK(change.value <= one[0].value + 1e-9);
      }
    }
  }
  // The cases have to be met: builds with plans and without, and some that one change does not mend.
  MESSAGE(with_plans << " of " << asked << " have plans, " << pairs << " of these with two changes");
  CHECK(with_plans >= asked * 3 / 10);
  CHECK(with_plans <= asked * 7 / 10);
  CHECK(pairs >= least_pairs);
}

}  // namespace

TEST_CASE("no better plan is found by trying everything: cards under trays") {
  test::RandomBuilds random(11);
  compare([&] { return random.under_tray(); }, 35, 1);
}

TEST_CASE("no better plan is found by trying everything: heatsinks under trays") {
  test::RandomBuilds random(12);
  compare([&] { return random.under_cover(); }, 12, 1);
}

TEST_CASE("no better plan is found by trying everything: drives in bays") {
  test::RandomBuilds random(13);
  compare([&] { return random.in_bays(); }, 155, 20);
}
