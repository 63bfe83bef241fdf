// Every drive at every place of every machine. The list is taken in stretches and the machines one by one, so that
// memory does not grow with either; of a stretch, drives that differ only by name are measured once a machine.
#include "build/drive_list.h"
#include "cli/commands.h"
#include "cli/session.h"
#include "cli/survey_file.h"
#include "output/survey_line.h"

#include <algorithm>
#include <atomic>
#include <chrono>
#include <csignal>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <set>
#include <thread>
#include <unistd.h>
#include <unordered_map>

namespace baywright::cli {

namespace {

constexpr std::size_t stretch = 16384;  // drives held at a time

std::atomic<bool> interrupted = false;
void interrupt(int) {
  interrupted = true;
}

int stop(const parts::Fault& fault) {
  std::cerr << fault.text() << '\n';
  return input_at_fault;
}

struct Shard {
  std::size_t k = 0;  // from 0
  std::size_t of = 1;
};

/// "2/5"; none where it is not that.
std::optional<Shard> shard_of(const std::string& text) {
  if (text.empty()) return Shard{};
  const std::size_t slash = text.find('/');
  if (slash == std::string::npos || slash == 0 || slash > 6 || text.size() - slash > 7 || slash + 1 == text.size())
    return std::nullopt;
  if (text.find_first_not_of("0123456789/") != std::string::npos || text.find('/', slash + 1) != std::string::npos)
    return std::nullopt;
  const std::size_t k = std::stoul(text.substr(0, slash));
  const std::size_t of = std::stoul(text.substr(slash + 1));
  if (k < 1 || k > of) return std::nullopt;
  return Shard{k - 1, of};
}

/// The machines, by name.
std::vector<std::filesystem::path> machines_in(const std::string& where) {
  std::vector<std::filesystem::path> out;
  std::error_code error;
  if (!std::filesystem::is_directory(where, error)) return {where};
  for (const auto& entry : std::filesystem::directory_iterator(where, error))
    if (entry.path().string().ends_with(".build.toml")) out.push_back(entry.path());
  std::sort(out.begin(), out.end());
  return out;
}

struct Machine {
  build::Build build;
  std::string name;        // of its file
  std::uint64_t text = 0;  // a hash of the file
  std::string drive;       // what the drive is called in it: findings must not take it for one of its parts
};

/// FNV-1a (G. Fowler, L. C. Noll, K.-P. Vo; RFC draft), 64 bits: the same on every machine.
std::uint64_t hash(std::string_view text, std::uint64_t so_far = 14695981039346656037u) {
  for (const char c : text) so_far = (so_far ^ static_cast<unsigned char>(c)) * 1099511628211u;
  return so_far;
}

std::uint64_t hash_of_file(const std::filesystem::path& file) {
  std::ifstream in(file, std::ios::binary);
  return hash(std::string(std::istreambuf_iterator<char>(in), {}));
}

std::variant<Machine, parts::Fault> machine_of(const std::filesystem::path& file) {
  auto read = build::read_machine(file);
  if (auto* fault = std::get_if<parts::Fault>(&read)) return *fault;
  Machine out{std::get<build::Build>(std::move(read)), file.filename().string(), hash_of_file(file), "the drive"};
  if (out.build.asked)
    return parts::Fault{file.string(), 1, 0, '`' + out.build.asked->name + "` is \"?\", a question of its own",
                        "a survey needs the length"};
  for (const build::HostPart& part : out.build.parts) {
    if (part.name == out.drive) out.drive += '\'';
  }
  return out;
}

/// On a terminal only: a survey of minutes says how far it is.
class Progress {
 public:
  void show(double share) {
    const auto now = Clock::now();
    if (!terminal_ || now - shown_ < std::chrono::milliseconds(300)) return;
    shown_ = now;
    const double passed = std::chrono::duration<double>(now - started_).count();
    const double left = share > 0.0 ? passed / share * (1.0 - share) : 0.0;
    std::fprintf(stderr, "\rsurvey: %3.0f %%, %.0f s left \x1b[K", 100.0 * share, left);
  }
  void end() const {
    if (terminal_) std::fputs("\r\x1b[K", stderr);
  }

 private:
  using Clock = std::chrono::steady_clock;
  bool terminal_ = ::isatty(STDERR_FILENO) == 1;
  Clock::time_point started_ = Clock::now();
  Clock::time_point shown_{};
};

struct Counts {
  long lines = 0;
  long drives = 0;
  long drives_that_fit = 0;
  std::vector<std::pair<std::string, long>> machines{};  // and how many seatings fit there
};

class Survey {
 public:
  Survey(const Arguments& arguments, std::vector<std::filesystem::path> machines, build::DriveList list, Shard shard)
      : options_(options_of(arguments)),
        machines_(std::move(machines)),
        list_(std::move(list)),
        shard_(shard),
        threads_(arguments.threads ? static_cast<unsigned>(*arguments.threads) : std::thread::hardware_concurrency()) {
    options_.quick = true;
    options_.progress = {};
    settings_ = arguments.method + ' ' + (arguments.clearance ? std::to_string(*arguments.clearance) : "");
    for (const auto& machine : machines_) counts_.machines.emplace_back(machine.filename().string(), 0);
  }

