// Files that are no build files at all.
#include "commands/run.h"

#include <doctest/doctest.h>
#include <filesystem>
#include <fstream>

using namespace baywright;

TEST_CASE("a file that is missing, empty, a folder, or no text") {
  const test::Folder folder;
  std::filesystem::create_directory(folder.path() / "folder.build.toml");
  folder.write("empty.build.toml", "");
  folder.write("blank.build.toml", " \n\t\r\n");
  folder.write("binary.build.toml", std::string("title\0= 1", 9));
  test::check_refused(folder.run({"check", "no.build.toml"}), 2, "no.build.toml: ", "there is no such file");
  test::check_refused(folder.run({"check", "folder.build.toml"}), 2, "folder.build.toml: ", "this is a folder");
  test::check_refused(folder.run({"check", "empty.build.toml"}), 2, "empty.build.toml: ", "baywright new under-tray");
  test::check_refused(folder.run({"check", "blank.build.toml"}), 2, "blank.build.toml: ", "the file is empty");
  test::check_refused(folder.run({"check", "binary.build.toml"}), 2, "binary.build.toml: ", "NUL byte");
  test::check_refused(folder.run({"check", "/dev/zero"}), 2, "/dev/zero: ", "4 MB at the most");  // it has no end
}

TEST_CASE("bytes that are not UTF-8 are refused where they stand") {
  const test::Folder folder;
  folder.write("x.build.toml", "title = \"caf\xe9\"\n");
  const test::Run run = folder.run({"check", "x.build.toml"});
  test::check_refused(run, 2, "x.build.toml:1:", "utf-8");
}

TEST_CASE("a hundred megabytes of text are refused without being read") {
  const test::Folder folder;
  const std::string line(1 << 20, '#');
  std::ofstream out(folder.path() / "x.build.toml", std::ios::binary);
  for (int i = 0; i < 100; ++i) out << line << '\n';
  out.close();
  REQUIRE(std::filesystem::file_size(folder.path() / "x.build.toml") > 100'000'000);
  test::check_refused(folder.run({"check", "x.build.toml"}), 2, "x.build.toml: ", "100 MB");
}

TEST_CASE("nesting without end is refused") {
  const test::Folder folder;
  folder.write("x.build.toml", "x = " + std::string(1'000'000, '['));
  test::check_refused(folder.run({"check", "x.build.toml"}), 2, "x.build.toml:1:", "valid TOML");
}
