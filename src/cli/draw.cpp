#include "cli/commands.h"
#include "cli/session.h"
#include "output/drawing.h"
#include "output/svg.h"
#include "output/words.h"

#include <iostream>

namespace baywright::cli {

int draw_command(const Arguments& arguments) {
  if (arguments.output != "-" && !arguments.output.ends_with(".svg")) {
    std::cerr << "baywright: " << arguments.output
              << ": drawings are written as SVG so far; name a file that ends in .svg\n";
    return input_at_fault;
  }
  const auto shown = show_worst(arguments);
  if (!shown) return input_at_fault;
  const fit::Seating& seating = shown->seating;
  if (!write_whole(arguments.output, output::to_svg(output::draw_seating(shown->build, shown->seated, seating))))
    return could_not_finish;
  if (arguments.output != "-")
    std::cout << "drew " << seating.drive << " in " << seating.place << " (" << output::word(seating.verdict)
              << "): " << arguments.output << '\n';
  return all_fit;  // the drawing was asked for, whatever it shows
}

}  // namespace baywright::cli
