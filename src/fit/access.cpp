// Steps, for each screw: the tools one after the other until one reaches it as all stands; if none does, those that do
// once what can come out is out; if none, the least bad. Then the screws with one outcome become one finding.
#include "fit/access.h"

#include "fit/reach.h"
#include "geometry/gap.h"
#include "geometry/limits.h"
#include "standards/fasteners.h"
#include "standards/tools.h"

#include <algorithm>
#include <set>
#include <utility>

namespace baywright::fit {

using build::Tool;
namespace tools = standards::tools;

namespace {

constexpr double no_length = 0.0;  // a screw of unknown length is taken as driven home only

/// A tool and whether it needs no mention.
struct Candidate {
  Tool tool;
  bool own = false;    // of the build
  bool plain = false;  // what everybody has
};

std::vector<Candidate> drivers_for(const build::Build& build, const std::string& thread) {
  std::vector<Candidate> out;
  for (const Tool& tool : build.tools) out.push_back({tool, true, true});
  const std::string_view recess = tools::recess(thread);
  for (const tools::Driver& row : tools::drivers()) {
    if (row.recess != recess) continue;
    const std::string name = row.lever ? std::string(recess) + " bit in a low ratchet"
                                       : std::string(row.kind) + ' ' + std::string(recess) + " driver";
    out.push_back({{name, row.shaft.nominal, row.shaft_length.nominal, row.handle.nominal, row.handle_length.nominal,
                    row.lever ? row.lever->nominal : 0.0},
                   false,
                   row.kind == "ordinary"});
  }
  return out;
}

std::vector<Candidate> holders() {
  std::vector<Candidate> out;
  for (const tools::Holder& row : tools::holders())
    out.push_back(
        {{std::string(row.name), 0.0, 0.0, row.across.nominal, row.height.nominal, row.grip ? row.grip->nominal : 0.0},
         false,
         !row.grip});
  return out;
}

/// What became of one screw or nut.
struct Outcome {
  Verdict verdict = Verdict::fits;
  Reason why;  // but for the counts
  std::string by;
  geometry::Vec3 at{0.0};
  std::optional<double> share = 1.0;

  [[nodiscard]] bool alike(const Outcome& other) const {
    return verdict == other.verdict && why.code == other.why.code && why.words == other.why.words;
  }
};

class Access {
 public:
  Access(const Host& host, const build::Build& build, const Seated& seated, const build::Drive& drive,
         const build::Place& place, const std::vector<std::string>& out_first, const Options& options)
      : host_(host),
        build_(build),
        seated_(seated),
        drive_(drive),
        place_(place),
        out_first_(out_first.begin(), out_first.end()),
        carrier_(build::comes_out_with(build, place.part)),
        reach_(
            seated.scene, [this](const geometry::Bounds& asked, std::vector<int>& found) { near(asked, found); },
            tolerance::chain_method(options.method.value_or(build.method))) {
    for (std::size_t i = 0; i < build.parts.size(); ++i) {
      bool out = false;
      for (int part = static_cast<int>(i); part >= 0; part = build::stands_on(build, part))
        out = out || out_first_.contains(part_at(part).name);
      out_.push_back(out);
    }
  }

  [[nodiscard]] std::vector<Finding> run() {
    const auto* bay = std::get_if<build::Bay>(&place_.socket);
    const bool nut = bay != nullptr && bay->fixing && bay->fixing->nut;
    std::vector<Outcome> screws;
    std::vector<Outcome> nuts;
    for (const SeatedScrew& screw : seated_.screws) {
      if (nut)
        nuts.push_back(judge(screw, "nut", nut_of(screw), holders()));
      else
        screws.push_back(judge(screw, "screw", turned_of(screw), drivers_for(build_, screw.thread)));
    }
    std::vector<Finding> out;
    add_findings(screws, out);
    add_findings(nuts, out);
    return out;
  }

 private:
  [[nodiscard]] const build::HostPart& part_at(int part) const { return build_.parts[static_cast<std::size_t>(part)]; }

  /// The place at which an element of the machine is held or whose socket it is, or -1.
  [[nodiscard]] int held_at(int element) const {
    for (std::size_t i = 0; i < host_.held.size(); ++i) {
      const auto& [first, count] = host_.held[i];
      if (element >= first && element < first + count) return static_cast<int>(i);
    }
    return -1;
  }

  /// The part of the build that an element of the machine is of, or is on.
  [[nodiscard]] int owner(int element) const {
    const auto after = std::upper_bound(host_.parts.begin(), host_.parts.end(), element,
                                        [](int e, const PlacedPart& part) { return e < part.first; });
    if (after != host_.parts.begin()) {
      const PlacedPart& part = *std::prev(after);
      if (element < part.first + part.count) return static_cast<int>(std::prev(after) - host_.parts.begin());
    }
    if (const int place = held_at(element); place >= 0) return build_.places[static_cast<std::size_t>(place)].part;
    for (std::size_t i = 0; i < host_.places.size(); ++i) {
      const HostPlace& place = host_.places[i];
      const bool soldered = std::any_of(place.soldered.begin(), place.soldered.end(),
                                        [element](const auto& each) { return each.second == element; });
      if (soldered || (element >= place.socket && element < place.socket + place.count)) return build_.places[i].part;
    }
    return -1;
  }

