#include "thermal/budget.h"

#include <array>
#include <cmath>

namespace baywright::thermal {

using standards::connectors::Plug;
using tolerance::Known;

namespace {

constexpr double m2_volts = 3.3;
constexpr double m2_amperes_storage = 2.5;  // keys B and M, largest average over 100 microseconds
constexpr double m2_amperes_radio = 2.0;    // keys A and E
constexpr std::string_view m2_source = "PCI-SIG M.2 Rev 1.0, Table 41: 3.3 V, peak current";

struct Sustained {
  parts::Form form;
  double thickness;  // mm
  double watts;
  std::string_view source;
};
constexpr std::string_view e1_source = "SFF-TA-1006, recommended sustained power, from memory";
constexpr std::string_view e3_source = "SFF-TA-1008, recommended sustained power, from memory";
constexpr std::array<Sustained, 9> edsff{{{parts::Form::e1_s, 5.9, 12.0, e1_source},
                                          {parts::Form::e1_s, 8.01, 16.0, e1_source},
                                          {parts::Form::e1_s, 9.5, 20.0, e1_source},
                                          {parts::Form::e1_s, 15.0, 25.0, e1_source},
                                          {parts::Form::e1_s, 25.0, 40.0, e1_source},
                                          {parts::Form::e3_s, 7.5, 25.0, e3_source},
                                          {parts::Form::e3_s, 16.8, 40.0, e3_source},
                                          {parts::Form::e3_l, 7.5, 40.0, e3_source},
                                          {parts::Form::e3_l, 16.8, 70.0, e3_source}}};

}  // namespace

std::optional<Budget> m2_budget(char key) {
  const bool storage = key == 'M' || key == 'B';
  if (!storage && key != 'A' && key != 'E') return std::nullopt;
  return Budget{m2_volts * (storage ? m2_amperes_storage : m2_amperes_radio), true, m2_source, Known::read};
}

std::optional<Budget> card_slot_budget(int lanes) {
  constexpr std::string_view source = "PCI Express Card Electromechanical Specification, from memory";
  if (lanes == 1 || lanes == 4 || lanes == 8) return Budget{25.0, false, source, Known::memory};
  if (lanes == 16) return Budget{75.0, false, source, Known::memory};
  return std::nullopt;
}

std::optional<Budget> plug_budget(Plug plug) {
  if (plug != Plug::u2 && plug != Plug::u3) return std::nullopt;
  return Budget{25.0, false, "SFF-8639 on 12 V, from memory", Known::memory};
}

std::optional<Budget> edsff_budget(parts::Form form, double thickness) {
  for (const Sustained& row : edsff)
    if (row.form == form && std::abs(row.thickness - thickness) <= 0.05)
      return Budget{row.watts, false, row.source, Known::memory};
  return std::nullopt;
}

Draw draw(const Budget& budget, std::span<const std::optional<double>> watts) {
  Draw out;
  for (const std::optional<double>& each : watts) {
    if (each)
      out.known += *each;
    else
      ++out.unknown;
  }
  out.over = !(out.known <= budget.watts);
  return out;
}

}  // namespace baywright::thermal
