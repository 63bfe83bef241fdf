#include "viewer/openable.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <filesystem>
#include <fstream>
#include <string>
#include <unistd.h>
#include <vector>

using namespace baywright::viewer;
namespace fs = std::filesystem;

TEST_CASE("a folder offers its builds and shortlists first, then the way up and its folders") {
  const fs::path folder = fs::temp_directory_path() / ("baywright-openable-" + std::to_string(::getpid()));
  fs::create_directories(folder / "cases");
  fs::create_directories(folder / ".hidden");
  fs::create_directories(folder / "odd.build.toml");  // a folder, whatever its name
  for (const char* name :
       {"b.build.toml", "a.build.toml", "notes.txt", ".c.build.toml", "part.part.toml", "cards.csv", "drives.toml"})
    std::ofstream(folder / name) << "x";
  CHECK(openable_in(folder) == std::vector<std::string>{"a.build.toml", "b.build.toml", "cards.csv", "drives.toml",
                                                        "..", "cases/", "odd.build.toml/"});
  CHECK(still_there({(folder / "a.build.toml").string(), (folder / "gone.build.toml").string(), folder.string()}) ==
        std::vector<std::string>{(folder / "a.build.toml").string()});
  fs::remove_all(folder);
  CHECK(openable_in(folder) == std::vector<std::string>{".."});
}
