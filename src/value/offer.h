#pragma once
// A drive at a price, as its sheet and the shop have it. What they don't say stays missing, and never counts as zero.
#include "standards/links.h"
#include "value/cell_type.h"

#include <optional>
#include <string>

namespace baywright::value {

/// Where the drive keeps the map of what lies where. Without memory of its own for it, small writes are slower.
enum class MapMemory { unknown, dram, host, none };  // host: a piece of the computer's memory (HMB)

struct Offer {
  std::string name;
  int line = 0;  // of the shortlist
  std::optional<double> price;
  std::optional<double> gigabytes;  // as on the label
  std::string family;               // drives of one series, in several capacities; empty: not said
  std::string use;                  // as in a build file: "m2/2280-S3-M"
  std::optional<standards::links::Link> bus;
  std::optional<CellType> cells;
  std::optional<bool> stacked;        // memory in layers ("3D"), not planar
  std::optional<double> tbw;          // TB
  std::optional<double> warranty;     // years
  std::optional<double> stated_dwpd;  // drive writes per day, where the sheet says it so
  std::optional<double> read;         // MB/s, one after the other
  std::optional<double> write;
  std::optional<double> random_read;  // a second
  std::optional<double> random_write;
  MapMemory map = MapMemory::unknown;
  bool cache_module = false;    // a cache for another drive, not a drive of its own
  std::optional<double> watts;  // while it writes
  std::optional<double> idle_watts;
  std::optional<double> warning;   // K: WCTEMP
  std::optional<double> critical;  // K: CCTEMP
};

}  // namespace baywright::value
