#pragma once
// M.2 cards, sockets and stand-offs, as published. Every figure is a row with limits, source, table and how it is
// known; frames: `card` x across toward pin 1, y from the leading edge to the screw, z up from the component face;
// `host` the same directions, y = 0 at the seating plane in the socket, z = 0 at the board's face.
#include "tolerance/dimension.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace baywright::standards::m2 {

using tolerance::Dimension;

struct Width {
  int code;  // as in a type name: 12 16 22 25 30
  Dimension across;
};
struct Length {
  int code;         // 16 26 30 38 42 60 80 110
  Dimension along;  // leading edge to screw end; its hole sits at `along.nominal`, basic
};
[[nodiscard]] std::span<const Width> widths();
[[nodiscard]] std::span<const Length> lengths();

/// What stands above and below the bare card.
struct HeightCode {
  std::string_view code;  // S1..S3, D1..D5
  Dimension top;  // above the component face, nominal with limits (1.25 ±0.10); its high limit is the code's maximum
  std::optional<Dimension> bottom;  // below the other face; none on S codes
};
[[nodiscard]] std::span<const HeightCode> height_codes();
[[nodiscard]] const HeightCode* height_code(std::string_view code);  // null: no such code

// The card
[[nodiscard]] const Dimension& card_thickness();      // 0.80 ±0.08
[[nodiscard]] const Dimension& tab_width();           // 19.85 ±0.10
[[nodiscard]] const Dimension& shoulder();            // y 4.00 ±0.15: full width starts
[[nodiscard]] const Dimension& top_parts_start();     // y, at least 4.0
[[nodiscard]] const Dimension& bottom_parts_start();  // y, at least 5.2
[[nodiscard]] const Dimension& antenna_strip();  // 3.80 ±0.15 from the screw end, on cards with antenna connectors
[[nodiscard]] const Dimension& notch_width();    // 1.20 ±0.05
[[nodiscard]] const Dimension& notch_depth();    // 3.50 ±0.15
[[nodiscard]] const Dimension& screw_hole();     // half hole diameter 3.50 ±0.08
[[nodiscard]] const Dimension& top_pad();        // diameter 5.50 ±0.10, concentric with the hole, free of components
[[nodiscard]] const Dimension& bottom_pad();     // diameter 6.00 ±0.10, centre `bottom_pad_inset` inside the edge
[[nodiscard]] const Dimension& bottom_pad_inset();     // 1.00 ±0.10
[[nodiscard]] const Dimension& screw_head_height();    // at most 1.20 above the card's top
[[nodiscard]] const Dimension& screw_head_diameter();  // at most 5.20

/// Angles at which a card enters its socket, degrees, between its underside and the seating plane. No upper limit and no
/// pivot are published.
struct InsertionAngles {
  double least;  // 5: PCI-SIG M.2 Rev 1.0, 2.4.5 (read)
  double drawn;  // 20: Figure 36, an illustration (read)
  double most;   // 30: one connector maker's 25 ±5 for the 4.2 class (read), taken for every class
};
[[nodiscard]] const InsertionAngles& insertion_angles();

/// A key of the edge. `letter` A B C D E F G H J K L M.
struct Key {
  char letter;
  int first_pin;  // removes first_pin .. first_pin + 7
  std::string_view assignment;
};
[[nodiscard]] std::span<const Key> keys();
[[nodiscard]] const Key* key(char letter);
[[nodiscard]] const Dimension& row_pitch();       // 0.50, basic, on each face; the faces are half of it apart
[[nodiscard]] double pin_x(int pin);              // 9.25 - 0.25 (n - 1), pin 1..75
[[nodiscard]] double key_centre(const Key& key);  // x of the notch centre

/// Spans of the contacts on either side of a key, centre to centre, mm: r on the pin 1 side and s on the pin 75 side of
/// the top face, t and u of the bottom face. Letters as in Tables 3 and 4 of the standard.
struct KeySpans {
  double r, s, t, u;
};
[[nodiscard]] KeySpans key_spans(const Key& key);
[[nodiscard]] int contacts(std::string_view card_keys, bool top);  // "M", "BM", "AE": contacts of that face

