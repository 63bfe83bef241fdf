#pragma once
// A seating as things to look at: made once for a seating, then shown in many ways (render/look.h).
#include "build/build.h"
#include "fit/seated.h"
#include "fit/seating.h"
#include "render/shape.h"

#include <array>
#include <memory>
#include <string>
#include <vector>

namespace baywright::render {

struct KeptMaps;

/// What a thing is to the eye: decides its quiet colour.
enum class Material { board, socket, metal, card, chips, pad, heatsink, screw, case_part };

struct Thing {
  int element = -1;  // in the seating's scene; `Surface::id` is element + 1
  std::string part;  // as people call it
  std::string body;
  Material material = Material::case_part;
  bool drive = false;      // the drive's own, with what it wears; else the machine's
  bool late = false;       // the drive's own, but does not come in with it: stand-offs, screws, a cable's plug
  bool out_first = false;  // the machine's, and out of it while the drive comes in
  geometry::Placed placed;
  geometry::Bounds bounds;
  Shape shape;
  geometry::Vec3 apart{0.0};  // mm: where it goes when everything is taken apart along the way that it came in
};

/// The room that two things both take up, as a solid region.
struct Overlap {
  std::size_t finding = 0;        // index in the seating's findings
  std::array<int, 2> elements{};  // the drive's first
  fit::Verdict verdict = fit::Verdict::undecided;
  std::shared_ptr<const Mesh> mesh;
  std::shared_ptr<const Strokes> edges;
  double volume = 0.0;  // mm³
};

/// Where a gap or an overlap is measured: between two points of two things, with what to write there.
struct Measured {
  std::size_t finding = 0;
  geometry::Vec3 from{0.0};  // on the first of the finding's `between`
  geometry::Vec3 to{0.0};    // on the second
  fit::Verdict verdict = fit::Verdict::undecided;
  std::string between;  // "fin heatsink, tray"
  std::string figure;   // "0.40 over", "1.60 clear"
  std::string limits;   // "at worst 0.98 over, at best 0.18 clear"
  std::string asked;    // "asked 0.50"; empty: none was
};

struct Model {
  std::vector<Thing> things;
  std::vector<Overlap> overlaps;
  std::vector<Measured> gaps;  // of findings that have a gap between solids: the one that decides, then worst first.
                               // Before them what the verdict comes from, where that is no such gap but has a place: a
                               // screw that no driver reaches
  geometry::Pose place;        // the place's frame
  geometry::Vec3 face{0.0, 0.0, 1.0};  // unit: the way the drive's component side or lid looks
  geometry::Bounds bounds;             // of everything
  geometry::Bounds drive;  // of the drive with its socket, or of what sits there already; else of the place's part
  std::shared_ptr<KeptMaps> maps;          // clearance maps that were asked for already (render/clearance_map.h)
  std::vector<geometry::Movement> way_in;  // the seating's way out, from the seat outward
};

/// `seated` may hold no elements of its own (a drive that cannot be put there): then the machine alone is shown.
[[nodiscard]] Model model_of(const build::Build& build, const fit::Seated& seated, const fit::Seating& seating);

}  // namespace baywright::render
