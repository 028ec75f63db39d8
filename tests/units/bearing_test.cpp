// Directions on the map wrap around; turns between them do not.
#include "units/bearing.h"

#include <doctest/doctest.h>

#include <cmath>
#include <initializer_list>

#include "near.h"

namespace rimehaul {

namespace {

using testing::near;
using units::Bearing;

double turn(double from_deg, double to_deg) {
  return Bearing::from_degrees(from_deg).turn_to(Bearing::from_degrees(to_deg));
}

}  // namespace

TEST_CASE("bearings lie between 0 and 360 degrees whatever they are made of") {
  CHECK(Bearing::from_degrees(360).degrees() == 0.0);
  CHECK(Bearing::from_degrees(-90).degrees() == 270.0);
  CHECK(Bearing::from_degrees(725).degrees() == 5.0);
  CHECK(Bearing::from_degrees(-1e-20).degrees() < 360.0);
  CHECK(Bearing::from_degrees(-720).degrees() == 0.0);
  CHECK(std::isnan(Bearing::from_degrees(NAN).degrees()));
}

TEST_CASE("north is 0, east 90, and the vector of a bearing leads back to it") {
  CHECK(near(Bearing::of(0, 1).degrees(), 0, 1e-12));
  CHECK(near(Bearing::of(1, 0).degrees(), 90, 1e-12));
  CHECK(near(Bearing::of(0, -1).degrees(), 180, 1e-12));
  CHECK(near(Bearing::of(-1, 0).degrees(), 270, 1e-12));
  CHECK(Bearing::of(0, 0).degrees() == 0.0);
  for (int degrees = 0; degrees < 360; degrees += 11) {
    const Bearing bearing = Bearing::from_degrees(degrees);
    CHECK(near(Bearing::of(bearing.sine(), bearing.cosine()).degrees(), degrees, 1e-10));
  }
}

TEST_CASE("a turn takes the short way, right is positive, straight back is 180") {
  CHECK(near(turn(350, 10), 20, 1e-9));
  CHECK(near(turn(10, 350), -20, 1e-9));
  CHECK(near(turn(90, 90), 0, 1e-9));
  CHECK(near(turn(0, 179.5), 179.5, 1e-9));
  CHECK(near(turn(0, 180.5), -179.5, 1e-9));
  for (const double from : {0.0, 45.0, 180.0, 359.0}) {
    CHECK(near(turn(from, from + 180), 180, 1e-9));
  }
}

TEST_CASE("the opposite of the opposite is where one started") {
  CHECK(Bearing::from_degrees(10).opposite() == Bearing::from_degrees(190));
  CHECK(Bearing::from_degrees(200).opposite() == Bearing::from_degrees(20));
  CHECK(Bearing::from_degrees(33).opposite().opposite() == Bearing::from_degrees(33));
}

}  // namespace rimehaul
