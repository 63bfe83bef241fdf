#include "output/rank_rows.h"

#include "output/heat_words.h"
#include "output/plan_words.h"
#include "output/value_words.h"
#include "output/words.h"

#include <array>
#include <charconv>
#include <cmath>
#include <nlohmann/json.hpp>

namespace baywright::output {

using Json = nlohmann::ordered_json;
using plans::Buying;
using value::Column;

namespace {

/// The figures of a row, under the names that they have in both.
struct Figure {
  std::string_view name;
  std::optional<double> value;
};

std::vector<Figure> figures(const Buying& rank, std::size_t i) {
  const value::Offer& offer = rank.offers[i];
  const value::Appraisal& of = rank.appraisals[i];
  const auto column = [&](Column each) { return value::figure_of(each, offer, of); };
  const auto celsius = [](double kelvin) { return kelvin - thermal::ice_point; };
  std::vector<Figure> out = {{"price", offer.price},
                             {"capacity_gb", offer.gigabytes},
                             {"shown_tib", of.tebibytes},
                             {"price_per_gb", of.per_gigabyte},
                             {"read_mb_s", column(Column::read)},
                             {"write_mb_s", column(Column::write)},
                             {"random_read_iops", offer.random_read},
                             {"random_write_iops", offer.random_write},
                             {"link_mb_s", of.ceiling ? std::optional(of.ceiling->megabytes) : std::nullopt},
                             {"lost_share", of.ceiling ? std::optional(of.ceiling->lost) : std::nullopt},
                             {"tbw", of.tbw},
                             {"price_per_tbw", of.per_tbw},
                             {"dwpd", of.dwpd},
                             {"years", of.years},
                             {"warranty_years", of.warranty},
                             {"watts", offer.watts},
                             {"idle_watts", offer.idle_watts},
                             {"score", rank.scores.empty() ? std::nullopt : rank.scores[i]}};
  std::optional<double> low;
  std::optional<double> high;
  if (rank.tried[i] && rank.tried[i]->heat.warmth) {
    const thermal::Interval found = rank.tried[i]->heat.warmth->composite();
    low = celsius(found.low);
    if (std::isfinite(found.high)) high = celsius(found.high);
  }
  out.push_back({"warm_from_c", low});
  out.push_back({"warm_to_c", high});
  return out;
}

std::string field(const std::string& text) {
  if (text.find_first_of(",\"\n\r") == std::string::npos) return text;
  std::string out = "\"";
  for (const char c : text) out += c == '"' ? "\"\"" : std::string(1, c);
  return out + '"';
}

std::string number(const std::optional<double>& value) {
  if (!value || !std::isfinite(*value)) return {};
  std::array<char, 64> text{};
  const double rounded = std::round(*value * 1e6) / 1e6;
  const auto [end, fault] =
      std::to_chars(text.data(), text.data() + text.size(), rounded == 0.0 ? 0.0 : rounded, std::chars_format::fixed);
  return {text.data(), end};
}

Json json_number(const std::optional<double>& value) {
  if (!value || !std::isfinite(*value)) return nullptr;
  return std::round(*value * 1e9) / 1e9;
}

const fit::Finding* deciding(const fit::Seating& seating) {
  return seating.deciding ? &seating.findings[*seating.deciding] : nullptr;
}

Json fit_json(const plans::Tried& tried, tolerance::Method method) {
  Json out;
  out["place"] = tried.seating.place;
  out["verdict"] = word(tried.seating.verdict);
  out["deciding"] = nullptr;
  if (const fit::Finding* finding = deciding(tried.seating)) {
    const auto mm = [](double length) {
      return json_number(std::isfinite(length) ? std::optional(length) : std::nullopt);
    };
    out["deciding"] = {{"between", Json::array({finding->between[0], finding->between[1]})},
                       {"nominal", mm(finding->gap->nominal)},
                       {"min", mm(finding->gap->min)},
                       {"max", mm(finding->gap->max)},
                       {"asked", mm(finding->gap->asked)}};
  }
  const bool kept_out = tried.seating.verdict != fit::Verdict::fits && !tried.seating.findings.empty() &&
                        tried.seating.findings.front().verdict.has_value();
  out["plan"] = nullptr;
  if (const auto& plan = tried.plan) out["plan"] = {{"say", say(*plan)}, {"result", say_result(*plan, method)}};
  out["why"] = kept_out ? Json(say(tried.seating.findings.front(), method)) : Json(nullptr);
  return out;
}

}  // namespace

std::string rank_csv(const Buying& rank) {
  std::string out = "rank,name,currency,unbeaten";
  if (rank.order.empty()) return out + '\n';
  for (const Figure& figure : figures(rank, rank.order.front())) out += ',' + std::string(figure.name);
  out += ",place,verdict,gap_mm,asked_mm,against,plan,remarks\n";
  std::size_t at = 0;
  for (const std::size_t i : rank.order) {
    out += std::to_string(++at) + ',' + field(rank.offers[i].name) + ',' + field(rank.currency) + ',' +
           (rank.unbeaten[i] ? "yes" : "no");
    for (const Figure& figure : figures(rank, i)) out += ',' + number(figure.value);
    if (rank.tried[i]) {
      const fit::Seating& seating = rank.tried[i]->seating;
      const fit::Finding* finding = deciding(seating);
      out += ',' + field(seating.place) + ',' + word(seating.verdict) + ',';
      if (finding != nullptr)
        out += number(finding->gap->min) + ',' + number(finding->gap->asked) + ',' + field(finding->between[1]);
      else
        out += ",,";
      out += ',' + (rank.tried[i]->plan ? field(say(*rank.tried[i]->plan)) : std::string());
    } else {
      out += ",,,,,,";
    }
    std::string remarks;
    for (const value::Remark& remark : rank.appraisals[i].remarks)
      remarks += (remarks.empty() ? "" : "; ") + word(remark.code);
    out += ',' + field(remarks) + '\n';
  }
  return out;
}

std::string rank_json(const Buying& rank) {
  Json out;
  out["schema"] = 1;
  out["build"] = rank.build.empty() ? Json(nullptr) : Json(rank.build);
  out["currency"] = rank.currency;
  out["daily_gb"] = json_number(rank.daily ? std::optional(rank.daily->gigabytes) : std::nullopt);
  out["now"] = rank.now == nullptr ? Json(nullptr) : Json(std::string(rank.now->name));
  out["take"] = rank.choice.taken ? Json(rank.offers[*rank.choice.taken].name) : Json(nullptr);
  out["drives"] = Json::array();
  for (const std::size_t i : rank.order) {
    const value::Appraisal& of = rank.appraisals[i];
    Json one;
    one["name"] = rank.offers[i].name;
    one["unbeaten"] = static_cast<bool>(rank.unbeaten[i]);
    one["standing"] = word(rank.standings[i]);
    one["dram"] = word(rank.offers[i].map);
    for (const Figure& figure : figures(rank, i)) one[std::string(figure.name)] = json_number(figure.value);
    one["link"] = of.ceiling && of.ceiling->link ? Json(standards::links::in_words(*of.ceiling->link)) : Json(nullptr);
    one["fit"] = rank.tried[i] ? fit_json(*rank.tried[i], rank.method) : Json(nullptr);
    one["heat"] = Json::array();
    if (rank.tried[i])
      for (const std::string& line : say(rank.tried[i]->heat)) one["heat"].push_back(line);
    one["outlook"] =
        rank.tried[i] && rank.tried[i]->heat.warmth ? Json(word(rank.tried[i]->heat.outlook)) : Json(nullptr);
    one["upgrade"] = of.upgrade && rank.now != nullptr ? Json(say(*of.upgrade, *rank.now)) : Json(nullptr);
    one["remarks"] = Json::array();
    for (const value::Remark& remark : of.remarks)
      one["remarks"].push_back({{"kind", word(remark.code)}, {"say", say(remark, rank.currency)}});
    out["drives"].push_back(std::move(one));
  }
  return out.dump(2, ' ', false, Json::error_handler_t::replace) + '\n';
}

}  // namespace baywright::output
