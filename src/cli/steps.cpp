#include "cli/commands.h"
#include "cli/session.h"
#include "output/steps_text.h"
#include "plans/mounting.h"

namespace baywright::cli {

int steps_command(const Arguments& arguments) {
  const auto shown = show_worst(arguments);
  if (!shown) return input_at_fault;
  const plans::Mounting mounting = plans::mounting(shown->build, shown->seated, shown->seating);
  std::vector<std::string> others;
  for (const fit::Seating& seating : shown->check.seatings)
    if (seating.verdict == fit::Verdict::fits) others.push_back(seating.drive + " in " + seating.place);
  if (!print(arguments.json ? output::steps_json(mounting) : output::steps_text(mounting, others)))
    return could_not_finish;
  const bool good = mounting.verdict == fit::Verdict::fits ||
                    (mounting.verdict == fit::Verdict::marginal && arguments.accept_marginal);
  return good ? all_fit : not_all_fit;
}

}  // namespace baywright::cli
