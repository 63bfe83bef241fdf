#include "value/ranking.h"

#include "parts/naming.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <limits>
#include <numeric>
#include <tuple>

namespace baywright::value {

namespace {

struct Name {
  Column column;
  std::string_view word;
};
constexpr std::array<Name, 11> names{{{Column::name, "name"},
                                      {Column::price, "price"},
                                      {Column::capacity, "capacity"},
                                      {Column::per_gigabyte, "price per GB"},
                                      {Column::read, "read"},
                                      {Column::write, "write"},
                                      {Column::tbw, "tbw"},
                                      {Column::per_tbw, "price per TBW"},
                                      {Column::dwpd, "dwpd"},
                                      {Column::years, "years"},
                                      {Column::warranty, "warranty"}}};

bool same(std::string_view a, std::string_view b) {
  const auto plain = [](char c) {
    return c == '-' || c == '_' ? ' ' : c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  };
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), [&](char x, char y) { return plain(x) == plain(y); });
}

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return text;
}

}  // namespace

std::string_view word(Column column) {
  for (const Name& name : names)
    if (name.column == column) return name.word;
  return {};
}

std::variant<Column, std::string> read_column(std::string_view text) {
  std::vector<std::string> known;
  for (const Name& name : names) {
    if (same(text, name.word)) return name.column;
    known.emplace_back(name.word);
  }
  const std::string meant = parts::nearest(text, known);
  return "there is no column `" + std::string(text) + "`; " +
         (meant.empty() ? "the columns are " + parts::any_of(known) : "did you mean `" + meant + "`?");
}

std::optional<double> figure_of(Column column, const Offer& offer, const Appraisal& appraisal) {
  const auto here = [&](const std::optional<double>& stated, const std::optional<double> Ceiling::*left) {
    if (!appraisal.ceiling) return stated;
    return appraisal.ceiling->link ? *appraisal.ceiling.*left : std::nullopt;
  };
  switch (column) {
    case Column::name:
      return std::nullopt;
    case Column::price:
      return offer.price;
    case Column::capacity:
      return offer.gigabytes;
    case Column::per_gigabyte:
      return appraisal.per_gigabyte;
    case Column::read:
      return here(offer.read, &Ceiling::read);
    case Column::write:
      return here(offer.write, &Ceiling::write);
    case Column::tbw:
      return appraisal.tbw;
    case Column::per_tbw:
      return appraisal.per_tbw;
    case Column::dwpd:
      return appraisal.dwpd;
    case Column::years:
      return appraisal.years;
    case Column::warranty:
      return appraisal.warranty;
  }
  return std::nullopt;
}

bool less_is_better(Column column) {
  return column == Column::price || column == Column::per_gigabyte || column == Column::per_tbw;
}

std::variant<std::vector<Weight>, std::string> read_weights(std::string_view text) {
  std::vector<Weight> out;
  while (!text.empty()) {
    const std::size_t comma = std::min(text.find(','), text.size());
    const std::string_view one = trimmed(text.substr(0, comma));
    text.remove_prefix(std::min(comma + 1, text.size()));
    const std::size_t equals = std::min(one.find('='), one.size());
    const auto column = read_column(trimmed(one.substr(0, equals)));
    if (const auto* why = std::get_if<std::string>(&column)) return *why;
    const std::string_view figure = equals < one.size() ? trimmed(one.substr(equals + 1)) : std::string_view{};
    double weight = 0.0;
    const auto [end, fault] = std::from_chars(figure.data(), figure.data() + figure.size(), weight);
    if (fault != std::errc{} || end != figure.data() + figure.size() || !(weight > 0.0 && weight <= 1000.0))
      return "`" + std::string(one) + "` is no weight; write it as price=3, above 0 and up to 1000";
    const Column found = std::get<Column>(column);
    if (found == Column::name) return std::string("a name has no weight; weigh price, read and the like");
    if (std::any_of(out.begin(), out.end(), [&](const Weight& each) { return each.column == found; }))
      return "`" + std::string(word(found)) + "` is weighed twice; keep one of them";
    out.push_back({found, weight});
  }
  if (out.empty()) return std::string("no weight is given; write them as price=3,read=1");
  return out;
}

std::vector<std::optional<double>> scores(std::span<const Offer> offers, std::span<const Appraisal> appraisals,
                                          std::span<const Weight> weights) {
  std::vector<std::optional<double>> out(offers.size(), 0.0);
  double all = 0.0;
  for (const Weight& weight : weights) {
    all += weight.weight;
    double low = std::numeric_limits<double>::infinity();
    double high = -low;
    for (std::size_t i = 0; i < offers.size(); ++i)
      if (const auto figure = figure_of(weight.column, offers[i], appraisals[i]); figure && is_a_drive(offers[i])) {
        low = std::min(low, *figure);
        high = std::max(high, *figure);
      }
    for (std::size_t i = 0; i < offers.size(); ++i) {
      const auto figure = figure_of(weight.column, offers[i], appraisals[i]);
      if (!figure || !out[i] || !is_a_drive(offers[i])) {
        out[i] = std::nullopt;
        continue;
      }
      const double share = high > low ? (*figure - low) / (high - low) : 1.0;
      *out[i] += weight.weight * (high > low && less_is_better(weight.column) ? 1.0 - share : share);
    }
  }
  for (std::optional<double>& score : out) {
    if (!(all > 0.0)) score = std::nullopt;
    if (score) *score /= all;
  }
  return out;
}

