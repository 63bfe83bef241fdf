#pragma once
// Sentences of `say(Reason)` by what they are about, each in a file of its own; empty where the code is another's.
// Internal.
#include "build/build.h"
#include "fit/finding.h"

#include <string>

namespace baywright::output {

[[nodiscard]] std::string say_way(const fit::Reason& why);     // way_words.cpp
[[nodiscard]] std::string say_access(const fit::Reason& why);  // access_words.cpp
[[nodiscard]] std::string say_mesh(const fit::Reason& why);    // mesh_words.cpp
[[nodiscard]] std::string say_length(const fit::Reason& why);  // length_words.cpp: what the one that is "?" has to be

/// How it is put in, by a reason about a way: "it enters its socket at 20 degrees and is turned down flat".
[[nodiscard]] std::string goes_in(const fit::Reason& why);  // way_words.cpp
/// What reaches a screw or nut, with its article: "an ordinary PH0 driver", "fingers".
[[nodiscard]] std::string tool_in_words(const fit::Reason& why);  // access_words.cpp

/// How lengths are written in sentences: to hundredths.
[[nodiscard]] std::string in_hundredths(double mm);
/// The same, rounded down: what is promised is there.
[[nodiscard]] std::string down_to_hundredths(double mm);
/// The same, rounded up: what stands in the way is no more.
[[nodiscard]] std::string up_to_hundredths(double mm);
/// "M3 x 6", "6-32 x 4.76".
[[nodiscard]] std::string in_words(const build::Screw& screw);
[[nodiscard]] std::string capital(std::string text);

}  // namespace baywright::output
