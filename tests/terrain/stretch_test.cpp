// Ground under a line: the bounds hold everywhere, are no wider than they must be, and end at
// holes.
#include "terrain/stretch.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "base/require.h"
#include "ground/surfaces.h"
#include "near.h"
#include "terrain/plane.h"

namespace rimehaul {

namespace {

using geo::Polyline;
using terrain::AttitudeBox;
using terrain::Footprint;
using terrain::ground_under;
using terrain::GroundPiece;
using terrain::Walk;
using testing::hillside;
using testing::map_of;
using testing::near;
using testing::near_degrees;
using testing::point;
using testing::ridge;
using testing::rough;
using testing::with_void;
using units::Metres;
using units::Slope;

Walk walk(double length, double gauge, double line_error, double step) {
  return {.footprint = {Metres{length}, Metres{gauge}},
          .line_error = Metres{line_error},
          .step = Metres{step}};
}

const Walk kUsual = walk(2.5, 1.2, 0.0, 5.0);

AttitudeBox all_of(const std::vector<GroundPiece>& pieces) {
  REQUIRE(pieces.front().attitude.has_value());
  AttitudeBox box = *pieces.front().attitude;
  for (const GroundPiece& piece : pieces) {
    REQUIRE(piece.attitude.has_value());
    box = box.with(*piece.attitude);
  }
  return box;
}

void check_near(const AttitudeBox& box, const terrain::Attitude& wanted, double within) {
  CHECK(near(box.grade_low.ratio(), wanted.grade.ratio(), within));
  CHECK(near(box.grade_high.ratio(), wanted.grade.ratio(), within));
  CHECK(near(box.cross_low.ratio(), wanted.cross.ratio(), within));
  CHECK(near(box.cross_high.ratio(), wanted.cross.ratio(), within));
}

}  // namespace

TEST_CASE("a line is covered by equal pieces without gaps, none longer than the step") {
  const auto map = map_of(testing::plane(0.1, 0.1), 5.0);
  const Polyline line{{point(-100, 0), point(3.3, 20), point(77, -40)}};
  const auto pieces = ground_under(map, line, kUsual);
  CHECK(pieces.front().span.from == Metres{0});
  CHECK(pieces.back().span.to == line.length());
  CHECK(pieces.size() == static_cast<std::size_t>(std::ceil(line.length().value() / 5.0)));
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    CHECK(pieces[i].span.to - pieces[i].span.from <= Metres{5.0 + 1e-9});
    CHECK((i == 0 || pieces[i].span.from == pieces[i - 1].span.to));
  }
}

// tan 25 deg cos 40 deg and tan 25 deg sin 40 deg.
TEST_CASE("on a plane every piece has the closed-form grade and cross-slope, exactly") {
  const auto map = map_of(hillside(25, 180), 5.0);
  const Polyline line{
      {point(0, 0), geo::moved(point(0, 0), units::Bearing::from_degrees(40), Metres{200})}};
  for (const GroundPiece& piece : ground_under(map, line, kUsual)) {
    REQUIRE(piece.attitude.has_value());
    CHECK(near_degrees(piece.attitude->steepest_grade(), 19.65736, 5e-6));
    CHECK(near_degrees(piece.attitude->steepest_cross(), 16.68541, 5e-6));
    CHECK(piece.attitude->grade_high > Slope{});
    CHECK(piece.attitude->cross_high > Slope{});
    REQUIRE(piece.nominal.has_value());
    check_near(*piece.attitude, *piece.nominal, 2e-9);
    REQUIRE(piece.height.has_value());
    CHECK(near(piece.height->above_datum_m(),
               1000 + std::tan(25 * 3.14159265358979323846 / 180) * piece.middle.north.value(),
               1e-9));
  }
}

TEST_CASE("over a sharp ridge the bounds hold both flanks where the rig may straddle it") {
  const auto map = map_of(ridge(0.4), 5.0);
  const Polyline across{{point(-20, 2.5), point(20, 2.5)}};
  const auto pieces = ground_under(map, across, walk(3.0, 1.0, 0.0, 4.0));
  for (const GroundPiece& piece : pieces) {
    REQUIRE(piece.attitude.has_value());
    const double from = across.at(piece.span.from).east.value() - 1.5;
    const double to = across.at(piece.span.to).east.value() + 1.5;
    CHECK(near(piece.attitude->grade_high.ratio(), from < 0 ? 0.4 : -0.4, 2e-9));
    CHECK(near(piece.attitude->grade_low.ratio(), to > 0 ? -0.4 : 0.4, 2e-9));
    CHECK(near(piece.attitude->steepest_cross().ratio(), 0.0, 2e-9));
  }
}

