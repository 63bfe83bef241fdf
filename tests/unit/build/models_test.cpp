// Parts whose form is a model file, as build and part files say it. Expected places by hand from the figures in the
// text.
#include "build/build.h"
#include "geometry/solid.h"
#include "support/check_mm.h"

#include <doctest/doctest.h>
#include <filesystem>
#include <fstream>
#include <random>
#include <string>

using namespace baywright;
using geometry::Vec3;
using test::check_mm;

namespace {

/// Corners 0 0 0, 4 0 0, 0 3 0 and 0 0 2, in a file's unit, moved by 10 20 30.
const std::string tetrahedron = "v 10 20 30\nv 14 20 30\nv 10 23 30\nv 10 20 32\nf 1 3 2\nf 1 2 4\nf 2 3 4\nf 3 1 4\n";

class Scratch {
 public:
  Scratch() {
    path_ = std::filesystem::temp_directory_path() / ("models_test_" + std::to_string(std::random_device{}()));
    std::filesystem::create_directory(path_);
  }
  ~Scratch() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  Scratch(const Scratch&) = delete;
  Scratch& operator=(const Scratch&) = delete;

  void write(const std::string& name, const std::string& text) const { std::ofstream(path_ / name) << text; }

  /// A build whose first part is this, with a place and a drive.
  [[nodiscard]] std::variant<build::Build, parts::Fault> read(const std::string& part,
                                                              const std::string& wears = "") const {
    return build::read_text(
        "title = \"x\"\n[[part]]\nname = \"board\"\nuse = \"board/atx\"\n[[part]]\nname = \"thing\"\n" + part +
            "at = [0, 0, 50]\n[[slot]]\nname = \"slot\"\non = { part = \"board\", at = [90, -140], "
            "toward = \"+x\" }\nsocket = \"m2/M/H3.2\"\nlengths = [2280]\nbus = \"sata 6\"\n"
            "[[drive]]\nname = \"card\"\nuse = \"m2/2280-S3-M\"\nbus = \"sata 6\"\n" +
            wears,
        path_ / "x.build.toml");
  }

  [[nodiscard]] parts::Part part(const std::string& text) const {
    auto got = read(text);
    if (const auto* fault = std::get_if<parts::Fault>(&got)) FAIL(fault->text());
    return std::get<build::Build>(got).parts[1].part;
  }

  [[nodiscard]] std::string fault(const std::string& text, const std::string& wears = "") const {
    const auto got = read(text, wears);
    const auto* fault = std::get_if<parts::Fault>(&got);
    return fault == nullptr ? "" : fault->text().substr(path_.string().size() + 1);
  }

 private:
  std::filesystem::path path_;
};

/// Where a point of the placed body is, that is corner `index` of its file.
std::vector<Vec3> corners(const parts::Part& part) {
  const auto made = parts::shape(part.bodies[0], parts::nominal_values(part));
  const auto& shaped = std::get<parts::Shaped>(made);
  std::vector<Vec3> out;
  for (const Vec3& v : shaped.solid.mesh()->vertices()) out.push_back(shaped.pose.point(v));
  return out;
}

bool has(const std::vector<Vec3>& points, const Vec3& wanted) {
  for (const Vec3& p : points)
    if (glm::length(p - wanted) < 1e-9) return true;
  return false;
}

}  // namespace

