// Builds drawn and measured anew: the thin desktop, three drives, on one thread and on two. No peer does this job.
#include "build/build.h"
#include "fit/check.h"

#include <benchmark/benchmark.h>
#include <string>

namespace {

using namespace baywright;

void sample_demo(benchmark::State& state) {
  auto read = build::read(std::string(BAYWRIGHT_SOURCE) + "/models/builds/thin-desktop.build.toml");
  const auto& build = std::get<build::Build>(read);
  fit::Options options;
  options.method = tolerance::Method::sampled;
  options.threads = static_cast<int>(state.range(0));
  for (auto _ : state) benchmark::DoNotOptimize(fit::check(build, options));
  state.counters["builds"] = static_cast<double>(options.sampling.builds);
}
BENCHMARK(sample_demo)
    ->Unit(benchmark::kMillisecond)
    ->Arg(1)
    ->Arg(2)
    ->MeasureProcessCPUTime()
    ->UseRealTime()
    ->Name("100,000 builds of the thin desktop, 3 drives, threads");

}  // namespace

BENCHMARK_MAIN();
