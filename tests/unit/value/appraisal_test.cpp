// What is said of the offers of a shortlist, and which comes first.
#include "value/ranking.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <vector>

using namespace baywright;
using namespace baywright::value;
using standards::links::Link;
using standards::links::Protocol;

namespace {

Offer offer(const std::string& name, double price, double gigabytes, double tbw, const Link& bus, double read) {
  Offer out;
  out.name = name;
  out.price = price;
  out.gigabytes = gigabytes;
  out.tbw = tbw;
  out.warranty = 5.0;
  out.bus = bus;
  out.read = read;
  out.write = read;
  out.map = MapMemory::dram;
  return out;
}

const Link sata{Protocol::sata, 3, 1};
const Link pcie4{Protocol::pcie, 4, 4};
const Link pcie3x2{Protocol::pcie, 3, 2};

std::vector<Appraisal> appraised(const std::vector<Offer>& offers, const Wishes& wish) {
  return appraise(offers, std::vector<Wishes>(offers.size(), wish));
}

/// Which of them nothing beats, all of them going where they should.
std::vector<bool> left(const std::vector<Offer>& offers) {
  return unbeaten(offers, appraised(offers, {}), std::vector<Standing>(offers.size(), Standing::goes));
}

bool says(const Appraisal& appraisal, Code code) {
  return std::any_of(appraisal.remarks.begin(), appraisal.remarks.end(),
                     [&](const Remark& remark) { return remark.code == code; });
}

}  // namespace

TEST_CASE("missing figures stay missing") {
  Offer bare;
  bare.name = "bare";
  const Appraisal found = appraised({bare}, {30.0, nullptr, {}}).front();
  CHECK(!found.per_gigabyte);
  CHECK(!found.tbw);
  CHECK(!found.dwpd);
  CHECK(!found.years);
  CHECK(!found.ceiling);
  CHECK(says(found, Code::no_tbw));
  CHECK(says(found, Code::no_price));
  CHECK(says(found, Code::map_unknown));
  CHECK(!says(found, Code::map_nowhere));
}

TEST_CASE("each warning where it belongs, and not where it does not") {
  Offer qlc = offer("qlc", 60, 1000, 40, pcie4, 5000);
  qlc.cells = CellType::qlc;
  Offer cache = offer("cache", 20, 32, 100, pcie3x2, 900);
  const Offer plain = offer("plain", 70, 1000, 600, pcie4, 5000);
  const auto heavy = appraised({qlc, cache, plain}, {100.0, nullptr, {}});
  CHECK(says(heavy[0], Code::dense_cells));
  CHECK(says(heavy[0], Code::tbw_ends_first));  // 40 TB at 100 GB a day are 1.1 years
  CHECK(says(heavy[1], Code::small_for_a_drive));
  CHECK(heavy[2].remarks.empty());
  const auto light = appraised({qlc, cache, plain}, {5.0, nullptr, {}});
  CHECK(!says(light[0], Code::dense_cells));
  CHECK(!says(light[0], Code::tbw_ends_first));
}

TEST_CASE("writing is heavy for dense cells by its share of the capacity") {
  std::vector<Offer> offers = {offer("half", 60, 500, 400, pcie4, 5000), offer("four", 200, 4000, 3000, pcie4, 5000)};
  for (Offer& each : offers) each.cells = CellType::qlc;
  const auto found = appraised(offers, {60.0, nullptr, {}});
  CHECK(says(found[0], Code::dense_cells));  // 12 % of it a day
  CHECK(!says(found[1], Code::dense_cells));
}

