#include "output/more_words.h"

#include <cmath>
#include <vector>

namespace baywright::output {

using fit::Code;
using fit::Reason;

namespace {

std::string degrees(double angle) {
  return std::to_string(std::lround(angle)) + " degrees";
}

std::string plain_way(const std::string& way, double angle) {
  if (way == "tilted") return "The usual way, at " + degrees(angle) + ",";
  return way == "up" ? "The way straight down" : "The straight way";
}

std::string opening(const Reason& why) {
  const std::string through = why.word("through");
  return through.empty() ? "" : " The bay has to be open at its " + through + " for it (`opens` says so).";
}

std::string listed(const Reason& why, const std::string& between) {
  std::vector<std::string> out;
  for (const auto& [name, text] : why.words)
    if (name == "out") out.push_back(text);
  std::string said;
  for (std::size_t i = 0; i < out.size(); ++i) said += (i == 0 ? "" : between) + out[i];
  return said;
}

}  // namespace

/// How it is put in: a way is kept as it comes out, so this is the same backward.
std::string goes_in(const Reason& why) {
  const std::string way = why.word("way");
  const double angle = why.figure("angle");
  if (way == "tilted") return "it enters its socket at " + degrees(angle) + " and is turned down flat";
  if (way == "searched" && angle > 0.0)
    return "it is worked in by turns and shifts, held at up to " + degrees(angle) + " on the way";
  if (way == "searched") return "it is worked in by several shifts";
  if (way == "up") return "it is set straight down into its place";
  if (way == "along") return "it slides in with its connector first";
  if (way == "back") return "it slides in with its connector last";
  if (way == "left") return "it goes in from the left";
  if (way == "right") return "it goes in from the right";
  return "the bare card goes in first, at " + degrees(angle) + ", and what it wears goes on afterward, from above";
}

std::string say_way(const Reason& why) {
  const std::string by = why.word("by");
  switch (why.code) {
    case Code::way_plain:
      return capital(goes_in(why)) + "." + opening(why);
    case Code::way_other:
      return plain_way(why.word("plain"), why.figure("plain angle")) + " is blocked" + (by.empty() ? "" : " by " + by) +
             ", but " + goes_in(why) + "." + opening(why);
    case Code::way_after:
      return "Take out first: " + listed(why, ", then ") + ". Then " + goes_in(why) + "." + opening(why);
    case Code::way_blocked:
      return "It cannot be brought to its place: on the best way tried (" + goes_in(why) + ") " + by +
             " is in its way by " + in_hundredths(-why.figure("gap")) + " mm or more.";
    case Code::way_held:
      return "It could not be settled how it gets in: " + listed(why, ", ") +
             " would have to come out first, and no order was found in which each comes out straight.";
    case Code::way_unsure:
      if (why.figure("decided") == 0.0)
        return "Whether it can be brought to its place could not be settled: " + by +
               " is in its way, or barely not; straight ways alone do not tell.";
      return "It may not go in: on the way (" + goes_in(why) + ") it " +
             (why.figure("gap") >= 0.0 ? "clears " + by + " by " + in_hundredths(why.figure("gap"))
                                       : "runs " + in_hundredths(-why.figure("gap")) + " mm into " + by) +
             ", and in the worst case runs " + in_hundredths(-why.figure("worst")) + " mm into it.";
    default:
      return {};
  }
}

}  // namespace baywright::output
