#include "cli/commands.h"
#include "cli/session.h"
#include "cli/sheet_file.h"
#include "output/drill_sheet.h"
#include "output/drill_tables.h"
#include "plans/drilling.h"

#include <iostream>

namespace baywright::cli {

int drill_command(const Arguments& arguments) {
  if (!names_a_drawing(arguments.output)) return input_at_fault;
  const auto build = read_build(arguments);
  if (!build) return input_at_fault;
  const auto refused = [&](const std::string& why) {
    std::cerr << arguments.file << ": " << why << '\n';
    return input_at_fault;
  };
  const auto made = plans::drilling(*build, arguments.place, arguments.part);
  if (const auto* why = std::get_if<std::string>(&made)) return refused(*why);
  const plans::Drilling& drilling = std::get<plans::Drilling>(made);
  std::vector<std::string> written;
  int status = all_fit;
  if (arguments.output.ends_with(".dxf")) {
    status = write_sheet(arguments.output, output::drill_cut(drilling, build->title, arguments.mirrored));
    written = {arguments.output};
  } else {
    const auto sheets = output::drill_sheets(
        drilling, build->title, arguments.paper == "letter" ? output::letter : output::a4, arguments.mirrored);
    if (const auto* why = std::get_if<std::string>(&sheets)) return refused(*why);
    status = write_sheets(arguments.output, std::get<std::vector<output::Sheet>>(sheets), written);
  }
  if (status != all_fit || arguments.output == "-") return status;
  std::cout << "drew " << drilling.holes.size() << (drilling.holes.size() == 1 ? " hole" : " holes") << " of "
            << drilling.part << ':';
  for (const std::string& name : written) std::cout << ' ' << name;
  std::cout << '\n';
  for (const std::string& answer : output::drill_answers(drilling)) std::cout << answer << '\n';
  std::cout << "Print at 100 % and measure both bars before drilling. Power off and unplugged, the panel off or the\n"
               "boards out, eye protection, every chip out before anything goes back in.\n";
  return all_fit;
}

}  // namespace baywright::cli
