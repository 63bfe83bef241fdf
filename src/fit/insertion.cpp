#include "fit/insertion.h"

#include "fit/clearance.h"
#include "fit/limits.h"
#include "fit/path_search.h"
#include "fit/removal.h"
#include "geometry/limits.h"
#include "standards/m2.h"

#include <algorithm>
#include <bit>
#include <cmath>
#include <limits>
#include <map>
#include <numbers>
#include <utility>

namespace baywright::fit {

using geometry::Bounds;
using geometry::Closest;
using geometry::Mat3;
using geometry::Movement;
using geometry::Pose;
using geometry::Vec2;
using geometry::Vec3;

namespace {

/// The element where a motion has brought it, its own motions with it.
Element carried(const Element& element, const Pose& by) {
  Element out = element;
  out.placed.pose = by.after(element.placed.pose);
  out.bounds = geometry::bounds(out.placed);
  const Mat3 back = glm::transpose(by.turn);
  Vec3 swing(0.0);
  for (int axis = 0; axis < 3; ++axis) swing += glm::abs(by.turn[axis]) * element.swing[axis];
  out.swing = swing;
  for (Motion& motion : out.motions) {
    motion.turn = by.turn * motion.turn * back;
    motion.shift = by.turn * motion.shift - motion.turn * by.shift;
    for (int i = 0; i < motion.stretch_count; ++i) {
      Stretch& stretch = motion.stretches[static_cast<std::size_t>(i)];
      stretch.axis = by.turn * stretch.axis;
      const double moved = glm::dot(stretch.axis, by.shift);
      stretch.low += moved;
      stretch.high += moved;
    }
  }
  return out;
}

/// The least gap of the pieces of two solids, or `enough` where it is more: quicker than the way out of an overlap.
double gap_of(const geometry::Placed& a, const geometry::Placed& b, double enough) {
  return geometry::closest(a, b, Movement{}, enough).mm;
}

/// A pair that comes nearer on the way than it is at the seat.
struct Meeting {
  int moving = -1;
  int fixed = -1;
  Closest closest;
  Pose pose;  // of the moving one there, relative to its seat
  std::size_t leg = 0;
  bool sure = false;  // deeper than any limits could open; asked for only where no figures are wanted
};

struct Judged {
  Way way;
  Groups out = 0;                   // removable groups in its way
  Verdict verdict = Verdict::fits;  // by what stays
  std::optional<Finding> worst;     // with what stays, where it does not fit
  std::size_t leg = 0;              // in which that is
};

class Mover {
 public:
  /// What a search, which asks at thousands of poses, takes a mesh for.
  enum class Models { boxes, nothing };

  Mover(const Host& host, const build::Build& build, const Seated& seated, const build::Place& place,
        const Options& options)
      : host_(host),
        seated_(seated),
        place_(place),
        scene_(seated.scene),
        method_(options.method.value_or(build.method)),
        removal_(host, build),
        cased_(std::holds_alternative<build::Bay>(place.socket)) {
    Bounds all = Bounds::empty();
    for (int i = 0; i < scene_.element_count(); ++i) all.add(scene_.element(i).bounds);
    for (int i = scene_.first_element(); i < scene_.element_count(); ++i) {
      if (seated.brings(i)) {
        if (seated.fixed_after.contains(i)) continue;
        moving_.push_back(i);
        boxes_.try_emplace(i, geometry::box_about(scene_.element(i).placed));
      } else if (const Element& wall = scene_.element(i); wall.part != place.name + " cover") {
        walls_.push_back(i);
      }
    }
    far_ = glm::length(all.high - all.low) + 1.0;
    const PlacedPart& carrier = host.parts[static_cast<std::size_t>(place.part)];
    if (carrier.count > 0) carrier_ = removal_.group_of(carrier.first);
    enclose();
  }

