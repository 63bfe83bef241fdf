#include "fit/sampled_findings.h"

#include "standards/fasteners.h"

#include <algorithm>
#include <limits>
#include <utility>

namespace baywright::fit {

using tolerance::Dimension;

namespace {

// What a linear chain may be wrong by: 0.002 mm at the most in the tests that hold it against all corners; five times
// that.
constexpr double chain_error_mm = 0.01;

constexpr std::int64_t builds_where_sure = 20'000;
constexpr std::int64_t builds_of_models =
    3'000;  // of these where a mesh is measured, which takes a hundred times as long

bool same(const Dimension& a, const Dimension& b) {
  return a.name == b.name && a.nominal == b.nominal && a.minus == b.minus && a.plus == b.plus;
}

/// The pairs of solids between the two parts of a finding, without those that another is always nearer than.
std::vector<Near> pairs_of(const Finding& finding, const Scene& scene, std::span<const Near> near) {
  std::vector<Near> pairs;
  for (const Near& pair : near)
    if (scene.element(pair.a).part == finding.between[0] && scene.element(pair.b).part == finding.between[1])
      pairs.push_back(pair);
  double nearest = std::numeric_limits<double>::infinity();
  for (const Near& pair : pairs) nearest = std::min(nearest, pair.max - pair.asked);
  // One that always has room cannot fail a build, whatever the others do.
  std::erase_if(pairs, [&](const Near& pair) { return pair.min - pair.asked > std::max(0.0, nearest); });
  return pairs;
}

/// What of a hole's chain is play of the screws; the rest is how far the holes are off.
bool is_play(const ChainLink& link, const build::Drive& drive, const build::Bay& bay) {
  const std::string& name = link.dimension.name;
  if (name == bay.fixing->diameter.dimension.name) return true;
  if (name == standards::fasteners::thread(bay.fixing->thread)->major.name) return true;
  if (!bay.width) return false;
  const auto width = static_cast<std::size_t>(drive.cased.width.shares[0].dimension);
  return name == bay.width->dimension.name || name == drive.cased.part.dimensions[width].name;
}

class Gaps {
 public:
  Gaps(const Seated& seated, const build::Drive& drive, const build::Place& place, std::span<const Near> near)
      : seated_(seated), drive_(drive), place_(place), near_(near) {
    for (std::size_t i = 0; i < seated.scene.values.size(); ++i)
      dimensions_.push_back(seated.scene.dimension(static_cast<int>(i)));
  }

  /// The finding as a gap that can be drawn; none where it is no gap or hangs on an open side.
  [[nodiscard]] std::optional<AskedGap> of(const Finding& finding) {
    if (!finding.gap || !finding.verdict) return std::nullopt;
    AskedGap gap;
    if (finding.kind == Kind::clearance) {
      gap.pairs = pairs_of(finding, seated_.scene, near_);
      const bool open = std::any_of(gap.pairs.begin(), gap.pairs.end(), [](const Near& pair) { return pair.open; });
      if (gap.pairs.empty() || open) return std::nullopt;
    } else if (finding.kind == Kind::holes || finding.kind == Kind::screw || finding.kind == Kind::connector ||
               finding.kind == Kind::sheet || finding.kind == Kind::standoff) {
      for (const ChainLink& link : finding.chain)
        if (link.dimension.open()) return std::nullopt;
      gap.sum = sum_of(finding);
    } else {
      return std::nullopt;
    }
    return gap;
  }

  [[nodiscard]] Trial trial(std::vector<AskedGap> gaps) const { return {&seated_.scene, dimensions_, std::move(gaps)}; }

 private:
  [[nodiscard]] Sum sum_of(const Finding& finding) {
    const auto* bay = std::get_if<build::Bay>(&place_.socket);
    Sum sum;
    sum.base = finding.gap->nominal - finding.gap->asked;
    const bool reach = finding.why.code == Code::hole_reach && bay != nullptr;
    if (reach) {
      sum.off = finding.why.figure("off");
      sum.base += sum.off;
    }
    for (const ChainLink& link : finding.chain) {
      const int dimension = index_of(link.dimension);
      if (reach && !is_play(link, drive_, *bay))
        sum.off_terms.emplace_back(dimension, -link.sensitivity);
      else
        sum.terms.emplace_back(dimension, link.sensitivity);
    }
    return sum;
  }

