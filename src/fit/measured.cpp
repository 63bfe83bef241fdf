#include "fit/measured.h"

#include "fit/chain.h"

#include <utility>

namespace baywright::fit {

Finding measured(Finding out, double nominal, const std::vector<ChainLink>& chain, double asked,
                 tolerance::Method method) {
  std::vector<tolerance::Term> terms;
  for (const ChainLink& link : chain) terms.push_back({link.sensitivity, &link.dimension});
  const tolerance::Spread spread = tolerance::spread(terms, method);
  out.gap = GapFigures{nominal, nominal - spread.down, nominal + spread.up, asked};
  out.verdict = verdict_of(out.gap->min, out.gap->max, asked);
  out.share = *out.verdict == Verdict::fits           ? 1.0
              : *out.verdict == Verdict::does_not_fit ? 0.0
                                                      : tolerance::share_at_least(nominal, terms, asked);
  out.chain = chain;
  sort_by_weight(out.chain);
  return out;
}

}  // namespace baywright::fit
