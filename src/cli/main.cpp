#include "cli/commands.h"

#include <csignal>
#include <exception>
#include <iostream>
#include <map>

int main(int count, char** values) {
  using namespace baywright::cli;
  std::signal(SIGPIPE, SIG_IGN);  // a closed pipe is an error of writing, not a sudden death
  try {
    const Parsed parsed = parse(count, values);
    if (parsed.done) return *parsed.done;
    static const std::map<std::string, int (*)(const Arguments&)> commands = {
        {"check", check_command}, {"explain", explain_command}, {"plans", plans_command},     {"steps", steps_command},
        {"draw", draw_command},   {"drill", drill_command},     {"picture", picture_command}, {"parts", parts_command},
        {"view", view_command},   {"new", new_command},     {"rank", rank_command}, {"survey", survey_command},
        {"make", make_command},   {"report", report_command},
    };
    return commands.at(parsed.arguments.command)(parsed.arguments);
  } catch (const std::exception& error) {  // out of memory and the like: no fault of the input is thrown this far
    std::cerr << "baywright: could not finish: " << error.what() << '\n';
    return could_not_finish;
  }
}
