#include "output/part_sizes.h"

#include "tolerance/reading.h"
#include "tolerance/stack.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <set>

namespace baywright::output {

using parts::Coordinate;
using parts::Part;
using tolerance::Dimension;

namespace {

constexpr double same = 1e-6;  // mm

/// The shares of a coordinate, each dimension once.
std::vector<tolerance::Term> terms_of(const Part& part, const Coordinate& length) {
  std::vector<tolerance::Term> out;
  for (std::size_t i = 0; i < part.dimensions.size(); ++i) {
    const double slope = length.slope(static_cast<int>(i));
    if (std::abs(slope) > 1e-12) out.push_back({slope, &part.dimensions[i]});
  }
  return out;
}

/// The one dimension that a length is, if it is.
const Dimension* dimension_of(const Part& part, const Coordinate& length) {
  const auto terms = terms_of(part, length);
  const bool one =
      terms.size() == 1 && std::abs(std::abs(terms.front().sensitivity) - 1.0) < 1e-9 && std::abs(length.base) < same;
  return one ? terms.front().dimension : nullptr;
}

std::optional<PartSize> size_between(const Part& part, const std::vector<double>& values, const Coordinate& low,
                                     const Coordinate& high) {
  const Coordinate length = high - low;
  PartSize out{over_all, {}, low.at(values), high.at(values), false};
  if (!(out.high - out.low > same)) return std::nullopt;
  if (const Dimension* d = dimension_of(part, length)) {
    out.name = d->name;
    const bool backward = terms_of(part, length).front().sensitivity < 0.0;  // a face on the negative side of zero
    out.value = tolerance::in_words(backward ? Dimension{{}, out.high - out.low, d->plus, d->minus, {}} : *d);
    return out;
  }
  const auto terms = terms_of(part, length);
  const tolerance::Spread spread = tolerance::spread(terms, tolerance::Method::worst);
  out.summed = terms.size() > 1;
  out.value = tolerance::in_words(Dimension{{}, out.high - out.low, spread.down, spread.up, {}});
  return out;
}

}  // namespace

std::vector<PartSize> sizes_along(const Part& part, int axis, std::size_t most) {
  const std::vector<double> values = parts::nominal_values(part);
  const auto side = static_cast<std::size_t>(axis);
  std::set<const Dimension*> shown;
  std::vector<PartSize> out;
  std::vector<PartSize> others;
  const auto add = [&](std::vector<PartSize>& list, const Coordinate& low, const Coordinate& high) {
    const Dimension* d = dimension_of(part, high - low);
    if (d != nullptr && !shown.insert(d).second) return;
    if (auto size = size_between(part, values, low, high)) list.push_back(std::move(*size));
  };
  add(out, parts::outer_face(part, axis, false), parts::outer_face(part, axis, true));
  for (const parts::Body& body : part.bodies) {
    const Coordinate& low = body.low[side];
    const Coordinate& high = body.high[side];
    if (dimension_of(part, high - low) != nullptr) add(others, low, high);
    for (const Coordinate* face : {&low, &high})  // how far a face is from the part's origin
      if (dimension_of(part, *face) != nullptr) {
        const bool beyond = face->at(values) > 0.0;
        add(others, beyond ? Coordinate(0.0) : *face, beyond ? *face : Coordinate(0.0));
      }
  }
  std::stable_sort(others.begin(), others.end(),
                   [](const PartSize& a, const PartSize& b) { return a.high - a.low > b.high - b.low + same; });
  for (PartSize& size : others)
    if (out.size() < most) out.push_back(std::move(size));
  return out;
}

}  // namespace baywright::output