/// A card mates with a socket when it has a notch at the socket's key.
[[nodiscard]] bool mates(char socket_key, std::string_view card_keys);

/// The most a socket may carry to a card that mates, by the standard; the board's own wiring may be less.
struct Carries {
  int pcie_lanes;  // of one link; 0: none
  bool sata;
  bool storage;  // is a storage socket at all in the standard
};
[[nodiscard]] Carries may_carry(char socket_key, std::string_view card_keys);

/// A height class of top-mount sockets.
struct SocketClass {
  std::string_view name;                  // "H2.3" ... "H4.2"
  Dimension height;                       // of the connector above the board, a maximum
  Dimension ledge;                        // under the card above the board, a maximum
  Dimension standoff;                     // L1 ±0.03
  std::vector<std::string_view> accepts;  // height codes
};
[[nodiscard]] std::span<const SocketClass> socket_classes();
[[nodiscard]] const SocketClass* socket_class(std::string_view name);
[[nodiscard]] bool accepts(const SocketClass& socket, std::string_view height_code);  // Table 10
[[nodiscard]] const Dimension& solder();            // 0.05 under a stand-off; limits not published
[[nodiscard]] const Dimension& parts_under_card();  // board parts under a D5 card on H4.2: at most 0.90

// Socket outline, host frame
[[nodiscard]] const Dimension& socket_across();  // 22 max
[[nodiscard]] const Dimension& socket_rear();    // y -4.30 max: lands
[[nodiscard]] const Dimension& socket_front();   // y +4.80 max: lands
[[nodiscard]] const Dimension& cover_front();    // y about +3.2, low confidence
[[nodiscard]] const Dimension& slot_width();     // 20.15 ±0.05
[[nodiscard]] const Dimension& rib_width();      // 1.10 ±0.03: the key in the socket
[[nodiscard]] const Dimension& socket_depth();   // 9.10 max, lands included
[[nodiscard]] const Dimension& posts();          // y 1.75
[[nodiscard]] const Dimension& odd_lands();      // y of their centres, derived from the posts
[[nodiscard]] const Dimension& even_lands();
[[nodiscard]] const Dimension& land_length();  // 1.55 ±0.03, along y

// Mid-mount sockets (M1.8), whose board has a cut-out
[[nodiscard]] const Dimension& mid_mount_rear();   // y -6.30 max: lands
[[nodiscard]] const Dimension& mid_mount_board();  // 0.80 thick
/// Board top to the highest part of the card, a maximum; reproduces the published 2.10, 2.25, 2.40.
[[nodiscard]] Dimension mid_mount_stack(const HeightCode& code);

enum class Mount { top, mid };
/// From the rear end of the socket's lands to the far edge of the stand-off's flange, mm, nominal.
[[nodiscard]] double system_length(const Length& length, Mount mount);

// Stand-off and what it lets move
[[nodiscard]] const Dimension& standoff_flange();        // diameter 5.50 ±0.10
[[nodiscard]] const Dimension& standoff_boss();          // shouldered: diameter 3.00 ±0.03
[[nodiscard]] const Dimension& standoff_boss_height();   // 0.65 ±0.03
[[nodiscard]] const Dimension& standoff_pilot_length();  // 0.70 ±0.05, into the board
[[nodiscard]] const Dimension& tab_play();               // 0 ±0.225: sideways at the socket, either way, derived
[[nodiscard]] const Dimension& screw_play();             // 0 ±0.305: any way at the screw, derived

/// A type name: "2280-D2-M", "2242-S2-B+M", "22110-D5-BM"; the height code may be "?" for a card that must be measured.
/// Letters in either case, two keys in either order.
struct CardName {
  int width;           // code
  int length;          // code
  std::string height;  // "D2"
  std::string keys;    // "M", "BM", "AE"
};
/// The refusal says what is wrong and what would be right.
[[nodiscard]] std::variant<CardName, std::string> read_card_name(std::string_view text);

/// The key combinations and sizes that the standard lists for a socket (Table 1); the height code is not looked at.
/// 2230 with key M is common practice and not in the table.
[[nodiscard]] bool listed_type(const CardName& name);

/// Every row of this family, for the list of sources.
[[nodiscard]] std::vector<Dimension> rows();

}  // namespace baywright::standards::m2
