#include "cli/commands.h"
#include "cli/session.h"
#include "output/shopping_text.h"
#include "output/steps_text.h"
#include "plans/mounting.h"
#include "plans/shopping.h"

#include <iostream>

namespace baywright::cli {

namespace {

/// Where there is nothing to list, what `steps` says stands in its place; beside a table it goes to standard error.
bool print_shopping(const Arguments& arguments, const Shown& shown, const std::string& refusal) {
  const std::vector<plans::Item> items = plans::shopping(shown.build, shown.seated, shown.seating);
  if (arguments.csv) {
    if (items.empty()) std::cerr << refusal;
    return print(output::shopping_csv(items));
  }
  return print(items.empty() ? refusal : output::shopping_text(shown.seating, items));
}

}  // namespace

int steps_command(const Arguments& arguments) {
  const auto shown = show_worst(arguments);
  if (!shown) return input_at_fault;
  const plans::Mounting mounting = plans::mounting(shown->build, shown->seated, shown->seating);
  std::vector<std::string> others;
  for (const fit::Seating& seating : shown->check.seatings)
    if (seating.verdict == fit::Verdict::fits) others.push_back(seating.drive + " in " + seating.place);
  const bool written =
      arguments.shopping ? print_shopping(arguments, *shown, output::steps_text(mounting, others))
                         : print(arguments.json ? output::steps_json(mounting) : output::steps_text(mounting, others));
  if (!written) return could_not_finish;
  const bool good = mounting.verdict == fit::Verdict::fits ||
                    (mounting.verdict == fit::Verdict::marginal && arguments.accept_marginal);
  return good ? all_fit : not_all_fit;
}

}  // namespace baywright::cli
