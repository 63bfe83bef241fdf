#include "value/shortlist.h"

#include "parts/naming.h"
#include "value/figure.h"

#include <algorithm>
#include <functional>
#include <map>

namespace baywright::value {

using parts::Cell;
using parts::Fault;

namespace {

using Problem = std::optional<Refused>;
using Reader = std::function<Problem(const std::string& text, Offer& offer)>;

/// A figure into one of an offer's members.
Reader figure(std::optional<double> Offer::*into, std::vector<Unit> units, bool whole = false) {
  return [into, units = std::move(units), whole](const std::string& text, Offer& offer) -> Problem {
    const auto read = read_figure(text, units, whole);
    if (const auto* refused = std::get_if<Refused>(&read)) return *refused;
    offer.*into = std::get<double>(read);
    return std::nullopt;
  };
}

std::string small(std::string text) {
  for (char& c : text)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return text;
}

/// Kelvin from "70", "70 C", "70 °C", "343 K". Whole kelvin are those of a drive's log, of which tools take 273.
Reader temperature(std::optional<double> Offer::*into) {
  return [into](const std::string& text, Offer& offer) -> Problem {
    const bool kelvin = !text.empty() && (text.back() == 'K' || text.back() == 'k');
    const auto read = read_figure(text, {{"", 1.0}, {"c", 1.0}, {"°c", 1.0}, {"k", 1.0}});
    if (const auto* refused = std::get_if<Refused>(&read)) return *refused;
    const double value = std::get<double>(read);
    const double celsius = kelvin ? value - 273.0 : value;
    if (!(celsius > 0.0 && celsius < 200.0))
      return Refused{"`" + text + "` is no temperature of a drive", "write it as 70 C or 343 K"};
    offer.*into = celsius + 273.15;
    return std::nullopt;
  };
}

Problem read_bus(const std::string& text, Offer& offer) {
  const auto link = standards::links::read_link(text);
  if (const auto* why = std::get_if<std::string>(&link)) return Refused{"`" + text + "`: " + *why, ""};
  offer.bus = std::get<standards::links::Link>(link);
  return std::nullopt;
}

Problem read_cells(const std::string& text, Offer& offer) {
  std::string plain = text;
  if (small(plain).starts_with("3d ")) {
    offer.stacked = true;
    plain.erase(0, 3);
  }
  offer.cells = read_cell_type(plain);
  if (!offer.cells) return Refused{"`" + text + "` is no memory cell", "write SLC, MLC, TLC, QLC or PLC"};
  return std::nullopt;
}

Problem read_layers(const std::string& text, Offer& offer) {
  const std::string plain = small(text);
  const auto count = read_figure(plain, {{"", 1.0}, {"layers", 1.0}}, true);
  if (plain == "3d")
    offer.stacked = true;
  else if (plain == "planar" || plain == "2d")
    offer.stacked = false;
  else if (const double* layers = std::get_if<double>(&count))
    offer.stacked = *layers > 1.0;
  else
    return Refused{"`" + text + "` says nothing about layers", "write planar, 3D or their number"};
  return std::nullopt;
}

Problem read_map(const std::string& text, Offer& offer) {
  static const std::map<std::string, MapMemory> known = {{"dram", MapMemory::dram}, {"yes", MapMemory::dram},
                                                         {"hmb", MapMemory::host},  {"none", MapMemory::none},
                                                         {"no", MapMemory::none},   {"unknown", MapMemory::unknown}};
  const auto found = known.find(small(text));
  if (found == known.end())
    return Refused{"`" + text + "` says nothing about DRAM", "write DRAM, HMB, none or unknown"};
  offer.map = found->second;
  return std::nullopt;
}

Problem read_role(const std::string& text, Offer& offer) {
  if (text != "drive" && text != "cache module")
    return Refused{"`" + text + "` is neither", "write drive or cache module"};
  offer.cache_module = text == "cache module";
  return std::nullopt;
}

const std::map<std::string, Reader>& readers() {
  static const std::vector<Unit> speed = {{"", 1.0}, {"mb/s", 1.0}, {"gb/s", 1000.0}};
  static const std::vector<Unit> rate = {{"", 1.0},         {"iops", 1.0}, {"k", 1000.0},  {"k iops", 1000.0},
                                         {"kiops", 1000.0}, {"m", 1e6},    {"m iops", 1e6}};
  static const std::vector<Unit> power = {{"", 1.0}, {"w", 1.0}, {"mw", 0.001}};
  static const std::map<std::string, Reader> all = {
      {"capacity", figure(&Offer::gigabytes, {{"", 1.0}, {"gb", 1.0}, {"tb", 1000.0}})},
      {"tbw", figure(&Offer::tbw, {{"", 1.0}, {"tb", 1.0}, {"tbw", 1.0}, {"pb", 1000.0}, {"pbw", 1000.0}})},
      {"warranty",
       figure(&Offer::warranty, {{"", 1.0}, {"years", 1.0}, {"year", 1.0}, {"y", 1.0}, {"months", 1.0 / 12.0}})},
      {"dwpd", figure(&Offer::stated_dwpd, {{"", 1.0}, {"dwpd", 1.0}})},
      {"read", figure(&Offer::read, speed, true)},
      {"write", figure(&Offer::write, speed, true)},
      {"random read", figure(&Offer::random_read, rate, true)},
      {"random write", figure(&Offer::random_write, rate, true)},
      {"power", figure(&Offer::watts, power)},
      {"idle", figure(&Offer::idle_watts, power)},
      {"warning temperature", temperature(&Offer::warning)},
      {"critical temperature", temperature(&Offer::critical)},
      {"bus", read_bus},
      {"cells", read_cells},
      {"layers", read_layers},
      {"dram", read_map},
      {"is", read_role}};
  return all;
}

/// Columns without a reader of their own: the name, the price with its currency, texts, and what a build wants to know
/// of a drive.
const std::vector<std::string> plain_columns = {"name",    "price",   "family", "use",      "top",
                                                "bottom",  "height",  "length", "old",      "plug",
                                                "bracket", "adapter", "pad",    "compress", "heatsink"};

/// What others call these columns: too far from our names to be taken for slips of them.
const std::map<std::string, std::string>& other_names() {
  static const std::map<std::string, std::string> all = {{"cost", "price"},
                                                         {"eur", "price"},
                                                         {"usd", "price"},
                                                         {"size", "capacity"},
                                                         {"gb", "capacity"},
                                                         {"tb", "capacity"},
                                                         {"model", "name"},
                                                         {"drive", "name"},
                                                         {"title", "name"},
                                                         {"product", "name"},
                                                         {"endurance", "tbw"},
                                                         {"guarantee", "warranty"},
                                                         {"interface", "bus"},
                                                         {"link", "bus"},
                                                         {"form", "use"},
                                                         {"form factor", "use"},
                                                         {"nand", "cells"},
                                                         {"flash", "cells"},
                                                         {"series", "family"},
                                                         {"watts", "power"},
                                                         {"sequential read", "read"},
                                                         {"sequential write", "write"},
                                                         {"preis", "price"},
                                                         {"kapazität", "capacity"},
                                                         {"größe", "capacity"},
                                                         {"speicherplatz", "capacity"},
                                                         {"modell", "name"},
                                                         {"laufwerk", "name"},
                                                         {"bezeichnung", "name"},
                                                         {"garantie", "warranty"},
                                                         {"schnittstelle", "bus"},
                                                         {"anschluss", "bus"},
                                                         {"bauform", "use"},
                                                         {"lesen", "read"},
                                                         {"schreiben", "write"}};
  return all;
}

class Reading {
 public:
  explicit Reading(parts::Table table) { list_.table = std::move(table); }

