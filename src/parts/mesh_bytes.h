#pragma once
// What the readers of mesh files share: the raw triangles, the words of a text with their places, figures. Internal.
#include "geometry/mesh.h"
#include "parts/document.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace baywright::parts {

/// The surface as a file has it: its own unit and axes.
struct RawMesh {
  std::vector<geometry::Vec3> vertices;
  std::vector<geometry::Mesh::Triangle> triangles;  // indices into `vertices`
};

/// Most triangles that a file may have: a hundred times a finely finned heatsink, and 150 MB once read.
inline constexpr std::size_t most_triangles = 2'000'000;

/// Text of a mesh file, word by word. Lines end with "\n", "\r\n" or "\r".
class MeshText {
 public:
  MeshText(std::string_view text, std::string file) : text_(text), file_(std::move(file)) {}

  /// The next word; empty at the end of the text. Skips line ends.
  std::string_view next();
  /// The next word of this line; empty at its end.
  std::string_view next_in_line();
  /// The rest of the line is passed over.
  void skip_line();

  /// Stops at the word given last: FILE:LINE:COL.
  [[noreturn]] void stop(const std::string& what, const std::string& right) const;
  [[noreturn]] void stop_at(std::size_t place, const std::string& what, const std::string& right) const;
  [[nodiscard]] std::size_t place() const { return word_; }  // of the word given last
  /// A finite figure, or Stop.
  [[nodiscard]] double figure(std::string_view word) const;

 private:
  void skip(std::string_view characters);
  std::string_view take();

  std::string_view text_;
  std::string file_;
  std::size_t at_ = 0;
  std::size_t word_ = 0;
};

/// A word as messages quote it: its first characters.
[[nodiscard]] std::string quoted_word(std::string_view word);

[[noreturn]] void stop_too_many(const std::string& file, const std::string& what);

[[nodiscard]] RawMesh read_obj(std::string_view text, const std::string& file);   // obj.cpp
[[nodiscard]] RawMesh read_stl(std::string_view bytes, const std::string& file);  // stl.cpp

}  // namespace baywright::parts
