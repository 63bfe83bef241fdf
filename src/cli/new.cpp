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
# Put by = "?", or "?" for any other one length here, to be told what it has to be.
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

constexpr const char* bay =
    R"(# A bay for a cased drive, as a caliper finds it. Lengths are mm: 9.1, "9.1 ±0.2", "3/16 in", "max 1.5".
# Measure with the power off and the machine unplugged; edges of sheet metal cut. Never open a power supply.

title         = "My bay"
clearance     = 0.5        # mm of air asked for between the drive and everything else
measured_with = "caliper"

# The first part is the world: what the drive lies on. x and y from its low corner, its top is the face with the drive.
[[part]]
name  = "cage floor"
solid = { plate = [220, 140, 1.0] }

# `at`: the drive's connector end, on its centre line. `toward`: from the connector along the drive.
[[bay]]
name   = "lower cage"
on     = { part = "cage floor", at = [45.0, 70.0], toward = "+x" }
takes  = "3.5in"           # 2.5in 3.5in 5.25in e1s e1l e3s e3l
inside = { width = 102.0, height = 27.0, depth = 160, behind = 45 }  # leave out what is not walled
cable  = 35                # plug and bend behind the drive; or backplane = true
plug   = "sata"            # what waits there: sata sas u2 u3
bus    = ["sata 6"]
# Holes: from the connector end, and above the drive's base ("sides") or right of the centre line ("floor").
fixing = { through = "sides", holes = [[28.5, 6.35], [130.1, 6.35]], diameter = 4.2, sheet = "1.00 ±0.03", screw = "6-32", length = "1/8 in" }

[[drive]]
name = "old disk"
use  = "3.5in/26.1"
bus  = "sata 6"

[[drive]]
name  = "small drive in a bracket"
use   = "2.5in/7"
bus   = "sata 6"
wears = [ { adapter = "adapter/2.5in-in-3.5in" } ]  # `baywright parts adapter` lists them
)";

constexpr const char* panel =
    R"(# Drives on a drilled panel, on spacers. Lengths are mm. Measure with the power off and the machine unplugged.
# Before you drill: boards and drives out of the case, eye protection on; deburr, and leave no chips behind.

title         = "My panel"
clearance     = 1.0
measured_with = "caliper"

# The panel lies flat here, its top is the side with the drive; x and y from its low corner.
[[part]]
name  = "panel"
solid = { plate = [200, 120, 1.5] }

[[part]]
name  = "side cover"
solid = { plate = [200, 120, 1.0] }
above = { part = "panel", by = "20.0 ±0.5" }

# `at`: the drive's connector end, on its centre line. Holes: from there along the drive, then right of the centre line.
[[panel]]
name    = "holes"
on      = { part = "panel", at = [60.0, 60.0], toward = "+x" }
takes   = "2.5in"
spacers = "5.0 ±0.1"       # plain ones, the screws pass through; or standoffs = 5.0; or neither
cable   = 35               # plug and bend behind the drive
bus     = ["sata 6"]
fixing  = { holes = [[14.0, -30.86], [14.0, 30.86], [90.6, -30.86], [90.6, 30.86]], diameter = 4.6, drilled = "hand drill", sheet = 1.5, screw = "M3", length = 8 }

[[drive]]
name = "my drive"
use  = "2.5in/7"
bus  = "sata 6"
rows = ["row 1", "row 2"]  # it has bottom holes: drives of 7 mm need not
)";

}  // namespace

int new_command(const Arguments& arguments) {
  static const std::map<std::string, const char*> kinds = {
      {"under-tray", under_tray}, {"compare", compare}, {"bay", bay}, {"panel", panel}};
  const auto kind = kinds.find(arguments.kind);
  if (kind == kinds.end()) {
    std::cerr << "baywright: there is no kind `" << arguments.kind
              << "`; it must be under-tray, compare, bay or panel\n";
    return input_at_fault;
  }
  if (arguments.output != "-" && std::filesystem::exists(arguments.output))
    return at_fault(arguments.output + " exists already; name a new file");
  if (!write_whole(arguments.output, kind->second)) return could_not_finish;
  if (arguments.output == "-") return all_fit;
  return print("wrote " + arguments.output + "; next: baywright check " + arguments.output +
               "\nA sheet to measure by: baywright draw " + arguments.output + " --measure -o sheet.pdf\n")
             ? all_fit
             : could_not_finish;
}

}  // namespace baywright::cli
