#pragma once
// One machine and all that is to be decided in it, as its file says, checked and with names resolved. Lengths in mm;
// frames as in models/README.md.
#include "geometry/vectors.h"
#include "parts/adapter.h"
#include "parts/addin_card.h"
#include "parts/cased_drive.h"
#include "parts/fault.h"
#include "parts/given_length.h"
#include "parts/m2_card.h"
#include "parts/mini_card.h"
#include "parts/part.h"
#include "standards/connectors.h"
#include "standards/links.h"
#include "standards/m2.h"
#include "tolerance/stack.h"

#include <array>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace baywright::build {

using parts::Bracket;
using parts::Form;
using parts::GivenLength;

/// Where a part stands: fixed in the world, or against a face of another part.
struct Position {
  enum class Kind { fixed, against };
  Kind kind = Kind::fixed;
  geometry::Vec3 at{0.0};  // fixed: where the part's own origin is
  int target = -1;         // against: index of the other part; always one that is placed before this one
  int axis = 2;            // against: square to the faces that meet, 0 x, 1 y, 2 z
  bool up = true;          // against: the other part's face on the high side of the axis
  GivenLength by;          // against: the distance between the two faces; exact 0 and a mate for `on`
  bool seated = false;     // `on`: the two faces are meant to touch
  std::optional<std::array<double, 2>> corner;  // against: the low corner along the two other axes, in the target's own
                                                // coordinates; without it the part is centred on the target
};

/// "M3 x 6": a bought screw, as long under its head as it says.
struct Screw {
  std::string thread;
  double length = 0.0;  // mm
};

/// The room that a board's connectors have in the machine's rear opening, along the board's z.
struct RearOpening {
  GivenLength up;
  GivenLength down;
};

struct HostPart {
  std::string name;
  parts::Part part;
  Position position;
  bool removable = false;
  std::optional<Screw> screws;         // that hold a removable sheet, through its own thickness into a thread
  std::optional<GivenLength> spacers;  // against: plain spacers or washers at each of its screws; `Position::by` has
                                       // their nominal length in it, but not their limits
  std::optional<RearOpening> rear_opening;
  int line = 0;
};

struct M2Socket {
  char key = 'M';
  const standards::m2::SocketClass* height_class = nullptr;
};
struct MiniSocket {
  bool half = false;  // has screw posts for a half card
  bool full = true;   // and for a full one
};
struct CardSlot {
  int lanes = 16;  // of the slot's body
  bool open_ended = false;
  Bracket bracket = Bracket::full;  // that the machine's rear wall is made for
  std::vector<int> splits;          // lanes of the links that the host can make of it: 4, 4; empty: one link
};

/// A round hole that a part has where a place wants one.
struct ThereHole {
  std::array<double, 2> at{};  // its middle, mm, as in Fixing::holes
  double diameter = 0.0;       // mm, as drawn
  bool pilot = false;          // smaller than asked for: it is drilled up
};

/// How a drive is screwed to a bay or panel.
struct Fixing {
  bool side = false;                           // through the walls; else through the floor
  std::string thread;                          // "M3"; empty: no screws are spoken of
  std::optional<GivenLength> length;           // of the screw, under its head
  GivenLength sheet;                           // what it passes through before it reaches the drive
  std::vector<std::array<double, 2>> holes;    // mm: from the connector end, then from the centre line (floor; + is to
                                               // the right, looking from the connector end) or above the drive's base
  GivenLength diameter;                        // of those holes
  std::optional<tolerance::Dimension> placed;  // how far off its place such a hole may be
  std::optional<Screw> outside;                // through the sheet into each threaded stand-off
  bool nut = false;                            // a nut outside the sheet holds each stand-off: turned by hand
  std::vector<std::optional<ThereHole>> there{};  // by hole, see there_holes.h; none: it is drilled, or in a wall
  int line = 0;
  int column = 0;

  // Of a hole as it will be: where its middle is, how wide it is, and whether nobody drills it.
  [[nodiscard]] std::array<double, 2> middle(std::size_t hole) const;
  [[nodiscard]] tolerance::Dimension width(std::size_t hole) const;
  [[nodiscard]] bool as_it_is(std::size_t hole) const;
};

