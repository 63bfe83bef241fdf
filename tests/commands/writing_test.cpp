// What cannot be written is said, with exit status 3, and leaves nothing behind.
#include "commands/run.h"

#include <doctest/doctest.h>
#include <filesystem>

using namespace baywright;

TEST_CASE("a full disk under standard output") {
  const test::Folder folder;
  folder.write("x.build.toml", test::source_text("tests/commands/data/bench.build.toml"));
  for (const std::vector<std::string>& arguments : {std::vector<std::string>{"check", "x.build.toml"},
                                                    {"check", "x.build.toml", "--json"},
                                                    {"explain", "x.build.toml"},
                                                    {"parts"},
                                                    {"parts", "m2/2280-D2-M"},
                                                    {"new", "compare", "-o", "-"},
                                                    {"draw", "x.build.toml", "-o", "-"},
                                                    {"--help"},
                                                    {"check", "--help"}}) {
    CAPTURE(arguments.front());
    test::check_refused(folder.run(arguments, "/dev/full"), 3,
                        "baywright: standard output: ", "No space left on device");
  }
}

TEST_CASE("a folder that is not there") {
  const test::Folder folder;
  folder.write("x.build.toml", test::source_text("tests/commands/data/bench.build.toml"));
  test::check_refused(folder.run({"new", "compare", "-o", "no/such/y.build.toml"}), 3,
                      "baywright: no/such/y.build.toml: ", "No such file or directory");
  test::check_refused(folder.run({"draw", "x.build.toml", "-o", "no/such/y.svg"}), 3,
                      "baywright: no/such/y.svg: ", "No such file or directory");
  CHECK(folder.names() == std::vector<std::string>{"x.build.toml"});
}

TEST_CASE("a file that is there is not replaced by a new build") {
  const test::Folder folder;
  folder.write("my.build.toml", "mine");
  test::check_refused(folder.run({"new", "compare", "-o", "my.build.toml"}), 2, "baywright: my.build.toml ",
                      "exists already");
  CHECK(folder.read("my.build.toml") == "mine");
  CHECK(folder.names() == std::vector<std::string>{"my.build.toml"});
}

TEST_CASE("a folder in the place of the file leaves no temporary file") {
  const test::Folder folder;
  folder.write("x.build.toml", test::source_text("tests/commands/data/bench.build.toml"));
  std::filesystem::create_directory(folder.path() / "y.svg");
  const test::Run run = folder.run({"draw", "x.build.toml", "-o", "y.svg"});
  test::check_refused(run, 3, "baywright: y.svg: ", "this is a folder");
  CHECK(folder.names() == std::vector<std::string>{"x.build.toml", "y.svg"});
}
