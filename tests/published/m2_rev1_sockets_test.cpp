// PCI-SIG, PCI Express M.2 Specification, Revision 1.0, November 1, 2013: sockets, stand-offs and play.
#include "standards/m2.h"
#include "support/check_mm.h"
#include "tolerance/stack.h"

#include <algorithm>
#include <array>
#include <doctest/doctest.h>
#include <string_view>

using namespace baywright::standards;
using baywright::test::check_mm;
using baywright::tolerance::Dimension;
using baywright::tolerance::Method;
using baywright::tolerance::Spread;
using baywright::tolerance::Term;

namespace {

constexpr double printed = 1e-9;

const m2::Length& length(int code) {
  for (const m2::Length& row : m2::lengths()) {
    if (row.code == code) return row;
  }
  FAIL("no such length");
  return m2::lengths()[0];
}

struct Limits {
  double low, nominal, high;
};

/// outer - inner, times `share`, worst case.
Limits between(const Dimension& outer, const Dimension& inner, double share) {
  const std::array terms{Term{share, &outer}, Term{-share, &inner}};
  const Spread spread = baywright::tolerance::spread(terms, Method::worst);
  const double nominal = share * (outer.nominal - inner.nominal);
  return {nominal - spread.down, nominal, nominal + spread.up};
}

void check_limits(const Limits& got, double low, double nominal, double high) {
  check_mm(got.low, low, printed);
  check_mm(got.nominal, nominal, printed);
  check_mm(got.high, high, printed);
}

}  // namespace

TEST_CASE("Figure 38, Table 14, Figures 67 to 71: the five top-mount classes") {
  struct Row {
    std::string_view name;
    double height, ledge, standoff, underside;  // underside of the card: with 0.05 of solder
  };
  constexpr std::array<Row, 5> table{{{"H2.3", 2.25, 0.41, 0.35, 0.40},
                                      {"H2.5", 2.45, 0.61, 0.55, 0.60},
                                      {"H2.8", 2.75, 0.89, 0.80, 0.85},
                                      {"H3.2", 3.20, 1.54, 1.45, 1.50},
                                      {"H4.2", 4.20, 2.54, 2.45, 2.50}}};
  CHECK(m2::socket_classes().size() == table.size());
  for (const Row& row : table) {
    CAPTURE(row.name);
    const m2::SocketClass* const socket = m2::socket_class(row.name);
    REQUIRE(socket != nullptr);
    check_mm(socket->height.high(), row.height, printed);
    check_mm(socket->ledge.high(), row.ledge, printed);
    check_mm(socket->standoff.low(), row.standoff - 0.03, printed);
    check_mm(socket->standoff.high(), row.standoff + 0.03, printed);
    check_mm(socket->standoff.nominal + m2::solder().nominal, row.underside, printed);
  }
}

TEST_CASE("Table 10: height codes that a socket accepts") {
  struct Row {
    std::string_view name;
    std::array<bool, 8> accepts;  // S1 S2 S3 D1 D2 D3 D4 D5
  };
  constexpr std::array<std::string_view, 8> codes{"S1", "S2", "S3", "D1", "D2", "D3", "D4", "D5"};
  constexpr std::array<Row, 5> table{{{"H2.3", {true, true, true, false, false, false, false, false}},
                                      {"H2.5", {true, true, true, false, false, false, false, false}},
                                      {"H2.8", {true, true, true, false, false, false, true, false}},
                                      {"H3.2", {true, true, true, true, true, true, true, false}},
                                      {"H4.2", {true, true, true, true, true, true, true, true}}}};
  for (const Row& row : table) {
    for (std::size_t i = 0; i < codes.size(); ++i) {
      CAPTURE(row.name);
      CAPTURE(codes[i]);
      CHECK(m2::accepts(*m2::socket_class(row.name), codes[i]) == row.accepts[i]);
    }
  }
  CHECK(!m2::accepts(*m2::socket_class("H4.2"), "?"));
}

TEST_CASE("Sections 2.4.7.2 and 2.4.8.2: length of the whole system") {
  // Printed: 7.05 (top) and 9.05 (mid) beyond the card's length.
  check_mm(m2::system_length(length(80), m2::Mount::top), 87.05, printed);
  check_mm(m2::system_length(length(80), m2::Mount::mid), 89.05, printed);
  check_mm(m2::system_length(length(110), m2::Mount::top), 117.05, printed);
}

