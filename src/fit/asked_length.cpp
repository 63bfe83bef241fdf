#include "fit/asked_length.h"

#include "fit/clearance.h"
#include "fit/fixing.h"
#include "fit/largest.h"
#include "fit/seat.h"
#include "geometry/limits.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <utility>

namespace baywright::fit {

namespace {

constexpr double unbounded = std::numeric_limits<double>::infinity();

/// Whether gaps are held to the clearance asked for, or only kept from touching.
enum Aim : std::size_t { cleared, touching };

/// What the gaps that hang on the length say at one value of it.
struct Tried {
  double value = 0.0;  // mm
  bool read = false;   // the file takes that value
  bool seen = false;   // the length moves or shapes something here
  bool hangs = false;  // a gap depends on it
  bool wall = false;   // it is how far off something of the machine stands
  std::array<bool, 2> holds{};
  std::array<double, 2> least{-unbounded, -unbounded};  // where they would hold, if the chains stayed as they are
  std::array<double, 2> most{unbounded, unbounded};
  double limit = 0.0;   // mm: how far below its figure the length may be
  std::string against;  // what the first of them is with
};

double rate_of(const Finding& finding) {
  for (const ChainLink& link : finding.chain)
    if (link.dimension.asked) return link.sensitivity;
  return 0.0;
}

class Asked {
 public:
  Asked(const build::Build& build, std::size_t drive, std::size_t place, const Options& options)
      : build_(build), drive_(drive), place_(place), options_(options) {}

  [[nodiscard]] Tried at(double value) const {
    Tried out;
    out.value = value;
    const auto read = build::answered(build_, value);
    const auto* build = std::get_if<build::Build>(&read);
    if (build == nullptr) return out;
    out.read = true;
    const Host host = compile(*build);
    const build::Drive& drive = build->drives[drive_];
    const Seated seated = seat(host, *build, drive, static_cast<int>(place_));
    const int asked = index_in(seated.scene);
    out.seen = asked >= 0 || in_fixing(*build);
    if (asked >= 0) out.limit = seated.scene.dimension(asked).minus;
    out.wall = is_distance(*build) || std::any_of(seated.machine.begin(), seated.machine.end(),
                                                  [&](const auto& each) { return each.second == asked; });
    out.holds = {true, true};
    for (const Finding& finding : findings(*build, host, seated, drive)) add(out, finding, seated.scene, asked);
    return out;
  }

 private:
  static bool is_distance(const build::Build& build) {
    return std::any_of(build.parts.begin(), build.parts.end(),
                       [](const build::HostPart& part) { return part.position.by.dimension.asked; });
  }

  static int index_in(const Scene& scene) {
    const int count = static_cast<int>(scene.values.size());
    for (int i = 0; i < count; ++i)
      if (scene.dimension(i).asked) return i;
    return -1;
  }

  /// A screw, its hole and the sheet are no solids of the scene.
  [[nodiscard]] bool in_fixing(const build::Build& build) const {
    const auto* bay = std::get_if<build::Bay>(&build.places[place_].socket);
    if (bay == nullptr || !bay->fixing) return false;
    const build::Fixing& fixing = *bay->fixing;
    return fixing.sheet.dimension.asked || fixing.diameter.dimension.asked ||
           (fixing.length && fixing.length->dimension.asked);
  }

  [[nodiscard]] std::vector<Finding> findings(const build::Build& build, const Host& host, const Seated& seated,
                                              const build::Drive& drive) const {
    const build::Place& place = build.places[place_];
    std::vector<Finding> out = clearances(host, build, seated, drive, options_);
    // The board's own cover comes off: it counts only where it is what is asked about.
    if (place.cover && !place.cover->above.dimension.asked && !place.cover->thickness.dimension.asked)
      std::erase_if(out, [&](const Finding& finding) { return finding.between[1] == place.name + " cover"; });
    const tolerance::Method method = tolerance::chain_method(options_.method.value_or(build.method));
    for (Finding& finding : fixings(drive, place, host.places[place_].frame, method)) out.push_back(std::move(finding));
    return out;
  }