  /// Reads everything once, so that a fault is told before anything is written.
  [[nodiscard]] std::optional<parts::Fault> fault() {
    std::set<std::string> names;
    std::set<std::string> tools = {""};
    for (const auto& path : machines_) {
      const auto machine = machine_of(path);
      if (const auto* wrong = std::get_if<parts::Fault>(&machine)) return *wrong;
      if (!names.insert(path.filename().string()).second)
        return parts::Fault{path.string(), 0, 0, "two machines have this file name", "rename one"};
      tools.insert(std::get<Machine>(machine).build.measured_with);
    }
    std::set<std::size_t> known;
    std::set<std::size_t> called;
    while (true) {
      const auto next = list_.next(stretch);
      if (const auto* wrong = std::get_if<parts::Fault>(&next)) return *wrong;
      const auto& drives = std::get<std::vector<build::ListedDrive>>(next);
      if (drives.empty()) break;
      for (const build::ListedDrive& drive : drives) {
        ++total_;
        if (!called.insert(std::hash<std::string>{}(drive.name)).second)
          return parts::Fault{drive.file, drive.line, 0, "the name `" + drive.name + "` is there twice",
                              "give each drive a name of its own: the answers go by it"};
        if (!known.insert(std::hash<std::string>{}(drive.keys)).second) continue;
        for (const std::string& tool : tools) {
          const auto read = build::read_listed(drive, drive.name, tool);
          if (const auto* wrong = std::get_if<parts::Fault>(&read)) return *wrong;
        }
      }
    }
    list_.rewind();
    if (total_ == 0) return parts::Fault{{}, 0, 0, "the list has no drive", "add a row or a [[drive]]"};
    return std::nullopt;
  }

  [[nodiscard]] int run(SurveyFile& file) {
    file_ = &file;
    for (std::size_t row = 0; !interrupted;) {
      auto next = list_.next(stretch);
      if (const auto* wrong = std::get_if<parts::Fault>(&next)) return stop(*wrong);
      auto& drives = std::get<std::vector<build::ListedDrive>>(next);
      if (drives.empty()) break;
      const std::size_t taken = drives.size();
      std::vector<build::ListedDrive> own;
      for (std::size_t i = 0; i < taken; ++i)
        if ((row + i) % shard_.of == shard_.k) own.push_back(std::move(drives[i]));
      if (const int status = run_stretch(own, row, taken); status != all_fit) return status;
      row += taken;
    }
    progress_.end();
    if (interrupted) {
      std::cerr << "baywright: interrupted; the same command carries on where it stopped\n";
      return could_not_finish;
    }
    std::string line;
    if (file_->next_old(line)) {
      std::cerr << "baywright: the output has more lines than this survey: it is of another one\n";
      return input_at_fault;
    }
    return counts_.drives_that_fit == counts_.drives ? all_fit : not_all_fit;
  }

  [[nodiscard]] const Counts& counts() const { return counts_; }

 private:
  /// 0, or the status to end with.
  int run_stretch(const std::vector<build::ListedDrive>& drives, std::size_t row, std::size_t taken) {
    std::unordered_map<std::string, std::size_t> by_keys;
    std::vector<std::size_t> kind;
    std::vector<const build::ListedDrive*> kinds;
    for (const build::ListedDrive& drive : drives) {
      const auto [at, fresh] = by_keys.try_emplace(drive.keys, kinds.size());
      if (fresh) kinds.push_back(&drive);
      kind.push_back(at->second);
    }
    std::vector<bool> fits(drives.size(), false);
    for (std::size_t m = 0; m < machines_.size() && !interrupted; ++m) {
      auto machine = machine_of(machines_[m]);
      if (const auto* wrong = std::get_if<parts::Fault>(&machine)) return stop(*wrong);
      if (const int status = run_machine(std::get<Machine>(machine), drives, kind, kinds, m, fits); status != all_fit)
        return status;
      progress_.show((static_cast<double>(row) +
                      static_cast<double>(taken) * static_cast<double>(m + 1) / static_cast<double>(machines_.size())) /
                     static_cast<double>(total_));
    }
    counts_.drives += static_cast<long>(drives.size());
    counts_.drives_that_fit += std::count(fits.begin(), fits.end(), true);
    return all_fit;
  }

