#include "fit/drawing_notes.h"

namespace baywright::fit {

std::vector<Finding> drawing_notes(const build::Build& build) {
  std::vector<Finding> out;
  for (const build::HostPart& part : build.parts)
    for (const parts::OutlineFile& drawing : part.part.drawings) {
      if (drawing.passed_over.empty()) continue;
      Finding finding;
      finding.kind = Kind::drawing;
      finding.between = {part.name, ""};
      finding.why = {Code::passed_over, {{"part", part.name}, {"file", drawing.file}}, {}};
      for (const auto& [what, count] : drawing.passed_over)
        finding.why.words.emplace_back("what", std::to_string(count) + ' ' + what);
      out.push_back(std::move(finding));
    }
  return out;
}

}  // namespace baywright::fit