TEST_CASE("Figures 38 and 51: the screw from the socket's posts and lands") {
  // Derived from the printed 1.75 and 5.275. An open keyboard module's specification (splitkb/myriad) prints 28.25 too.
  check_mm(length(30).along.nominal - m2::posts().nominal, 28.25, printed);
  check_mm(length(80).along.nominal - m2::posts().nominal, 78.25, printed);
  check_mm(length(110).along.nominal - m2::posts().nominal, 108.25, printed);
  const double to_lands = length(80).along.nominal - m2::odd_lands().nominal;
  check_mm(to_lands, 83.525, printed);
  check_mm(to_lands, 83.55, 0.05);  // an open laptop board's layout page (EwoudVV/ducktop2)
}

TEST_CASE("Figures 38 and 51: extent of the lands") {
  check_mm(m2::odd_lands().nominal - m2::land_length().nominal / 2.0, -4.30, printed);
  check_mm(m2::even_lands().nominal + m2::land_length().nominal / 2.0, 4.80, printed);
  check_mm(m2::socket_rear().nominal, -4.30, printed);
  check_mm(m2::socket_front().nominal, 4.80, printed);
  check_mm(m2::socket_depth().high(), 9.10, printed);
  check_mm(m2::socket_across().high(), 22.0, printed);
}

TEST_CASE("Figures 39 and 72: the stand-off's tail beyond the card, and its pilot below the board") {
  check_mm(m2::standoff_flange().nominal / 2.0, 2.75, printed);
  check_mm(m2::standoff_pilot_length().nominal - m2::solder().nominal, 0.65, printed);  // Figure 67
}

TEST_CASE("Figure 50: room between a D5 card and a board part of 0.90 on H4.2") {
  const double underside = m2::socket_class("H4.2")->standoff.nominal + m2::solder().nominal;
  const double parts = m2::height_code("D5")->bottom->high();
  check_mm(underside - parts - m2::parts_under_card().high(), 0.10, printed);
}

TEST_CASE("Figure 47: room under a D1 card on H3.2, printed as 0.10 min") {
  // Derived: the published minimum holds for the root sum square, not for the worst case without solder.
  const Dimension& standoff = m2::socket_class("H3.2")->standoff;
  const Dimension& parts = *m2::height_code("D1")->bottom;
  const std::array terms{Term{1.0, &standoff}, Term{-1.0, &parts}};
  const double nominal = standoff.nominal + m2::solder().nominal - parts.nominal;
  const double rss = nominal - baywright::tolerance::spread(terms, Method::rss).down;
  check_mm(rss, 0.146, 0.0005);
  CHECK(rss >= 0.10);
  const double worst = nominal - m2::solder().nominal - baywright::tolerance::spread(terms, Method::worst).down;
  check_mm(worst, 0.07, printed);
}

TEST_CASE("Figures 54 to 56: mid-mount stacks above the board, and with it") {
  struct Row {
    std::string_view code;
    double above, with_board;
  };
  constexpr std::array<Row, 3> table{{{"S1", 2.10, 2.90}, {"S2", 2.25, 3.05}, {"S3", 2.40, 3.20}}};
  for (const Row& row : table) {
    CAPTURE(row.code);
    const double above = m2::mid_mount_stack(*m2::height_code(row.code)).high();
    check_mm(above, row.above, printed);
    check_mm(above + m2::mid_mount_board().nominal, row.with_board, printed);
  }
}

TEST_CASE("play of the tab in its slot, the notch on its rib and the half hole on its boss") {
  // Derived from Figures 16, 18, 38, 63 and 73: least, nominal and most.
  check_limits(between(m2::slot_width(), m2::tab_width(), 1.0), 0.15, 0.30, 0.45);
  check_limits(between(m2::notch_width(), m2::rib_width(), 1.0), 0.02, 0.10, 0.18);
  check_limits(between(m2::screw_hole(), m2::standoff_boss(), 0.5), 0.195, 0.25, 0.305);
  // To either side of the middle at the loosest pair.
  check_mm(m2::tab_play().high(), 0.225, printed);
  check_mm(m2::tab_play().low(), -0.225, printed);
  check_mm(m2::screw_play().high(), 0.305, printed);
  check_mm(m2::screw_play().low(), -0.305, printed);
}

TEST_CASE("Figures 15 and 73: the boss stays below the thinnest card's top, so that the screw clamps the card") {
  // Derived: 0.72 - 0.68.
  check_limits(between(m2::card_thickness(), m2::standoff_boss_height(), 1.0), 0.04, 0.15, 0.26);
}
