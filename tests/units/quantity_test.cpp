// Quantities: what may be added and compared, and above all what may not even compile.
#include "units/quantities.h"

#include <doctest/doctest.h>

#include <cmath>
#include <type_traits>

#include "near.h"
#include "units/bearing.h"
#include "units/slope.h"

namespace rimehaul {

namespace {

using testing::near;
using units::Bearing;
using units::ForceRatio;
using units::Kilograms;
using units::Metres;
using units::MetresPerSecond;
using units::Newtons;
using units::Seconds;
using units::Slope;
using units::SquareMetres;

template <class A, class B>
concept Adds = requires(A a, B b) {
  a + b;
};
template <class A, class B>
concept Subtracts = requires(A a, B b) {
  a - b;
};
template <class A, class B>
concept Multiplies = requires(A a, B b) {
  a* b;
};
template <class A, class B>
concept Compares = requires(A a, B b) {
  a < b;
};
template <class A, class B>
concept Equals = requires(A a, B b) {
  a == b;
};

static_assert(Adds<Metres, Metres> && Compares<Metres, Metres>);
static_assert(!Adds<Slope, Slope> && !Subtracts<Slope, Slope>);
static_assert(!Multiplies<Slope, double> && !Multiplies<Slope, Slope>);
static_assert(!Compares<Metres, Seconds> && !Equals<Metres, Seconds>);
static_assert(!Adds<Metres, Seconds> && !Adds<Kilograms, Newtons>);
static_assert(!Adds<Metres, double> && !Compares<Metres, double>);
static_assert(!Compares<Slope, Bearing> && !Compares<Slope, ForceRatio>);
static_assert(!std::is_constructible_v<Slope, double>);
static_assert(!std::is_constructible_v<Bearing, double>);
static_assert(!std::is_convertible_v<double, Metres> && std::is_constructible_v<Metres, double>);
static_assert(!std::is_convertible_v<Metres, double>);
static_assert(!std::is_constructible_v<Metres, Seconds>);
static_assert(std::is_same_v<decltype(Metres{} / Metres{}), double>);
static_assert(sizeof(Metres) == sizeof(double) && sizeof(Slope) == sizeof(double));

}  // namespace

TEST_CASE("lengths add, scale and divide into plain numbers") {
  Metres way{3};
  way += Metres{4};
  way -= Metres{2};
  CHECK(way == Metres{5});
  CHECK(Metres{3} - Metres{4} == Metres{-1});
  CHECK(-Metres{3} == Metres{-3});
  CHECK(2.0 * Metres{3} == Metres{3} * 2.0);
  CHECK(Metres{3} / 2.0 == Metres{1.5});
  CHECK(Metres{3} / Metres{2} == 1.5);
  CHECK(Metres{} == Metres{0});
}

TEST_CASE("an unknown quantity passes no limit, from either side") {
  const Metres unknown{NAN};
  CHECK_FALSE(unknown <= Metres{1e9});
  CHECK_FALSE(unknown >= Metres{-1e9});
  CHECK_FALSE(unknown == unknown);
}

// Standard gravity is 9.80665 m/s2 exactly (3rd CGPM 1901).
TEST_CASE("a tonne weighs 9806.65 N, and forces, works and powers come of it") {
  CHECK(near(units::weight_of(Kilograms{1000}), Newtons{9806.65}, Newtons{1e-9}));
  CHECK(near(ForceRatio{0.2} * Newtons{500}, Newtons{100}, Newtons{1e-12}));
  CHECK(Metres{30} / MetresPerSecond{4} == Seconds{7.5});
  CHECK(MetresPerSecond{4} * Seconds{7.5} == Metres{30});
  CHECK(Newtons{50} * Metres{2} == units::Joules{100});
  CHECK(Newtons{50} * MetresPerSecond{2} == units::Watts{100});
  CHECK(Newtons{5000} / SquareMetres{2} == units::Kilopascals{2.5});
}

}  // namespace rimehaul
