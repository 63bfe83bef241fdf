// What a drive is screwed to: spacers and stand-offs under it, screws, the stand-off of a card.
#include "plans/at_hand.h"
#include "plans/catalogue.h"
#include "standards/fasteners.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace baywright::plans {

namespace fasteners = standards::fasteners;

namespace {

build::Edit screw_of(const Spot& spot, const build::Fixing& fixing, double length) {
  tolerance::Dimension screw = fixing.length->dimension;
  screw.nominal = length;
  return {.path = {table_of(spot.at()), spot.at().name, "fixing", "length"}, .value = limited(screw)};
}

void add_spacers(std::vector<Option>& out, const Spot& spot, const build::Bay& bay) {
  constexpr std::size_t screws_tried = 3;
  const build::Fixing& fixing = *bay.fixing;
  const double now = bay.raised ? bay.raised->dimension.nominal : 0.0;
  for (const double length : spacers_at_hand(spot.build)) {
    if (std::abs(length - now) < 1e-9) continue;
    tolerance::Dimension spacer = fasteners::spacer_length_limit();
    spacer.nominal = length;
    Option option;
    option.change = {.kind = Kind::spacer,
                     .what = spot.drive.name,
                     .to = "spacers under the drive",
                     .from = now,
                     .value = length,
                     .prices = {Price::screws}};
    const build::Edit raise{.path = {table_of(spot.at()), spot.at().name, "spacers"}, .value = limited(spacer)};
    option.variants.push_back({{raise}, length});
    if (fixing.length) {
      const std::vector<double> screws =
          screws_at_hand(spot.build, fixing.thread, fixing.length->dimension.nominal + length - now);
      for (std::size_t i = 0; i < std::min(screws.size(), screws_tried); ++i)
        option.variants.push_back({{raise, screw_of(spot, fixing, screws[i])}, length, screws[i]});
    }
    option.holds = {"raised", "screw"};
    option.mends = {fit::Kind::clearance, fit::Kind::screw, fit::Kind::holes, fit::Kind::connector};
    option.key = "spacers of the drive";
    option.amount = std::abs(length - now);
    option.cautions = {Caution::money_unknown};
    out.push_back(std::move(option));
  }
}

void add_studs(std::vector<Option>& out, const Spot& spot, const build::Bay& bay) {
  const tolerance::Dimension& now = bay.raised->dimension;
  std::vector<double> lengths;
  for (const fasteners::Standoff& row : fasteners::standoffs())
    if (row.stud && row.thread == bay.fixing->thread)
      lengths.insert(lengths.end(), row.lengths.begin(), row.lengths.end());
  std::sort(lengths.begin(), lengths.end());
  lengths.erase(std::unique(lengths.begin(), lengths.end()), lengths.end());
  for (const double length : lengths) {
    if (std::abs(length - now.nominal) < 1e-9) continue;
    tolerance::Dimension standoff = fasteners::standoff_length_limit();
    standoff.nominal = length;
    Option option;
    option.change = {.kind = Kind::other_standoff,
                     .what = spot.at().name,
                     .from = now.nominal,
                     .value = length,
                     .prices = {Price::screws}};
    option.variants = {
        {{{.path = {table_of(spot.at()), spot.at().name, "standoffs"}, .value = limited(standoff)}}, length}};
    option.holds = {"raised"};
    option.mends = {fit::Kind::clearance, fit::Kind::screw, fit::Kind::holes, fit::Kind::connector,
                    fit::Kind::standoff};
    option.key = "stand-offs of the drive";
    option.amount = std::abs(length - now.nominal);
    option.cautions = {Caution::money_unknown};
    out.push_back(std::move(option));
  }
}

/// Other screws from outside into threaded stand-offs.
void add_outer_screws(std::vector<Option>& out, const Spot& spot, const build::Screw& now) {
  for (const double length : screws_at_hand(spot.build, now.thread, now.length)) {
    if (std::abs(length - now.length) < 1e-9) continue;
    Option option;
    option.change = {
        .kind = Kind::other_screw, .what = now.thread, .from = now.length, .value = length, .prices = {Price::screws}};
    option.variants = {{{{.path = {table_of(spot.at()), spot.at().name, "fixing", "outside"},
                          .value = screw_text(now.thread, length)}},
                        length}};
    option.holds = {"outer screw"};
    option.mends = {fit::Kind::standoff};
    option.key = "outer screw";
    option.amount = std::abs(length - now.length);
    out.push_back(std::move(option));
  }
}

/// Screws of another length, or washers under the heads of these.
void add_screws(std::vector<Option>& out, const Spot& spot, const build::Fixing& fixing) {
  const double now = fixing.length->dimension.nominal;
  Option option;
  option.holds = {"screw"};
  option.mends = {fit::Kind::clearance, fit::Kind::screw};
  for (const double length : screws_at_hand(spot.build, fixing.thread, now)) {
    if (std::abs(length - now) < 1e-9) continue;
    option.change = {
        .kind = Kind::other_screw, .what = fixing.thread, .from = now, .value = length, .prices = {Price::screws}};
    option.variants = {{{screw_of(spot, fixing, length)}, length}};
    option.key = "screw";
    option.amount = std::abs(length - now);
    out.push_back(option);
  }
  for (const Lift& washer : washers_at_hand(spot.build, fixing.thread)) {
    tolerance::Dimension sheet = fixing.sheet.dimension;
    sheet.nominal += washer.length;
    sheet.minus += washer.limit;
    sheet.plus += washer.limit;
    add_source(sheet, washer);
    option.change = {.kind = Kind::spacer,
                     .what = spot.at().name,
                     .to = std::string(washer.what) + " under each screw head",
                     .from = fixing.sheet.dimension.nominal,
                     .value = sheet.nominal,
                     .prices = {Price::screws}};
    option.variants = {
        {{{.path = {table_of(spot.at()), spot.at().name, "fixing", "sheet"}, .value = sourced(sheet)}}, sheet.nominal}};
    option.key = "washers under heads";
    option.amount = washer.length;
    out.push_back(option);
  }
}

}  // namespace

