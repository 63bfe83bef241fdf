#include "cli/commands.h"
#include "cli/session.h"
#include "cli/sheet_file.h"
#include "output/drawing.h"
#include "output/measure_sheet.h"
#include "output/words.h"

#include <iostream>

namespace baywright::cli {

int draw_command(const Arguments& arguments) {
  if (!names_a_drawing(arguments.output)) return input_at_fault;
  const auto shown = show_worst(arguments);
  if (!shown) return input_at_fault;
  const fit::Seating& seating = shown->seating;
  const int status =
      write_sheet(arguments.output,
                  arguments.measure ? output::draw_measure_sheet(shown->build, shown->seated, seating,
                                                                 plans::worth_measuring(seating, shown->build.method))
                                    : output::draw_seating(shown->build, shown->seated, seating));
  if (status != all_fit) return status;
  if (arguments.output != "-")
    std::cout << (arguments.measure ? "drew what to measure for " : "drew ") << seating.drive << " in " << seating.place
              << " (" << output::word(seating.verdict) << "): " << arguments.output << fits_elsewhere(*shown) << '\n';
  return all_fit;  // the drawing was asked for, whatever it shows
}

}  // namespace baywright::cli