TEST_CASE("a model stands with its low corner at the part's origin, in mm, turned upright and about z") {
  const Scratch scratch;
  scratch.write("t.obj", tetrahedron);
  const auto plain = corners(scratch.part("model = \"t.obj\"\nunit = \"mm\"\nup = \"+z\"\n"));
  REQUIRE(plain.size() == 4);
  CHECK(has(plain, {0, 0, 0}));
  CHECK(has(plain, {4, 0, 0}));
  CHECK(has(plain, {0, 3, 0}));
  CHECK(has(plain, {0, 0, 2}));
  // +x up: the corner that was 4 along x is the top, and 2 along z lies along -x: everything else 2 along x from it.
  const auto tipped = corners(scratch.part("model = \"t.obj\"\nunit = \"cm\"\nup = \"+x\"\n"));
  CHECK(has(tipped, {20, 0, 40}));
  CHECK(has(tipped, {20, 0, 0}));
  CHECK(has(tipped, {20, 30, 0}));
  CHECK(has(tipped, {0, 0, 0}));
  // A quarter turn counter-clockwise takes x to y and y to -x; as for a solid the box moves to x -3 .. 0.
  const parts::Part turned = scratch.part("model = \"t.obj\"\nunit = \"mm\"\nup = \"+z\"\nturn = 90\n");
  const auto quarter = corners(turned);
  CHECK(has(quarter, {0, 0, 0}));
  CHECK(has(quarter, {0, 4, 0}));
  CHECK(has(quarter, {-3, 0, 0}));
  check_mm(turned.bodies[0].low[0].base, -3.0, 1e-12);
  check_mm(turned.bodies[0].high[1].base, 4.0, 1e-12);
  const auto half = corners(scratch.part("model = \"t.obj\"\nunit = \"mm\"\nup = \"+z\"\nturn = 180\n"));
  CHECK(has(half, {-4, 0, 0}));
  CHECK(has(half, {0, -3, 0}));
}

TEST_CASE("each way up is a turn and no mirror image, and takes that axis of the file to +z") {
  const Scratch scratch;
  scratch.write("t.obj", tetrahedron);
  for (const std::string up : {"+x", "-x", "+y", "-y", "+z", "-z"}) {
    CAPTURE(up);
    const parts::Part part = scratch.part("model = \"t.obj\"\nunit = \"mm\"\nup = \"" + up + "\"\n");
    const double along = up[1] == 'x' ? 4.0 : up[1] == 'y' ? 3.0 : 2.0;  // of the file's axis that is up
    check_mm(part.models[0].size.z, along, 1e-12);
    check_mm(part.bodies[0].high[2].base, along, 1e-12);
    // The origin corner (three right angles) is at the bottom for +, at the top for -.
    int at_bottom = 0;
    for (const Vec3& p : corners(part)) at_bottom += p.z < 1e-9 ? 1 : 0;
    CHECK(at_bottom == (up[0] == '+' ? 3 : 1));
    CHECK(part.models[0].closed);
    const auto made = parts::shape(part.bodies[0], {});
    check_mm(std::get<parts::Shaped>(made).solid.volume(), 4.0 * 3.0 * 2.0 / 6.0, 1e-9);  // a mirror image: negative
    CHECK(part.models[0].flaws.empty());  // and its triangles would have been turned
  }
}

TEST_CASE("unit and way up are guessed where they are not said, and that is kept") {
  const Scratch scratch;
  scratch.write("t.obj", tetrahedron);
  const parts::Model model = scratch.part("model = \"t.obj\"\n").models.at(0);
  CHECK(model.unit_guessed);
  CHECK(model.up_guessed);
  CHECK(model.unit == "in");  // 4 x 3 x 2 of something
  check_mm(model.size, Vec3(101.6, 76.2, 50.8), 1e-9);
  const parts::Model said = scratch.part("model = \"t.obj\"\nunit = \"m\"\nup = \"+z\"\n").models.at(0);
  CHECK(!said.unit_guessed);
  CHECK(!said.up_guessed);
  check_mm(said.size, Vec3(4000, 3000, 2000), 1e-9);
}

TEST_CASE("a heatsink's model lies centred under its near end, another part's where it is put") {
  const Scratch scratch;
  scratch.write("t.obj", tetrahedron);
  scratch.write("fins.part.toml",
                "title = \"Fins\"\nkind = \"heatsink\"\nmodel = \"t.obj\"\nunit = \"cm\"\nup = \"+z\"\n");
  scratch.write("thing.part.toml",
                "title = \"Thing\"\nmodel = \"t.obj\"\nunit = \"mm\"\nup = \"+z\"\nat = [1, 2, 3]\n");
  const auto thing = corners(scratch.part("use = \"thing\"\n"));
  CHECK(has(thing, {1, 2, 3}));
  CHECK(has(thing, {5, 2, 3}));
  const auto got = scratch.read("use = \"thing\"\n", "wears = [{ heatsink = \"fins\" }]\n");
  REQUIRE(std::holds_alternative<build::Build>(got));
  const auto& worn = std::get<build::Heatsink>(std::get<build::Build>(got).drives[0].wears.at(0));
  const auto fins = corners(worn.part);
  CHECK(has(fins, {-20, 0, 0}));
  CHECK(has(fins, {20, 0, 0}));
  CHECK(has(fins, {-20, 30, 0}));
}

