// Printed numbers never flatter.
#include "units/rounding.h"

#include <doctest/doctest.h>

#include <cmath>
#include <cstdlib>
#include <random>

namespace rimehaul {

namespace {

using units::Round;
using units::Slope;
using units::text_of;

}  // namespace

TEST_CASE("a share of 0.996 never prints as 1.00 nor one of 1.004 as 1.00") {
  CHECK(text_of(0.996, 2, Round::down) == "0.99");
  CHECK(text_of(0.996, 2, Round::up) == "1.00");
  CHECK(text_of(1.004, 2, Round::up) == "1.01");
  CHECK(text_of(1.004, 2, Round::down) == "1.00");
  CHECK(text_of(0.996, 2, Round::nearest) == "1.00");
}

TEST_CASE("a number that has that few digits prints as it is, whichever way") {
  for (const Round round : {Round::nearest, Round::up, Round::down}) {
    CHECK(text_of(0.29, 2, round) == "0.29");
    CHECK(text_of(0.7, 1, round) == "0.7");
    CHECK(text_of(-12.5, 1, round) == "-12.5");
    CHECK(text_of(1000.0, 0, round) == "1000");
  }
  CHECK(text_of(0.1 + 0.2, 1, Round::up) == "0.3");
}

TEST_CASE("below zero up means towards plus, and nothing prints as minus zero") {
  CHECK(text_of(-0.996, 2, Round::up) == "-0.99");
  CHECK(text_of(-0.996, 2, Round::down) == "-1.00");
  CHECK(text_of(-0.004, 2, Round::up) == "0.00");
  CHECK(text_of(-0.001, 2, Round::nearest) == "0.00");
  CHECK(text_of(-0.001, 2, Round::down) == "-0.01");
  CHECK(text_of(-0.0, 1, Round::nearest) == "0.0");
}

TEST_CASE("what is not a number prints as unknown") {
  CHECK(text_of(NAN, 2, Round::up) == "unknown");
  CHECK(text_of(INFINITY, 2, Round::down) == "unknown");
}

TEST_CASE("rounded up is never less, rounded down never more, and neither by a whole digit") {
  const unsigned seed = 20260204;
  CAPTURE(seed);
  std::mt19937_64 random{seed};
  std::uniform_real_distribution<double> any{-2000.0, 2000.0};
  for (int i = 0; i < 2000; ++i) {
    const double number = any(random);
    const int decimals = i % 4;
    const double step = std::pow(10.0, -decimals);
    const double up = std::strtod(text_of(number, decimals, Round::up).c_str(), nullptr);
    const double down = std::strtod(text_of(number, decimals, Round::down).c_str(), nullptr);
    CHECK(up >= number);
    CHECK(up < number + step * (1 + 1e-9));
    CHECK(down <= number);
    CHECK(down > number - step * (1 + 1e-9));
  }
}

TEST_CASE("a slope prints in degrees with percent beside it, rounded on its size") {
  CHECK(text_of(Slope::from_percent(30), Round::up) == "16.7 deg (30.0 %)");
  CHECK(text_of(Slope::from_percent(30), Round::down) == "16.6 deg (30.0 %)");
  CHECK(text_of(Slope::from_percent(-30), Round::up) == "-16.7 deg (-30.0 %)");
  CHECK(text_of(Slope::from_percent(-30), Round::down) == "-16.6 deg (-30.0 %)");
}

}  // namespace rimehaul
