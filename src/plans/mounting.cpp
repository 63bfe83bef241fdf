#include "plans/mounting.h"

#include "fit/part_screws.h"
#include "plans/washers.h"
#include "standards/tools.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

namespace baywright::plans {

namespace {

using fit::Code;
using fit::Finding;
using fit::Kind;

const Finding* finding_of(const fit::Seating& seating, Kind kind) {
  const auto found = std::find_if(seating.findings.begin(), seating.findings.end(),
                                  [kind](const Finding& finding) { return finding.kind == kind; });
  return found == seating.findings.end() ? nullptr : &*found;
}

/// The facts of that name.
std::vector<std::string> all(const fit::Reason& why, std::string_view name) {
  std::vector<std::string> out;
  for (const auto& [key, value] : why.words)
    if (key == name) out.push_back(value);
  return out;
}

class Order {
 public:
  Order(const build::Build& build, const fit::Seated& seated, const fit::Seating& seating)
      : build_(build), seated_(seated), seating_(seating) {
    out_.drive = seating.drive;
    out_.place = seating.place;
    out_.verdict = seating.verdict;
    drive_ = &*std::find_if(build.drives.begin(), build.drives.end(),
                            [&](const build::Drive& each) { return each.name == seating.drive; });
    place_ = &*std::find_if(build.places.begin(), build.places.end(),
                            [&](const build::Place& each) { return each.name == seating.place; });
    bay_ = std::get_if<build::Bay>(&place_->socket);
    way_ = finding_of(seating, Kind::insertion);
  }

  [[nodiscard]] Mounting run() {
    if (seating_.verdict != fit::Verdict::fits && seating_.verdict != fit::Verdict::marginal) return out_;
    make_safe();
    clear_the_way();
    const bool dressed_last = way_ != nullptr && way_->why.word("way") == "bare_first";
    if (!dressed_last) dress();
    if (!in_machine()) fasten();
    put_in();
    if (in_machine()) fasten();
    if (dressed_last) dress();
    if (bay_ != nullptr && bay_->plug) add({Action::plug, out_.drive, out_.place});
    close_up();
    return out_;
  }

 private:
  void add(Step step) {
    const bool drives = step.action == Action::screw || step.action == Action::screw_outside;
    if (drives && !seated_.screws.empty() && bay_ != nullptr && bay_->fixing) {
      const UnderHeads heads = washers_under_heads(*bay_, screw_thread(), seating_, 0.0);
      step.washers = heads.washers == Washers::wanted;
      step.no_washers = heads.washers == Washers::would_not_hold;
      if (step.length > 0.0) step.length += heads.longer;
    }
    out_.steps.push_back(std::move(step));
  }

  void make_safe() {
    add({.action = Action::back_up, .hazards = {Hazard::loss_of_data}});
    add({.action = Action::power_off, .hazards = {Hazard::mains, Hazard::battery, Hazard::power_supply}});
    add({.action = Action::touch_metal, .hazards = {Hazard::static_charge}});
  }

  /// What has to be out while the drive goes in, or while its screws are driven.
  void clear_the_way() {
    taken_ = seating_.out_first;
    for (const Finding& finding : seating_.findings) {
      if (finding.kind != Kind::access || finding.why.code != Code::tool_before) continue;
      std::vector<std::string> names = all(finding.why, "by");
      if (const std::string carrier = finding.why.word("carrier"); !carrier.empty()) names = {carrier};
      for (const std::string& name : names)
        if (std::find(taken_.begin(), taken_.end(), name) == taken_.end()) taken_.push_back(name);
    }
    if (place_->cover) taken_.push_back(cover());
    for (const std::string& name : taken_) take_out(name);
    for (const build::HostPart& part : build_.parts)  // what stays has its spacers before the drive comes
      if (part.spacers && std::find(taken_.begin(), taken_.end(), part.name) == taken_.end())
        add(over_spacers({.action = Action::set_spacers, .where = part.name, .screws = part.screws}, part));
    if (bay_ != nullptr && bay_->fixing && (bay_->panel || bay_->fixing->placed))
      add({.action = Action::drill,
           .where = place_->name,
           .count = static_cast<int>(bay_->fixing->holes.size()),
           .hazards = {Hazard::swarf, Hazard::eyes, Hazard::sharp_edges}});
  }

  /// Null: a drive that sits elsewhere, or the slot's own cover.
  [[nodiscard]] const build::HostPart* part(const std::string& name) const {
    const auto found = std::find_if(build_.parts.begin(), build_.parts.end(),
                                    [&](const build::HostPart& each) { return each.name == name; });
    return found == build_.parts.end() ? nullptr : &*found;
  }

  void take_out(const std::string& name) {
    Step step{.action = Action::take_out, .what = name, .hazards = {Hazard::sharp_edges}};
    if (const build::HostPart* out = part(name); out != nullptr && out->screws) {
      step.screws = out->screws;
      if (const std::string_view recess = standards::tools::recess(out->screws->thread); !recess.empty()) {
        const std::string driver = "ordinary " + std::string(recess) + " driver";
        step.how.words = {{"tool", driver}};
        need(driver);
      }
    }
    add(std::move(step));
  }

  void put_back(const std::string& name) {
    Step step{.action = Action::put_back, .what = name};
    if (const build::HostPart* back = part(name)) {
      step.screws = back->screws;
      if (back->spacers) step = over_spacers(std::move(step), *back);
    }
    add(std::move(step));
  }

