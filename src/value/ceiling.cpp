#include "value/ceiling.h"

#include <algorithm>
#include <array>

namespace baywright::value {

namespace links = standards::links;
using tolerance::Known;

namespace {

std::optional<double> at_most(const std::optional<double>& stated, double most) {
  return stated ? std::optional(std::min(*stated, most)) : std::nullopt;
}

double of_pcie(int generation) {
  return links::megabytes({links::Protocol::pcie, generation, 4});
}

const std::vector<Present>& all() {
  constexpr std::string_view practice = "common practice, no source";
  constexpr std::string_view link = "its link's ceiling";
  static const double sata = links::megabytes({links::Protocol::sata, 3, 1});
  // eMMC: HS400 is 200 MHz, both edges, 8 bits; the same board maker's wiki read 217 MB/s from one.
  static const std::vector<Present> known = {
      {"hdd", "hard disk", sata, 200.0, true, false, practice, Known::practice},
      {"emmc", "soldered eMMC", 400.0, 217.0, false, true, "as a board maker measured it", Known::secondary},
      {"sata", "SATA SSD", sata, 550.0, false, false, practice, Known::practice},
      {"nvme3", "NVMe drive, PCIe 3", of_pcie(3), of_pcie(3), false, false, link, Known::secondary},
      {"nvme4", "NVMe drive, PCIe 4", of_pcie(4), of_pcie(4), false, false, link, Known::secondary},
      {"nvme5", "NVMe drive, PCIe 5", of_pcie(5), of_pcie(5), false, false, link, Known::secondary}};
  return known;
}

}  // namespace

std::optional<Ceiling> ceiling(const Offer& offer, std::span<const links::Link> slot) {
  if (!offer.bus || slot.empty()) return std::nullopt;
  Ceiling out;
  out.own = links::megabytes(*offer.bus);
  for (const links::Link& wired : slot) {
    const auto link = links::settle(*offer.bus, wired);
    if (!link || links::megabytes(*link) <= out.megabytes) continue;
    out.link = link;
    out.megabytes = links::megabytes(*link);
  }
  if (!out.link) return out;
  out.read = at_most(offer.read, out.megabytes);
  out.write = at_most(offer.write, out.megabytes);
  const double stated = std::max(offer.read.value_or(0.0), offer.write.value_or(0.0));
  const double could = stated > 0.0 ? stated : out.own;
  out.lost = std::max(0.0, 1.0 - out.megabytes / could);
  return out;
}

bool held(const std::optional<double>& stated, const std::optional<Ceiling>& here) {
  return stated && here && here->link && *stated > here->megabytes;
}

std::span<const Present> presents() {
  return all();
}

const Present* present(std::string_view name) {
  const auto found = std::find_if(all().begin(), all().end(), [&](const Present& each) { return each.name == name; });
  return found == all().end() ? nullptr : &*found;
}

Upgrade upgrade(const Offer& offer, const std::optional<Ceiling>& here, const Present& now) {
  constexpr double noticed = 2.0;
  constexpr double alike = 1.1;
  if (here && !here->link) return {};
  const std::optional<double> read = here ? here->read : offer.read;
  const double ratio = read ? *read / now.read : 0.0;
  // What is 3.5 inch is a disk with heads of its own, hardly ever another: common practice, no source.
  if (now.moves && !offer.use.starts_with("3.5in")) return {Worth::plainly, ratio};
  // Without a figure the link tells only how fast it is not.
  if (!read) return {here && here->megabytes <= alike * now.read ? Worth::no_faster : Worth::not_known, 0.0};
  return {ratio >= noticed ? Worth::faster : ratio > alike ? Worth::little : Worth::no_faster, ratio};
}

}  // namespace baywright::value
