// OBJ through tinyobjloader, which takes what it cannot read for nought, follows any index and cuts polygons along the
// shorter diagonal, inside or not. So each line that counts is checked first, with its place; the library then reads,
// what it read is held against what was checked, and polygons are cut here.
#include "parts/ears.h"
#include "parts/mesh_bytes.h"

#include <algorithm>
#include <charconv>
#include <istream>
#include <streambuf>
#include <tiny_obj_loader.h>

namespace baywright::parts {

static_assert(sizeof(tinyobj::real_t) == 8, "link tinyobjloader_double: floats are good to 1e-5 of a size only");

namespace {

constexpr int most_corners = 1000;         // of one polygon
constexpr long most_work = 1'000'000'000;  // steps of cutting polygons, some seconds

/// What the text was found to hold.
struct Found {
  std::size_t vertices = 0;
  std::size_t faces = 0;
  std::size_t triangles = 0;
};

/// The first part of "12/3/4", "12//4", "12".
long index_of(const MeshText& text, std::string_view word) {
  const std::string right = "a corner is the number of a `v` line, as in 12, 12/3, 12/3/4 or 12//4";
  if (word.find_first_not_of("0123456789-/") != std::string_view::npos)
    text.stop(quoted_word(word) + " is no corner", right);
  long index = 0;
  const std::size_t end = std::min(word.find('/'), word.size());
  const auto [stopped, error] = std::from_chars(word.data(), word.data() + end, index);
  if (error != std::errc() || stopped != word.data() + end) text.stop(quoted_word(word) + " is no corner", right);
  if (index == 0) text.stop("a corner is numbered 0", "`v` lines count from 1");
  return index;
}

struct Largest {
  long index = 0;
  std::size_t place = 0;
};

void check_face(MeshText& text, const std::string& file, Found& found, Largest& largest) {
  const std::size_t start = text.place();
  int corners = 0;
  for (std::string_view word = text.next_in_line(); !word.empty(); word = text.next_in_line()) {
    const long index = index_of(text, word);
    if (index < 0 && static_cast<std::size_t>(-index) > found.vertices)
      text.stop("corner " + std::to_string(index) + " counts back beyond the first of " +
                    std::to_string(found.vertices) + " `v` lines",
                "number them from 1, or back from the last one");
    if (index > largest.index) largest = {index, text.place()};
    if (++corners > most_corners)
      text.stop("this face has more than " + std::to_string(most_corners) + " corners", "bring it as triangles");
  }
  if (corners < 3) text.stop_at(start, "this face has " + std::to_string(corners) + " corners", "it needs three");
  ++found.faces;
  found.triangles += static_cast<std::size_t>(corners) - 2;
  if (found.triangles > most_triangles) stop_too_many(file, std::to_string(most_triangles) + " triangles");
}

Found check_text(std::string_view bytes, const std::string& file) {
  if (const std::size_t nul = bytes.find('\0'); nul != std::string_view::npos)
    throw Stop{
        {file, 0, 0, "byte " + std::to_string(nul) + ": this is not text", "OBJ is text; is it another format?"}};
  MeshText text(bytes, file);
  Found found;
  Largest largest;
  for (std::string_view word = text.next(); !word.empty(); word = text.next()) {
    if (word == "v") {
      for (int axis = 0; axis < 3; ++axis) static_cast<void>(text.figure(text.next_in_line()));
      if (++found.vertices > most_triangles) stop_too_many(file, std::to_string(most_triangles) + " corners");
    } else if (word == "f") {
      check_face(text, file, found, largest);
    }
    text.skip_line();
  }
  if (static_cast<std::size_t>(largest.index) > found.vertices)
    text.stop_at(largest.place,
                 "corner " + std::to_string(largest.index) + " is not there: the file has " +
                     std::to_string(found.vertices) + " `v` lines",
                 "bring the file whole, as its program wrote it");
  return found;
}

/// Reads memory where it is.
class Bytes : public std::streambuf {
 public:
  explicit Bytes(std::string_view bytes) {
    char* from = const_cast<char*>(bytes.data());  // NOLINT: a get area is never written
    setg(from, from, from + bytes.size());
  }
};

struct Reading {
  RawMesh mesh;
  std::vector<std::vector<int>> polygons;
};

void take_vertex(void* reading, tinyobj::real_t x, tinyobj::real_t y, tinyobj::real_t z, tinyobj::real_t) {
  static_cast<Reading*>(reading)->mesh.vertices.emplace_back(x, y, z);
}

void take_face(void* reading, tinyobj::index_t* corners, int count) {
  auto& to = *static_cast<Reading*>(reading);
  std::vector<int> polygon;
  for (int i = 0; i < count; ++i) {
    const int index = corners[i].vertex_index;
    polygon.push_back(index > 0 ? index - 1 : static_cast<int>(to.mesh.vertices.size()) + index);
  }
  to.polygons.push_back(std::move(polygon));
}

[[noreturn]] void stop_misread(const std::string& file) {
  throw Stop{{file, 0, 0, "this OBJ file could not be read", "bring it as its program wrote it"}};
}

void cut_polygons(Reading& reading, const std::string& file) {
  const int vertices = static_cast<int>(reading.mesh.vertices.size());
  long work = 0;
  std::vector<geometry::Vec3> corners;
  for (const std::vector<int>& polygon : reading.polygons) {
    corners.clear();
    for (const int corner : polygon) {
      if (corner < 0 || corner >= vertices) stop_misread(file);  // not what was checked
      corners.push_back(reading.mesh.vertices[static_cast<std::size_t>(corner)]);
    }
    for (const std::array<int, 3>& t : cut_ears(corners, work))
      reading.mesh.triangles.push_back({polygon[static_cast<std::size_t>(t[0])],
                                        polygon[static_cast<std::size_t>(t[1])],
                                        polygon[static_cast<std::size_t>(t[2])]});
    if (work > most_work) throw Stop{{file, 0, 0, "its faces are too intricate to be cut", "bring it as triangles"}};
  }
}

}  // namespace

RawMesh read_obj(std::string_view text, const std::string& file) {
  const Found found = check_text(text, file);
  Bytes bytes(text);
  std::istream stream(&bytes);
  tinyobj::callback_t callback;
  callback.vertex_cb = take_vertex;
  callback.index_cb = take_face;
  Reading reading;
  reading.mesh.vertices.reserve(found.vertices);
  reading.polygons.reserve(found.faces);
  const bool read = tinyobj::LoadObjWithCallback(stream, callback, &reading);  // materials are not asked for
  if (!read || reading.mesh.vertices.size() != found.vertices || reading.polygons.size() != found.faces)
    stop_misread(file);
  reading.mesh.triangles.reserve(found.triangles);
  cut_polygons(reading, file);
  return std::move(reading.mesh);
}

}  // namespace baywright::parts
