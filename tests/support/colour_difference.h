#pragma once
// How far apart colours look, to whom: lightness and CIEDE2000 (G. Sharma, W. Wu, E. N. Dalal, "The CIEDE2000
// Color-Difference Formula", Color Research & Application 30 (2005)), contrast (WCAG 2), and full dichromacy (G. M.
// Machado, M. M. Oliveira, L. A. F. Fernandes, IEEE TVCG 15 (2009), severity 1.0).
#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <string>

namespace baywright::test {

using Triple = std::array<double, 3>;

/// Linear light of "#RRGGBB" in sRGB, 0..1.
inline Triple linear(const std::string& hex) {
  Triple out{};
  for (std::size_t i = 0; i < 3; ++i) {
    const double value = std::stoi(hex.substr(1 + 2 * i, 2), nullptr, 16) / 255.0;
    out[i] = value <= 0.04045 ? value / 12.92 : std::pow((value + 0.055) / 1.055, 2.4);
  }
  return out;
}

inline Triple product(const std::array<Triple, 3>& rows, const Triple& v) {
  Triple out{};
  for (std::size_t i = 0; i < 3; ++i) out[i] = rows[i][0] * v[0] + rows[i][1] * v[1] + rows[i][2] * v[2];
  return out;
}

enum class Eye { usual, protan, deutan, tritan };
inline constexpr std::array<Eye, 4> eyes = {Eye::usual, Eye::protan, Eye::deutan, Eye::tritan};

/// Linear light as that eye sees it.
inline Triple seen(const std::string& hex, Eye eye) {
  static const std::array<std::array<Triple, 3>, 4> matrices = {
      {{{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}},
       {{{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}}},
       {{{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}}},
       {{{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}}}}};
  Triple out = product(matrices[static_cast<std::size_t>(eye)], linear(hex));
  for (double& value : out) value = std::clamp(value, 0.0, 1.0);
  return out;
}

inline double luminance(const Triple& light) {
  return 0.2126 * light[0] + 0.7152 * light[1] + 0.0722 * light[2];
}

inline double contrast(const Triple& a, const Triple& b) {
  const double high = std::max(luminance(a), luminance(b));
  const double low = std::min(luminance(a), luminance(b));
  return (high + 0.05) / (low + 0.05);
}

/// CIELAB, D65 (IEC 61966-2-1 primaries).
inline Triple lab(const Triple& light) {
  const Triple xyz = product(
      {{{0.4124564, 0.3575761, 0.1804375}, {0.2126729, 0.7151522, 0.0721750}, {0.0193339, 0.1191920, 0.9503041}}},
      light);
  const Triple white{0.95047, 1.0, 1.08883};
  Triple f{};
  for (std::size_t i = 0; i < 3; ++i) {
    const double t = xyz[i] / white[i];
    f[i] = t > 216.0 / 24389.0 ? std::cbrt(t) : (24389.0 / 27.0 * t + 16.0) / 116.0;
  }
  return {116.0 * f[1] - 16.0, 500.0 * (f[0] - f[1]), 200.0 * (f[1] - f[2])};
}

inline double ciede2000(const Triple& first, const Triple& second) {
  const double pi = std::numbers::pi;
  const auto seventh = [](double c) { return std::sqrt(std::pow(c, 7) / (std::pow(c, 7) + std::pow(25.0, 7))); };
  const double mean_c = 0.5 * (std::hypot(first[1], first[2]) + std::hypot(second[1], second[2]));
  const double g = 0.5 * (1.0 - seventh(mean_c));
  const auto chroma = [g](const Triple& x) { return std::hypot((1.0 + g) * x[1], x[2]); };
  const auto hue = [&](const Triple& x) {
    const double a = (1.0 + g) * x[1];
    if (a == 0.0 && x[2] == 0.0) return 0.0;
    const double h = std::atan2(x[2], a);
    return h < 0.0 ? h + 2.0 * pi : h;
  };
  const double c1 = chroma(first), c2 = chroma(second), h1 = hue(first), h2 = hue(second);
  const double dl = second[0] - first[0], dc = c2 - c1;
  double turn = h2 - h1;
  if (turn > pi) turn -= 2.0 * pi;
  if (turn < -pi) turn += 2.0 * pi;
  if (c1 * c2 == 0.0) turn = 0.0;
  const double dh = 2.0 * std::sqrt(c1 * c2) * std::sin(0.5 * turn);
  const double l = 0.5 * (first[0] + second[0]), c = 0.5 * (c1 + c2);
  double h = h1 + h2;
  if (c1 * c2 != 0.0) {
    if (std::abs(h1 - h2) > pi) h += h < 2.0 * pi ? 2.0 * pi : -2.0 * pi;
    h *= 0.5;
  }
  const auto degrees = [pi](double d) { return d * pi / 180.0; };
  const double t = 1.0 - 0.17 * std::cos(h - degrees(30)) + 0.24 * std::cos(2 * h) +
                   0.32 * std::cos(3 * h + degrees(6)) - 0.20 * std::cos(4 * h - degrees(63));
  const double bend = (h * 180.0 / pi - 275.0) / 25.0;
  const double theta = degrees(30.0) * std::exp(-bend * bend);
  const double sl = 1.0 + 0.015 * (l - 50) * (l - 50) / std::sqrt(20.0 + (l - 50) * (l - 50));
  const double sc = 1.0 + 0.045 * c;
  const double sh = 1.0 + 0.015 * c * t;
  const double rt = -std::sin(2.0 * theta) * 2.0 * seventh(c);
  return std::sqrt(dl * dl / (sl * sl) + dc * dc / (sc * sc) + dh * dh / (sh * sh) + rt * dc / sc * dh / sh);
}

}  // namespace baywright::test
