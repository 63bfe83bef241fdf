#include "plans/plan.h"

namespace baywright::plans {

std::string_view word(Kind kind) {
  switch (kind) {
    case Kind::other_heatsink: return "other heatsink";
    case Kind::lower_heatsink: return "lower heatsink";
    case Kind::no_heatsink: return "no heatsink";
    case Kind::other_pad: return "other pad";
    case Kind::single_sided: return "single-sided card";
    case Kind::other_standoff: return "other stand-off";
    case Kind::spacer: return "spacer";
    case Kind::other_place: return "other place";
    case Kind::adapter: return "adapter";
    case Kind::turned: return "turned";
    case Kind::opening: return "opening";
    case Kind::other_drive: return "other drive";
  }
  return {};
}

}  // namespace baywright::plans
