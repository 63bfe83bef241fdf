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

constexpr double seconds_a_plan = 3.0;  // for each drive of a shortlist that does not fit, as `rank` looks

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

/// The name, or nothing where the build does not have it: another one may have been opened since.
template <typename Named>
std::string name_in(const std::vector<Named>& list, const std::string& name) {
  const bool there = std::any_of(list.begin(), list.end(), [&](const Named& each) { return each.name == name; });
  return there ? name : std::string();
}

fit::Options of_build(const build::Build& build, fit::Options options) {
  options.drive = name_in(build.drives, options.drive);
  options.place = name_in(build.places, options.place);
  return options;
}

/// Whether a drive that cannot be put there has a shape that can be drawn there all the same.
bool has_shape_there(const build::Drive& drive, const fit::Questions& questions) {
  switch (questions.form_factor.why.code) {
    case fit::Code::other_form:
    case fit::Code::adapter_needed:
    case fit::Code::soldered:
      return false;
    default:
      return !parts::cased(drive.outer()) || drive.cased.whole();
  }
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
                                             std::nullopt,
                                             {}});
  const build::Drive& of = shown->build.drives[drive];
  const auto seated = [&] { return fit::seat(shown->host, shown->build, of, static_cast<int>(place)); };
  shown->seated = made.seats ? seated() : fit::Seated{fit::Scene(&shown->host.scene)};
  if (!made.seats && has_shape_there(of, shown->seating.questions)) shown->ghost = seated();
  shown->model = render::model_of(shown->build, shown->ghost ? *shown->ghost : shown->seated, shown->seating);
  if (shown->ghost)  // nothing holds it
    std::erase_if(shown->model.things, [](const render::Thing& thing) { return thing.late; });
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
    std::shared_ptr<const Shortlist> list;
    std::uint64_t turn = 0;
  };
  /// What was bought last: choosing another seating changes nothing of it.
  struct Bought {
    std::string text;
    std::shared_ptr<const Shortlist> list;
    std::shared_ptr<const std::variant<plans::Buying, parts::Fault>> buying;
    bool with_plans = false;
  };

  mutable std::mutex mutex;
  std::condition_variable wake;
  std::optional<Asked> next;
  Rest done;
  std::uint64_t turn = 0;  // of what was asked last: what another turn makes is thrown away
  Bought bought;           // of the thread alone
  bool busy = false;
  bool stop = false;
  std::thread thread;

  [[nodiscard]] bool stale(const Asked& asked) const {
    const std::lock_guard lock(mutex);
    return stop || asked.turn != turn;
  }

  template <typename Answer>
  void publish(const Asked& asked, std::shared_ptr<const Answer> Rest::*where, Answer answer) {
    publish(asked, where, std::make_shared<const Answer>(std::move(answer)));
  }

  template <typename Answer>
  void publish(const Asked& asked, std::shared_ptr<const Answer> Rest::*where, std::shared_ptr<const Answer> ready) {
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
      if (asked.build) answer(asked);
      if (!stale(asked)) buy(asked, seconds_a_plan);
      lock.lock();
      if (!next) busy = false;
    }
  }

  /// The shortlist, with plans for what does not fit where these get any time.
  void buy(const Asked& asked, double seconds) {
    if (!asked.list) return;
    const bool same = bought.list == asked.list && bought.text == asked.text;
    if (!same || (seconds > 0.0 && !bought.with_plans)) {
      std::optional<plans::Machine> machine;
      if (asked.build) machine = plans::Machine{asked.text, asked.build->file};
      plans::Wanted wanted = asked.list->wanted;
      wanted.place = asked.build ? name_in(asked.build->places, wanted.place) : std::string();
      wanted.seconds_a_plan = seconds;
      wanted.progress = [&](std::size_t, std::size_t) { return !stale(asked); };
      auto found = plans::buying(asked.list->list, asked.list->file.string(), machine, wanted);
      if (stale(asked)) return;
      bought = {asked.text, asked.list,
                std::make_shared<const std::variant<plans::Buying, parts::Fault>>(std::move(found)), seconds > 0.0};
    }
    publish(asked, &Rest::buying, bought.buying);
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
    buy(asked, 0.0);
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
                     const Choice& choice, const fit::Options& options, std::shared_ptr<const Shortlist> list) {
  {
    const std::lock_guard lock(work_->mutex);
    ++work_->turn;
    work_->next = Work::Asked{std::move(build), std::move(text), choice, options, std::move(list), work_->turn};
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
