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

[[nodiscard]] Connection connect(const build::Drive& drive, const build::Slot& slot);

/// "M.2 card", "2.5-inch drive", ...: a trade's word for a form, for reasons.
[[nodiscard]] std::string form_name(build::Form form);

}  // namespace baywright::fit
