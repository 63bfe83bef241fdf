#include "viewer/plan_words.h"

#include "output/plan_words.h"
#include "output/stack_column.h"

#include <cmath>

namespace baywright::viewer {

TileWords words_of(const plans::Plan& plan) {
  TileWords out{output::say(plan), {}, {}};
  for (const plans::Change& change : plan.changes) {
    for (const plans::Price price : change.prices) {
      const std::string words = output::in_words(price);
      if (out.price.find(words) == std::string::npos) out.price += (out.price.empty() ? "" : ", ") + words;
    }
  }
  if (!out.change.empty() && out.change[0] >= 'a' && out.change[0] <= 'z')
    out.change[0] = static_cast<char>(out.change[0] - 'a' + 'A');
  if (plan.after.deciding) {
    const fit::GapFigures& gap = *plan.after.findings[*plan.after.deciding].gap;
    const fit::Code about = plan.after.findings[*plan.after.deciding].why.code;
    out.result = output::over_or_clear(gap.nominal, gap.asked, about);
    if (std::isfinite(gap.min)) out.result += ", worst " + output::over_or_clear(gap.min, gap.asked, about);
  }
  return out;
}

}  // namespace baywright::viewer
