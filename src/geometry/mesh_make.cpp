// From triangles as they come to a surface. Steps:
//   1. Points that are equal to the last digit become one. Not those that are merely near: a weld by distance can close
//      a real slit and fold thin walls, and what a file gives twice it gives with the same digits.
//   2. Triangles with two equal corners or given twice are left out. A triangle whose corners lie on a line within
//      `touch_mm` is a seam that joins one long side to two short ones; it is taken away by giving its middle corner to
//      the neighbour across the long side, which moves the surface by less than `touch_mm` and leaves no slit.
//   3. Neighbours across edges of two triangles are wound alike, the smaller part of a surface turned after the larger.
//   4. Edges of one triangle, or of more than two, and triangles that cross are counted: then there is no inside.
//   5. Each closed surface is turned by how many others it lies within: outward for an even number, else inward.
#include "geometry/limits.h"
#include "geometry/mesh_crossing.h"
#include "geometry/mesh_data.h"
#include "geometry/mesh_edges.h"
#include "geometry/solid.h"
#include "geometry/triangle_gap.h"
#include "geometry/triangle_side.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <map>
#include <numeric>
#include <optional>

namespace baywright::geometry {

namespace {

using Triangle = Mesh::Triangle;
using Kind = MeshFlaw::Kind;

constexpr std::size_t most_triangles = 100'000'000;  // three sides of each are counted in an int
constexpr int most_rounds = 16;  // of taking seams away: seams beside seams have to wait for each other

constexpr int most_tries = 256;           // triangles of a shell, for one that touches no other shell
constexpr std::size_t most_normals = 48;  // directions that a way out of an overlap is looked for along

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

class Maker {
 public:
  Maker(std::vector<Vec3> vertices, std::vector<Triangle> triangles)
      : vertices_(std::move(vertices)), triangles_(std::move(triangles)) {}

  [[nodiscard]] std::optional<std::string> fault() const {
    char text[160];
    if (triangles_.size() > most_triangles || vertices_.size() > 3 * most_triangles) {
      return "the mesh has more than 100 million triangles";
    }
    for (std::size_t i = 0; i < vertices_.size(); ++i) {
      for (int axis = 0; axis < 3; ++axis) {
        if (std::abs(vertices_[i][axis]) <= largest_mm) continue;  // NaN is not
        std::snprintf(text, sizeof text, "point %zu of the mesh is at %.6g, not within 100000 mm of the origin", i + 1,
                      vertices_[i][axis]);
        return text;
      }
    }
    for (std::size_t i = 0; i < triangles_.size(); ++i) {
      for (const int corner : triangles_[i]) {
        if (corner >= 0 && at(corner) < vertices_.size()) continue;
        std::snprintf(text, sizeof text, "triangle %zu of the mesh names point %d, of %zu", i + 1, corner,
                      vertices_.size());
        return text;
      }
    }
    return std::nullopt;
  }

  void clean() {
    merge_points();
    leave_out_equal_corners();
    leave_out_doubles();
    take_seams_away();
    leave_out_unused_points();
  }

  [[nodiscard]] bool empty() const { return triangles_.empty(); }

  [[nodiscard]] std::shared_ptr<Mesh::Data> finish() {
    wind();
    auto data = std::make_shared<Mesh::Data>();
    data->vertices = std::move(vertices_);
    data->triangles = std::move(triangles_);
    for (const Vec3& v : data->vertices) data->box.add(v);
    plant(*data);
    const SelfCrossing crossing = self_crossing(*data);
    flaw(Kind::crossing, crossing.count, crossing.where, false);
    data->closed = std::all_of(flaws_.begin(), flaws_.end(), [](const MeshFlaw& f) { return f.mended; });
    if (data->closed && turn_shells(*data)) plant(*data);
    data->shells = first_of_shell_;
    if (data->closed) data->volume = volume(*data);
    data->main_normals = main_normals(*data);
    data->flaws = std::move(flaws_);
    return data;
  }

