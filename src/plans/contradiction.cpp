#include "plans/contradiction.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace baywright::plans {

namespace {

/// Calls `visit` with every length of the build that bears on that drive at that place.
template <typename Visit>
void each_length(build::Build& build, const fit::Seating& seating, const Visit& visit) {
  const auto given = [&](std::optional<build::GivenLength>& length) {
    if (length) visit(length->dimension);
  };
  for (build::HostPart& part : build.parts) {
    if (part.position.kind == build::Position::Kind::against && !part.position.seated &&
        !part.position.by.dimension.asked)
      visit(part.position.by.dimension);
    for (tolerance::Dimension& dimension : part.part.dimensions) visit(dimension);
  }
  for (build::Place& place : build.places) {
    if (place.name != seating.place) continue;
    given(place.standoff);
    auto* bay = std::get_if<build::Bay>(&place.socket);
    if (bay == nullptr) continue;
    for (auto* length : {&bay->width, &bay->height, &bay->depth, &bay->behind, &bay->raised, &bay->plug})
      given(*length);
    if (!bay->fixing) continue;
    given(bay->fixing->length);
    visit(bay->fixing->sheet.dimension);
    visit(bay->fixing->diameter.dimension);
  }
  for (build::Drive& drive : build.drives) {
    if (drive.name != seating.drive) continue;
    for (build::Wear& wear : drive.wears) {
      if (auto* pad = std::get_if<build::Pad>(&wear)) visit(pad->free_thickness.dimension);
      if (auto* heatsink = std::get_if<build::Heatsink>(&wear))
        for (tolerance::Dimension& dimension : heatsink->part.dimensions) visit(dimension);
    }
    for (parts::Part* part : {&drive.m2.part, &drive.cased.part, &drive.board.part, &drive.mini.part})
      for (tolerance::Dimension& dimension : part->dimensions) visit(dimension);
  }
}

bool distance(const build::Build& build, const std::string& name) {
  return std::any_of(build.parts.begin(), build.parts.end(), [&](const build::HostPart& part) {
    const build::Position& at = part.position;
    return at.kind == build::Position::Kind::against && !at.seated && at.by.dimension.name == name;
  });
}

bool seated(const fit::Finding& finding) {
  return finding.kind != fit::Kind::insertion && finding.kind != fit::Kind::access;
}

/// By how much a length of that name would have to change, mm, for the gaps that fall short to be enough; 0: it does
/// not bear on all of them, or they ask for opposite ways. Ways in and tools follow from where the drive sits, and
/// count only where nothing else is wrong.
double change_wanted(const fit::Seating& seating, const std::string& name) {
  const auto wrong = [](const fit::Finding& finding) {
    return finding.verdict && *finding.verdict != fit::Verdict::fits;
  };
  const bool sits = std::none_of(seating.findings.begin(), seating.findings.end(),
                                 [&](const fit::Finding& finding) { return wrong(finding) && seated(finding); });
  double most = 0.0;
  for (const fit::Finding& finding : seating.findings) {
    if (!wrong(finding) || (!sits && !seated(finding))) continue;
    if (!finding.gap || !std::isfinite(finding.gap->min)) return 0.0;
    double sensitivity = 0.0;
    for (const fit::ChainLink& link : finding.chain)
      if (link.dimension.name == name) sensitivity = link.sensitivity;
    if (std::abs(sensitivity) < 1e-6) return 0.0;
    const double change = (finding.gap->asked - finding.gap->min) / sensitivity;
    if (most != 0.0 && change * most < 0.0) return 0.0;
    if (std::abs(change) > std::abs(most)) most = change;
  }
  return most;
}

/// The build's lengths, one of them changed.
class Changed {
 public:
  Changed(const build::Build& build, const fit::Seating& before, const fit::Options& options)
      : build_(build), before_(before), options_(options) {
    options_.drive = before.drive;
    options_.place = before.place;
    options_.progress = {};
    each_length(build_, before, [&](const tolerance::Dimension& dimension) { lengths_.push_back(dimension); });
  }

  [[nodiscard]] const std::vector<tolerance::Dimension>& lengths() const { return lengths_; }

