// Lines drawn from ways over the lattice: they begin and end where they must, and round corners.
#include "crossing/drawn_way.h"

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

#include "near.h"

namespace rimehaul::crossing {

namespace {

using geo::MapPoint;
using testing::near;
using units::Metres;

MapPoint at(double east, double north) {
  return {Metres{500'000 + east}, Metres{5'100'000 + north}};
}

Lattice lattice() {
  return {.north_west = at(0, 100), .pitch = Metres{2}, .columns = 60, .rows = 60};
}

Way eastward(int moves) {
  Way way;
  for (int i = 0; i <= moves; ++i) {
    way.states.push_back({{10 + i, 20}, Heading{4}});
  }
  return way;
}

}  // namespace

TEST_CASE("a way is bent to its ends by a little at each of its first and last moves") {
  const MapPoint from = at(20.5, 60.8);  // the first cell's centre is at (20, 60)
  const MapPoint to = at(59.4, 59.3);    // the last one's at (60, 60)
  const auto points = bent_to({from, to}, lattice(), eastward(20));
  REQUIRE(points.has_value());
  REQUIRE(points->size() == 21);
  CHECK(points->front() == from);
  CHECK(points->back() == to);
  CHECK((*points)[10] == at(40, 60));
  for (std::size_t i = 1; i < points->size(); ++i) {
    const double off = geo::bearing({(*points)[i - 1], (*points)[i]}).degrees() - 90.0;
    CHECK(std::abs(off) < 5.0);
  }
  CHECK_FALSE(bent_to({from, to}, lattice(), eastward(1)).has_value());
}

// A right angle between pieces of 20 m: the arc touches both 10 m from the corner, its radius is
// 10 m, and it passes the corner at 10 (sqrt 2 - 1) = 4.142 m.
TEST_CASE("a corner becomes an arc that touches half of the shorter piece, by closed form") {
  const geo::Polyline line = rounded({at(0, 0), at(0, 20), at(30, 20)});
  CHECK(line.points().front() == at(0, 0));
  CHECK(line.points().back() == at(30, 20));
  CHECK(near(line.nearest(at(0, 20)).away, Metres{10 * (std::sqrt(2.0) - 1)}, Metres{0.02}));
  const MapPoint centre = at(10, 10);
  int on_arc = 0;
  for (const MapPoint& point : line.points()) {
    const bool arc = point.north > at(0, 9.999).north && point.east < at(10.001, 0).east;
    on_arc += arc ? 1 : 0;
    CHECK((!arc || near(geo::distance(centre, point), Metres{10}, Metres{1e-3})));
  }
  CHECK(on_arc >= 19);
  for (std::size_t i = 1; i < line.segment_count(); ++i) {
    CHECK(std::abs(line.segment_bearing(i - 1).turn_to(line.segment_bearing(i))) <= 5.001);
  }
  CHECK(near(line.length(), Metres{10 + 10 * std::numbers::pi / 2 + 20}, Metres{0.02}));
}

TEST_CASE("points in the middle of a straight piece are no corners") {
  const geo::Polyline line = rounded({at(0, 0), at(0, 5), at(0, 20), at(0, 50)});
  CHECK(line.points().size() == 2);
  CHECK(line.length() == Metres{50});
}

}  // namespace rimehaul::crossing
