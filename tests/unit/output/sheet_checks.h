#pragma once
// What holds of every sheet: its texts can be read, and all of it lies on the paper.
#include "output/sheet.h"

#include <doctest/doctest.h>
#include <vector>

namespace baywright::output {

inline constexpr double printable = 9.5;  // mm from the sheet's edge: what common printers leave white

inline void collect(const Group& group, std::vector<Text>& texts) {
  for (const Item& item : group.items) {
    if (const auto* inner = std::get_if<Group>(&item.drawn)) collect(*inner, texts);
    if (const auto* text = std::get_if<Text>(&item.drawn)) texts.push_back(*text);
  }
}

inline void check_texts(const Sheet& sheet, std::size_t more_than = 15) {
  std::vector<Text> texts;
  collect(sheet.all, texts);
  CHECK(texts.size() > more_than);
  constexpr double room = 1e-6;
  for (std::size_t i = 0; i < texts.size(); ++i) {
    const Box a = box_of(texts[i]);
    CAPTURE(texts[i].text);
    CHECK(texts[i].size >= 2.5);
    CHECK(a.low.x >= printable);
    CHECK(a.low.y >= printable);
    CHECK(a.high.x <= sheet.width - printable);
    CHECK(a.high.y <= sheet.height - printable);
    for (std::size_t j = 0; j < i; ++j) {
      const Box b = box_of(texts[j]);
      const bool apart = a.low.x >= b.high.x - room || b.low.x >= a.high.x - room || a.low.y >= b.high.y - room ||
                         b.low.y >= a.high.y - room;
      CAPTURE(texts[j].text);
      CHECK(apart);
    }
  }
}

/// How many points of lines, areas and discs lie outside of the printable area; those that a clip hides do not count.
inline int points_off(const Sheet& sheet, const Group& group) {
  int out = 0;
  const auto count = [&](const Vec2& p) {
    const bool on =
        p.x >= printable && p.y >= printable && p.x <= sheet.width - printable && p.y <= sheet.height - printable;
    if (!on) ++out;
  };
  if (group.clip) {
    count(group.clip->low);
    count(group.clip->high);
    return out;
  }
  for (const Item& item : group.items) {
    if (const auto* inner = std::get_if<Group>(&item.drawn)) out += points_off(sheet, *inner);
    if (const auto* line = std::get_if<Line>(&item.drawn))
      for (const Vec2& p : line->points) count(p);
    if (const auto* area = std::get_if<Area>(&item.drawn))
      for (const Outline& outline : area->outlines)
        for (const Vec2& p : outline) count(p);
    if (const auto* disc = std::get_if<Disc>(&item.drawn)) {
      count(disc->centre - Vec2(disc->radius));
      count(disc->centre + Vec2(disc->radius));
    }
  }
  return out;
}

}  // namespace baywright::output
