#include "plans/washers.h"

#include "standards/fasteners.h"

namespace baywright::plans {

namespace fasteners = standards::fasteners;

bool wide_for(const std::string& thread, double widest) {
  return widest > fasteners::thread(thread)->hole.medium.high();
}

Washers washers_under_heads(const build::Bay& bay, const std::string& thread, const fit::Seating& seating,
                            double longer) {
  const fasteners::Washer* row = nullptr;
  for (const fasteners::Washer& each : fasteners::washers())
    if (each.standard == "ISO 7089" && each.thread == thread) row = &each;
  const double widest = bay.fixing->diameter.dimension.high();
  if (row == nullptr || !wide_for(thread, widest)) return Washers::none;
  for (const fit::Finding& finding : seating.findings)
    if (!bay.standoffs && finding.why.code == fit::Code::screw_short && finding.gap &&
        !(finding.gap->min + longer - row->thickness.high() >= 0.0))
      return Washers::would_not_hold;
  return row->outside.low() > widest ? Washers::wanted : Washers::none;
}

}  // namespace baywright::plans
