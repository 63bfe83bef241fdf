#pragma once
// What each offer of a shortlist is worth: figures, and what should be said of it, as codes.
#include "value/ceiling.h"
#include "value/offer.h"

#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

namespace baywright::value {

enum class Code {
  // the facts that go with each
  cache_module,           // -
  small_for_a_drive,      // gigabytes: as cache modules have
  soldered,               // -: not to be swapped
  no_price,               // -
  no_capacity,            // -
  no_tbw,                 // -
  tbw_ends_first,         // years, warranty (0: none is stated, and the TBW ends within a year)
  writes_beyond,          // dwpd, day: more a day than the endurance is stated for
  map_unknown,            // -
  map_in_host,            // -
  map_nowhere,            // -
  dense_cells,            // cells; bits, states, day, share (of its capacity)
  bus_not_carried,        // own, slot
  slower_here,            // link, own; megabytes, share
  costs_more_a_gigabyte,  // other; here, there, gigabytes
  larger_sibling,         // other; gigabytes, more, tbw here, there (0 where one is not stated)
};

struct Remark {
  Code code = Code::no_tbw;
  std::vector<std::pair<std::string, std::string>> words;
  std::vector<std::pair<std::string, double>> figures;
  [[nodiscard]] std::string word(std::string_view name) const;  // empty where it has none
  [[nodiscard]] double figure(std::string_view name) const;     // 0
};

/// What is known of the machine and its user.
struct Wishes {
  std::optional<double> daily;                     // GB written a day
  const Present* now = nullptr;                    // null: not said
  std::span<const standards::links::Link> slot{};  // wired; empty: not known
};

struct Appraisal {
  std::optional<double> per_gigabyte;  // in the shortlist's currency
  std::optional<double> per_tbw;       // a TB written
  std::optional<double> tbw;           // TB; stated, or from stated drive writes per day
  bool tbw_derived = false;
  std::optional<double> dwpd;
  std::optional<double> years;      // until the TBW is written, at the user's own writing
  std::optional<double> warranty;   // years until it ends, by time or by TBW
  std::optional<bool> lasts;        // whether it may be written to so until its warranty ends by time (without one: a
                                    // year); none: its endurance is not known, or how much is written is not said
  std::optional<double> tebibytes;  // as an operating system may show it
  std::optional<Ceiling> ceiling;
  std::optional<Upgrade> upgrade;
  std::vector<Remark> remarks;
};

/// One for each offer, in order. `wishes` likewise: slots differ where drives go to different places.
[[nodiscard]] std::vector<Appraisal> appraise(std::span<const Offer> offers, std::span<const Wishes> wishes);

/// Whether `a` is at least as good as `b` in price, capacity, speed, warranty and, within a capacity, TBW, and better
/// in one of them. What is known of one of the two only tells nothing, and then neither beats the other.
[[nodiscard]] bool beats(const Offer& a, const Appraisal& of_a, const Offer& b, const Appraisal& of_b);

/// From so much of its capacity a day on, a drive with dense cells is written to heavily: common practice, no source.
inline constexpr double heavy_share = 0.05;

/// Whether its TBW is written within a year at the user's own writing.
[[nodiscard]] bool gone_within_a_year(const Appraisal& appraisal);

/// Whether somebody who looks for a drive should think of it at all.
[[nodiscard]] bool is_a_drive(const Offer& offer);

}  // namespace baywright::value
