// The drive itself: a card without chips underneath, an adapter that carries it to a place of another form.
#include "parts/adapter.h"
#include "plans/catalogue.h"

#include <algorithm>

namespace baywright::plans {

namespace m2 = standards::m2;

void add_cards(std::vector<Option>& out, const Spot& spot) {
  const build::Drive& drive = spot.drive;
  const bool below = drive.card.height.starts_with('D') || drive.bottom;
  if (drive.form != parts::Form::m2 || drive.outer() != parts::Form::m2 || !below) return;
  const auto rows = m2::height_codes();
  const double least_lost = std::max_element(rows.begin(), rows.end(), [](const auto& a, const auto& b) {
                              return a.top.nominal < b.top.nominal;
                            })->top.nominal;
  std::string keys;
  for (const char key : drive.card.keys) keys += (keys.empty() ? "" : "+") + std::string(1, key);
  for (const m2::HeightCode& row : rows) {
    if (!row.code.starts_with('S')) continue;
    const std::string use =
        "m2/" + std::to_string(build::size_of(drive.card)) + '-' + std::string(row.code) + '-' + keys;
    Option option;
    option.change = {.kind = Kind::single_sided, .what = drive.name, .to = use, .prices = {Price::less_capacity}};
    Variant variant;
    variant.edits.push_back({.path = {"drive", drive.name, "use"}, .value = build::quoted(use)});
    for (const auto& [given, key] : {std::pair(&drive.top, "top"), std::pair(&drive.bottom, "bottom")})
      if (*given) variant.edits.push_back({build::Edit::What::remove, {"drive", drive.name, key}});
    option.variants = {std::move(variant)};
    option.holds = {"card"};
    option.mends = {fit::Kind::clearance, fit::Kind::height_class};
    option.key = "single-sided card";
    option.amount = least_lost - row.top.nominal;  // the more a code allows, the more cards there are
    option.cautions = {Caution::money_unknown, Caution::data_moves};
    out.push_back(std::move(option));
  }
}

void add_adapters(std::vector<Option>& out, const Spot& spot) {
  const build::Drive& drive = spot.drive;
  if (drive.worn) return;
  const parts::Form form = build::form_of(spot.at());
  for (const parts::Adapter& adapter : parts::adapters()) {
    if (adapter.takes != drive.form || adapter.becomes != form) continue;
    const bool longer = adapter.takes == adapter.becomes;
    if (longer && (drive.card.width != 22 || drive.card.length != adapter.card_length)) continue;
    const std::string wear = "{ adapter = " + build::quoted(adapter.id) + " }";
    Option option;
    option.change = {.kind = Kind::adapter, .what = drive.name, .to = std::string(adapter.id)};
    Variant variant;
    if (drive.wears.empty())
      variant.edits.push_back({.path = {"drive", drive.name, "wears"}, .value = "[" + wear + "]"});
    else
      variant.edits.push_back({build::Edit::What::append, {"drive", drive.name, "wears"}, wear});
    option.variants = {std::move(variant)};
    option.holds = {"adapter", "stand-off"};
    option.key = "adapter " + std::string(adapter.id);
    option.cautions = {Caution::sizes_of_adapter, Caution::money_unknown};
    out.push_back(std::move(option));
  }
}

}  // namespace baywright::plans
