#include "cli/commands.h"
#include "cli/session.h"

#include <filesystem>
#include <iostream>
#include <map>

namespace baywright::cli {

namespace {

// Most cards are 80 long and most boards come with the screw there: common practice, no source.
constexpr const char* under_tray =
    R"(# One card and what is over it. Lengths are mm: 9.1, "9.1 ±0.2", "9.1 +0.3 -0", "3/8 in", "max 1.5".
# Measure with the power off, the machine unplugged and its battery disconnected; edges of sheet metal cut.

title         = "My machine"
clearance     = 0.5        # mm of air asked for between the drive and everything else
measured_with = "caliper"  # limits of lengths that state none: caliper or rule

# The first part is the world. x runs from the rear edge forward, y is 0 at the edge on the CPU side and negative on the
# board, z = 0 is the component side. Instead of `use`, a plain plate will do: solid = { plate = [180, 110, 1.6] }.
[[part]]
name = "board"
use  = "board/mini-itx"    # `baywright parts` lists what there is

# What is over the card. `under` is the board's back, `above` its component side, both measured between facing faces.
# Put by = "?" to be told the least distance instead.
[[part]]
name  = "tray"
solid = { plate = [150, 120, 1.2] }
under = { part = "board", by = "9.1 ±0.2" }

# `at`: where the leading edge of the card sits in its socket, on the card's centre line, in board coordinates.
[[slot]]
name    = "rear slot"
on      = { part = "board", face = "back", at = [45.0, -70.0], toward = "+x" }  # face: top or back
socket  = "m2/M/H4.2"      # key M, height class H4.2: H2.3 H2.5 H2.8 H3.2 H4.2
lengths = [2280]           # where stand-offs can be
bus     = ["pcie 4.0 x4"]  # what is wired to it; only the board's manual tells

# 2280: 22 wide, 80 long. S2: single-sided, parts up to 1.35 high; D2 is double-sided. M: the notch.
[[drive]]
name  = "my card"
use   = "m2/2280-S2-M"
bus   = "pcie 4.0 x4"
wears = [ { pad = "1.0 ±0.1", compress = "30 %" }, { heatsink = "fin-heatsink-3", name = "fin heatsink" } ]
)";

constexpr const char* compare = R"(# Several drives for one machine: which goes in, and what each gives. Lengths are mm.
# Look with the power off, the machine unplugged and its battery disconnected.

title     = "Drives for one laptop"
clearance = 0.3

[[part]]
name  = "mainboard"
solid = { plate = [190, 95, 1.2] }

[[part]]
name  = "bottom cover"
solid = { plate = [300, 200, 1.5] }
above = { part = "mainboard", by = "5.4 ±0.3" }

# A slot may carry SATA, PCIe or both, and only its wiring tells: see the machine's manual.
[[slot]]
name    = "slot"
on      = { part = "mainboard", face = "top", at = [98.0, 70.0], toward = "+x" }
socket  = "m2/M/H3.2"
lengths = [2242, 2280]
bus     = ["sata 6", "pcie 3.0 x4"]

[[drive]]
name = "PCIe card"
use  = "m2/2280-D2-M"
bus  = "pcie 4.0 x4"

[[drive]]
name = "SATA card"
use  = "m2/2280-S2-B+M"
bus  = "sata 6"

[[drive]]
name = "cased drive"
use  = "2.5in"
bus  = "sata 6"
)";

}  // namespace

int new_command(const Arguments& arguments) {
  static const std::map<std::string, const char*> kinds = {{"under-tray", under_tray}, {"compare", compare}};
  const auto kind = kinds.find(arguments.kind);
  if (kind == kinds.end()) {
    std::cerr << "baywright: there is no kind `" << arguments.kind << "`; it must be under-tray or compare\n";
    return input_at_fault;
  }
  if (arguments.output != "-" && std::filesystem::exists(arguments.output)) {
    std::cerr << "baywright: " << arguments.output << " exists already; name a new file\n";
    return input_at_fault;
  }
  if (!write_whole(arguments.output, kind->second)) return could_not_finish;
  if (arguments.output == "-") return all_fit;
  return print("wrote " + arguments.output + "; next: baywright check " + arguments.output + '\n') ? all_fit
                                                                                                   : could_not_finish;
}

}  // namespace baywright::cli