  [[nodiscard]] bool of_host(int element) const { return element < seated_.scene.first_element(); }

  /// What has to come out for an element to be out of the way, by name; empty: it stays. What sits at another place was
  /// put there and can be put there later.
  [[nodiscard]] std::string out_with(int element) const {
    if (!of_host(element)) return {};
    const int part = owner(element);
    const int removed = part < 0 ? -1 : build::comes_out_with(build_, part);
    // On a removable carrier the screws are driven outside, where nothing but what stands on it is.
    if (carrier_ >= 0) return removed == carrier_ ? std::string{} : part_at(carrier_).name;
    if (removed >= 0) return part_at(removed).name;
    if (const int place = held_at(element); place >= 0)
      return build_.held[static_cast<std::size_t>(build_.places[static_cast<std::size_t>(place)].holds)].name;
    return {};
  }

  /// Elements near `asked` that could be in the way of a tool at the current screw.
  void near(const geometry::Bounds& asked, std::vector<int>& found) const {
    const Scene& scene = seated_.scene;
    host_.tree.near(asked, 0.0, found);
    std::erase_if(found, [&](int element) {
      const int part = owner(element);
      const bool out = part >= 0 && out_[static_cast<std::size_t>(part)];
      return out || out_first_.contains(scene.element(element).part) || passed(element);
    });
    for (int element = scene.first_element(); element < scene.element_count(); ++element) {
      // Other screws, stand-offs and a cable's plug come when it suits; the slot's own cover goes on last.
      if (seated_.fixed_after.contains(element) || scene.element(element).part == place_.name + " cover") continue;
      if (swept(scene.element(element)).distance(asked) <= 0.0 && !passed(element)) found.push_back(element);
    }
  }

  /// Whether the current screw sits on it or goes through it: what a mate provides for.
  [[nodiscard]] bool passed(int element) const {
    if (!seated_.mates.contains(std::minmax(element, screw_->element))) return false;
    if (seated_.brings(element)) return true;
    return through(element);
  }
  [[nodiscard]] bool through(int element) const {
    const Element& other = seated_.scene.element(element);
    return geometry::gap(held_->placed, other.placed).mm <= geometry::touch_mm;
  }

  [[nodiscard]] Turned turned_of(const SeatedScrew& screw) const {
    Turned turned{screw.head, screw.axis, {}, screw.across, screw.length};
    turned.motions = motions_of_face(seated_.scene, seated_.scene.element(screw.element), screw.head);
    return turned;
  }

  /// Where a stand-off is held by a nut: from the sheet's outer face outward.
  [[nodiscard]] Turned nut_of(const SeatedScrew& screw) const {
    Turned turned = turned_of(screw);
    turned.at -= screw.axis * seated_.scene.element(screw.element).placed.solid.height();
    turned.across = turned.travel = 0.0;
    return turned;
  }

  /// The outcome at one axis.
  [[nodiscard]] Outcome judge(const SeatedScrew& screw, const char* what, const Turned& turned,
                              const std::vector<Candidate>& candidates) {
    screw_ = &screw;
    held_ = &seated_.scene.element(screw.element);
    const auto all = [](int) { return true; };
    const auto staying = [this](int element) { return out_with(element).empty(); };
    std::vector<Tried> tried;
    std::size_t plain = candidates.size();
    for (std::size_t i = 0; i < candidates.size(); ++i) {
      tried.push_back(reach_.try_tool(turned, candidates[i].tool));
      if (candidates[i].plain && !candidates[i].own) plain = i;
      if (tried.back().verdict(all) != Verdict::fits) continue;
      Outcome out = outcome(what, candidates[i], turned, Verdict::fits, Code::tool_reaches);
      if (!candidates[i].plain && plain < i) {
        out.why.code = Code::tool_other;
        const std::vector<Meeting> met = tried[plain].meets(all);
        out.why.words.emplace_back("blocked", candidates[plain].tool.name);
        add_meetings(out, turned, tried[plain], met);
      }
      return out;
    }
    if (tried.empty()) return outcome(what, {}, turned, Verdict::undecided, Code::tool_unsure);
    const auto best = std::min_element(tried.begin(), tried.end(), [&](const Tried& a, const Tried& b) {
      const Verdict one = a.verdict(staying);
      const Verdict other = b.verdict(staying);
      if (one != other || one == Verdict::fits) return one < other;
      return one == Verdict::does_not_fit && a.need < b.need;  // the shortest has the best chance
    });
    const Verdict verdict = best->verdict(staying);
    const Candidate& candidate = candidates[static_cast<std::size_t>(best - tried.begin())];
    if (verdict == Verdict::fits) {
      Outcome out = outcome(what, candidate, turned, verdict, Code::tool_before);
      const std::vector<Meeting> met = best->meets(all);
      add_meetings(out, turned, *best, met);
      if (carrier_ >= 0) out.why.words.emplace_back("carrier", part_at(carrier_).name);
      return out;
    }
    Outcome out = outcome(what, candidate, turned, verdict,
                          verdict == Verdict::marginal    ? Code::tool_marginal
                          : verdict == Verdict::undecided ? Code::tool_unsure
                                                          : Code::tool_blocked);
    const std::vector<Meeting> met = best->meets(staying);
    add_meetings(out, turned, *best, met);
    std::set<std::string> also;  // come out whatever the rest
    for (const Meeting& each : best->meets(all)) also.insert(out_with(each.element));
    for (const std::string& name : also)
      if (!name.empty()) out.why.words.emplace_back("out", name);
    out.share = verdict == Verdict::does_not_fit ? std::optional(0.0) : std::nullopt;
    if (verdict == Verdict::marginal && !met.empty()) add_chances(out, met.front().found);
    return out;
  }

