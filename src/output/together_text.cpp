#include "output/together_text.h"

#include "output/text.h"
#include "output/words.h"

#include <algorithm>

namespace baywright::output {

using fit::Together;

namespace {

std::string listed(const std::vector<std::string>& words, const char* last) {
  std::string out;
  for (std::size_t i = 0; i < words.size(); ++i) out += (i == 0 ? "" : i + 1 == words.size() ? last : ", ") + words[i];
  return out;
}

std::string links_in_words(const std::vector<standards::links::Link>& links) {
  std::vector<std::string> words;
  for (const auto& link : links) words.push_back(standards::links::in_words(link));
  return words.empty() ? "nothing" : listed(words, " or ");
}

/// The first line.
std::string answer(const Together& together) {
  const std::size_t in = together.assigned.size();
  const std::string drives = std::to_string(in + together.left.size());
  if (together.left.empty()) return in == 1 ? "The drive fits." : "All " + drives + " drives fit together.";
  const std::string some = in == 0 ? "None of the " + drives + " drives fits."
                                   : "Together only " + std::to_string(in) + " of " + drives + " drives fit.";
  return some + (together.whole ? "" : " The search was cut short: there may be a better way.");
}

std::string where(const fit::Assigned& each) {
  std::string out = "in " + each.place;
  if (each.link) out += ", at " + standards::links::in_words(*each.link);
  if (each.verdict != fit::Verdict::fits) out += " (" + word(each.verdict) + ")";
  return out;
}

std::string why(const fit::Left& each) {
  if (!each.fits_alone.empty()) return "is left: alone it would fit in " + listed(each.fits_alone, " or ");
  if (each.marginal_alone.empty() && !each.with_adapter.empty())
    return "fits nowhere as it is; with an adapter it could go to " + listed(each.with_adapter, " or ") +
           " (baywright check names it)";
  if (each.marginal_alone.empty()) return "fits nowhere here, not even alone";
  return "is left: it is marginal in " + listed(each.marginal_alone, " and in ") + " (--accept-marginal counts that)";
}

/// What keeps a drive from one of the places where it fits alone.
std::string say_in_the_way(const fit::InTheWay& each, tolerance::Method method) {
  if (each.drive.empty()) return each.place + ": no way beside the others was found.";
  const std::string other = each.drive + (each.at == each.place ? "" : ", in " + each.at + ',');
  if (!each.between)
    return each.place + ": " + (each.at == each.place ? "taken by " + each.drive + '.' : other + " takes its link.");
  return each.place + ": " + other + " is in the way. " + say(*each.between, method);
}

}  // namespace

std::string together_text(const fit::Check& check, const Together& together) {
  std::string out = answer(together) + "\n\n";
  std::size_t width = 0;
  for (const fit::Assigned& each : together.assigned) width = std::max(width, columns(each.drive));
  for (const fit::Left& each : together.left) width = std::max(width, columns(each.drive));
  const auto line = [&](const std::string& drive, const std::string& text) {
    out += "  " + padded(drive, width) + "  " + wrapped(text, width + 4) + '\n';
  };
  for (const fit::Assigned& each : together.assigned) line(each.drive, where(each));
  for (const fit::Left& each : together.left) {
    line(each.drive, why(each));
    for (const fit::InTheWay& between : each.in_the_way) line("", say_in_the_way(between, check.method));
  }
  for (const fit::Cost& cost : together.costs)
    out += "  " +
           wrapped("Using " + cost.place + " leaves " + links_in_words(cost.leaves) + " for " + cost.with + '.', 2) +
           '\n';
  return out + closing(check, "Drive by drive and place by place: baywright check " + check.file);
}

}  // namespace baywright::output
