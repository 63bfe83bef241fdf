#include "thermal/pad.h"

#include <limits>

namespace baywright::thermal {

double compression(double gap, double free_thickness) {
  return 1.0 - gap / free_thickness;
}

std::optional<Window> window(double thinnest, double thickest, const Compressed& range) {
  const Window found{thickest * (1.0 - range.most), thinnest * (1.0 - range.least)};
  if (!(found.low <= found.high)) return std::nullopt;
  return found;
}

Contact contact(double gap_low, double gap_high, double thinnest, double thickest, const Compressed& range) {
  Contact out;
  out.least = compression(gap_high, thinnest);
  out.most = compression(gap_low, thickest);
  constexpr double hair = 1e-12;  // a range that is met exactly is met
  out.too_loose = !(out.least >= range.least - hair);
  out.too_tight = !(out.most <= range.most + hair);
  return out;
}

double layer_resistance(double thickness, double conductivity, double area, double each_face) {
  if (!(conductivity > 0.0 && area > 0.0)) return std::numeric_limits<double>::infinity();
  return (thickness / conductivity + 2.0 * each_face) / area;
}

}  // namespace baywright::thermal
