#include "tolerance/dimension.h"

namespace baywright::tolerance {

std::string_view word(Known known) {
  switch (known) {
    case Known::read:
      return "read";
    case Known::secondary:
      return "secondary";
    case Known::practice:
      return "practice";
    case Known::memory:
      return "memory";
    case Known::measured:
      return "measured";
    case Known::derived:
      return "derived";
  }
  return "memory";  // no such enumerator: the weakest claim
}

}  // namespace baywright::tolerance
