#include "standards/lamps.h"

namespace baywright::standards::lamps {

namespace {

void add(std::vector<Dimension>& list, const Base& base) {
  list.push_back(base.width);
}

}  // namespace

const Dimension& socket() {
  static const Dimension row = thread_of(1);
  return row;
}

std::vector<Dimension> rows() {
  std::vector<Dimension> list{socket()};  // cable()
  for (const Lamp& row : lamps()) {
    add(list, row.base);
    for (const Dimension& ring : row.rings) list.push_back(ring);
  }
  return list;
}

}  // namespace baywright::standards::lamps
