#include "crossing/turning.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <vector>

#include "base/require.h"
#include "crossing/any_ground.h"
#include "crossing/find_way.h"
#include "near.h"

using namespace rimehaul::crossing;
using namespace rimehaul::testing;
using rimehaul::base::OurFault;
using rimehaul::units::Bearing;
using rimehaul::units::Metres;

namespace {

struct Vector {
  double east = 0.0;
  double north = 0.0;
};

Vector along(Heading heading) {
  const CellStep step = step_of(heading);
  const double length = std::hypot(step.columns, step.rows);
  return {step.columns / length, -step.rows / length};
}

/// Radius of the circle through three places: the product of the sides over four times the area.
double circle_through(Vector a, Vector b, Vector c) {
  const double ab = std::hypot(b.east - a.east, b.north - a.north);
  const double bc = std::hypot(c.east - b.east, c.north - b.north);
  const double ca = std::hypot(a.east - c.east, a.north - c.north);
  const double twice_area =
      std::abs((b.east - a.east) * (c.north - a.north) - (b.north - a.north) * (c.east - a.east));
  return ab * bc * ca / (2.0 * twice_area);
}

}  // namespace

TEST_CASE("the arc of a rounded corner touches both moves and lies on a circle of its radius") {
  for (int index = 0; index < 16; ++index) {
    for (const int turn : {-1, 1}) {
      CAPTURE(index);
      CAPTURE(turn);
      const Heading before = turned(Heading{}, index);
      const Heading after = turned(before, turn);
      const RoundedCorner corner = rounded_corner({before, after}, Metres{1.0});
      const Vector in = along(before);
      const Vector out = along(after);
      const double tangent = corner.tangent.value();
      const Vector begins{-tangent * in.east, -tangent * in.north};
      const Vector ends{tangent * out.east, tangent * out.north};
      // The corner lies at the origin, the middle of the arc on the bisector inside.
      const double inside = std::hypot(out.east - in.east, out.north - in.north);
      const Vector middle{corner.cut.value() * (out.east - in.east) / inside,
                          corner.cut.value() * (out.north - in.north) / inside};
      CHECK(near(circle_through(begins, middle, ends), corner.radius.value(), 1e-9));
      // From a point on a circle, the chord over half the arc leaves at a quarter of its turn.
      const Bearing chord = Bearing::of(middle.east - begins.east, middle.north - begins.north);
      const double whole = bearing_of(before).turn_to(bearing_of(after));
      CHECK(near(bearing_of(before).turn_to(chord), whole / 4.0, 1e-9));
    }
  }
}

TEST_CASE(
    "over all sequences of moves no corner is sharper than 2.118 pitches, and some are that") {
  double sharpest = std::numeric_limits<double>::infinity();
  double farthest = 0.0;
  const Metres pitch{1.0};
  for (int index = 0; index < 16; ++index) {
    for (int first = -1; first <= 1; ++first) {
      for (int second = -1; second <= 1; ++second) {
        const Heading middle = turned(Heading{}, index);
        const RoundedCorner begins = rounded_corner({turned(middle, -first), middle}, pitch);
        const RoundedCorner ends = rounded_corner({middle, turned(middle, second)}, pitch);
        // The arcs at both ends of a move leave each other their room on it.
        CHECK(begins.tangent + ends.tangent <= length_of(middle, pitch));
        sharpest = std::min(sharpest, begins.radius.value());
        farthest = std::max(farthest, begins.cut.value());
      }
    }
  }
  CHECK(near(sharpest, (2.0 + std::sqrt(5.0)) / 2.0, 1e-12));
  CHECK(near(smallest_radius(pitch).value(), sharpest, 1e-12));
  CHECK(near(largest_cut(pitch).value(), farthest, 1e-12));
  CHECK(farthest < 0.0583);
}

TEST_CASE(
    "a rig that turns at the least pitch's radius or tighter drives every sequence of moves") {
  CHECK(near(least_pitch(Metres{3.0}).value(), 6.0 * (std::sqrt(5.0) - 2.0), 1e-12));
  for (int decimetres = 5; decimetres < 300; ++decimetres) {
    const Metres radius{0.1 * decimetres};
    const Metres pitch = least_pitch(radius);
    CAPTURE(radius.value());
    CHECK(smallest_radius(pitch) >= radius);
    CHECK(smallest_radius(pitch * (1.0 - 1e-12)) < radius);
  }
}

TEST_CASE("no pitch is told for a radius that is nothing or not known") {
  CHECK_THROWS_AS((void)least_pitch(Metres{0.0}), OurFault);
  CHECK_THROWS_AS((void)least_pitch(Metres{-1.0}), OurFault);
  CHECK_THROWS_AS((void)least_pitch(Metres{std::nan("")}), OurFault);
  CHECK_THROWS_AS((void)rounded_corner({Heading{0}, Heading{2}}, Metres{1.0}), OurFault);
}

TEST_CASE("to go back the way it came a rig makes eight moves on ground nine cells wide") {
  // From each heading to its opposite, with the fewest moves; the ground is wide open.
  MovePrices prices = even_ground(lattice_of(41, 41), 1.0);
  for (std::uint8_t& price : prices.price) {
    price = price == 0 ? std::uint8_t{0} : std::uint8_t{1};
  }
  for (int index = 0; index < 16; ++index) {
    CAPTURE(index);
    const State start{{20, 20}, turned(Heading{}, index)};
    const Heading back = turned(start.heading, 8);
    std::vector<State> goals;
    for (const State& state : states_of(prices.lattice)) {
      if (state.heading == back) {
        goals.push_back(state);
      }
    }
    const auto answer = find_way(std::vector{start}, CostToGo{prices, goals});
    REQUIRE(std::holds_alternative<Way>(answer));
    const Way& way = std::get<Way>(answer);
    CHECK(way.price == 8);
    const Cell end = way.states.back().cell;
    const double away = std::hypot(end.column - 20, end.row - 20);
    CHECK(away > 8.6);
    CHECK(away < 9.06);
  }
}
