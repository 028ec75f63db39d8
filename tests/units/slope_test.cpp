// Slopes: percent and degrees are two names for one steepness.
#include "units/slope.h"

#include <doctest/doctest.h>

#include <cmath>
#include <initializer_list>

#include "near.h"

namespace rimehaul {

namespace {

using testing::near;
using testing::near_degrees;
using units::Slope;

}  // namespace

TEST_CASE("30 percent is 16.7 degrees and 30 degrees is 57.7 percent") {
  CHECK(near_degrees(Slope::from_percent(30), 16.699244233993621, 1e-12));
  CHECK(near(Slope::from_degrees(30).percent(), 100 / std::sqrt(3.0), 1e-10));
  CHECK(near(Slope::from_degrees(45).ratio(), 1.0, 1e-15));
  CHECK(near(Slope::from_degrees(-45).ratio(), -1.0, 1e-15));
  CHECK(Slope::from_ratio(0.3) == Slope::from_percent(30));
}

TEST_CASE("degrees survive the way in and out") {
  for (double degrees = -89.5; degrees < 90; degrees += 0.5) {
    CHECK(near_degrees(Slope::from_degrees(degrees), degrees, 1e-12));
  }
}

TEST_CASE("a wall, an overhang and nonsense are no slope and pass no limit") {
  for (const double degrees :
       {90.0, -90.0, 91.0, 180.0, static_cast<double>(INFINITY), static_cast<double>(NAN)}) {
    const Slope slope = Slope::from_degrees(degrees);
    CHECK(std::isnan(slope.ratio()));
    CHECK_FALSE(slope <= Slope::from_degrees(89));
    CHECK_FALSE(slope >= Slope::from_degrees(-89));
  }
  CHECK(Slope::from_degrees(89.999) > Slope::from_degrees(89));
}

TEST_CASE("steepness drops the sign, turning round flips it, a tolerance raises it") {
  CHECK(Slope::from_ratio(-0.3).steepness() == Slope::from_ratio(0.3));
  CHECK(Slope::from_ratio(0.3).steepness() == Slope::from_ratio(0.3));
  CHECK(std::isnan(Slope::from_ratio(NAN).steepness().ratio()));
  CHECK(Slope::from_ratio(0.3).reversed() == Slope::from_ratio(-0.3));
  CHECK(near(Slope::from_ratio(0.3).raised_by(Slope::from_ratio(0.05)).ratio(), 0.35, 1e-15));
  CHECK(Slope{} == Slope::from_percent(0));
}

}  // namespace rimehaul
