#include "thermal/card.h"

#include "thermal/convection.h"
#include "thermal/fins.h"
#include "thermal/network.h"
#include "thermal/pad.h"
#include "thermal/radiation.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace baywright::thermal {

namespace {

constexpr double hottest = 500.0;    // K, where the air's properties end
constexpr double coldest = 200.0;    // K
constexpr double least_rise = 1e-3;  // K: air is taken as driven by so much at least
constexpr double thinnest = 1e-6;    // m: two faces count as apart by so much at least
constexpr double usual_rise = 30.0;  // K: for which the room is told to be shallow
constexpr std::size_t causes = static_cast<std::size_t>(Cause::lid_spread) + 1;

std::size_t index(Cause cause) {
  return static_cast<std::size_t>(cause);
}

/// One value of each figure that has limits. `correlation` lies from 0 to 1 between its ends, and facing is apart.
struct Figures {
  std::array<double, causes> value{};
  Facing facing = Facing::sideways;
  [[nodiscard]] double of(Cause cause) const { return value[index(cause)]; }
};

/// Ratios matter here, so the middle of 1 and 9 is 3.
double middle(const Interval& interval) {
  return interval.low > 0.0 ? std::sqrt(interval.low * interval.high) : 0.5 * (interval.low + interval.high);
}

double across_of(double length, double width) {
  return length * width / (2.0 * (length + width));
}

/// The layer of warm air along a plate as long as the card: what is nearer hinders it.
double open_room(const Card& card) {
  const std::optional<Fluid> air = air_at(card.air.high);
  return air ? layer_thickness(grashof(*air, usual_rise, card.length), card.length) : 0.0;
}

std::array<Interval, causes> limits_of(const Card& card, const Assumed& assumed) {
  const double open = open_room(card);
  const Interval pad = card.sink
                           ? Interval{std::max(card.sink->pad.low, thinnest), std::max(card.sink->pad.high, thinnest)}
                           : Interval{thinnest, thinnest};
  return {card.watts,
          card.air,
          Interval{std::clamp(card.room.low, thinnest, open), std::clamp(card.room.high, thinnest, open)},
          Interval{},
          Interval{0.0, 1.0},
          assumed.share,
          assumed.controller_face,
          assumed.memory_face,
          pad,
          assumed.pad_conductivity,
          assumed.card_conductivity,
          assumed.metal_conductivity,
          assumed.card_emissivity,
          assumed.sink_emissivity,
          assumed.lid_emissivity,
          Interval{std::max(assumed.under_card.low, thinnest), std::max(assumed.under_card.high, thinnest)},
          assumed.ends,
          assumed.board_spread,
          assumed.lid_spread};
}

/// What a part turns to the air. SI.
struct Face {
  double area = 0.0;
  double across = 0.0;  // area over perimeter of the whole plate
  double up = 0.0;      // its length
  Facing facing = Facing::sideways;
  double emissivity = 0.0;
};

Facing opposite(Facing facing) {
  return facing == Facing::up ? Facing::down : facing == Facing::down ? Facing::up : Facing::sideways;
}

class Model {
 public:
  Model(const Card& card, const Interval& correlation, const Figures& at)
      : card_(card), correlation_(correlation), at_(at) {
    const double controller = at.of(Cause::power) * at.of(Cause::share);
    air_ = net_.fixed(at.of(Cause::air));
    controller_ = net_.body(controller);
    memory_ = net_.body(at.of(Cause::power) - controller);
    net_.conduct(controller_, memory_,
                 at.of(Cause::card_conductivity) * card.width * card.thickness / (0.5 * card.length));
    const Face top{0.5 * card.length * card.width, across_of(card.length, card.width), card.length, at.facing,
                   at.of(Cause::card_emissivity)};
    Face under = top;
    under.facing = opposite(at.facing);
    for (const int body : {controller_, memory_}) {
      if (!card.sink) put_face(body, top);
      put_lid(body, under, at.of(Cause::under_card), at.of(Cause::card_emissivity), at.of(Cause::board_spread));
      net_.conduct(body, air_, 0.5 * at.of(Cause::ends));
    }
    if (card.sink) put_sink(*card.sink);
  }

  struct Answer {
    double controller = 0.0;  // K
    double memory = 0.0;
    double imbalance = 0.0;  // W
  };
  /// None beyond what the air's properties are known for.
  [[nodiscard]] std::optional<Answer> solve() const {
    const auto steady = net_.solve();
    if (!steady) return std::nullopt;
    const Answer out{steady->kelvin[static_cast<std::size_t>(controller_)],
                     steady->kelvin[static_cast<std::size_t>(memory_)], steady->imbalance};
    if (!(std::max(out.controller, out.memory) <= hottest)) return std::nullopt;
    return out;
  }

 private:
  [[nodiscard]] static Fluid film(double hot, double cold) {
    return air_at(std::clamp(0.5 * (hot + cold), coldest, hottest)).value_or(Fluid{});
  }

