#include "cli/arguments.h"

#include "cli/session.h"
#include "parts/naming.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <cmath>
#include <iostream>
#include <sstream>

namespace baywright::cli {

namespace {

constexpr const char* exit_words =
    "Exit status: 0 each drive asked about fits at one or more of the places asked about (--every: at all);\n"
    "1 otherwise; 2 the input is at fault; 3 the program could not finish.";

void add_file(CLI::App& command, Arguments& out) {
  command.add_option("FILE", out.file, "The build file")->required();
}

void add_choice(CLI::App& command, Arguments& out) {
  const auto not_empty = [](const std::string& name) { return std::string(name.empty() ? "the name is empty" : ""); };
  command.add_option("--drive", out.drive, "Only this drive, by its name in the file")->check(not_empty);
  command.add_option("--place", out.place, "Only this place, by its name in the file")->check(not_empty);
}

void add_limits(CLI::App& command, Arguments& out) {
  command.add_option("--clearance", out.clearance, "Clearance asked for, mm, instead of the build's");
  command
      .add_option("--method", out.method,
                  "How limits add up: worst (worst case), rss (root sum square) or sampled (builds drawn at random and "
                  "measured)")
      ->check(CLI::IsMember({"worst", "rss", "sampled"}));
  command.add_option("--builds", out.builds, "Sampled: how many builds are drawn (else 100000)");
  command.add_option("--seed", out.seed, "Sampled: another seed draws other builds (else 1)");
  command.add_option("--threads", out.threads, "Sampled: on so many cores (else all); the answer is the same");
}

void add_commands(CLI::App& app, Arguments& out) {
  CLI::App* check = app.add_subcommand("check", "Does each drive fit at each place, by how much, because of what");
  add_file(*check, out);
  add_choice(*check, out);
  add_limits(*check, out);
  check->add_flag("--json", out.json, "Machine-readable, as models/check.schema.json says");
  check->add_flag("--every", out.every, "Ask that each drive fits at every place, not just at one");
  check->add_flag("--together", out.together, "One place for each drive, so that all fit at once")
      ->excludes("--every")
      ->excludes("--drive")
      ->excludes("--place");
  check->add_flag("--accept-marginal", out.accept_marginal, "Count marginal as a fit in the exit status");
  check->footer(std::string("Example: baywright check models/builds/thin-desktop.build.toml --clearance 0.3\n\n") +
                exit_words);

  CLI::App* explain = app.add_subcommand("explain", "The chain of dimensions behind each gap, largest share first");
  add_file(*explain, out);
  add_choice(*explain, out);
  add_limits(*explain, out);
  explain->add_flag("--all", out.all, "Also the gaps that fit, not just the closest of them");
  explain->footer("Example: baywright explain models/builds/thin-desktop.build.toml --drive \"card with tall fins\"");

  CLI::App* draw = app.add_subcommand("draw", "A dimensioned drawing of one seating, true to scale (SVG, A4)");
  add_file(*draw, out);
  draw->add_option("-o,--output", out.output, "The SVG file to write; - for standard output")->required();
  add_choice(*draw, out);
  add_limits(*draw, out);
  draw->footer(
      "Where several seatings are asked about, the worst is drawn, and the command says which.\n"
      "Example: baywright draw models/builds/thin-desktop.build.toml --drive \"card with tall fins\" -o tall.svg");

  CLI::App* steps = app.add_subcommand("steps", "How to fit it: the mounting order, with tools, screws and cautions");
  add_file(*steps, out);
  add_choice(*steps, out);
  add_limits(*steps, out);
  steps->add_flag("--json", out.json, "Machine-readable, as models/steps.schema.json says");
  steps->add_flag("--accept-marginal", out.accept_marginal, "Count marginal as a fit in the exit status");
  steps->footer(
      "Where several seatings are asked about, the worst is taken; name the one that you mean.\n"
      "Example: baywright steps models/builds/thin-desktop.build.toml --drive \"card with flat spreader\"\n\n"
      "Exit status: 0 there are steps; 1 it does not fit, so there are none; 2 the input is at fault;\n"
      "3 the program could not finish.");

  CLI::App* parts = app.add_subcommand("parts", "What the library has, with dimensions and sources");
  CLI::Option* words = parts->add_option("WORDS", out.words, "Only parts whose id or title has all these words");
  CLI::Option* drawing =
      parts->add_option("--draw", out.drawing, "Draw the one part found: the SVG file (A4); - for standard output")
          ->needs(words)
          ->check([](const std::string& name) { return std::string(name.empty() ? "the name is empty" : ""); });
  parts->add_flag("--sources", out.sources, "Every dimension of the program with its source, and how it is known")
      ->excludes(words)
      ->excludes(drawing);
  parts->footer(
      "Words in any order, capitals or not; a figure counts as a whole: 6 finds 6 and 6.00, not 60 or 2.6.\n"
      "One part left: its dimensions, with limits and sources.\n"
      "Examples: baywright parts heatsink 3mm; baywright parts m2/2280-D2-M --draw card.svg");

  CLI::App* survey = app.add_subcommand("survey", "Every drive of a list at every place of many machines");
  survey
      ->add_option("MACHINES", out.file, "A folder of .build.toml files, or one of them; their own drives are left out")
      ->required();
  survey
      ->add_option("DRIVES", out.words,
                   "A .csv file whose columns are keys of a drive (name,use,bus and more), or a folder of .toml files "
                   "with [[drive]] tables")
      ->required()
      ->expected(1);
  survey->add_flag("--json-lines", out.json, "Print one line of JSON a seating, in place of the summary");
  survey->add_option("-o,--output", out.output,
                     "The file for the lines of JSON; one that was begun is carried on, never written anew");
  survey->add_option("--shard", out.shard,
                     "Only every nth drive from the kth on, as k/n: for several runs side by side");
  survey->add_option("--threads", out.threads, "On so many cores (else all); the lines are the same");
  survey->add_option("--clearance", out.clearance, "Clearance asked for, mm, instead of the builds'");
  survey->add_option("--method", out.method, "How limits add up: worst (worst case) or rss (root sum square)")
      ->check(CLI::IsMember({"worst", "rss"}));
  survey->footer(
      "Ways in are not searched beyond the straight ones: what those do not settle is undecided, and check knows "
      "more.\n"
      "An interrupt leaves whole lines; the same command then goes on from there.\n"
      "Example: baywright survey machines/ drives.csv -o answers.jsonl --shard 1/4\n\n"
      "Exit status: 0 each drive fits in one machine or more; 1 otherwise; 2 the input is at fault;\n"
      "3 the program could not finish, or was interrupted.");

  CLI::App* fresh = app.add_subcommand("new", "A commented build file to start from");
  fresh
      ->add_option(
          "KIND", out.kind,
          "under-tray: one card and what is over it; compare: several drives for one machine; bay: a cased drive "
          "in a bay; panel: drives on a drilled panel")
      ->required();
  fresh->add_option("-o,--output", out.output, "The file to write; - for standard output")->required();
  fresh->footer("Example: baywright new under-tray -o desk.build.toml");
}

int usage_error(const CLI::App& app, const CLI::ParseError& error, const std::string& first) {
  const auto chosen = app.get_subcommands();
  std::string what = error.what();
  std::string see = "see baywright " + (chosen.empty() ? "" : chosen.front()->get_name() + ' ') + "--help";
  if (chosen.empty() && !first.empty() && first[0] != '-') {
    std::vector<std::string> commands;
    for (const CLI::App* command : app.get_subcommands({})) commands.push_back(command->get_name());
    const std::string meant = parts::nearest(first, commands);
    what = "there is no command `" + first + '`';
    see = meant.empty() ? "the commands are " + parts::any_of(commands) : "did you mean `" + meant + "`?";
  }
  std::replace(what.begin(), what.end(), '\n', ' ');
  std::cerr << "baywright: " << what << "; " << see << '\n';
  return input_at_fault;
}

/// Which figure lies outside what can be meant; empty: none.
std::string out_of_range(const Arguments& given) {
  if (given.clearance && !(*given.clearance >= 0.0 && *given.clearance <= 1000.0))
    return "--clearance must lie from 0 to 1000 mm";
  if (given.builds && !(*given.builds >= 1 && *given.builds <= fit::most_builds))
    return "--builds must lie from 1 to " + std::to_string(fit::most_builds);
  if (given.seed && *given.seed < 0) return "--seed must be a whole number from 0";
  if (given.threads && !(*given.threads >= 1 && *given.threads <= 1024)) return "--threads must lie from 1 to 1024";
  return {};
}

/// Help and version, which are asked for, go to standard output like any answer.
int show(const CLI::App& app, const CLI::Success& asked) {
  std::ostringstream text;
  app.exit(asked, text, text);
  return print(text.str()) ? all_fit : could_not_finish;
}

}  // namespace

Parsed parse(int count, char** values) {
  Parsed parsed;
  CLI::App app("Settles, before anything is bought, bent or drilled, whether a drive goes into a machine.",
               "baywright");
  app.require_subcommand(1);
  app.set_version_flag("--version", "baywright 0.1.0");
  app.footer(
      "Start with: baywright new under-tray -o my.build.toml, then baywright check my.build.toml\n"
      "Each command has --help.");
  add_commands(app, parsed.arguments);
  try {
    app.parse(count, values);
  } catch (const CLI::Success& asked) {
    parsed.done = show(app, asked);
    return parsed;
  } catch (const CLI::ParseError& error) {
    parsed.done = usage_error(app, error, count > 1 ? values[1] : "");
    return parsed;
  }
  parsed.arguments.command = app.get_subcommands().front()->get_name();
  if (const std::string fault = out_of_range(parsed.arguments); !fault.empty()) {
    std::cerr << "baywright: " << fault << '\n';
    parsed.done = input_at_fault;
  }
  return parsed;
}

}  // namespace baywright::cli
