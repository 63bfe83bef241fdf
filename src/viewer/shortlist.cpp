#include "viewer/shortlist.h"

namespace baywright::viewer {

std::variant<Shortlist, parts::Fault> open_shortlist(const std::filesystem::path& file, const plans::Wanted& wanted) {
  auto read = value::read_shortlist(file);
  if (auto* fault = std::get_if<parts::Fault>(&read)) return std::move(*fault);
  return Shortlist{file, std::get<value::Shortlist>(std::move(read)), wanted};
}

plans::Buying in_order(plans::Buying buying, value::Column column, bool in_a_machine) {
  buying.by.column = column;
  buying.order = value::ranked(buying.offers, buying.appraisals, buying.standings, buying.by);
  if (column != value::Column::name)
    buying.choice = value::choice(buying.offers, buying.appraisals, buying.standings, buying.order, in_a_machine);
  return buying;
}

}  // namespace baywright::viewer
