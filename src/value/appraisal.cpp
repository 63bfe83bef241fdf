#include "value/appraisal.h"

#include "value/capacity.h"
#include "value/endurance.h"
#include "value/usage.h"

#include <algorithm>

namespace baywright::value {

namespace links = standards::links;

namespace {

constexpr double small_drive = 100.0;  // GB: below, an NVMe module is rather a cache (common practice, no source)
constexpr double dear = 1.25;          // so much more a gigabyte than a larger one of its kind is worth a word

void add(Appraisal& to, Code code, std::vector<std::pair<std::string, std::string>> words = {},
         std::vector<std::pair<std::string, double>> figures = {}) {
  to.remarks.push_back({code, std::move(words), std::move(figures)});
}

std::optional<double> ratio(const std::optional<double>& a, const std::optional<double>& b) {
  return a && b ? std::optional(*a / *b) : std::nullopt;
}

void endurance(const Offer& offer, const std::optional<double>& daily, Appraisal& out) {
  out.tbw = offer.tbw;
  if (!out.tbw && offer.stated_dwpd && offer.gigabytes && offer.warranty) {
    out.tbw = terabytes_written(*offer.stated_dwpd, *offer.gigabytes, *offer.warranty);
    out.tbw_derived = true;
  }
  out.dwpd = offer.stated_dwpd;
  if (offer.tbw && offer.gigabytes && offer.warranty)
    out.dwpd = writes_per_day(*offer.tbw, *offer.gigabytes, *offer.warranty);
  out.per_tbw = ratio(offer.price, out.tbw);
  out.warranty = offer.warranty;
  if (!daily) return;
  if (!out.tbw) {
    if (out.dwpd && offer.gigabytes) out.lasts = *daily <= *out.dwpd * *offer.gigabytes;
    return;
  }
  out.years = years_until(*out.tbw, *daily);
  out.lasts = *out.years >= offer.warranty.value_or(1.0);
  if (offer.warranty) out.warranty = warranty_end(*offer.warranty, *out.tbw, *daily);
}

void remark_on_kind(const Offer& offer, Appraisal& out) {
  if (offer.cache_module)
    add(out, Code::cache_module);
  else if (offer.gigabytes && *offer.gigabytes < small_drive && offer.bus &&
           offer.bus->protocol == links::Protocol::pcie)
    add(out, Code::small_for_a_drive, {}, {{"gigabytes", *offer.gigabytes}});
  if (offer.use == "soldered") add(out, Code::soldered);
}

void remark_on_memory(const Offer& offer, const std::optional<double>& daily, Appraisal& out) {
  if (offer.map == MapMemory::unknown) add(out, Code::map_unknown);
  if (offer.map == MapMemory::host) add(out, Code::map_in_host);
  if (offer.map == MapMemory::none) add(out, Code::map_nowhere);
  const double share = daily && offer.gigabytes ? *daily / *offer.gigabytes : 0.0;
  if (offer.cells && bits(*offer.cells) >= bits(CellType::qlc) && share >= heavy_share)
    add(out, Code::dense_cells, {{"cells", std::string(value::word(*offer.cells))}},
        {{"bits", bits(*offer.cells)}, {"states", states(*offer.cells)}, {"day", *daily}, {"share", share}});
}

void remark_on_endurance(const Offer& offer, const std::optional<double>& daily, Appraisal& out) {
  if (!out.tbw)
    add(out, Code::no_tbw);
  else if (out.lasts == false)
    add(out, Code::tbw_ends_first, {}, {{"years", *out.years}, {"warranty", offer.warranty.value_or(0.0)}});
  if (!out.tbw && out.dwpd && offer.gigabytes && daily && *daily > *out.dwpd * *offer.gigabytes)
    add(out, Code::writes_beyond, {}, {{"dwpd", *out.dwpd}, {"day", *daily}});
}

void remark_on_link(const Offer& offer, const Wishes& wishes, Appraisal& out) {
  if (!out.ceiling) return;
  if (!out.ceiling->link) {
    std::string slot;
    for (const links::Link& wired : wishes.slot) slot += (slot.empty() ? "" : " or ") + links::in_words(wired);
    add(out, Code::bus_not_carried, {{"own", links::in_words(*offer.bus)}, {"slot", slot}});
    return;
  }
  constexpr double noticed = 0.05;
  if (out.ceiling->lost > noticed)
    add(out, Code::slower_here, {{"link", links::in_words(*out.ceiling->link)}, {"own", links::in_words(*offer.bus)}},
        {{"megabytes", out.ceiling->megabytes}, {"share", out.ceiling->lost}});
}

/// Larger ones of the same family: what they would cost and bring, and whether the small one is dear for its size.
void remark_on_family(std::span<const Offer> offers, std::size_t i, Appraisal& out) {
  const Offer& own = offers[i];
  if (own.family.empty() || !own.gigabytes) return;
  const Offer* next = nullptr;
  for (const Offer& other : offers) {
    const bool larger = other.family == own.family && other.gigabytes && *other.gigabytes > *own.gigabytes;
    if (larger && (next == nullptr || *other.gigabytes < *next->gigabytes)) next = &other;
  }
  if (next == nullptr) return;
  const double more = own.price && next->price ? *next->price - *own.price : 0.0;
  const bool both = own.tbw && next->tbw;
  add(out, Code::larger_sibling, {{"other", next->name}},
      {{"gigabytes", *next->gigabytes - *own.gigabytes},
       {"more", more},
       {"priced", own.price && next->price ? 1.0 : 0.0},
       {"tbw here", both ? *own.tbw : 0.0},
       {"tbw there", both ? *next->tbw : 0.0}});
  const auto here = ratio(own.price, own.gigabytes);
  const auto there = ratio(next->price, next->gigabytes);
  if (here && there && *here > dear * *there)
    add(out, Code::costs_more_a_gigabyte, {{"other", next->name}},
        {{"here", *here}, {"there", *there}, {"gigabytes", *next->gigabytes}});
}

/// One figure of two offers. Known of one only, they cannot be told apart by it, and neither beats the other.
class Duel {
 public:
  void larger(const std::optional<double>& a, const std::optional<double>& b) {
    if (a.has_value() != b.has_value()) beaten_ = false;
    if (!a || !b) return;
    beaten_ = beaten_ && *a >= *b;
    better_ = better_ || *a > *b;
  }
  void smaller(const std::optional<double>& a, const std::optional<double>& b) { larger(minus(a), minus(b)); }
  [[nodiscard]] bool won() const { return beaten_ && better_; }

