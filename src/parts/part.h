#pragma once
// A part: solids in its own coordinates, the dimensions that decide them, and what other parts may hold on to.
#include "geometry/solid.h"
#include "parts/coordinate.h"
#include "tolerance/dimension.h"

#include <map>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace baywright::parts {

/// One solid of a part: a form that is stretched to fill a box whose sides are coordinates of the part.
struct Body {
  enum class Form { box, prism, cylinder, mesh };

  std::string name;  // "card", "chips", "fin 3"; unique in its part
  Form form = Form::box;
  int axis = 2;               // of extrusion for prism and cylinder: 0 x, 1 y, 2 z
  Coordinates low;            // the box that the solid fills, part coordinates
  Coordinates high;           // high > low at every value of the dimensions
  geometry::Outline outline;  // prism: in its nominal place, the two axes after `axis` in turn (x,y for z; y,z for x)
  std::vector<geometry::Outline> holes;
  Coordinate bore;                     // cylinder: diameter of the bore, 0 when solid
  std::optional<geometry::Mesh> mesh;  // mesh: put with its low corner at `low`; its box is without limits
  int quarters = 0;                    // mesh: quarter turns about z that it has made within its box, 0..3
  bool drawn_only = false;             // shown in drawings, never measured (a hole's rim, a printed mark)

  /// The solid at one size, made once (`make_ready`): cutting an outline into convex pieces is the slow step of a
  /// seating.
  std::optional<geometry::Solid> ready;
  geometry::Vec3 ready_size{0.0};
};

/// A round hole through a part, for drawings and fixing. Axis along part z.
struct Hole {
  std::string name;
  double x = 0.0, y = 0.0, diameter = 0.0;  // mm
};

/// A line along which a sheet is bent, seen along part z: the middle of the bend as drawn.
struct Bend {
  geometry::Vec2 from{0.0};  // mm
  geometry::Vec2 to{0.0};
  std::optional<double> inside{};  // mm, the radius inside; none: not said
};

/// A mesh file behind a body: what was read into it, for people to judge.
struct Model {
  std::string body;
  std::string file;                       // as written
  std::string unit;                       // "mm", "cm", "m", "in"
  bool unit_guessed = false;              // from its size
  std::string up;                         // which axis of the file is the part's +z
  bool up_guessed = false;                // not said
  geometry::Vec3 size{0.0};               // mm
  bool closed = true;                     // it has an inside
  std::vector<geometry::MeshFlaw> flaws;  // `where` as the file has it: its unit, its axes
};

/// A DXF or SVG file behind an outline.
struct OutlineFile {
  std::string file;                        // as written
  std::map<std::string, int> passed_over;  // what it holds besides that was not understood, and how many
};

struct Part {
  std::string id;     // "board/mini-itx", "fin-heatsink-3"; "inline" for a solid in a build file
  std::string title;  // for people; may be empty
  std::string kind;   // "board", "heatsink", "card", "part": what it is called where no name is given
  std::vector<tolerance::Dimension> dimensions;
  std::vector<Body> bodies;  // at least one
  std::vector<Hole> holes;
  std::vector<Model> models;
  std::vector<OutlineFile> drawings;
  std::vector<Bend> bends;

  int add(tolerance::Dimension dimension);  // its index
};

/// The solid of a body at given values of the part's dimensions (index as in the body's coordinates), in part
/// coordinates. Refused where the values leave no solid (thickness below zero and the like), as geometry::Solid does.
struct Shaped {
  geometry::Solid solid;
  geometry::Pose pose;  // of the solid in its part: a shift, and a turn that permutes the axes
};
[[nodiscard]] std::variant<Shaped, geometry::Refusal> shape(const Body& body, std::span<const double> values);

/// Makes the bodies' solids at nominal size, so that `shape` need not at that size.
void make_ready(Part& part);

/// Nominal values of the part's dimensions, in order.
[[nodiscard]] std::vector<double> nominal_values(const Part& part);

/// The face of the part farthest along an axis: 0 x, 1 y, 2 z, at the nominal values. `up`: the high end.
[[nodiscard]] Coordinate outer_face(const Part& part, int axis, bool up);

/// The part turned about its z axis by quarter turns, counter-clockwise seen from above (any whole number).
[[nodiscard]] Part turned(Part part, int quarters);

/// A body that is a box with the given sides.
[[nodiscard]] Body box_body(std::string name, Coordinates low, Coordinates high);

/// A body that is a round bar about the z axis through (x, y).
[[nodiscard]] Body round_body(std::string name, double x, double y, const Coordinate& diameter, const Coordinate& low,
                              const Coordinate& high);

}  // namespace baywright::parts