TEST_CASE("the error of the line brings in the slope beside it, exactly from where it reaches") {
  const auto map = map_of(ridge(0.4), 5.0);
  // 3 m west of the crest, heading north: half the gauge is 0.5 m, so an error of 2.5 m reaches it.
  const Polyline line{{point(-3, -20), point(-3, 20)}};
  const AttitudeBox short_of = all_of(ground_under(map, line, walk(2, 1, 2.49, 5)));
  CHECK(near(short_of.cross_high.ratio(), -0.4, 2e-9));
  const AttitudeBox beyond = all_of(ground_under(map, line, walk(2, 1, 2.51, 5)));
  CHECK(near(beyond.cross_high.ratio(), 0.4, 2e-9));
  CHECK(near(beyond.cross_low.ratio(), -0.4, 2e-9));
}

TEST_CASE("in a bend every heading between the two legs counts, and only there") {
  const auto map = map_of(testing::plane(0.0, 0.3), 5.0);
  // North-east, then south-east: due east in between has no grade but cross-slope 0.3.
  const Polyline bend{{point(-40, -40), point(0, 0), point(40, -40)}};
  const auto pieces = ground_under(map, bend, walk(2, 1, 0, 1.0));
  const double leg = 0.3 * std::sqrt(0.5);
  for (const GroundPiece& piece : pieces) {
    REQUIRE(piece.attitude.has_value());
    const double corner = geo::distance(point(-40, -40), point(0, 0)).value();
    const bool at_bend = piece.span.from.value() - 1.0 < corner + 1e-9 &&
                         piece.span.to.value() + 1.0 > corner - 1e-9;
    CHECK(near(piece.attitude->cross_high.ratio(), at_bend ? 0.3 : leg, 2e-9));
    CHECK(near(piece.attitude->grade_high.ratio(),
               at_bend || piece.span.from.value() < corner ? leg : -leg, 2e-9));
  }
}

// The line turns by 50 degrees at (30, 30); its two parts seen square to the line end 2.5 m to
// either side of the tip of the wedge between them, 6 m to the north. Only that tip lies on the
// hump, which climbs to the north between slopes of 0.72 to either side.
TEST_CASE("a hump that only the wedge outside a corner reaches is within the bounds of planes") {
  const auto hump = [](double east, double north) {
    const double beside = std::clamp(2 - std::abs(east - 30), 0.0, 1.0);
    return 1000 + 0.6 * std::clamp(north - 35.4, 0.0, 1.2) * beside;
  };
  const terrain::HeightMap map = map_of(hump, 0.25, {0, 0, 60, 60});
  const geo::MapPoint corner = point(30, 30);
  const auto bearing = [](double degrees) { return units::Bearing::from_degrees(degrees); };
  const Polyline line{{geo::moved(corner, bearing(65), Metres{-10}), corner,
                       geo::moved(corner, bearing(115), Metres{10})}};
  const Footprint small{Metres{1}, Metres{1}};
  const auto pieces = ground_under(map, line, {small, Metres{6}, Metres{4}});
  REQUIRE(pieces.size() == 5);
  REQUIRE(pieces[2].attitude.has_value());
  for (const double heading_deg : {65.0, 90.0, 115.0}) {
    const auto plane = fitted_gradient(map, point(30, 36), bearing(heading_deg), small);
    REQUIRE(plane.has_value());
    const terrain::Attitude tip = attitude_of(*plane, bearing(heading_deg));
    CHECK(tip.cross.ratio() > 0.5);
    CHECK(pieces[2].attitude->holds(tip));
  }
}

