#include "output/mark.h"

#include "support/check_mm.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>
#include <doctest/doctest.h>
#include <numbers>

using namespace baywright;
using namespace baywright::output;
using baywright::test::check_mm;
using fit::Verdict;

namespace {

constexpr std::array verdicts = {Verdict::fits, Verdict::marginal, Verdict::undecided, Verdict::does_not_fit};
using Colour = std::array<double, 3>;

/// Linear sRGB (IEC 61966-2-1).
Colour linear(const std::string& hex) {
  Colour out{};
  for (std::size_t i = 0; i < 3; ++i) {
    const double c = static_cast<double>(std::strtol(hex.substr(1 + 2 * i, 2).c_str(), nullptr, 16)) / 255.0;
    out[i] = c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
  }
  return out;
}

double luminance(const Colour& c) {
  return 0.2126 * c[0] + 0.7152 * c[1] + 0.0722 * c[2];
}

Colour through(const std::array<Colour, 3>& rows, const Colour& c) {
  Colour out{};
  for (std::size_t i = 0; i < 3; ++i)
    out[i] = std::clamp(rows[i][0] * c[0] + rows[i][1] * c[1] + rows[i][2] * c[2], 0.0, 1.0);
  return out;
}

Colour lab(const Colour& c) {
  const auto f = [](double t) { return t > 216.0 / 24389.0 ? std::cbrt(t) : (24389.0 / 27.0 * t + 16.0) / 116.0; };
  const double x = f((0.4124564 * c[0] + 0.3575761 * c[1] + 0.1804375 * c[2]) / 0.95047);
  const double y = f(0.2126729 * c[0] + 0.7151522 * c[1] + 0.0721750 * c[2]);
  const double z = f((0.0193339 * c[0] + 0.1191920 * c[1] + 0.9503041 * c[2]) / 1.08883);
  return {116.0 * y - 16.0, 500.0 * (x - y), 200.0 * (y - z)};
}

/// CIEDE2000 after G. Sharma, W. Wu, E. N. Dalal, The CIEDE2000 color-difference formula, Color Research and
/// Application 30 (2005).
double difference(const Colour& one, const Colour& two) {
  constexpr double pi = std::numbers::pi;
  const auto power7 = [](double v) { return std::sqrt(std::pow(v, 7.0) / (std::pow(v, 7.0) + std::pow(25.0, 7.0))); };
  const double g = 0.5 * (1.0 - power7(0.5 * (std::hypot(one[1], one[2]) + std::hypot(two[1], two[2]))));
  const double a1 = (1.0 + g) * one[1];
  const double a2 = (1.0 + g) * two[1];
  const double c1 = std::hypot(a1, one[2]);
  const double c2 = std::hypot(a2, two[2]);
  const auto hue = [](double b, double a) {
    return a == 0.0 && b == 0.0 ? 0.0 : std::fmod(std::atan2(b, a) + 2.0 * pi, 2.0 * pi);
  };
  const double h1 = hue(one[2], a1);
  const double h2 = hue(two[2], a2);
  double dh = h2 - h1;
  if (dh > pi) dh -= 2.0 * pi;
  if (dh < -pi) dh += 2.0 * pi;
  if (c1 * c2 == 0.0) dh = 0.0;
  double h = 0.5 * (h1 + h2);
  if (std::abs(h1 - h2) > pi) h += h < pi ? pi : -pi;
  if (c1 * c2 == 0.0) h = h1 + h2;
  const double l = 0.5 * (one[0] + two[0]);
  const double c = 0.5 * (c1 + c2);
  const double degree = pi / 180.0;
  const double t = 1.0 - 0.17 * std::cos(h - 30.0 * degree) + 0.24 * std::cos(2.0 * h) +
                   0.32 * std::cos(3.0 * h + 6.0 * degree) - 0.20 * std::cos(4.0 * h - 63.0 * degree);
  const double turn = 30.0 * degree * std::exp(-std::pow((h / degree - 275.0) / 25.0, 2.0));
  const double sl = 1.0 + 0.015 * (l - 50.0) * (l - 50.0) / std::sqrt(20.0 + (l - 50.0) * (l - 50.0));
  const double dl = (two[0] - one[0]) / sl;
  const double dc = (c2 - c1) / (1.0 + 0.045 * c);
  const double dhh = 2.0 * std::sqrt(c1 * c2) * std::sin(0.5 * dh) / (1.0 + 0.015 * c * t);
  return std::sqrt(dl * dl + dc * dc + dhh * dhh - std::sin(2.0 * turn) * 2.0 * power7(c) * dc * dhh);
}

// G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, A Physiologically-based Model for Simulation of Color Vision
// Deficiency, IEEE TVCG 15 (2009): full severity, protan, deutan, tritan; and the eye that sees all.
constexpr std::array<std::array<Colour, 3>, 4> eyes = {
    {{{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}},
     {{{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}}},
     {{{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}}},
     {{{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}}}}};

void collect(const Group& group, std::vector<const Area*>& areas) {
  for (const Item& item : group.items) {
    if (const auto* inner = std::get_if<Group>(&item.drawn)) collect(*inner, areas);
    if (const auto* area = std::get_if<Area>(&item.drawn)) areas.push_back(area);
  }
}

}  // namespace

