#include "cli/commands.h"
#include "cli/session.h"
#include "fit/seat.h"
#include "output/drawing.h"
#include "output/svg.h"
#include "output/words.h"

#include <algorithm>
#include <iostream>

namespace baywright::cli {

namespace {

template <typename Named>
const Named& called(const std::vector<Named>& list, const std::string& name) {
  return *std::find_if(list.begin(), list.end(), [&](const Named& each) { return each.name == name; });
}

/// The seating that most needs looking at: the worst verdict, the least room among equals, the first of those.
const fit::Seating& worst(const fit::Check& check) {
  const auto room = [](const fit::Seating& seating) {
    if (!seating.deciding) return 0.0;
    const auto& gap = *seating.findings[*seating.deciding].gap;
    return gap.min - gap.asked;
  };
  return *std::min_element(check.seatings.begin(), check.seatings.end(), [&](const auto& a, const auto& b) {
    if (a.verdict != b.verdict) return a.verdict > b.verdict;
    if (a.deciding.has_value() != b.deciding.has_value()) return a.deciding.has_value();  // one that can be drawn
    return room(a) < room(b);
  });
}

}  // namespace

int draw_command(const Arguments& arguments) {
  if (arguments.output != "-" && !arguments.output.ends_with(".svg")) {
    std::cerr << "baywright: " << arguments.output
              << ": drawings are written as SVG so far; name a file that ends in .svg\n";
    return input_at_fault;
  }
  auto build = read_build(arguments);
  if (!build) return input_at_fault;
  const fit::Options options = options_of(arguments);
  build->method = options.method.value_or(build->method);  // the sheet names them
  build->clearance = options.clearance.value_or(build->clearance);
  const fit::Check check = fit::check(*build, options);
  const fit::Seating& seating = worst(check);
  const build::Drive& drive = called(build->drives, seating.drive);
  const auto slot = static_cast<int>(&called(build->places, seating.place) - build->places.data());
  const bool seats = fit::seats(drive, seating.questions);
  if (seats) (void)fit::solve_distances(*build, drive, slot, options);
  const fit::Host host = fit::compile(*build);
  const fit::Seated seated =
      seats ? fit::seat(host, *build, drive, slot) : fit::Seated{fit::Scene(&host.scene)};
  if (!write_whole(arguments.output, output::to_svg(output::draw_seating(*build, seated, seating))))
    return could_not_finish;
  if (arguments.output != "-")
    std::cout << "drew " << seating.drive << " in " << seating.place << " (" << output::word(seating.verdict)
              << "): " << arguments.output << '\n';
  return all_fit;  // the drawing was asked for, whatever it shows
}

}  // namespace baywright::cli