  /// A law as it is asked here: of its bounds outside its range, and of its scatter, the figure's place between them.
  [[nodiscard]] double pick(const Nusselt& nusselt) const {
    const double low = nusselt.low * correlation_.low;
    const double high = std::isfinite(nusselt.high) ? nusselt.high * correlation_.high : low;
    return low > 0.0 ? low * std::pow(high / low, at_.of(Cause::correlation)) : at_.of(Cause::correlation) * high;
  }

  /// W/(m2 K) by natural convection.
  [[nodiscard]] double still_air(double hot, double cold, const Face& face) const {
    const Fluid air = film(hot, cold);
    const double rise = std::max(std::abs(hot - cold), least_rise);
    if (face.facing == Facing::sideways)
      return pick(vertical_plate(rayleigh(air, rise, face.up), air.prandtl)) * air.conductivity / face.up;
    const double ra = rayleigh(air, rise, face.across);
    return pick(face.facing == Facing::up ? horizontal_up(ra) : horizontal_down(ra)) * air.conductivity / face.across;
  }

  /// The same where a stream along the card may be stated; the stronger of the two then.
  [[nodiscard]] double open_air(double hot, double cold, const Face& face) const {
    const double still = still_air(hot, cold, face);
    if (!(card_.speed > 0.0)) return still;
    const Fluid air = film(hot, cold);
    const Nusselt stream = flat_plate(reynolds(air, card_.speed, card_.length), air.prandtl);
    return std::max(still, pick(stream) * air.conductivity / card_.length);
  }

  [[nodiscard]] bool shut_in() const {
    constexpr double hair = 1.0 - 1e-9;  // the middle of a limit and itself need not be exactly that
    return at_.of(Cause::room) < hair * open_room(card_);
  }

  /// In the open, or under a lid where the room is shallow.
  void put_face(int body, const Face& face) {
    if (shut_in()) {
      put_lid(body, face, at_.of(Cause::room), at_.of(Cause::lid_emissivity), at_.of(Cause::lid_spread));
      return;
    }
    net_.way(body, air_, [this, face](double hot, double cold) {
      return face.area * (open_air(hot, cold, face) * (hot - cold) + radiated(face.emissivity, hot, cold));
    });
  }

  /// Under something that passes the heat on to the air behind it and grows warm over more than the face's area.
  void put_lid(int body, const Face& face, double room, double emissivity, double spread) {
    const double both = 1.0 / (1.0 / face.emissivity + 1.0 / emissivity - 1.0);  // of two grey plates
    const int lid = net_.body(0.0);
    net_.way(body, lid, [face, room, both](double hot, double cold) {
      return face.area * (film(hot, cold).conductivity / room * (hot - cold) + radiated(both, hot, cold));
    });
    net_.way(lid, air_, [this, face, emissivity, spread](double hot, double cold) {
      return face.area * spread * (still_air(hot, cold, face) * (hot - cold) + radiated(emissivity, hot, cold));
    });
  }

  void put_sink(const Sink& sink) {
    const int metal = net_.body(0.0);
    for (const auto& [body, face] :
         {std::pair{controller_, Cause::controller_face}, std::pair{memory_, Cause::memory_face}})
      net_.conduct(body, metal,
                   1.0 / layer_resistance(at_.of(Cause::pad), at_.of(Cause::pad_conductivity), at_.of(face)));
    const double eps = at_.of(Cause::sink_emissivity);
    put_face(metal, {sink.length * sink.width, across_of(sink.length, sink.width), sink.length, at_.facing, eps});
    // Its four sides, each a low upright plate however the card lies.
    const Face side{2.0 * (sink.length + sink.width) * sink.height, sink.height, sink.height, Facing::sideways, eps};
    net_.way(metal, air_, [this, side](double hot, double cold) {
      return side.area * (open_air(hot, cold, side) * (hot - cold) + radiated(side.emissivity, hot, cold));
    });
    if (sink.fins && !shut_in()) put_flanks(metal, sink, *sink.fins);
  }

  /// What the flanks between fins add to the block that they make: as channels between two plates, or in the stream.
  /// In still air, where they do not stand upright, no law holds for so low fins, and nothing is added.
  void put_flanks(int metal, const Sink& sink, const Fins& fins) {
    if (fins.count < 2 || !(fins.spacing > 0.0) || !(fins.thickness > 0.0) || !(fins.height > 0.0)) return;
    const double area = 2.0 * (fins.count - 1) * sink.length * fins.height;
    const bool upright = at_.facing == Facing::sideways;
    if (!upright && !(card_.speed > 0.0)) return;
    net_.way(metal, air_, [this, area, upright, sink, fins](double hot, double cold) {
      const Fluid air = film(hot, cold);
      const double rise = std::max(std::abs(hot - cold), least_rise);
      const double x = channel_number(rayleigh(air, rise, fins.spacing), fins.spacing, sink.length);
      double transfer = upright ? pick(channel_bar_cohen(x)) * air.conductivity / fins.spacing : 0.0;
      if (card_.speed > 0.0)
        transfer = std::max(transfer, pick(flat_plate(reynolds(air, card_.speed, sink.length), air.prandtl)) *
                                          air.conductivity / sink.length);
      return area * transfer *
             fin_efficiency(transfer, at_.of(Cause::metal_conductivity), fins.thickness, fins.height) * (hot - cold);
    });
  }