  [[nodiscard]] double far() const { return far_; }
  /// The group that the place itself is part of; -1: it stays.
  [[nodiscard]] int carrier() const { return carrier_; }
  void take_models_for(Models models) { models_ = models; }
  /// Whether a mesh moves, or stands in the machine.
  [[nodiscard]] bool has_models() const {
    for (int i = 0; i < scene_.element_count(); ++i)
      if (scene_.element(i).placed.solid.mesh() != nullptr) return true;
    return false;
  }
  /// From now on the place is outside, with what goes with it and nothing else.
  void go_outside() { outside_ = true; }
  [[nodiscard]] const Removal& removal() const { return removal_; }
  [[nodiscard]] const std::vector<int>& moving() const { return moving_; }
  void set_moving(std::vector<int> moving) {
    moving_ = std::move(moving);
    enclose();
  }
  [[nodiscard]] bool wears() const {
    return std::any_of(moving_.begin(), moving_.end(), [this](int i) { return !seated_.joint_drive.contains(i); });
  }

  /// What of the machine is met on the way. `brief`: no more is asked once something that stays is sure to be in it.
  [[nodiscard]] Judged judge(Way way, bool brief) const {
    Judged out{std::move(way), 0, Verdict::fits, {}};
    const std::vector<int> near = near_way(out.way);
    for (const int a : moving_) {
      // Meshes come last: how deep one stands in something is dear to measure, and no longer asked where all is lost.
      if (is_model(a) && out.verdict == Verdict::does_not_fit) break;
      for (const int b : near) {
        if (skips(a, b)) continue;
        const int group = group_of(b);
        if (group >= 0 && (out.out & (Groups{1} << group)) != 0) continue;
        const auto met = meeting(a, b, out.way, brief || group >= 0);
        if (!met) continue;
        if (met->sure) {
          if (group >= 0) {
            out.out |= Groups{1} << group;
            continue;
          }
          out.verdict = Verdict::does_not_fit;
          out.leg = met->leg;
          out.worst = blocked_by(a, b);
          return out;
        }
        const GapLimits found = limits_of(*met);
        if (found.min >= -geometry::slide_mm && met->closest.sure) continue;
        if (group >= 0) {
          out.out |= Groups{1} << group;
          continue;
        }
        Finding finding = gap_finding(scene_, scene_.element(a), scene_.element(b), found, 0.0, method_);
        // A length that is known on one side only leaves its gap open, but no such length lets a drive through a wall.
        if (met->closest.mm < -2.0 * reach_of(scene_.element(a), scene_.element(b))) {
          finding.verdict = Verdict::does_not_fit;
          finding.share = 0.0;
        }
        if (!met->closest.sure) finding.verdict = Verdict::undecided;
        const bool worse_one = !out.worst || *finding.verdict > out.verdict ||
                               (*finding.verdict == out.verdict && finding.gap->nominal < out.worst->gap->nominal);
        if (worse_one) {
          out.worst = std::move(finding);
          out.leg = met->leg;
        }
        out.verdict = worse(out.verdict, *out.worst->verdict);
        if (brief && out.verdict == Verdict::does_not_fit) return out;
      }
    }
    return out;
  }

  /// The least signed gap of the moving solids, moved by `by`, to all that stays (`gone`: groups that are out). As a
  /// search sees them.
  [[nodiscard]] double gap_at(const Pose& by, double enough, Groups gone) const {
    double least = enough;
    for (const int a : moving_) {
      const geometry::Placed* own = seen(a);
      if (own == nullptr) continue;
      const geometry::Placed placed{own->solid, by.after(own->pose)};
      const Bounds box = geometry::bounds(placed);
      const auto ask = [&](int b) {
        const geometry::Placed* other = seen(b);
        if (other == nullptr || skips(a, b) || is_gone(b, gone)) return;
        if (box.distance(scene_.element(b).bounds) < least) least = gap_of(placed, *other, least);
      };
      host_.tree.near(box, least, near_);
      for (const int b : near_) ask(b);
      for (const int b : walls_) ask(b);
    }
    return least;
  }