 private:
  static std::optional<double> minus(const std::optional<double>& a) { return a ? std::optional(-*a) : std::nullopt; }
  bool beaten_ = true;
  bool better_ = false;
};

}  // namespace

std::string Remark::word(std::string_view name) const {
  for (const auto& [key, text] : words)
    if (key == name) return text;
  return {};
}

double Remark::figure(std::string_view name) const {
  for (const auto& [key, number] : figures)
    if (key == name) return number;
  return 0.0;
}

bool beats(const Offer& a, const Appraisal& of_a, const Offer& b, const Appraisal& of_b) {
  const auto speed = [](const Offer& offer, const Appraisal& of, bool read) {
    const std::optional<double> stated = read ? offer.read : offer.write;
    if (!of.ceiling) return stated;
    return of.ceiling->link ? (read ? of.ceiling->read : of.ceiling->write) : std::optional(0.0);
  };
  Duel duel;
  duel.smaller(a.price, b.price);
  duel.larger(a.gigabytes, b.gigabytes);
  duel.larger(speed(a, of_a, true), speed(b, of_b, true));
  duel.larger(speed(a, of_a, false), speed(b, of_b, false));
  duel.larger(a.warranty, b.warranty);
  // TBW grows with the capacity: between two capacities it says nothing.
  if (a.gigabytes && b.gigabytes && *a.gigabytes == *b.gigabytes) duel.larger(of_a.tbw, of_b.tbw);
  return duel.won();
}

bool gone_within_a_year(const Appraisal& appraisal) {
  return appraisal.years && *appraisal.years < 1.0;
}

bool is_a_drive(const Offer& offer) {
  return !offer.cache_module && offer.use != "soldered";
}

std::vector<Appraisal> appraise(std::span<const Offer> offers, std::span<const Wishes> wishes) {
  std::vector<Appraisal> out;
  for (std::size_t i = 0; i < offers.size(); ++i) {
    const Offer& offer = offers[i];
    const Wishes& wish = wishes[i];
    Appraisal one;
    one.per_gigabyte = ratio(offer.price, offer.gigabytes);
    if (offer.gigabytes) one.tebibytes = tebibytes(*offer.gigabytes);
    endurance(offer, wish.daily, one);
    one.ceiling = ceiling(offer, wish.slot);
    if (wish.now != nullptr) one.upgrade = upgrade(offer, one.ceiling, *wish.now);
    remark_on_kind(offer, one);
    if (!offer.price) add(one, Code::no_price);
    if (!offer.gigabytes) add(one, Code::no_capacity);
    remark_on_endurance(offer, wish.daily, one);
    remark_on_memory(offer, wish.daily, one);
    remark_on_link(offer, wish, one);
    remark_on_family(offers, i, one);
    out.push_back(std::move(one));
  }
  return out;
}

}  // namespace baywright::value