TEST_CASE(
    "in a bend the ground that the rig swings over counts too, on a straight line it does not") {
  // Half way round, the front of a 4 m footprint lies near (1.4, 1.4), off both legs by 1 m.
  const auto map = map_of(
      with_void(testing::plane(0.1, 0.1), [](double e, double n) { return e == 1 && n == 1; }), 0.5,
      {-30, -30, 30, 30});
  const auto known = [&](std::vector<geo::MapPoint> points) {
    const auto pieces = ground_under(map, Polyline{std::move(points)}, walk(4, 0.8, 0, 100));
    return pieces.front().attitude.has_value();
  };
  CHECK(known({point(0, -20), point(0, 20)}));
  CHECK(known({point(-20, 0), point(20, 0)}));
  CHECK_FALSE(known({point(0, -20), point(0, 0), point(20, 0)}));
}

TEST_CASE("a line that doubles back between three close bends may head any way") {
  const auto map = map_of(testing::plane(0.0, 0.3), 5.0);
  const Polyline hook{
      {point(-20, 0), point(0, 0), point(0.3, 0.4), point(0, 0.8), point(-0.5, 0.4)}};
  const AttitudeBox box = all_of(ground_under(map, hook, walk(4, 1, 0, 50)));
  CHECK(near(box.cross_low.ratio(), -0.3, 2e-9));
  CHECK(near(box.cross_high.ratio(), 0.3, 2e-9));
  CHECK(near(box.grade_low.ratio(), -0.3, 2e-9));
  CHECK(near(box.grade_high.ratio(), 0.3, 2e-9));
}

TEST_CASE("where a height is missing under the footprint the attitude is unknown, not flat") {
  const auto map = map_of(
      with_void(testing::plane(0.1, 0.1), [](double e, double n) { return e == 50 && n == 0; }),
      5.0);
  const Polyline line{{point(0, 2.5), point(100, 2.5)}};
  int unknown = 0;
  for (const GroundPiece& piece : ground_under(map, line, walk(2, 1, 0, 1.0))) {
    // The hole spoils the patches from E 45 to 55; the footprint reaches 1 m further. Touching
    // counts, within a hundredth of a millimetre.
    const bool spoilt =
        piece.span.to.value() + 1.0 >= 45 - 1e-5 && piece.span.from.value() - 1.0 <= 55 + 1e-5;
    CHECK(piece.attitude.has_value() == !spoilt);
    unknown += spoilt ? 1 : 0;
  }
  CHECK(unknown >= 12);
  // A hole just out of reach of the gauge and the line's error does not matter, just within does.
  const auto knows = [&](double north, double error) {
    const Polyline beside{{point(0, north), point(100, north)}};
    const auto pieces = ground_under(map, beside, walk(2, 1, error, 200));
    return pieces.front().attitude.has_value();
  };
  CHECK(knows(5.51, 0.0));
  CHECK_FALSE(knows(5.49, 0.0));
  CHECK(knows(6.51, 1.0));
  CHECK_FALSE(knows(6.49, 1.0));
}

TEST_CASE("off the raster the ground is unknown") {
  const auto map = map_of(testing::plane(0.1, 0.1), 5.0, {0, 0, 100, 100});
  const Polyline line{{point(50, 50), point(150, 50)}};
  const auto pieces = ground_under(map, line, walk(2, 1, 0, 1.0));
  CHECK(pieces.front().attitude.has_value());
  // Piece 47 reaches to E 99, piece 48 touches the last cell centres at E 100.
  CHECK(pieces[47].attitude.has_value());
  CHECK_FALSE(pieces[48].attitude.has_value());
  CHECK_FALSE(pieces.back().attitude.has_value());
  CHECK_FALSE(pieces.back().height.has_value());
  CHECK_FALSE(pieces.back().nominal.has_value());
}