  const Card& card_;
  const Interval& correlation_;
  Figures at_;
  Network net_;
  int air_ = -1;
  int controller_ = -1;
  int memory_ = -1;
};

bool ordered(const Interval& interval, double least, double most) {
  return interval.low >= least && interval.high >= interval.low && interval.high <= most;
}

bool makes_sense(const Card& card) {
  constexpr double none = std::numeric_limits<double>::infinity();
  const bool sizes = card.length > 0.0 && card.width > 0.0 && card.thickness > 0.0 && card.length < 1.0;
  const bool sink = !card.sink || (card.sink->length > 0.0 && card.sink->width > 0.0 && card.sink->height > 0.0 &&
                                   ordered(card.sink->pad, 0.0, 0.1));
  return sizes && sink && ordered(card.watts, 0.0, 1000.0) && ordered(card.room, 0.0, none) &&
         ordered(card.air, coldest, 450.0) && card.speed >= 0.0 && card.speed < 100.0;
}

/// Whether the law for a level face is asked outside its range.
bool beyond(const Card& card, double kelvin) {
  if (card.facing == Facing::sideways) return false;
  const double across = card.sink ? across_of(card.sink->length, card.sink->width) : across_of(card.length, card.width);
  const auto air = air_at(std::clamp(0.5 * (kelvin + card.air.low), coldest, hottest));
  if (!air) return true;
  const double ra = rayleigh(*air, std::max(kelvin - card.air.low, least_rise), across);
  return !horizontal_up(ra).in_range() || !horizontal_down(ra).in_range();
}

/// How far one temperature is moved by each figure, summed by root sum square.
class Sum {
 public:
  explicit Sum(double middle) : middle_(middle) {}
  /// The cause's effect is the largest either way of those that are added for it.
  void add(std::optional<double> kelvin, double& up, double& down) const {
    const double effect = kelvin ? *kelvin - middle_ : std::numeric_limits<double>::infinity();
    up = std::max(up, effect);
    down = std::max(down, -effect);
  }
  void close(double up, double down) {
    up_ += up * up;
    down_ += down * down;
  }
  [[nodiscard]] Interval interval() const { return {middle_ - std::sqrt(down_), middle_ + std::sqrt(up_)}; }

 private:
  double middle_;
  double up_ = 0.0;
  double down_ = 0.0;
};

}  // namespace

Interval Warmth::composite() const {
  return {std::min(controller.low, memory.low), std::max(controller.high, memory.high)};
}

std::optional<Warmth> warmth(const Card& card, const Assumed& assumed) {
  if (!makes_sense(card)) return std::nullopt;
  const std::array<Interval, causes> limits = limits_of(card, assumed);
  Figures usual;
  for (std::size_t i = 0; i < causes; ++i) usual.value[i] = middle(limits[i]);
  usual.facing = card.facing.value_or(Facing::sideways);
  // Where nothing is known to be over the card, it usually is in the open.
  if (!std::isfinite(card.room.high)) usual.value[index(Cause::room)] = limits[index(Cause::room)].high;
  const auto nominal = Model(card, assumed.correlation, usual).solve();
  if (!nominal) return std::nullopt;
  Warmth out;
  out.imbalance = nominal->imbalance;
  Sum controller(nominal->controller);
  Sum memory(nominal->memory);
  double widest = 0.0;
  for (std::size_t i = 0; i < causes; ++i) {
    std::vector<Figures> ends;
    if (i == index(Cause::facing)) {
      for (const Facing facing : {Facing::up, Facing::down}) {
        ends.push_back(usual);
        ends.back().facing = card.facing.value_or(facing);
      }
    } else {
      for (const double value : {limits[i].low, limits[i].high}) {
        ends.push_back(usual);
        ends.back().value[i] = value;
      }
    }
    std::array<double, 4> moved{};  // up and down, controller and memory
    for (const Figures& end : ends) {
      const auto answer = Model(card, assumed.correlation, end).solve();
      if (answer) out.imbalance = std::max(out.imbalance, answer->imbalance);
      controller.add(answer ? std::optional(answer->controller) : std::nullopt, moved[0], moved[1]);
      memory.add(answer ? std::optional(answer->memory) : std::nullopt, moved[2], moved[3]);
    }
    controller.close(moved[0], moved[1]);
    memory.close(moved[2], moved[3]);
    const double width = std::max(moved[0] + moved[1], moved[2] + moved[3]);
    if (width > widest) out.widest = static_cast<Cause>(i);
    widest = std::max(widest, width);
  }
  out.controller = controller.interval();
  out.memory = memory.interval();
  for (Interval* found : {&out.controller, &out.memory})  // figures that all cool do not cool below the air
    found->low = std::max(found->low, card.air.low);
  if (beyond(card, std::max(nominal->controller, nominal->memory))) out.remarks.push_back(Remark::beyond_correlation);
  if (card.room.low < open_room(card)) out.remarks.push_back(Remark::room_shallow);
  return out;
}

}  // namespace baywright::thermal
