#include "value/usage.h"

#include "parts/naming.h"
#include "value/figure.h"

#include <array>
#include <vector>

namespace baywright::value {

namespace {

constexpr std::array<Usage, 5> known{{{"office", 10.0, "mail, texts, the web"},
                                      {"home", 20.0, "the same with pictures and updates"},
                                      {"games", 40.0, "large downloads now and then"},
                                      {"software", 60.0, "building programs, virtual machines"},
                                      {"video", 200.0, "cutting video, recording"}}};

}  // namespace

std::span<const Usage> usages() {
  return known;
}

std::variant<Daily, std::string> read_daily(std::string_view text) {
  std::vector<std::string> names;
  for (const Usage& usage : known) {
    if (text == usage.name) return Daily{usage.gigabytes_a_day, &usage};
    names.emplace_back(usage.name);
  }
  const auto figure = read_figure(text, {{"", 1.0}, {"gb", 1.0}, {"tb", 1000.0}});
  if (const double* gigabytes = std::get_if<double>(&figure); gigabytes != nullptr && *gigabytes <= 1e6)
    return Daily{*gigabytes, nullptr};
  const std::string meant = parts::nearest(text, names);
  return "`" + std::string(text) + "` is no amount; " +
         (meant.empty() ? "write GB a day, as 30, or one of " + parts::any_of(names) : "did you mean `" + meant + "`?");
}

}  // namespace baywright::value
