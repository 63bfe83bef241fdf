#pragma once
// What a part to print is asked for by: "2.5in thickness 2 screw M3".
#include "standards/fasteners.h"

#include <map>
#include <span>
#include <string>
#include <string_view>
#include <variant>

namespace baywright::plans {

struct PartWords {
  std::string name;                           // up to the first key
  std::map<std::string, std::string> values;  // what follows each key
};

/// The first word is never a key. Refused, in words: a key twice or without a value.
[[nodiscard]] std::variant<PartWords, std::string> part_words(const std::string& text,
                                                              std::span<const std::string_view> keys);

/// The length behind a key, mm; `otherwise` where the key is not there. Refused, in words: no length, one with limits,
/// one outside of `least` and `most`.
[[nodiscard]] std::variant<double, std::string> length_of(const PartWords& words, const std::string& key,
                                                          double otherwise, double least, double most);

/// "there is no thread `M33`; it must be M1.6, M2 ..."
[[nodiscard]] std::string no_thread(const std::string& name);

/// The heat-set insert of that thread; null: no size of one is known.
[[nodiscard]] const standards::fasteners::PressIn* heat_set_insert(const standards::fasteners::Thread& thread);

}  // namespace baywright::plans
