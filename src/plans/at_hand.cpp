#include "plans/at_hand.h"

#include "build/edit.h"
#include "standards/fasteners.h"

#include <algorithm>
#include <cmath>

namespace baywright::plans {

namespace fasteners = standards::fasteners;

std::vector<Lift> washers_at_hand(const build::Build& build, std::string_view thread) {
  std::vector<Lift> out;
  if (build.shelf.spacers) return out;
  for (const fasteners::Washer& washer : fasteners::washers())
    if (washer.standard == "ISO 7089" && washer.thread == thread)
      for (const int count : {1, 2})
        out.push_back({count == 1 ? "a washer" : "two washers", count * washer.thickness.nominal,
                       count * washer.thickness.plus, washer.thickness.source, washer.thickness.known});
  return out;
}

std::vector<double> spacers_at_hand(const build::Build& build) {
  if (build.shelf.spacers) return *build.shelf.spacers;
  const auto sold = fasteners::spacer_lengths();
  return {sold.begin(), sold.end()};
}

Lift spacers_of(double length) {
  const tolerance::Dimension& sold = fasteners::spacer_length_limit();
  return {"spacers", length, sold.plus, "moulded nylon: " + sold.source, sold.known};
}

std::vector<double> screws_at_hand(const build::Build& build, const std::string& thread, double wanted) {
  std::vector<double> out;
  if (build.shelf.screws) {
    for (const build::Screw& screw : *build.shelf.screws)
      if (screw.thread == thread) out.push_back(screw.length);
    std::sort(out.begin(), out.end());
  } else {
    const auto sold = fasteners::screw_lengths(thread);
    out.assign(sold.begin(), sold.end());
  }
  std::stable_sort(out.begin(), out.end(),
                   [&](double a, double b) { return std::abs(a - wanted) < std::abs(b - wanted); });
  return out;
}

std::string screw_text(const std::string& thread, double length) {
  std::string figure = build::length_text(length, 0.0, 0.0);
  std::erase(figure, '"');
  return build::quoted(thread + " x " + figure);
}

void add_source(tolerance::Dimension& dimension, const Lift& lift) {
  dimension.source += (dimension.source.empty() ? "" : "; ") + std::string("and ") + std::string(lift.what);
}

}  // namespace baywright::plans
