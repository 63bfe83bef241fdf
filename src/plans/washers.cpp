#include "plans/washers.h"

#include "standards/fasteners.h"

#include <algorithm>
#include <cmath>

namespace baywright::plans {

namespace fasteners = standards::fasteners;

namespace {

constexpr double seat = 1.0;                 // mm round a hole, under a spacer: common practice, no source
constexpr double spacer_in_diameters = 2.0;  // how wide it is, as a seating has it: common practice, no source

const fit::Finding* screw_finding(const fit::Seating& seating, fit::Code code) {
  for (const fit::Finding& finding : seating.findings)
    if (finding.why.code == code && finding.gap) return &finding;
  return nullptr;
}

}  // namespace

bool wide_for(const std::string& thread, double widest) {
  return widest > fasteners::thread(thread)->hole.medium.high();
}

UnderHeads washers_under_heads(const build::Bay& bay, const std::string& thread, const fit::Seating& seating,
                               double longer) {
  const fasteners::Washer* row = nullptr;
  for (const fasteners::Washer& each : fasteners::washers())
    if (each.standard == "ISO 7089" && each.thread == thread) row = &each;
  const double widest = bay.fixing->diameter.dimension.high();
  if (row == nullptr || !wide_for(thread, widest) || !(row->outside.low() > widest)) return {};
  const UnderHeads as_long{Washers::wanted, longer};
  if (bay.standoffs || !bay.fixing->length) return as_long;
  const fit::Finding* shallow = screw_finding(seating, fit::Code::screw_short);
  const fit::Finding* deep = screw_finding(seating, fit::Code::screw_long);
  if (shallow == nullptr || shallow->gap->min + longer - row->thickness.high() >= 0.0) return as_long;
  const double length = bay.fixing->length->dimension.nominal;
  for (const double next : fasteners::screw_lengths(thread)) {
    const double more = next - length;
    if (more > longer + 1e-9 && shallow->gap->min + more - row->thickness.high() >= 0.0 && deep != nullptr &&
        deep->gap->min - more + row->thickness.low() >= 0.0)
      return {Washers::wanted, more};
  }
  return {Washers::would_not_hold, longer};
}

double seat_asked(double hole) {
  return hole + 2.0 * seat;
}

bool wants_wide_spacer(const std::string& thread, double hole) {
  return !(spacer_in_diameters * fasteners::thread(thread)->major.nominal >= seat_asked(hole));
}

int washers_between(const tolerance::Dimension& spacers, const std::string& thread) {
  const auto sold = fasteners::spacer_lengths();
  const bool sold_so = std::any_of(sold.begin(), sold.end(), [&](double length) {
    return length >= spacers.low() - 1e-9 && length <= spacers.high() + 1e-9;
  });
  for (const fasteners::Washer& each : fasteners::washers()) {
    if (each.standard != "ISO 7089" || each.thread != (thread.empty() ? "M3" : thread)) continue;
    if (sold_so && spacers.source != each.thickness.source) continue;  // a plan's washers say where they are from
    for (const int count : {1, 2})
      if (std::abs(count * each.thickness.nominal - spacers.nominal) < 1e-6) return count;
  }
  return 0;
}

}  // namespace baywright::plans