TEST_CASE("to be taken comes first what is known to last at the daily writing, where any is") {
  std::vector<Offer> offers = {offer("unknown", 50, 1000, 600, pcie4, 5000), offer("gone", 55, 1000, 150, pcie4, 5000),
                               offer("lasts", 90, 1000, 600, pcie4, 5000), offer("bare", 95, 1000, 600, pcie4, 5000)};
  offers[0].tbw.reset();
  offers[3].warranty.reset();
  const std::vector<Standing> go(4, Standing::goes);
  const std::vector<std::size_t> order = {0, 1, 2, 3};
  const auto found = appraised(offers, {100.0, nullptr, {}});
  // 150 TB at 100 GB a day of 365 days a year: 4.1 years of a warranty of 5.
  CHECK(!found[0].lasts);
  CHECK(found[1].lasts == false);
  CHECK(found[2].lasts == true);
  CHECK(found[3].lasts == true);
  CHECK(choice(offers, found, go, order, true).taken == 2U);
  CHECK(choice(offers, found, go, order, true).passed_over == std::vector<std::size_t>{0, 1});
  const std::vector<Standing> two = {Standing::goes, Standing::goes, Standing::goes_not, Standing::may_go};
  CHECK(choice(offers, found, two, order, true).taken == 0U);
  CHECK(choice(offers, found, two, order, true).passed_over.empty());
  CHECK(choice(offers, appraised(offers, {}), go, order, true).taken == 0U);
  // Without a TBW the drive writes a day tell: 0.2 of 1000 GB are more than 100.
  offers[0].stated_dwpd = 0.2;
  offers[0].warranty.reset();
  CHECK(appraised(offers, {100.0, nullptr, {}})[0].lasts == true);
  CHECK(appraised(offers, {300.0, nullptr, {}})[0].lasts == false);
  CHECK(!gone_within_a_year(found[1]));
  CHECK(gone_within_a_year(appraised(offers, {500.0, nullptr, {}})[1]));  // 0.8 years
}

TEST_CASE("drives that the slot holds to one rate are alike, and the price of a GB tells them apart") {
  const std::vector<Offer> offers = {
      offer("dear", 90, 1000, 600, pcie4, 7000), offer("own", 60, 1000, 600, pcie4, 1500),
      offer("cheap", 80, 1000, 600, pcie4, 5000), offer("out", 10, 1000, 600, sata, 9000)};
  const std::vector<Link> slot = {pcie3x2};
  const auto found = appraised(offers, {{}, nullptr, slot});
  const std::vector<Standing> go = {Standing::goes, Standing::goes, Standing::goes, Standing::goes_not};
  const auto order = ranked(offers, found, go, {Column::read, {}});
  CHECK(order == std::vector<std::size_t>{2, 0, 1, 3});
  CHECK(held_alike(offers, found, go, order, 0, true) == std::vector<std::size_t>{2, 0});
  CHECK(held_alike(offers, found, go, order, 1, true).empty());
  CHECK(held_alike(offers, found, go, order, 3, true).empty());
}

TEST_CASE("a slower slot: what is lost, and a bus that is not carried") {
  const std::vector<Offer> offers = {offer("fast", 90, 1000, 600, pcie4, 7000),
                                     offer("sata", 70, 1000, 600, sata, 550)};
  const std::vector<Link> slot = {pcie3x2};
  const auto found = appraised(offers, {30.0, nullptr, slot});
  REQUIRE(found[0].ceiling);
  CHECK(says(found[0], Code::slower_here));
  CHECK(found[0].ceiling->lost > 0.71);  // 1969 of 7000 MB/s
  CHECK(found[0].ceiling->lost < 0.72);
  CHECK(says(found[1], Code::bus_not_carried));
}

TEST_CASE("beaten is who is no better in anything, and only by figures that both have") {
  std::vector<Offer> offers = {offer("good", 70, 1000, 600, pcie4, 5000), offer("worse", 80, 1000, 500, pcie4, 5000),
                               offer("larger", 130, 2000, 900, pcie4, 5000)};
  CHECK(left(offers) == std::vector<bool>{true, false, true});
  offers[1].warranty.reset();  // it may be longer, as far as anybody knows
  CHECK(left(offers) == std::vector<bool>{true, true, true});
  // TBW is not compared across capacities: a larger, cheaper drive beats a smaller one whose TBW is higher.
  offers = {offer("small", 80, 1000, 900, pcie4, 5000), offer("large", 70, 2000, 800, pcie4, 5000)};
  CHECK(left(offers) == std::vector<bool>{false, true});
  // Neither a cache module nor what does not go beats anything, or is left.
  CHECK(unbeaten(offers, appraised(offers, {}), std::vector{Standing::goes, Standing::goes_not}) ==
        std::vector<bool>{true, false});
  offers[1].cache_module = true;
  CHECK(left(offers) == std::vector<bool>{true, false});
}

