#pragma once
// The three questions of a drive at a place: form factor, interface, bus.
#include "build/build.h"
#include "fit/finding.h"

#include <optional>

namespace baywright::fit {

struct Connection {
  Questions questions;
  std::optional<standards::links::Link> link;  // what the two settle on; none where the bus does not carry the drive
};

[[nodiscard]] Connection connect(const build::Drive& drive, const build::Place& place);

}  // namespace baywright::fit
