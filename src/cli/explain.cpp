#include "cli/commands.h"
#include "cli/session.h"
#include "output/text.h"

namespace baywright::cli {

int explain_command(const Arguments& arguments) {
  const auto build = read_build(arguments);
  if (!build) return input_at_fault;
  const fit::Check check = fit::check(*build, options_of(arguments));
  if (!print(output::explain_text(check, arguments.all, plans::what_settles(check)))) return could_not_finish;
  return output::Tally{}.holds(check) ? all_fit : not_all_fit;
}

}  // namespace baywright::cli
