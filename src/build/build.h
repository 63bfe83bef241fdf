#pragma once
// One machine and all that is to be decided in it, as its file says, checked and with names resolved. Lengths in mm;
// frames as in models/README.md.
#include "geometry/vectors.h"
#include "parts/fault.h"
#include "parts/given_length.h"
#include "parts/m2_card.h"
#include "parts/part.h"
#include "standards/links.h"
#include "standards/m2.h"
#include "tolerance/stack.h"

#include <array>
#include <filesystem>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace baywright::build {

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

struct HostPart {
  std::string name;
  parts::Part part;
  Position position;
  bool removable = false;
  int line = 0;
};

/// What a place takes and a drive is. Interface and bus are told apart from it.
enum class Form { m2, drive_2_5, drive_3_5, add_in_card, msata, soldered };

struct M2Socket {
  char key = 'M';
  const standards::m2::SocketClass* height_class = nullptr;
};
struct CardSlot {
  int lanes = 16;  // of the slot's body
  bool open_ended = false;
};

struct Slot {
  std::string name;
  int part = 0;             // index of the part that carries it
  bool back = false;        // on the face toward -z
  double x = 0.0, y = 0.0;  // its seating plane crossed with the card's centre line, in the part's coordinates
  geometry::Vec3 toward{1.0, 0.0, 0.0};  // from the socket to the screw, in the part's coordinates
  std::variant<M2Socket, CardSlot> socket;
  std::vector<int> sizes;                   // 2242, 2280: where stand-offs can be
  std::vector<int> soldered;                // of these, stand-offs that are always there
  std::vector<standards::links::Link> bus;  // what is wired to it
  std::optional<GivenLength> standoff;      // measured height from the board's face to its top; else the class's
  int line = 0;
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

struct Drive {
  std::string name;
  Form form = Form::m2;
  int card_lanes = 0;            // add-in card: of its edge
  standards::m2::CardName card;  // m2
  parts::M2Card m2;              // m2: its solids and dimensions, with the heights that were measured
  standards::links::Link bus;
  std::optional<GivenLength> top;  // measured component heights, m2
  std::optional<GivenLength> bottom;
  bool cache_module = false;  // a cache for another drive, not a drive of its own
  std::vector<Wear> wears;    // from the card outward
  int line = 0;
};

struct Apart {
  std::array<std::string, 2> between;
  double clearance = 0.0;
};

struct Build {
  std::string file;
  std::string title;
  double clearance = 0.0;
  tolerance::Method method = tolerance::Method::worst;
  std::string measured_with;    // empty: not said
  std::vector<HostPart> parts;  // the first is the world
  std::vector<Slot> slots;
  std::vector<Drive> drives;
  std::vector<Apart> apart;
  std::vector<std::string> exact;  // names of lengths that were taken as exact
};

/// Reads and checks a build file. One fault, the first; never a build that is half right.
[[nodiscard]] std::variant<Build, parts::Fault> read(const std::filesystem::path& file);

/// The same for text; `file` is what messages name and where part files are looked for.
[[nodiscard]] std::variant<Build, parts::Fault> read_text(std::string_view text, const std::filesystem::path& file);

/// "2280", "22110": the size as people say it.
[[nodiscard]] int size_of(const standards::m2::CardName& card);

}  // namespace baywright::build
