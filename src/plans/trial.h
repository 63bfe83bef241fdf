#pragma once
// A combination of changes made in the file's text, read again and checked whole. Inside the room.
#include "plans/catalogue.h"

#include <chrono>
#include <span>
#include <utility>

namespace baywright::plans {

void add_once(std::vector<Caution>& out, Caution caution);

/// The build as it was, against which each trial is judged.
class Trials {
 public:
  /// `build` was read from `text`, `check` has all its seatings, `before` is the one to be bettered. All outlive this.
  Trials(std::string_view text, const std::filesystem::path& file, const build::Build& build, const fit::Check& check,
         const fit::Seating& before, const Options& options);

  /// The plan with the changes `moves` (another place or drive) and one variant of each option, which holds a drive at
  /// a place better than before. None: the text cannot be read with it, or it fits no better, or another drive at
  /// another place no longer fits, or parts of the machine run into each other that did not, or a moved one would have
  /// to pass through another.
  [[nodiscard]] std::optional<Plan> run(const std::string& drive, const std::string& place,
                                        std::span<const Change> moves, std::span<const Option* const> options);

  /// Time is up, or somebody said stop. `run` then finds nothing more.
  [[nodiscard]] bool stopped() const { return stopped_; }
  void stop() { stopped_ = true; }
  [[nodiscard]] int tried() const { return tried_; }

 private:
  /// One variant of a change, by its place in the change's list.
  using Choice = std::pair<const Option*, std::size_t>;
  /// A finding that keeps a drive out of a place whatever else is changed that does not bear on it.
  struct Bar {
    std::string drive;
    std::string place;
    std::vector<Choice> with;  // the changes that do
    fit::Finding finding;
  };
  [[nodiscard]] std::optional<Plan> run_choices(const std::string& drive, const std::string& place,
                                                const std::vector<Choice>& choices);
  [[nodiscard]] bool barred(const std::string& drive, const std::string& place,
                            const std::vector<Choice>& choices) const;
  void learn(const fit::Seating& seating, const std::vector<Choice>& choices);
  /// Whether the finding alone makes the seating no better than before.
  [[nodiscard]] bool keeps_out(const fit::Finding& finding) const;

  using Make = std::function<std::optional<Plan>(const std::vector<std::size_t>& variants)>;
  /// Over the variants of `options` from `from` on, those of the last changing first: the first plan that fits, else
  /// the first that is better than before. `chosen` has its variants then.
  [[nodiscard]] std::optional<Plan> first_that_fits(const Make& make, std::vector<std::size_t>& chosen,
                                                    std::span<const Option* const> options, std::size_t from);
  [[nodiscard]] bool better(const fit::Seating& seating) const;
  /// A plan in which nothing of the file changes.
  [[nodiscard]] std::optional<Plan> as_it_is(const std::string& drive, const std::string& place) const;
  void add_slower(Plan& plan) const;
  [[nodiscard]] bool harms(const build::Build& changed, const fit::Check& there, const Plan& plan) const;

  std::string_view text_;
  const std::filesystem::path& file_;
  const build::Build& build_;
  const fit::Check& check_;
  const fit::Seating& before_;
  const Options& options_;
  std::chrono::steady_clock::time_point end_;
  std::vector<Bar> bars_;
  bool stopped_ = false;
  int tried_ = 0;
};

}  // namespace baywright::plans