  /// The seating with the length at that value; none where it can be no such length.
  [[nodiscard]] std::optional<fit::Seating> at(std::size_t which, double value, bool quick) const {
    if (!std::isfinite(value) || !(value - lengths_[which].minus > 0.0 || value > 0.0)) return std::nullopt;
    build::Build build = build_;
    std::size_t index = 0;
    each_length(build, before_, [&](tolerance::Dimension& dimension) {
      if (index++ == which) dimension.nominal = value;
    });
    fit::Options options = options_;
    options.quick = options.quick || quick;
    fit::Check check = fit::check(build, options);
    if (check.seatings.size() != 1) return std::nullopt;
    return std::move(check.seatings.front());
  }

  [[nodiscard]] bool fits(std::size_t which, double value, bool quick) const {
    const auto seating = at(which, value, quick);
    return seating && seating->verdict == fit::Verdict::fits;
  }

  /// Along the chain, from one gap that falls short to the next.
  [[nodiscard]] std::optional<double> by_chain(std::size_t which) const {
    constexpr int tries = 6;  // another gap may decide once the first is enough, and long arms turn it off the line
    double value = lengths_[which].nominal;
    std::optional<fit::Seating> seating = before_;
    for (int i = 0; i < tries && seating; ++i) {
      const double change = change_wanted(*seating, lengths_[which].name);
      if (change == 0.0) return std::nullopt;
      // Rounded away from the fault, so that what is written is enough.
      const double to = value + change;
      value = (change > 0.0 ? std::ceil(to * 100.0 - 1e-7) : std::floor(to * 100.0 + 1e-7)) / 100.0;
      seating = at(which, value, false);
      if (seating && seating->verdict == fit::Verdict::fits) return value;
    }
    return std::nullopt;
  }

  /// Where no chain says how far: farther and farther out, then back to the tenth of a millimetre.
  [[nodiscard]] std::optional<double> by_trying(std::size_t which) const {
    constexpr double farthest = 64.0;  // mm
    constexpr double step = 0.1;
    const double now = lengths_[which].nominal;
    double good = 1.0;
    while (good <= farthest && !fits(which, now + good, true)) good *= 2.0;
    if (good > farthest) return std::nullopt;
    double bad = good > 1.0 ? 0.5 * good : 0.0;
    while (good - bad > step + 1e-9) {
      const double middle = std::ceil(5.0 * (good + bad) - 1e-9) * step;
      if (!(middle < good - 1e-9)) break;
      (fits(which, now + middle, true) ? good : bad) = middle;
    }
    const double value = std::round((now + good) * 1000.0) / 1000.0;
    return fits(which, value, false) ? std::optional(value) : std::nullopt;
  }

 private:
  build::Build build_;
  const fit::Seating& before_;
  fit::Options options_;
  std::vector<tolerance::Dimension> lengths_;
};

}  // namespace

Contradiction contradict(const build::Build& build, const fit::Seating& seating, const fit::Options& options) {
  Contradiction out{seating.drive, seating.place, {}};
  // What only some builds have too little room for can be had together.
  if (!seating.findings.empty() && seating.verdict != fit::Verdict::marginal) {
    out.first = seating.findings.front().between[0];
    out.second = seating.findings.front().between[1];
  }
  const Changed changed(build, seating, options);
  double least = std::numeric_limits<double>::infinity();
  const auto keep = [&](std::size_t which, const std::optional<double>& value) {
    const tolerance::Dimension& length = changed.lengths()[which];
    if (!value || !(std::abs(*value - length.nominal) < least)) return;
    least = std::abs(*value - length.nominal);
    out.dimension = length.name;
    out.from = length.nominal;
    out.value = *value;
  };
  for (std::size_t i = 0; i < changed.lengths().size(); ++i)
    if (change_wanted(seating, changed.lengths()[i].name) != 0.0) keep(i, changed.by_chain(i));
  if (!out.dimension.empty()) return out;
  // Ways in and tools mostly have no chain: then the distances of what is about the drive.
  const bool questions = std::any_of(seating.findings.begin(), seating.findings.end(), [](const fit::Finding& finding) {
    return finding.verdict == fit::Verdict::does_not_fit && !finding.gap && seated(finding);
  });
  if (questions) return out;
  for (std::size_t i = 0; i < changed.lengths().size(); ++i)
    if (distance(build, changed.lengths()[i].name)) keep(i, changed.by_trying(i));
  return out;
}

}  // namespace baywright::plans
