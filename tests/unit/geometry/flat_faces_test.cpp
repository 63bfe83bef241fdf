#include "geometry/flat_faces.h"

#include "support/check_mm.h"

#include <doctest/doctest.h>

using namespace baywright::geometry;
using baywright::test::check_mm;

namespace {

/// A box of 20 x 10 x 4 with a square shaft of 2 through it along z; `corner` is one more on an edge of the top alone.
FlatFaces box_with_a_shaft(bool corner) {
  const auto at = [](const Outline& outline, double z) {
    FlatFaces::Loop out;
    for (const Vec2& p : outline) out.emplace_back(p, z);
    return out;
  };
  const Outline border{{0, 0}, {20, 0}, {20, 10}, {0, 10}};
  const Outline shaft{{9, 4}, {9, 6}, {11, 6}, {11, 4}};  // clockwise: its inside is outside
  FlatFaces faces;
  Outline top = border;
  if (corner) top.insert(top.begin() + 1, Vec2(7, 0));
  faces.add(at(top, 4), {at(shaft, 4)});
  faces.add(at({border.rbegin(), border.rend()}, 0), {at(shaft, 0)});
  for (const Outline& ring : {border, shaft})
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const Vec2& a = ring[i];
      const Vec2& b = ring[(i + 1) % ring.size()];
      faces.add({{a, 0}, {b, 0}, {b, 4}, {a, 4}});
    }
  return faces;
}

}  // namespace

TEST_CASE("flat faces make a solid with a shaft") {
  const auto made = box_with_a_shaft(false).mesh();
  const Mesh& mesh = std::get<Mesh>(made);
  CHECK(mesh.closed());
  for (const MeshFlaw& flaw : mesh.flaws()) CHECK(flaw.kind == MeshFlaw::Kind::split_vertices);  // none was turned
  check_mm(mesh.volume(), 20 * 10 * 4 - 2 * 2 * 4, 1e-9);
  CHECK(mesh.contains({8, 5, 2}));
  CHECK(!mesh.contains({10, 5, 2}));
}

TEST_CASE("a corner that only one of two faces has leaves a gap") {
  const auto made = box_with_a_shaft(true).mesh();
  CHECK(!std::get<Mesh>(made).closed());
}

TEST_CASE("faces without area make nothing") {
  FlatFaces faces;
  faces.add({});
  faces.add({{1, 1, 1}, {2, 2, 2}, {3, 3, 3}});
  CHECK(std::holds_alternative<Refusal>(faces.mesh()));
}
