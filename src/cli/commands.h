#pragma once
// The commands, one file each. Each returns the exit status.
#include "cli/arguments.h"

namespace baywright::cli {

[[nodiscard]] int check_command(const Arguments& arguments);
[[nodiscard]] int explain_command(const Arguments& arguments);
[[nodiscard]] int draw_command(const Arguments& arguments);
[[nodiscard]] int parts_command(const Arguments& arguments);
[[nodiscard]] int new_command(const Arguments& arguments);
[[nodiscard]] int rank_command(const Arguments& arguments);
[[nodiscard]] int report_command(const Arguments& arguments);
[[nodiscard]] int survey_command(const Arguments& arguments);
[[nodiscard]] int picture_command(const Arguments& arguments);
[[nodiscard]] int view_command(const Arguments& arguments);
[[nodiscard]] int plans_command(const Arguments& arguments);
[[nodiscard]] int steps_command(const Arguments& arguments);
[[nodiscard]] int drill_command(const Arguments& arguments);
[[nodiscard]] int make_command(const Arguments& arguments);

}  // namespace baywright::cli
