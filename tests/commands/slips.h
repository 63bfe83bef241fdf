#pragma once
// Slips in a file that is good without them: each must be refused in one line, at its place.
#include "commands/run.h"

#include <string>
#include <vector>

namespace baywright::test {

struct Slip {
  std::string old;  // in the file, once; empty: `fresh` is put behind its end
  std::string fresh;
  std::string place;  // LINE:COLUMN
  std::string says;
};

/// `baywright check` of this text, as x.build.toml in a folder of its own.
[[nodiscard]] Run checked(const std::string& text);

/// `file`: of tests/commands/data.
void check_slips(const std::string& file, const std::vector<Slip>& slips);

}  // namespace baywright::test
