#pragma once
// The demo builds, seated, for tests of what is drawn of them.
#include "build/build.h"
#include "fit/check.h"
#include "fit/seat.h"
#include "output/drawing.h"

#include <memory>
#include <string>
#include <vector>

namespace baywright::output {

/// One drive at one place, with all that it stands on kept alive.
struct Demo {
  std::shared_ptr<const build::Build> build;
  std::shared_ptr<const fit::Host> host;
  fit::Seated seated;
  fit::Seating seating;

  [[nodiscard]] Sheet sheet() const { return draw_seating(*build, seated, seating); }
};

inline std::vector<Demo> seated(build::Build read) {
  std::vector<Demo> out;
  const auto build = std::make_shared<const build::Build>(std::move(read));
  const auto host = std::make_shared<const fit::Host>(fit::compile(*build));
  for (const build::Drive& drive : build->drives)
    for (int slot = 0; slot < static_cast<int>(build->places.size()); ++slot) {
      fit::Seating seating = fit::check_seating(*host, *build, drive, slot, {});
      const bool seats = fit::seats(drive, seating.questions);
      out.push_back({build, host, seats ? fit::seat(*host, *build, drive, slot) : fit::Seated{fit::Scene(&host->scene)},
                     std::move(seating)});
    }
  return out;
}

/// Every drive at every place of the build; none where it cannot be read.
inline std::vector<Demo> demos(const std::string& name) {
  auto read = build::read(std::string(BAYWRIGHT_SOURCE) + "/models/builds/" + name + ".build.toml");
  if (std::holds_alternative<parts::Fault>(read)) return {};
  return seated(std::move(std::get<build::Build>(read)));
}

inline std::vector<Demo> demo_of(const std::string& text) {
  auto read = build::read_text(text, std::string(BAYWRIGHT_SOURCE) + "/models/builds/in-a-test.build.toml");
  if (std::holds_alternative<parts::Fault>(read)) return {};
  return seated(std::move(std::get<build::Build>(read)));
}

inline std::vector<Demo> all_demos() {
  std::vector<Demo> out;
  for (const char* name : {"thin-desktop", "tower", "laptop"})
    for (Demo& demo : demos(name)) out.push_back(std::move(demo));
  return out;
}

}  // namespace baywright::output
