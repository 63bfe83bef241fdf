#include "output/answer_words.h"

#include "output/words.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <cmath>

namespace baywright::output {

using fit::Finding;
using fit::Seating;
using fit::Verdict;

namespace {

std::string in_mm(double gap) {
  return tolerance::in_words(std::round(std::abs(gap) * 100.0) / 100.0) + " mm";
}

/// A clearance between two solids: the only finding that can be told in one figure.
bool is_gap(const Finding* finding) {
  return finding != nullptr && finding->kind == fit::Kind::clearance && finding->gap &&
         finding->why.code == fit::Code::gap;
}

std::string plain_words(const Seating& seating, const Finding* finding, const std::string& sentence) {
  if (seating.verdict == Verdict::fits) {
    const Finding* nearest = seating.deciding && *seating.deciding < seating.findings.size()
                                 ? &seating.findings[*seating.deciding]
                                 : nullptr;
    if (!is_gap(nearest)) return "It fits.";
    return "It fits: " + in_mm(nearest->gap->nominal) + " of air is left between " + subject(*nearest, 0) + " and " +
           subject(*nearest, 1) + ".";
  }
  if (seating.verdict == Verdict::undecided) return "It could not be settled whether it fits. " + sentence;
  const std::string begin = seating.verdict == Verdict::marginal ? "It may not fit" : "It does not fit";
  if (!is_gap(finding)) return begin + ". " + sentence;
  const std::string a = subject(*finding, 0);
  const std::string b = subject(*finding, 1);
  if (seating.verdict == Verdict::marginal)
    return begin + ": whether " + a + " stays clear of " + b + " depends on how exactly the parts are made.";
  if (finding->gap->nominal < 0.0)
    return begin + ": between " + a + " and " + b + " " + in_mm(finding->gap->nominal) + " of room is missing.";
  return begin + " with the air asked for: between " + a + " and " + b + " only " + in_mm(finding->gap->nominal) +
         " is left.";
}

}  // namespace

const Finding* answering(const Seating& seating) {
  const auto found = std::find_if(seating.findings.begin(), seating.findings.end(),
                                  [&](const Finding& finding) { return finding.verdict == seating.verdict; });
  return found == seating.findings.end() ? nullptr : &*found;
}

Answer answer_of(const Seating& seating, tolerance::Method method) {
  Answer out{seating.verdict, word(seating.verdict), seating.drive + " in " + seating.place, {}, {}};
  const Finding* finding = answering(seating);
  out.sentence = finding != nullptr ? say(*finding, method) : "Nothing stands within reach of the drive.";
  out.plain = plain_words(seating, finding, out.sentence);
  return out;
}

}  // namespace baywright::output
