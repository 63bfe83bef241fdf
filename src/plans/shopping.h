#pragma once
// What one seating takes: its drive, what the drive wears, and the fasteners, each with its count, its standard's name
// and what may stand in for it. Counts and lengths are those of the seating and of its findings.
#include "build/build.h"
#include "fit/seated.h"
#include "fit/seating.h"

#include <string>
#include <string_view>
#include <vector>

namespace baywright::plans {

enum class ItemKind { screw, washer, spacer, standoff, nut, pad, heatsink, adapter, drive };
[[nodiscard]] std::string_view word(ItemKind kind);  // "stand-off", as in CSV

/// What a length of an item is for.
enum class Use {
  length,       // of a screw under its head; of a spacer or stand-off without its stud; of a pad along the card
  into,         // how far a screw or stud goes into the drive
  through,      // the sheet that a screw passes, where its length is open
  stud,         // of a stand-off, beyond its length
  head_across,  // of a screw
  head_height,
  bore,
  outside,
  thickness,
  across_flats,
};
[[nodiscard]] std::string_view word(Use use);

struct Size {
  Use use = Use::length;
  tolerance::Dimension mm;
};

/// When another thing does in the place of an item, or why it never does.
enum class Condition {
  other_driver,    // same head and thread
  taller_head,     // where the head has so much room; mm
  smaller_washer,  // it still covers the hole; mm: its outside, at the least
  other_thread,    // never: mm by which the threads' diameters differ
  head_too_high,   // never: mm of the head over what is allowed
  fills_no_gap,    // never: paste for a pad
};
[[nodiscard]] bool never(Condition condition);

struct Exchange {
  std::string designation;
  Condition condition = Condition::other_driver;
  double mm = 0.0;  // as the condition says; else 0
  std::string source;
  tolerance::Known known = tolerance::Known::practice;
};

/// What somebody who buys an item has to know.
enum class Remark {
  wrong_length,     // the build names a screw of another length, which is wrong; `named` mm
  wrong_thread,     // the build names a screw of another thread, which is wrong
  length_open,      // its length follows from nothing in the build
  length_not_sold,  // no such length is among those that are known to be sold
  with_the_board,   // often lies in the board's or machine's box
  measure_length,   // the check reckons with closer limits than such parts have
  wide_holes,       // of a washer: the holes are wider than the medium series of ISO 273
  no_washer,        // of a screw: so are its holes, and no usual length holds with a washer without going too deep
  at_each_screw,    // of the part `Item::part`: how many it has is not said
  short_screws,     // the build names screws of `named` mm, which go in too little over its spacers
  longer_screws,    // that hold it over its spacers: only where those that came out are shorter
  stands_there,     // of a stand-off: by the build it is there already
  own_screws,       // of an adapter: those that hold the drive in it are not counted
  over_washer,      // of a screw: the build's, `named` mm, would not surely hold with the washer under its head
  wide_spacer,      // the hole leaves the usual one too little seat; `outside` mm is enough
};

struct Item {
  ItemKind kind = ItemKind::screw;
  std::string name{};  // the build's own for it; empty of fasteners
  std::string designation{};
  int count = 1;
  bool in_build = false;  // the build has it: drive, heatsink, adapter; a stand-off that it says is there
  std::vector<Size> sizes{};
  std::vector<Exchange> exchanges{};
  std::vector<Remark> remarks{};
  double named = 0.0;               // mm, with `wrong_length`, `short_screws` and `over_washer`
  double outside = 0.0;             // mm, with `wide_spacer`
  std::vector<double> sold_near{};  // mm, with `length_not_sold`: the next shorter and longer that are known
  std::string part{};               // of the machine, that it holds or raises; empty: it is for the drive
  std::string source{};
  tolerance::Known known = tolerance::Known::practice;
};

/// `seated` and `seating` are of this build, drive and place. Fasteners first, then from the drive outward. Empty where
/// it does not fit or is undecided, unless nothing but the screws' length or thread is wrong and the right one is
/// known. No screw among the items: the build names none.
[[nodiscard]] std::vector<Item> shopping(const build::Build& build, const fit::Seated& seated,
                                         const fit::Seating& seating);

}  // namespace baywright::plans