std::vector<bool> unbeaten(std::span<const Offer> offers, std::span<const Appraisal> appraisals,
                           std::span<const Standing> standings) {
  const auto counts = [&](std::size_t i) { return is_a_drive(offers[i]) && standings[i] != Standing::goes_not; };
  std::vector<bool> out;
  for (std::size_t b = 0; b < offers.size(); ++b) {
    bool stays = counts(b);
    for (std::size_t a = 0; a < offers.size() && stays; ++a)
      stays = a == b || !counts(a) || !beats(offers[a], appraisals[a], offers[b], appraisals[b]);
    out.push_back(stays);
  }
  return out;
}

std::vector<std::size_t> ranked(std::span<const Offer> offers, std::span<const Appraisal> appraisals,
                                std::span<const Standing> standings, const Order& order) {
  std::vector<std::size_t> out(offers.size());
  std::iota(out.begin(), out.end(), std::size_t{0});
  if (order.column == Column::name) {
    std::stable_sort(out.begin(), out.end(),
                     [&](std::size_t a, std::size_t b) { return offers[a].name < offers[b].name; });
    return out;
  }
  const bool by_score = !order.column && !order.weights.empty();
  const std::vector<std::optional<double>> score = scores(offers, appraisals, order.weights);
  const Column column = order.column.value_or(Column::per_gigabyte);
  const auto cost = [&](std::size_t i) -> std::optional<double> {
    const auto figure = by_score ? score[i] : figure_of(column, offers[i], appraisals[i]);
    if (!figure) return std::nullopt;
    return by_score || !less_is_better(column) ? -*figure : *figure;
  };
  const auto key = [&](std::size_t i) {
    const auto figure = cost(i);
    const auto& price = appraisals[i].per_gigabyte;
    return std::tuple(standings[i], !is_a_drive(offers[i]), !figure.has_value(), figure.value_or(0.0),
                      !price.has_value(), price.value_or(0.0));
  };
  std::stable_sort(out.begin(), out.end(), [&](std::size_t a, std::size_t b) { return key(a) < key(b); });
  return out;
}

Choice choice(std::span<const Offer> offers, std::span<const Appraisal> appraisals, std::span<const Standing> standings,
              std::span<const std::size_t> order, bool in_a_machine) {
  Choice out;
  for (const std::size_t i : order) {
    const bool goes = standings[i] == Standing::goes || (!in_a_machine && standings[i] != Standing::goes_not);
    if (!is_a_drive(offers[i]) || !goes) continue;
    if (appraisals[i].lasts == true) {
      out.taken = i;
      return out;
    }
    out.passed_over.push_back(i);
  }
  if (!out.passed_over.empty()) out.taken = out.passed_over.front();
  out.passed_over.clear();
  return out;
}

const Remark* dense_cells(const Appraisal& appraisal) {
  const auto found = std::find_if(appraisal.remarks.begin(), appraisal.remarks.end(),
                                  [](const Remark& remark) { return remark.code == Code::dense_cells; });
  return found == appraisal.remarks.end() ? nullptr : &*found;
}

std::optional<std::size_t> with_fewer_bits(std::span<const Offer> offers, std::span<const Appraisal> appraisals,
                                           std::span<const Standing> standings, std::span<const std::size_t> order,
                                           std::size_t taken) {
  if (dense_cells(appraisals[taken]) == nullptr) return std::nullopt;
  for (const std::size_t i : order)
    if (i != taken && is_a_drive(offers[i]) && standings[i] <= standings[taken] && offers[i].cells &&
        dense_cells(appraisals[i]) == nullptr && (appraisals[taken].lasts != true || appraisals[i].lasts == true))
      return i;
  return std::nullopt;
}

std::optional<std::size_t> fastest(std::span<const Offer> offers) {
  std::optional<std::size_t> out;
  for (std::size_t i = 0; i < offers.size(); ++i)
    if (is_a_drive(offers[i]) && offers[i].read && (!out || *offers[i].read > *offers[*out].read)) out = i;
  return out;
}

std::vector<std::size_t> held_alike(std::span<const Offer> offers, std::span<const Appraisal> appraisals,
                                    std::span<const Standing> standings, std::span<const std::size_t> order,
                                    std::size_t i, bool read) {
  const auto is_held = [&](std::size_t each) {
    return standings[each] != Standing::goes_not && is_a_drive(offers[each]) &&
           held(read ? offers[each].read : offers[each].write, appraisals[each].ceiling);
  };
  std::vector<std::size_t> out;
  if (!is_held(i)) return out;
  for (const std::size_t each : order)
    if (is_held(each) && appraisals[each].ceiling->megabytes == appraisals[i].ceiling->megabytes) out.push_back(each);
  return out;
}

}  // namespace baywright::value
