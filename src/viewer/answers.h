#pragma once
// What the window shows of a build: the chosen seating at once, all others and what would make them fit in the
// background. Every figure is made by the functions that `check`, `draw` and `plans` call. No toolkit.
#include "fit/check.h"
#include "fit/seated.h"
#include "plans/plan.h"
#include "plans/solve.h"
#include "render/model.h"
#include "viewer/shortlist.h"

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace baywright::viewer {

/// Which drive at which place. Names, so that they outlive an edit.
struct Choice {
  std::string drive;
  std::string place;
  bool operator==(const Choice&) const = default;
};

/// One seating ready to be looked at. Held by pointer: `seated` stands on `host`.
struct Shown {
  build::Build build;  // with the options' method and clearance, and its "?" solved
  Choice choice;
  fit::Seating seating;
  fit::Host host;
  fit::Seated seated;  // without elements of its own where the drive cannot be put there
  // Such a drive where it would stand, to be looked at as glass, where its form is the place's and only its size or its
  // connector is not.
  std::optional<fit::Seated> ghost;
  render::Model model;
};

/// The chosen seating: as `check` says it, with ways in and tools. A drive or place that the build does not have: the
/// first one. Wants at least one of each, as every build has. `moving`: for a frame of a drag; where builds are sampled
/// fewer of them are drawn, and limits and share are that much rougher until it rests.
[[nodiscard]] std::shared_ptr<const Shown> show(const build::Build& build, const Choice& choice,
                                                const fit::Options& options, bool moving = false);

/// The seating that seems to need looking at most, of the options' drive and place where the build has them. Quick, by
/// worst case and straight ways in: `Rest::worst` settles it.
[[nodiscard]] Choice likely_worst(const build::Build& build, const fit::Options& options);

/// One cell of drives x places.
struct Cell {
  Choice choice;
  fit::Verdict verdict = fit::Verdict::undecided;
  std::string figure;  // "0.30 over", "1.62 clear": of the gap that decides; empty: none does
};

/// What the background has worked out. Each is null until it is ready, and of the version that was asked last.
struct Rest {
  std::uint64_t version = 0;
  std::shared_ptr<const std::shared_ptr<const Shown>> shown;     // the chosen seating, where what `show` drew was rough
  std::shared_ptr<const std::vector<Cell>> grid;                 // by drive, then place, as the file lists them
  std::shared_ptr<const Choice> worst;                           // what most needs looking at, of what the options name
  std::shared_ptr<const std::optional<plans::Tallest>> tallest;  // of the chosen seating
  std::shared_ptr<const std::variant<plans::Search, parts::Fault>> plans;   // of the chosen seating
  std::shared_ptr<const std::variant<plans::Buying, parts::Fault>> buying;  // of the shortlist: at first without plans
};

/// Works the rest out on a thread of its own. What is newer cancels what is older; nothing here blocks for longer than
/// copying a few pointers. A destructor stops within one drive's check.
class Background {
 public:
  Background();
  ~Background();
  Background(const Background&) = delete;
  Background& operator=(const Background&) = delete;

  /// `text` is what `build` was read from; null: none is open. `list`: null: none is open. `version`: the caller's,
  /// handed back in `Rest`.
  void ask(std::uint64_t version, std::shared_ptr<const build::Build> build, std::string text, const Choice& choice,
           const fit::Options& options, std::shared_ptr<const Shortlist> list = nullptr);
  [[nodiscard]] Rest latest() const;
  [[nodiscard]] bool busy() const;

 private:
  struct Work;
  std::unique_ptr<Work> work_;
};

}  // namespace baywright::viewer
