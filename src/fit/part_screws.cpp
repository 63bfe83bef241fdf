#include "fit/part_screws.h"

#include "parts/sheet.h"
#include "standards/fasteners.h"

#include <utility>

namespace baywright::fit {

namespace fasteners = standards::fasteners;

double goes_in(const build::HostPart& sheet, double screw) {
  const double spacers = sheet.spacers ? sheet.spacers->dimension.high() : 0.0;
  return screw - spacers - parts::size_along(sheet.part, sheet.position.axis);
}

double asked_of_thread(const std::string& thread) {
  return fasteners::engagement_in_diameters("steel") * fasteners::thread(thread)->major.nominal;
}

double longer_screw(const build::HostPart& sheet) {
  if (!sheet.screws) return 0.0;
  const double missing = asked_of_thread(sheet.screws->thread) - goes_in(sheet, sheet.screws->length);
  return missing > 1e-9 ? sheet.screws->length + missing : 0.0;
}

std::vector<Finding> part_screws(const build::Build& build) {
  std::vector<Finding> out;
  for (const build::HostPart& part : build.parts) {
    if (!(longer_screw(part) > 0.0)) continue;
    const double in = goes_in(part, part.screws->length);
    const double least = asked_of_thread(part.screws->thread);
    Finding note;
    note.kind = Kind::host;
    note.between = {part.name, ""};
    note.why = {Code::part_screw_short,
                {{"part", part.name}, {"thread", part.screws->thread}},
                {{"length", part.screws->length}, {"in", in}, {"least", least}}};
    if (part.spacers) note.why.figures.emplace_back("spacers", part.spacers->dimension.nominal);
    out.push_back(std::move(note));
  }
  return out;
}

}  // namespace baywright::fit