  /// Whether nothing that stays is in the way of one motion that begins where `from` has brought the drive. As a search
  /// sees it.
  [[nodiscard]] bool free(const Pose& from, const Movement& movement, Groups gone) const {
    for (const int a : moving_) {
      const geometry::Placed* own = seen(a);
      if (own == nullptr) continue;
      const geometry::Placed placed{own->solid, from.after(own->pose)};
      const Bounds way = geometry::swept(geometry::bounds(placed), movement);
      const auto hits = [&](int b) {
        const geometry::Placed* other = seen(b);
        if (other == nullptr || skips(a, b) || is_gone(b, gone) || way.distance(scene_.element(b).bounds) > 0.0)
          return false;
        // What is no nearer than at the seat is judged there.
        const double seat = seat_gap(a, b);
        const double least = seat < geometry::fine_mm ? seat - geometry::fine_mm : -geometry::slide_mm;
        const geometry::Placed& box = boxes_.at(a);
        return !geometry::stays_clear({box.solid, from.after(box.pose)}, *other, movement, least) &&
               !geometry::stays_clear(placed, *other, movement, least);
      };
      host_.tree.near(way, 0.0, near_);
      if (std::any_of(near_.begin(), near_.end(), hits) || std::any_of(walls_.begin(), walls_.end(), hits))
        return false;
    }
    return true;
  }

 private:
  /// How near two may come at their limits, open sides apart, mm.
  [[nodiscard]] static double reach_of(const Element& a, const Element& b) {
    return glm::length(a.swing) + glm::length(b.swing) + geometry::slide_mm;
  }
  [[nodiscard]] double seat_gap(int a, int b) const {
    const auto [known, fresh] = seat_gaps_.try_emplace({a, b}, 0.0);
    if (fresh)
      known->second =
          gap_of(scene_.element(a).placed, scene_.element(b).placed, std::numeric_limits<double>::infinity());
    return known->second;
  }
  [[nodiscard]] bool is_model(int element) const { return scene_.element(element).placed.solid.mesh() != nullptr; }

  /// A mesh without an inside: whether something is within it cannot be told.
  [[nodiscard]] bool is_surface(int element) const {
    const geometry::Mesh* mesh = scene_.element(element).placed.solid.mesh();
    return mesh != nullptr && !mesh->closed();
  }

  /// An element at its seat as a search sees it; null: it does not.
  [[nodiscard]] const geometry::Placed* seen(int element) const {
    const geometry::Placed& placed = scene_.element(element).placed;
    if (placed.solid.mesh() == nullptr) return &placed;
    if (models_ == Models::nothing) return nullptr;
    return &box_of(element);
  }
  [[nodiscard]] const geometry::Placed& box_of(int element) const {
    const auto known = boxes_.find(element);
    if (known != boxes_.end()) return known->second;
    return boxes_.emplace(element, geometry::box_about(scene_.element(element).placed)).first->second;
  }

  [[nodiscard]] int group_of(int element) const {
    const int group = element < scene_.first_element() ? removal_.group_of(element) : -1;
    return group == carrier_ ? -1 : group;
  }
  [[nodiscard]] bool is_gone(int element, Groups gone) const {
    const int group = group_of(element);
    return group >= 0 && (gone & (Groups{1} << group)) != 0;
  }

  /// Contacts that are meant, and what the standard itself sees to.
  [[nodiscard]] bool skips(int a, int b) const {
    if (seated_.mates.contains(std::minmax(a, b))) return true;
    return !cased_ && seated_.joint_drive.contains(a) && seated_.joint_host.contains(b);
  }

  [[nodiscard]] bool opens(int wall, const Way& way) const {
    const auto* bay = std::get_if<build::Bay>(&place_.socket);
    const std::string& name = scene_.element(wall).body;
    return bay != nullptr && (name == bay->opens || name == way.through);
  }

  /// The box about all that moves, along the drive's own axes.
  void enclose() {
    std::stable_partition(moving_.begin(), moving_.end(), [this](int i) { return !is_model(i); });
    const Pose to_card = seated_.card.pose.inverse();
    Bounds all = Bounds::empty();
    whole_swing_ = 0.0;
    for (const int a : moving_) {
      const geometry::Placed& box = boxes_.at(a);
      all.add(geometry::bounds({box.solid, to_card.after(box.pose)}));
      whole_swing_ = std::max(whole_swing_, glm::length(scene_.element(a).swing));
    }
    auto made = geometry::Solid::box(all.high - all.low);
    if (std::holds_alternative<geometry::Refusal>(made)) return;  // nothing moves
    whole_ =
        geometry::Placed{std::get<geometry::Solid>(std::move(made)), seated_.card.pose.after({Mat3(1.0), all.low})};
  }