/// A room for a cased drive. Frame as that of a socket: y along the drive from its connector end, z out of the face.
struct Bay {
  Form form = Form::drive_2_5;
  bool panel = false;                 // a plate with holes: no room is described
  std::optional<GivenLength> width;   // clear, mm; none: not walled there
  std::optional<GivenLength> height;  // over the face that carries it
  std::optional<GivenLength> depth;   // from the drive's connector end to what ends the bay
  std::optional<GivenLength> behind;  // from there backward to what is behind
  std::string opens;                  // the wall that comes off or is open: "end", "rear", "roof", "left wall",
                                      // "right wall"; empty: not said
  bool on_edge = false;               // the drive stands on the edge called datum Y
  std::optional<GivenLength> raised;  // the drive's base over the face: tray, rails or stand-offs
  bool spacers = false;               // raised by plain spacers, through which the screws pass
  bool standoffs = false;             // raised by threaded stand-offs, whose studs go into the drive
  std::optional<GivenLength> plug;    // a cable's plug behind the drive, with the bend
  bool backplane = false;             // the receptacle is fixed to the machine
  standards::connectors::Plug receptacle = standards::connectors::Plug::sata;
  std::optional<Fixing> fixing;
};

/// Using a place takes from another one: it keeps these links, or none at all.
struct Share {
  std::string with;
  int place = -1;  // its index
  std::vector<standards::links::Link> leaves;
};

/// A cover that the board brings for its M.2 slot: a plate over the card, held by its own screws.
struct Cover {
  GivenLength above;      // its underside over the board's face
  GivenLength thickness;  // over all
  double length = 0.0;    // mm, from the card's screw end toward the socket
  double width = 0.0;
};

struct Place {
  std::string name;
  int part = 0;       // index of the part that carries it
  int axis = 2;       // square to the face that carries it, in the part's coordinates: 0 x, 1 y, 2 z
  bool back = false;  // that face is the low one along the axis
  std::array<double, 2> at{
      0.0, 0.0};  // along the two other axes, x before y before z: its seating plane (a bay: the drive's connector end;
                  // a PCIe slot: the key) crossed with the card's centre line, in the part's coordinates
  geometry::Vec3 toward{1.0, 0.0, 0.0};  // from the socket to the screw, in the part's coordinates; away from the
                                         // bracket; from the connector end
  std::variant<M2Socket, CardSlot, MiniSocket, Bay> socket;
  std::vector<int> sizes;                   // 2242, 2280: where stand-offs can be
  std::vector<int> soldered;                // of these, stand-offs that are always there
  std::vector<standards::links::Link> bus;  // what is wired to it
  std::optional<GivenLength> standoff;      // measured height from the board's face to its top; else the class's
  std::optional<Cover> cover;
  std::vector<Share> shares;
  int holds = -1;  // index in Build::held of what sits here already; -1: nothing
  int line = 0;

  /// Unit, out of the face, in the part's coordinates.
  [[nodiscard]] geometry::Vec3 outward() const;
};

struct Pad {
  std::string name;
  GivenLength free_thickness;
  double compress = 0.0;  // share of the free thickness, 0..0.9
  std::optional<GivenLength> length;
};
struct Heatsink {
  std::string name;
  parts::Part part;
  std::optional<double> from;  // y of its near end from the card's leading edge; else centred over the chips
};
using Wear = std::variant<Pad, Heatsink>;

/// An adapter that a drive wears, so that it goes where another form goes.
struct Worn {
  std::string name;  // as findings call it; drives that wear the same one share it
  const parts::Adapter* adapter = nullptr;
  int position = 1;                   // which of its drives this is, from 1
  std::optional<GivenLength> raised;  // the drive's base over the adapter's, where measured
  int entry = 0;                      // its place in the drive's `wears`, from 0
};

