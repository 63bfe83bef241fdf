#include "viewer/answers.h"

#include "fit/asked_length.h"
#include "fit/connect.h"
#include "fit/seat.h"
#include "output/stack_column.h"

#include <algorithm>
#include <condition_variable>
#include <mutex>
#include <thread>
#include <utility>

namespace baywright::viewer {

namespace {

template <typename Named>
std::size_t index_of(const std::vector<Named>& list, const std::string& name) {
  const auto found = std::find_if(list.begin(), list.end(), [&](const Named& each) { return each.name == name; });
  return found == list.end() ? 0 : static_cast<std::size_t>(found - list.begin());
}

/// One seating as `check` makes it.
struct Checked {
  build::Build build;
  fit::Host host;
  fit::Seating seating;
  bool seats = false;
};

Checked checked(const build::Build& build, std::size_t drive, std::size_t place, const fit::Options& options) {
  build::Build solved = build;
  solved.method = options.method.value_or(build.method);
  solved.clearance = options.clearance.value_or(build.clearance);
  const bool seats = fit::seats(build.drives[drive], fit::connect(build.drives[drive], build.places[place]).questions);
  std::optional<fit::Finding> needs;
  if (seats) needs = fit::answer_asked(solved, drive, place, options);
  fit::Host host = fit::compile(solved);
  fit::Seating seating = fit::check_seating(host, solved, solved.drives[drive], static_cast<int>(place), options);
  if (needs) seating.findings.push_back(std::move(*needs));
  return {std::move(solved), std::move(host), std::move(seating), seats};
}

/// Without a drive or place that the build does not have: another one may have been opened since.
fit::Options of_build(const build::Build& build, fit::Options options) {
  const auto has = [](const auto& list, const std::string& name) {
    return std::any_of(list.begin(), list.end(), [&](const auto& each) { return each.name == name; });
  };
  if (!has(build.drives, options.drive)) options.drive.clear();
  if (!has(build.places, options.place)) options.place.clear();
  return options;
}

Cell cell_of(const fit::Seating& seating) {
  Cell out{{seating.drive, seating.place}, seating.verdict, {}};
  if (!seating.deciding) return out;
  const fit::Finding& finding = seating.findings[*seating.deciding];
  out.figure = output::over_or_clear(finding.gap->nominal, finding.gap->asked, finding.why.code);
  return out;
}

}  // namespace

std::shared_ptr<const Shown> show(const build::Build& build, const Choice& choice, const fit::Options& options,
                                  bool moving) {
  const std::size_t drive = index_of(build.drives, choice.drive);
  const std::size_t place = index_of(build.places, choice.place);
  fit::Options asked = options;
  if (moving) asked.sampling.builds = std::min(asked.sampling.builds, fit::fewest_for_limits);
  Checked made = checked(build, drive, place, asked);
  auto shown = std::make_shared<Shown>(Shown{std::move(made.build),
                                             {build.drives[drive].name, build.places[place].name},
                                             std::move(made.seating),
                                             std::move(made.host),
                                             fit::Seated{fit::Scene(nullptr)},
                                             {}});
  shown->seated = made.seats ? fit::seat(shown->host, shown->build, shown->build.drives[drive], static_cast<int>(place))
                             : fit::Seated{fit::Scene(&shown->host.scene)};
  shown->model = render::model_of(shown->build, shown->seated, shown->seating);
  return shown;
}

Choice likely_worst(const build::Build& build, const fit::Options& options) {
  fit::Options asked = of_build(build, options);
  asked.method = tolerance::Method::worst;
  asked.quick = true;
  const fit::Check check = fit::check(build, asked);
  const fit::Seating& seating = check.seatings[fit::worst(check)];
  return {seating.drive, seating.place};
}

struct Background::Work {
  struct Asked {
    std::shared_ptr<const build::Build> build;
    std::string text;
    Choice choice;
    fit::Options options;
    std::uint64_t turn = 0;
  };

