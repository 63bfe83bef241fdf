#pragma once
// The drill template as `baywright drill` makes it, beside the build file. No toolkit.
#include "viewer/hole_plan.h"

#include <filesystem>
#include <string>
#include <variant>

namespace baywright::viewer {

struct WrittenTemplate {
  std::filesystem::path file;
  std::string say;  // which file, what has to be known before any hole is drilled, and the cautions
};

/// "panel.build.toml" with a part "panel" gives "panel.panel-drill.pdf"; an older one is replaced. What went wrong, in
/// words: no template (`HolePlan::refused`), no font, a folder that cannot be written.
[[nodiscard]] std::variant<WrittenTemplate, std::string> write_template(const HolePlan& plan, const std::string& title,
                                                                        const std::filesystem::path& build_file);

}  // namespace baywright::viewer
