#include "cli/session.h"

#include "fit/asked_length.h"
#include "fit/seat.h"
#include "output/file.h"
#include "parts/naming.h"

#include <algorithm>
#include <cerrno>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstring>
#include <iostream>
#include <unistd.h>
#include <vector>

namespace baywright::cli {

namespace {

bool named(const std::string& asked, const char* option, const std::vector<std::string>& known,
           const std::string& file) {
  if (asked.empty()) return true;
  for (const std::string& name : known)
    if (name == asked) return true;
  const std::string meant = parts::nearest(asked, known);
  std::cerr << file << ": there is no " << option << " `" << asked << "`; "
            << (meant.empty() ? "it has " + parts::any_of(known) : "did you mean `" + meant + "`?") << '\n';
  return false;
}

template <typename Named>
const Named& called(const std::vector<Named>& list, const std::string& name) {
  return *std::find_if(list.begin(), list.end(), [&](const Named& each) { return each.name == name; });
}

/// One line on the terminal that is written over, and wiped in the end.
class Progress {
 public:
  void operator()(std::int64_t done, std::int64_t of) {
    const auto now = Clock::now();
    if (done < last_ || last_ == 0) started_ = now;  // the next seating
    last_ = done;
    if (done < of && now - started_ > std::chrono::seconds(1) && now - shown_ > std::chrono::milliseconds(250)) {
      const double seconds = std::chrono::duration<double>(now - started_).count();
      const double left = seconds * static_cast<double>(of - done) / static_cast<double>(done);
      std::fprintf(stderr, "\r%3.0f %% of %lld builds drawn, %.0f s left ",
                   100.0 * static_cast<double>(done) / static_cast<double>(of), static_cast<long long>(of),
                   std::ceil(left));
      shown_ = now;
      written_ = true;
    }
    if (done == of && written_) {
      std::fputs("\r\x1b[K", stderr);
      written_ = false;
      last_ = 0;
    }
  }

 private:
  using Clock = std::chrono::steady_clock;
  Clock::time_point started_{};
  Clock::time_point shown_{};
  std::int64_t last_ = 0;
  bool written_ = false;
};

}  // namespace

std::optional<build::Build> read_build(const Arguments& arguments) {
  auto read = build::read(arguments.file);
  if (const auto* fault = std::get_if<parts::Fault>(&read)) {
    std::cerr << fault->text() << '\n';
    return std::nullopt;
  }
  build::Build build = std::get<build::Build>(std::move(read));
  std::vector<std::string> drives;
  std::vector<std::string> places;
  for (const build::Drive& drive : build.drives) drives.push_back(drive.name);
  for (const build::Place& slot : build.places) places.push_back(slot.name);
  if (!named(arguments.drive, "drive", drives, arguments.file)) return std::nullopt;
  if (!named(arguments.place, "place", places, arguments.file)) return std::nullopt;
  return build;
}

fit::Options options_of(const Arguments& arguments) {
  fit::Options options;
  options.clearance = arguments.clearance;
  if (arguments.method == "worst") options.method = tolerance::Method::worst;
  if (arguments.method == "rss") options.method = tolerance::Method::rss;
  if (arguments.method == "sampled") options.method = tolerance::Method::sampled;
  if (arguments.builds) options.sampling.builds = *arguments.builds;
  if (arguments.seed) options.sampling.seed = static_cast<std::uint64_t>(*arguments.seed);
  if (arguments.threads) options.threads = *arguments.threads;
  if (::isatty(2) == 1) options.progress = Progress();
  options.drive = arguments.drive;
  options.place = arguments.place;
  return options;
}

std::string fits_elsewhere(const Shown& shown) {
  if (shown.seating.verdict == fit::Verdict::fits) return {};
  for (const fit::Seating& seating : shown.check.seatings)
    if (seating.drive == shown.seating.drive && seating.verdict == fit::Verdict::fits)
      return "; it fits in " + seating.place + ": --place \"" + seating.place + '"';
  return {};
}

int at_fault(const std::string& what) {
  std::cerr << "baywright: " << what << '\n';
  return input_at_fault;
}

bool print(const std::string& text) {
  std::fwrite(text.data(), 1, text.size(), stdout);
  if (std::fflush(stdout) == 0 && std::ferror(stdout) == 0) return true;
  std::cerr << "baywright: standard output: writing failed: " << std::strerror(errno) << '\n';
  return false;
}

bool write_whole(const std::string& path, const std::string& content) {
  if (path == "-") return print(content);
  const auto fault = output::write_file(path, content);
  if (fault) std::cerr << "baywright: " << *fault << '\n';
  return !fault;
}

std::unique_ptr<Shown> show_worst(const Arguments& arguments) {
  auto read = read_build(arguments);
  if (!read) return nullptr;
  const fit::Options options = options_of(arguments);
  read->method = options.method.value_or(read->method);
  read->clearance = options.clearance.value_or(read->clearance);
  fit::Check check = fit::check(*read, options);
  fit::Seating seating = check.seatings[fit::worst(check)];
  const auto drive_at = static_cast<std::size_t>(&called(read->drives, seating.drive) - read->drives.data());
  const auto place = static_cast<int>(&called(read->places, seating.place) - read->places.data());
  const bool seats = fit::seats(read->drives[drive_at], seating.questions);
  if (seats) (void)fit::answer_asked(*read, drive_at, static_cast<std::size_t>(place), options);
  const build::Drive drive = read->drives[drive_at];  // a copy: the build moves below
  fit::Host host = fit::compile(*read);
  auto shown = std::make_unique<Shown>(
      Shown{std::move(*read), std::move(check), std::move(seating), std::move(host), fit::Seated{fit::Scene(nullptr)}});
  shown->seated =
      seats ? fit::seat(shown->host, shown->build, drive, place) : fit::Seated{fit::Scene(&shown->host.scene)};
  return shown;
}

}  // namespace baywright::cli
