#pragma once
// A demonstration build seated as the picture command seats it.
#include "build/build.h"
#include "fit/check.h"
#include "fit/seat.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <memory>
#include <string>
#include <variant>

namespace baywright::test {

struct ShownBuild {
  build::Build build;
  fit::Seating seating;
  fit::Host host;
  fit::Seated seated;
};

/// One of models/builds, by the start of its file's name; the drive at the first place that the build has. A build that
/// cannot be read fails the test.
inline std::unique_ptr<ShownBuild> shown_build(const std::string& name, const std::string& drive) {
  auto read = build::read(std::string(BAYWRIGHT_SOURCE) + "/models/builds/" + name + ".build.toml");
  if (const auto* fault = std::get_if<parts::Fault>(&read)) FAIL(fault->text());
  build::Build build = std::get<build::Build>(std::move(read));
  const auto found =
      std::find_if(build.drives.begin(), build.drives.end(), [&](const auto& each) { return each.name == drive; });
  REQUIRE(found != build.drives.end());
  const build::Drive chosen = *found;
  fit::Host host = fit::compile(build);
  fit::Seating seating = fit::check_seating(host, build, chosen, 0, {});
  auto out = std::make_unique<ShownBuild>(
      ShownBuild{std::move(build), std::move(seating), std::move(host), fit::Seated{fit::Scene(nullptr)}});
  out->seated = fit::seat(out->host, out->build, chosen, 0);
  return out;
}

}  // namespace baywright::test