  [[nodiscard]] static Outcome outcome(const char* what, const Candidate& candidate, const Turned& turned,
                                       Verdict verdict, Code code) {
    Outcome out;
    out.verdict = verdict;
    out.at = turned.at;
    out.why.code = code;
    out.why.words = {{"what", what}, {candidate.own ? "own tool" : "tool", candidate.tool.name}};
    return out;
  }

  /// What is met, by name once each, and how far the tool gets.
  void add_meetings(Outcome& out, const Turned& turned, const Tried& tried, const std::vector<Meeting>& met) {
    if (met.empty()) return;
    static constexpr const char* names[] = {"head", "shaft", "handle", "lever"};
    out.why.words.emplace_back("where", names[static_cast<int>(met.front().where)]);
    for (const Meeting& each : met) {
      std::string by = out.why.code == Code::tool_before && carrier_ < 0 ? out_with(each.element) : std::string{};
      if (by.empty()) by = seated_.scene.element(each.element).part;
      const std::pair<std::string, std::string> fact{"by", by};
      if (out.by.empty()) out.by = by;
      if (std::find(out.why.words.begin(), out.why.words.end(), fact) == out.why.words.end())
        out.why.words.push_back(fact);
    }
    const bool head = met.front().where == Where::head;
    out.why.figures = {{"room", reach_.room(turned, *tried.tool, met)},
                       {"need", head ? turned.travel : tried.need},
                       {"handle", tried.tool->handle},
                       {"gap", met.front().found.nominal},
                       {"least", met.front().found.min},
                       {"most", met.front().found.max}};
  }

  /// In how many builds the tool passes what is nearest.
  void add_chances(Outcome& out, const GapLimits& found) const {
    std::vector<tolerance::Term> terms;
    for (const auto& [dimension, sensitivity] : found.terms)
      terms.push_back({sensitivity, &seated_.scene.dimension(dimension)});
    out.share = tolerance::share_at_least(found.nominal_there, terms, 0.0);
  }

  void add_findings(const std::vector<Outcome>& outcomes, std::vector<Finding>& findings) const {
    std::vector<std::pair<Outcome, int>> groups;
    for (const Outcome& each : outcomes) {
      const auto same = std::find_if(groups.begin(), groups.end(), [&](const auto& g) { return g.first.alike(each); });
      if (same == groups.end())
        groups.emplace_back(each, 1);
      else if (++same->second; tighter(each, same->first))
        same->first = each;
    }
    for (auto& [outcome, count] : groups) {
      Finding finding;
      finding.kind = Kind::access;
      finding.verdict = outcome.verdict;
      finding.between = {drive_.name, outcome.by.empty() ? place_.name : outcome.by};
      finding.why = std::move(outcome.why);
      finding.why.figures.emplace_back("count", count);
      finding.why.figures.emplace_back("of", static_cast<double>(outcomes.size()));
      finding.at = outcome.at;
      finding.share = outcome.share;
      findings.push_back(std::move(finding));
    }
  }

  /// Of screws that share an outcome the one with the least room is told of.
  [[nodiscard]] static bool tighter(const Outcome& a, const Outcome& b) {
    if (a.share != b.share) return a.share && b.share && *a.share < *b.share;
    return a.why.figure("room") < b.why.figure("room");
  }

  const Host& host_;
  const build::Build& build_;
  const Seated& seated_;
  const build::Drive& drive_;
  const build::Place& place_;
  std::set<std::string> out_first_;
  int carrier_;            // the removable part with which the place itself comes out, or -1
  std::vector<bool> out_;  // by part
  Reach reach_;
  const SeatedScrew* screw_ = nullptr;  // the current one
  const Element* held_ = nullptr;       // its head
};

/// Through a tray or rails that raise the drive over the face: they come out with it.
bool screwed_outside(const build::Place& place) {
  const auto* bay = std::get_if<build::Bay>(&place.socket);
  return bay != nullptr && bay->raised && !bay->spacers && !bay->standoffs && bay->fixing && !bay->fixing->side;
}

}  // namespace

std::vector<Finding> access(const Host& host, const build::Build& build, const Seated& seated,
                            const build::Drive& drive, const build::Place& place,
                            const std::vector<std::string>& out_first, const Options& options) {
  if (seated.screws.empty() || screwed_outside(place)) return {};
  return Access(host, build, seated, drive, place, out_first, options).run();
}

}  // namespace baywright::fit
