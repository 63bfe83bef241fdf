#include "build/build.h"
#include "cli/commands.h"
#include "cli/session.h"
#include "output/plan_words.h"
#include "output/plans_text.h"
#include "parts/document.h"
#include "plans/plan.h"
#include "plans/solve.h"

#include <cstdio>
#include <filesystem>
#include <iostream>
#include <unistd.h>

namespace baywright::cli {

namespace {

std::optional<plans::Tallest> tallest_of(const build::Build& build, const plans::Search& search,
                                         const fit::Options& options) {
  if (search.before.verdict != fit::Verdict::fits) return std::nullopt;
  for (const build::Drive& drive : build.drives)
    for (std::size_t place = 0; place < build.places.size(); ++place)
      if (drive.name == search.drive && build.places[place].name == search.place)
        return plans::tallest_heatsink(build, drive, static_cast<int>(place), options);
  return std::nullopt;
}

/// Writes the build with a plan made in it. The exit status.
int apply(const Arguments& arguments, const std::string& text, const plans::Search& search) {
  const int number = *arguments.apply;
  if (number < 1 || static_cast<std::size_t>(number) > search.plans.size()) {
    std::cerr << arguments.file << ": there is no plan " << number << "; "
              << (search.plans.empty() ? "it has none for " + search.drive + " in " + search.place
                                       : "it has 1 to " + std::to_string(search.plans.size()))
              << '\n';
    return input_at_fault;
  }
  std::error_code none;  // a file that is not there is no other
  if (std::filesystem::equivalent(arguments.output, arguments.file, none))
    return at_fault("--output is the build file itself; name another file, so that what you measured stays");
  const plans::Plan& plan = search.plans[static_cast<std::size_t>(number) - 1];
  const auto changed = build::edited(text, plan.edits, arguments.file);
  if (const auto* fault = std::get_if<parts::Fault>(&changed)) {
    std::cerr << fault->text() << '\n';
    return input_at_fault;
  }
  if (!write_whole(arguments.output, std::get<std::string>(changed))) return could_not_finish;
  if (arguments.output != "-") {
    std::cout << "wrote plan " << number << " (" << output::say(plan) << ") to " << arguments.output << '\n';
    if (plan.edits.empty()) std::cout << "Nothing in the file changes: what is other is which drive goes where.\n";
    std::cout << "Check it: baywright check " << arguments.output << " --drive \"" << plan.drive << "\" --place \""
              << plan.place << "\"\n";
  }
  return plan.after.verdict == fit::Verdict::fits ? all_fit : not_all_fit;
}

}  // namespace

int plans_command(const Arguments& arguments) {
  const auto build = read_build(arguments);
  if (!build) return input_at_fault;
  std::string text;
  try {
    text = parts::read_text_file(arguments.file);
  } catch (const parts::Stop& stop) {
    std::cerr << stop.fault.text() << '\n';
    return input_at_fault;
  }
  plans::Options options;
  options.fit = options_of(arguments);
  if (arguments.seconds) options.seconds = *arguments.seconds;
  const bool terminal = ::isatty(STDERR_FILENO) == 1;
  if (terminal)
    options.progress = [](int done, int of) {
      constexpr int now_and_then = 50;
      if (done % now_and_then == 0) std::fprintf(stderr, "\r%d of %d combinations ", done, of);
      return true;
    };
  const auto found = plans::search(text, arguments.file, options);
  if (terminal) std::fputs("\r\x1b[K", stderr);
  if (const auto* fault = std::get_if<parts::Fault>(&found)) {
    std::cerr << fault->text() << '\n';
    return input_at_fault;
  }
  const auto& search = std::get<plans::Search>(found);
  if (arguments.apply) return apply(arguments, text, search);
  const auto tallest = tallest_of(*build, search, options.fit);
  const bool colour = ::isatty(STDOUT_FILENO) == 1;
  if (!print(arguments.json ? output::plans_json(search, tallest)
                            : output::plans_text(search, tallest, arguments.file, colour)))
    return could_not_finish;
  const bool fits = search.before.verdict == fit::Verdict::fits ||
                    (!search.plans.empty() && search.plans.front().after.verdict == fit::Verdict::fits);
  return fits ? all_fit : not_all_fit;
}

}  // namespace baywright::cli
