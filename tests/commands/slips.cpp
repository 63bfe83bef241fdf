#include "commands/slips.h"

#include <doctest/doctest.h>

namespace baywright::test {

Run checked(const std::string& text) {
  const Folder folder;
  folder.write("x.build.toml", text);
  return folder.run({"check", "x.build.toml"});
}

void check_slips(const std::string& file, const std::vector<Slip>& slips) {
  const std::string good = source_text("tests/commands/data/" + file);
  for (const Slip& slip : slips) {
    CAPTURE(slip.old);
    CAPTURE(slip.fresh);
    const std::string text = slip.old.empty() ? good + slip.fresh : with(good, slip.old, slip.fresh);
    check_refused(checked(text), 2, "x.build.toml:" + slip.place + ": ", slip.says);
  }
}

}  // namespace baywright::test
