#include "plans/solve.h"

#include "fit/largest.h"
#include "geometry/limits.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace baywright::plans {

namespace {

constexpr double far_mm = 300.0;  // no heatsink of a card is as tall: beyond it nothing is over the drive

/// What decides the height over all of a part: one dimension that counts in full; -1: a model, whose size is fixed.
int height_of(const parts::Part& part) {
  for (const parts::Share& share : parts::outer_face(part, 2, true).shares)
    if (share.factor == 1.0) return share.dimension;
  return -1;
}

/// The least height at which every solid is one, also at its lower limit.
double least_height(const parts::Part& part, int height) {
  const tolerance::Dimension& dimension = part.dimensions[static_cast<std::size_t>(height)];
  std::vector<double> values;
  for (const tolerance::Dimension& each : part.dimensions)
    values.push_back(each.plus == tolerance::open_side ? each.nominal : each.high());
  double least = geometry::thinnest_mm;
  for (const parts::Body& body : part.bodies)
    if (body.high[2].slope(height) != 0.0) least = std::max(least, body.low[2].at(values) + geometry::thinnest_mm);
  return least + (dimension.minus == tolerance::open_side ? 0.0 : dimension.minus);
}

/// One drive at one place, its outermost heatsink as tall as asked.
class Heights {
 public:
  Heights(const build::Build& build, const build::Drive& drive, int place, const fit::Options& options)
      : build_(build), drive_(drive), place_(place), options_(options), host_(fit::compile(build)) {
    options_.method = tolerance::chain_method(options.method.value_or(build.method));
    for (std::size_t i = 0; i < drive_.wears.size(); ++i)
      if (std::holds_alternative<build::Heatsink>(drive_.wears[i])) wear_ = i;
    if (wear_) dimension_ = height_of(part());
  }

  [[nodiscard]] bool can_vary() const { return dimension_ >= 0; }
  [[nodiscard]] double now() const { return parts::outer_face(part(), 2, true).at(parts::nominal_values(part())); }
  [[nodiscard]] double least() const { return least_height(part(), dimension_); }

  fit::Seating at(double height) {
    tolerance::Dimension& dimension = part().dimensions[static_cast<std::size_t>(dimension_)];
    dimension.nominal += height - now();
    return fit::check_seating(host_, build_, drive_, place_, options_);
  }

  /// Where the first gap that the height bears on would be used up: at its least, or (`any`) also at its most.
  fit::Probe probe(double height, bool any) {
    const fit::Seating seating = at(height);
    fit::Probe out;
    out.holds = seating.verdict == fit::Verdict::fits || (any && seating.verdict == fit::Verdict::marginal);
    for (const fit::Finding& finding : seating.findings) {
      const double rate = sensitivity(finding);
      if (!finding.gap || !(rate < 0.0)) continue;
      const double room = (any ? finding.gap->max : finding.gap->min) - finding.gap->asked;
      const double edge = height + room / -rate;
      if (std::isfinite(edge) && (!out.edge || edge < *out.edge)) out.edge = edge;
    }
    return out;
  }

  /// The worst finding that the height bears on; null: none that is wrong.
  [[nodiscard]] const fit::Finding* limiting(const fit::Seating& seating) const {
    for (const fit::Finding& finding : seating.findings)
      if (finding.verdict && finding.verdict != fit::Verdict::fits && (!finding.gap || sensitivity(finding) != 0.0))
        return &finding;
    return nullptr;
  }

  /// What a finding is about besides the heatsink.
  [[nodiscard]] std::string against(const fit::Finding& finding) const {
    if (finding.kind == fit::Kind::access) return finding.why.word("what");
    const std::string& own = std::get<build::Heatsink>(drive_.wears[*wear_]).name;
    return finding.between[finding.between[1] == own ? 0 : 1];
  }

 private:
  [[nodiscard]] const parts::Part& part() const { return std::get<build::Heatsink>(drive_.wears[*wear_]).part; }
  [[nodiscard]] parts::Part& part() { return std::get<build::Heatsink>(drive_.wears[*wear_]).part; }

  [[nodiscard]] double sensitivity(const fit::Finding& finding) const {
    const tolerance::Dimension& height = part().dimensions[static_cast<std::size_t>(dimension_)];
    for (const fit::ChainLink& link : finding.chain)
      if (link.dimension.name == height.name && link.dimension.nominal == height.nominal) return link.sensitivity;
    return 0.0;
  }

  const build::Build& build_;
  build::Drive drive_;
  int place_;
  fit::Options options_;
  fit::Host host_;
  std::optional<std::size_t> wear_{};
  int dimension_ = -1;
};

}  // namespace

std::optional<Tallest> tallest_heatsink(const build::Build& build, const build::Drive& drive, int place,
                                        const fit::Options& options) {
  Heights heights(build, drive, place, options);
  if (!heights.can_vary()) return std::nullopt;
  Tallest out;
  out.now = heights.now();
  const fit::Within within{heights.least(), out.now, far_mm};
  const auto fits = fit::largest(within, [&](double height) { return heights.probe(height, false); });
  if (!fits || *fits >= far_mm) return std::nullopt;
  out.height = *fits;
  out.marginal = tolerance::open_side;
  const fit::Seating above = heights.at(*fits + fit::edge_mm);
  const fit::Finding* limiting = heights.limiting(above);
  if (limiting != nullptr) out.against = heights.against(*limiting);
  // An open side stays open, though far into a part the shortest way out of it turns to its other side.
  if (limiting != nullptr && limiting->gap && std::isinf(limiting->gap->max)) return out;
  const auto some = fit::largest({*fits, out.now, far_mm}, [&](double height) { return heights.probe(height, true); });
  if (some && *some < far_mm) out.marginal = *some;
  return out;
}

}  // namespace baywright::plans
