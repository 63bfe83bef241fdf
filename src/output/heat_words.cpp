#include "output/heat_words.h"

#include "output/value_words.h"
#include "output/words.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace baywright::output {

using thermal::Cause;
using thermal::Heat;
using thermal::Outlook;

namespace {

std::string celsius(double kelvin) {
  return plain(kelvin - thermal::ice_point, 0);
}

/// "61 to 84 °C": outward to whole degrees.
std::string interval(const thermal::Interval& kelvin) {
  const double low = std::floor(kelvin.low - thermal::ice_point);
  const double high = std::ceil(kelvin.high - thermal::ice_point);
  if (!std::isfinite(high)) return plain(low, 0) + " °C and more";
  return low < high ? plain(low, 0) + " to " + plain(high, 0) + " °C" : "about " + plain(low, 0) + " °C";
}

std::string cause(Cause cause) {
  constexpr std::array words{"the power",
                             "the air in the machine",
                             "the room over it",
                             "which way the card faces",
                             "the laws of convection",
                             "how the power is shared between controller and memory",
                             "the size of the controller",
                             "the size of the memory",
                             "how thin the pad is pressed",
                             "the pad's conductivity",
                             "the card's copper",
                             "the heatsink's metal",
                             "the card's surface",
                             "the heatsink's surface",
                             "the surface of what is over it",
                             "the air under the card",
                             "what socket and screw take",
                             "how far the board spreads the heat",
                             "how far what is over it spreads the heat"};
  return words[static_cast<std::size_t>(cause)];
}

std::string throttling(const Heat& heat) {
  const bool warning = heat.stated.warning.has_value();
  const auto limit = warning ? heat.stated.warning : heat.stated.critical;
  if (!limit) return "No warning temperature is stated to hold that against.";
  const std::string at = celsius(*limit) + " °C";
  const std::string begins = warning ? "its warning begins at " : "it is critical from ";
  switch (heat.outlook) {
    case Outlook::stays_below:
      return "That stays below " + at + ", where " + (warning ? "its warning begins." : "it is critical.");
    case Outlook::may_throttle:
      return "It may throttle: " + begins + at + '.';
    case Outlook::likely_throttles:
      return "It likely throttles: " + begins + at + '.';
    case Outlook::no_limit:
      break;
  }
  return {};
}

void say_power(const Heat& heat, std::vector<std::string>& out) {
  if (!heat.budget || !heat.draw) return;
  const std::string gives = " W; the slot gives " + plain(heat.budget->watts, 2) + " W" +
                            (heat.budget->peak ? " at its peak" : "") + " (" + std::string(heat.budget->source) + ").";
  if (heat.draw->over)
    out.push_back("It draws " + plain(heat.draw->known, 2) + gives);
  else if (heat.shared && heat.shared->over)
    out.push_back(std::to_string(heat.sharing) + " such on its carrier draw " + plain(heat.shared->known, 2) + gives);
}

void say_contact(const Heat& heat, std::vector<std::string>& out) {
  if (!heat.contact || !(heat.contact->too_loose || heat.contact->too_tight)) return;
  const thermal::Compressed range;
  const std::string pressed = "With the heatsink held at one height, a pad within its limits is pressed by " +
                              plain(100.0 * heat.contact->least, 0) + " to " + plain(100.0 * heat.contact->most, 0) +
                              " %: ";
  if (heat.contact->too_loose)
    out.push_back(pressed + "below " + percent(range.least) + " it may not touch everywhere.");
  if (heat.contact->too_tight)
    out.push_back(pressed + "beyond " + percent(range.most) + " it may bleed oil, and the card bends.");
}

}  // namespace

std::vector<std::string> say(const Heat& heat) {
  std::vector<std::string> out;
  if (heat.warmth) {
    const thermal::Warmth& warmth = *heat.warmth;
    out.push_back("Writing on and on at " + plain(heat.stated.watts.value_or(0.0), 2) +
                  " W: " + interval(warmth.composite()) + ". " + throttling(heat) +
                  " What leaves it most open: " + cause(warmth.widest) + '.');
  } else if (heat.unknown == thermal::Unknown::no_power) {
    out.emplace_back("How warm it becomes is not known: no power while writing is stated.");
  } else if (heat.unknown == thermal::Unknown::no_law) {
    out.emplace_back("How warm it becomes is not worked out for this form.");
  } else if (heat.unknown == thermal::Unknown::too_hot) {
    out.emplace_back("At " + plain(heat.stated.watts.value_or(0.0), 2) +
                     " W it could not give its heat off here: no temperature below 227 °C was found.");
  }
  if (heat.greased) out.emplace_back("No pad is named under its heatsink: grease is taken to be there.");
  say_power(heat, out);
  say_contact(heat, out);
  return out;
}

std::string heat_basis(const thermal::Surroundings& around) {
  const std::string air = around.air.low < around.air.high
                              ? "air of " + celsius(around.air.low) + " to " + celsius(around.air.high) + " °C"
                              : "air of " + celsius(around.air.low) + " °C";
  return "Temperatures: intervals by root sum square, in " + air + " in the machine" +
         (around.air_stated ? "" : " (common practice, no source; --air has yours)") +
         (around.speed > 0.0 ? ", " + plain(around.speed, 2) + " m/s along the card" : ", with no fan") +
         ", by published laws of convection (outside their ranges by what still holds there) and figures of common "
         "practice, no source. What is over the card "
         "counts as a lid. A drive's own reading need not be that of any one point.";
}

std::string word(Outlook outlook) {
  constexpr std::array words{"stays below", "may throttle", "likely throttles", "no limit"};
  return words[static_cast<std::size_t>(outlook)];
}

}  // namespace baywright::output
