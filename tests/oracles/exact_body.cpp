#include "exact_body.h"

#include <CGAL/Exact_predicates_inexact_constructions_kernel.h>
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <numbers>
#include <optional>
#include <utility>
#include <variant>

namespace baywright::oracle {

using geometry::Mesh;
using geometry::Solid;

namespace {

using Triangle = std::array<int, 3>;
using Edge = std::array<int, 2>;

/// Exact: 1 counter-clockwise, 0 on a line, -1 clockwise.
int sense(const Vec2& a, const Vec2& b, const Vec2& c) {
  using Kernel = CGAL::Exact_predicates_inexact_constructions_kernel;
  return CGAL::orientation(Kernel::Point_2(a.x, a.y), Kernel::Point_2(b.x, b.y), Kernel::Point_2(c.x, c.y));
}

double length_of(Random& random, double size, bool on_grid) {
  const double length = uniform(random, 0.15, 1.0) * size;
  return on_grid ? std::max(0.125, std::round(8.0 * length) / 8.0) : length;
}

Vec2 snapped(const Vec2& p, bool on_grid) {
  return on_grid ? Vec2{std::round(8.0 * p.x) / 8.0, std::round(8.0 * p.y) / 8.0} : p;
}

/// A base: corners of the outline, then of the hole, and triangles between them.
struct Base {
  Outline outline;
  Outline hole;
  std::vector<Triangle> triangles;
  bool convex = false;

