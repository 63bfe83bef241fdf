// Published tolerance stack-ups, worst case and root sum square, to the digits printed.
#include "support/check_mm.h"
#include "tolerance/stack.h"

#include <cmath>
#include <doctest/doctest.h>
#include <vector>

using baywright::test::check_mm;
using namespace baywright::tolerance;

namespace {

struct Input {
  double sensitivity, nominal, plus, minus;
};

struct Result {
  double middle, low, high;
};

Result stack(const std::vector<Input>& inputs, Method method, double unit = 1.0) {
  std::vector<Dimension> dimensions;
  for (const Input& in : inputs) {
    dimensions.push_back(
        {.name = "any", .nominal = in.nominal * unit, .minus = in.minus * unit, .plus = in.plus * unit, .source = ""});
  }
  std::vector<Term> terms;
  double nominal = 0.0;
  for (std::size_t i = 0; i < inputs.size(); ++i) {
    terms.push_back({inputs[i].sensitivity, &dimensions[i]});
    nominal += inputs[i].sensitivity * dimensions[i].nominal;
  }
  const Spread about = spread(terms, method);
  const double low = (nominal - about.down) / unit;
  const double high = (nominal + about.up) / unit;
  return {(low + high) / 2.0, low, high};
}

constexpr double inch = 25.4;

}  // namespace

TEST_CASE("motor assembly: Dimensioning and Tolerancing Handbook, McGraw-Hill, chapter 9") {
  // Figures as in the tests of the open tool dimstack (test_McGrawHill). Inches; one-sided limits, so the middle is not
  // the nominal sum of 0.0640.
  const std::vector<Input> inputs{{-1, 0.375, 0, 0.031},    {1, 0.032, 0.002, 0.002}, {1, 0.060, 0.003, 0.003},
                                  {1, 0.438, 0, 0.015},     {1, 0.120, 0.005, 0.005}, {1, 1.500, 0.010, 0.004},
                                  {1, 0.120, 0.005, 0.005}, {1, 0.438, 0, 0.015},     {1, 0.450, 0.007, 0.007},
                                  {-1, 3.019, 0.012, 0},    {1, 0.300, 0.030, 0.030}};
  const Result worst = stack(inputs, Method::worst, inch);
  check_mm(worst.middle, 0.0615, 0.00005);
  check_mm(worst.low, -0.0340, 0.00005);
  check_mm(worst.high, 0.1570, 0.00005);
  const Result rss = stack(inputs, Method::rss, inch);
  check_mm(rss.middle, 0.0615, 0.00005);
  check_mm(rss.low, 0.02342, 0.000005);
  check_mm(rss.high, 0.09958, 0.000005);
}

TEST_CASE("chain with sensitivities: the same handbook, chapter 12") {
  // Inches, as in dimstack's tests. The book prints 0.0719 and -0.0248, rounding on the way; the digits below are
  // derived from its inputs.
  const std::vector<Input> inputs{
      {-0.5146, 0.875, 0.010, 0.010}, {0.1567, 1.625, 0.020, 0.020},  {0.4180, 1.700, 0.012, 0.012},
      {-1, 0.875, 0.010, 0.010},      {-0.0540, 2.625, 0.020, 0.020}, {0.4372, 7.875, 0.030, 0.030},
      {1, 4.125, 0.010, 0.010},       {-0.9956, 1.125, 0.020, 0.020}, {-0.7530, 3.625, 0.015, 0.015},
      {-0.4006, 5.125, 0.020, 0.020}, {-1.0914, 1.000, 0.010, 0.010}};
  const Result worst = stack(inputs, Method::worst, inch);
  check_mm(worst.middle, 0.0719, 0.0002);  // printed
  check_mm(worst.low, -0.0248, 0.001);     // printed
  check_mm(worst.middle, 0.0720125, 1e-9);
  check_mm(worst.low, -0.0256125, 1e-9);
  const Result rss = stack(inputs, Method::rss, inch);
  check_mm(rss.high - rss.middle, 0.033794, 0.0000005);
}

