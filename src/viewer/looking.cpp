#include "viewer/looking.h"

#include <algorithm>

namespace baywright::viewer {

std::set<std::string> Looking::not_shown(const render::Model& model) const {
  std::set<std::string> out = hidden;
  if (!alone) return out;
  out.clear();
  for (const render::Thing& thing : model.things)
    if (thing.part != *alone) out.insert(thing.part);
  return out;
}

std::string Looking::chosen_part(const render::Model& model) const {
  if (!chosen) return {};
  const auto found = std::find_if(model.things.begin(), model.things.end(),
                                  [&](const render::Thing& thing) { return thing.element == *chosen; });
  return found == model.things.end() ? std::string() : found->part;
}

void Looking::hide(const std::string& part) {
  hidden.insert(part);
  alone.reset();
  chosen.reset();
}

void Looking::isolate(const std::string& part) {
  if (alone == part)
    alone.reset();
  else
    alone = part;
}

void Looking::glass(const std::string& part) {
  if (ghosted.erase(part) == 0) ghosted.insert(part);
}

void Looking::colour(const std::string& part) {
  if (coloured == part)
    coloured.reset();
  else
    coloured = part;
}

void Looking::show_all() {
  hidden.clear();
  ghosted.clear();
  alone.reset();
  coloured.reset();
}

}  // namespace baywright::viewer
