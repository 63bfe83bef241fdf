#include "output/more_words.h"

namespace baywright::output {

std::string say_mesh(const fit::Reason&) {
  return {};
}

}  // namespace baywright::output