  /// Elements that come near the way of the drive as a whole: most are told off at one box.
  [[nodiscard]] std::vector<int> near_way(const Way& way) const {
    std::vector<int> out;
    if (!whole_) return out;
    Bounds all = geometry::bounds(*whole_);
    std::vector<geometry::Placed> starts;
    Pose before;
    for (const Movement& leg : way.legs) {
      starts.push_back({whole_->solid, before.after(whole_->pose)});
      all.add(geometry::swept(geometry::bounds(starts.back()), leg));
      before = leg.at(1.0).after(before);
    }
    const Vec3 swing(whole_swing_);
    host_.tree.near({all.low - swing, all.high + swing}, 0.0, out);
    for (const int wall : walls_)
      if (!opens(wall, way)) out.push_back(wall);
    std::erase_if(out, [&](int b) {
      if (outside_ && b < scene_.first_element() && removal_.group_of(b) != carrier_) return true;
      const Element& other = scene_.element(b);
      const geometry::Placed& placed = is_surface(b) ? box_of(b) : other.placed;
      const double least = whole_swing_ + glm::length(other.swing) + geometry::slide_mm;
      for (std::size_t leg = 0; leg < way.legs.size(); ++leg)
        if (!geometry::stays_clear(starts[leg], placed, way.legs[leg], least)) return false;
      return true;
    });
    return out;
  }

  /// `brief`: an overlap that is deeper than the limits can open is enough.
  [[nodiscard]] std::optional<Meeting> meeting(int a, int b, const Way& way, bool brief) const {
    const Element& own = scene_.element(a);
    const Element& other = scene_.element(b);
    const double reach = reach_of(own, other);
    // What is no nearer than at the seat is judged there. (Hundredths do not count: to follow a pair that stays as near
    // as it was would take steps of a millionth.)
    const double seat =
        own.bounds.distance(other.bounds) > reach ? reach : std::min(reach, seat_gap(a, b) - geometry::fine_mm);
    const double deep = brief ? std::min(0.0, seat) - 2.0 * reach : -std::numeric_limits<double>::infinity();
    Meeting met{a, b, {seat, 0.0, false, true}, {}};
    Pose before;
    bool sure = true;
    const bool surface = is_surface(a) || is_surface(b);
    for (std::size_t leg = 0; leg < way.legs.size(); ++leg) {
      const Movement& movement = way.legs[leg];
      if (surface) {
        const geometry::Placed& box = boxes_.at(a);
        sure = sure && geometry::stays_clear({box.solid, before.after(box.pose)}, box_of(b), movement, 0.0);
      }
      const geometry::Placed placed{own.placed.solid, before.after(own.placed.pose)};
      const Closest found = on_leg(a, before, placed, other.placed, movement, met.closest.mm, deep);
      sure = sure && found.sure;
      if (found.met && found.mm < met.closest.mm) {
        met.closest = found;
        met.pose = movement.at(found.t).after(before);
        met.leg = leg;
        if (found.mm < deep) {
          met.sure = true;
          break;
        }
      }
      before = movement.at(1.0).after(before);
    }
    met.closest.sure = sure;
    if (!met.closest.met && sure) return std::nullopt;
    return met;
  }

  /// As `closest`, asking the box about the moving solid first.
  [[nodiscard]] Closest on_leg(int a, const Pose& before, const geometry::Placed& placed, const geometry::Placed& other,
                               const Movement& movement, double cutoff, double deep) const {
    const geometry::Placed& box = boxes_.at(a);
    const Closest coarse = geometry::closest({box.solid, before.after(box.pose)}, other, movement, cutoff, deep);
    if (!coarse.met && coarse.sure) return coarse;
    if (coarse.mm < deep) {
      const double there = gap_of({placed.solid, movement.at(coarse.t).after(placed.pose)}, other, cutoff);
      if (there < deep) return {there, coarse.t, true, true};
    }
    if (std::isfinite(deep)) {
      const Closest hasty = geometry::closest(placed, other, movement, cutoff, deep);
      if (hasty.mm < deep || (!hasty.met && hasty.sure) || is_model(a)) return hasty;
    }
    return geometry::closest(placed, other, movement, cutoff);
  }

