#include "output/measure_words.h"

#include "output/more_words.h"
#include "tolerance/reading.h"

#include <array>
#include <cmath>

namespace baywright::output {

namespace {

std::string up(double mm) {
  return tolerance::in_words(std::ceil(mm * 100.0 - 1e-4) / 100.0);
}

std::string down(double mm) {
  return tolerance::in_words(std::floor(mm * 100.0 + 1e-4) / 100.0);
}

/// "`chips on top` (`top`)".
std::string quoted(const plans::Reading& reading) {
  return '`' + reading.dimension.name + '`' + (reading.key.empty() ? "" : " (`" + std::string(reading.key) + "`)");
}

std::string asked_of(const plans::Reading& reading) {
  return quoted(reading) + " to " + closeness(reading) + " (now " + tolerance::in_words(reading.dimension) + ')';
}

/// "`lid above board`, now 8.75 ±0.30, `chips on top` (`top`), now 2.00 ±0.10, and ...".
std::string all_of(const std::vector<plans::Reading>& readings) {
  std::string out;
  for (std::size_t i = 0; i < readings.size(); ++i)
    out += (i == 0                     ? ""
            : i + 1 == readings.size() ? ", and "
                                       : ", ") +
           quoted(readings[i]) + ", now " + tolerance::in_words(readings[i].dimension);
  return out;
}

std::string count_in_words(std::size_t count) {
  constexpr std::array words{"three", "four", "five", "six", "seven", "eight", "nine"};
  return count < 3 || count - 3 >= words.size() ? std::to_string(count) : words[count - 3];
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
           " of variation remain even with all that can be measured read to ±" + tolerance::in_words(plans::finest_mm) +
           ", which is as close as a caliper gets in a machine (common practice, no source).";
  const std::size_t count = settling.readings.size();
  const bool one = count == 1;
  std::string out = "Measure ";
  if (count > 2)
    out += "these " + count_in_words(count) + ", each to " + closeness(settling.readings.front()) + ": " +
           all_of(settling.readings);
  else
    out += asked_of(settling.readings.front()) + (one ? "" : " and " + asked_of(settling.readings.back()));
  out += '.';
  if (settling.then != fit::Verdict::marginal)
    out += std::string(one          ? " If it reads"
                       : count == 2 ? " If both read"
                                    : " If all read") +
           " as now, the drive " +
           (settling.then == fit::Verdict::fits ? "then fits for sure." : "then does not fit for sure.");
  if (!one) return out;
  const std::string thresholds = say_thresholds(settling.readings.front());
  if (thresholds.empty()) return out;
  return out + " Read so closely: it " + thresholds +
         (settling.readings.front().fits && settling.readings.front().fails ? "; between the two it stays marginal."
                                                                            : ".");
}

}  // namespace baywright::output
