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

void add_rank(CLI::App& app, Arguments& out) {
  CLI::App* rank = app.add_subcommand("rank", "Which drive of a shortlist to buy: price, endurance, speed and fit side by side");
  rank->add_option("SHORTLIST", out.file, "A .csv file, or a .toml file with [[drive]] tables; models/README.md has the columns")
      ->required();
  CLI::Option* build = rank->add_option("--build", out.build_file, "The machine: a build file; its own drives are left out");
  rank->add_option("--place", out.place, "Only this place of it, by its name in the file")->needs(build);
  rank->add_option("--bus", out.bus, "Without a build: what is wired to the slot, as \"pcie 3.0 x4\" or \"sata 6\"")
      ->excludes(build);
  rank->add_option("--daily", out.daily,
                   "GB written a day, or office, home, games, software or video (common practice, no source)");
  rank->add_option("--now", out.now, "What is there now: hdd, emmc, sata, nvme3, nvme4 or nvme5");
  CLI::Option* sort = rank->add_option("--sort", out.sort,
                                       "Put in order by a column: name, price, capacity, \"price per GB\" (else), read, "
                                       "write, tbw, \"price per TBW\", dwpd, years or warranty");
  rank->add_option("--weigh", out.weigh, "Or by several, as price=3,read=1")->excludes(sort);
  rank->add_option("--air", out.air, "Temperature of the air in the machine, °C (else 25 to 45)")->needs(build);
  rank->add_option("--air-speed", out.air_speed, "Speed of the air along the card, m/s (else no fan)")->needs(build);
  CLI::Option* csv = rank->add_flag("--csv", out.csv, "As a table for a spreadsheet");
  CLI::Option* json =
      rank->add_flag("--json", out.json, "Machine-readable, as models/rank.schema.json says")->excludes(csv);
  CLI::Option* html =
      rank->add_flag("--html", out.html, "As a page for a customer, with a plot; report has pictures too")
          ->excludes(csv)
          ->excludes(json);
  CLI::Option* page =
      rank->add_option("-o,--output", out.output, "The HTML file to write; - for standard output")->needs(html);
  html->needs(page);
  rank->add_option("--language", out.language, "en (else) or de: all that a customer reads")
      ->check(CLI::IsMember({"en", "de"}))
      ->needs(html);
  rank->footer(
      "Example: baywright rank models/shelf/old-laptop.csv --build models/builds/old-laptop.build.toml --daily 30\n\n"
      "Exit status: 0 there is a drive to take (with --build: one that fits); 1 otherwise; 2 the input is at fault;\n"
      "3 the program could not finish.");
}

void add_report(CLI::App& app, Arguments& out) {
  CLI::App* report = app.add_subcommand(
      "report", "One page for a customer (HTML): the answer, pictures, a model to turn, what to buy and do");
  add_file(*report, out);
  report->add_option("-o,--output", out.output, "The HTML file to write; - for standard output")->required();
  add_choice(*report, out);
  CLI::Option* list =
      report
          ->add_option("--shortlist", out.shortlist,
                       "The drives to choose between, as rank reads them; the page is about the one that it takes")
          ->check([](const std::string& name) { return std::string(name.empty() ? "the name is empty" : ""); })
          ->excludes("--drive");
  report->add_option("--daily", out.daily, "GB written a day, as rank takes it")->needs(list);
  report->add_option("--now", out.now, "What is there now, as rank takes it")->needs(list);
  CLI::Option* sort = report->add_option("--sort", out.sort, "Put in order by a column, as rank does")->needs(list);
  report->add_option("--weigh", out.weigh, "Or by several, as price=3,read=1")->needs(list)->excludes(sort);
  report->add_option("--air", out.air, "Temperature of the air in the machine, °C (else 25 to 45)")->needs(list);
  report->add_option("--language", out.language, "en (else) or de: all that a customer reads")
      ->check(CLI::IsMember({"en", "de"}));
  report->footer(
      "One file that needs no network. Without a shortlist it is about a drive of the build, each at the place that\n"
      "suits it best; of several the one that most needs looking at. Without OpenGL it has drawings for pictures.\n"
      "Example: baywright report models/builds/old-laptop.build.toml --shortlist models/shelf/old-laptop.csv \\\n"
      "           --daily 30 --language de -o laptop.html\n\n"
      "Exit status: 0 the drive fits, or a plan on the page makes it fit; 1 otherwise; 2 the input is at fault;\n"
      "3 the program could not finish.");
}