 private:
  void flaw(Kind kind, int count, const Vec3& where, bool mended) {
    if (count > 0) flaws_.push_back({kind, count, where, mended});
  }
  [[nodiscard]] const Vec3& point(int vertex) const { return vertices_[at(vertex)]; }
  [[nodiscard]] Vec3 middle(const Triangle& t) const { return (point(t[0]) + point(t[1]) + point(t[2])) / 3.0; }

  void merge_points() {
    for (Vec3& v : vertices_) v += Vec3{0.0};  // -0 becomes 0
    std::vector<int> order(vertices_.size());
    std::iota(order.begin(), order.end(), 0);
    std::sort(order.begin(), order.end(), [&](int p, int q) {
      const Vec3& a = point(p);
      const Vec3& b = point(q);
      if (a.x != b.x) return a.x < b.x;
      if (a.y != b.y) return a.y < b.y;
      return a.z != b.z ? a.z < b.z : p < q;
    });
    std::vector<int> same(vertices_.size());
    int merged = 0;
    Vec3 where{0.0};
    for (std::size_t i = 0; i < order.size(); ++i) {
      const bool first = i == 0 || point(order[i]) != point(order[i - 1]);
      same[at(order[i])] = first ? order[i] : same[at(order[i - 1])];
      if (first) continue;
      ++merged;
      where = point(order[i]);
    }
    for (Triangle& t : triangles_) {
      for (int& corner : t) corner = same[at(corner)];
    }
    flaw(Kind::split_vertices, merged, where, true);
  }

  void leave_out_equal_corners() {
    const auto flat = [](const Triangle& t) { return t[0] == t[1] || t[1] == t[2] || t[2] == t[0]; };
    for (const Triangle& t : triangles_) {
      if (!flat(t)) continue;
      ++flat_;
      flat_at_ = point(t[0]);
    }
    std::erase_if(triangles_, flat);
  }

  void leave_out_doubles() {
    std::vector<bool> out(triangles_.size(), false);
    int doubles = 0;
    Vec3 where{0.0};
    const auto opposite = [&](const MeshEdge& edge) {
      const Triangle& t = triangles_[at(edge.triangle)];
      return t[0] + t[1] + t[2] - edge.low - edge.high;
    };
    each_edge(edges_of(triangles_, vertices_.size()), [&](std::span<const MeshEdge> sides) {
      if (sides.size() < 2) return;
      std::vector<std::pair<int, int>> thirds;
      thirds.reserve(sides.size());
      for (const MeshEdge& edge : sides) thirds.emplace_back(opposite(edge), edge.triangle);
      std::sort(thirds.begin(), thirds.end());
      for (std::size_t i = 1; i < thirds.size(); ++i) {
        if (thirds[i].first != thirds[i - 1].first || out[at(thirds[i].second)]) continue;
        out[at(thirds[i].second)] = true;
        ++doubles;
        where = middle(triangles_[at(thirds[i].second)]);
      }
    });
    if (doubles > 0) leave_out(out);
    flaw(Kind::duplicate, doubles, where, true);
  }

  void leave_out(const std::vector<bool>& out) {
    std::size_t kept = 0;
    for (std::size_t i = 0; i < triangles_.size(); ++i) {
      if (!out[i]) triangles_[kept++] = triangles_[i];
    }
    triangles_.resize(kept);
  }

  /// The corner of a seam that lies on its longest side, by its place in the triangle; 3 if it is none.
  [[nodiscard]] std::size_t seam(const Triangle& t) const {
    double longest = -1.0;
    std::size_t corner = 0;
    for (std::size_t i = 0; i < 3; ++i) {
      const Vec3 side = point(t[(i + 2) % 3]) - point(t[(i + 1) % 3]);
      if (glm::dot(side, side) > longest) {
        longest = glm::dot(side, side);
        corner = i;
      }
    }
    const Vec3 side = point(t[(corner + 2) % 3]) - point(t[(corner + 1) % 3]);
    const Vec3 to = point(t[corner]) - point(t[(corner + 1) % 3]);
    const Vec3 area = glm::cross(side, to);
    const bool flat = !(glm::dot(area, area) > touch_mm * touch_mm * longest);
    return flat ? corner : 3;
  }

