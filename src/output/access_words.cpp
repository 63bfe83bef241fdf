#include "output/more_words.h"
#include "parts/form.h"

#include <cmath>

namespace baywright::output {

using fit::Code;
using fit::Reason;

namespace {

/// "the screw", "the 4 screws", "2 of the 4 screws".
std::string screws(const Reason& why) {
  const int count = static_cast<int>(std::lround(why.figure("count")));
  const int of = static_cast<int>(std::lround(why.figure("of")));
  const std::string what = why.word("what");
  if (of <= 1) return "the " + what;
  if (count == of) return of == 2 ? "both " + what + "s" : "the " + std::to_string(of) + ' ' + what + 's';
  return std::to_string(count) + " of the " + std::to_string(of) + ' ' + what + 's';
}

/// The facts of that name as a list.
std::string all(const Reason& why, std::string_view name) {
  std::vector<std::string> found;
  for (const auto& [key, value] : why.words)
    if (key == name) found.push_back(value);
  std::string out;
  for (std::size_t i = 0; i < found.size(); ++i)
    out += (i == 0 ? "" : i + 1 == found.size() ? " and " : ", ") + found[i];
  return out;
}

std::string mm(double value) {
  return in_hundredths(value) + " mm";
}

bool head(const Reason& why) {
  return why.word("where") == "head";
}

/// Why `who` does not do: "an ordinary PH0 driver needs 148.00 mm over it and meets lid after 8.10".
std::string hindrance(const Reason& why, const std::string& who) {
  const std::string by = all(why, "by");
  const double room = why.figure("room");
  const bool many = who == "fingers";
  if (why.word("where") == "lever") return "the lever of " + who + " meets " + by + " whichever way it points";
  if (room > 0.0)
    return who + (many ? " need " : " needs ") + mm(why.figure("need")) + " over it and " +
           (many ? "meet " : "meets ") + by + " after " + in_hundredths(room);
  const std::string part = why.word("where") == "shaft" ? "the shaft" : mm(why.figure("handle")) + " across,";
  return part + " of " + who + " is " + mm(-why.figure("gap")) + " in " + by + " beside it";
}

/// The same of the screw's own head, on its way down.
std::string head_hindrance(const Reason& why) {
  const std::string by = all(why, "by");
  const double room = why.figure("room");
  if (room > 0.0)
    return "it stands out " + mm(why.figure("need")) + " to be started, and over its head " + by + " leaves " +
           in_hundredths(room);
  return "on its way down its head is " + mm(-why.figure("gap")) + " in " + by + " beside it";
}

std::string blocked(const Reason& why) {
  if (head(why)) return "There is no room to put " + screws(why) + " in: " + head_hindrance(why) + ".";
  const bool nut = why.word("what") == "nut";
  return (nut ? "No hand holds " : "No driver reaches ") + screws(why) + ": even " +
         hindrance(why, tool_in_words(why)) + ".";
}

std::string only_before(const Reason& why) {
  const std::string carrier = why.word("carrier");
  const std::string by = all(why, "by");
  const std::string when = carrier.empty() ? "before " + by + (why.word("by") == by ? " goes in" : " go in")
                                           : "with " + carrier + " out of the machine";
  return (why.word("what") == "nut" ? "Hold " : "Drive ") + screws(why) + ' ' + when + ": " +
         (head(why) ? head_hindrance(why) : hindrance(why, tool_in_words(why))) + ".";
}

}  // namespace

std::string tool_in_words(const Reason& why) {
  if (const std::string own = why.word("own tool"); !own.empty()) return "your " + own;
  const std::string name = why.word("tool");
  return name == "fingers" ? name : parts::article(name) + ' ' + name;
}

std::string say_access(const Reason& why) {
  switch (why.code) {
    case Code::tool_reaches:
      return capital(tool_in_words(why)) + (why.word("tool") == "fingers" ? " reach " : " reaches ") + screws(why) +
             ".";
    case Code::tool_other: {
      const std::string ordinary = why.word("blocked");
      const std::string who = ordinary == "fingers" ? ordinary : parts::article(ordinary) + ' ' + ordinary;
      return "For " + screws(why) + " take " + tool_in_words(why) + ": " + hindrance(why, who) + ".";
    }
    case Code::tool_before:
      return only_before(why);
    case Code::tool_blocked:
      return blocked(why);
    case Code::tool_marginal: {
      const std::string out = all(why, "out");
      return "Only in some builds " + (head(why) ? "the head of " + screws(why) : tool_in_words(why)) + " passes " +
             all(why, "by") + " to " + (head(why) ? "its seat" : screws(why)) + ": by " + mm(why.figure("gap")) + ", " +
             in_hundredths(why.figure("least")) + " at the least and " + in_hundredths(why.figure("most")) +
             " at the most" + (out.empty() ? "." : ", with " + out + " out.");
    }
    case Code::tool_unsure:
      if (all(why, "by").empty()) return "Which driver fits " + screws(why) + " is not known here.";
      return "It could not be settled whether " + tool_in_words(why) + " passes " + all(why, "by") + " to " +
             screws(why) + ".";
    default:
      return {};
  }
}

}  // namespace baywright::output
