// Places on the map.
#include "geo/point.h"

#include <doctest/doctest.h>

#include <cmath>
#include <type_traits>

#include "near.h"

namespace rimehaul {

namespace {

using testing::near;
using units::Bearing;
using units::Metres;

using geo::Height;

template <class A, class B>
concept Adds = requires(A a, B b) {
  a + b;
};

static_assert(!Adds<Height, Height> && Adds<Height, Metres> && !Adds<Height, double>);
static_assert(std::is_same_v<decltype(Height{} - Height{}), Metres>);
static_assert(!std::is_convertible_v<double, Height>);

geo::MapPoint point(double east, double north) {
  return {Metres{east}, Metres{north}};
}

}  // namespace

TEST_CASE("a triangle of 3, 4 and 5 far from the origin keeps its sides to a hair") {
  const auto a = point(500'000, 5'100'000);
  const auto b = point(500'003, 5'100'004);
  CHECK(near(distance(a, b), Metres{5}, Metres{1e-9}));
  CHECK(near(distance(a, a), Metres{0}, Metres{0}));
  CHECK(near(geo::bearing({a, b}).degrees(), 36.86989764584402, 1e-9));
  CHECK(near(geo::bearing({b, a}).degrees(), 216.86989764584402, 1e-9));
}

TEST_CASE("shares of the way between two places, ends included") {
  const auto a = point(10, 20);
  const auto b = point(30, -20);
  CHECK(geo::between({a, b}, 0) == a);
  CHECK(geo::between({a, b}, 1) == b);
  CHECK(geo::between({a, b}, 0.25) == point(15, 10));
}

TEST_CASE("a place lies beside a segment, past its ends, or beside one that is a single place") {
  const geo::Segment road{point(10, 20), point(14, 23)};
  CHECK(near(geo::share_along(road, point(12 - 3, 21.5 + 4)), 0.5, 1e-12));
  CHECK(near(distance(road, point(12 - 3, 21.5 + 4)), Metres{5}, Metres{1e-12}));
  CHECK(geo::share_along(road, point(0, 0)) == 0.0);
  CHECK(geo::share_along(road, point(99, 99)) == 1.0);
  CHECK(near(distance(road, point(14, 30)), Metres{7}, Metres{1e-12}));
  const geo::Segment spot{point(10, 20), point(10, 20)};
  CHECK(geo::share_along(spot, point(13, 24)) == 0.0);
  CHECK(near(distance(spot, point(13, 24)), Metres{5}, Metres{1e-12}));
  CHECK_FALSE(distance(road, point(NAN, 20)) <= Metres{1e9});
}

TEST_CASE("moved in a direction, a place lies so far off in that direction") {
  const auto a = point(500'000, 5'100'000);
  for (int degrees = 0; degrees < 360; degrees += 17) {
    const auto b = moved(a, Bearing::from_degrees(degrees), Metres{250});
    CHECK(near(distance(a, b), Metres{250}, Metres{1e-8}));
    CHECK(std::abs(geo::bearing({a, b}).turn_to(Bearing::from_degrees(degrees))) <= 1e-9);
  }
}

TEST_CASE("heights differ by metres and are raised by metres") {
  CHECK(geo::Height{1500} - geo::Height{1400.5} == Metres{99.5});
  CHECK(geo::Height{1500} + Metres{-20} == geo::Height{1480});
  CHECK_FALSE(geo::Height{NAN} <= geo::Height{1e9});
}

}  // namespace rimehaul
