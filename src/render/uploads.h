#pragma once
// Meshes and strokes in the memory of the graphics card, each as long as somebody holds it. Internal to the room.
#include "render/frame.h"
#include "render/handle.h"

#include <unordered_map>

namespace baywright::render {

struct Uploaded {
  std::weak_ptr<const void> source;
  std::uint64_t serial = 0;  // never the same again, where an address may be
  VertexArray arrays;
  Buffer buffer;
  GLsizei count = 0;           // corners, or lines
  bool coloured = false;       // has a colour a corner
  geometry::Vec3 middle{0.0};  // of its bounds
};

class Uploads {
 public:
  /// Uploaded at the first call; none for what is empty. Valid until the next call of `prune`.
  [[nodiscard]] const Uploaded* of(const std::shared_ptr<const Mesh>& mesh);
  [[nodiscard]] const Uploaded* of(const std::shared_ptr<const Strokes>& strokes);

  /// Drops what nobody holds any more.
  void prune();

 private:
  template <typename Shared>
  const Uploaded* find(const Shared& source);

  std::unordered_map<const void*, Uploaded> kept_;
  std::uint64_t serial_ = 0;
};

}  // namespace baywright::render
