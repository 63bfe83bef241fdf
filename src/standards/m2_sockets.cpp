// Sockets and stand-offs of M.2, and the play that they leave a card.
#include "standards/m2.h"
#include "standards/m2_source.h"
#include "standards/row.h"
#include "tolerance/stack.h"

#include <algorithm>
#include <array>

namespace baywright::standards::m2 {

namespace {

SocketClass top_mount(std::string_view name, double height, double ledge, double standoff,
                      std::vector<std::string_view> accepts) {
  constexpr double standoff_limit = 0.03;
  return {name, at_most("connector height", height, rev1("Figure 38")),
          at_most("ledge under the card", ledge, rev1("Figure 38")),
          plus_minus("stand-off height", standoff, standoff_limit, rev1("Table 14")), std::move(accepts)};
}

/// Half the most room between a hole or slot and what stands in it: the play to either side of the middle.
double most_play(const Dimension& outer, const Dimension& inner) {
  return (outer.high() - inner.low()) / 2.0;
}

Dimension lands(std::string_view row, double from_posts, std::string_view place) {
  return {"centre of the " + std::string(row) + " lands",
          posts().nominal + from_posts,
          0.0,
          0.0,
          rev1(place) + ", from the posts; no tolerance published",
          Known::derived};
}

}  // namespace

std::span<const SocketClass> socket_classes() {
  static const std::array rows{
      top_mount("H2.3", 2.25, 0.41, 0.35, {"S1", "S2", "S3"}),
      top_mount("H2.5", 2.45, 0.61, 0.55, {"S1", "S2", "S3"}),
      top_mount("H2.8", 2.75, 0.89, 0.80, {"S1", "S2", "S3", "D4"}),
      top_mount("H3.2", 3.20, 1.54, 1.45, {"S1", "S2", "S3", "D1", "D2", "D3", "D4"}),
      top_mount("H4.2", 4.20, 2.54, 2.45, {"S1", "S2", "S3", "D1", "D2", "D3", "D4", "D5"}),
  };
  return rows;
}

const SocketClass* socket_class(std::string_view name) {
  const auto rows = socket_classes();
  const auto found = std::find_if(rows.begin(), rows.end(), [&](const SocketClass& row) { return row.name == name; });
  return found == rows.end() ? nullptr : &*found;
}

bool accepts(const SocketClass& socket, std::string_view height_code) {
  return std::find(socket.accepts.begin(), socket.accepts.end(), height_code) != socket.accepts.end();
}

const Dimension& solder() {
  static const Dimension row = untoleranced("solder under the stand-off", 0.05, rev1("Figures 67 to 71"));
  return row;
}

const Dimension& parts_under_card() {
  static const Dimension row = at_most("board parts under a D5 card, H4.2", 0.90, rev1("Figure 50"));
  return row;
}

const Dimension& socket_across() {
  static const Dimension row = at_most("socket with its lands, across", 22.0, rev1("Figure 38"));
  return row;
}

const Dimension& socket_depth() {
  static const Dimension row = at_most("socket with its lands, along", 9.10, rev1("Figure 38"));
  return row;
}

const Dimension& socket_rear() {
  // A maximum reach toward -y is a least y.
  static const Dimension row = at_least("rear end of the socket's lands", -4.30, rev1("Figures 38 and 39"));
  return row;
}

const Dimension& socket_front() {
  static const Dimension row =
      at_most("front end of the socket's lands", socket_depth().nominal + socket_rear().nominal,
              rev1("Figures 38 and 39: depth less rear end"), Known::derived);
  return row;
}

const Dimension& cover_front() {
  static const Dimension row =
      plus_minus("front edge of the socket's cover", 3.2, 0.1, rev1("Figure 38, scaled off the drawing, not printed"));
  return row;
}

const Dimension& posts() {
  static const Dimension row = untoleranced("centre line of the socket's posts", 1.75, rev1("Figures 38 and 51"));
  return row;
}

const Dimension& odd_lands() {
  static const Dimension row = lands("odd", -5.275, "Figure 51");
  return row;
}

const Dimension& even_lands() {
  static const Dimension row = lands("even", 2.275, "Figure 51");
  return row;
}

const Dimension& land_length() {
  static const Dimension row = plus_minus("length of a land", 1.55, 0.03, rev1("Figure 51"));
  return row;
}

const Dimension& slot_width() {
  static const Dimension row = plus_minus("socket slot width", 20.15, 0.05, rev1("Figure 38"));
  return row;
}

const Dimension& rib_width() {
  static const Dimension row = plus_minus("socket rib width", 1.10, 0.03, rev1("Figure 63"));
  return row;
}

const Dimension& standoff_flange() {
  static const Dimension row = plus_minus("stand-off flange diameter", 5.50, 0.10, rev1("Figures 72 and 73"));
  return row;
}

const Dimension& standoff_boss() {
  static const Dimension row = plus_minus("stand-off boss diameter", 3.00, 0.03, rev1("Figure 73"));
  return row;
}

const Dimension& standoff_boss_height() {
  static const Dimension row = plus_minus("stand-off boss height", 0.65, 0.03, rev1("Figure 73"));
  return row;
}

const Dimension& standoff_pilot_length() {
  static const Dimension row = plus_minus("stand-off pilot length", 0.70, 0.05, rev1("Figures 67 and 72"));
  return row;
}

const Dimension& tab_play() {
  static const Dimension row = derived("sideways play at the socket", 0.0, most_play(slot_width(), tab_width()),
                                       "slot less tab: " + rev1("Figures 16 and 38"));
  return row;
}

const Dimension& screw_play() {
  static const Dimension row = derived("play at the screw", 0.0, most_play(screw_hole(), standoff_boss()),
                                       "half hole less boss of the shouldered stand-off: " + rev1("Figures 18 and 73"));
  return row;
}

const Dimension& mid_mount_rear() {
  static const Dimension row = at_least("rear end of a mid-mount socket's lands", -6.30, rev1("Figures 52 and 53"));
  return row;
}

const Dimension& mid_mount_board() {
  static const Dimension row = untoleranced("main board that a mid-mount socket assumes", 0.80, rev1("Figure 52"));
  return row;
}

Dimension mid_mount_stack(const HeightCode& code) {
  // No part of it is printed: card, nominal parts and this much give the three published heights.
  constexpr double allowance = 0.20;
  return at_most("mid-mount stack above the board", code.top.nominal + card_thickness().nominal + allowance,
                 rev1("Figures 54 to 61"), Known::derived);
}

double system_length(const Length& length, Mount mount) {
  const Dimension& rear = mount == Mount::top ? socket_rear() : mid_mount_rear();
  return length.along.nominal - rear.nominal + standoff_flange().nominal / 2.0;
}

}  // namespace baywright::standards::m2
