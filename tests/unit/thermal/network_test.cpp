// Heat ways in steady state: what is given off is what arises, series and parallel add up as circuits do.
#include "thermal/network.h"

#include "support/check_ratio.h"
#include "thermal/card.h"
#include "thermal/radiation.h"

#include <cmath>
#include <doctest/doctest.h>
#include <limits>
#include <random>

using namespace baywright::thermal;
using baywright::test::check_ratio;

TEST_CASE("series and parallel: a chip of 5 W over 2 and 3 K/W, with 4 W/K beside") {
  Network net;
  const int air = net.fixed(300.0);
  const int chip = net.body(5.0);
  const int middle = net.body(0.0);
  net.conduct(chip, middle, 1.0 / 2.0);
  net.conduct(middle, air, 1.0 / 3.0);
  const auto alone = net.solve();
  REQUIRE(alone);
  check_ratio(alone->kelvin[static_cast<std::size_t>(chip)] - 300.0, 25.0, 1e-9);
  net.conduct(chip, air, 1.0 / 20.0);
  check_ratio(net.solve()->kelvin[static_cast<std::size_t>(chip)] - 300.0, 20.0, 1e-9);
}

TEST_CASE("a black plate that only radiates into the void: Stefan and Boltzmann") {
  Network net;
  const int space = net.fixed(0.0);
  const int plate = net.body(stefan_boltzmann * std::pow(400.0, 4.0));
  net.way(plate, space, [](double hot, double cold) { return radiated(1.0, hot, cold); });
  const auto steady = net.solve();
  REQUIRE(steady);
  check_ratio(steady->kelvin[static_cast<std::size_t>(plate)], 400.0, 1e-9);
}

TEST_CASE("heat that goes nowhere has no steady state") {
  Network net;
  (void)net.fixed(300.0);
  (void)net.body(1.0);
  CHECK(!net.solve());
}

TEST_CASE("random cards: the balance closes within 1e-9 of the power, and more of anything that cools is cooler") {
  std::mt19937_64 random(20260101);
  const auto between = [&](double low, double high) { return std::uniform_real_distribution(low, high)(random); };
  int answered = 0;
  int shut_in = 0;
  int with_sink = 0;
  int streamed = 0;
  for (int i = 0; i < 300; ++i) {
    Card card;
    const double watts = between(0.5, 8.0);
    card.watts = {watts, watts};
    card.length = between(0.03, 0.11);
    card.width = between(0.016, 0.03);
    card.thickness = 0.8e-3;
    const double room = between(0.0005, 0.03);
    card.room = {room, i % 3 == 0 ? std::numeric_limits<double>::infinity() : room};
    const double air = between(290.0, 320.0);
    card.air = {air, air + between(0.0, 20.0)};
    if (i % 2 == 0) card.sink = Sink{card.length - 0.01, card.width, between(0.002, 0.02), {}, {0.5e-3, 0.9e-3}};
    if (i % 4 == 0) card.sink->fins = Fins{8, 1e-3, card.sink->height * 0.7, 1.5e-3};
    if (i % 5 == 0) card.speed = between(0.2, 3.0);
    const auto found = warmth(card);
    if (!found) continue;
    ++answered;
    shut_in += found->remarks.empty() ? 0 : 1;
    with_sink += card.sink ? 1 : 0;
    streamed += card.speed > 0.0 ? 1 : 0;
    CHECK(found->imbalance <= 1e-9 * std::max(watts, 1.0));
    CHECK(found->composite().low >= card.air.low);
    CHECK(found->composite().low < found->composite().high);
    Card more = card;
    more.watts = {1.2 * watts, 1.2 * watts};
    const auto warmer = warmth(more);
    if (warmer) CHECK(warmer->controller.low > found->controller.low);
    if (i % 2 == 0) continue;
    Card stream = card;
    stream.speed = 5.0;
    stream.room = {1.0, 1.0};
    Card still = stream;
    still.speed = 0.0;
    if (const auto still_found = warmth(still)) CHECK(warmth(stream)->controller.low < still_found->controller.low);
  }
  CHECK(answered > 250);
  CHECK(shut_in > 100);
  CHECK(with_sink > 100);
  CHECK(streamed > 40);
}

TEST_CASE("no power is air, no size is no answer, and what cannot be told is not told") {
  Card card;
  card.length = 0.08;
  card.width = 0.022;
  card.thickness = 0.8e-3;
  card.room = {1.0, 1.0};
  card.air = {300.0, 300.0};
  const auto off = warmth(card);
  REQUIRE(off);
  check_ratio(off->composite().high, 300.0, 1e-6);
  Card none = card;
  none.length = 0.0;
  CHECK(!warmth(none));
  none = card;
  none.watts = {std::nan(""), std::nan("")};
  CHECK(!warmth(none));
  none = card;
  none.air = {100.0, 100.0};
  CHECK(!warmth(none));
  none = card;
  none.watts = {500.0, 500.0};
  CHECK(!warmth(none));
}

TEST_CASE("the widest cause is named: air that nobody measured, where all else is known") {
  Card card;
  card.watts = {3.0, 3.0};
  card.length = 0.08;
  card.width = 0.022;
  card.thickness = 0.8e-3;
  card.room = {1.0, 1.0};
  card.air = {280.0, 340.0};
  card.facing = Facing::sideways;
  const auto found = warmth(card);
  REQUIRE(found);
  CHECK(found->widest == Cause::air);
}
