// PCI-SIG, PCI Express M.2 Specification, Revision 1.0, November 1, 2013: keys, contacts and what mates.
#include "standards/m2.h"
#include "support/check_mm.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <doctest/doctest.h>
#include <string>

using namespace baywright::standards;
using baywright::test::check_mm;

namespace {

constexpr double exactly = 1e-9;  // basic dimensions: no allowance but arithmetic

struct KeyRow {
  char letter;
  int first_pin;
  double centre;
  double r, s, t, u;
};
// Tables 3 and 4 (centres and spans, boxed), Figure 3 (pins).
constexpr std::array<KeyRow, 12> key_table{{
    {'A', 8, 6.625, 1.50, 14.50, 1.00, 14.50},
    {'B', 12, 5.625, 2.50, 13.50, 2.00, 13.50},
    {'C', 16, 4.625, 3.50, 12.50, 3.00, 12.50},
    {'D', 20, 3.625, 4.50, 11.50, 4.00, 11.50},
    {'E', 24, 2.625, 5.50, 10.50, 5.00, 10.50},
    {'F', 28, 1.625, 6.50, 9.50, 6.00, 9.50},
    {'G', 39, -1.125, 9.00, 7.00, 9.00, 6.50},
    {'H', 43, -2.125, 10.00, 6.00, 10.00, 5.50},
    {'J', 47, -3.125, 11.00, 5.00, 11.00, 4.50},
    {'K', 51, -4.125, 12.00, 4.00, 12.00, 3.50},
    {'L', 55, -5.125, 13.00, 3.00, 13.00, 2.50},
    {'M', 59, -6.125, 14.00, 2.00, 14.00, 1.50},
}};

}  // namespace

TEST_CASE("Tables 3 and 4: the centre of each key") {
  CHECK(m2::keys().size() == key_table.size());
  for (const KeyRow& row : key_table) {
    CAPTURE(row.letter);
    const m2::Key* const key = m2::key(row.letter);
    REQUIRE(key != nullptr);
    CHECK(key->first_pin == row.first_pin);
    check_mm(m2::key_centre(*key), row.centre, exactly);
  }
}

TEST_CASE("Tables 3 and 4: the 48 spans") {
  for (const KeyRow& row : key_table) {
    CAPTURE(row.letter);
    const m2::KeySpans spans = m2::key_spans(*m2::key(row.letter));
    check_mm(spans.r, row.r, exactly);
    check_mm(spans.s, row.s, exactly);
    check_mm(spans.t, row.t, exactly);
    check_mm(spans.u, row.u, exactly);
  }
}

TEST_CASE("Figures 20, 21 and 51: where the pins stand") {
  check_mm(m2::pin_x(1), 9.25, exactly);
  check_mm(m2::pin_x(38), 0.0, exactly);
  check_mm(m2::pin_x(75), -9.25, exactly);
  check_mm(m2::pin_x(1) - m2::pin_x(75), 18.50, exactly);
  check_mm(m2::pin_x(2) - m2::pin_x(74), 18.00, exactly);
}

TEST_CASE("Section 2.4.1, Figures 18 to 21: contacts of a card") {
  CHECK(m2::contacts("", true) == 38);   // Figure 16
  CHECK(m2::contacts("", false) == 37);  // Figure 17
  for (const KeyRow& row : key_table) {
    CAPTURE(row.letter);
    const std::string one(1, row.letter);
    CHECK(m2::contacts(one, true) == 34);
    CHECK(m2::contacts(one, false) == 33);
  }
  for (const char* const two : {"AE", "BM"}) {
    CHECK(m2::contacts(two, true) == 30);   // printed: 30x
    CHECK(m2::contacts(two, false) == 29);  // derived: 37 less two keys of 4
  }
}

TEST_CASE("Figures 20 and 21: distance of the notches of a card with two") {
  check_mm(m2::key_centre(*m2::key('A')) - m2::key_centre(*m2::key('E')), 4.00, exactly);
  check_mm(m2::key_centre(*m2::key('B')) - m2::key_centre(*m2::key('M')), 11.75, exactly);
}

TEST_CASE("Figure 64: a card turned over meets no key") {
  // Derived over all pairs: the least distance of a mirrored key from any key.
  double least = 100.0;
  for (const m2::Key& key : m2::keys()) {
    for (const m2::Key& mirrored : m2::keys()) {
      least = std::min(least, std::abs(m2::key_centre(key) + m2::key_centre(mirrored)));
    }
  }
  check_mm(least, 0.5, exactly);
}

TEST_CASE("Sections 2.4.9, 5.2 and 5.3: what mates") {
  // A socket has one rib; a card mates when it has a notch there.
  struct Row {
    char socket;
    std::array<bool, 6> with;  // cards A, E, A+E, B, M, B+M
  };
  constexpr std::array<const char*, 6> cards{"A", "E", "AE", "B", "M", "BM"};
  constexpr std::array<Row, 4> table{{{'A', {true, false, true, false, false, false}},
                                      {'E', {false, true, true, false, false, false}},
                                      {'B', {false, false, false, true, false, true}},
                                      {'M', {false, false, false, false, true, true}}}};
  for (const Row& row : table) {
    for (std::size_t i = 0; i < cards.size(); ++i) {
      CAPTURE(row.socket);
      CAPTURE(cards[i]);
      CHECK(m2::mates(row.socket, cards[i]) == row.with[i]);
    }
  }
}

TEST_CASE("Sections 3.3.2, 5.2 and 5.3, Tables 27, 31 to 35: what a mated pair may carry") {
  struct Row {
    char socket;
    const char* card;
    int lanes;
    bool sata;
    bool storage;
  };
  constexpr std::array<Row, 8> table{{{'B', "BM", 2, true, true},
                                      {'B', "B", 2, true, true},
                                      {'B', "M", 0, false, true},  // does not mate
                                      {'M', "M", 4, true, true},
                                      {'M', "BM", 2, true, true},    // lanes 2 and 3 fall into the B notch
                                      {'M', "B", 0, false, true},    // does not mate
                                      {'E', "AE", 1, false, false},  // two links of one lane each
                                      {'A', "A", 1, false, false}}};
  for (const Row& row : table) {
    CAPTURE(row.socket);
    CAPTURE(row.card);
    const m2::Carries carries = m2::may_carry(row.socket, row.card);
    CHECK(carries.pcie_lanes == row.lanes);
    CHECK(carries.sata == row.sata);
    CHECK(carries.storage == row.storage);
  }
}