  void take_seams_away() {
    for (int round = 0; round < most_rounds; ++round) {
      std::vector<int> seams;
      for (std::size_t i = 0; i < triangles_.size(); ++i) {
        if (seam(triangles_[i]) < 3) seams.push_back(static_cast<int>(i));
      }
      if (seams.empty()) break;
      take_away(seams, round + 1 == most_rounds);
      leave_out_equal_corners();
    }
    flaw(Kind::degenerate, flat_, flat_at_, true);
  }

  void take_away(const std::vector<int>& seams, bool last_round) {
    const std::vector<MeshEdge> edges = edges_of(triangles_, vertices_.size());
    std::vector<bool> out(triangles_.size(), false);
    std::vector<bool> changed(triangles_.size(), false);
    std::vector<Triangle> more;
    for (const int i : seams) {
      if (changed[at(i)]) continue;
      const Triangle t = triangles_[at(i)];
      const std::size_t corner = seam(t);
      const int from = t[(corner + 1) % 3];
      const int to = t[(corner + 2) % 3];
      const MeshEdge asked{std::min(from, to), std::max(from, to), 0, true};
      const auto sides = std::equal_range(edges.begin(), edges.end(), asked, [](const MeshEdge& p, const MeshEdge& q) {
        return p.low != q.low ? p.low < q.low : p.high < q.high;
      });
      int across = -1;
      if (sides.second - sides.first == 2) {
        across = sides.first->triangle == i ? (sides.first + 1)->triangle : sides.first->triangle;
      }
      if (across >= 0 && changed[at(across)] && !last_round) continue;  // in the next round
      ++flat_;
      flat_at_ = point(t[corner]);
      out[at(i)] = changed[at(i)] = true;
      if (across < 0 || changed[at(across)]) continue;  // no one neighbour: the edges show what it leaves
      changed[at(across)] = true;
      Triangle& neighbour = triangles_[at(across)];
      Triangle half = neighbour;
      std::replace(neighbour.begin(), neighbour.end(), from, t[corner]);
      std::replace(half.begin(), half.end(), to, t[corner]);
      more.push_back(half);
    }
    leave_out(out);
    triangles_.insert(triangles_.end(), more.begin(), more.end());
  }

  void leave_out_unused_points() {
    std::vector<int> name(vertices_.size(), -1);
    std::vector<Vec3> used;
    for (Triangle& t : triangles_) {
      for (int& corner : t) {
        if (name[at(corner)] < 0) {
          name[at(corner)] = static_cast<int>(used.size());
          used.push_back(point(corner));
        }
        corner = name[at(corner)];
      }
    }
    vertices_ = std::move(used);
  }

