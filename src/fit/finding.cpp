#include "fit/finding.h"

namespace baywright::fit {

std::string Reason::word(std::string_view name) const {
  for (const auto& [key, value] : words)
    if (key == name) return value;
  return {};
}

double Reason::figure(std::string_view name) const {
  for (const auto& [key, value] : figures)
    if (key == name) return value;
  return 0.0;
}

}  // namespace baywright::fit
