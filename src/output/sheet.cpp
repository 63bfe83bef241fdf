#include "output/sheet.h"

#include "output/lettering.h"

#include <utility>

namespace baywright::output {

void Group::add(Line line) {
  items.push_back(Item{std::move(line)});
}
void Group::add(Area area) {
  items.push_back(Item{std::move(area)});
}
void Group::add(Disc disc) {
  items.push_back(Item{std::move(disc)});
}
void Group::add(Text text) {
  items.push_back(Item{std::move(text)});
}
void Group::add(Group group) {
  items.push_back(Item{std::move(group)});
}

Dash dash_of(const Pen& pen) {
  const double unit = pen.width > thick_line ? 0.25 * pen.width : pen.width;
  return {12.0 * unit, 5.0 * unit};
}

double halo_of(const Text& text) {
  return 0.36 * text.size;
}

Box box_of(const Text& text) {
  constexpr double above = 0.76;  // of the em: capitals and the tallest small letters
  constexpr double below = 0.22;
  const double width = text_width(text.text, text.size, text.bold);
  const double before = text.anchor == Anchor::start ? 0.0 : text.anchor == Anchor::middle ? 0.5 * width : width;
  if (text.upward)
    return {{text.at.x - above * text.size, text.at.y - width + before},
            {text.at.x + below * text.size, text.at.y + before}};
  return {{text.at.x - before, text.at.y - above * text.size},
          {text.at.x - before + width, text.at.y + below * text.size}};
}

}  // namespace baywright::output