TEST_CASE("a flaw is told where the file has it") {
  const Scratch scratch;
  // Without its last face the tetrahedron is open along the edges of corners 1, 3 and 4 of the file: y, z there.
  scratch.write("open.obj", tetrahedron.substr(0, tetrahedron.rfind("f 3")));
  const parts::Model model = scratch.part("model = \"open.obj\"\nunit = \"in\"\nup = \"-y\"\n").models.at(0);
  CHECK(!model.closed);
  REQUIRE(model.flaws.size() == 1);
  CHECK(model.flaws[0].kind == geometry::MeshFlaw::Kind::open_edge);
  CHECK(model.flaws[0].count == 3);
  check_mm(model.flaws[0].where.x, 10.0, 1e-9);
  CHECK(model.flaws[0].where.y >= 20.0 - 1e-9);
  CHECK(model.flaws[0].where.y <= 23.0 + 1e-9);
  CHECK(model.flaws[0].where.z >= 30.0 - 1e-9);
  CHECK(model.flaws[0].where.z <= 32.0 + 1e-9);
}

TEST_CASE("slips beside a model are refused at their key") {
  const Scratch scratch;
  scratch.write("t.obj", tetrahedron);
  scratch.write("flat.obj", "v 0 0 5\nv 9 0 5\nv 0 9 5\nf 1 2 3\n");
  scratch.write("bad.obj", "v 0 0 oh\n");
  const std::string model = "model = \"t.obj\"\n";
  CHECK(scratch.fault("model = \"no.obj\"\n").starts_with("x.build.toml:7:9: there is no file `"));
  CHECK(scratch.fault("model = 3\n").starts_with("x.build.toml:7:9: `model` is a whole number; "));
  CHECK(scratch.fault(model + "unit = \"ft\"\n") ==
        "x.build.toml:8:8: `unit = \"ft\"` is not known; it must be \"mm\", \"cm\", \"m\" or \"in\"");
  CHECK(scratch.fault(model + "up = \"z\"\n") ==
        "x.build.toml:8:6: `up = \"z\"` is no axis of the file; it must be \"+z\", \"-z\", \"+y\", \"-y\", \"+x\" or "
        "\"-x\"");
  CHECK(scratch.fault(model + "solid = { box = [1, 2, 3] }\n")
            .starts_with("x.build.toml:7:9: `thing` has both `solid` and `model`; "));
  CHECK(scratch.fault(model + "use = \"board/atx\"\n")
            .starts_with("x.build.toml:7:9: `thing` has both `use` and `model`; "));
  CHECK(scratch.fault("solid = { box = [1, 2, 3] }\nunit = \"mm\"\n")
            .starts_with("x.build.toml:8:8: only a part with `model` has `unit`; "));
  CHECK(scratch.fault("model = \"flat.obj\"\nunit = \"mm\"\n") ==
        "flat.obj: this surface has no thickness: 9.00 x 9.00 x 0.00 mm; a model goes round a body");
  CHECK(scratch.fault("model = \"bad.obj\"\n").starts_with("bad.obj:1:7: `oh` is no figure; "));
  CHECK(scratch.fault(model.substr(0, 9) + "../\"\n").find("this is a folder") != std::string::npos);
  scratch.write("far.obj", tetrahedron.substr(0, tetrahedron.find("v 14")) + "v 1e6 20 30\n" +
                               tetrahedron.substr(tetrahedron.find("v 10 23")));
  CHECK(scratch.fault("model = \"far.obj\"\nunit = \"mm\"\n").find("100000 mm is the most") != std::string::npos);
  scratch.write("thing.part.toml", "title = \"Thing\"\nsolid = { box = [1, 2, 3] }\nup = \"+z\"\n");
  CHECK(scratch.fault("use = \"thing\"\n") == "thing.part.toml:3:6: only a model has `up`; take it out");
}