  int run_machine(const Machine& machine, const std::vector<build::ListedDrive>& drives,
                  const std::vector<std::size_t>& kind, const std::vector<const build::ListedDrive*>& kinds,
                  std::size_t m, std::vector<bool>& fits) {
    const std::vector<build::Place>& places = machine.build.places;
    std::vector<std::string> tails;  // by kind and place; measured when the first line is not there already
    std::vector<std::string> at;
    for (const build::Place& place : places) at.push_back(output::survey_place(place.name));
    const auto count = [&](std::size_t drive, std::string_view line, std::size_t before) {
      if (!output::survey_says_fits(line, before)) return;
      fits[drive] = true;
      ++counts_.machines[m].second;
    };
    std::string lines;
    for (std::size_t i = 0; i < drives.size(); ++i) {
      const std::string head = output::survey_head(machine.name, drives[i].name, made_from(machine, drives[i]));
      for (std::size_t p = 0; p < places.size(); ++p) {
        std::string line;
        ++counts_.lines;
        if (file_->next_old(line)) {
          const std::string begins = head + at[p];
          if (!line.starts_with(begins)) {
            std::cerr << "baywright: line " << file_->lines_read()
                      << " of the output is not of this survey, or was made before "
                      << "its machine, its drive or an option changed; write to a new file. It should begin " << begins
                      << '\n';
            return input_at_fault;
          }
          count(i, line, begins.size());
          continue;
        }
        if (tails.empty()) tails = measured(machine, kinds);
        if (interrupted) return all_fit;  // what was not measured is not written
        const std::string& tail = tails[kind[i] * places.size() + p];
        count(i, tail, at[p].size());
        lines += head + tail;
      }
    }
    return file_->add(lines) ? all_fit : could_not_finish;
  }

  /// What a line was made from: the machine's file, the drive's keys, the options. Part files are not looked at.
  [[nodiscard]] std::uint64_t made_from(const Machine& machine, const build::ListedDrive& drive) const {
    return hash(drive.keys + '\n' + settings_, machine.text);
  }

  std::vector<std::string> measured(const Machine& machine, const std::vector<const build::ListedDrive*>& kinds) const {
    const fit::Host host = fit::compile(machine.build);
    const std::size_t places = machine.build.places.size();
    const tolerance::Method method = options_.method.value_or(machine.build.method);
    std::vector<std::string> out(kinds.size() * places);
    std::atomic<std::size_t> next = 0;
    const auto work = [&] {
      for (std::size_t i = next++; i < kinds.size() && !interrupted; i = next++) {
        // It was read before without a fault.
        const auto read = build::read_listed(*kinds[i], machine.drive, machine.build.measured_with);
        for (std::size_t p = 0; p < places; ++p) {
          const fit::Seating seating =
              fit::check_seating(host, machine.build, std::get<build::Drive>(read), static_cast<int>(p), options_);
          out[i * places + p] = output::survey_tail(seating, method);
        }
      }
    };
    std::vector<std::thread> others;
    for (unsigned t = 1; t < std::min<std::size_t>(threads_, kinds.size()); ++t) others.emplace_back(work);
    work();
    for (std::thread& each : others) each.join();
    return out;
  }

  fit::Options options_;
  std::vector<std::filesystem::path> machines_;
  build::DriveList list_;
  Shard shard_;
  SurveyFile* file_ = nullptr;
  unsigned threads_;
  std::size_t total_ = 0;
  std::string settings_;
  Counts counts_;
  Progress progress_;
};

std::string summary(const Counts& counts) {
  constexpr std::size_t most = 40;
  std::string out = std::to_string(counts.drives_that_fit) + " of " + std::to_string(counts.drives) +
                    " drives fit somewhere in " + std::to_string(counts.machines.size()) + " machines (" +
                    std::to_string(counts.lines) + " seatings).\n";
  for (std::size_t i = 0; i < std::min(most, counts.machines.size()); ++i)
    out += "  " + std::to_string(counts.machines[i].second) + " fit in " + counts.machines[i].first + '\n';
  if (counts.machines.size() > most)
    out += "  and " + std::to_string(counts.machines.size() - most) + " machines more\n";
  return out;
}

}  // namespace

int survey_command(const Arguments& arguments) {
  const auto shard = shard_of(arguments.shard);
  if (!shard) {
    std::cerr << "baywright: --shard `" << arguments.shard
              << "` is no share; write k/n, as 2/5 for the second of five\n";
    return input_at_fault;
  }
  std::vector<std::filesystem::path> machines = machines_in(arguments.file);
  if (machines.empty())
    return stop({arguments.file, 0, 0, "this folder has no .build.toml file", "name a folder of machines"});
  auto list = build::DriveList::open(arguments.words.front());
  if (const auto* wrong = std::get_if<parts::Fault>(&list)) return stop(*wrong);
  const bool to_output = arguments.json && arguments.output.empty();
  const std::vector<std::string> unused = std::get<build::DriveList>(list).unused();
  Survey survey(arguments, std::move(machines), std::get<build::DriveList>(std::move(list)), *shard);
  if (auto wrong = survey.fault()) {
    if (wrong->file.empty()) wrong->file = arguments.words.front();
    return stop(*wrong);
  }
  const std::unique_ptr<SurveyFile> file = SurveyFile::open(to_output ? "-" : arguments.output);
  if (!file) return could_not_finish;
  if (!unused.empty()) {
    std::string names;
    for (const std::string& name : unused) names += (names.empty() ? "" : ", ") + name;
    std::cerr << "note: these columns say nothing about fitting and are passed over: " << names << '\n';
  }
  std::signal(SIGINT, interrupt);
  std::signal(SIGTERM, interrupt);
  const int status = survey.run(*file);
  if (status > not_all_fit || to_output) return status;
  return print(summary(survey.counts())) ? status : could_not_finish;
}

}  // namespace baywright::cli