TEST_CASE("along a row of cells the bounds are the very extremes of the ground, not wider") {
  const auto map = map_of(rough(7, 0.4, 0.2), 5.0);
  const Polyline line{{point(-61.3, 3.2), point(48.9, 3.2)}};
  for (const GroundPiece& piece : ground_under(map, line, walk(2.4, 1.6, 0.5, 6.0))) {
    REQUIRE(piece.attitude.has_value());
    Slope low = Slope::from_ratio(INFINITY);
    Slope high = Slope::from_ratio(-INFINITY);
    const double from = line.at(piece.span.from).east.value() - 1.2;
    const double to = line.at(piece.span.to).east.value() + 1.2;
    for (int i = 0; i <= 400; ++i) {
      for (int j = 0; j <= 40; ++j) {
        const auto place = point(from + (to - from) * i / 400, 3.2 - 1.3 + 2.6 * j / 40);
        const auto gradient = terrain::surface_gradient(map, place);
        REQUIRE(gradient.has_value());
        low = std::min(low, gradient->east);
        high = std::max(high, gradient->east);
      }
    }
    // The grade heading east is the slope towards east; it depends on N alone within a patch, so
    // samples that reach both edges and both sides of N = 5 and 0 come within one sample's change.
    CHECK(piece.attitude->grade_low <= low);
    CHECK(piece.attitude->grade_high >= high);
    CHECK(near(piece.attitude->grade_low.ratio(), low.ratio(), 0.01));
    CHECK(near(piece.attitude->grade_high.ratio(), high.ratio(), 0.01));
  }
}

TEST_CASE("the steepest ground around a piece is that of the plane, or of what lies within reach") {
  const auto map = map_of(ridge(0.4), 5.0);
  const Polyline line{{point(-60, 1), point(-20, 1)}};
  const auto steepest = steepest_around(map, line, {{Metres{0}, Metres{40}}, Metres{3}});
  REQUIRE(steepest.has_value());
  CHECK(near(steepest->ratio(), 0.4, 2e-9));
  // A flat with a step of 5 m over one cell, from E 10 on.
  const auto step = map_of([](double e, double) { return e < 12 ? 1000.0 : 1005.0; }, 5.0);
  const Polyline beside{{point(0, -20), point(0, 20)}};
  CHECK(near(steepest_around(step, beside, {{Metres{0}, Metres{40}}, Metres{9.9}})->ratio(), 0.0,
             2e-9));
  CHECK(near(steepest_around(step, beside, {{Metres{0}, Metres{40}}, Metres{10.1}})->ratio(), 1.0,
             2e-9));
  const auto holed = map_of(
      with_void(testing::plane(0.1, 0.1), [](double e, double n) { return e == 10 && n == 0; }),
      5.0);
  CHECK(steepest_around(holed, beside, {{Metres{0}, Metres{40}}, Metres{4.9}}).has_value());
  CHECK_FALSE(steepest_around(holed, beside, {{Metres{0}, Metres{40}}, Metres{5.1}}).has_value());
}

// Astride a ridge a plane has no cross-slope, by symmetry; the surface has that of both flanks.
TEST_CASE(
    "fine ground whose slopes differ by more than 1 % is bounded by planes, smoother is not") {
  const Polyline along_the_crest{{point(0, -20), point(0, 20)}};
  const auto cross_on_flanks_of = [&](double tangent) {
    const auto map = map_of(ridge(tangent), 0.5, {-30, -30, 30, 30});
    const auto pieces = ground_under(map, along_the_crest, walk(2.0, 1.2, 0.0, 0.1));
    return pieces[pieces.size() / 2].attitude->steepest_cross().ratio();
  };
  CHECK(near(cross_on_flanks_of(0.0049), 0.0049, 1e-8));
  // 5 cm from a fit at most: half the spread by 3 x 0.05 x hypot(1 / 2, 1 / 1.2).
  CHECK(near(cross_on_flanks_of(0.0051), 0.0051 * 0.15 * std::hypot(1 / 2.0, 1 / 1.2), 1e-8));
}

TEST_CASE("a footprint without size or a walk without a step is our fault") {
  const auto map = map_of(testing::plane(0.1, 0.1), 5.0);
  const Polyline line{{point(0, 0), point(10, 0)}};
  CHECK_THROWS_AS((void)ground_under(map, line, walk(0, 1, 0, 5)), base::OurFault);
  CHECK_THROWS_AS((void)ground_under(map, line, walk(2, NAN, 0, 5)), base::OurFault);
  CHECK_THROWS_AS((void)ground_under(map, line, walk(2, 1, -1, 5)), base::OurFault);
  for (const double step : {0.0, -1.0, static_cast<double>(NAN), static_cast<double>(INFINITY)}) {
    CAPTURE(step);
    CHECK_THROWS_AS((void)ground_under(map, line, walk(2, 1, 0, step)), base::OurFault);
  }
}

}  // namespace rimehaul
