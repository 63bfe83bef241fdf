// `drill`: lengths on what is printed, read back by other programs.
#include "commands/run.h"
#include "support/check_mm.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <regex>
#include <sstream>

using namespace baywright;
using test::check_mm;

namespace {

const std::string demo = test::source_path("models/builds/panel.build.toml");

/// Level lines of a PDF page as poppler reads it, lengths in mm, longest first.
std::vector<double> level_lines(const test::Folder& folder, const std::string& pdf) {
  const test::Run run =
      folder.spawn("/usr/bin/pdftocairo", {"-svg", "-noshrink", "-f", "1", "-l", "1", pdf, "page.svg"});
  CHECK(run.status == 0);
  const std::string svg = folder.read("page.svg");
  const std::regex line(
      R"re(d="M ([-0-9.]+) ([-0-9.]+) L ([-0-9.]+) ([-0-9.]+) "(?: transform="matrix\(([-0-9.]+),)?)re");
  std::vector<double> out;
  for (std::sregex_iterator at(svg.begin(), svg.end(), line), end; at != end; ++at) {
    const auto figure = [&](std::size_t i) { return (*at)[i].matched ? std::stod((*at)[i]) : 1.0; };
    if (std::abs(figure(2) - figure(4)) < 1e-3)
      out.push_back(std::abs(figure(3) - figure(1)) * figure(5) * 25.4 / 72.0);
  }
  std::sort(out.rbegin(), out.rend());
  return out;
}

bool has_length(const std::vector<double>& lengths, double mm) {
  return std::any_of(lengths.begin(), lengths.end(), [&](double each) { return std::abs(each - mm) <= 0.01; });
}

}  // namespace

TEST_CASE("a template as PDF has the paper's size and bars of 100 mm and 4 inches") {
  const test::Folder folder;
  const test::Run run = folder.run({"drill", demo, "-o", "t.pdf"});
  CHECK(run.err == "");
  CHECK(run.status == 0);
  CHECK(run.out.find("drew 12 holes of panel: t.pdf") != std::string::npos);
  CHECK(run.out.find("hand drill: all screws enter in") != std::string::npos);
  CHECK(run.out.find("measure both bars before drilling") != std::string::npos);
  CHECK(folder.names() == std::vector<std::string>{"t.pdf"});
  CHECK(folder.spawn("/usr/bin/pdfinfo", {"t.pdf"}).out.find("595.276 x 841.89 pts (A4)") != std::string::npos);
  const std::vector<double> lengths = level_lines(folder, "t.pdf");
  CHECK(has_length(lengths, 100.0));
  CHECK(has_length(lengths, 101.6));
  CHECK(!has_length(lengths, 99.9));  // the reader can tell
  const test::Run other = folder.run({"drill", demo, "--paper", "letter", "--mirrored", "-o", "l.pdf"});
  CHECK(other.status == 0);
  CHECK(folder.spawn("/usr/bin/pdfinfo", {"l.pdf"}).out.find("612 x 792 pts (letter)") != std::string::npos);
  CHECK(has_length(level_lines(folder, "l.pdf"), 100.0));
  CHECK(folder.run({"drill", demo, "-o", "-"}).out == folder.read("t.pdf"));
}

TEST_CASE("holes that a drawing has already are drawn and not drilled again") {
  const test::Folder folder;
  const std::string drawn = test::source_path("models/builds/drawn-panel.build.toml");
  const test::Run run = folder.run({"drill", drawn, "--part", "panel", "-o", "t.dxf"});
  CHECK(run.err == "");
  CHECK(run.status == 0);
  CHECK(run.out.find("8 of 12 holes of panel are there already") != std::string::npos);
  const std::vector<std::string> lines = test::lines(folder.read("t.dxf"));
  CHECK(std::count(lines.begin(), lines.end(), "CIRCLE") == 12);
  CHECK(folder.run({"drill", drawn, "--place", "upper spot", "-o", "u.pdf"}).status == 0);
}

