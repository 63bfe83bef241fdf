#include "output/shopping_text.h"

#include "output/text.h"
#include "output/words.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <utility>

namespace baywright::output {

using plans::Condition;
using plans::Exchange;
using plans::Item;
using plans::ItemKind;
using plans::Remark;

namespace {

using tolerance::in_words;

std::string joined(const std::vector<std::string>& parts, const char* between) {
  std::string out;
  for (const std::string& part : parts) out += (out.empty() ? "" : between) + part;
  return out;
}

std::string sizes(const Item& item) {
  std::vector<std::string> parts;
  for (const plans::Size& size : item.sizes) parts.push_back(std::string(word(size.use)) + ' ' + in_words(size.mm));
  return joined(parts, "; ");
}

std::string exchanges(const Item& item, bool nevers) {
  std::vector<std::string> parts;
  for (const Exchange& exchange : item.exchanges)
    if (never(exchange.condition) == nevers) parts.push_back(exchange.designation + ": " + say(exchange));
  return joined(parts, "; ");
}

std::string remarks(const Item& item) {
  std::vector<std::string> parts;
  for (const Remark remark : item.remarks) parts.push_back(say(remark, item));
  return joined(parts, " ");
}

bool has(const Item& item, Remark remark) {
  return std::find(item.remarks.begin(), item.remarks.end(), remark) != item.remarks.end();
}

/// "the build (measured)"
std::string known(const std::string& source, tolerance::Known how) {
  return source + " (" + std::string(tolerance::word(how)) + ')';
}

std::string row(const Item& item) {
  const ItemWords words = words_of(item);
  const std::string count = std::to_string(item.count);
  const std::string lead = std::string(count.size() < 4 ? 4 - count.size() : 0, ' ') + count + "  " +
                           padded(std::string(word(item.kind)), 11);
  std::string text = lead + wrapped(words.what, lead.size()) + '\n';
  for (const auto& [label, note] : words.notes) {
    const std::string start = std::string(17, ' ') + padded(label, 9);
    text += start + wrapped(note, start.size()) + '\n';
  }
  return text;
}

/// A field of the table. Also one that begins with white space before the formula's sign is taken for a formula.
std::string field(std::string text) {
  const std::size_t first = text.find_first_not_of(" \t\r\n");
  if (first != std::string::npos && std::string_view("=+-@").find(text[first]) != std::string_view::npos)
    text.insert(text.begin(), '\'');
  if (text.find_first_of(",\"\n\r") == std::string::npos) return text;
  std::string out = "\"";
  for (const char c : text) out += c == '"' ? "\"\"" : std::string(1, c);
  return out + '"';
}

}  // namespace

std::string say(const Exchange& exchange) {
  switch (exchange.condition) {
    case Condition::other_driver:
      return "the same head with a hexalobular recess, which takes another driver.";
    case Condition::taller_head:
      return "where its head, up to " + in_words(exchange.mm) + " high, has room; it takes a hexagon key.";
    case Condition::smaller_washer:
      return "less wide, at least " + in_words(exchange.mm) + ", and still wider than the holes.";
    case Condition::other_thread:
      return "it looks alike, but is " + in_words(exchange.mm) +
             " off in diameter and has another pitch: it strips the thread or does not hold.";
    case Condition::head_too_high:
      return "its head may stand " + in_words(exchange.mm) + " higher than is allowed over an M.2 card.";
    case Condition::fills_no_gap:
      return "it does not fill the gap that the pad fills.";
  }
  return {};
}

std::string say(Remark remark, const Item& item) {
  switch (remark) {
    case Remark::wrong_length:
      return "Not the build's, " + in_words(item.named) + " long: that length is wrong here.";
    case Remark::wrong_thread:
      return "Not the build's: the drive has this thread.";
    case Remark::length_open:
      return "The build does not settle its length: take one that surely holds and bottoms nowhere.";
    case Remark::length_not_sold:
      return "No such size is among those that we know to be sold" +
             (item.sold_near.empty() ? std::string()
              : item.sold_near.size() == 1
                  ? " (the nearest is " + in_words(item.sold_near[0]) + ")"
                  : " (the nearest are " + in_words(item.sold_near[0]) + " and " + in_words(item.sold_near[1]) + ")") +
             ": ask, or cut to length.";
    case Remark::with_the_board:
      return "It often lies in the board's or the machine's box: look there first (common practice, no source).";
    case Remark::measure_length:
      return "The check reckons with closer limits than such parts are sold with: measure what you buy.";
    case Remark::wide_holes:
      return "The holes may be wider than the medium series of ISO 273 (under wide holes: common practice, no source).";
    case Remark::no_washer:
      return "The holes may be wider than the medium series of ISO 273, but with a washer no usual length both surely "
             "holds and does not go too deep: none is listed. Drill smaller, or raise the drive by another height.";
    case Remark::at_each_screw:
      return "At each screw of " + item.part +
             ": the file does not say how many these are, and four are taken (common practice, no source).";
    case Remark::short_screws:
      return "Not the build's, " + in_words(item.named) +
             " long: over its spacers they go into their thread by less than one diameter. See first how deep that is.";
    case Remark::longer_screws:
      return "They go over its spacers: only where the screws that came out are shorter.";
    case Remark::stands_there:
      return "By the file there is one at this length (`lengths`): look whether it is there, or in the board's box, "
             "before you buy one.";
    case Remark::own_screws:
      return "The screws that hold the drive in it are not counted: see what came with it.";
    case Remark::over_washer:
      return "Not the build's, " + in_words(item.named) +
             " long: with the washer under its head that one would not surely hold.";
    case Remark::wide_spacer:
      return "The holes leave the usual one, two screw diameters wide, less than 1 mm of seat: take one at least " +
             in_words(item.outside) + " across (common practice, no source).";
  }
  return {};
}

ItemWords words_of(const Item& item) {
  ItemWords out;
  out.what = item.name.empty() || item.name == word(item.kind) ? item.designation : item.name + ": " + item.designation;
  const auto more = [&out](const char* label, std::string words) {
    if (!words.empty()) out.notes.emplace_back(label, std::move(words));
  };
  more("mm", sizes(item));
  more("note", remarks(item));
  for (const Exchange& exchange : item.exchanges)
    more(never(exchange.condition) ? "never" : "or",
         exchange.designation + ": " + say(exchange) + ' ' + known("Source: " + exchange.source, exchange.known) + '.');
  if (!item.in_build) more("source", known(item.source, item.known) + '.');
  return out;
}

std::vector<std::string> shopping_heading(const fit::Seating& seating, const std::vector<Item>& items) {
  std::vector<std::string> owned;
  bool wrong = false;
  bool fastens = false;
  for (const Item& item : items) {
    if (item.in_build) owned.emplace_back(word(item.kind));
    wrong = wrong || has(item, Remark::wrong_length) || has(item, Remark::wrong_thread);
    fastens = fastens || item.kind == ItemKind::screw || item.kind == ItemKind::nut;
  }
  std::reverse(owned.begin(), owned.end());  // the drive first
  const std::size_t buy = items.size() - owned.size();
  std::vector<std::string> out = {"To fit " + seating.drive + " in " + seating.place + ": " +
                                  (buy == 0 ? "nothing" : std::to_string(buy) + (buy == 1 ? " thing" : " things")) +
                                  " to buy, " + std::to_string(owned.size()) + (owned.size() == 1 ? " is" : " are") +
                                  " in the build already (" + joined(owned, ", ") + ")."};
  if (wrong && seating.verdict != fit::Verdict::fits)
    out.push_back("As the build has it: " + word(seating.verdict) +
                  ". Its screws are wrong; write those of this list into it and check again before you buy.");
  else if (seating.verdict == fit::Verdict::marginal)
    out.emplace_back("Only some builds fit. Measure before you buy: baywright explain says what.");
  if (!fastens)
    out.emplace_back(
        "The build names no screws: what fastens it (a latch, rails, a bracket's screw) is not in the list.");
  return out;
}

std::string shopping_text(const fit::Seating& seating, const std::vector<Item>& items) {
  std::string text;
  for (const std::string& each : shopping_heading(seating, items)) text += wrapped(each, 0) + '\n';
  for (const bool in_build : {false, true}) {
    const auto here = [in_build](const Item& item) { return item.in_build == in_build; };
    if (!in_build && std::none_of(items.begin(), items.end(), here)) continue;
    text += in_build ? "\nIn the build already\n" : "\nTo buy\n";
    for (const Item& item : items)
      if (here(item)) text += row(item);
  }
  return text;
}

std::string shopping_csv(const std::vector<Item>& items) {
  std::string out = "count,kind,name,designation,in_build,sizes_mm,may_be_replaced_by,never_by,remarks,source,known\n";
  for (const Item& item : items)
    out += std::to_string(item.count) + ',' + std::string(word(item.kind)) + ',' + field(item.name) + ',' +
           field(item.designation) + ',' + (item.in_build ? "yes" : "no") + ',' + field(sizes(item)) + ',' +
           field(exchanges(item, false)) + ',' + field(exchanges(item, true)) + ',' + field(remarks(item)) + ',' +
           field(item.source) + ',' + std::string(tolerance::word(item.known)) + '\n';
  return out;
}

}  // namespace baywright::output
