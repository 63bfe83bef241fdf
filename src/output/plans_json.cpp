#include "output/plan_words.h"
#include "output/plans_text.h"
#include "output/words.h"

#include <cmath>
#include <nlohmann/json.hpp>

namespace baywright::output {

namespace {

using Json = nlohmann::ordered_json;

Json figure(double value) {
  if (!std::isfinite(value)) return nullptr;
  const double rounded = std::round(value * 1e9) / 1e9;
  return rounded == 0.0 ? 0.0 : rounded;  // no minus zero
}

Json change_json(const plans::Change& change) {
  Json out;
  out["kind"] = std::string(plans::word(change.kind));
  out["what"] = change.what;
  out["to"] = change.to;
  out["from"] = figure(change.from);
  out["value"] = figure(change.value);
  if (change.kind == plans::Kind::other_pad) out["pressed"] = figure(change.pressed);
  if (change.screw > 0.0) out["screw"] = figure(change.screw);
  if (change.spacer > 0.0) out["spacer"] = figure(change.spacer);
  if (!change.through.empty())
    out["stands_out"] = {{"part", change.through}, {"by", figure(change.out)}, {"most", figure(change.out_most)}};
  if (change.kind == plans::Kind::opening)
    out["cut"] = {{"low", {figure(change.cut[0]), figure(change.cut[1])}},
                  {"high", {figure(change.cut[2]), figure(change.cut[3])}}};
  out["say"] = say(change);
  out["prices"] = Json::array();
  for (const plans::Price price : change.prices) out["prices"].push_back(std::string(plans::word(price)));
  out["reversible"] = change.reversible;
  return out;
}

Json edit_json(const build::Edit& edit) {
  using What = build::Edit::What;
  Json out;
  out["what"] = edit.what == What::set ? "set" : edit.what == What::remove ? "remove" : "append";
  out["path"] = Json::array();
  for (const build::Key& key : edit.path) std::visit([&](const auto& value) { out["path"].push_back(value); }, key);
  if (edit.what != What::remove) out["value"] = edit.value;
  return out;
}

Json result_json(const fit::Seating& seating, double room, const std::string& say_it) {
  return {{"verdict", word(seating.verdict)}, {"room", figure(room)}, {"say", say_it}};
}

Json plan_json(const plans::Plan& plan, std::size_t number, tolerance::Method method) {
  Json out;
  out["number"] = number;
  out["drive"] = plan.drive;
  out["place"] = plan.place;
  out["say"] = say(plan);
  out["changes"] = Json::array();
  for (const plans::Change& change : plan.changes) out["changes"].push_back(change_json(change));
  out["after"] = result_json(plan.after, plan.room, say_result(plan, method));
  out["cautions"] = Json::array();
  for (const plans::Caution caution : plan.cautions)
    out["cautions"].push_back({{"caution", std::string(plans::word(caution))}, {"say", say(plan, caution)}});
  out["edits"] = Json::array();
  for (const build::Edit& edit : plan.edits) out["edits"].push_back(edit_json(edit));
  return out;
}

}  // namespace

std::string plans_json(const plans::Search& search, const std::optional<plans::Tallest>& tallest) {
  Json out;
  out["schema"] = 1;
  out["build"] = search.title;
  out["method"] = word(search.method);
  out["clearance"] = figure(search.clearance);
  out["drive"] = search.drive;
  out["place"] = search.place;
  double room = std::numeric_limits<double>::infinity();
  if (search.before.deciding) {
    const fit::GapFigures& gap = *search.before.findings[*search.before.deciding].gap;
    room = gap.min - gap.asked;
  }
  out["before"] = result_json(search.before, room,
                              search.before.findings.empty() ? word(search.before.verdict)
                                                             : say(search.before.findings.front(), search.method));
  out["whole"] = search.whole;
  out["tried"] = search.tried;
  out["plans"] = Json::array();
  for (std::size_t i = 0; i < search.plans.size(); ++i)
    out["plans"].push_back(plan_json(search.plans[i], i + 1, search.method));
  out["contradiction"] = nullptr;
  if (search.contradiction) {
    const plans::Contradiction& why = *search.contradiction;
    Json& one = out["contradiction"] = Json::object();
    one["between"] = {why.first, why.second};
    one["length"] = nullptr;
    if (!why.dimension.empty())
      one["length"] = {{"name", why.dimension}, {"from", figure(why.from)}, {"value", figure(why.value)}};
    one["say"] = say(why);
  }
  out["tallest"] = nullptr;
  if (tallest)
    out["tallest"] = {{"height", figure(tallest->height)},
                      {"marginal", figure(tallest->marginal)},
                      {"now", figure(tallest->now)},
                      {"against", tallest->against}};
  return out.dump(2) + '\n';
}

}  // namespace baywright::output