TEST_CASE("the difference formula gives its authors' figures") {
  // Sharma, Wu, Dalal (2005), Table 1, pairs 1, 7 and 25.
  check_mm(difference({50.0, 2.6772, -79.7751}, {50.0, 0.0, -82.7485}), 2.0425, 5e-5);
  check_mm(difference({50.0, 0.0, 0.0}, {50.0, -1.0, 2.0}), 2.3669, 5e-5);
  check_mm(difference({60.2574, -34.0099, 36.2677}, {60.4626, -34.1751, 39.4387}), 1.2644, 5e-5);
}

TEST_CASE("verdict colours stand out on white and from each other, for every eye") {
  for (const auto& eye : eyes)
    for (const Verdict verdict : verdicts) {
      const Colour seen = through(eye, linear(colour(verdict)));
      CHECK(1.05 / (luminance(seen) + 0.05) >= 3.0);  // WCAG 2.2, 1.4.11 Non-text Contrast
      for (const Verdict other : verdicts) {
        if (other == verdict || verdict == Verdict::undecided || other == Verdict::undecided) continue;
        CHECK(difference(lab(seen), lab(through(eye, linear(colour(other))))) >= 25.0);
      }
    }
}

TEST_CASE("a pattern fills its area and nothing else") {
  const Outline square = {{0, 0}, {12, 0}, {12, 12}, {0, 12}};
  const Outline hole = {{4, 4}, {4, 8}, {8, 8}, {8, 4}};
  Area area{{square, hole}, "", Pattern::hatch, 45.0, 0.5, {}};
  double length = 0.0;
  for (const auto& [p, q] : strokes(area).lines) {
    length += glm::distance(p, q);
    const Vec2 middle = 0.5 * (p + q);
    CHECK_FALSE((middle.x > 4.01 && middle.x < 7.99 && middle.y > 4.01 && middle.y < 7.99));
  }
  check_mm(length * 0.5, 144.0 - 16.0, 2.0);  // lines half a mm apart: their length times that is the area
  area.pattern = Pattern::dots;
  area.pitch = 1.0;
  check_mm(static_cast<double>(strokes(area).dots.size()), 144.0 - 16.0, 25.0);
  area.pattern = Pattern::none;
  CHECK(strokes(area).lines.empty());
}

TEST_CASE("the grid is for what two parts both claim") {
  const Outline outline = {{0, 0}, {5, 0}, {5, 5}, {0, 5}};
  const auto pattern = [&](Verdict verdict, bool overlap) {
    Group group;
    draw_verdict_area(group, verdict, overlap, {outline});
    std::vector<const Area*> areas;
    collect(group, areas);
    return areas.front()->pattern;
  };
  CHECK(pattern(Verdict::does_not_fit, true) == Pattern::grid);
  CHECK(pattern(Verdict::does_not_fit, false) == Pattern::none);
  CHECK(pattern(Verdict::marginal, true) == Pattern::dots);
  CHECK(pattern(Verdict::fits, false) == Pattern::none);
}
