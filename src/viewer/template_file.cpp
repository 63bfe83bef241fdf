#include "viewer/template_file.h"

#include "output/drill_sheet.h"
#include "output/drill_tables.h"
#include "output/file.h"
#include "output/paint.h"
#include "output/words.h"

#include <cctype>

namespace baywright::viewer {

namespace {

constexpr std::string_view ending = ".build.toml";

/// What of a name is safe in a file's: letters and figures, others as hyphens.
std::string plain(const std::string& name) {
  std::string out;
  for (const char c : name)
    out += std::isalnum(static_cast<unsigned char>(c)) != 0 || static_cast<unsigned char>(c) >= 128 ? c : '-';
  return out;
}

}  // namespace

std::variant<WrittenTemplate, std::string> write_template(const HolePlan& plan, const std::string& title,
                                                          const std::filesystem::path& build_file) {
  if (!plan.drilling) return plan.refused;
  const auto sheets = output::drill_sheets(*plan.drilling, title, output::a4, false);
  if (const auto* why = std::get_if<std::string>(&sheets)) return *why;
  const std::string pdf = output::to_pdf(std::get<std::vector<output::Sheet>>(sheets));
  if (pdf.empty()) return output::font_fault().value_or("the template could not be drawn");
  std::string stem = build_file.filename().string();
  stem = stem.ends_with(ending) ? stem.substr(0, stem.size() - ending.size()) : build_file.stem().string();
  WrittenTemplate out;
  out.file = build_file;
  // A template of one place is told apart from that of the whole part.
  const std::string of = plan.whole_part ? plan.part : plan.part + '-' + plan.drilling->patterns.front().place;
  out.file.replace_filename(stem + '.' + plain(of) + "-drill.pdf");
  if (const auto fault = output::write_file(out.file.string(), pdf)) return *fault;
  out.say = "Wrote " + out.file.filename().string() + ". Print at 100 % and measure both bars before drilling.";
  for (const std::string& caution : output::cautions(true, false)) out.say += ' ' + caution;
  return out;
}

}  // namespace baywright::viewer