TEST_CASE("a larger one of the same family") {
  std::vector<Offer> offers = {offer("half", 50, 500, 300, pcie4, 5000), offer("one", 70, 1000, 600, pcie4, 5000)};
  for (Offer& each : offers) each.family = "f";
  const auto found = appraised(offers, {});
  CHECK(says(found[0], Code::larger_sibling));
  CHECK(says(found[0], Code::costs_more_a_gigabyte));  // 0.10 against 0.07
  CHECK(!says(found[1], Code::larger_sibling));
}

TEST_CASE("what an upgrade brings over what is there now") {
  const Offer fast = offer("fast", 90, 1000, 600, pcie4, 7000);
  const std::vector<Link> slot = {sata};
  CHECK(upgrade(fast, std::nullopt, *present("hdd")).worth == Worth::plainly);
  CHECK(upgrade(fast, std::nullopt, *present("sata")).worth == Worth::faster);
  CHECK(upgrade(fast, std::nullopt, *present("nvme4")).worth == Worth::no_faster);
  CHECK(upgrade(fast, ceiling(fast, slot), *present("hdd")).worth == Worth::not_known);  // it does not run there
  const Offer slow = offer("slow", 60, 1000, 600, sata, 550);
  CHECK(upgrade(slow, ceiling(slow, slot), *present("sata")).worth == Worth::no_faster);
  CHECK(upgrade(slow, ceiling(slow, slot), *present("emmc")).worth == Worth::faster);
}

TEST_CASE("a read speed that nobody states is not taken for that of the link, nor a large disk for one without heads") {
  Offer silent = offer("silent", 90, 4000, 600, sata, 550);
  silent.read.reset();
  const std::vector<Link> slot = {sata};
  CHECK(upgrade(silent, ceiling(silent, slot), *present("hdd")).ratio == 0.0);
  CHECK(upgrade(silent, ceiling(silent, slot), *present("emmc")).worth == Worth::not_known);
  CHECK(upgrade(silent, ceiling(silent, slot), *present("sata")).worth == Worth::no_faster);
  silent.use = "3.5in/26.1";
  CHECK(upgrade(silent, ceiling(silent, slot), *present("hdd")).worth == Worth::not_known);
  silent.read = 210;
  CHECK(upgrade(silent, ceiling(silent, slot), *present("hdd")).worth == Worth::no_faster);
}

TEST_CASE("order: what goes first, then drives, then figures, and what has none last") {
  std::vector<Offer> offers = {offer("a", 90, 1000, 600, pcie4, 7000), offer("b", 60, 1000, 600, sata, 550),
                               offer("c", 20, 1000, 600, sata, 550), offer("d", 50, 500, 300, sata, 500),
                               offer("e", 10, 1000, 600, sata, 550)};
  offers[2].cache_module = true;
  offers[3].price.reset();
  const auto found = appraised(offers, {});
  const std::vector<Standing> standings = {Standing::goes, Standing::goes, Standing::goes, Standing::goes,
                                           Standing::goes_not};
  CHECK(ranked(offers, found, standings, {}) == std::vector<std::size_t>{1, 0, 3, 2, 4});
  CHECK(ranked(offers, found, standings, {Column::read, {}}) == std::vector<std::size_t>{0, 1, 3, 2, 4});
  CHECK(ranked(offers, found, standings, {Column::name, {}}) == std::vector<std::size_t>{0, 1, 2, 3, 4});
  const auto weights = std::get<std::vector<Weight>>(read_weights("read=3, price=1"));
  CHECK(ranked(offers, found, standings, {{}, weights}) == std::vector<std::size_t>{0, 1, 3, 2, 4});
  const auto score = scores(offers, found, weights);
  REQUIRE(score[0]);
  CHECK(*score[0] == 0.75);  // best read, dearest
  CHECK(!score[3]);          // its price is missing
}

TEST_CASE("columns and weights that are not there") {
  CHECK(std::get<std::string>(read_column("prize")) == "there is no column `prize`; did you mean `price`?");
  CHECK(std::get<Column>(read_column("price-per-gb")) == Column::per_gigabyte);
  for (const char* text : {"", "price", "price=0", "price=-1", "price=x", "name=1", "price=1,price=2", "price=1,,"}) {
    CAPTURE(text);
    CHECK(std::holds_alternative<std::string>(read_weights(text)));
  }
}
