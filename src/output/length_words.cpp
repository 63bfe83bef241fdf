#include "output/more_words.h"
#include "output/words.h"
#include "tolerance/reading.h"

#include <cmath>
#include <optional>

namespace baywright::output {

namespace {

using Bound = std::optional<double>;

Bound bound(const fit::Reason& why, std::string_view name) {
  for (const auto& [each, value] : why.figures)
    if (each == name) return value;
  return std::nullopt;
}

/// "at least 9.60", "at most 5.00", "from 4.20 to 5.00": a least is rounded up and a most down, so that what is written
/// does. Empty without bounds.
std::string between(const Bound& least, const Bound& most) {
  const auto up = [](double mm) { return tolerance::in_words(std::ceil(mm * 100.0 - 1e-6) / 100.0); };
  const auto down = [](double mm) { return tolerance::in_words(std::floor(mm * 100.0 + 1e-6) / 100.0); };
  if (least && most) return "from " + up(*least) + " to " + down(*most);
  if (least) return "at least " + up(*least);
  return most ? "at most " + down(*most) : std::string();
}

/// "small, it fails at screws; large, at side cover".
std::string fails(const fit::Reason& why) {
  const std::string small = why.word("small");
  const std::string large = why.word("large");
  if (small == large || small.empty() || large.empty())
    return "whatever it is, it fails at " + (small.empty() ? large : small);
  return "small, it fails at " + small + "; large, at " + large;
}

}  // namespace

std::string say_length(const fit::Reason& why) {
  const std::string length = '`' + why.word("length") + '`';
  if (why.code == fit::Code::needs_nothing) return "Any " + length + " does: no gap here hangs on it.";
  if (why.code == fit::Code::needs_none) return "No " + length + " does: " + fails(why) + ".";
  const std::string enough = between(bound(why, "least"), bound(why, "most"));
  const std::string bare = between(bound(why, "bare least"), bound(why, "bare most"));
  std::string out = "The length asked about, " + length + ", must be ";
  if (enough.empty())
    out += bare + " mm for a fit, and none leaves the clearance asked for: " + fails(why);
  else if (bare.empty() || bare == enough)
    out += enough + " mm";
  else
    out += bare + " mm for a fit, " + enough + " for the clearance asked for";
  const double limit = why.figure("limit");
  return out + (limit > 0.0 ? "; its own ±" + in_hundredths(limit) + " is counted in." : ".");
}

}  // namespace baywright::output
