// The buy: what each drive of a shortlist is worth, and how it does in the machine.
#include "cli/commands.h"
#include "cli/report.h"
#include "cli/session.h"
#include "cli/shortlist.h"
#include "output/rank_rows.h"
#include "output/rank_text.h"

namespace baywright::cli {

namespace {

bool write_page(const Arguments& arguments, const plans::Buying& rank) {
  output::Report page = blank_page(arguments);
  page.buying = &rank;
  page.build = rank.build;
  page.offer = rank.choice.taken;
  return write_whole(arguments.output, output::report_html(page));
}

}  // namespace

int rank_command(const Arguments& arguments) {
  if (arguments.html)
    if (const std::string fault = page_fault(arguments); !fault.empty()) return at_fault(fault);
  const auto ranked = rank_shortlist(arguments, arguments.file, arguments.build_file);
  if (!ranked) return input_at_fault;
  const plans::Buying& rank = ranked->buying;
  const std::string text = arguments.html   ? std::string()
                           : arguments.json ? output::rank_json(rank)
                           : arguments.csv  ? output::rank_csv(rank)
                                            : output::rank_text(rank);
  // Rows for other programs have no place for it, and who writes a page may not look for it there.
  if (arguments.json || arguments.csv || arguments.html) print_unused(rank);
  if (!(arguments.html ? write_page(arguments, rank) : print(text))) return could_not_finish;
  if (arguments.html && arguments.output != "-" && !print("wrote " + arguments.output + '\n')) return could_not_finish;
  return rank.choice.taken ? all_fit : not_all_fit;
}

}  // namespace baywright::cli