TEST_CASE("a template as SVG prints true to scale") {
  const test::Folder folder;
  const test::Run run = folder.run({"drill", demo, "--place", "hand drilled", "-o", "t.svg"});
  CHECK(run.status == 0);
  CHECK(run.out.find("of panel: t-1.svg t-2.svg\n") != std::string::npos);
  CHECK(folder.names() == std::vector<std::string>{"t-1.svg", "t-2.svg"});  // a template, tables
  // Measured in pixels at 300 dots an inch by a renderer that is not ours: the bar's dark run in its row.
  CHECK(
      folder.spawn("/usr/bin/rsvg-convert", {"-d", "300", "-p", "300", "-f", "pdf", "t-1.svg", "-o", "r.pdf"}).status ==
      0);
  CHECK(folder.spawn("/usr/bin/pdftoppm", {"-r", "300", "-gray", "-singlefile", "r.pdf", "r"}).status == 0);
  std::istringstream picture(folder.read("r.pgm"));
  std::string kind;
  std::size_t width = 0;
  std::size_t height = 0;
  int most = 0;
  picture >> kind >> width >> height >> most;
  picture.get();
  CHECK(kind == "P5");
  check_mm(static_cast<double>(width) / 300.0 * 25.4, 210.0, 0.1);
  std::string grey(width * height, '\0');
  picture.read(grey.data(), static_cast<std::streamsize>(grey.size()));
  std::vector<double> runs;
  for (std::size_t y = height * 8 / 10; y < height; ++y) {
    std::size_t longest = 0;
    std::size_t now = 0;
    for (std::size_t x = 0; x < width; ++x) {
      now = static_cast<unsigned char>(grey[y * width + x]) < 128 ? now + 1 : 0;
      longest = std::max(longest, now);
    }
    runs.push_back(static_cast<double>(longest) / 300.0 * 25.4);
  }
  const auto near = [&](double mm) {
    return std::any_of(runs.begin(), runs.end(), [&](double each) { return std::abs(each - mm) < 0.2; });
  };
  CHECK(near(100.18));  // its end strokes are half a line wider
  CHECK(near(101.78));
}

TEST_CASE("hostile names break neither the file nor the line") {
  const test::Folder folder;
  folder.write("hostile.build.toml", test::with(test::source_text("models/builds/panel.build.toml"),
                                                "Drilled panel: drives on spacers", "</svg><script>& %%c ^J ±"));
  CHECK(folder.run({"drill", "hostile.build.toml", "-o", "t.svg"}).status == 0);
  CHECK(folder.read("t-1.svg").find("<script") == std::string::npos);
  CHECK(folder.run({"drill", "hostile.build.toml", "-o", "t.dxf"}).status == 0);
  const std::vector<std::string> lines = test::lines(folder.read("t.dxf"));
  CHECK(std::count(lines.begin(), lines.end(), "CIRCLE") == 12);
  CHECK(folder.run({"drill", "hostile.build.toml", "-o", "t.pdf"}).status == 0);
}

TEST_CASE("what cannot be drilled is refused with one line and nothing is written") {
  const test::Folder folder;
  check_refused(folder.run({"drill", demo, "--part", "side cover", "-o", "t.pdf"}), 2, demo,
                "part `side cover` has no holes");
  check_refused(folder.run({"drill", demo, "--part", "panle", "-o", "t.pdf"}), 2, demo, "did you mean `panel`?");
  check_refused(folder.run({"drill", demo, "--place", "nowhere", "-o", "t.pdf"}), 2, demo,
                "there is no place `nowhere`");
  check_refused(folder.run({"drill", demo, "-o", "t.doc"}), 2, "baywright: t.doc", "name a file that ends in .svg");
  const std::string thin = test::source_path("models/builds/thin-desktop.build.toml");
  check_refused(folder.run({"drill", thin, "--place", "rear slot", "-o", "t.pdf"}), 2, thin,
                "place `rear slot` has no holes");
  CHECK(folder.run({"drill", demo, "--paper", "a5", "-o", "t.pdf"}).status == 2);
  CHECK(folder.run({"drill", demo, "--place", "laser cut", "--part", "panel", "-o", "t.pdf"}).status == 2);
  CHECK(folder.names().empty());
}