  [[nodiscard]] Vec2 corner(int i) const {
    const auto at = static_cast<std::size_t>(i);
    return at < outline.size() ? outline[at] : hole[at - outline.size()];
  }
  [[nodiscard]] int count() const { return static_cast<int>(outline.size() + hole.size()); }
};

bool is_convex(const Outline& outline) {
  const std::size_t n = outline.size();
  for (std::size_t i = 0; i < n; ++i) {
    if (sense(outline[i], outline[(i + 1) % n], outline[(i + 2) % n]) <= 0) return false;
  }
  return true;
}

bool holds_another(const Base& base, const std::vector<int>& left, const Triangle& ear) {
  return std::any_of(left.begin(), left.end(), [&](int i) {
    if (i == ear[0] || i == ear[1] || i == ear[2]) return false;
    for (std::size_t k = 0; k < 3; ++k) {
      if (sense(base.corner(ear[k]), base.corner(ear[(k + 1) % 3]), base.corner(i)) < 0) return false;
    }
    return true;
  });
}

/// Cuts ears off a counter-clockwise outline without a hole. False if it gets stuck.
bool cut_ears(Base& base) {
  std::vector<int> left;
  for (int i = 0; i < base.count(); ++i) left.push_back(i);
  while (left.size() > 2) {
    bool cut = false;
    for (std::size_t k = 0; k < left.size() && !cut; ++k) {
      const Triangle ear{left[k], left[(k + 1) % left.size()], left[(k + 2) % left.size()]};
      if (sense(base.corner(ear[0]), base.corner(ear[1]), base.corner(ear[2])) <= 0) continue;
      if (holds_another(base, left, ear)) continue;
      base.triangles.push_back(ear);
      left.erase(left.begin() + static_cast<std::ptrdiff_t>((k + 1) % left.size()));
      cut = true;
    }
    if (!cut) return false;
  }
  return true;
}

/// Strips between outline and hole, which have equally many corners. False if one is turned over.
bool cut_ring(Base& base) {
  const int n = static_cast<int>(base.outline.size());
  for (int k = 0; k < n; ++k) {
    const int next = (k + 1) % n;
    base.triangles.push_back({k, next, n + next});
    base.triangles.push_back({k, n + next, n + k});
  }
  return std::all_of(base.triangles.begin(), base.triangles.end(), [&](const Triangle& t) {
    return sense(base.corner(t[0]), base.corner(t[1]), base.corner(t[2])) > 0;
  });
}

Outline rectangle(const Vec2& low, const Vec2& high) {
  return {low, {high.x, low.y}, high, {low.x, high.y}};
}

Outline around(Random& random, int corners, double size, double least, bool on_grid) {
  Outline outline;
  const double flat = uniform(random, 0.4, 1.0);
  for (int i = 0; i < corners; ++i) {
    const double angle = 2 * std::numbers::pi * (i + uniform(random, 0.0, 0.7)) / corners;
    const double radius = 0.5 * size * uniform(random, least, 1.0);
    outline.push_back(snapped({radius * std::cos(angle), flat * radius * std::sin(angle)}, on_grid));
  }
  return outline;
}

std::optional<Base> convex_base(Random& random, double size, bool on_grid) {
  Base base;
  base.outline = around(random, 3 + static_cast<int>(random() % 6), size, 1.0, on_grid);
  base.convex = is_convex(base.outline);
  if (!base.convex || !cut_ears(base)) return std::nullopt;
  return base;
}

std::optional<Base> bent_base(Random& random, double size, bool on_grid) {
  Base base;
  const Vec2 outer{length_of(random, size, on_grid) + 0.25, length_of(random, size, on_grid) + 0.25};
  const auto part = [&](double of) { return on_grid ? std::round(4.0 * of) / 8.0 : uniform(random, 0.2, 0.8) * of; };
  const Vec2 inner{part(outer.x), part(outer.y)};
  const auto kind = random() % 3;
  if (kind == 0) {  // an L
    base.outline = {{0, 0}, {outer.x, 0}, {outer.x, inner.y}, inner, {inner.x, outer.y}, {0, outer.y}};
  } else if (kind == 1) {  // a U
    const double left = 0.5 * inner.x;
    base.outline = {
        {0, 0},          {outer.x, 0},    outer,       {left + 0.5 * outer.x, outer.y}, {left + 0.5 * outer.x, inner.y},
        {left, inner.y}, {left, outer.y}, {0, outer.y}};
  } else {  // a star
    base.outline = around(random, 5 + static_cast<int>(random() % 5), size, 0.3, on_grid);
  }
  if (!cut_ears(base)) return std::nullopt;
  return base;
}

std::optional<Base> framed_base(Random& random, double size, bool on_grid) {
  Base base;
  if (random() % 2 == 0) {
    const Vec2 outer{length_of(random, size, on_grid) + 1.0, length_of(random, size, on_grid) + 1.0};
    base.outline = rectangle({0, 0}, outer);
    base.hole = rectangle(snapped(outer * uniform(random, 0.1, 0.4), on_grid),
                          snapped(outer * uniform(random, 0.6, 0.9), on_grid));
  } else {
    base.outline = around(random, 3 + static_cast<int>(random() % 5), size, 1.0, on_grid);
    if (!is_convex(base.outline)) return std::nullopt;
    const double share = uniform(random, 0.3, 0.8);
    for (const Vec2& p : base.outline) base.hole.push_back(snapped(share * p, on_grid));
  }
  if (!cut_ring(base)) return std::nullopt;
  return base;
}

std::string code_of(const Outline& outline) {
  std::string code = "{";
  for (const Vec2& p : outline) code += (code.size() > 1 ? ", {" : "{") + text(p.x) + ", " + text(p.y) + "}";
  return code + "}";
}

/// The sides of a prism on the base corners `loop`, whose top corners are `up` further on.
void close_part(Part& part, const std::vector<int>& loop, int up) {
  const std::size_t n = loop.size();
  for (const int i : loop) part.corners.push_back(i);
  for (const int i : loop) part.corners.push_back(i + up);
  part.planes.push_back({loop[0], loop[1], loop[2]});
  part.ways.push_back({loop[0], loop[0] + up});
  for (std::size_t k = 0; k < n; ++k) {
    const int i = loop[k];
    const int j = loop[(k + 1) % n];
    part.planes.push_back({i, j, j + up});
    part.ways.push_back({i, j});
    part.triangles.push_back({i, j, j + up});
    part.triangles.push_back({i, j + up, i + up});
    part.edges.insert(part.edges.end(), {Edge{i, j}, Edge{i + up, j + up}, Edge{i, i + up}});
  }
  for (std::size_t k = 1; k + 1 < n; ++k) {
    part.triangles.push_back({loop[0], loop[k + 1], loop[k]});
    part.triangles.push_back({loop[0] + up, loop[k] + up, loop[k + 1] + up});
  }
}

Part box_part(const std::vector<int>& loop, int up) {
  Part part;
  close_part(part, loop, up);
  part.planes.resize(3);  // the base and two sides: the others are parallel
  part.ways.resize(3);
  return part;
}

Part tetrahedron(const std::array<int, 4>& corners) {
  Part part;
  part.corners.assign(corners.begin(), corners.end());
  for (std::size_t i = 0; i < 4; ++i) {
    part.planes.push_back({corners[(i + 1) % 4], corners[(i + 2) % 4], corners[(i + 3) % 4]});
    for (std::size_t j = i + 1; j < 4; ++j) part.ways.push_back({corners[i], corners[j]});
  }
  part.triangles = part.planes;
  part.edges = part.ways;
  return part;
}

/// Edges of the base with the solid on their left.
std::vector<Edge> rim(const Base& base) {
  std::vector<Edge> edges;
  const int n = static_cast<int>(base.outline.size());
  const int m = static_cast<int>(base.hole.size());
  for (int i = 0; i < n; ++i) edges.push_back({i, (i + 1) % n});
  for (int i = 0; i < m; ++i) edges.push_back({n + (i + 1) % m, n + i});
  return edges;
}

/// Corners, surface and parts of the base extruded from z = 0.
void extrude(Body& body, const Base& base, double height) {
  const int up = base.count();
  for (const double z : {0.0, height}) {
    for (int i = 0; i < up; ++i) body.corners.emplace_back(base.corner(i), z);
  }
  for (const Triangle& t : base.triangles) {
    body.surface.push_back({t[0], t[2], t[1]});
    body.surface.push_back({t[0] + up, t[1] + up, t[2] + up});
    if (base.convex) continue;
    close_part(body.parts.emplace_back(), {t[0], t[1], t[2]}, up);
  }
  for (const auto& [i, j] : rim(base)) {
    body.surface.push_back({i, j, j + up});
    body.surface.push_back({i, j + up, i + up});
  }
  if (!base.convex) return;
  std::vector<int> loop;
  for (int i = 0; i < up; ++i) loop.push_back(i);
  close_part(body.parts.emplace_back(), loop, up);
}

/// The base with an apex above, and with one below or with the base itself as its floor.
void raise_cone(Body& body, const Base& base, const Vec3& above, const std::optional<Vec3>& below) {
  const int top = base.count();
  for (int i = 0; i < top; ++i) body.corners.emplace_back(base.corner(i), 0.0);
  body.corners.push_back(above);
  if (below) body.corners.push_back(*below);
  for (const Triangle& t : base.triangles) {
    body.parts.push_back(tetrahedron({t[0], t[1], t[2], top}));
    if (below) {
      body.parts.push_back(tetrahedron({t[0], t[1], t[2], top + 1}));
    } else {
      body.surface.push_back({t[0], t[2], t[1]});
    }
  }
  for (const auto& [i, j] : rim(base)) {
    body.surface.push_back({i, j, top});
    if (below) body.surface.push_back({j, i, top + 1});
  }
}

/// A box with a cavity: 4 x 4 x 4 planes make 26 boxes around the cavity.
void hollow(Body& body, Random& random, double size, bool on_grid) {
  std::array<std::array<double, 4>, 3> at{};
  for (auto& cuts : at) {
    const double wall = on_grid ? 0.5 : uniform(random, 0.05, 0.3) * size;
    const double inner = length_of(random, size, on_grid);
    cuts = {0.0, wall, wall + inner, 2.0 * wall + inner};
  }
  const auto index = [](int x, int y, int z) { return 16 * z + 4 * y + x; };
  for (int z = 0; z < 4; ++z) {
    for (int y = 0; y < 4; ++y) {
      for (int x = 0; x < 4; ++x) {
        body.corners.emplace_back(at[0][static_cast<std::size_t>(x)], at[1][static_cast<std::size_t>(y)],
                                  at[2][static_cast<std::size_t>(z)]);
      }
    }
  }
  for (int z = 0; z < 3; ++z) {
    for (int y = 0; y < 3; ++y) {
      for (int x = 0; x < 3; ++x) {
        if (x == 1 && y == 1 && z == 1) continue;
        body.parts.push_back(
            box_part({index(x, y, z), index(x + 1, y, z), index(x + 1, y + 1, z), index(x, y + 1, z)}, 16));
      }
    }
  }
  const auto shell = [&](int low, int high, bool inward) {
    const std::vector<int> loop{index(low, low, low), index(high, low, low), index(high, high, low),
                                index(low, high, low)};
    Part part;
    close_part(part, loop, index(low, low, high) - index(low, low, low));
    for (Triangle t : part.triangles) {
      if (inward) std::swap(t[1], t[2]);
      body.surface.push_back(t);
    }
  };
  shell(0, 3, false);
  shell(1, 2, true);
}

Base any_base(Random& random, Shape shape, double size, bool on_grid) {
  for (;;) {
    const auto base = shape == Shape::framed_prism ? framed_base(random, size, on_grid)
                      : shape == Shape::bent_prism ? bent_base(random, size, on_grid)
                                                   : convex_base(random, size, on_grid);
    if (base) return *base;
  }
}

/// As a file has them: only the corners that the surface uses, and sometimes each triangle with corners of its own.
void make_mesh(Body& body, Random& random) {
  const bool split = random() % 4 == 0;
  std::vector<int> place(body.corners.size(), -1);
  std::vector<Vec3> vertices;
  std::vector<Mesh::Triangle> triangles;
  for (const Triangle& t : body.surface) {
    Mesh::Triangle named{};
    for (std::size_t k = 0; k < 3; ++k) {
      int& at = place[static_cast<std::size_t>(t[k])];
      if (split || at < 0) {
        at = static_cast<int>(vertices.size());
        vertices.push_back(body.corners[static_cast<std::size_t>(t[k])]);
      }
      named[k] = at;
    }
    triangles.push_back(named);
  }
  body.code = "mesh({";
  for (const Vec3& v : vertices) body.code += text(v) + ", ";
  body.code += "}, {";
  for (const auto& t : triangles) {
    body.code += "{" + std::to_string(t[0]) + ", " + std::to_string(t[1]) + ", " + std::to_string(t[2]) + "}, ";
  }
  body.code += "})";
  auto made = Mesh::make(std::move(vertices), std::move(triangles));
  if (const auto* refusal = std::get_if<geometry::Refusal>(&made)) {
    std::printf("refused: %s\n%s\n", refusal->reason.c_str(), body.code.c_str());
    std::exit(EXIT_FAILURE);
  }
  body.solid = Solid::mesh(std::get<Mesh>(made));
}

void fill_mesh(Body& body, Random& random, double size, bool on_grid) {
  const auto kind = random() % 6;
  if (kind == 0) {
    hollow(body, random, size, on_grid);
    return;
  }
  const Shape shape = random() % 3 == 0   ? Shape::convex_prism
                      : random() % 2 == 0 ? Shape::bent_prism
                                          : Shape::framed_prism;
  const Base base = any_base(random, shape, size, on_grid);
  const double height = length_of(random, size, on_grid);
  if (kind < 3) {
    extrude(body, base, height);
    return;
  }
  // Flat ones too: a hundredth of a millimetre high.
  const Vec2 over = snapped({uniform(random, -0.5, 0.5) * size, uniform(random, -0.5, 0.5) * size}, on_grid);
  const Vec3 above{over, random() % 8 == 0 ? 0.01 : height};
  std::optional<Vec3> below;
  if (random() % 2 == 0) below = Vec3{base.corner(0), -length_of(random, size, on_grid)};
  raise_cone(body, base, above, below);
}

Solid good(std::variant<Solid, geometry::Refusal> made, const std::string& code) {
  if (const auto* refusal = std::get_if<geometry::Refusal>(&made)) {
    std::printf("refused: %s\n%s\n", refusal->reason.c_str(), code.c_str());
    std::exit(EXIT_FAILURE);
  }
  return std::get<Solid>(std::move(made));
}

/// Of a convex part: tetrahedra from its middle.
double volume(const Body& body, const Part& part) {
  const auto corner = [&](int i) { return body.corners[static_cast<std::size_t>(i)]; };
  Vec3 middle{0.0};
  for (const int i : part.corners) middle += corner(i) / static_cast<double>(part.corners.size());
  double sum = 0.0;
  for (const Triangle& t : part.triangles) {
    sum += std::abs(glm::dot(corner(t[0]) - middle, glm::cross(corner(t[1]) - middle, corner(t[2]) - middle))) / 6.0;
  }
  return sum;
}

/// Stops if the parts do not fill the solid that the product made: then all that follows would be worthless.
void check_filled(const Body& body) {
  double sum = 0.0;
  for (const Part& part : body.parts) sum += volume(body, part);
  if (std::abs(sum - body.solid.volume()) <= 1e-9 * (1.0 + sum)) return;
  std::printf("parts of %.17g mm3 in a solid of %.17g mm3\n%s\n", sum, body.solid.volume(), body.code.c_str());
  std::exit(EXIT_FAILURE);
}

Body fresh_body(Random& random, Shape shape, double size) {
  const bool on_grid = random() % 2 == 0 && size > 4.0;
  Body body{std::get<Solid>(Solid::box({1, 1, 1})), {}, {}, {}, {}};
  if (shape == Shape::mesh) {
    fill_mesh(body, random, size, on_grid);
    make_mesh(body, random);
    return body;
  }
  const double height = length_of(random, size, on_grid);
  if (shape == Shape::box) {
    const Vec3 sides{length_of(random, size, on_grid), length_of(random, size, on_grid), height};
    const Base base{rectangle({0, 0}, {sides.x, sides.y}), {}, {{0, 1, 2}, {0, 2, 3}}, true};
    extrude(body, base, height);
    body.parts = {box_part({0, 1, 2, 3}, 4)};
    body.code = "box(" + text(sides) + ")";
    body.solid = good(Solid::box(sides), body.code);
    return body;
  }
  const Base base = any_base(random, shape, size, on_grid);
  extrude(body, base, height);
  std::vector<Outline> holes;
  if (!base.hole.empty()) holes.push_back(base.hole);
  body.code =
      "prism(" + code_of(base.outline) + ", {" + (holes.empty() ? "" : code_of(base.hole)) + "}, " + text(height) + ")";
  body.solid = good(Solid::prism(base.outline, holes, height), body.code);
  return body;
}

}  // namespace

std::string text(double value) {
  std::array<char, 40> room{};
  std::snprintf(room.data(), room.size(), "%.17g", value);
  return room.data();
}

std::string text(const Vec3& v) {
  return "{" + text(v.x) + ", " + text(v.y) + ", " + text(v.z) + "}";
}

Body any_body(Random& random, Shape shape, double size) {
  const Body body = fresh_body(random, shape, size);
  check_filled(body);
  return body;
}

}  // namespace baywright::oracle
