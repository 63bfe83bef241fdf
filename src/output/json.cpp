#include "output/json.h"

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

Json point(const geometry::Vec3& p) {
  return Json::array({figure(p.x), figure(p.y), figure(p.z)});
}

Json question(const fit::Question& question) {
  return {{"answer", word(question.answer)}, {"why", say(question.why)}};
}

Json chain(const fit::ChainLink& link) {
  return {{"dimension", link.dimension.name},
          {"nominal", figure(link.dimension.nominal)},
          {"minus", figure(link.dimension.minus)},
          {"plus", figure(link.dimension.plus)},
          {"sensitivity", figure(link.sensitivity)},
          {"source", link.dimension.source},
          {"known", std::string(tolerance::word(link.dimension.known))}};
}

Json finding(const fit::Finding& finding, tolerance::Method method) {
  Json out;
  out["kind"] = word(finding.kind);
  out["verdict"] = finding.verdict ? word(*finding.verdict) : "note";
  out["between"] = Json::array({finding.between[0], finding.between[1]});
  out["say"] = say(finding, method);
  if (finding.gap)
    out["gap"] = {{"nominal", figure(finding.gap->nominal)},
                  {"min", figure(finding.gap->min)},
                  {"max", figure(finding.gap->max)},
                  {"asked", figure(finding.gap->asked)}};
  else
    out["gap"] = nullptr;
  out["at"] = point(finding.at);
  out["toward"] = point(finding.toward);
  if (finding.shared) out["shared"] = {{"low", point(finding.shared->low)}, {"high", point(finding.shared->high)}};
  out["chain"] = Json::array();
  for (const fit::ChainLink& link : finding.chain) out["chain"].push_back(chain(link));
  const std::string need = say_need(finding);
  if (!need.empty()) out["need"] = need;
  return out;
}

}  // namespace

namespace {

Json together_json(const fit::Together& together, tolerance::Method method) {
  Json out;
  out["all"] = together.left.empty();
  out["assignment"] = Json::array();
  for (const fit::Assigned& each : together.assigned)
    out["assignment"].push_back({{"drive", each.drive}, {"place", each.place}});
  out["left"] = Json::array();
  for (const fit::Left& each : together.left) {
    Json left = {{"drive", each.drive},
                 {"why", each.fits_alone.empty() ? "it fits nowhere, not even alone"
                                                 : "no place is left where it fits beside the others"},
                 {"in_the_way", Json::array()}};
    for (const fit::InTheWay& way : each.in_the_way) {
      Json one = {{"place", way.place}};
      if (!way.drive.empty()) one["drive"] = way.drive, one["at"] = way.at;
      if (way.between) one["finding"] = finding(*way.between, method);
      left["in_the_way"].push_back(std::move(one));
    }
    out["left"].push_back(std::move(left));
  }
  out["costs"] = Json::array();
  for (const fit::Cost& each : together.costs) {
    std::string leaves;
    for (const auto& link : each.leaves) leaves += (leaves.empty() ? "" : " or ") + standards::links::in_words(link);
    out["costs"].push_back(
        {{"place", each.place}, {"with", each.with}, {"leaves", leaves.empty() ? "nothing" : leaves}});
  }
  return out;
}

}  // namespace

std::string check_json(const fit::Check& check, const fit::Together* together) {
  Json out;
  out["schema"] = 1;
  out["build"] = check.title;
  out["method"] = word(check.method);
  const bool sampled = check.method == tolerance::Method::sampled;
  if (sampled) {
    out["builds"] = check.sampling.builds;
    out["seed"] = check.sampling.seed;
  }
  out["clearance"] = figure(check.clearance);
  out["seatings"] = Json::array();
  for (const fit::Seating& seating : check.seatings) {
    Json one;
    one["drive"] = seating.drive;
    one["place"] = seating.place;
    one["verdict"] = word(seating.verdict);
    one["share_that_fits"] = seating.share ? figure(*seating.share) : Json(nullptr);
    if (sampled) {
      one["share_low"] = seating.sure ? figure(seating.sure->low) : Json(nullptr);
      one["share_high"] = seating.sure ? figure(seating.sure->high) : Json(nullptr);
    }
    one["questions"] = {{"form factor", question(seating.questions.form_factor)},
                        {"interface", question(seating.questions.interface)},
                        {"bus", question(seating.questions.bus)}};
    one["findings"] = Json::array();
    for (const fit::Finding& each : seating.findings) one["findings"].push_back(finding(each, check.method));
    out["seatings"].push_back(std::move(one));
  }
  out["notes"] = Json::array();
  for (const fit::Finding& note : check.notes) out["notes"].push_back(finding(note, check.method));
  if (together != nullptr) out["together"] = together_json(*together, check.method);
  return out.dump(2) + '\n';
}

}  // namespace baywright::output
