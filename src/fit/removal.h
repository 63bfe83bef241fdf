#pragma once
// Which parts of the machine come out, what goes with them, and in which order.
#include "build/build.h"
#include "fit/host.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace baywright::fit {

/// A set of groups by index: at most 64 are told apart, further ones count as staying.
using Groups = std::uint64_t;

/// A part marked `removable` with all that stands on it, or a drive that sits at a place already.
class Removal {
 public:
  Removal(const Host& host, const build::Build& build);

  /// The group that a host element goes with; -1: it stays.
  [[nodiscard]] int group_of(int element) const { return group_[static_cast<std::size_t>(element)]; }
  [[nodiscard]] const std::string& name(int group) const { return names_[static_cast<std::size_t>(group)]; }
  [[nodiscard]] Groups all() const;

  /// The shortest list of groups, in the order in which they come out, after which one of `wanted` (sets of groups) is
  /// gone; with which of these it is. A group comes out straight along a world axis on which no other removable one is
  /// in its way (what stays is taken as no hindrance where every axis is blocked by it: the build says that it comes
  /// out). None where a circle of parts holds itself. Found by breadth; with more than `most_sets` sets in question the
  /// order is still a possible one, though there may be a shorter.
  struct Order {
    std::vector<int> groups;
    std::size_t wanted = 0;
  };
  [[nodiscard]] std::optional<Order> shortest(const std::vector<Groups>& wanted) const;

  static constexpr std::size_t most_sets = 50000;

 private:
  [[nodiscard]] const std::vector<Groups>& hindrances(int group) const;

  const Host& host_;
  std::vector<int> group_;  // by host element
  std::vector<std::string> names_;
  mutable std::vector<std::optional<std::vector<Groups>>> hindrances_;  // by group: alternatives, found when asked
};

}  // namespace baywright::fit