  [[nodiscard]] Finding blocked_by(int a, int b) const {
    Finding finding;
    finding.kind = Kind::insertion;
    finding.verdict = Verdict::does_not_fit;
    finding.between = {scene_.element(a).part, scene_.element(b).part};
    return finding;
  }

  [[nodiscard]] GapLimits limits_of(const Meeting& met) const {
    return limits(scene_, carried(scene_.element(met.moving), met.pose), scene_.element(met.fixed), method_, 0.0);
  }

  const Host& host_;
  const Seated& seated_;
  const build::Place& place_;
  const Scene& scene_;
  tolerance::Method method_;
  Removal removal_;
  bool cased_;
  double far_ = 0.0;
  int carrier_ = -1;
  bool outside_ = false;
  std::vector<int> moving_;
  std::optional<geometry::Placed> whole_;
  double whole_swing_ = 0.0;  // mm: none of it moves farther within the limits
  std::vector<int> walls_;
  mutable std::map<int, geometry::Placed> boxes_;  // about the moving ones and about meshes, at their seats
  Models models_ = Models::boxes;
  mutable std::vector<int> near_;
  mutable std::map<std::pair<int, int>, double> seat_gaps_;
};

/// Two freedoms in which the drive may leave: an M.2 or mini card turns up and is drawn out along itself; a cased drive
/// and an add-in card shift along two directions.
struct Plane {
  bool turns = false;
  Pivot pivot;
  Vec3 first{0.0};  // shifting: p along this, q along the other
  Vec3 second{0.0};
  Freedoms freedoms;

