#include "standards/links.h"

#include <array>
#include <doctest/doctest.h>
#include <string>

using namespace baywright::standards;
using links::Link;
using links::Protocol;

namespace {

std::string read_back(std::string_view text) {
  const auto got = links::read_link(text);
  if (const auto* link = std::get_if<Link>(&got)) return links::in_words(*link);
  return "refused: " + std::get<std::string>(got);
}

bool refused_with(std::string_view text, std::string_view part) {
  const std::string got = read_back(text);
  return got.starts_with("refused: ") && got.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("links as people write them") {
  CHECK(read_back("pcie 4.0 x4") == "PCIe 4.0 x4");
  CHECK(read_back("PCIe 4.0 x4") == "PCIe 4.0 x4");
  CHECK(read_back("pcie 3 x2") == "PCIe 3.0 x2");
  CHECK(read_back(" pcie 5.0 X16 ") == "PCIe 5.0 x16");
  CHECK(read_back("pcie4x4") == "PCIe 4.0 x4");
  CHECK(read_back("sata 6") == "SATA 6 Gb/s");
  CHECK(read_back("sata 3") == "SATA 3 Gb/s");  // a rate in Gb/s, not a revision
  CHECK(read_back("SATA 1.5 Gb/s") == "SATA 1.5 Gb/s");
}

TEST_CASE("what is no link is refused with what would be right") {
  CHECK(refused_with("", "\"sata 6\""));
  CHECK(refused_with("nvme", "\"pcie 4.0 x4\""));
  CHECK(refused_with("pcie", "no PCIe generation"));
  CHECK(refused_with("pcie x4", "no PCIe generation"));
  CHECK(refused_with("pcie 6.0 x4", "generation 1.0 to 5.0"));
  CHECK(refused_with("pcie 3.1 x4", "generation 1.0 to 5.0"));
  CHECK(refused_with("pcie 4.0", "no number of lanes"));
  CHECK(refused_with("pcie 4.0 x", "x1 x2 x4 x8 or x16"));
  CHECK(refused_with("pcie 4.0 x3", "x1 x2 x4 x8 or x16"));
  CHECK(refused_with("pcie 4.0.0 x4", "no PCIe generation"));
  CHECK(refused_with("pcie 4.0 x4 turbo", "text left over"));
  CHECK(refused_with("sata", "no SATA rate"));
  CHECK(refused_with("sata 2", "\"sata 1.5\", \"sata 3\" or \"sata 6\""));
  CHECK(refused_with("sata 6 x4", "text left over"));
}

TEST_CASE("two ends settle on what both have") {
  const Link drive{.protocol = Protocol::pcie, .generation = 4, .lanes = 4};
  const Link host{.protocol = Protocol::pcie, .generation = 3, .lanes = 8};
  const auto settled = links::settle(drive, host);
  REQUIRE(settled.has_value());
  CHECK(links::in_words(*settled) == "PCIe 3.0 x4");
  const Link three_wired{.protocol = Protocol::pcie, .generation = 5, .lanes = 3};
  CHECK(links::settle(drive, three_wired)->lanes == 2);
  const Link none_wired{.protocol = Protocol::pcie, .generation = 5, .lanes = 0};
  CHECK(!links::settle(drive, none_wired).has_value());
  const Link sata{.protocol = Protocol::sata, .generation = 3, .lanes = 1};
  CHECK(!links::settle(drive, sata).has_value());
  CHECK(links::in_words(*links::settle(sata, Link{.protocol = Protocol::sata, .generation = 2, .lanes = 1})) ==
        "SATA 3 Gb/s");
}

TEST_CASE("a generation that is in no table has no rate") {
  CHECK(links::megabytes({.protocol = Protocol::pcie, .generation = 0, .lanes = 4}) == 0.0);
  CHECK(links::megabytes({.protocol = Protocol::pcie, .generation = 6, .lanes = 4}) == 0.0);
  CHECK(links::gigatransfers({.protocol = Protocol::sata, .generation = 4, .lanes = 1}) == 0.0);
}

TEST_CASE("SATA3 and SAS3, which are names of generations, are not read as 3 Gb/s") {
  for (const char* text : {"sata3", "SATA6", "sas3", "SAS-3"}) {
    CAPTURE(text);
    CHECK(std::holds_alternative<std::string>(links::read_link(text)));
  }
  CHECK(std::get<links::Link>(links::read_link("sas 12")).generation == 3);
}
