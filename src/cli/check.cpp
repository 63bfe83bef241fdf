#include "cli/commands.h"
#include "cli/session.h"
#include "fit/together.h"
#include "output/json.h"
#include "output/text.h"
#include "output/together_text.h"

#include <unistd.h>

namespace baywright::cli {

int check_command(const Arguments& arguments) {
  const auto build = read_build(arguments);
  if (!build) return input_at_fault;
  const fit::Check check = fit::check(*build, options_of(arguments));
  if (arguments.together) {
    const fit::Together together = fit::together(*build, check, options_of(arguments), arguments.accept_marginal);
    if (!print(arguments.json ? output::check_json(check, &together) : output::together_text(check, together)))
      return could_not_finish;
    return together.left.empty() ? all_fit : not_all_fit;
  }
  const output::Tally tally{arguments.every, arguments.accept_marginal};
  const bool written =
      print(arguments.json ? output::check_json(check)
                           : output::check_text(check, tally, ::isatty(1) == 1, plans::what_settles(check)));
  if (!written) return could_not_finish;
  return tally.holds(check) ? all_fit : not_all_fit;
}

}  // namespace baywright::cli
