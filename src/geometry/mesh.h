#pragma once
// A surface of triangles, checked and made ready once. Where it is closed and clean it has an inside and is a solid.
#include "geometry/vectors.h"

#include <array>
#include <memory>
#include <span>
#include <string>
#include <variant>
#include <vector>

namespace baywright::geometry {

struct Refusal;

/// What was found wrong with a surface.
struct MeshFlaw {
  enum class Kind {
    split_vertices,  // equal points given more than once: merged. What STL always has; no flaw of its own
    degenerate,      // triangles without area: left out
    duplicate,       // triangles given more than once: left out but for one
    turned,          // triangles wound against their neighbours: turned
    inside_out,      // whole closed shells whose normals looked inward though nothing is around them: turned
    open_edge,       // edges with one triangle only: no inside
    crowded_edge,    // edges of more than two triangles: no inside
    one_sided,       // the surface cannot be wound one way (a Moebius strip): no inside
    crossing,        // pairs of triangles that run through each other: no inside
  };
  Kind kind = Kind::open_edge;
  int count = 0;
  Vec3 where{0.0};      // one of them, in the mesh's coordinates
  bool mended = false;  // harmless or repaired: the mesh is a solid all the same
};

/// Immutable. Copies are cheap (shared data).
class Mesh {
 public:
  using Triangle = std::array<int, 3>;  // indices of corners, counter-clockwise seen from outside

  /// Merges equal vertices, leaves out what has no area or is double, winds all one way with outward normals (a shell
  /// within a shell is a cavity). Refused: no triangle with area, an index out of range, a figure that is not finite or
  /// beyond `largest_mm`.
  [[nodiscard]] static std::variant<Mesh, Refusal> make(std::vector<Vec3> vertices, std::vector<Triangle> triangles);

  [[nodiscard]] std::span<const Vec3> vertices() const;
  [[nodiscard]] std::span<const Triangle> triangles() const;
  [[nodiscard]] const std::vector<MeshFlaw>& flaws() const;
  [[nodiscard]] bool closed() const;  // has an inside: no flaw that was not mended
  [[nodiscard]] const Bounds& bounds() const;
  [[nodiscard]] double volume() const;  // mm³; 0 unless closed

  /// Whether p (the mesh's coordinates) is inside. Only for closed meshes; on the surface either answer.
  [[nodiscard]] bool contains(const Vec3& p) const;

  struct Data;  // with the tree over the triangles; mesh_data.h, internal to the room
  [[nodiscard]] const Data& data() const { return *data_; }

 private:
  explicit Mesh(std::shared_ptr<const Data> data) : data_(std::move(data)) {}
  std::shared_ptr<const Data> data_;
};

}  // namespace baywright::geometry
