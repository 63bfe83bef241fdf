#include "fit/clearance.h"

#include "fit/chain.h"
#include "fit/limits.h"
#include "geometry/gap.h"
#include "geometry/limits.h"
#include "geometry/overlap.h"
#include "geometry/travel.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <string_view>
#include <utility>

namespace baywright::fit {

using geometry::Vec3;

namespace {

struct Asker {
  const build::Build& build;
  const Seated& seated;
  const build::Drive& drive;
  double general;

  [[nodiscard]] bool names(const std::string& name, const Element& element, bool own) const {
    return element.part == name || (own && name == drive.name);
  }

  [[nodiscard]] bool provided(int a, int b) const {
    return seated.joint_drive.contains(a) && seated.joint_host.contains(b);
  }

  /// The clearance asked between an element of the drive and another one. The published stack (card, socket, stand-off,
  /// board) brings its own clearances, and what a drive wears touches it: nothing is asked there unless the build says
  /// so.
  [[nodiscard]] double asked(int a, int b) const {
    const Element& first = seated.scene.element(a);
    const Element& second = seated.scene.element(b);
    const bool own_b = seated.brings(b);
    double asked = own_b || provided(a, b) ? 0.0 : general;
    for (const build::Apart& apart : build.apart)
      if ((names(apart.between[0], first, true) && names(apart.between[1], second, own_b)) ||
          (names(apart.between[1], first, true) && names(apart.between[0], second, own_b)))
        asked = apart.clearance;
    return asked;
  }

