#pragma once
// An M.2 card that writes on and on: how warm its controller and its memory become, as an interval. Nobody publishes
// all that decides it, so each figure comes with limits, and the answer says which of them leaves it open most.
#include "thermal/air.h"

#include <optional>
#include <vector>

namespace baywright::thermal {

struct Interval {
  double low = 0.0;
  double high = 0.0;
};

struct Fins {
  int count = 0;
  double thickness = 0.0;  // m
  double height = 0.0;     // m, over the base
  double spacing = 0.0;    // m, clear between two
};

/// What lies on the card's chips, with its pad. Fins run along the card.
struct Sink {
  double length = 0.0;  // m, along the card
  double width = 0.0;   // m
  double height = 0.0;  // m, over all
  std::optional<Fins> fins{};
  Interval pad;  // pressed thickness of what lies between, m
};

/// Where the card's component face looks.
enum class Facing { sideways, up, down };

struct Card {
  Interval watts;       // while it writes
  double length = 0.0;  // m
  double width = 0.0;
  double thickness = 0.0;  // of the bare card
  std::optional<Sink> sink{};
  Interval room;                   // air over the outermost face, m; `high` infinite where nothing is known to be there
  Interval air;                    // K, in the machine
  double speed = 0.0;              // m/s of air along the card; 0: no stream
  std::optional<Facing> facing{};  // none: not known, and each counts
};

/// What goes into the answer besides the card's own figures: common practice, no source, unless it says otherwise.
struct Assumed {
  Interval share{0.3, 0.7};                   // of the power that arises in the controller
  Interval controller_face{0.8e-4, 2.0e-4};   // m2 of it that the pad touches
  Interval memory_face{1.5e-4, 5.0e-4};       // m2
  Interval pad_conductivity{1.0, 15.0};       // W/(m K), what is sold
  Interval card_conductivity{10.0, 40.0};     // W/(m K), along a card with its copper
  Interval metal_conductivity{120.0, 240.0};  // W/(m K), aluminium alloys
  Interval card_emissivity{0.8, 0.95};        // also of the board; handbooks, from memory
  Interval sink_emissivity{0.1, 0.95};        // bright metal to anodized; handbooks, from memory
  Interval lid_emissivity{0.1, 0.95};         // of what is over the card
  Interval under_card{1e-3, 4e-3};            // m of air between card and board
  Interval ends{0.01, 0.06};                  // W/K by socket and screw
  Interval board_spread{2.0, 10.0};           // how much larger than the card the board grows warm
  Interval lid_spread{1.5, 10.0};             // and what is over the card: plastic to thick metal
  Interval correlation{0.75, 1.25};           // of published laws of convection; textbooks, from memory
};

/// What leaves the answer open.
enum class Cause {
  power,
  air,
  room,
  facing,
  correlation,
  share,
  controller_face,
  memory_face,
  pad,
  pad_conductivity,
  card_conductivity,
  metal_conductivity,
  card_emissivity,
  sink_emissivity,
  lid_emissivity,
  under_card,
  ends,
  board_spread,
  lid_spread
};

/// A fact about the answer that whoever reads it should know.
enum class Remark {
  beyond_correlation,  // a law was asked outside its range; the bounds that hold there were taken
  room_shallow,        // what is over the card hinders its air, and is counted as a lid
};

struct Warmth {
  Interval controller;     // K, at its face
  Interval memory;         // K
  Cause widest{};          // that widens the interval most
  double imbalance = 0.0;  // W, the largest of all that was solved
  std::vector<Remark> remarks{};

  /// From the coolest that the memory or the controller is to the warmest: a drive's own "composite" temperature need
  /// not be that of any one point (NVMe base specification), so this is where it is looked for.
  [[nodiscard]] Interval composite() const;
};

/// Each figure alone is put at either end, and what that does adds up by root sum square, up and down apart (Kline and
/// McClintock 1953: independent figures): not the worst case of all at once. An end is infinite where it lies beyond
/// 500 K, as far as the air's properties are known. None where a figure is missing or makes no sense (no size, air
/// outside 200..450 K), or where the answer itself lies beyond 500 K.
[[nodiscard]] std::optional<Warmth> warmth(const Card& card, const Assumed& assumed = {});

}  // namespace baywright::thermal
