// A check as a user runs it: demo (a) whole, and one drive re-checked in machines of 100 to 10,000 parts.
// No peer does this job, so there is no ratio; the geometry underneath is held against one in geometry_bench.
#include "build/build.h"
#include "fit/access.h"
#include "fit/check.h"
#include "fit/insertion.h"
#include "fit/seat.h"

#include <benchmark/benchmark.h>
#include <cmath>
#include <string>

namespace {

using namespace baywright;

build::Build demo() {
  auto read = build::read(std::string(BAYWRIGHT_SOURCE) + "/models/builds/thin-desktop.build.toml");
  return std::get<build::Build>(std::move(read));
}

/// A board with `count` - 1 parts of 4 x 4 on it, as dense everywhere as on a crowded board, and one slot in the
/// middle.
build::Build crowd(int count, const std::string& lid = {}) {
  const int side = static_cast<int>(std::ceil(std::sqrt(count - 1)));
  const double pitch = 12.0;
  const double size = pitch * side + 40.0;
  std::string text = "title = \"crowd\"\n[[part]]\nname = \"board\"\nsolid = { plate = [" + std::to_string(size) +
                     ", " + std::to_string(size) + ", \"1.57 ±0.1\"] }\n";
  for (int i = 0; i + 1 < count; ++i) {
    const double x = 20.0 + pitch * (i % side);
    const double y = 20.0 + pitch * (i / side);
    text += "[[part]]\nname = \"part " + std::to_string(i) +
            "\"\nsolid = { box = [4, 4, \"1.0 ±0.1\"] }\non = { part = \"board\", at = [" + std::to_string(x) + ", " +
            std::to_string(y) + "] }\n";
  }
  if (!lid.empty())
    text += "[[part]]\nname = \"lid\"\nsolid = { plate = [" + std::to_string(size) + ", " + std::to_string(size) +
            ", 1.0] }\nabove = { part = \"board\", by = \"14.5 ±0.2\" }\n" + lid + "\n";
  text += "[[slot]]\nname = \"slot\"\non = { part = \"board\", at = [" + std::to_string(size / 2.0) + ", " +
          std::to_string(size / 2.0) +
          "], toward = \"+x\" }\nsocket = \"m2/M/H4.2\"\nlengths = [2280]\nbus = \"pcie 4.0 x4\"\n"
          "[[drive]]\nname = \"card\"\nuse = \"m2/2280-D2-M\"\nbus = \"pcie 4.0 x4\"\n"
          "wears = [ { pad = \"1.0 ±0.1\", compress = \"30 %\" }, { heatsink = { length = 70, width = 22, base = 1, "
          "fins = 9, height = \"6.0 ±0.1\" } } ]\n";
  auto read = build::read_text(text, "crowd.build.toml");
  return std::get<build::Build>(std::move(read));
}

void check_demo(benchmark::State& state) {
  const build::Build build = demo();
  for (auto _ : state) benchmark::DoNotOptimize(fit::check(build, {}));
}
BENCHMARK(check_demo)->Unit(benchmark::kMicrosecond)->Name("full check of the thin desktop, 3 drives");

void recheck(benchmark::State& state) {
  const build::Build build = crowd(static_cast<int>(state.range(0)));
  const fit::Host host = fit::compile(build);
  std::size_t findings = 0;
  for (auto _ : state) {
    const fit::Seating seating = fit::check_seating(host, build, build.drives[0], 0, {});
    findings = seating.findings.size();
  }
  state.counters["findings"] = static_cast<double>(findings);
}
BENCHMARK(recheck)
    ->Unit(benchmark::kMicrosecond)
    ->Arg(100)
    ->Arg(1000)
    ->Arg(10000)
    ->Name("one drive re-checked, parts in the machine");

/// Whether the card can be brought there. `over`: a lid, as text; empty: an open machine.
void way_in(benchmark::State& state, const std::string& over) {
  const build::Build build = crowd(static_cast<int>(state.range(0)), over);
  const fit::Host host = fit::compile(build);
  const fit::Seated seated = fit::seat(host, build, build.drives[0], 0);
  fit::Code code = fit::Code::way_plain;
  for (auto _ : state)
    code = fit::insertion(host, build, seated, build.drives[0], build.places[0], {}).finding.why.code;
  state.counters["code"] = static_cast<double>(code);
}
BENCHMARK_CAPTURE(way_in, open, "")
    ->Unit(benchmark::kMicrosecond)
    ->Arg(100)
    ->Arg(1000)
    ->Arg(10000)
    ->Name("way in, open machine, parts");
BENCHMARK_CAPTURE(way_in, removable, "removable = true")
    ->Unit(benchmark::kMicrosecond)
    ->Arg(100)
    ->Name("way in, under a lid that comes off, parts");
BENCHMARK_CAPTURE(way_in, fixed, "removable = false")
    ->Unit(benchmark::kMicrosecond)
    ->Arg(100)
    ->Name("way in, under a lid that stays: searched in vain, parts");

void tool(benchmark::State& state) {
  const build::Build build = crowd(static_cast<int>(state.range(0)));
  const fit::Host host = fit::compile(build);
  const fit::Seated seated = fit::seat(host, build, build.drives[0], 0);
  for (auto _ : state)
    benchmark::DoNotOptimize(fit::access(host, build, seated, build.drives[0], build.places[0], {}, {}));
}
BENCHMARK(tool)->Unit(benchmark::kMicrosecond)->Arg(100)->Arg(1000)->Arg(10000)->Name("driver to the screw, parts");

void compile_host(benchmark::State& state) {
  const build::Build build = crowd(static_cast<int>(state.range(0)));
  for (auto _ : state) benchmark::DoNotOptimize(fit::compile(build));
}
BENCHMARK(compile_host)
    ->Unit(benchmark::kMicrosecond)
    ->Arg(100)
    ->Arg(1000)
    ->Arg(10000)
    ->Name("machine compiled, parts");

}  // namespace

BENCHMARK_MAIN();