  std::variant<Shortlist, Fault> read() {
    if (auto wrong = headings()) return *std::move(wrong);
    for (const std::vector<Cell>& row : list_.table.rows)
      if (auto wrong = add(row)) return *std::move(wrong);
    return std::move(list_);
  }

 private:
  [[nodiscard]] Fault fault(int line, int column, Refused refused) const {
    return {list_.table.file, line, column, std::move(refused.what), std::move(refused.right)};
  }

  [[nodiscard]] bool has(const std::string& column) const {
    return std::any_of(list_.table.headings.begin(), list_.table.headings.end(),
                       [&](const parts::Heading& each) { return each.name == column; });
  }

  std::optional<Fault> headings() {
    std::vector<std::string> known = plain_columns;
    for (const auto& [name, reader] : readers()) known.push_back(name);
    bool named = false;
    for (const parts::Heading& heading : list_.table.headings) {
      named = named || heading.name == "name";
      if (std::find(known.begin(), known.end(), heading.name) != known.end()) continue;
      if (heading.name.empty()) continue;
      if (const auto other = other_names().find(heading.name); other != other_names().end() && !has(other->second))
        return fault(heading.line, heading.column,
                     {"there is no column `" + heading.name + '`', "it is called `" + other->second + "` here"});
      if (const std::string meant = parts::nearest(heading.name, known); !meant.empty())
        return fault(heading.line, heading.column,
                     {"there is no column `" + heading.name + '`', "did you mean `" + meant + "`?"});
      list_.unused.push_back(heading.name);
    }
    if (!named)
      return fault(list_.table.headings.front().line, 0, {"no column is called `name`", "give each drive a name"});
    return std::nullopt;
  }

