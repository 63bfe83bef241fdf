#include "output/measure_words.h"

#include "output/more_words.h"
#include "tolerance/reading.h"

#include <cmath>

namespace baywright::output {

namespace {

std::string up(double mm) {
  return tolerance::in_words(std::ceil(mm * 100.0 - 1e-4) / 100.0);
}

std::string down(double mm) {
  return tolerance::in_words(std::floor(mm * 100.0 + 1e-4) / 100.0);
}

std::string asked_of(const plans::Reading& reading) {
  return '`' + reading.dimension.name + "` to " + closeness(reading) + " (now " +
         tolerance::in_words(reading.dimension) + ')';
}

}  // namespace

std::string closeness(const plans::Reading& reading) {
  return "±" + tolerance::in_words(reading.to);
}

std::string say_thresholds(const plans::Reading& reading) {
  std::string out;
  if (reading.fits)
    out = "fits " + (reading.more_is_room ? "from " + up(*reading.fits) + " up" : "up to " + down(*reading.fits));
  if (reading.fails)
    out += (out.empty() ? "" : "; ") + std::string("does not at ") +
           (reading.more_is_room ? down(*reading.fails) + " or less" : up(*reading.fails) + " or more");
  return out;
}

std::string say(const plans::Settling& settling) {
  if (settling.readings.empty())
    return "Measuring cannot settle it: between " + settling.first + " and " + settling.second + " the edge is only " +
           down(settling.room) + " mm away, and " + up(settling.remain) +
           " of variation remain even with what matters most read to ±" + tolerance::in_words(plans::finest_mm) +
           ", which is as close as a caliper gets in a machine (common practice, no source).";
  std::string out = "Measure " + asked_of(settling.readings.front());
  if (settling.readings.size() > 1) out += " and " + asked_of(settling.readings.back());
  out += '.';
  const bool one = settling.readings.size() == 1;
  if (settling.then != fit::Verdict::marginal)
    out += std::string(one ? " If it reads" : " If both read") + " as now, the drive " +
           (settling.then == fit::Verdict::fits ? "then fits for sure." : "then does not fit for sure.");
  if (!one) return out;
  const std::string thresholds = say_thresholds(settling.readings.front());
  if (thresholds.empty()) return out;
  return out + " Read so closely: it " + thresholds +
         (settling.readings.front().fits && settling.readings.front().fails ? "; between the two it stays marginal."
                                                                            : ".");
}

}  // namespace baywright::output