  [[nodiscard]] static Step over_spacers(Step step, const build::HostPart& part) {
    step.length = part.spacers->dimension.nominal;
    step.washers_each = washers_between(part.spacers->dimension, part.screws ? part.screws->thread : std::string());
    step.longer_screw = fit::longer_screw(part);
    return step;
  }

  void need(const std::string& tool) {
    if (std::find(out_.tools.begin(), out_.tools.end(), tool) == out_.tools.end()) out_.tools.push_back(tool);
  }

  /// What the drive wears, from the inside outward.
  void dress() {
    if (drive_->worn) add({Action::put_in_adapter, out_.drive, drive_->worn->name});
    if (bay_ != nullptr && bay_->standoffs)
      add({Action::screw_standoffs, screw_thread(), out_.drive, static_cast<int>(seated_.screws.size()),
           stud_length()});
    std::string on = out_.drive;
    for (const build::Wear& wear : drive_->wears) {
      if (const auto* pad = std::get_if<build::Pad>(&wear)) {
        add({Action::peel, pad->name});
        add({Action::lay_pad, pad->name, on});
        on = pad->name;
      } else {
        const auto& sink = std::get<build::Heatsink>(wear);
        add({Action::set_heatsink, sink.name, on});
        on = sink.name;
      }
    }
  }

  void put_in() {
    if (bay_ != nullptr && bay_->spacers && bay_->raised)
      add({Action::set_spacers,
           {},
           out_.place,
           static_cast<int>(seated_.screws.size()),
           bay_->raised->dimension.nominal});
    add({.action = Action::put_in,
         .what = out_.drive,
         .where = out_.place,
         .how = way_ != nullptr ? way_->why : fit::Reason{},
         .hazards = {Hazard::static_charge}});
  }

  /// The board's own over its slot, as findings call it.
  [[nodiscard]] std::string cover() const { return place_->name + " cover"; }

  /// Screws that no driver was judged for are driven with the drive outside of the machine.
  [[nodiscard]] bool in_machine() const {
    return seated_.screws.empty() || finding_of(seating_, Kind::access) != nullptr;
  }

  [[nodiscard]] std::string screw_thread() const {
    return seated_.screws.empty() ? std::string() : seated_.screws.front().thread;
  }

  /// As the file gives it: of the studs where the place has threaded stand-offs, else of the screws.
  [[nodiscard]] double stud_length() const {
    return bay_ != nullptr && bay_->fixing && bay_->fixing->length ? bay_->fixing->length->dimension.nominal : 0.0;
  }
  [[nodiscard]] bool on_standoffs() const { return bay_ != nullptr && bay_->standoffs; }
  [[nodiscard]] double screw_length() const {
    if (!on_standoffs()) return stud_length();
    return bay_->fixing->outside ? bay_->fixing->outside->length : 0.0;
  }
  [[nodiscard]] Action drive_action() const { return on_standoffs() ? Action::screw_outside : Action::screw; }

  void fasten() {
    if (seated_.screws.empty()) {  // a latch, rails, a bracket: the build does not say
      add({Action::screw, {}, out_.place});
      return;
    }
    if (!in_machine()) {
      add({drive_action(), screw_thread(), out_.drive, static_cast<int>(seated_.screws.size()), screw_length()});
      return;
    }
    for (const Finding& finding : seating_.findings) {
      if (finding.kind != Kind::access) continue;
      const fit::Reason& why = finding.why;
      const bool nut = why.word("what") == "nut";
      const int count = std::max(1, static_cast<int>(std::lround(why.figure("count"))));
      add({nut ? Action::hold_nuts : drive_action(), screw_thread(), out_.place, count, nut ? 0.0 : screw_length(),
           why});
      const std::string own = why.word("own tool");
      const std::string tool = own.empty() ? why.word("tool") : own;
      if (!tool.empty() && tool != "fingers") need(tool);
    }
  }

  void close_up() {
    add({Action::look, out_.drive, out_.place});
    for (auto name = taken_.rbegin(); name != taken_.rend(); ++name) {
      const Finding* said = finding_of(seating_, Kind::cover);
      const bool stays_off = said != nullptr && said->why.code == Code::cover_off && *name == cover();
      if (!stays_off) put_back(*name);
    }
    add({Action::start_up, out_.drive});
  }

  const build::Build& build_;
  const fit::Seated& seated_;
  const fit::Seating& seating_;
  const build::Drive* drive_ = nullptr;
  const build::Place* place_ = nullptr;
  const build::Bay* bay_ = nullptr;  // null: not a bay
  const Finding* way_ = nullptr;
  std::vector<std::string> taken_;
  Mounting out_;
};

}  // namespace

std::string_view word(Action action) {
  static constexpr std::array<std::string_view, 22> words = {
      "back up",     "power off", "touch metal", "drill",        "take out", "put in adapter", "screw stand-offs",
      "set spacers", "peel",      "lay pad",     "set heatsink", "put in",   "screw",          "screw from outside",
      "hold nuts",   "plug",      "look",        "put back",     "start up", "take off",       "set stand-off",
      "cut"};
  return words[static_cast<std::size_t>(action)];
}

std::string_view word(Hazard hazard) {
  static constexpr std::array<std::string_view, 10> words = {"loss of data", "mains",         "battery", "power supply",
                                                             "static",       "sharp edges",   "swarf",   "eyes",
                                                             "torn chips",   "drive warranty"};
  return words[static_cast<std::size_t>(hazard)];
}

Mounting mounting(const build::Build& build, const fit::Seated& seated, const fit::Seating& seating) {
  return Order(build, seated, seating).run();
}

}  // namespace baywright::plans