void add_fixings(std::vector<Option>& out, const Spot& spot) {
  const auto* bay = std::get_if<build::Bay>(&spot.at().socket);
  if (bay == nullptr || !bay->fixing) return;
  const bool through_floor = !bay->fixing->side && !bay->on_edge && !bay->backplane;
  if (bay->fixing->outside) add_outer_screws(out, spot, *bay->fixing->outside);
  if (bay->standoffs)
    add_studs(out, spot, *bay);
  else if (through_floor && (bay->spacers || !bay->raised))
    add_spacers(out, spot, *bay);
  if (bay->fixing->length && !bay->standoffs) add_screws(out, spot, *bay->fixing);
}

void add_standoffs(std::vector<Option>& out, const Spot& spot) {
  const build::Place& place = spot.at();
  const auto* socket = std::get_if<build::M2Socket>(&place.socket);
  if (socket == nullptr || spot.drive.outer() != parts::Form::m2) return;
  const int size = build::size_of(spot.drive.card);
  if (std::find(place.sizes.begin(), place.sizes.end(), size) == place.sizes.end()) {
    Option option;
    option.change = {
        .kind = Kind::other_standoff, .what = place.name, .to = std::to_string(size), .prices = {Price::screws}};
    option.variants = {{{{build::Edit::What::append, {"slot", place.name, "lengths"}, std::to_string(size)}}}};
    option.holds = {"stand-off"};
    option.key = "stand-off hole";
    option.cautions = {Caution::hole_there};
    out.push_back(std::move(option));
  }
  if (!place.standoff) return;
  const double now = place.standoff->dimension.nominal;
  const double right = socket->height_class->standoff.nominal;
  if (std::abs(now - right) < 1e-9) return;
  Option option;
  option.change = {
      .kind = Kind::other_standoff, .what = place.name, .from = now, .value = right, .prices = {Price::screws}};
  option.variants = {{{{build::Edit::What::remove, {"slot", place.name, "standoff"}}}, right}};
  option.holds = {"stand-off height"};
  option.mends = {fit::Kind::clearance};
  option.key = "stand-off height";
  option.amount = std::abs(now - right);
  option.cautions = {Caution::money_unknown};
  out.push_back(std::move(option));
}

}  // namespace baywright::plans
