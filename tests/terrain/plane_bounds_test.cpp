// Bounds of fitted planes on rough fine ground: none lies outside, and they are worth their while.
#include "terrain/plane_bounds.h"

#include <doctest/doctest.h>

#include <cmath>
#include <random>

#include "ground/surfaces.h"
#include "near.h"
#include "terrain/plane.h"

namespace rimehaul {

namespace {

using terrain::Attitude;
using terrain::AttitudeBox;
using terrain::Footprint;
using terrain::Gradient;
using terrain::HeadingArc;
using testing::map_of;
using testing::near;
using testing::point;
using units::Bearing;
using units::Metres;
using units::Slope;

constexpr Footprint kCarrier{Metres{2.0}, Metres{1.2}};

HeadingArc arc(double middle_deg, double each_way_deg) {
  return HeadingArc{Bearing::from_degrees(middle_deg)}.opened_by(each_way_deg);
}

/// The gradients that half-metre cells with bumps of 5 cm either way may have.
constexpr Slope kSpread = Slope::from_ratio(0.2 * 2.0 * 1.4142136);

}  // namespace

TEST_CASE("no plane fitted anywhere on rough ground lies outside the bounds of planes") {
  const terrain::HeightMap map = map_of(testing::rough(20261126, 0.05, 0.1), 0.5, {0, 0, 60, 60});
  std::mt19937_64 random{20261126};
  std::uniform_real_distribution<double> share{0, 1};
  for (const double each_way_deg : {0.0, 3.0, 25.0}) {
    for (const double way_deg : {0.0, 30.0, 45.0, 200.0}) {
      const Bearing way = Bearing::from_degrees(way_deg);
      const Bearing right = Bearing::from_degrees(way_deg + 90.0);
      const geo::Segment line{point(30, 30), geo::moved(point(30, 30), way, Metres{5})};
      const HeadingArc headings = arc(way_deg, each_way_deg);
      const auto box = plane_attitudes(map, kCarrier, {line, Metres{0.8}, headings}, kSpread);
      REQUIRE(box.has_value());
      for (int i = 0; i < 3000; ++i) {
        const geo::MapPoint middle =
            geo::moved(geo::between(line, share(random)), right, Metres{1.6 * share(random) - 0.8});
        const Bearing heading = headings.at(share(random));
        const auto plane = fitted_gradient(map, middle, heading, kCarrier);
        CHECK(box->holds(attitude_of(*plane, heading)));
        const double chord = (*map.at(geo::moved(middle, heading, Metres{1})) -
                              *map.at(geo::moved(middle, heading, Metres{-1})))
                                 .value() /
                             2.0;
        CHECK(box->grade_low.ratio() <= chord);
        CHECK(chord <= box->grade_high.ratio());
      }
    }
  }
}

// Fits lie at most 0.15 m apart: 33 along 4.9 m, 10 over 1.48 m.
TEST_CASE("bounds of planes are the extremes of the fits and what may lie between, by hand") {
  const terrain::HeightMap map = map_of(testing::plane(0.1, 0.2), 0.5, {0, 0, 60, 60});
  const geo::Segment line{point(30, 30), point(30, 34.9)};
  const auto box =
      plane_attitudes(map, kCarrier, {line, Metres{0.74}, arc(0, 0)}, Slope::from_ratio(0.1));
  REQUIRE(box.has_value());
  const double between =
      0.05 * 3.0 * std::hypot(4.9 / 66, 1.48 / 20) * std::hypot(1 / 2.0, 1 / 1.2);
  CHECK(near(box->grade_low.ratio(), 0.2 - between, 1e-9));
  CHECK(near(box->grade_high.ratio(), 0.2 + between, 1e-9));
  CHECK(near(box->cross_low.ratio(), -0.1 - between, 1e-9));
  CHECK(near(box->cross_high.ratio(), -0.1 + between, 1e-9));
}

// 4.2 degrees are looked at in two halves, so that no heading is further than 1.05 from a fit.
TEST_CASE("turning widens the bounds of planes by half the spread's share of each axis, by hand") {
  const terrain::HeightMap map = map_of(testing::plane(0.1, 0.2), 0.5, {0, 0, 60, 60});
  const geo::Segment here{point(30, 30), point(30, 30)};
  const auto box =
      plane_attitudes(map, kCarrier, {here, Metres{0}, arc(0, 2.1)}, Slope::from_ratio(0.1));
  REQUIRE(box.has_value());
  const double radian = 3.14159265358979323846 / 180;
  const double between = 0.05 * 1.05 * radian * std::hypot(2 + 1.5 * 0.6, 2 + 1.5 / 0.6);
  const double sine = std::sin(2.1 * radian);
  const double cosine = std::cos(2.1 * radian);
  CHECK(near(box->grade_low.ratio(), 0.2 * cosine - 0.1 * sine - between, 1e-9));
  CHECK(near(box->grade_high.ratio(), 0.2 * cosine + 0.1 * sine + between, 1e-9));
  CHECK(near(box->cross_low.ratio(), -0.2 * sine - 0.1 * cosine - between, 1e-9));
  CHECK(near(box->cross_high.ratio(), 0.2 * sine - 0.1 * cosine + between, 1e-9));
}

// z = N^2 / 100 about N = 30: at 30.5 the chord's grade and the fit's are its derivative, 0.01.
TEST_CASE("stands beside each other are square to the line: across a trough all lie alike") {
  const terrain::HeightMap map =
      map_of([](double, double north) { return 1000.0 + (north - 30) * (north - 30) / 100; }, 0.5,
             {0, 0, 60, 60});
  const geo::Segment line{point(30, 30), point(30, 31)};
  const Footprint wide{Metres{8}, Metres{8}};
  const auto box = plane_attitudes(map, wide, {line, Metres{4}, arc(0, 0)}, Slope{});
  REQUIRE(box.has_value());
  CHECK(near(box->grade_low.ratio(), 0.01, 1e-9));
  CHECK(near(box->grade_high.ratio(), 0.01, 1e-9));
  CHECK(near(box->steepest_cross().ratio(), 0.0, 1e-9));
}

// z = E^2 / 100 about E = 30: stands lie up to 3.5 m to both sides, where it is steep by 0.07.
TEST_CASE("stands lie as far to the left of the line as to its right") {
  const terrain::HeightMap map =
      map_of([](double east, double) { return 1000.0 + (east - 30) * (east - 30) / 100; }, 0.5,
             {0, 0, 60, 60});
  const geo::Segment line{point(30, 30), point(30, 31)};
  const Footprint wide{Metres{8}, Metres{8}};
  const auto box = plane_attitudes(map, wide, {line, Metres{4}, arc(0, 0)}, Slope{});
  REQUIRE(box.has_value());
  CHECK(near(box->cross_low.ratio(), -0.07, 1e-9));
  CHECK(near(box->cross_high.ratio(), 0.07, 1e-9));
}

TEST_CASE("a footprint on one place and of one heading is bounded by its own fit and its chord") {
  const terrain::HeightMap map = map_of(testing::rough(7, 0.05, 0.1), 0.5, {0, 0, 60, 60});
  const geo::Segment here{point(30, 30), point(30, 30)};
  const auto box = plane_attitudes(map, kCarrier, {here, Metres{0}, arc(0, 0)}, kSpread);
  const auto plane = fitted_gradient(map, point(30, 30), Bearing{}, kCarrier);
  REQUIRE(box.has_value());
  const Attitude attitude = attitude_of(*plane, Bearing{});
  const double chord = (*map.at(point(30, 31)) - *map.at(point(30, 29))).value() / 2.0;
  CHECK(near(box->grade_low.ratio(), std::min(attitude.grade.ratio(), chord), 1e-12));
  CHECK(near(box->grade_high.ratio(), std::max(attitude.grade.ratio(), chord), 1e-12));
  CHECK(near(box->cross_low.ratio(), attitude.cross.ratio(), 1e-12));
  CHECK(near(box->cross_high.ratio(), attitude.cross.ratio(), 1e-12));
}

TEST_CASE("wide arcs, arcs that are no number, and holes leave planes unbounded") {
  const terrain::HeightMap map = map_of(testing::plane(0.1, 0.2), 0.5, {0, 0, 60, 60});
  const geo::Segment line{point(30, 30), point(30, 35)};
  const auto of = [&](const terrain::HeightMap& heights, double each_way_deg) {
    return plane_attitudes(heights, kCarrier, {line, Metres{1}, arc(0, each_way_deg)}, kSpread);
  };
  CHECK(of(map, 29.9).has_value());
  CHECK_FALSE(of(map, 30.1).has_value());
  CHECK_FALSE(of(map, NAN).has_value());
  // Ahead of the footprint's end, behind its other end, and under its side alone.
  for (const geo::MapPoint hole : {point(30, 33), point(30, 29), point(29, 30)}) {
    const terrain::HeightMap holed =
        map_of(testing::with_void(testing::plane(0.1, 0.2),
                                  [&](double east, double north) {
                                    return east == hole.east.value() && north == hole.north.value();
                                  }),
               0.5, {0, 0, 60, 60});
    CHECK_FALSE(
        plane_attitudes(holed, kCarrier, {line, Metres{0}, arc(0, 0)}, kSpread).has_value());
  }
}

TEST_CASE("on rough fine ground planes are bounded well within the surface's own extremes") {
  const terrain::HeightMap fine = map_of(testing::rough(3, 0.03, 0.05), 0.5, {0, 0, 60, 60});
  const geo::Polyline line{{point(30, 10), point(33, 50)}};
  for (const terrain::GroundPiece& piece :
       ground_under(fine, line, {kCarrier, Metres{0.5}, Metres{5}})) {
    REQUIRE(piece.attitude.has_value());
    // The surface alone reaches far beyond: bumps of 6 cm on half a metre are 12 %.
    CHECK(piece.attitude->grade_high.ratio() - piece.attitude->grade_low.ratio() < 0.16);
  }
}

}  // namespace rimehaul
