// What stands on something: spacers and washers under a sheet, spacers, stand-offs and screws under a drive.
#include "plans/catalogue.h"
#include "standards/fasteners.h"

#include <algorithm>
#include <cmath>

namespace baywright::plans {

namespace fasteners = standards::fasteners;

namespace {

/// Something of a length that is sold, or two of it.
struct Lift {
  std::string_view what;
  double length = 0.0;  // mm
  double limit = 0.0;   // ± mm
};

/// One or two washers of a thread.
std::vector<Lift> washers(std::string_view thread) {
  std::vector<Lift> out;
  for (const fasteners::Washer& washer : fasteners::washers())
    if (washer.standard == "ISO 7089" && washer.thread == thread)
      for (const int count : {1, 2})
        out.push_back(
            {count == 1 ? "a washer" : "two washers", count * washer.thickness.nominal, count * washer.thickness.plus});
  return out;
}

/// Washers of the size that most cases are screwed with, then plain spacers.
std::vector<Lift> lifts() {
  std::vector<Lift> out = washers("M3");  // common practice, no source
  for (const double length : fasteners::spacer_lengths())
    out.push_back({"spacers", length, fasteners::spacer_length_limit().plus});
  return out;
}

bool carries(const build::Build& build, int part, bool cards) {
  return std::any_of(build.places.begin(), build.places.end(), [&](const build::Place& place) {
    return place.part == part && (!cards || std::holds_alternative<build::CardSlot>(place.socket));
  });
}

/// Lengths of screws that are sold, those nearest to `wanted` first.
std::vector<double> sold_near(const std::string& thread, double wanted) {
  const auto rows = fasteners::screw_lengths(thread);
  std::vector<double> out(rows.begin(), rows.end());
  std::stable_sort(out.begin(), out.end(),
                   [&](double a, double b) { return std::abs(a - wanted) < std::abs(b - wanted); });
  return out;
}

build::Edit screw_of(const Spot& spot, const build::Fixing& fixing, double length) {
  tolerance::Dimension screw = fixing.length->dimension;
  screw.nominal = length;
  return {.path = {table_of(spot.at()), spot.at().name, "fixing", "length"}, .value = limited(screw)};
}

void add_spacers(std::vector<Option>& out, const Spot& spot, const build::Bay& bay) {
  constexpr std::size_t screws_tried = 3;
  const build::Fixing& fixing = *bay.fixing;
  const double now = bay.raised ? bay.raised->dimension.nominal : 0.0;
  for (const double length : fasteners::spacer_lengths()) {
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
      const std::vector<double> screws = sold_near(fixing.thread, fixing.length->dimension.nominal + length - now);
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
    option.mends = {fit::Kind::clearance, fit::Kind::screw, fit::Kind::holes, fit::Kind::connector};
    option.key = "stand-offs of the drive";
    option.amount = std::abs(length - now.nominal);
    option.cautions = {Caution::money_unknown};
    out.push_back(std::move(option));
  }
}

/// Screws of another length, or washers under the heads of these.
void add_screws(std::vector<Option>& out, const Spot& spot, const build::Fixing& fixing) {
  const double now = fixing.length->dimension.nominal;
  Option option;
  option.holds = {"screw"};
  option.mends = {fit::Kind::clearance, fit::Kind::screw};
  for (const double length : sold_near(fixing.thread, now)) {
    if (std::abs(length - now) < 1e-9) continue;
    option.change = {
        .kind = Kind::other_screw, .what = fixing.thread, .from = now, .value = length, .prices = {Price::screws}};
    option.variants = {{{screw_of(spot, fixing, length)}, length}};
    option.key = "screw";
    option.amount = std::abs(length - now);
    out.push_back(option);
  }
  for (const Lift& washer : washers(fixing.thread)) {
    tolerance::Dimension sheet = fixing.sheet.dimension;
    sheet.nominal += washer.length;
    sheet.minus += washer.limit;
    sheet.plus += washer.limit;
    sheet.source += (sheet.source.empty() ? "" : "; ") + std::string("and ") + std::string(washer.what);
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

void add_raised_parts(std::vector<Option>& out, const Spot& spot) {
  static const std::vector<Lift> sold = lifts();
  const build::Build& build = spot.build;
  for (std::size_t i = 1; i < build.parts.size(); ++i) {
    const build::HostPart& part = build.parts[i];
    const build::Position& at = part.position;
    const auto index = static_cast<int>(i);
    if (at.kind != build::Position::Kind::against || at.seated || at.by.dimension.asked) continue;
    const bool board = part.part.kind == "board";
    // A cooler or a battery has to lie where it lies; a tray, a cover, a shelf is a sheet.
    if (!board && !(part.removable && sheet(part.part, at.axis))) continue;
    for (const Lift& lift : sold) {
      tolerance::Dimension distance = at.by.dimension;
      distance.nominal += lift.length;
      distance.minus += lift.limit;
      distance.plus += lift.limit;
      distance.source += (distance.source.empty() ? "" : "; ") + std::string("and ") + std::string(lift.what);
      const char* key = at.axis != 2 ? "beside" : at.up ? "above" : "under";
      Option option;
      option.change = {.kind = Kind::spacer,
                       .what = part.name,
                       .to = std::string(lift.what),
                       .from = at.by.dimension.nominal,
                       .value = distance.nominal,
                       .prices = {Price::screws}};
      option.variants = {{{{.path = {"part", part.name, key, "by"}, .value = sourced(distance)}}, distance.nominal}};
      option.holds = {"part " + part.name};
      option.mends = {fit::Kind::clearance};
      option.part = part.name;
      option.key = "spacer " + part.name;
      option.amount = lift.length;
      option.cautions = {Caution::screws_longer, Caution::money_unknown};
      if (board) option.cautions.push_back(Caution::opening_moves);
      if (carries(build, index, true)) option.cautions.push_back(Caution::brackets_move);
      out.push_back(std::move(option));
    }
  }
}

void add_fixings(std::vector<Option>& out, const Spot& spot) {
  const auto* bay = std::get_if<build::Bay>(&spot.at().socket);
  if (bay == nullptr || !bay->fixing) return;
  const bool through_floor = !bay->fixing->side && !bay->on_edge && !bay->backplane;
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
