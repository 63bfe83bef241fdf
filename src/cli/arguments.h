#pragma once
// What the command line asked for.
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace baywright::cli {

struct Arguments {
  std::string command;
  std::string file;
  std::string output;  // -o; "-": standard output
  std::string drive;
  std::string place;
  std::optional<double> clearance;
  std::string method;                  // empty: the build's
  std::optional<std::int64_t> builds;  // sampled
  std::optional<std::int64_t> seed;
  std::optional<int> threads;
  bool json = false;
  bool every = false;
  bool together = false;
  bool all = false;  // explain
  bool accept_marginal = false;
  std::string kind;                // new
  std::vector<std::string> words;  // parts
  std::string drawing;             // parts --draw; "-": standard output
  bool sources = false;            // parts
  std::string shard;               // survey: "k/n"; empty: all
  std::string side;                // picture: which view; empty: whole
  std::string size;                // picture, view: "1280x800"
  bool section = false;            // picture
  bool apart = false;              // picture
  std::string clearance_map;       // picture: the part that is coloured
  bool dark = false;               // picture
  std::optional<int> turntable;    // picture: how many frames
  std::optional<int> apply;        // plans: which plan is written to `output`
  std::optional<double> seconds;   // plans: how long is searched at most
  std::string part;                // drill, make: which part
  std::string process;             // make: "fdm", "sla" or "sls"; empty: fdm
  bool mark = false;               // make: write its length on it
  std::string paper;               // drill: "a4" or "letter"
  bool mirrored = false;           // drill: for the other side
  bool measure = false;            // draw: a sheet to measure by
  bool trace = false;              // view: a line for each frame drawn
  std::string shortlist;           // view, report: the drives to choose between
  std::string build_file;          // rank: the machine; empty: none
  std::string bus;                 // rank: what is wired to the slot, without a build
  std::string daily;               // rank: GB written a day, or a usage by name
  std::string now;                 // rank: what is there now
  std::string sort;                // rank: a column
  std::string weigh;               // rank: "price=3,read=1"
  std::optional<double> air;       // rank: °C in the machine
  std::optional<double> air_speed; // rank: m/s along the card
  bool csv = false;                // rank, steps
  bool html = false;               // rank
  std::string language;            // report, rank: "en" or "de"; empty: en
  bool shopping = false;           // steps: what to buy for it
};

/// Exit status, as the help says it.
inline constexpr int all_fit = 0;
inline constexpr int not_all_fit = 1;
inline constexpr int input_at_fault = 2;
inline constexpr int could_not_finish = 3;

/// Parses the command line. Help and usage errors are printed here; then `done` is the exit status to leave with.
struct Parsed {
  Arguments arguments;
  std::optional<int> done;
};
[[nodiscard]] Parsed parse(int count, char** values);

}  // namespace baywright::cli