TEST_CASE("shaft, ring, bearing, sleeve and case: a calculator maker's example, and the trap in its signs") {
  // As in dimstack's tests (test_mitcalc). The subtracted rings are toleranced to one side.
  const std::vector<Input> thinner{{1, 208, 0.036, 0.036}, {-1, 1.75, 0, 0.06},     {-1, 23, 0, 0.12},
                                   {1, 20, 0.026, 0.026},  {-1, 200, 0.145, 0.145}, {1, 20, 0.026, 0.026},
                                   {-1, 23, 0, 0.12}};
  const Result worst = stack(thinner, Method::worst);
  check_mm(worst.middle, 0.4000, 0.00005);
  check_mm(worst.low, 0.017, 0.0005);  // always some gap
  check_mm(worst.high, 0.783, 0.0005);
  const Result rss = stack(thinner, Method::rss);
  check_mm(rss.low, 0.22175, 0.000005);
  check_mm(rss.high, 0.57825, 0.000005);

  // The same line of limits read as +0.06 -0 and +0.12 -0, as dimstack's later README has it: the verdict turns.
  std::vector<Input> thicker = thinner;
  for (const std::size_t ring : {1U, 2U, 6U}) std::swap(thicker[ring].plus, thicker[ring].minus);
  const Result turned = stack(thicker, Method::worst);
  check_mm(turned.middle, 0.1000, 0.00005);
  check_mm(turned.low, -0.283, 0.0005);  // may jam
  check_mm(turned.high, 0.483, 0.0005);
  const Result turned_rss = stack(thicker, Method::rss);
  check_mm(turned_rss.low, -0.07825, 0.000005);
  check_mm(turned_rss.high, 0.27825, 0.000005);
}

TEST_CASE("three plates: newconceptzdesigns, My first stackup") {
  // Inches, as in dimstack's tests.
  const std::vector<Input> inputs{{-1, 0.319, 0.005, 0.005}, {1, 10.486, 0.010, 0.010}, {-1, 0.319, 0.005, 0.005}};
  const Result worst = stack(inputs, Method::worst, inch);
  check_mm(worst.middle, 9.8480, 0.00005);
  check_mm(worst.low, 9.8280, 0.00005);
  check_mm(worst.high, 9.8680, 0.00005);
  const Result rss = stack(inputs, Method::rss, inch);
  check_mm(rss.low, 9.8358, 0.00005);
  check_mm(rss.high, 9.8602, 0.00005);
}

TEST_CASE("housing with bearings: metricmech.com, worked example of a tolerance stack-up") {
  const std::vector<Input> inputs{{1, 40, 0.10, 0.10}, {-1, 25, 0.05, 0.05}, {-1, 2, 0.03, 0.03}, {-1, 10, 0.05, 0.05}};
  const Result worst = stack(inputs, Method::worst);
  check_mm(worst.middle, 3.000, 0.0005);  // the page
  check_mm(worst.low, 2.770, 0.0005);     // derived from the page's inputs, as the rest
  check_mm(worst.high, 3.230, 0.0005);
  const Result rss = stack(inputs, Method::rss);
  check_mm(rss.high - rss.middle, 0.126095, 0.0000005);
}

TEST_CASE("two sums of a page on the root sum square") {
  // A page without a named author: 0.45 and 0.269 for three tolerances, 1.0 and 0.316 for ten of 0.1.
  const std::vector<Input> three{{1, 17.0, 0.20, 0.20}, {1, 0, 0.10, 0.10}, {1, 0, 0.15, 0.15}};
  const Result worst = stack(three, Method::worst);
  check_mm(worst.high - worst.middle, 0.45, 0.005);
  const Result rss = stack(three, Method::rss);
  check_mm(rss.middle, 17.00, 0.005);
  check_mm(rss.high - rss.middle, 0.269, 0.0005);

  const std::vector<Input> ten(10, {1, 0, 0.1, 0.1});
  check_mm(stack(ten, Method::worst).high, 1.0, 0.05);
  check_mm(stack(ten, Method::rss).high, 0.316, 0.0005);
  // To hold +-0.316 in the worst case each part must hold 0.0316 (the page).
  check_mm(stack(std::vector<Input>(10, {1, 0, 0.0316, 0.0316}), Method::worst).high, 0.316, 0.0005);
}