struct Drive {
  std::string name;
  std::string title;  // "2.5-inch drive, 7 mm"
  Form form = Form::m2;
  int card_lanes = 0;  // add-in card: of its edge
  Bracket bracket = Bracket::full;
  standards::m2::CardName card;  // m2
  parts::M2Card m2;              // m2: its solids and dimensions, with the heights that were measured
  bool half = false;             // mini card: half length
  parts::CasedDrive cased;       // cased: its solids, holes and connector; no bodies where its height is not known
  parts::AddInCard board;        // add-in card: its solids
  parts::MiniCard mini;          // mini card: its solids
  standards::connectors::Plug plug = standards::connectors::Plug::sata;  // cased
  std::vector<std::string> rows;  // cased: the holes that it is known to have; empty: those of the standard
  std::optional<Worn> worn;
  standards::links::Link bus;
  std::optional<GivenLength> top;  // measured component heights
  std::optional<GivenLength> bottom;
  bool cache_module = false;  // a cache for another drive, not a drive of its own
  std::vector<Wear> wears;    // from the card outward
  int line = 0;

  /// The form that it has outside: that of its adapter, else its own.
  [[nodiscard]] Form outer() const { return worn ? worn->adapter->becomes : form; }
};

/// A driver, along the screw's axis from its head outward. Lengths in mm, as it is: without limits.
struct Tool {
  std::string name;
  double shaft = 0.0;  // diameter
  double shaft_length = 0.0;
  double handle = 0.0;  // diameter, of the handle or of a low ratchet's head
  double handle_length = 0.0;
  double lever = 0.0;  // of a low ratchet: from the axis to its end; 0: the handle turns it
};

/// What is at hand: plans use nothing else of that kind. None: what is sold.
struct Shelf {
  std::optional<std::vector<double>> spacers;  // mm, ascending
  std::optional<std::vector<Screw>> screws;
  std::optional<std::vector<std::string>> heatsinks;  // names of the library
};

struct Apart {
  std::array<std::string, 2> between;
  double clearance = 0.0;
};

/// The length that a build file leaves open.
struct Asked {
  std::string name;                         // "tray under board"
  std::shared_ptr<const std::string> text;  // of the file
};

struct Build {
  std::string file;
  std::string title;
  double clearance = 0.0;
  tolerance::Method method = tolerance::Method::worst;
  std::string measured_with;    // empty: not said
  std::vector<HostPart> parts;  // the first is the world
  std::vector<Place> places;
  std::vector<Drive> drives;
  std::vector<Drive> held;  // what sits at places already; `Place::holds`
  std::vector<Apart> apart;
  Shelf shelf;
  std::vector<Tool> tools;         // at hand besides the common ones
  std::vector<std::string> exact;  // names of lengths that were taken as exact
  std::optional<Asked> asked;      // its "?", which has some value here at which the build can be read
};

/// Reads and checks a build file. One fault, the first; never a build that is half right.
[[nodiscard]] std::variant<Build, parts::Fault> read(const std::filesystem::path& file);

/// The same for a machine without drives of its own: a build file that may have no [[drive]].
[[nodiscard]] std::variant<Build, parts::Fault> read_machine(const std::filesystem::path& file);

/// As `read` for text; `file` is what messages name and where part files are looked for.
[[nodiscard]] std::variant<Build, parts::Fault> read_text(std::string_view text, const std::filesystem::path& file);
[[nodiscard]] std::variant<Build, parts::Fault> read_machine_text(std::string_view text,
                                                                  const std::filesystem::path& file);

/// The build as its file would have it with that length in the place of its "?", mm; how limits add up and the
/// clearance stay as they are in `build`. Wants a build that asks. A fault where the file would be refused with it.
[[nodiscard]] std::variant<Build, parts::Fault> answered(const Build& build, double mm);

/// The part that a part stands `on`, with which it goes; -1: none.
[[nodiscard]] int stands_on(const Build& build, int part);
/// The removable part with which a part comes out: itself, or one that it stands on; -1: it stays.
[[nodiscard]] int comes_out_with(const Build& build, int part);

/// The form that a place takes.
[[nodiscard]] Form form_of(const Place& place);

/// "2280", "22110": the size as people say it.
[[nodiscard]] int size_of(const standards::m2::CardName& card);
[[nodiscard]] int width_code(int size);   // 22 of 2280 and of 22110
[[nodiscard]] int length_code(int size);  // 80, 110

}  // namespace baywright::build