void add_make(CLI::App& app, Arguments& out) {
  CLI::App* make =
      app.add_subcommand("make", "A part to print or cut: spacer, shim, plate, drill guide, bracket, adapter plate");
  add_file(*make, out);
  make->add_option("-o,--output", out.output,
                   "The file to write: .stl or .3mf to print, .dxf (flat ones) to cut; - for STL on standard output")
      ->required();
  make->add_option("--part", out.part, "What to make, as listed below")->required()->check([](const std::string& name) {
    return std::string(name.empty() ? "the name is empty" : "");
  });
  make->add_option("--process", out.process,
                   "How it is printed: fdm (else), sla or sls; holes are made larger by what that shrinks")
      ->check(CLI::IsMember({"fdm", "sla", "sls"}));
  make->add_flag("--mark", out.mark,
                 "Sink its length into a spacer, shim or stand-off (on a tab), the drill's diameter into a guide");
  make->footer(
      "What can be made (P behind --part; lengths in mm):\n"
      "  \"NAME\"                    a plate, a box or one extruded outline of the build, flat\n"
      "  \"spacer PLACE\"            as high as that place's spacers; also shim PLACE\n"
      "  \"spacer M3 8\"             of that thread and length; also \"shim M3 0.5\"\n"
      "  \"stand-off M3 10\"         with a hole for a heat-set insert\n"
      "  \"guide PLACE\"             to drill its pilot holes by\n"
      "  \"bracket 2.5in\"           an L from a drive's side holes to a panel; also 3.5in, or a PLACE;\n"
      "                            then, as needed: thickness 2 raised 7 foot 17 screw M3 (or insert M3)\n"
      "  \"adapter 2.5in in 3.5in\"  a flat plate with the base holes of both;\n"
      "                            then, as needed: thickness 3 width 101.6 screw M3 (or insert M3)\n\n"
      "Check lengths and holes with a caliper before anything goes in; no printed spacer near heat.\n"
      "Example: baywright make models/builds/panel.build.toml --part \"spacer M3 8\" -o spacer.stl\n\n"
      "Exit status: 0 it was made; 2 the input is at fault; 3 the program could not finish.");
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

  CLI::App* plans = app.add_subcommand("plans", "What would make it fit, best first, each checked like the build itself");
  add_file(*plans, out);
  add_choice(*plans, out);
  plans->add_flag("--json", out.json, "Machine-readable, as models/plans.schema.json says");
  plans->add_option("--clearance", out.clearance, "Clearance asked for, mm, instead of the build's");
  plans->add_option("--method", out.method, "How limits add up: worst (worst case) or rss (root sum square)")
      ->check(CLI::IsMember({"worst", "rss"}));
  plans->add_option("--seconds", out.seconds, "Search no longer than this (else 10), and say so where it was cut short");
  CLI::Option* written = plans->add_option("-o,--output", out.output, "The build file to write; - for standard output");
  CLI::Option* applied =
      plans->add_option("--apply", out.apply, "Write the build with this plan made in it, by its number")
          ->needs(written)
          ->excludes("--json");
  written->needs(applied);
  plans->footer(
      "Where several seatings are asked about, the plans are for the worst, and the first line says which.\n"
      "Example: baywright plans models/builds/thin-desktop.build.toml --apply 1 -o mended.build.toml\n\n"
      "Exit status: 0 a plan makes it fit, or it fits already; 1 otherwise; 2 the input is at fault;\n"
      "3 the program could not finish.");

  CLI::App* draw = app.add_subcommand("draw", "A dimensioned drawing of one seating on A4, true to scale");
  add_file(*draw, out);
  draw->add_option("-o,--output", out.output,
                   "The file to write: .svg, .pdf, .png or .dxf; - for SVG on standard output")
      ->required();
  add_choice(*draw, out);
  add_limits(*draw, out);
  draw->add_flag("--measure", out.measure, "A sheet to measure by instead: where, in which order, how closely");
  draw->footer(
      "Where several seatings are asked about, the worst is drawn, and the command says which.\n"
      "Example: baywright draw models/builds/thin-desktop.build.toml --drive \"card with tall fins\" -o tall.svg");

  CLI::App* drill =
      app.add_subcommand("drill", "A 1:1 template of a panel's holes, with hole table and order of drilling");
  add_file(*drill, out);
  drill
      ->add_option("-o,--output", out.output,
                   "The file to write: .pdf, .svg or .png (one file a sheet), .dxf (the panel alone); - for PDF on "
                   "standard output")
      ->required();
  const auto not_empty = [](const std::string& name) { return std::string(name.empty() ? "the name is empty" : ""); };
  drill->add_option("--place", out.place, "Only the holes of this place, by its name in the file")->check(not_empty);
  drill->add_option("--part", out.part, "The holes of this part: of all its places, and its own")
      ->check(not_empty)
      ->excludes("--place");
  drill->add_option("--paper", out.paper, "a4 (else) or letter")->check(CLI::IsMember({"a4", "letter"}));
  drill->add_flag("--mirrored", out.mirrored, "For the side away from the drives");
  drill->footer(
      "Print at 100 % and measure both scale bars before drilling.\n"
      "Example: baywright drill models/builds/panel.build.toml --part panel -o panel.pdf");

  add_make(app, out);

  CLI::App* steps = app.add_subcommand("steps", "How to fit it: the mounting order, with tools, screws and cautions");
  add_file(*steps, out);
  add_choice(*steps, out);
  add_limits(*steps, out);
  CLI::Option* steps_json =
      steps->add_flag("--json", out.json, "Machine-readable, as models/steps.schema.json says");
  CLI::Option* shopping =
      steps->add_flag("--shopping", out.shopping, "What to buy for it instead, and what may replace what")
          ->excludes(steps_json);
  steps->add_flag("--csv", out.csv, "The shopping list as a table for a spreadsheet")->needs(shopping);
  steps->add_flag("--accept-marginal", out.accept_marginal, "Count marginal as a fit in the exit status");
  steps->footer(
      "Where several seatings are asked about, the worst is taken; name the one that you mean.\n"
      "Example: baywright steps models/builds/thin-desktop.build.toml --drive \"card with flat spreader\"\n"
      "         baywright steps models/builds/panel.build.toml --place \"laser cut\" --shopping --csv\n\n"
      "Exit status: 0 there are steps; 1 it does not fit, so there are none; 2 the input is at fault;\n"
      "3 the program could not finish.");

  CLI::App* picture = app.add_subcommand("picture", "A rendered view of one seating, with its answer (PNG)");
  add_file(*picture, out);
  picture->add_option("-o,--output", out.output, "The PNG file to write; - for standard output")->required();
  add_choice(*picture, out);
  add_limits(*picture, out);
  picture->add_option(
      "--view", out.side,
      "whole (from aslant), front, back, left, right, top or bottom: faces of the place. Else whole, or "
      "square on the section");
  picture->add_flag("--section", out.section, "Cut through the gap that decides, with what is cut hatched");
  picture->add_flag("--apart", out.apart, "Taken apart along the way in, with lines to where each thing belongs");
  picture
      ->add_option("--clearance-map", out.clearance_map,
                   "Colour this part by how far each place of it is from everything else")
      ->check([](const std::string& name) { return std::string(name.empty() ? "the name is empty" : ""); });
  picture->add_option("--size", out.size, "Width and height in pixels, each 64 to 8192 (else 1280x800)");
  picture->add_flag("--dark,!--light", out.dark, "On a dark ground; --light is what it is without");
  picture->add_option("--turntable", out.turntable, "So many pictures all round: NAME-000.png and on");
  picture->footer(
      "Where several seatings are asked about, the worst is shown, and the command says which.\n"
      "It needs OpenGL, but no display; draw needs neither.\n"
      "Example: baywright picture models/builds/thin-desktop.build.toml --section -o cut.png");

  CLI::App* view = app.add_subcommand("view", "The window: the answer, the stack, the scene, what would make it fit");
  view->add_option("FILE", out.file, "The build file; without one the window lists what can be opened");
  add_choice(*view, out);
  view->add_option("--clearance", out.clearance, "Clearance asked for, mm, instead of the build's");
  view->add_option("--method", out.method, "How limits add up: worst (worst case) or rss (root sum square)")
      ->check(CLI::IsMember({"worst", "rss"}));
  view->add_option("--size", out.size, "Width and height of the window (else 1280x800)");
  view->add_option("--shortlist", out.shortlist,
                   "The drives to choose between, as rank reads them: side by side, each tried in the machine")
      ->check([](const std::string& name) { return std::string(name.empty() ? "the name is empty" : ""); });
  view->add_flag("--trace", out.trace, "For tests: a line on standard error for each frame that is drawn");
  view->footer(
      "F1 in the window shows every key. Without a display: picture and draw.\n"
      "Examples: baywright view models/builds/thin-desktop.build.toml\n"
      "          baywright view models/builds/old-laptop.build.toml --shortlist models/shelf/old-laptop.csv\n\n"
      "Exit status: 0 the window was closed; 2 the input is at fault; 3 no display, or no OpenGL 3.3.");

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

  add_rank(app, out);
  add_report(app, out);

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
  if (given.seconds && !(*given.seconds > 0.0 && *given.seconds <= 86400.0))
    return "--seconds must lie above 0, up to 86400";
  if (given.seed && *given.seed < 0) return "--seed must be a whole number from 0";
  if (given.threads && !(*given.threads >= 1 && *given.threads <= 1024)) return "--threads must lie from 1 to 1024";
  if (given.air && !(*given.air >= -40.0 && *given.air <= 120.0)) return "--air must lie from -40 to 120 °C";
  if (given.air_speed && !(*given.air_speed >= 0.0 && *given.air_speed <= 50.0))
    return "--air-speed must lie from 0 to 50 m/s";
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
