#include "output/survey_line.h"

#include "output/words.h"

#include <cmath>
#include <cstdio>
#include <nlohmann/json.hpp>

namespace baywright::output {

using Json = nlohmann::ordered_json;

namespace {

constexpr std::string_view verdict_fits = R"(,"verdict":"fits")";

std::string text(std::string_view value) {
  return Json(std::string(value)).dump(-1, ' ', false, Json::error_handler_t::replace);
}

Json figure(double value) {
  if (!std::isfinite(value)) return nullptr;
  return std::round(value * 1e6) / 1e6;  // a millionth of a millimetre; shorter lines
}

}  // namespace

std::string survey_head(std::string_view host, std::string_view drive, std::uint64_t made_from) {
  char number[24];
  std::snprintf(number, sizeof number, "%016llx", static_cast<unsigned long long>(made_from));
  return "{\"made_from\":\"" + std::string(number) + "\",\"host\":" + text(host) + ",\"drive\":" + text(drive);
}

std::string survey_place(std::string_view place) {
  return ",\"place\":" + text(place);
}

bool survey_says_fits(std::string_view line, std::size_t head) {
  return line.substr(head).starts_with(verdict_fits);
}

std::string survey_tail(const fit::Seating& seating, tolerance::Method method) {
  std::string out = survey_place(seating.place) + ",\"verdict\":" + text(word(seating.verdict));
  Json rest;
  const bool known = seating.share && seating.verdict != fit::Verdict::undecided;
  rest["share_that_fits"] = known ? figure(*seating.share) : Json(nullptr);
  rest["form_factor"] = word(seating.questions.form_factor.answer);
  rest["interface"] = word(seating.questions.interface.answer);
  rest["bus"] = word(seating.questions.bus.answer);
  if (seating.deciding) {
    const fit::Finding& finding = seating.findings[*seating.deciding];
    rest["closest"] = {{"to", finding.between[1]},
                       {"nominal", figure(finding.gap->nominal)},
                       {"min", figure(finding.gap->min)},
                       {"max", figure(finding.gap->max)},
                       {"asked", figure(finding.gap->asked)}};
  }
  if (!seating.out_first.empty()) rest["out_first"] = seating.out_first;
  if (!seating.findings.empty() && seating.findings.front().verdict &&
      *seating.findings.front().verdict != fit::Verdict::fits)
    rest["why"] = say(seating.findings.front(), method);
  out += ',' + rest.dump(-1, ' ', false, Json::error_handler_t::replace).substr(1) + '\n';
  return out;
}

}  // namespace baywright::output
