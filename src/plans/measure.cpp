#include "plans/measure.h"

#include "standards/all_rows.h"
#include "tolerance/stack.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <set>
#include <utility>

namespace baywright::plans {

using fit::ChainLink;
using fit::Finding;
using fit::Seating;
using fit::Verdict;
using tolerance::Dimension;
using tolerance::Method;

namespace {

constexpr double first_reading_mm =
    0.1;                            // how closely a length that is known as a limit only is read: a caliper's usual
constexpr double worth_mm = 0.005;  // closer by less than this is no news

bool same(const Dimension& a, const Dimension& b) {
  return a.name == b.name && a.nominal == b.nominal && a.minus == b.minus && a.plus == b.plus;
}

double half(const Dimension& dimension) {
  return 0.5 * (dimension.minus + dimension.plus);  // infinite with an open side
}

/// The key that a reading is written to where the name of the length is not it.
std::string_view key_of(const Dimension& dimension) {
  struct Key {
    std::string_view name;  // how the length's begins
    std::string_view key;
  };
  static constexpr std::array keys{Key{"parts above the card", "top"},
                                   Key{"parts below the card", "bottom"},
                                   Key{"parts on the component side", "top"},
                                   Key{"parts on the solder side", "bottom"},
                                   Key{"mini card parts on top", "top"},
                                   Key{"mini card parts at the bottom", "bottom"},
                                   Key{"chips on top", "top"},
                                   Key{"chips underneath", "bottom"},
                                   Key{"card thickness", "thickness"},
                                   Key{"stand-off height", "standoff"},
                                   Key{"2.5-inch drive height", "height"},
                                   Key{"2.5-inch drive length", "length"},
                                   Key{"3.5-inch drive height", "height"},
                                   Key{"3.5-inch drive length", "length"},
                                   Key{"5.25-inch device height", "height"},
                                   Key{"5.25-inch device length", "length"},
                                   Key{"add-in card height", "height"},
                                   Key{"add-in card length", "length"}};
  for (const Key& each : keys)
    if (dimension.name.starts_with(each.name)) return each.key;
  return dimension.name.ends_with(" spacers") ? "spacers" : "";
}

/// The room that a standard gives the parts of a card, which they need not fill.
bool is_envelope(const Dimension& dimension) {
  const std::string_view key = key_of(dimension);
  return dimension.known != tolerance::Known::measured && (key == "top" || key == "bottom");
}

/// A length of a table that no key of a build file replaces.
bool is_fixed(const Dimension& dimension) {
  if (dimension.known == tolerance::Known::measured || !key_of(dimension).empty()) return false;
  static const std::set<std::string> names = [] {
    std::set<std::string> out;
    for (const standards::Rows& family : standards::all_rows())
      for (const Dimension& row : family.rows) out.insert(row.name);
    return out;
  }();
  return names.contains(dimension.name);
}

/// A play or the place of a hole has no size that a caliper could read.
bool can_be_read_closer(const Dimension& dimension) {
  return dimension.nominal > 0.0 && half(dimension) > finest_mm + worth_mm && !is_fixed(dimension);
}

/// A gap with a chain: what a reading bears on.
bool hangs(const Finding& finding) {
  return finding.verdict && finding.gap && !finding.chain.empty();
}

double rate_of(const Finding& finding, const Dimension& dimension) {
  for (const ChainLink& link : finding.chain)
    if (same(link.dimension, dimension)) return link.sensitivity;
  return 0.0;
}

struct Limits {
  double min = 0.0;
  double max = 0.0;
};

/// The limits of a gap with some of its lengths known to ± `to` about their nominal values.
Limits limits_with(const Finding& finding, const std::vector<Dimension>& known, double to, Method method) {
  method = tolerance::chain_method(method);
  std::vector<Dimension> narrowed;
  narrowed.reserve(finding.chain.size());
  for (const ChainLink& link : finding.chain) {
    narrowed.push_back(link.dimension);
    const bool read =
        std::any_of(known.begin(), known.end(), [&](const Dimension& d) { return same(d, link.dimension); });
    if (read) narrowed.back().minus = narrowed.back().plus = to;
  }
  std::vector<tolerance::Term> before;
  std::vector<tolerance::Term> after;
  for (std::size_t i = 0; i < finding.chain.size(); ++i) {
    before.push_back({finding.chain[i].sensitivity, &finding.chain[i].dimension});
    after.push_back({finding.chain[i].sensitivity, &narrowed[i]});
  }
  const tolerance::Spread was = tolerance::spread(before, method);
  const tolerance::Spread is = tolerance::spread(after, method);
  const fit::GapFigures& gap = *finding.gap;
  // Where a part stands tilted the corner that decides is not where the gap is nominal.
  const bool down = std::isfinite(gap.min) && std::isfinite(was.down) && !finding.drawn;
  const bool up = std::isfinite(gap.max) && std::isfinite(was.up) && !finding.drawn;
  return {(down ? gap.min + was.down : gap.nominal) - is.down, (up ? gap.max - was.up : gap.nominal) + is.up};
}

/// What becomes of the seating if the lengths read as they are now; marginal where that is still open.
Verdict verdict_with(const Seating& seating, const std::vector<Dimension>& known, double to, Method method) {
  bool all_fit = true;
  for (const Finding& finding : seating.findings) {
    if (!finding.verdict || *finding.verdict == Verdict::fits) continue;
    if (!hangs(finding)) {
      all_fit = false;
      continue;
    }
    const Limits limits = limits_with(finding, known, to, method);
    const Verdict verdict = fit::verdict_of(limits.min, limits.max, finding.gap->asked);
    if (verdict == Verdict::does_not_fit) return verdict;
    all_fit = all_fit && verdict == Verdict::fits;
  }
  return all_fit ? Verdict::fits : Verdict::marginal;
}

/// How closely these lengths have to be known, in hundredths; none: no reading does.
std::optional<double> needed(const Seating& seating, const std::vector<Dimension>& known, Method method) {
  if (verdict_with(seating, known, finest_mm, method) == Verdict::marginal) return std::nullopt;
  double good = finest_mm;
  double bad = 0.0;
  for (const Dimension& dimension : known) bad = std::max(bad, half(dimension));
  constexpr int halvings = 40;
  for (int i = 0; i < halvings; ++i) {
    const double middle = 0.5 * (good + bad);
    (verdict_with(seating, known, middle, method) == Verdict::marginal ? bad : good) = middle;
  }
  return std::floor(good * 100.0 + 1e-6) / 100.0;
}

/// Whether it may read so: what somebody published lies within its limits, what was measured may have been misread.
bool may_read(const Dimension& dimension, double mm) {
  if (!(mm > 0.0) || !std::isfinite(mm)) return false;
  if (dimension.known == tolerance::Known::measured) return true;
  const double least = is_envelope(dimension) ? std::min(lowest_parts_mm, dimension.low()) : dimension.low();
  return mm >= least && mm <= dimension.high();
}

/// What one reading tells of the gaps that hang on it; the worst of them says which way there is room.
void add_thresholds(Reading& reading, const Seating& seating, Method method) {
  struct Edge {
    double rate;
    double fits;   // mm: read so, this gap is enough
    double fails;  // and so it is not
  };
  std::vector<Edge> edges;
  bool others = false;  // do not fit, whatever is read
  for (const Finding& finding : seating.findings) {
    const double rate = hangs(finding) ? rate_of(finding, reading.dimension) : 0.0;
    if (rate == 0.0) {
      others = others || (finding.verdict && *finding.verdict != Verdict::fits);
      continue;
    }
    // Of where holes are, too long is as bad as too short: no bound to one side.
    if (finding.why.code == fit::Code::hole_reach && !reading.dimension.name.ends_with("hole diameter")) return;
    const Limits limits = limits_with(finding, {reading.dimension}, reading.to, method);
    const double nominal = reading.dimension.nominal;
    edges.push_back(
        {rate, nominal + (finding.gap->asked - limits.min) / rate, nominal + (finding.gap->asked - limits.max) / rate});
  }
  if (edges.empty()) return;
  reading.more_is_room = edges.front().rate > 0.0;
  const double sign = reading.more_is_room ? 1.0 : -1.0;
  double fits = edges.front().fits;
  double fails = edges.front().fails;
  for (const Edge& edge : edges) {
    if (edge.rate * sign < 0.0) continue;
    fits = sign * std::max(sign * fits, sign * edge.fits);
    fails = sign * std::max(sign * fails, sign * edge.fails);
  }
  const bool other_side = std::any_of(edges.begin(), edges.end(), [&](const Edge& edge) {
    return edge.rate * sign < 0.0 && !(sign * fits <= sign * edge.fits);
  });
  if (may_read(reading.dimension, fits) && !others && !other_side) reading.fits = fits;
  if (may_read(reading.dimension, fails)) reading.fails = fails;
}

/// The lengths of the gaps that are not sure, greatest share first, those known as a limit only before all.
std::vector<Dimension> candidates(const Seating& seating) {
  std::vector<Dimension> out;
  for (const Finding& finding : seating.findings) {
    if (!hangs(finding) || *finding.verdict == Verdict::fits) continue;
    for (const ChainLink& link : finding.chain)
      if (link.sensitivity != 0.0 && can_be_read_closer(link.dimension) &&
          std::none_of(out.begin(), out.end(), [&](const Dimension& d) { return same(d, link.dimension); }))
        out.push_back(link.dimension);
  }
  std::stable_partition(out.begin(), out.end(), [](const Dimension& dimension) { return dimension.open(); });
  return out;
}

Reading reading_of(const Dimension& dimension, double to) {
  Reading out;
  out.dimension = dimension;
  out.to = to;
  out.key = key_of(dimension);
  return out;
}

/// How near the edge it is, and what would be left of the variation.
void add_edge(Settling& settling, const Seating& seating, const std::vector<Dimension>& known, Method method) {
  for (const Finding& finding : seating.findings) {
    if (!hangs(finding) || *finding.verdict != Verdict::marginal) continue;
    const Limits at = limits_with(finding, known, finest_mm, method);
    const bool under = finding.gap->nominal < finding.gap->asked;
    const double remain = under ? at.max - finding.gap->nominal : finding.gap->nominal - at.min;
    if (!settling.first.empty() && remain <= settling.remain) continue;
    settling.first = finding.between[0];
    settling.second = finding.between[1];
    settling.room = std::abs(finding.gap->nominal - finding.gap->asked);
    settling.remain = remain;
  }
}

}  // namespace

std::optional<Settling> what_settles(const Seating& seating, Method method) {
  if (seating.verdict != Verdict::marginal) return std::nullopt;
  const std::vector<Dimension> all = candidates(seating);
  Settling out;
  add_edge(out, seating, all, method);
  if (out.first.empty()) return std::nullopt;  // no gap makes it so
  const auto count = static_cast<std::size_t>(
      std::count_if(all.begin(), all.end(), [](const Dimension& dimension) { return dimension.open(); }));
  if (count > 0) {
    for (std::size_t i = 0; i < std::min<std::size_t>(count, 2); ++i)
      out.readings.push_back(reading_of(all[i], first_reading_mm));
    if (count == 1) add_thresholds(out.readings.front(), seating, method);
    return out;
  }
  for (const Dimension& one : all) {
    const auto to = needed(seating, {one}, method);
    if (!to) continue;
    out.readings = {reading_of(one, *to)};
    out.then = verdict_with(seating, {one}, *to, method);
    add_thresholds(out.readings.front(), seating, method);
    return out;
  }
  for (std::size_t j = 1; j < all.size(); ++j)
    for (std::size_t i = 0; i < j; ++i) {
      const std::vector<Dimension> pair = {all[i], all[j]};
      const auto to = needed(seating, pair, method);
      if (!to) continue;
      out.then = verdict_with(seating, pair, *to, method);
      for (const Dimension& each : pair) out.readings.push_back(reading_of(each, *to));
      return out;
    }
  for (std::size_t first = 3; first <= all.size(); ++first) {
    const std::vector<Dimension> known(all.begin(), all.begin() + static_cast<std::ptrdiff_t>(first));
    const auto to = needed(seating, known, method);
    if (!to) continue;
    out.then = verdict_with(seating, known, *to, method);
    for (const Dimension& each : known) out.readings.push_back(reading_of(each, *to));
    return out;
  }
  return out;
}

std::vector<std::optional<Settling>> what_settles(const fit::Check& check) {
  std::vector<std::optional<Settling>> out;
  for (const Seating& seating : check.seatings) out.push_back(what_settles(seating, check.method));
  return out;
}

std::vector<Reading> worth_measuring(const Seating& seating, Method method) {
  std::vector<const Finding*> order;
  if (seating.deciding) order.push_back(&seating.findings[*seating.deciding]);
  for (const Finding& finding : seating.findings)
    if (finding.verdict && *finding.verdict != Verdict::fits) order.push_back(&finding);
  std::vector<Reading> out;
  if (const auto settling = what_settles(seating, method)) out = settling->readings;
  for (const Finding* finding : order)
    for (const ChainLink& link : finding->chain) {
      if (link.sensitivity == 0.0 || !can_be_read_closer(link.dimension)) continue;
      if (std::any_of(out.begin(), out.end(), [&](const Reading& r) { return same(r.dimension, link.dimension); }))
        continue;
      const bool loose = half(link.dimension) > first_reading_mm + worth_mm;
      out.push_back(reading_of(link.dimension, loose ? first_reading_mm : finest_mm));
    }
  for (Reading& reading : out)
    if (!reading.fits && !reading.fails) add_thresholds(reading, seating, method);
  return out;
}

}  // namespace baywright::plans