  /// Counts open and crowded edges, finds the connected surfaces and winds each one way.
  void wind() {
    const std::vector<MeshEdge> edges = edges_of(triangles_, vertices_.size());
    struct Neighbour {
      int triangle = -1;
      bool against = false;  // wound the other way
    };
    std::vector<std::array<Neighbour, 3>> around(triangles_.size());
    std::vector<unsigned char> count(triangles_.size(), 0);
    MeshFlaw open{Kind::open_edge};
    MeshFlaw crowded{Kind::crowded_edge};
    each_edge(edges, [&](std::span<const MeshEdge> sides) {
      const MeshEdge& p = sides.front();
      if (sides.size() != 2) {
        MeshFlaw& found = sides.size() == 1 ? open : crowded;
        ++found.count;
        found.where = 0.5 * (point(p.low) + point(p.high));
        return;
      }
      const MeshEdge& q = sides[1];
      const bool against = p.rising == q.rising;
      around[at(p.triangle)][count[at(p.triangle)]++] = {q.triangle, against};
      around[at(q.triangle)][count[at(q.triangle)]++] = {p.triangle, against};
    });
    shell_.assign(triangles_.size(), -1);
    std::vector<bool> turned(triangles_.size(), false);
    MeshFlaw turn{Kind::turned};
    MeshFlaw one_sided{Kind::one_sided};
    std::vector<int> shell;
    for (std::size_t start = 0; start < triangles_.size(); ++start) {
      if (shell_[start] >= 0) continue;
      const int number = static_cast<int>(first_of_shell_.size());
      first_of_shell_.push_back(static_cast<int>(start));
      shell.assign(1, static_cast<int>(start));
      shell_[start] = number;
      std::size_t against = 0;
      for (std::size_t next = 0; next < shell.size(); ++next) {
        const int here = shell[next];
        if (turned[at(here)]) ++against;
        for (std::size_t k = 0; k < count[at(here)]; ++k) {
          const Neighbour& there = around[at(here)][k];
          const bool wanted = turned[at(here)] != there.against;
          if (shell_[at(there.triangle)] < 0) {
            shell_[at(there.triangle)] = number;
            turned[at(there.triangle)] = wanted;
            shell.push_back(there.triangle);
          } else if (turned[at(there.triangle)] != wanted && here < there.triangle) {
            ++one_sided.count;
            one_sided.where = middle(triangles_[at(here)]);
          }
        }
      }
      const bool most = 2 * against > shell.size();
      for (const int i : shell) {
        if (turned[at(i)] == most) continue;
        std::swap(triangles_[at(i)][1], triangles_[at(i)][2]);
        ++turn.count;
        turn.where = middle(triangles_[at(i)]);
      }
    }
    flaw(Kind::turned, turn.count, turn.where, true);
    flaw(Kind::open_edge, open.count, open.where, false);
    flaw(Kind::crowded_edge, crowded.count, crowded.where, false);
    flaw(Kind::one_sided, one_sided.count, one_sided.where, false);
  }

  static void plant(Mesh::Data& data) {
    std::vector<Corners> all;
    all.reserve(data.triangles.size());
    for (int i = 0; i < static_cast<int>(data.triangles.size()); ++i) all.push_back(data.corners(i));
    data.tree = TriangleTree(all);
  }

  /// Turns the closed surfaces that look the wrong way; whether there was one.
  bool turn_shells(Mesh::Data& data) {
    std::vector<double> volumes(first_of_shell_.size(), 0.0);
    for (std::size_t i = 0; i < data.triangles.size(); ++i) {
      volumes[at(shell_[i])] += six_volumes(data, static_cast<int>(i));
    }
    MeshFlaw found{Kind::inside_out};
    std::vector<bool> wrong(volumes.size(), false);
    for (std::size_t s = 0; s < volumes.size(); ++s) {
      const bool inward = volumes.size() > 1 && within_others(data, static_cast<int>(s)) % 2 == 1;
      if ((volumes[s] < 0.0) == inward) continue;
      wrong[s] = true;
      ++found.count;
      found.where = data.vertices[at(data.triangles[at(first_of_shell_[s])][0])];
    }
    if (found.count == 0) return false;
    for (std::size_t i = 0; i < data.triangles.size(); ++i) {
      if (wrong[at(shell_[i])]) std::swap(data.triangles[i][1], data.triangles[i][2]);
    }
    flaw(found.kind, found.count, found.where, true);
    return true;
  }

  /// The middle of a triangle of the shell that lies on no other shell: they may share corners and touch along faces.
  [[nodiscard]] Vec3 point_of_shell(const Mesh::Data& data, int shell) const {
    const auto centre = [&](std::size_t i) {
      const Corners c = data.corners(static_cast<int>(i));
      return (c[0] + c[1] + c[2]) / 3.0;
    };
    const std::size_t first = at(first_of_shell_[at(shell)]);
    int tries = 0;
    for (std::size_t i = first; i < data.triangles.size() && tries < most_tries; ++i) {
      if (shell_[i] != shell) continue;
      ++tries;
      const Vec3 p = centre(i);
      bool touched = false;
      near_point(data.tree, p, touch_mm, [&](int k) {
        const int of = shell_[at(data.tree.name(k))];
        touched = touched || (of != shell && glm::distance(nearest_on(data.tree.at(k), p), p) <= touch_mm);
      });
      if (!touched) return p;
    }
    return centre(first);
  }

