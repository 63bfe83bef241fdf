#include "output/parts_text.h"

#include "output/text.h"
#include "tolerance/reading.h"

#include <algorithm>

namespace baywright::output {

std::string list_text(const std::vector<parts::Item>& items) {
  std::string out = std::to_string(items.size()) + (items.size() == 1 ? " part\n" : " parts\n");
  std::size_t width = 0;
  for (const parts::Item& item : items) width = std::max(width, columns(item.id));
  for (const parts::Item& item : items)
    out += "  " + padded(item.id, width) + "  " + wrapped(item.title, width + 4) + '\n';
  return out;
}

std::string part_text(const parts::Part& part) {
  std::string out = part.id + ": " + (part.title.empty() ? part.kind : part.title) + '\n';
  std::size_t name = 0;
  std::size_t value = 0;
  for (const tolerance::Dimension& d : part.dimensions) {
    name = std::max(name, columns(d.name));
    value = std::max(value, columns(tolerance::in_words(d)));
  }
  for (const tolerance::Dimension& d : part.dimensions) {
    const std::string head = "  " + padded(d.name, name) + "  " + padded(tolerance::in_words(d), value) + " mm  ";
    out +=
        head +
        wrapped((d.source.empty() ? "no source given" : d.source) + " (" + std::string(tolerance::word(d.known)) + ")",
                columns(head)) +
        '\n';
  }
  for (const parts::Hole& hole : part.holes)
    out += "  hole " + padded(hole.name, 5) + " at x " + tolerance::in_words(hole.x) + ", y " +
           tolerance::in_words(hole.y) + ", diameter " + tolerance::in_words(hole.diameter) + '\n';
  return out;
}

}  // namespace baywright::output
