#pragma once
// What the commands that write a page for a customer share.
#include "cli/arguments.h"
#include "output/report.h"

#include <string>

namespace baywright::cli {

/// Why no page can be written where the options say; empty: it can.
[[nodiscard]] std::string page_fault(const Arguments& arguments);

/// A page in the language asked for, of today, with nothing on it yet.
[[nodiscard]] output::Report blank_page(const Arguments& arguments);

}  // namespace baywright::cli