  /// How many other closed surfaces a surface lies within: those that a ray from it meets an odd number of times.
  [[nodiscard]] int within_others(const Mesh::Data& data, int shell) const {
    const Vec3 p = point_of_shell(data, shell);
    std::vector<int> met;
    along_x(data.tree, p, [&](int i) {
      const int of = shell_[at(data.tree.name(i))];
      if (of != shell && ray_meets(p, data.tree.at(i))) met.push_back(of);
    });
    std::sort(met.begin(), met.end());
    int within = 0;
    for (std::size_t first = 0; first < met.size();) {
      const std::size_t last =
          static_cast<std::size_t>(std::upper_bound(met.begin(), met.end(), met[first]) - met.begin());
      within += static_cast<int>((last - first) % 2);
      first = last;
    }
    return within;
  }

  /// Of faces whose normals agree to a few thousandths the areas are added; the normal is that of their largest
  /// triangle.
  [[nodiscard]] static std::vector<Vec3> main_normals(const Mesh::Data& data) {
    struct Face {
      Vec3 normal;
      double largest;
      double area;
    };
    std::map<std::array<int, 3>, Face> faces;
    for (int i = 0; i < static_cast<int>(data.triangles.size()); ++i) {
      const Corners c = data.corners(i);
      const Vec3 area = glm::cross(c[1] - c[0], c[2] - c[0]);
      const double size = glm::length(area);
      if (!(size > 0.0)) continue;
      const Vec3 n = area / size;
      const auto step = [](double x) { return static_cast<int>(std::lround(x * 256.0)); };
      Face& face = faces[{step(n.x), step(n.y), step(n.z)}];
      face.area += size;
      if (size > face.largest) {
        face.largest = size;
        face.normal = n;
      }
    }
    std::vector<Face> all;
    for (const auto& [key, face] : faces) all.push_back(face);
    std::stable_sort(all.begin(), all.end(), [](const Face& p, const Face& q) { return p.area > q.area; });
    std::vector<Vec3> normals;
    for (std::size_t i = 0; i < std::min<std::size_t>(all.size(), most_normals); ++i) normals.push_back(all[i].normal);
    return normals;
  }

  /// Six times the signed volume of the tetrahedron from the middle of the box to a triangle.
  [[nodiscard]] static double six_volumes(const Mesh::Data& data, int triangle) {
    const Vec3 middle = 0.5 * (data.box.low + data.box.high);
    const Corners c = data.corners(triangle);
    return glm::dot(c[0] - middle, glm::cross(c[1] - middle, c[2] - middle));
  }
  [[nodiscard]] static double volume(const Mesh::Data& data) {
    double sum = 0.0;
    for (int i = 0; i < static_cast<int>(data.triangles.size()); ++i) sum += six_volumes(data, i);
    return sum / 6.0;
  }

  std::vector<Vec3> vertices_;
  std::vector<Triangle> triangles_;
  std::vector<MeshFlaw> flaws_;
  std::vector<int> shell_;  // of each triangle
  std::vector<int> first_of_shell_;
  int flat_ = 0;
  Vec3 flat_at_{0.0};
};

}  // namespace

std::variant<Mesh, Refusal> Mesh::make(std::vector<Vec3> vertices, std::vector<Triangle> triangles) {
  Maker maker(std::move(vertices), std::move(triangles));
  if (auto why = maker.fault()) return Refusal{*std::move(why)};
  maker.clean();
  if (maker.empty()) return Refusal{"no triangle of the mesh has an area"};
  return Mesh{maker.finish()};
}

}  // namespace baywright::geometry
