// Mesh files against closed forms (areas, volumes) and against each other: the same body as OBJ, as STL text and as
// binary STL. Formats by their public descriptions: OBJ by its appendix B1 of 1995, STL by the library of congress
// (fdd000504 and fdd000505); from memory, and held by reading the three of them alike.
#include "parts/mesh_file.h"

#include "parts/ears.h"
#include "parts/model.h"
#include "support/check_mm.h"

#include <bit>
#include <charconv>
#include <cmath>
#include <cstdint>
#include <cstring>
#include <doctest/doctest.h>
#include <filesystem>
#include <fstream>
#include <memory>
#include <numbers>
#include <optional>
#include <random>
#include <sstream>

using namespace baywright;
using geometry::Vec3;
using parts::RawMesh;
using test::check_mm;

namespace {

/// A box of 4 x 3 x 2, six polygons.
const std::string box_obj =
    "# a box\nmtllib none.mtl\no box\n"
    "v 0 0 0\nv 4 0 0\nv 4 3 0\nv 0 3 0\nv 0 0 2\nv 4 0 2\nv 4 3 2\nv 0 3 2\nvn 0 0 1\nvt 0 0\ns off\n"
    "f 1 4 3 2\nf 5/1/1 6/1/1 7/1/1 8/1/1\nf 1//1 2//1 6//1 5//1\nf 2/1 3/1 7/1 6/1\nf -6 -5 -1 -2\nf 4 1 5 8\n";

double volume(const RawMesh& mesh) {
  double six = 0.0;
  for (const auto& t : mesh.triangles) {
    const auto at = [&](std::size_t i) { return mesh.vertices[static_cast<std::size_t>(t[i])]; };
    six += glm::dot(at(0), glm::cross(at(1), at(2)));
  }
  return six / 6.0;
}

std::string stl_text(const RawMesh& mesh) {
  std::ostringstream out;
  out << "solid a box\n";
  for (const auto& t : mesh.triangles) {
    out << "  facet normal 0 0 0\n    outer loop\n";
    for (const int corner : t) {
      const Vec3& v = mesh.vertices[static_cast<std::size_t>(corner)];
      out << "      vertex " << v.x << ' ' << v.y << ' ' << v.z << '\n';
    }
    out << "    endloop\n  endfacet\n";
  }
  out << "endsolid a box\n";
  return out.str();
}

void add_word(std::string& bytes, std::uint32_t word) {
  for (int i = 0; i < 4; ++i) bytes += static_cast<char>(word >> 8 * i & 0xffu);
}

std::string stl_binary(const RawMesh& mesh, std::string head) {
  head.resize(80, ' ');
  add_word(head, static_cast<std::uint32_t>(mesh.triangles.size()));
  for (const auto& t : mesh.triangles) {
    for (int i = 0; i < 3; ++i) add_word(head, 0);
    for (const int corner : t)
      for (int axis = 0; axis < 3; ++axis)
        add_word(head, std::bit_cast<std::uint32_t>(
                           static_cast<float>(mesh.vertices[static_cast<std::size_t>(corner)][axis])));
    head.append(2, '\0');
  }
  return head;
}

/// In a buffer of exactly that size, so that a sanitizer sees one byte too far. The message, empty where it was read.
std::string message(const std::string& bytes, const std::string& file) {
  const auto buffer = std::make_unique<char[]>(bytes.size());
  std::memcpy(buffer.get(), bytes.data(), bytes.size());
  try {
    const RawMesh mesh = parts::read_mesh_bytes({buffer.get(), bytes.size()}, file);
    REQUIRE(!mesh.triangles.empty());
    for (const auto& t : mesh.triangles)
      for (const int corner : t) REQUIRE(static_cast<std::size_t>(corner) < mesh.vertices.size());
    return {};
  } catch (const parts::Stop& stop) {
    return stop.fault.text();
  }
}

void check_message(const std::string& bytes, const std::string& file, const std::string& says) {
  CHECK(message(bytes, file).starts_with(says));
}

TEST_CASE("a box is read alike from OBJ, from STL text and from binary STL that begins with solid") {
  const RawMesh obj = parts::read_mesh_bytes(box_obj, "box.OBJ");
  CHECK(obj.vertices.size() == 8);
  REQUIRE(obj.triangles.size() == 12);
  check_mm(volume(obj), 4.0 * 3.0 * 2.0, 1e-12);
  const RawMesh text = parts::read_mesh_bytes(stl_text(obj), "box.stl");
  const RawMesh binary = parts::read_mesh_bytes(stl_binary(obj, "solid box"), "box.STL");
  for (const RawMesh* mesh : {&text, &binary}) {
    REQUIRE(mesh->triangles.size() == 12);
    check_mm(volume(*mesh), 24.0, 1e-12);
    for (std::size_t i = 0; i < 12; ++i)
      for (std::size_t corner = 0; corner < 3; ++corner)
        CHECK(mesh->vertices[static_cast<std::size_t>(mesh->triangles[i][corner])] ==
              obj.vertices[static_cast<std::size_t>(obj.triangles[i][corner])]);
  }
}

TEST_CASE("line ends of any kind, no line end at all, capitals and signs are read") {
  for (const std::string& end : {std::string("\r\n"), std::string("\r")}) {
    std::string text = box_obj;
    for (std::size_t at = 0; (at = text.find('\n', at)) != std::string::npos; at += end.size())
      text.replace(at, 1, end);
    check_mm(volume(parts::read_mesh_bytes(text, "x.obj")), 24.0, 1e-12);
  }
  CHECK(parts::read_mesh_bytes("v +0 0.e0 .0\nv 1e0 0 0\nv 0 -1E+0 0\nf 1 2 3", "x.obj").triangles.size() == 1);
  CHECK(parts::read_mesh_bytes("SOLID\nFacet Normal nan nan nan Outer Loop\nVERTEX 0 0 0 vertex 1 0 0 vertex 0 1 0\n"
                               "endloop endfacet EndSolid",
                               "x.stl")
            .triangles.size() == 1);
}

TEST_CASE("a face may name corners that come after it") {
  CHECK(parts::read_mesh_bytes("f 1 2 3\nv 0 0 0\nv 1 0 0\nv 0 1 0\n", "x.obj").triangles.size() == 1);
}

TEST_CASE("vertices that no face uses are left out") {
  CHECK(parts::read_mesh_bytes("v 900 0 0\nv 0 0 0\nv 1 0 0\nv 0 1 0\nf 2 3 4\n", "x.obj").vertices.size() == 3);
}

// The double that is nearest to the text, by the standard library. The OBJ reader adds digit by digit, which costs some
// last places: 4e-16 of the figure each.
TEST_CASE("figures of an OBJ file are those of its text to a few last places") {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> any(-2000.0, 2000.0);
  int exact = 0;
  for (int i = 0; i < 300; ++i) {
    char text[64];
    std::snprintf(text, sizeof text, i % 2 == 0 ? "%.6f" : "%.9e", any(random));
    double want = 0.0;
    std::from_chars(text, text + std::strlen(text), want);
    const RawMesh got = parts::read_mesh_bytes("v " + std::string(text) + " 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 3\n", "x.obj");
    CHECK(std::abs(got.vertices[0].x - want) <= 4e-15 * std::abs(want));
    exact += got.vertices[0].x == want ? 1 : 0;
  }
  CHECK(exact > 100);
}

double turned_area(const Vec3& a, const Vec3& b, const Vec3& c, const Vec3& n) {
  return 0.5 * glm::dot(n, glm::cross(b - a, c - a));
}

/// The triangles lie in the polygon without overlapping: their areas, each positive, add up to the polygon's (Gauss's
/// formula, `want`).
void check_cut(const std::vector<Vec3>& polygon, const Vec3& normal, double want) {
  long work = 0;
  const auto triangles = parts::cut_ears(polygon, work);
  REQUIRE(triangles.size() == polygon.size() - 2);
  double sum = 0.0;
  for (const auto& t : triangles) {
    const double area = turned_area(polygon[static_cast<std::size_t>(t[0])], polygon[static_cast<std::size_t>(t[1])],
                                    polygon[static_cast<std::size_t>(t[2])], normal);
    CHECK(area > 0.0);
    sum += area;
  }
  check_mm(sum, want, 1e-9 * want);
}

TEST_CASE("polygons with dents are cut within themselves") {
  const Vec3 up(0, 0, 1);
  // A dart whose shorter diagonal (from 0,0 to 10,0) runs outside: cut along it, the areas would be 500 and -5.
  check_cut({{0, 0, 0}, {5, 1, 0}, {10, 0, 0}, {5, 100, 0}}, up, 0.5 * 10 * 100 - 0.5 * 10 * 1);
  // An L with a corner on each straight side: every corner must be used.
  check_cut({{0, 0, 0}, {2, 0, 0}, {4, 0, 0}, {4, 1, 0}, {1, 1, 0}, {1, 3, 0}, {0, 3, 0}, {0, 1, 0}}, up, 4.0 + 2.0);
  // A comb of 20 teeth, each 1 wide and 9 high, on a back 1 high and 39 wide; in the plane x = 7, seen from -x.
  std::vector<Vec3> comb = {{7, 39, 0}, {7, 0, 0}};
  for (int tooth = 0; tooth < 20; ++tooth)
    for (const auto& [y, z] : {std::pair(0, 1), std::pair(0, 10), std::pair(1, 10), std::pair(1, 1)})
      if (!(tooth == 0 && y == 0 && z == 1)) comb.push_back({7, 2 * tooth + y, z});
  comb.erase(comb.end() - 1);
  check_cut(comb, Vec3(-1, 0, 0), 39.0 + 20.0 * 9.0);
}

TEST_CASE("star-shaped polygons in any plane are cut within themselves") {
  std::mt19937 random(11);
  std::uniform_real_distribution<double> far(1.0, 10.0);
  std::uniform_real_distribution<double> any(-1.0, 1.0);
  for (int round = 0; round < 200; ++round) {
    const Vec3 n = glm::normalize(Vec3(any(random), any(random), any(random)) + Vec3(0.01));
    const Vec3 u = geometry::square_to(n);
    const Vec3 v = glm::cross(n, u);
    const int corners = 4 + round % 60;
    std::vector<Vec3> polygon;
    double area = 0.0;
    double before = 0.0;
    const double step = 2.0 * std::numbers::pi / corners;
    double first = 0.0;
    for (int i = 0; i < corners; ++i) {
      const double r = far(random);
      polygon.push_back(Vec3(3, 4, 5) + r * (std::cos(i * step) * u + std::sin(i * step) * v));
      if (i == 0) first = r;
      area += 0.5 * r * before * std::sin(step);
      before = r;
    }
    area += 0.5 * first * before * std::sin(step);
    check_cut(polygon, n, area);
  }
}

const std::string head = "v 0 0 0\nv 1 0 0\nv 0 1 0\n";

TEST_CASE("what an OBJ file may not hold is refused where it stands") {
  check_message("", "x.obj", "x.obj: the file is empty; ");
  check_message("# only a head\no thing\n", "x.obj", "x.obj: the file has no triangles; ");
  check_message(head, "x.obj", "x.obj: the file has no triangles; ");
  check_message(head + "l 1 2\n", "x.obj", "x.obj: the file has no triangles; ");
  check_message(head + "f 1 2 4\n", "x.obj", "x.obj:4:7: corner 4 is not there: the file has 3 `v` lines; ");
  check_message(head + "f 1 2 0\n", "x.obj", "x.obj:4:7: a corner is numbered 0; `v` lines count from 1");
  check_message(head + "f 1 2 -4\n", "x.obj", "x.obj:4:7: corner -4 counts back beyond the first of 3 `v` lines; ");
  check_message(head + "f 1 2 99999999999999999999\n", "x.obj", "x.obj:4:7: `99999999999999999999` is no corner; ");
  check_message(head + "f 1 2 three\n", "x.obj", "x.obj:4:7: `three` is no corner; ");
  check_message(head + "f 1 2\n", "x.obj", "x.obj:4:1: this face has 2 corners; it needs three");
  check_message(head + "  f 1 2 \\\n3\n", "x.obj", "x.obj:4:9: `\\` is no corner; ");
  check_message("v 0 0\n", "x.obj", "x.obj:1:6: a figure is missing; ");
  check_message("# é\nv 0 1,5 0\n", "x.obj", "x.obj:2:5: `1,5` has a comma; figures are written with a decimal point");
  check_message("v 0 nan 0\n", "x.obj", "x.obj:1:5: `nan` is no usable figure; ");
  check_message("v 0 0 -inf\n", "x.obj", "x.obj:1:7: `-inf` is no usable figure; ");
  check_message("v 0 0 1e999\n", "x.obj", "x.obj:1:7: `1e999` is no usable figure; ");
  check_message("v 0 0 1e+\n", "x.obj", "x.obj:1:7: `1e+` is no figure; a figure is written as 12.5 or 1.25e1");
  check_message("v 0 0 0x10\n", "x.obj", "x.obj:1:7: `0x10` is no figure; ");
  check_message(std::string("v 0 0\0 0", 8), "x.obj", "x.obj: byte 5: this is not text; ");
  std::string many = head + "f";
  for (int i = 0; i < 1001; ++i) many += " 1";
  check_message(many, "x.obj", "x.obj:4:2003: this face has more than 1000 corners; bring it as triangles");
  check_message("solid", "x.step", "x.step: a model in this format is not read; bring it as .obj or .stl");
}

TEST_CASE("what an STL file may not hold is refused where it stands") {
  const std::string facet = "solid x\nfacet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex 1 0 0\nvertex 0 1 0\n";
  check_message("", "x.stl", "x.stl: the file is empty; ");
  check_message("solid x\nendsolid x\n", "x.stl", "x.stl: the file has no triangles; ");
  check_message(facet, "x.stl", "x.stl:7:1: the file ends where `endloop` should follow; bring it whole");
  check_message(facet + "endloop\nendfacet\n", "x.stl", "x.stl:9:1: the file ends before `endsolid`; bring it whole");
  check_message(facet + "vertex 1 1 0\n", "x.stl", "x.stl:7:1: this facet has more than three corners; ");
  check_message("solid x\nfacet normal 0 0 1\nouter loop\nvertex 0 0 0\nendloop\n", "x.stl",
                "x.stl:5:1: this facet has fewer than three corners; it has three");
  check_message("solid x\nfacet normal 0 0 1\nouter loop\nvertex 0 0,5 0\n", "x.stl",
                "x.stl:4:10: `0,5` has a comma; ");
  check_message("solid x\nfacet normal 0 outer loop\n", "x.stl",
                "x.stl:2:16: the normal of this facet has fewer than ");
  check_message("solid x\nfacet normal 0 0 1\nouter loop\nvertex 0 0 nan\n", "x.stl",
                "x.stl:4:12: `nan` is no usable figure; ");
  check_message("solid x\nfaset\n", "x.stl", "x.stl:2:1: `faset` stands where `facet` or `endsolid` should; ");
  check_message("garbage", "x.stl", "x.stl: byte 7: the file ends within the head of an STL file; ");

  const std::string box = stl_binary(parts::read_mesh_bytes(box_obj, "b.obj"), "box");
  check_message(box.substr(0, box.size() - 1), "x.stl",
                "x.stl: byte 80: 12 triangles need 684 bytes, and the file has 683; ");
  check_message(box.substr(0, 84), "x.stl", "x.stl: byte 80: 12 triangles need 684 bytes, and the file has 84; ");
  std::string absurd = box;
  for (std::size_t i = 80; i < 84; ++i) absurd[i] = '\xff';
  check_message(absurd, "x.stl",
                "x.stl: byte 80: 4294967295 triangles need 214748364834 bytes, and the file has 684; ");
  std::string nan = box;
  for (std::size_t i = 100; i < 104; ++i) nan[i] = '\xff';
  check_message(nan, "x.stl", "x.stl: byte 100: triangle 1 has a figure that is not usable; ");
  std::string none = box.substr(0, 84);
  for (std::size_t i = 80; i < 84; ++i) none[i] = '\0';
  check_message(none, "x.stl", "x.stl: the file has no triangles; ");
}

TEST_CASE("a model of more than two million triangles is refused by its count") {
  std::string bytes(84 + 50 * 2'000'001, '\0');
  const std::uint32_t count = 2'000'001;
  for (std::size_t i = 0; i < 4; ++i) bytes[80 + i] = static_cast<char>(count >> 8 * i & 0xffu);
  check_message(bytes, "x.stl", "x.stl: the model has more than 2000000 triangles; ");
}

TEST_CASE("a missing file, a folder and a device are refused") {
  const auto says = [](const std::filesystem::path& path) -> std::string {
    try {
      static_cast<void>(parts::read_mesh_file(path));
    } catch (const parts::Stop& stop) {
      return stop.fault.text();
    }
    return {};
  };
  CHECK(says("/nowhere/x.obj").starts_with("/nowhere/x.obj: there is no such file; "));
  CHECK(says("/tmp").starts_with("/tmp: this is a folder; "));
  CHECK(says("/dev/zero").starts_with("/dev/zero: this is no plain file; "));
}

TEST_CASE("every prefix of a model is read or refused in one line, and no prefix of binary STL is read") {
  const RawMesh box = parts::read_mesh_bytes(box_obj, "b.obj");
  const std::string binary = stl_binary(box, "solid box");
  for (std::size_t size = 0; size < binary.size(); ++size) CHECK(!message(binary.substr(0, size), "x.stl").empty());
  int read = 0;
  int refused = 0;
  for (const auto& [text, file] : {std::pair(box_obj, "x.obj"), std::pair(stl_text(box), "x.stl")})
    for (std::size_t size = 0; size < text.size(); ++size) {
      const std::string said = message(text.substr(0, size), file);
      CHECK(said.find('\n') == std::string::npos);
      ++(said.empty() ? read : refused);
    }
  CHECK(read > 40);
  CHECK(refused > 500);
}

// Few characters, so that they come together in ways that mean something.
TEST_CASE("models with bytes changed, lost and doubled are read or refused in one line") {
  std::mt19937 random(20);
  const RawMesh box = parts::read_mesh_bytes(box_obj, "b.obj");
  const std::vector<std::pair<std::string, std::string>> files = {
      {box_obj, "x.obj"}, {stl_text(box), "x.stl"}, {stl_binary(box, "solid box"), "x.stl"}};
  const std::string characters = std::string("0179-+.,e/ \t\r\nvfsn#\\") + '\0' + '\xff' + '\x7f';
  int read = 0;
  int refused = 0;
  for (int round = 0; round < 6000; ++round) {
    auto [bytes, file] = files[static_cast<std::size_t>(round) % files.size()];
    for (int change = 1 + round % 3; change > 0; --change) {
      const std::size_t at = random() % bytes.size();
      const std::size_t length = random() % 9;
      if (random() % 3 == 0)
        bytes.erase(at, length);
      else if (random() % 3 == 0)
        bytes.insert(at, bytes.substr(random() % bytes.size(), length));
      else
        bytes[at] = characters[random() % characters.size()];
    }
    const std::string said = message(bytes, file);
    REQUIRE(said.find('\n') == std::string::npos);
    ++(said.empty() ? read : refused);
  }
  CHECK(read > 600);
  CHECK(refused > 600);
}

TEST_CASE("a unit that is not given is guessed from the size") {
  CHECK(parts::guess_unit({90, 22, 8}).unit == "mm");
  CHECK(parts::guess_unit({3.5, 0.9, 0.3}).unit == "in");
  CHECK(parts::guess_unit({0.09, 0.022, 0.008}).unit == "m");
  check_mm(parts::unit_in_mm("in"), 25.4, 0.0);  // the international inch, exact since 1959
  check_mm(parts::unit_in_mm("cm"), 10.0, 0.0);
  check_mm(parts::unit_in_mm("m"), 1000.0, 0.0);
  check_mm(parts::unit_in_mm("ft"), 0.0, 0.0);
}

}  // namespace
