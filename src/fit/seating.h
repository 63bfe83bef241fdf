#pragma once
// What a check says: seatings with their findings and verdicts.
#include "fit/finding.h"
#include "standards/links.h"
#include "tolerance/stack.h"

#include <optional>
#include <string>
#include <vector>

namespace baywright::fit {

struct Seating {
  std::string drive;
  std::string place;
  Verdict verdict = Verdict::undecided;
  std::optional<double> share;  // of builds that fit; none where an open side that matters leaves it unknown
  Questions questions;
  std::optional<standards::links::Link> link;
  std::vector<Finding> findings;        // worst first
  std::optional<std::size_t> deciding;  // index of the gap that decides, in findings: least room beyond what is asked
};

struct Check {
  std::string title;
  std::string file;
  tolerance::Method method = tolerance::Method::worst;
  double clearance = 0.0;
  std::vector<Seating> seatings;  // by drive, then place, as the file lists them
  std::vector<Finding> notes;     // of the build as a whole
};

}  // namespace baywright::fit
