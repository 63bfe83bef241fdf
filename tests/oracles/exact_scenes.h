#pragma once
// Random scenes for the exact oracle, most of them built to touch and then shifted by a little.
#include "exact_body.h"

namespace baywright::oracle {

struct Scene {
  Body a;
  Pose pose_a;
  Body b;
  Pose pose_b;
};

struct Family {
  const char* name;
  std::vector<Shape> a;
  std::vector<Shape> b;
};

[[nodiscard]] const std::vector<Family>& families();

/// The same scene for the same number.
[[nodiscard]] Scene any_scene(const Family& family, std::uint64_t number);

/// C++ that makes the scene, for a test.
[[nodiscard]] std::string code(const Scene& scene);

}  // namespace baywright::oracle