  /// Whether the length moves the one solid past the other. An overlap's shortest way out may lie across that.
  static bool moves(const Scene& scene, const Finding& finding, int asked) {
    const auto moved = [&](std::size_t which) {
      for (int i = 0; i < scene.element_count(); ++i) {
        const Element& element = scene.element(i);
        if (element.part != finding.between[which] || element.body != finding.bodies[which]) continue;
        if (std::any_of(element.motions.begin(), element.motions.end(),
                        [&](const Motion& motion) { return motion.dimension == asked; }))
          return true;
      }
      return false;
    };
    return asked >= 0 && moved(0) != moved(1);
  }

  static void add(Tried& out, const Finding& finding, const Scene& scene, int asked) {
    if (!finding.gap) return;
    const double rate = rate_of(finding);
    const bool across = rate == 0.0;
    if (across && !(finding.gap->nominal < 0.0 && moves(scene, finding, asked))) return;
    out.hangs = true;
    for (const Aim aim : {cleared, touching}) {
      const double room = finding.gap->min - (aim == cleared ? finding.gap->asked : 0.0);
      if (room >= -geometry::touch_mm && finding.verdict != Verdict::undecided) continue;
      if (aim == cleared && out.holds[aim])
        out.against = finding.kind == Kind::clearance ? finding.between[1] : std::string("screws");
      out.holds[aim] = false;
      if (across || !std::isfinite(room)) continue;
      const double edge = out.value - room / rate;
      if (rate > 0.0)
        out.least[aim] = std::max(out.least[aim], edge);
      else
        out.most[aim] = std::min(out.most[aim], edge);
    }
  }

