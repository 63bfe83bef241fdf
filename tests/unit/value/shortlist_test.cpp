// Shortlists as spreadsheets and people write them.
#include "value/shortlist.h"

#include "value/usage.h"

#include <cmath>
#include <doctest/doctest.h>
#include <filesystem>
#include <fstream>
#include <unistd.h>

using namespace baywright;
using namespace baywright::value;

namespace {

std::variant<Shortlist, parts::Fault> read(const std::string& text, const std::string& ending = ".csv") {
  const auto file =
      std::filesystem::temp_directory_path() / ("baywright-shortlist-" + std::to_string(::getpid()) + ending);
  std::ofstream(file, std::ios::binary) << text;
  auto out = read_shortlist(file);
  std::filesystem::remove(file);
  return out;
}

std::string refused(const std::string& text) {
  const auto found = read(text);
  const auto* fault = std::get_if<parts::Fault>(&found);
  if (fault == nullptr) return "read";
  return std::to_string(fault->line) + ":" + std::to_string(fault->column) + ": " + fault->what;
}

}  // namespace

TEST_CASE("the same list with points and commas, semicolons and tabs, and as TOML") {
  const std::string semicolons =
      "\xEF\xBB\xBFName;Price (EUR);Capacity;Bus;TBW;Warranty;Cells;DRAM;Power;Warning temperature\r\n"
      "one;79,90;1 TB;pcie 4.0 x4;600;5 years;3D TLC;HMB;5,5 W;343 K\r\n";
  const std::string commas =
      "name,price,capacity,bus,tbw,warranty,cells,dram,power,warning temperature\n"
      "one,79.90 EUR,1000,pcie 4.0 x4,600 TB,60 months,TLC,hmb,5.5,70 C\n";
  const std::string toml =
      "[[drive]]\nname = \"one\"\nprice = \"79.90 EUR\"\ncapacity = 1000\nbus = \"PCIe 4.0 x4\"\ntbw = 600\nwarranty = "
      "5\ncells = \"TLC\"\ndram = \"HMB\"\npower = 5.5\nwarning_temperature = 70\n";
  std::string tabs = commas;
  for (char& c : tabs) c = c == ',' ? '\t' : c;
  for (const auto& [text, ending] :
       {std::pair(semicolons, ".csv"), std::pair(commas, ".csv"), std::pair(tabs, ".csv"), std::pair(toml, ".toml")}) {
    CAPTURE(text);
    const auto found = read(text, ending);
    const auto* list = std::get_if<Shortlist>(&found);
    REQUIRE(list != nullptr);
    CHECK(list->currency == "EUR");
    REQUIRE(list->offers.size() == 1);
    const Offer& offer = list->offers.front();
    CHECK(offer.name == "one");
    CHECK(offer.price == 79.9);
    CHECK(offer.gigabytes == 1000.0);
    CHECK(offer.bus->lanes == 4);
    CHECK(offer.tbw == 600.0);
    CHECK(offer.warranty == 5.0);
    CHECK(offer.cells == CellType::tlc);
    CHECK(offer.map == MapMemory::host);
    CHECK(offer.watts == 5.5);
    REQUIRE(offer.warning);
    CHECK(std::abs(*offer.warning - 343.15) <= 1e-9);
  }
}

TEST_CASE("a number of TOML is a number, also where text would be asked about") {
  const auto found = read("[[drive]]\nname = \"a\"\nprice = 62.125\n", ".toml");
  REQUIRE(std::holds_alternative<Shortlist>(found));
  CHECK(std::get<Shortlist>(found).offers.front().price == 62.125);
}

TEST_CASE("columns that say nothing here are named and passed over") {
  const auto found = read("name,colour\none,blue\n");
  REQUIRE(std::holds_alternative<Shortlist>(found));
  CHECK(std::get<Shortlist>(found).unused == std::vector<std::string>{"colour"});
}

TEST_CASE("what is wrong with a list, with its place") {
  CHECK(refused("").find("empty") != std::string::npos);
  CHECK(refused("name\n") == "0:0: this file has no rows");
  CHECK(refused("price\n5\n") == "1:0: no column is called `name`");
  CHECK(refused("name,capcity\na,1\n") == "1:6: there is no column `capcity`");
  CHECK(refused("name,name\na,b\n") == "1:6: the column `name` is there twice");
  CHECK(refused("name,price\na,1,5\n") == "2:0: this row has 3 fields, the heading 2");
  CHECK(refused("name,tbw\na,\"1,200\"\n") == "2:3: `1,200` may be 1200 or 1.2");
  CHECK(refused("name,tbw\na,-5\n") == "2:3: `-5` is no figure");
  CHECK(refused("name\na\nb\na\n") == "4:0: the name `a` is there twice, in line 2 too");
  CHECK(refused("name,price\na,5 EUR\nb,5 USD\n") == "3:3: this price is in USD, those before in EUR");
  CHECK(refused("name,price\na,5 EUR\nb,5\n") == "3:3: this price is in no currency, those before in EUR");
  CHECK(refused("name,cells\na,XLC\n") == "2:3: `XLC` is no memory cell");
  CHECK(refused("name,bus\na,pcie 9\n").starts_with("2:3: `pcie 9`"));
  CHECK(refused("name,is\na,cache\n") == "2:3: `cache` is neither");
  CHECK(refused("name,tbw\n\"a,5\n").find("a quote does not end here") != std::string::npos);
  CHECK(refused("name,co\x1b[31mlour\na,b\n") == "1:6: this heading has characters that cannot be shown");
  CHECK(refused("name,price\na,about 55\nb,60\n") == "2:3: `about 55` is no price");
  CHECK(refused("name,price (each)\na,5\n") == "2:3: this price has no currency, and `each` in the heading is none");
  CHECK(refused("name,cost\na,5\n") == "1:6: there is no column `cost`");
  CHECK(refused("name,price,cost\na,5,4\n") == "read");
  // 0x80 is the euro of Windows-1252; the others are what RFC 3629 forbids: an overlong /, half a pair, U+110000, a
  // cut.
  CHECK(refused("name,price\n\xC3\xA9,5\na,5 \x80\n") == "3:5: this character is not UTF-8");
  for (const char* bytes : {"\xC0\xAF", "\xED\xA0\x80", "\xF4\x90\x80\x80", "\xE2\x82"}) {
    CAPTURE(bytes);
    CHECK(refused("name\n" + std::string(bytes)) == "2:1: this character is not UTF-8");
  }
  CHECK(refused("name,price\n\xF0\x9F\x92\xBE,5 \xE2\x82\xAC\n") == "read");
  CHECK(refused("name,price\n,5\n") == "2:0: this drive has no name");
}

TEST_CASE("amounts of writing") {
  CHECK(std::get<Daily>(read_daily("30")).gigabytes == 30.0);
  CHECK(std::get<Daily>(read_daily("0,5 TB")).gigabytes == 500.0);
  REQUIRE(std::get<Daily>(read_daily("video")).usage != nullptr);
  CHECK(std::get<Daily>(read_daily("video")).usage->known == tolerance::Known::practice);
  for (const char* text : {"", "0", "-3", "vidoe", "inf"}) {
    CAPTURE(text);
    CHECK(std::holds_alternative<std::string>(read_daily(text)));
  }
}