  mutable std::mutex mutex;
  std::condition_variable wake;
  std::optional<Asked> next;
  Rest done;
  std::uint64_t turn = 0;  // of what was asked last: what another turn makes is thrown away
  bool busy = false;
  bool stop = false;
  std::thread thread;

  [[nodiscard]] bool stale(const Asked& asked) const {
    const std::lock_guard lock(mutex);
    return stop || asked.turn != turn;
  }

  template <typename Answer>
  void publish(const Asked& asked, std::shared_ptr<const Answer> Rest::*where, Answer answer) {
    auto ready = std::make_shared<const Answer>(std::move(answer));
    const std::lock_guard lock(mutex);
    if (asked.turn == turn) done.*where = std::move(ready);
  }

  void run() {
    for (;;) {
      std::unique_lock lock(mutex);
      wake.wait(lock, [this] { return stop || next; });
      if (stop) return;
      const Asked asked = std::move(*next);
      next.reset();
      lock.unlock();
      answer(asked);
      lock.lock();
      if (!next) busy = false;
    }
  }

  void answer(const Asked& asked) {
    const build::Build& build = *asked.build;
    if (asked.options.method.value_or(build.method) == tolerance::Method::sampled) {
      publish(asked, &Rest::shown, show(build, asked.choice, asked.options));
      if (stale(asked)) return;
    }
    const fit::Options of = of_build(build, asked.options);
    fit::Check check;
    std::vector<Cell> grid;
    for (std::size_t drive = 0; drive < build.drives.size(); ++drive) {
      for (std::size_t place = 0; place < build.places.size(); ++place) {
        if (stale(asked)) return;
        fit::Seating seating = checked(build, drive, place, asked.options).seating;
        grid.push_back(cell_of(seating));
        if ((of.drive.empty() || of.drive == seating.drive) && (of.place.empty() || of.place == seating.place))
          check.seatings.push_back(std::move(seating));
      }
    }
    publish(asked, &Rest::grid, std::move(grid));
    const fit::Seating& worst = check.seatings[fit::worst(check)];
    publish(asked, &Rest::worst, Choice{worst.drive, worst.place});
    if (stale(asked)) return;
    const std::size_t drive = index_of(build.drives, asked.choice.drive);
    const std::size_t place = index_of(build.places, asked.choice.place);
    const Checked chosen = checked(build, drive, place, asked.options);
    publish(asked, &Rest::tallest,
            plans::tallest_heatsink(chosen.build, chosen.build.drives[drive], static_cast<int>(place), asked.options));
    if (stale(asked)) return;
    plans::Options options;
    options.fit = asked.options;
    options.fit.drive = build.drives[drive].name;
    options.fit.place = build.places[place].name;
    options.progress = [&](int, int) { return !stale(asked); };
    auto found = plans::search(asked.text, build.file, options);
    publish(asked, &Rest::plans, std::move(found));
  }
};

Background::Background() : work_(std::make_unique<Work>()) {
  work_->thread = std::thread([work = work_.get()] { work->run(); });
}

Background::~Background() {
  {
    const std::lock_guard lock(work_->mutex);
    work_->stop = true;
  }
  work_->wake.notify_one();
  work_->thread.join();
}

void Background::ask(std::uint64_t version, std::shared_ptr<const build::Build> build, std::string text,
                     const Choice& choice, const fit::Options& options) {
  {
    const std::lock_guard lock(work_->mutex);
    ++work_->turn;
    work_->next = Work::Asked{std::move(build), std::move(text), choice, options, work_->turn};
    work_->done = {};
    work_->done.version = version;
    work_->busy = true;
  }
  work_->wake.notify_one();
}

Rest Background::latest() const {
  const std::lock_guard lock(work_->mutex);
  return work_->done;
}

bool Background::busy() const {
  const std::lock_guard lock(work_->mutex);
  return work_->busy;
}

}  // namespace baywright::viewer