  const build::Build& build_;
  std::size_t drive_;
  std::size_t place_;
  Options options_;
};

/// The ends of the range in which the length holds.
struct Range {
  bool any = false;
  double least = -unbounded;
  double most = unbounded;
};

/// From a wall's thickness to beyond any machine, and where the chains of those that fail say that they would hold: a
/// range of a screw's length is narrow.
std::vector<Tried> trials_of(const Asked& asked, Aim aim) {
  constexpr double first = 0.05;
  constexpr double last = 1000.0;
  constexpr double step = 1.4;
  constexpr int halvings = 6;
  std::vector<Tried> out;
  double refused = 0.0;
  for (double value = first; value < last; value *= step) {
    Tried trial = asked.at(value);
    if (trial.read)
      out.push_back(std::move(trial));
    else if (out.empty())
      refused = value;
  }
  // Just above what the file refuses as too little lies what is too little for the drive.
  for (int i = 0; i < halvings && refused > 0.0 && !out.empty(); ++i) {
    const double middle = 0.5 * (refused + out.front().value);
    Tried trial = asked.at(middle);
    if (trial.read)
      out.insert(out.begin(), std::move(trial));
    else
      refused = middle;
  }
  const std::size_t count = out.size();
  if (std::any_of(out.begin(), out.end(), [&](const Tried& trial) { return trial.holds[aim]; })) return out;
  for (std::size_t i = 0; i < count; ++i) {
    const double next = std::isfinite(out[i].least[aim]) ? out[i].least[aim] + edge_mm : out[i].most[aim] - edge_mm;
    if (!(next > 0.0 && next < last)) continue;
    if (Tried trial = asked.at(next); trial.read) out.push_back(std::move(trial));
    if (out.back().holds[aim]) break;
  }
  std::sort(out.begin(), out.end(), [](const Tried& a, const Tried& b) { return a.value < b.value; });
  return out;
}

/// Where it turns between a value that holds and one that fails.
double edge_between(const Asked& asked, Aim aim, double holds, const Tried& fails) {
  const double sign = fails.value > holds ? 1.0 : -1.0;  // upward, or mirrored
  const auto probe = [&](double x) {
    const Tried trial = asked.at(sign * x);
    Probe out{trial.holds[aim]};
    const double edge = sign * (sign > 0.0 ? trial.most[aim] : trial.least[aim]);
    if (std::isfinite(edge)) out.edge = edge;
    return out;
  };
  const double low = sign * holds;
  const auto settled = [&](double x) {  // a figure as people write it, where it does
    const double near = std::round(x * 1e5) / 1e5;
    return asked.at(near).holds[aim] ? near : x;
  };
  const double high = sign * fails.value;
  const double edge = sign * (sign > 0.0 ? fails.most[aim] : fails.least[aim]);
  return settled(sign *
                 largest({low, edge > low && edge < high ? edge : 0.5 * (low + high), high}, probe).value_or(low));
}

/// Where both ends would do, a wall on this side of the drive or beyond it, a part that ends before another or has
/// passed it: `outward` takes the upper range, else the lower.
Range range_of(const Asked& asked, const std::vector<Tried>& trials, Aim aim, bool outward) {
  const auto holds = [&](const Tried& trial) { return trial.holds[aim]; };
  const auto first = std::find_if(trials.begin(), trials.end(), holds);
  if (first == trials.end()) return {};
  const auto last = std::find_if(trials.rbegin(), trials.rend(), holds).base() - 1;
  auto from = first;
  const bool both = first == trials.begin() && last == trials.end() - 1;
  if (both ? outward : first != trials.begin()) from = last;
  auto low = from;
  auto high = from;
  while (low != trials.begin() && holds(*(low - 1))) --low;
  while (high + 1 != trials.end() && holds(*(high + 1))) ++high;
  Range out;
  out.any = true;
  if (low != trials.begin()) out.least = edge_between(asked, aim, low->value, *(low - 1));
  if (high + 1 != trials.end()) out.most = edge_between(asked, aim, high->value, *(high + 1));
  return out;
}

double shown_value(const Range& range, double otherwise) {
  if (!range.any || (range.least == -unbounded && range.most == unbounded)) return otherwise;
  if (range.least == -unbounded) return range.most;
  if (range.most == unbounded) return range.least;
  return 0.5 * (range.least + range.most);
}

}  // namespace

std::optional<Finding> answer_asked(build::Build& build, std::size_t drive, std::size_t place, const Options& options) {
  if (!build.asked) return std::nullopt;
  Finding out;
  out.kind = Kind::needs;
  out.between = {build.drives[drive].name, build.places[place].name};
  const Asked asked(build, drive, place, options);
  std::vector<Tried> trials = trials_of(asked, cleared);
  if (std::none_of(trials.begin(), trials.end(), [](const Tried& trial) { return trial.seen; })) return std::nullopt;
  out.why.words = {{"length", build.asked->name}};
  if (std::none_of(trials.begin(), trials.end(), [](const Tried& trial) { return trial.hangs; })) {
    out.why.code = Code::needs_nothing;
    return out;
  }
  const bool outward = trials.back().wall;
  const Range enough = range_of(asked, trials, cleared, outward);
  if (!enough.any) trials = trials_of(asked, touching);
  const Range bare = range_of(asked, trials, touching, outward);
  out.why.code = enough.any || bare.any ? Code::needs_length : Code::needs_none;
  const auto add = [&](const char* name, double value) {
    if (std::isfinite(value)) out.why.figures.emplace_back(name, value);
  };
  add("least", enough.least);
  add("most", enough.most);
  add("bare least", bare.least);
  add("bare most", bare.most);
  const double value = shown_value(enough.any ? enough : bare, trials.front().value);
  const Tried there = asked.at(value);
  add("limit", there.limit);
  if (!enough.any)
    out.why.words.insert(out.why.words.end(), {{"small", trials.front().against}, {"large", trials.back().against}});
  if (auto read = build::answered(build, value); std::holds_alternative<build::Build>(read))
    build = std::get<build::Build>(std::move(read));
  return out;
}

}  // namespace baywright::fit