  [[nodiscard]] Vec3 along(double degrees) const { return geometry::rotation(pivot.across, degrees) * pivot.along; }
  [[nodiscard]] Pose pose(const Vec2& at) const {
    if (!turns) return {Mat3(1.0), first * at.x + second * at.y};
    const Mat3 turn = geometry::rotation(pivot.across, at.x);
    return {turn, pivot.edge - turn * pivot.edge + along(at.x) * at.y};
  }
  /// From one node to the next, which differs in one freedom.
  [[nodiscard]] Movement leg(const Vec2& from, const Vec2& to) const {
    Movement movement;
    if (!turns) {
      movement.shift = first * (to.x - from.x) + second * (to.y - from.y);
    } else if (to.x != from.x) {
      // At a depth the card turns about where its edge was: the turn and the shift along the card commute so.
      movement.pivot = pivot.edge;
      movement.axis = pivot.across;
      movement.degrees = to.x - from.x;
    } else {
      movement.shift = along(from.x) * (to.y - from.y);
    }
    return movement;
  }
};

Plane plane_of(const Mover& mover, const Seated& seated, const build::Place& place) {
  Plane plane;
  const Mat3& turn = seated.slot.pose.turn;
  plane.turns =
      !std::holds_alternative<build::Bay>(place.socket) && !std::holds_alternative<build::CardSlot>(place.socket);
  if (plane.turns) {
    plane.pivot = pivot_of(seated);
    double radius = 0.0;
    for (const int i : mover.moving()) {
      const Bounds& box = seated.scene.element(i).bounds;
      for (int corner = 0; corner < 8; ++corner)
        radius = std::max(radius, glm::length(box.corner(corner) - plane.pivot.edge));
    }
    plane.freedoms.p_most = standards::m2::insertion_angles().most;
    plane.freedoms.q_most = seated.length + 2.0 * plane.pivot.depth;
    const double most = plane.freedoms.q_most;
    plane.freedoms.reach = [radius, most](double dp, double dq) {
      return dp * std::numbers::pi / 180.0 * (radius + most) + dq;
    };
    return plane;
  }
  const auto* bay = std::get_if<build::Bay>(&place.socket);
  plane.first = bay != nullptr ? turn[1] : turn[2];
  plane.second = bay != nullptr ? turn[2] : turn[1];
  plane.freedoms.p_most = seated.length + 20.0;
  plane.freedoms.q_most = 80.0;
  plane.freedoms.reach = [](double dp, double dq) { return std::hypot(dp, dq); };
  return plane;
}

std::optional<Way> search(const Mover& mover, const Seated& seated, const build::Place& place) {
  Plane plane = plane_of(mover, seated, place);
  const Groups gone = mover.removal().all();
  plane.freedoms.gap = [&](double p, double q, double enough) {
    return mover.gap_at(plane.pose({p, q}), enough, gone);
  };
  const std::vector<Vec3> directions = exits(seated, place);
  const auto exit_from = [&](const Vec2& at) -> std::optional<Movement> {
    const bool in_connector = plane.turns && at.y < plane.pivot.depth;
    if (in_connector || (!plane.turns && at.x == 0.0)) return std::nullopt;
    for (const Vec3& direction : directions) {
      Movement movement;
      movement.shift = direction * mover.far();
      if (mover.free(plane.pose(at), movement, gone)) return movement;
    }
    return std::nullopt;
  };
  plane.freedoms.allowed = [&plane](const Vec2& from, const Vec2& to) {
    // In its socket a card must be up by the least angle before it is drawn out.
    const bool draws = plane.turns && to.y != from.y && std::min(from.y, to.y) < plane.pivot.depth;
    return !draws || from.x >= standards::m2::insertion_angles().least;
  };
  const PathJudge judge{
      [&](const Vec2& from, const Vec2& to) { return mover.free(plane.pose(from), plane.leg(from, to), gone); },
      [&](const Vec2& at) { return exit_from(at).has_value(); }};
  const auto path = find_path(plane.freedoms, judge);
  if (!path) return std::nullopt;
  Way way{Way::Kind::searched, 0.0, {}, {}};
  for (std::size_t i = 1; i < path->size(); ++i) {
    way.legs.push_back(plane.leg((*path)[i - 1], (*path)[i]));
    if (plane.turns) way.angle = std::max(way.angle, (*path)[i].x);
  }
  way.legs.push_back(*exit_from(path->back()));
  return way;
}

/// A way by search. A mesh is taken for the box about it; where that finds none, it is sure to be none only if none is
/// found without the meshes either.
struct Search {
  std::optional<Way> way;
  bool sure = true;
};
Search search_with_models(Mover& mover, const Seated& seated, const build::Place& place) {
  Search out;
  if (mover.has_models()) {
    mover.take_models_for(Mover::Models::nothing);
    out.sure = !search(mover, seated, place).has_value();
    mover.take_models_for(Mover::Models::boxes);
    if (out.sure) return out;
  }
  out.way = search(mover, seated, place);
  return out;
}

/// First what the drive wears straight off, then the bare card by a way of its own.
std::optional<Judged> bare_first(Mover& mover, const Seated& seated, const build::Place& place) {
  const std::vector<int> whole = mover.moving();
  std::vector<int> worn;
  std::vector<int> bare;
  for (const int i : whole) (seated.joint_drive.contains(i) ? bare : worn).push_back(i);
  Movement off;
  off.shift = seated.slot.pose.turn[2] * mover.far();
  mover.set_moving(worn);
  const Judged lifted = mover.judge({Way::Kind::bare_first, 0.0, {off}, {}}, true);
  std::optional<Judged> found;
  if (lifted.verdict == Verdict::fits) {
    mover.set_moving(bare);
    for (Way& way : ways_out(seated, place, mover.far())) {
      Judged judged = mover.judge(std::move(way), true);
      if (judged.verdict != Verdict::fits || (found && judged.out != 0)) continue;
      judged.out |= lifted.out;
      judged.way.kind = Way::Kind::bare_first;
      const bool done = judged.out == 0;
      found = std::move(judged);
      if (done) break;
    }
  }
  mover.set_moving(whole);
  return found;
}

Finding said(const build::Drive& drive, const build::Place& place, Code code, const Way& way) {
  Finding finding;
  finding.kind = Kind::insertion;
  finding.between = {drive.name, place.name};
  finding.why = {code, {{"way", word(way.kind)}}, {}};
  if (!way.through.empty()) finding.why.words.emplace_back("through", way.through);
  if (way.angle > 0.0) finding.why.figures.emplace_back("angle", way.angle);
  return finding;
}

Insertion goes(const Mover& mover, const build::Drive& drive, const build::Place& place, const Judged& judged,
               const Judged& plain, bool is_plain, const std::vector<int>& out) {
  const Code code = !out.empty() ? Code::way_after : is_plain ? Code::way_plain : Code::way_other;
  Insertion done{said(drive, place, code, judged.way), judged.way, {}};
  done.finding.verdict = Verdict::fits;
  done.finding.share = 1.0;
  for (const int group : out) {
    done.out_first.push_back(mover.removal().name(group));
    done.finding.why.words.emplace_back("out", mover.removal().name(group));
  }
  if (code == Code::way_other) {
    done.finding.why.words.emplace_back("plain", word(plain.way.kind));
    if (plain.worst)
      done.finding.why.words.emplace_back("by", plain.worst->between[1]);
    else if (plain.out != 0)
      done.finding.why.words.emplace_back("by", mover.removal().name(std::countr_zero(plain.out)));
    if (plain.way.angle > 0.0) done.finding.why.figures.emplace_back("plain angle", plain.way.angle);
  }
  return done;
}

/// Where the place itself comes out: it does, and the drive goes in on the bench.
std::optional<Insertion> on_the_bench(const Mover& inside, const Seated& seated, const build::Drive& drive,
                                      const build::Place& place, const Judged& plain) {
  if (inside.carrier() < 0) return std::nullopt;
  const auto order = inside.removal().shortest({Groups{1} << inside.carrier()});
  if (!order) return std::nullopt;
  Mover outside = inside;
  outside.go_outside();
  for (Way& way : ways_out(seated, place, outside.far())) {
    const Judged judged = outside.judge(std::move(way), true);
    if (judged.verdict == Verdict::fits) return goes(inside, drive, place, judged, plain, false, order->groups);
  }
  return std::nullopt;
}

Insertion does_not_go(const build::Drive& drive, const build::Place& place, const Judged& nearest, Code code,
                      const Removal* removal = nullptr) {
  Finding finding = said(drive, place, code, nearest.way);
  if (nearest.worst) {
    const Finding& worst = *nearest.worst;
    finding.between = worst.between;
    finding.bodies = worst.bodies;
    finding.gap = worst.gap;
    finding.at = worst.at;
    finding.toward = worst.toward;
    finding.chain = worst.chain;
    finding.share = worst.share;
    finding.why.words.emplace_back("by", worst.between[1]);
    if (worst.gap) {
      finding.why.figures.emplace_back("gap", worst.gap->nominal);
      finding.why.figures.emplace_back("worst", worst.gap->min);
    }
    finding.why.figures.emplace_back("decided", nearest.verdict == Verdict::undecided ? 0.0 : 1.0);
  }
  for (int group = 0; removal != nullptr && group < 64; ++group)
    if ((nearest.out & (Groups{1} << group)) != 0) finding.why.words.emplace_back("out", removal->name(group));
  finding.verdict = nearest.verdict;
  if (nearest.verdict == Verdict::undecided) finding.share.reset();
  return {std::move(finding), nearest.verdict == Verdict::does_not_fit ? std::nullopt : std::optional(nearest.way), {}};
}

/// Of the blocked ways of that kind, at whichever angle, the one with the least in its way.
Judged least_blocked(const Mover& mover, const Seated& seated, const build::Place& place, Judged best) {
  for (Way& way : ways_out(seated, place, mover.far())) {
    if (way.kind != best.way.kind) continue;
    Judged judged = mover.judge(std::move(way), false);
    if (judged.worst && judged.worst->gap && best.worst && judged.worst->gap->nominal > best.worst->gap->nominal)
      best = std::move(judged);
  }
  return best;
}

}  // namespace

Insertion insertion(const Host& host, const build::Build& build, const Seated& seated, const build::Drive& drive,
                    const build::Place& place, const Options& options) {
  Mover mover(host, build, seated, place, options);
  std::vector<Way> ways = ways_out(seated, place, mover.far());
  Judged plain = mover.judge(ways.front(), true);
  if (plain.verdict == Verdict::fits && plain.out == 0) return goes(mover, drive, place, plain, plain, true, {});

  std::vector<Judged> after;  // free once removable parts are out
  Judged nearest = plain;     // the best that is not free
  std::vector<double> shut;   // angles at which a card does not even leave its socket
  const auto note_shut = [&shut](const Judged& judged) {
    if (judged.way.kind == Way::Kind::tilted && judged.verdict == Verdict::does_not_fit && judged.leg < 2)
      shut.push_back(judged.way.angle);
  };
  note_shut(plain);
  const auto consider = [&](Judged judged) {
    if (judged.verdict == Verdict::fits)
      after.push_back(std::move(judged));
    else if (judged.verdict < nearest.verdict && judged.out == 0)
      nearest = std::move(judged);
  };
  const auto taken_out = [&]() -> std::optional<Insertion> {
    std::vector<Groups> wanted;
    for (const Judged& judged : after) wanted.push_back(judged.out);
    if (wanted.empty()) return std::nullopt;
    const auto order = mover.removal().shortest(wanted);
    if (!order) return std::nullopt;
    const Judged& judged = after[order->wanted];
    return goes(mover, drive, place, judged, plain, false, order->groups);
  };
  if (plain.verdict == Verdict::fits) after.push_back(plain);
  bool usual_angle = true;
  for (std::size_t i = 1; i < ways.size(); ++i) {
    // Whoever takes a lid off puts the card in as usual: other angles only where that does not do.
    if (usual_angle && ways[i].angle != plain.way.angle) {
      usual_angle = false;
      if (auto done = taken_out()) return *std::move(done);
    }
    if (std::find(shut.begin(), shut.end(), ways[i].angle) != shut.end()) continue;
    const bool card = ways[i].kind == Way::Kind::tilted;
    if (options.quick && card && !usual_angle && ways[i].angle > standards::m2::insertion_angles().least) continue;
    Judged judged = mover.judge(std::move(ways[i]), true);
    note_shut(judged);
    // A cased drive goes in by any side that is open, a card at the usual angle from any side.
    const bool usual = std::holds_alternative<build::Bay>(place.socket) ||
                       (judged.way.kind == Way::Kind::tilted && judged.way.angle == plain.way.angle);
    if (judged.verdict == Verdict::fits && judged.out == 0) return goes(mover, drive, place, judged, plain, usual, {});
    consider(std::move(judged));
  }
  if (auto done = taken_out()) return *std::move(done);
  if (!after.empty()) {  // free but for parts that hold each other
    nearest = after.front();
    nearest.verdict = Verdict::undecided;
    return does_not_go(drive, place, nearest, Code::way_held, &mover.removal());
  }
  if (auto done = on_the_bench(mover, seated, drive, place, plain)) return *std::move(done);
  if (options.quick) {
    nearest.verdict = Verdict::undecided;
    return does_not_go(drive, place, nearest, Code::way_unsure);
  }
  Search found = search_with_models(mover, seated, place);
  if (found.way) {
    Judged judged = mover.judge(*std::move(found.way), false);
    if (judged.verdict == Verdict::fits && judged.out == 0) return goes(mover, drive, place, judged, plain, false, {});
    consider(std::move(judged));
  }
  if (auto bare = mover.wears() ? bare_first(mover, seated, place) : std::nullopt) {
    if (bare->out == 0) return goes(mover, drive, place, *bare, plain, false, {});
    after.push_back(*std::move(bare));
  }
  if (auto done = taken_out()) return *std::move(done);
  nearest = mover.judge(std::move(nearest.way), false);  // with its figures
  if (nearest.verdict == Verdict::does_not_fit && !found.sure) nearest.verdict = Verdict::undecided;
  if (nearest.verdict == Verdict::does_not_fit) nearest = least_blocked(mover, seated, place, std::move(nearest));
  return does_not_go(drive, place, nearest,
                     nearest.verdict == Verdict::does_not_fit ? Code::way_blocked : Code::way_unsure);
}

}  // namespace baywright::fit
