// STL: triangles one by one, their corners repeated. Binary: 80 bytes of anything, the count, then 50 bytes a triangle,
// little-endian, floats of 32 bits. Text: "facet normal ... outer loop vertex ... endloop endfacet". A binary file may
// begin with the word that text begins with, so its size decides: 84 + 50 times the count. Normals are not read: the
// order of the corners says which side is out, and writers leave normals at nought.
#include "parts/mesh_bytes.h"

#include <algorithm>
#include <array>
#include <bit>
#include <cmath>
#include <cstdint>

namespace baywright::parts {

namespace {

constexpr std::size_t head = 84;  // bytes: 80 of anything and the count
constexpr std::size_t each = 50;  // bytes a triangle

std::uint32_t little_endian(std::string_view bytes, std::size_t at) {
  std::uint32_t out = 0;
  for (std::size_t i = 4; i-- > 0;) out = out << 8 | static_cast<unsigned char>(bytes[at + i]);
  return out;
}

[[noreturn]] void stop_at_byte(const std::string& file, std::size_t at, const std::string& what,
                               const std::string& right) {
  throw Stop{{file, 0, 0, "byte " + std::to_string(at) + ": " + what, right}};
}

void add_triangle(RawMesh& mesh) {
  const int last = static_cast<int>(mesh.vertices.size());
  mesh.triangles.push_back({last - 3, last - 2, last - 1});
}

RawMesh read_binary(std::string_view bytes, const std::string& file) {
  const std::size_t count = little_endian(bytes, head - 4);
  if (count > most_triangles) stop_too_many(file, std::to_string(most_triangles) + " triangles");
  RawMesh mesh;
  mesh.vertices.reserve(3 * count);
  mesh.triangles.reserve(count);
  for (std::size_t i = 0; i < count; ++i) {
    for (std::size_t corner = 0; corner < 3; ++corner) {
      std::array<double, 3> at{};
      for (std::size_t axis = 0; axis < 3; ++axis) {
        const std::size_t place = head + each * i + 12 * (corner + 1) + 4 * axis;
        at[axis] = std::bit_cast<float>(little_endian(bytes, place));
        if (!(std::abs(at[axis]) <= 1e9))  // NaN too
          stop_at_byte(file, place, "triangle " + std::to_string(i + 1) + " has a figure that is not usable",
                       "it must be finite and within -1e9 and 1e9");
      }
      mesh.vertices.emplace_back(at[0], at[1], at[2]);
    }
    add_triangle(mesh);
  }
  return mesh;
}

/// Text in any case of letters, as writers differ.
bool is(std::string_view word, std::string_view keyword) {
  return word.size() == keyword.size() && std::equal(word.begin(), word.end(), keyword.begin(), [](char a, char b) {
           return (a >= 'A' && a <= 'Z' ? static_cast<char>(a - 'A' + 'a') : a) == b;
         });
}

void expect(MeshText& text, std::string_view keyword) {
  const std::string_view word = text.next();
  const std::string wanted = '`' + std::string(keyword) + '`';
  if (word.empty()) text.stop("the file ends where " + wanted + " should follow", "bring it whole");
  if (is(word, keyword)) return;
  if (keyword == "endloop" && is(word, "vertex"))
    text.stop("this facet has more than three corners", "STL knows triangles only");
  if (keyword == "vertex" && is(word, "endloop")) text.stop("this facet has fewer than three corners", "it has three");
  text.stop(quoted_word(word) + " stands where " + wanted + " should", "bring the file as its program wrote it");
}

void read_facet(MeshText& text, RawMesh& mesh) {
  expect(text, "normal");
  for (int i = 0; i < 3; ++i)
    if (const auto word = text.next(); word.empty() || is(word, "outer"))
      text.stop("the normal of this facet has fewer than three figures", "it has three");
  expect(text, "outer");
  expect(text, "loop");
  for (int corner = 0; corner < 3; ++corner) {
    expect(text, "vertex");
    std::array<double, 3> at{};
    for (double& value : at) value = text.figure(text.next());
    mesh.vertices.emplace_back(at[0], at[1], at[2]);
  }
  expect(text, "endloop");
  expect(text, "endfacet");
  add_triangle(mesh);
}

RawMesh read_text(std::string_view bytes, const std::string& file) {
  MeshText text(bytes, file);
  RawMesh mesh;
  for (std::string_view word = text.next(); !word.empty(); word = text.next()) {
    if (!is(word, "solid"))
      text.stop(quoted_word(word) + " stands where `solid` should", "bring the file as its program wrote it");
    text.skip_line();  // its name
    for (word = text.next(); !is(word, "endsolid"); word = text.next()) {
      if (word.empty()) text.stop("the file ends before `endsolid`", "bring it whole");
      if (!is(word, "facet"))
        text.stop(quoted_word(word) + " stands where `facet` or `endsolid` should",
                  "bring the file as its program wrote it");
      if (mesh.triangles.size() == most_triangles) stop_too_many(file, std::to_string(most_triangles) + " triangles");
      read_facet(text, mesh);
    }
    text.skip_line();
  }
  return mesh;
}

}  // namespace

RawMesh read_stl(std::string_view bytes, const std::string& file) {
  const std::size_t count = bytes.size() >= head ? little_endian(bytes, head - 4) : 0;
  if (bytes.size() >= head && bytes.size() == head + each * count) return read_binary(bytes, file);
  const std::size_t first = std::min(bytes.find_first_not_of(" \t\r\n"), bytes.size());
  const bool text = is(bytes.substr(first, 5), "solid") && bytes.find('\0') == std::string_view::npos;
  if (text) return read_text(bytes, file);
  if (bytes.size() < head)
    stop_at_byte(file, bytes.size(), "the file ends within the head of an STL file",
                 "text begins with `solid`, and a binary file has 84 bytes and 50 for each triangle");
  stop_at_byte(file, head - 4,
               std::to_string(count) + " triangles need " + std::to_string(head + each * count) +
                   " bytes, and the file has " + std::to_string(bytes.size()),
               "bring the file whole, as its program wrote it");
}

}  // namespace baywright::parts
