#include "plans/part_words.h"

#include "parts/naming.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <sstream>
#include <vector>

namespace baywright::plans {

namespace fasteners = standards::fasteners;

std::variant<PartWords, std::string> part_words(const std::string& text, std::span<const std::string_view> keys) {
  PartWords out;
  std::string* value = &out.name;
  std::istringstream words(text);
  for (std::string word; words >> word;) {
    if (!out.name.empty() && std::find(keys.begin(), keys.end(), word) != keys.end()) {
      const auto [place, fresh] = out.values.emplace(word, "");
      if (!fresh) return '`' + word + "` stands there twice";
      value = &place->second;
      continue;
    }
    *value += (value->empty() ? "" : " ") + word;
  }
  for (const auto& [key, given] : out.values)
    if (given.empty()) return '`' + key + "` wants a value behind it";
  return out;
}

std::variant<double, std::string> length_of(const PartWords& words, const std::string& key, double otherwise,
                                            double least, double most) {
  const auto found = words.values.find(key);
  if (found == words.values.end()) return otherwise;
  const auto read = tolerance::read_length(found->second);
  if (const auto* wrong = std::get_if<tolerance::Misread>(&read)) return '`' + key + "`: " + wrong->what;
  const auto& length = std::get<tolerance::Length>(read);
  if (length.limits_given) return '`' + key + "` has limits, and printing has its own: write a figure without";
  constexpr double nothing = 1e-9;  // what rounding may take from a figure
  if (!(length.nominal >= least - nothing && length.nominal <= most + nothing))
    return '`' + key + "` is " + tolerance::in_words(least) + " to " + tolerance::in_words(most) + " mm, not " +
           tolerance::in_words(length.nominal);
  return length.nominal;
}

std::string no_thread(const std::string& name) {
  std::vector<std::string> known;
  for (const fasteners::Thread& each : fasteners::threads()) known.emplace_back(each.id);
  return "there is no thread `" + name + "`; it must be " + parts::any_of(known);
}

const fasteners::PressIn* heat_set_insert(const fasteners::Thread& thread) {
  for (const fasteners::PressIn& each : fasteners::press_ins())
    if (each.kind == "heat-set insert" && each.thread == thread.id) return &each;
  return nullptr;
}

}  // namespace baywright::plans