  [[nodiscard]] double most() const {
    double most = general;
    for (const build::Apart& apart : build.apart) most = std::max(most, apart.clearance);
    return most;
  }
};

/// Beside the surface of a mesh without an inside, and perhaps within it.
bool may_lie_within(const GapLimits& found) {
  return found.surface && found.nominal > -geometry::touch_mm;
}

Verdict verdict_with_error(const GapLimits& found, double asked) {
  if (may_lie_within(found)) return Verdict::undecided;
  const Verdict verdict = verdict_of(found.min, found.max, asked);
  if (found.error <= geometry::touch_mm) return verdict;
  const Verdict worst = verdict_of(found.min - found.error, found.max - found.error, asked);
  const Verdict best = verdict_of(found.min + found.error, found.max + found.error, asked);
  return worst == best ? verdict : Verdict::undecided;
}

std::vector<ChainLink> chain_of(const Scene& scene, const GapLimits& found) {
  std::vector<ChainLink> chain;
  for (const auto& [dimension, sensitivity] : found.terms) chain.push_back({scene.dimension(dimension), sensitivity});
  sort_by_weight(chain);
  return chain;
}

std::optional<double> share_of(const Scene& scene, const GapLimits& found, double asked, Verdict worst_case) {
  if (may_lie_within(found)) return std::nullopt;
  if (worst_case == Verdict::fits) return 1.0;
  if (worst_case == Verdict::does_not_fit) return 0.0;
  std::vector<tolerance::Term> terms;
  for (const auto& [dimension, sensitivity] : found.terms) terms.push_back({sensitivity, &scene.dimension(dimension)});
  return tolerance::share_at_least(found.nominal_there, terms, asked);
}

bool hangs_on_open(const Scene& scene, const GapLimits& found) {
  return std::any_of(found.terms.begin(), found.terms.end(),
                     [&](const auto& term) { return scene.dimension(term.first).open(); });
}

struct Pair {
  int a = -1;
  int b = -1;
  GapLimits found;
  double asked = 0.0;
  Verdict verdict = Verdict::fits;
  geometry::Bounds shared = geometry::Bounds::empty();  // by all solids of the two parts
};

bool worse_than(const Pair& x, const Pair& y) {
  if (x.verdict != y.verdict) return x.verdict > y.verdict;
  return x.found.min - x.asked < y.found.min - y.asked;
}

/// Where the other part hangs at a measured distance: the least distance at which this gap is enough.
void add_need(Finding& finding, const Host& host, const build::Build& build, const Seated& seated, const Pair& pair) {
  if (!std::isfinite(pair.found.min)) return;  // an open side is not made good by distance
  if (const auto wall = seated.machine.find(pair.b); wall != seated.machine.end()) {
    for (const auto& [dimension, sensitivity] : pair.found.terms)
      if (dimension == wall->second && sensitivity > 0.0) {
        const double value = seated.scene.values[static_cast<std::size_t>(dimension)];
        finding.why.words.emplace_back("needs", seated.scene.dimension(dimension).name);
        finding.why.figures.emplace_back("needs", value + (pair.asked - pair.found.min) / sensitivity);
      }
    return;
  }
  for (const PlacedPart& place : host.parts) {
    if (place.distance < 0 || pair.b < place.first || pair.b >= place.first + place.count) continue;
    double sensitivity = 0.0;
    for (const auto& [dimension, each] : pair.found.terms)
      if (dimension == place.distance) sensitivity = each;
    const bool through = sensitivity < 0.5;  // the shortest way out is not the one in which it is measured
    if (through && pair.found.nominal >= 0.0) return;
    const double value = seated.scene.values[static_cast<std::size_t>(place.distance)];
    // Along the direction in which it is measured, with the true shapes, it has this much free way or must back off so
    // far.
    Vec3 away = pair.found.direction;
    if (through) {
      const build::Position& at = build.parts[static_cast<std::size_t>(&place - host.parts.data())].position;
      away = Vec3(0.0);
      away[at.axis] = at.up ? 1.0 : -1.0;
      sensitivity = 1.0;
    }
    std::vector<geometry::Placed> part;
    std::vector<geometry::Placed> drive;
    for (int i = place.first; i < place.first + place.count; ++i) part.push_back(seated.scene.element(i).placed);
    for (const Element& element : seated.scene.elements) drive.push_back(element.placed);
    const geometry::Travel way = geometry::travel(part, drive, -away);
    if (through && !way.meets) return;
    const double free = way.meets ? std::min(way.mm, pair.found.nominal) : pair.found.nominal;
    const double variation = pair.found.nominal_there - pair.found.min;
    finding.why.words.emplace_back("needs", seated.scene.dimension(place.distance).name);
    finding.why.figures.emplace_back("needs", value + (pair.asked + variation - free) / sensitivity);
    return;
  }
}

}  // namespace

Finding gap_finding(const Scene& scene, const Element& a, const Element& b, const GapLimits& found, double asked,
                    tolerance::Method method) {
  Finding finding;
  finding.kind = Kind::clearance;
  finding.verdict = verdict_with_error(found, asked);
  finding.between = {a.part, b.part};
  finding.bodies = {a.body, b.body};
  finding.gap = GapFigures{found.nominal, found.min, found.max, asked};
  finding.at = 0.5 * (found.on_a + found.on_b);
  finding.toward = -found.direction;
  finding.chain = chain_of(scene, found);
  Verdict worst_case = *finding.verdict;
  if (method != tolerance::Method::worst) {
    const GapLimits worst = limits(scene, a, b, tolerance::Method::worst, asked);
    worst_case = verdict_of(worst.min, worst.max, asked);
  }
  finding.share = share_of(scene, found, asked, worst_case);
  return finding;
}

std::vector<Finding> clearances(const Host& host, const build::Build& build, const Seated& seated,
                                const build::Drive& drive, const Options& options, std::vector<Near>* near_pairs) {
  const Scene& scene = seated.scene;
  const Asker asker{build, seated, drive, options.clearance.value_or(build.clearance)};
  const tolerance::Method method = tolerance::chain_method(options.method.value_or(build.method));
  const double reach = asker.most() + shown_beyond_mm;
  const int first = scene.first_element();
  std::map<std::pair<std::string_view, std::string_view>, Pair> pairs;
  const auto measure = [&](int a, int b, double asked) {
    const Element& one = scene.element(a);
    const Element& other = scene.element(b);
    Pair pair{a, b, limits(scene, one, other, method, asked), asked, Verdict::fits};
    pair.verdict = verdict_with_error(pair.found, asked);
    if (near_pairs != nullptr)
      near_pairs->push_back({a, b, asked, pair.found.min, pair.found.max, hangs_on_open(scene, pair.found)});
    Pair& known = pairs[{one.part, other.part}];
    geometry::Bounds shared = known.shared;
    if (pair.found.nominal < 0.0)
      if (const auto box = geometry::overlap_box(one.placed, other.placed)) shared.add(*box);
    if (known.a < 0 || worse_than(pair, known)) known = std::move(pair);
    known.shared = shared;
  };
  struct Clear {
    int a;
    int b;
    double asked;
    double spare;  // no less room beyond what is asked
  };
  std::vector<Clear> clear;
  const auto sort_pair = [&](int a, int b) {
    if (seated.mates.contains(std::minmax(a, b))) return;
    const Element& one = scene.element(a);
    const Element& other = scene.element(b);
    if (one.part == other.part) return;
    const double asked = asker.asked(a, b);
    const double spare = swept(one).distance(swept(other)) - asked;
    if (spare <= 0.0)
      measure(a, b, asked);
    else if (!seated.brings(b) && spare <= shown_beyond_mm)
      clear.push_back({a, b, asked, spare});
  };
  std::vector<int> near;
  for (int a = first; a < scene.element_count(); ++a) {
    if (!seated.brings(a)) continue;
    host.tree.near(swept(scene.element(a)), reach, near);
    for (const int b : near) sort_pair(a, b);
    for (int b = first; b < scene.element_count(); ++b)
      if (b > a || !seated.brings(b)) sort_pair(a, b);
  }
  std::sort(clear.begin(), clear.end(), [](const Clear& x, const Clear& y) { return x.spare < y.spare; });
  for (const Clear& each : clear) {
    const auto known = pairs.find({scene.element(each.a).part, scene.element(each.b).part});
    if (known == pairs.end() && pairs.size() >= shown_clear) continue;
    const bool closer = known == pairs.end() || (known->second.verdict == Verdict::fits &&
                                                 each.spare < known->second.found.min - known->second.asked);
    if (closer) measure(each.a, each.b, each.asked);
  }
  std::vector<Finding> out;
  for (auto& [names, pair] : pairs) {
    if (seated.brings(pair.b) && pair.verdict == Verdict::fits) continue;
    Finding finding = gap_finding(scene, scene.element(pair.a), scene.element(pair.b), pair.found, pair.asked, method);
    finding.provided = asker.provided(pair.a, pair.b);
    if (pair.shared.low.x <= pair.shared.high.x) finding.shared = pair.shared;
    if (pair.verdict != Verdict::fits) add_need(finding, host, build, seated, pair);
    out.push_back(std::move(finding));
  }
  return out;
}

}  // namespace baywright::fit