  std::optional<Fault> add(const std::vector<Cell>& row) {
    Offer offer;
    for (std::size_t i = 0; i < row.size(); ++i) {
      const Cell& cell = row[i];
      const parts::Heading& heading = list_.table.headings[i];
      if (heading.name == "name") offer.line = cell.line;
      if (cell.text.empty()) continue;
      if (auto problem = add(offer, heading, cell)) return fault(cell.line, cell.column, *std::move(problem));
    }
    if (offer.line == 0) offer.line = row.front().line;
    if (offer.name.empty()) return fault(offer.line, 0, {"this drive has no name", "give it one"});
    for (const Offer& other : list_.offers)
      if (other.name == offer.name)
        return fault(offer.line, 0,
                     {"the name `" + offer.name + "` is there twice, in line " + std::to_string(other.line) + " too",
                      "give each drive a name of its own: the answers go by it"});
    list_.offers.push_back(std::move(offer));
    return std::nullopt;
  }

  Problem add(Offer& offer, const parts::Heading& heading, const Cell& cell) {
    if (heading.name == "price") return add_price(offer, heading, cell);
    std::string* const text = heading.name == "name"     ? &offer.name
                              : heading.name == "family" ? &offer.family
                              : heading.name == "use"    ? &offer.use
                                                         : nullptr;
    if (text != nullptr) {
      *text = cell.text;
      if (std::any_of(text->begin(), text->end(),
                      [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7f; }))
        return Refused{"this text has more than one line", "write it in one"};
      return std::nullopt;
    }
    const auto reader = readers().find(heading.name);
    if (reader == readers().end()) return std::nullopt;
    // A unit in the heading is that of figures which name none.
    const char last = cell.text.back();
    const bool bare = last >= '0' && last <= '9';
    return reader->second(bare && !heading.unit.empty() ? cell.text + ' ' + heading.unit : cell.text, offer);
  }

  Problem add_price(Offer& offer, const parts::Heading& heading, const Cell& cell) {
    auto read = read_price(cell.text);
    if (const auto* refused = std::get_if<Refused>(&read)) return *refused;
    auto& price = std::get<Price>(read);
    if (price.currency.empty()) {
      if (!heading.unit.empty() && !is_currency(heading.unit))
        return Refused{"this price has no currency, and `" + heading.unit + "` in the heading is none",
                       "write price (EUR), or 79.90 EUR"};
      price.currency = heading.unit;
    }
    const bool first = std::none_of(list_.offers.begin(), list_.offers.end(),
                                    [](const Offer& other) { return other.price.has_value(); });
    if (first) list_.currency = price.currency;
    const auto called = [](const std::string& currency) { return currency.empty() ? "no currency" : currency; };
    if (price.currency != list_.currency)
      return Refused{"this price is in " + called(price.currency) + ", those before in " + called(list_.currency),
                     "write all in one currency: none is changed into another here"};
    offer.price = price.amount;
    return std::nullopt;
  }

  Shortlist list_;
};

}  // namespace

std::variant<Shortlist, Fault> read_shortlist(const std::filesystem::path& file) {
  auto table = parts::read_table_file(file, "drive");
  if (const auto* fault = std::get_if<Fault>(&table)) return *fault;
  return Reading(std::get<parts::Table>(std::move(table))).read();
}

}  // namespace baywright::value
