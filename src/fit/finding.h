#pragma once
// What a check learnt: codes and figures, no sentences (those are in output/).
#include "fit/verdict.h"
#include "geometry/vectors.h"
#include "tolerance/dimension.h"

#include <array>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace baywright::fit {

/// The closed list of models/check.schema.json.
enum class Kind {
  form_factor,
  interface,
  bus,
  length,
  height_class,
  clearance,
  link,
  compression,
  role,
  exact,
  needs,
  seating,
  host,
  holes,
  screw,
  connector,
  bracket,
  occupied,
  cover,
  insertion,
  access,
  mesh,
  drawing,
  insulation,
  sheet,     // of a panel, round a hole
  standoff,  // a screw from outside into one
};

/// Why, as a code. The facts that go with each stand beside it.
enum class Code {
  // questions
  same_form,           // form
  other_form,          // drive form, place form
  adapter_needed,      // drive form, place form, adapter
  adapter_passes_not,  // adapter, drive
  size_offered,        // size
  size_too_long,       // size, offered
  size_too_short,      // size, offered
  width_not_held,      // width, offered
  half_card,           // farther: a half mini card on full posts
  full_card,           // a full mini card on half posts
  soldered,            // -
  key_meets,           // key, card keys
  key_meets_not,       // key, card keys
  slot_takes_card,     // card, body
  slot_too_short,      // card, body
  slot_open,           // card, body
  one_connector,       // form: all of this form have the same
  plug_enters,         // plug, receptacle, why
  plug_enters_not,     // plug, receptacle, why
  plug_dead,           // plug, receptacle, why
  connector_differs,   // drive form, place form
  bus_full,            // link
  bus_slower,          // drive, link, share; drive rate, link rate
  bus_absent,          // drive, wired
  bus_not_split,       // position
  bus_with_interface,  // link: for a SATA drive interface and bus are one answer
  // findings
  class_refuses,       // class, code
  gap,                 // -
  pad_loose,           // compressed, least
  pad_tight,           // compressed, most
  cache_module,        // -
  taken_as_exact,      // lengths
  needs_length,        // length; least, most, bare least, bare most (those that there are), limit; or as needs_none too
  needs_nothing,       // length: no gap hangs on it
  needs_none,          // length, small, large: what the gap that fails is with where it is least, and where it is most
  height_unknown,      // form
  parts_overlap,       // a, b; depth, worst: mm into each other at nominal and at the limits
  parts_may_meet,      // the same, depth negative: apart at nominal
  part_screw_short,    // part, thread; length, in, least, spacers
  hole_off_sheet,      // part, where ("off", "in an opening of"); hole, count: that have it, of all six
  hole_drilled_up,     // part; hole, there (its diameter), asked
  sheet_differs,       // part; sheet, thickness (of its largest body)
  hole_breaks_out,     // part; hole, left (of sheet), edge (from its middle), asked (of that)
  hole_near_edge,      // the same
  hole_near_bend,      // part, inside ("taken": not said); hole, thickness, inside
  holes_meet,          // part, of: whose the other is; hole, other, web, asked
  holes_near,          // the same
  hole_reach,          // axis; off, play, sure: the hole that is wide enough whatever the limits do; hole: the least of
                       // those asked for; pairs: 1 where each axis was looked at by itself
  holes_differ,        // kind, drive; met, asked, nearest
  holes_optional,      // rows, kind
  holes_unused,        // met, asked
  holes_one_row,       // row; met, asked
  thread_differs,      // screw, drive
  screw_long,          // thread, what, source; in, most, least, buy, length
  screw_short,         // the same
  screw_near,          // the same; in, warned
  screw_unjudged,      // into
  screw_unsaid,        // thread, what ("screw", "stud")
  outer_screw_long,    // thread; length, in, most, buy: of a screw through the sheet into a stand-off
  outer_screw_short,   // the same, least in place of most
  outer_screw_unsaid,  // thread
  head_through,        // thread; head, hole
  connector_off,       // axis; off, allowed
  bracket_differs,     // drive, place
  bracket_missing,     // -
  occupied,            // by
  cover_stays,         // what; least, most
  cover_off,           // what; depth
  adapter_worn,        // adapter, adds, cannot
  // whether the drive can be brought there
  way_plain,    // way, through; angle: of all five
  way_other,    // plain, by; plain angle
  way_after,    // out...: parts that come out first, in order
  way_blocked,  // by; gap, worst
  way_unsure,   // by; gap, worst, decided
  way_held,     // out...: parts in its way that hold each other
  // whether a driver reaches the screws
  // of each: what ("screw", "nut"), tool or own tool, then where and by... where something is met; count, of, and
  // room, need, handle, gap, least, most: mm from the head to what is met, of the whole tool, across its handle, and of
  // the gap; room is negative where what is met stands beside
  tool_reaches,   // -
  tool_other,     // blocked: only this tool does; what is met is met by the ordinary one
  tool_before,    // carrier: only before this goes in, or with the carrier out of the machine
  tool_blocked,   // -
  tool_marginal,  // -
  tool_unsure,    // -
  // what a mesh is made of
  mesh_mended,   // part, file, what...; by what: count, x, y, z in the file
  mesh_surface,  // the same: it has no inside
  unit_guessed,  // part, file, unit, other, up; x, y, z, and so for other
  passed_over,   // part, file, what...: with their numbers
  bare_near,     // what, metal; gap, least
};

struct Reason {
  Code code = Code::gap;
  std::vector<std::pair<std::string, std::string>> words;
  std::vector<std::pair<std::string, double>> figures;

  /// The fact of that name; empty or 0 where the reason has none.
  [[nodiscard]] std::string word(std::string_view name) const;
  [[nodiscard]] double figure(std::string_view name) const;
};

enum class Answer { yes, with_adapter, no };

struct Question {
  Answer answer = Answer::no;
  Reason why;
};

struct Questions {
  Question form_factor;
  Question interface;
  Question bus;
};

/// One dimension of the chain behind a gap.
struct ChainLink {
  tolerance::Dimension dimension;
  double sensitivity = 0.0;  // mm of the gap per mm of the dimension, signed
};

/// mm. min may be -infinity and max +infinity where a side of the chain is open.
struct GapFigures {
  double nominal = 0.0;
  double min = 0.0;
  double max = 0.0;
  double asked = 0.0;
};

struct Finding {
  Kind kind = Kind::clearance;
  std::optional<Verdict> verdict;      // none: a note, which changes no verdict
  std::array<std::string, 2> between;  // the drive's part first; the second may be a place
  std::array<std::string, 2> bodies;   // which solids of the two; empty where no gap
  Reason why;
  std::optional<GapFigures> gap;
  bool drawn = false;           // its limits are those of builds that were drawn, not of a chain
  std::optional<double> share;  // of builds in which this gap is enough; none with an open side that matters
  bool provided = false;   // between parts whose distance the standard itself sees to (card, socket, stand-off, board)
  geometry::Vec3 at{0.0};  // world, mm: where it is closest, midway
  geometry::Vec3 toward{0.0};    // unit: the way the first of `between` would move to gain room; zero where no gap
  std::vector<ChainLink> chain;  // largest share of the variation first
  std::optional<geometry::Bounds> shared{};  // world, mm: the room that both parts take up at nominal; none: no overlap
};

}  // namespace baywright::fit
