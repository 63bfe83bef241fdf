#include "thermal/heat.h"

#include "fit/clearance.h"
#include "fit/seat.h"

#include <algorithm>
#include <cmath>
#include <glm/geometric.hpp>
#include <limits>
#include <vector>

namespace baywright::thermal {

namespace {

constexpr double metre = 1e-3;  // of mm

/// Grease fills gaps up to 0.05 mm (a distributor's tutorial, secondary); the lower end is common practice, no source.
constexpr Interval grease{0.01e-3, 0.05e-3};  // m

/// Gaps farther than this need not be reported by a check, mm (fit/clearance.h): what is over the drive may be anywhere
/// beyond.
constexpr double looked_for = fit::shown_beyond_mm;

/// The least gap that the drive's own solids have outward, or inward; none where a check reports none. m.
std::optional<Interval> nearest(const build::Drive& drive, const fit::Seated& seated, const fit::Seating& seating,
                                bool outward) {
  const geometry::Vec3 out = seated.card.pose.turn[2];
  std::optional<Interval> found;
  for (const fit::Finding& finding : seating.findings) {
    if (!finding.gap || finding.kind != fit::Kind::clearance) continue;
    const bool own = finding.between[0] == drive.name ||
                     std::any_of(drive.wears.begin(), drive.wears.end(), [&](const build::Wear& wear) {
                       return std::visit([](const auto& worn) { return worn.name; }, wear) == finding.between[0];
                     });
    // Room is gained by moving away from what is met.
    const double away = glm::dot(finding.toward, out);
    if (!own || !(outward ? away < -0.9 : away > 0.9)) continue;
    const double low = std::max(std::isfinite(finding.gap->min) ? finding.gap->min : 0.0, 0.0);
    const double high = std::max(std::isfinite(finding.gap->max) ? finding.gap->max : finding.gap->nominal, low);
    if (!found || high * metre < found->high) found = Interval{low * metre, high * metre};
  }
  return found;
}

/// The fins of a heatsink of the library, by their bodies; none where it has fewer than two.
std::optional<Fins> fins_of(const parts::Part& part, const std::vector<double>& values) {
  std::vector<const parts::Body*> bodies;
  for (const parts::Body& body : part.bodies)
    if (body.name.starts_with("fin")) bodies.push_back(&body);
  if (bodies.size() < 2) return std::nullopt;
  const auto side = [&](const parts::Coordinate& coordinate) { return coordinate.at(values) * metre; };
  const parts::Body& first = *bodies[0];
  Fins fins;
  fins.count = static_cast<int>(bodies.size());
  fins.thickness = side(first.high[0]) - side(first.low[0]);
  fins.height = side(first.high[2]) - side(first.low[2]);
  fins.spacing = std::abs(side(bodies[1]->low[0]) - side(first.low[0])) - fins.thickness;
  return fins;
}

std::optional<Sink> sink_of(const build::Drive& drive) {
  const build::Pad* pad = nullptr;
  for (const build::Wear& wear : drive.wears) {
    if (const auto* worn = std::get_if<build::Pad>(&wear)) pad = worn;
    const auto* heatsink = std::get_if<build::Heatsink>(&wear);
    if (heatsink == nullptr) continue;
    const std::vector<double> values = parts::nominal_values(heatsink->part);
    const auto extent = [&](int axis) {
      return (parts::outer_face(heatsink->part, axis, true).at(values) -
              parts::outer_face(heatsink->part, axis, false).at(values)) *
             metre;
    };
    Sink sink{extent(1), extent(0), extent(2), fins_of(heatsink->part, values), grease};
    if (pad != nullptr) {
      const tolerance::Dimension& free = pad->free_thickness.dimension;
      const double share = (1.0 - pad->compress) * metre;
      sink.pad = {std::max(0.0, std::isfinite(free.low()) ? free.low() : 0.0) * share,
                  (std::isfinite(free.high()) ? free.high() : free.nominal) * share};
    }
    return sink;
  }
  return std::nullopt;
}

std::optional<Budget> budget_of(const build::Drive& drive, const build::Place& place) {
  if (const auto* socket = std::get_if<build::M2Socket>(&place.socket)) return m2_budget(socket->key);
  if (const auto* slot = std::get_if<build::CardSlot>(&place.socket)) return card_slot_budget(slot->lanes);
  if (parts::of_edsff(drive.form))
    return edsff_budget(drive.form, drive.cased.height.at(parts::nominal_values(drive.cased.part)));
  if (const auto* bay = std::get_if<build::Bay>(&place.socket)) return plug_budget(bay->receptacle);
  return std::nullopt;
}

void add_draw(Heat& heat, const build::Drive& drive) {
  heat.draw = draw(*heat.budget, {&heat.stated.watts, 1});
  if (drive.worn) heat.sharing = drive.worn->adapter->drives;
  if (heat.sharing < 2) return;
  const std::vector<std::optional<double>> all(static_cast<std::size_t>(heat.sharing), heat.stated.watts);
  heat.shared = draw(*heat.budget, all);
}

/// Of the pad under the heatsink: screwed or clipped down it is held where a pad of nominal thickness is pressed as the
/// build says, and the pad varies within its limits.
std::optional<Contact> contact_of(const build::Drive& drive) {
  for (const build::Wear& wear : drive.wears)
    if (const auto* pad = std::get_if<build::Pad>(&wear)) {
      const tolerance::Dimension& free = pad->free_thickness.dimension;
      if (free.open()) return std::nullopt;
      const double gap = free.nominal * (1.0 - pad->compress);
      return contact(gap, gap, free.low(), free.high());
    }
  return std::nullopt;
}

}  // namespace

Outlook outlook(const Interval& kelvin, const Stated& stated) {
  const std::optional<double> limit = stated.warning ? stated.warning : stated.critical;
  if (!limit) return Outlook::no_limit;
  if (kelvin.low >= *limit) return Outlook::likely_throttles;
  return kelvin.high < *limit ? Outlook::stays_below : Outlook::may_throttle;
}

Heat heat_of(const build::Drive& drive, const build::Place& place, const fit::Seated& seated,
             const fit::Seating& seating, const Stated& stated, const Surroundings& around) {
  Heat out;
  out.stated = stated;
  out.around = around;
  if (seating.verdict == fit::Verdict::does_not_fit || !fit::seats(drive, seating.questions)) {
    out.unknown = Unknown::not_seated;
    return out;
  }
  out.budget = budget_of(drive, place);
  if (out.budget) add_draw(out, drive);
  out.contact = contact_of(drive);
  if (drive.form != build::Form::m2 || drive.worn) {
    out.unknown = Unknown::no_law;
    return out;
  }
  if (!stated.watts) {
    out.unknown = Unknown::no_power;
    return out;
  }
  Card card;
  card.watts = {*stated.watts, *stated.watts};
  card.length = build::length_code(build::size_of(drive.card)) * metre;
  card.width = build::width_code(build::size_of(drive.card)) * metre;
  card.thickness = -drive.m2.underside.at(parts::nominal_values(drive.m2.part)) * metre;
  card.sink = sink_of(drive);
  constexpr Interval beyond{looked_for * metre, std::numeric_limits<double>::infinity()};
  out.greased = card.sink && !out.contact;
  card.room = nearest(drive, seated, seating, true).value_or(beyond);
  card.air = around.air;
  card.speed = around.speed;
  Assumed assumed;
  assumed.under_card = nearest(drive, seated, seating, false).value_or(assumed.under_card);
  out.warmth = warmth(card, assumed);
  if (!out.warmth) {
    out.unknown = Unknown::too_hot;
    return out;
  }
  out.outlook = outlook(out.warmth->composite(), stated);
  return out;
}

}  // namespace baywright::thermal
