#include "cli/sheet_file.h"

#include "cli/session.h"
#include "output/dxf.h"
#include "output/paint.h"
#include "output/svg.h"

#include <algorithm>
#include <array>
#include <filesystem>
#include <iostream>

namespace baywright::cli {

namespace {

constexpr double pixels_a_mm = 300.0 / 25.4;  // what office printers print
constexpr std::array<const char*, 4> endings = {".svg", ".pdf", ".png", ".dxf"};

/// The font is asked for where letters become shapes.
int write_painted(const std::string& path, const std::string& content) {
  if (content.empty()) {
    std::cerr << "baywright: " << path << ": " << output::font_fault().value_or("the sheet could not be drawn") << '\n';
    return could_not_finish;
  }
  return write_whole(path, content) ? all_fit : could_not_finish;
}

}  // namespace

bool names_a_drawing(const std::string& path) {
  const std::filesystem::path name(path);
  if (path == "-" || std::find(endings.begin(), endings.end(), name.extension().string()) != endings.end()) return true;
  std::cerr
      << "baywright: " << path
      << ": the ending says the format, and this one is none; name a file that ends in .svg, .pdf, .png or .dxf\n";
  return false;
}

int write_sheet(const std::string& path, const output::Sheet& sheet) {
  if (path.ends_with(".pdf")) return write_painted(path, output::to_pdf({sheet}));
  if (path.ends_with(".png")) return write_painted(path, output::to_png(sheet, pixels_a_mm));
  return write_whole(path, path.ends_with(".dxf") ? output::to_dxf(sheet) : output::to_svg(sheet)) ? all_fit
                                                                                                   : could_not_finish;
}

int write_sheets(const std::string& path, const std::vector<output::Sheet>& sheets, std::vector<std::string>& written) {
  if (path == "-" || path.ends_with(".pdf")) {
    written = {path};
    return write_painted(path, output::to_pdf(sheets));
  }
  const std::filesystem::path whole(path);
  for (std::size_t i = 0; i < sheets.size(); ++i) {
    std::filesystem::path one = whole;
    one.replace_filename(whole.stem().string() + '-' + std::to_string(i + 1) + whole.extension().string());
    if (const int status = write_sheet(one.string(), sheets[i]); status != all_fit) return status;
    written.push_back(one.string());
  }
  return all_fit;
}

}  // namespace baywright::cli