  /// A chain names its dimensions; where the seating has the same one, both are drawn as one.
  [[nodiscard]] int index_of(const Dimension& dimension) {
    const std::size_t first = seated_.scene.values.size() - seated_.scene.dimensions.size();  // behind the machine's
    for (std::size_t i = first; i < dimensions_.size(); ++i)
      if (same(dimensions_[i], dimension)) return static_cast<int>(i);
    dimensions_.push_back(dimension);
    return static_cast<int>(dimensions_.size()) - 1;
  }

  const Seated& seated_;
  const build::Drive& drive_;
  const build::Place& place_;
  std::span<const Near> near_;
  std::vector<Dimension> dimensions_;
};

/// Findings with their gaps, to be drawn together.
struct Drawn {
  std::vector<Finding*> findings;
  std::vector<AskedGap> gaps;

  void add(Finding& finding, AskedGap gap) {
    findings.push_back(&finding);
    gaps.push_back(std::move(gap));
  }
};

void settle(Finding& finding, const SampledGap& found, std::int64_t builds) {
  finding.share = static_cast<double>(found.enough) / static_cast<double>(builds);
  if (builds < fewest_for_limits) return;
  finding.drawn = true;
  finding.gap->min = found.low + finding.gap->asked;
  finding.gap->max = found.high + finding.gap->asked;
  if (finding.verdict == Verdict::undecided && found.unsettled > 0) return;
  finding.verdict = verdict_of(finding.gap->min, finding.gap->max, finding.gap->asked);
}

}  // namespace

std::optional<JointShare> sample_findings(std::vector<Finding>& findings, const Seated& seated,
                                          const build::Drive& drive, const build::Place& place,
                                          std::span<const Near> near, const Options& options) {
  Gaps gaps(seated, drive, place, near);
  Drawn sure;
  Drawn hopeless;
  Drawn doubtful;
  bool models = false;
  bool known = true;
  bool never = false;
  bool always = true;  // by the worst case
  for (Finding& finding : findings) {
    if (!finding.verdict) continue;
    always = always && finding.verdict == Verdict::fits;
    if (auto gap = gaps.of(finding)) {
      const bool room = finding.verdict == Verdict::fits && finding.gap->min - finding.gap->asked > chain_error_mm;
      const bool none =
          finding.verdict == Verdict::does_not_fit && finding.gap->asked - finding.gap->max > chain_error_mm;
      for (const Near& pair : gap->pairs)
        models = models || seated.scene.element(pair.a).placed.solid.mesh() != nullptr ||
                 seated.scene.element(pair.b).placed.solid.mesh() != nullptr;
      (room ? sure : none ? hopeless : doubtful).add(finding, std::move(*gap));
    } else if (finding.verdict == Verdict::does_not_fit) {
      never = true;
    } else if (finding.verdict != Verdict::fits) {
      known = false;
    }
  }
  // What is sure in the worst case, either way, is so in every build, and fewer builds show its limits well enough.
  Options few = options;
  few.sampling.builds = std::min(options.sampling.builds, models ? builds_of_models : builds_where_sure);
  few.progress = nullptr;
  const Sampled shown = sample(gaps.trial(sure.gaps), few);
  for (std::size_t i = 0; i < sure.findings.size(); ++i)
    if (shown.gaps[i].enough == shown.builds)
      settle(*sure.findings[i], shown.gaps[i], shown.builds);
    else
      doubtful.add(*sure.findings[i], sure.gaps[i]);  // the chain was not the whole truth
  const Sampled failing = sample(gaps.trial(hopeless.gaps), few);
  for (std::size_t i = 0; i < hopeless.findings.size(); ++i) {
    if (failing.gaps[i].enough > 0) {
      doubtful.add(*hopeless.findings[i], hopeless.gaps[i]);
      continue;
    }
    never = true;
    settle(*hopeless.findings[i], failing.gaps[i], failing.builds);
  }
  const Sampled found = sample(gaps.trial(doubtful.gaps), options);
  for (std::size_t i = 0; i < doubtful.findings.size(); ++i) {
    Finding& finding = *doubtful.findings[i];
    never = never || (finding.verdict == Verdict::does_not_fit && found.gaps[i].enough == 0);
    settle(finding, found.gaps[i], found.builds);
  }
  if (never) return JointShare{0.0, {0.0, 0.0}};
  if (!known) return std::nullopt;
  JointShare out{static_cast<double>(found.fit) / static_cast<double>(found.builds),
                 {tolerance::sure_to_95(found.fit, found.builds).low,
                  tolerance::sure_to_95(found.fit + found.unsettled, found.builds).high}};
  if (always && found.fit == found.builds) out.sure.low = 1.0;
  return out;
}

}  // namespace baywright::fit
