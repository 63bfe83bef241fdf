// A model file is read once as long as it stays as it is.
#include "parts/library.h"
#include "support/check_mm.h"

#include <chrono>
#include <doctest/doctest.h>
#include <filesystem>
#include <fstream>
#include <string>
#include <unistd.h>

using namespace baywright;
namespace fs = std::filesystem;

TEST_CASE("a model is remembered until its file changes, and not while it may be written") {
  const fs::path folder = fs::temp_directory_path() / ("baywright-models-" + std::to_string(::getpid()));
  fs::remove_all(folder);
  fs::create_directories(folder);
  const auto write = [&](const std::string& top, std::chrono::seconds ago) {
    std::ofstream(folder / "peak.obj") << "v 0 0 0\nv 20 0 0\nv 0 20 0\nv 0 0 " << top
                                       << "\nf 1 3 2\nf 1 2 4\nf 2 3 4\nf 3 1 4\n";
    fs::last_write_time(folder / "peak.obj", fs::file_time_type::clock::now() - ago);
  };
  const auto read = [&](const std::string& unit) {
    std::ofstream(folder / "peak.part.toml") << "title = \"peak\"\nsource = \"a test\"\nkind = \"heatsink\"\n"
                                                "model = \"peak.obj\"\nup = \"+z\"\nunit = \""
                                             << unit << "\"\n";
    auto found = parts::find_part("peak", {folder});
    if (const auto* fault = std::get_if<parts::Fault>(&found)) FAIL(fault->text());
    return std::get<parts::Part>(std::move(found)).bodies.at(0);
  };
  const auto same = [](const parts::Body& a, const parts::Body& b) { return &a.mesh->data() == &b.mesh->data(); };
  using std::chrono::seconds;
  write("5", seconds(100));
  const parts::Body first = read("mm");
  CHECK(same(first, read("mm")));
  const parts::Body inches = read("in");
  test::check_mm(inches.mesh->bounds().high.z, 5 * 25.4, 1e-9);
  write("6", seconds(90));  // as long as before
  const parts::Body second = read("mm");
  test::check_mm(second.mesh->bounds().high.z, 6.0, 1e-9);
  test::check_mm(first.mesh->bounds().high.z, 5.0, 1e-9);
  write("7", seconds(0));
  const parts::Body third = read("mm");
  CHECK_FALSE(same(third, read("mm")));
  fs::remove_all(folder);
}
