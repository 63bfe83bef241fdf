#include "standards/links.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <system_error>

namespace baywright::standards::links {

namespace {

struct Code {  // of so many bits on the line, so many are data
  double data;
  double line;
};
constexpr Code eight_in_ten{8.0, 10.0};
constexpr Code long_block{128.0, 130.0};

struct Rate {
  double gigatransfers;  // a second and lane
  Code code;
};
constexpr std::array<Rate, 5> pcie_rates{
    {{2.5, eight_in_ten}, {5.0, eight_in_ten}, {8.0, long_block}, {16.0, long_block}, {32.0, long_block}}};
constexpr std::array<Rate, 3> sata_rates{{{1.5, eight_in_ten}, {3.0, eight_in_ten}, {6.0, eight_in_ten}}};
constexpr std::array<Rate, 3> sas_rates{{{3.0, eight_in_ten}, {6.0, eight_in_ten}, {12.0, eight_in_ten}}};
constexpr std::array<int, 5> lane_counts{1, 2, 4, 8, 16};

/// Null for a generation that is not in the table.
const Rate* rate(const Link& link) {
  if (link.generation < 1) return nullptr;
  const auto index = static_cast<std::size_t>(link.generation - 1);
  if (link.protocol == Protocol::pcie) return index < pcie_rates.size() ? &pcie_rates[index] : nullptr;
  const auto& rates = link.protocol == Protocol::sas ? sas_rates : sata_rates;
  return index < rates.size() ? &rates[index] : nullptr;
}

constexpr std::string_view pcie_right = "write as \"pcie 4.0 x4\": generation 1.0 to 5.0, lanes x1 x2 x4 x8 or x16";
constexpr std::string_view sata_right = "write the rate in Gb/s: \"sata 1.5\", \"sata 3\" or \"sata 6\"";
constexpr std::string_view sas_right = "write the rate in Gb/s: \"sas 3\", \"sas 6\" or \"sas 12\"";

std::string refusal(std::string_view what, std::string_view right) {
  return std::string(what) + "; " + std::string(right);
}

char lower(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

void skip_space(std::string_view& text) {
  while (!text.empty() && (text.front() == ' ' || text.front() == '\t')) text.remove_prefix(1);
}

bool take(std::string_view& text, std::string_view word) {
  if (text.size() < word.size()) return false;
  for (std::size_t i = 0; i < word.size(); ++i) {
    if (lower(text[i]) != word[i]) return false;
  }
  text.remove_prefix(word.size());
  return true;
}

/// A plain number at the front of the text: digits, at most one point.
std::optional<double> take_number(std::string_view& text) {
  const std::size_t size = std::min(text.find_first_not_of("0123456789."), text.size());
  double value = 0.0;
  const auto [end, fault] = std::from_chars(text.data(), text.data() + size, value, std::chars_format::fixed);
  if (fault != std::errc{} || end != text.data() + size) return std::nullopt;
  text.remove_prefix(size);
  return value;
}

std::variant<Link, std::string> read_pcie(std::string_view text) {
  skip_space(text);
  const std::optional<double> generation = take_number(text);
  if (!generation) return refusal("no PCIe generation", pcie_right);
  Link link{.protocol = Protocol::pcie};
  for (int known = 1; known <= static_cast<int>(pcie_rates.size()); ++known) {
    if (*generation == known) link.generation = known;
  }
  if (link.generation == 0) return refusal("no such PCIe generation", pcie_right);
  skip_space(text);
  if (!take(text, "x")) return refusal("no number of lanes", pcie_right);
  skip_space(text);
  const std::optional<double> lanes = take_number(text);
  const auto* const count =
      std::find_if(lane_counts.begin(), lane_counts.end(), [&](int known) { return lanes && *lanes == known; });
  if (count == lane_counts.end()) return refusal("no such number of lanes", pcie_right);
  link.lanes = *count;
  skip_space(text);
  if (!text.empty()) return refusal("text left over behind the lanes", pcie_right);
  return link;
}

/// SATA and SAS: a rate and no lanes.
std::variant<Link, std::string> read_serial(std::string_view text, Protocol protocol) {
  const bool sas = protocol == Protocol::sas;
  const std::string_view right = sas ? sas_right : sata_right;
  const auto& rates = sas ? sas_rates : sata_rates;
  // "SATA3" and "SAS3" are names of generations, and mean 6 and 12.
  if (!text.empty() && text.front() != ' ') return refusal("a rate stands behind a space", right);
  skip_space(text);
  const std::optional<double> gigabits = take_number(text);
  if (!gigabits) return refusal(sas ? "no SAS rate" : "no SATA rate", right);
  Link link{.protocol = protocol};
  for (std::size_t i = 0; i < rates.size(); ++i) {
    if (*gigabits == rates[i].gigatransfers) link.generation = static_cast<int>(i) + 1;
  }
  if (link.generation == 0) return refusal(sas ? "no such SAS rate" : "no such SATA rate", right);
  skip_space(text);
  take(text, "gb/s");
  skip_space(text);
  if (!text.empty()) return refusal("text left over behind the rate", right);
  return link;
}

}  // namespace

std::variant<Link, std::string> read_link(std::string_view text) {
  skip_space(text);
  if (take(text, "pcie")) return read_pcie(text);
  if (take(text, "sata")) return read_serial(text, Protocol::sata);
  if (take(text, "sas")) return read_serial(text, Protocol::sas);
  return refusal("neither PCIe, SATA nor SAS", "write as \"pcie 4.0 x4\", \"sata 6\" or \"sas 12\"");
}

std::string in_words(const Link& link) {
  if (link.protocol == Protocol::pcie) {
    return "PCIe " + std::to_string(link.generation) + ".0 x" + std::to_string(link.lanes);
  }
  std::array<char, 32> digits{};
  const auto [end, fault] = std::to_chars(digits.data(), digits.data() + digits.size(), gigatransfers(link));
  return (link.protocol == Protocol::sas ? "SAS " : "SATA ") + std::string(digits.data(), end) + " Gb/s";
}

double gigatransfers(const Link& link) {
  const Rate* const row = rate(link);
  return row == nullptr ? 0.0 : row->gigatransfers;
}

double megabytes(const Link& link) {
  const Rate* const row = rate(link);
  if (row == nullptr) return 0.0;
  constexpr double mega_in_giga = 1000.0;
  constexpr double bits_in_byte = 8.0;
  return row->gigatransfers * mega_in_giga * row->code.data / row->code.line / bits_in_byte * link.lanes;
}

std::string_view source(const Link& link) {
  switch (link.protocol) {
    case Protocol::pcie:
      return "rates and line codes as in the Linux kernel, drivers/pci/pci.h (bandwidth after encoding)";
    case Protocol::sata:
      return "rates and line code as in encyclopaedia articles on Serial ATA (1.5, 3, 6 Gb/s; 8b/10b)";
    case Protocol::sas:
      return "rates of SAS-1 to SAS-3 and their line code 8b/10b, from memory";
  }
  return {};
}

tolerance::Known known(const Link& link) {
  return link.protocol == Protocol::sas ? tolerance::Known::memory : tolerance::Known::secondary;
}

std::optional<Link> settle(const Link& drive, const Link& host) {
  if (drive.protocol == Protocol::sata && host.protocol == Protocol::sas) {
    const auto fastest =
        static_cast<int>(sata_rates.size());  // a SAS host of each generation that is sold takes SATA 3
    return Link{.protocol = Protocol::sata, .generation = std::min(drive.generation, fastest), .lanes = 1};
  }
  if (drive.protocol != host.protocol) return std::nullopt;
  const int common = std::min(drive.lanes, host.lanes);
  int lanes = 0;
  for (const int count : lane_counts) {
    if (count <= common) lanes = count;
  }
  if (lanes == 0) return std::nullopt;
  return Link{.protocol = drive.protocol, .generation = std::min(drive.generation, host.generation), .lanes = lanes};
}

}  // namespace baywright::standards::links
