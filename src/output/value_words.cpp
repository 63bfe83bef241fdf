#include "output/value_words.h"

#include "output/more_words.h"
#include "output/words.h"

#include <array>
#include <cmath>
#include <cstdio>
#include <utility>

namespace baywright::output {

using value::Code;
using value::Remark;

namespace {

std::string larger(const Remark& remark, const std::string& currency) {
  std::string out = capital(remark.word("other")) + ", the same with " + capacity(remark.figure("gigabytes")) + " more";
  if (remark.figure("priced") > 0.0) {
    const double more = remark.figure("more");
    out += more > 0.0 ? ", costs " + money(more, currency, 2) + " more" : ", does not cost more";
  }
  out += "; of a family the larger one usually writes faster and longer (common practice, no source).";
  if (remark.figure("tbw here") > 0.0)
    out += " Its TBW is " + plain(remark.figure("tbw there"), 1) + " against " + plain(remark.figure("tbw here"), 1) +
           " here, on another capacity.";
  return out;
}

std::string dense(const Remark& remark) {
  return capital(remark.word("cells")) + " has " + plain(remark.figure("bits"), 0) + " bits a cell, told apart by " +
         plain(remark.figure("states"), 0) + " levels: at " + plain(remark.figure("day"), 1) + " GB a day, " +
         percent(remark.figure("share")) + " of its capacity (" + percent(value::heavy_share) +
         " and more count as much), a good part is written past its cache, where such drives do 50 to 200 MB/s "
         "(both common practice, no source).";
}

std::string tbw_ends(const Remark& remark) {
  const double warranty = remark.figure("warranty");
  return "Its TBW is written after " + years(remark.figure("years")) +
         (warranty > 0.0 ? ", and the warranty of " + years(warranty) + " ends then."
                         : "; how long its warranty is, is not stated.");
}

}  // namespace

std::string years(double figure) {
  const std::string text = plain(figure, 1);
  if (text == "0") return "less than 0.1 years";
  return text + (text == "1" ? " year" : " years");
}

std::string held_to(double megabytes) {
  return "held to " + plain(megabytes, 0) + " MB/s by the slot (raw link rate; less in practice)";
}

std::string money(double amount, const std::string& currency, int decimals) {
  char text[64];
  std::snprintf(text, sizeof text, "%.*f", decimals, amount);
  return text + (currency.empty() ? "" : ' ' + currency);
}

std::string plain(double figure, int decimals) {
  std::string text = money(figure, "", decimals);
  if (text.find('.') != std::string::npos) {
    while (text.back() == '0') text.pop_back();
    if (text.back() == '.') text.pop_back();
  }
  return text == "-0" ? "0" : text;
}

std::string capacity(double gigabytes) {
  return gigabytes >= 1000.0 ? plain(gigabytes / 1000.0, 2) + " TB" : plain(gigabytes, 1) + " GB";
}

std::string say(const Remark& remark, const std::string& currency) {
  switch (remark.code) {
    case Code::cache_module:
      return "A cache for another drive, not a drive of its own.";
    case Code::small_for_a_drive:
      return "With " + capacity(remark.figure("gigabytes")) +
             " it is as small as cache modules are, which are sold beside drives: ask whether it is meant as one.";
    case Code::soldered:
      return "It is soldered to a board: no drive to swap.";
    case Code::no_price:
      return "No price is given.";
    case Code::no_capacity:
      return "No capacity is given.";
    case Code::no_tbw:
      return "No TBW is stated: how long it may be written to is not known.";
    case Code::tbw_ends_first:
      return tbw_ends(remark);
    case Code::writes_beyond:
      return "You write more than the " + plain(remark.figure("dwpd"), 2) + " drive writes a day that it is made for.";
    case Code::map_unknown:
      return "Whether it has DRAM is not stated.";
    case Code::map_in_host:
      return "It has no DRAM and borrows memory from the computer (HMB): scattered writes are slower.";
    case Code::map_nowhere:
      return "It has no DRAM: scattered writes are slower, and its figures hold within its cache.";
    case Code::dense_cells:
      return dense(remark);
    case Code::bus_not_carried:
      return "It speaks " + remark.word("own") + ", the slot " + remark.word("slot") + ": it would not be found there.";
    case Code::slower_here:
      return "Wasted here: " + held_to(remark.figure("megabytes")) + ", " + remark.word("own") + " behind " +
             remark.word("link") + ": " + percent(remark.figure("share")) + " less than it could.";
    case Code::costs_more_a_gigabyte:
      return "A GB costs " + money(remark.figure("here"), currency, 3) + " here and " +
             money(remark.figure("there"), currency, 3) + " in " + remark.word("other") + '.';
    case Code::larger_sibling:
      return larger(remark, currency);
  }
  return {};
}

std::string say(const value::Upgrade& upgrade, const value::Present& now) {
  const std::string over = "Over the " + std::string(now.title) + " there now: ";
  const std::string ratio = upgrade.ratio > 0.0 ? plain(upgrade.ratio, 1) + " times its " + plain(now.read, 0) +
                                                      " MB/s (" + std::string(now.source) + ')'
                                                : std::string();
  const std::string beside = now.soldered ? " That one stays soldered in." : "";
  switch (upgrade.worth) {
    case value::Worth::plainly:
      return over + "no heads have to move any more, which is felt in everything" +
             (ratio.empty() ? "." : "; it reads large files at " + ratio + '.') + beside;
    case value::Worth::faster:
      return over + "it reads large files at " + ratio + "; small ones gain less." + beside;
    case value::Worth::little:
      return over + "it reads at most at " + ratio + ", which few notice." + beside;
    case value::Worth::no_faster:
      return over + "it reads no faster, only room is gained." + beside;
    case value::Worth::not_known:
      return {};
  }
  return {};
}

std::string word(value::MapMemory map) {
  switch (map) {
    case value::MapMemory::unknown:
      return "unknown";
    case value::MapMemory::dram:
      return "DRAM";
    case value::MapMemory::host:
      return "HMB";
    case value::MapMemory::none:
      return "none";
  }
  return {};
}

std::string word(Code code) {
  switch (code) {
    case Code::cache_module:
      return "cache module";
    case Code::small_for_a_drive:
      return "small for a drive";
    case Code::soldered:
      return "soldered";
    case Code::no_price:
      return "no price";
    case Code::no_capacity:
      return "no capacity";
    case Code::no_tbw:
      return "no TBW";
    case Code::tbw_ends_first:
      return "TBW ends first";
    case Code::writes_beyond:
      return "writes beyond";
    case Code::map_unknown:
      return "DRAM unknown";
    case Code::map_in_host:
      return "HMB";
    case Code::map_nowhere:
      return "no DRAM";
    case Code::dense_cells:
      return "dense cells";
    case Code::bus_not_carried:
      return "bus not carried";
    case Code::slower_here:
      return "slower here";
    case Code::costs_more_a_gigabyte:
      return "costs more a GB";
    case Code::larger_sibling:
      return "larger sibling";
  }
  return {};
}

std::string word(value::Standing standing) {
  constexpr std::array words{"goes", "may go", "not known", "goes not"};
  return words[static_cast<std::size_t>(standing)];
}

}  // namespace baywright::output
