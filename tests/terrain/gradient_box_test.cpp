// Boxes of gradients: what ground under a strip may be, and how it tilts a rig.
#include "terrain/gradient_box.h"

#include <doctest/doctest.h>

#include <cmath>

#include "ground/surfaces.h"
#include "near.h"

namespace rimehaul {

namespace {

using terrain::Gradient;
using terrain::GradientBox;
using terrain::HeadingArc;
using testing::map_of;
using testing::near;
using testing::point;
using units::Bearing;
using units::Metres;
using units::Slope;

Gradient gradient(double east, double north) {
  return {Slope::from_ratio(east), Slope::from_ratio(north)};
}

}  // namespace

TEST_CASE("a box of gradients reaches from the lowest to the highest, corner to corner") {
  const Gradient low = gradient(-0.1, 0.2);
  const GradientBox box = GradientBox{low, low}.with(gradient(0.2, 0.1));
  CHECK(near(box.low.north.ratio(), 0.1, 0));
  CHECK(near(box.high.east.ratio(), 0.2, 0));
  CHECK(near(box.diameter().ratio(), std::hypot(0.3, 0.1), 1e-12));
}

TEST_CASE("the gradients under a strip are those of its plane, and of both where two planes meet") {
  const terrain::HeightMap plane = map_of(testing::plane(0.1, -0.2), 1, {-50, -50, 50, 50});
  const auto flat = gradients_under(plane, {point(0, 0), point(0, 0), Metres{5}, Metres{5}});
  REQUIRE(flat.has_value());
  CHECK(near(flat->low.east.ratio(), 0.1, 1e-9));
  CHECK(near(flat->high.east.ratio(), 0.1, 1e-9));
  CHECK(near(flat->low.north.ratio(), -0.2, 1e-9));
  const terrain::HeightMap ridge = map_of(testing::ridge(0.3), 1, {-50, -50, 50, 50});
  const auto reached = gradients_under(ridge, {point(6, 0), point(6, 0), Metres{5}, Metres{7}});
  REQUIRE(reached.has_value());
  CHECK(near(reached->low.east.ratio(), -0.3, 1e-9));
  CHECK(near(reached->high.east.ratio(), 0.3, 1e-9));
  const auto beside = gradients_under(ridge, {point(8, 0), point(8, 0), Metres{5}, Metres{5}});
  REQUIRE(beside.has_value());
  CHECK(near(beside->high.east.ratio(), -0.3, 1e-9));
  const terrain::HeightMap holed =
      map_of(testing::with_void(testing::plane(0.1, 0.1),
                                [](double east, double north) { return east == 2 && north == 2; }),
             1, {-50, -50, 50, 50});
  CHECK_FALSE(gradients_under(holed, {point(0, 0), point(0, 0), Metres{3}, Metres{3}}).has_value());
}

// Heading east, the grade is the gradient's east and the cross-slope its north.
TEST_CASE("the attitudes on a box of gradients are those of all its corners and all headings") {
  const GradientBox box{gradient(-0.1, 0.2), gradient(0.3, 0.25)};
  const terrain::AttitudeBox east = box.attitudes(HeadingArc{Bearing::from_degrees(90)});
  CHECK(near(east.grade_low.ratio(), -0.1, 1e-12));
  CHECK(near(east.grade_high.ratio(), 0.3, 1e-12));
  CHECK(near(east.cross_low.ratio(), 0.2, 1e-12));
  CHECK(near(east.cross_high.ratio(), 0.25, 1e-12));
  for (double off = -20; off <= 20; off += 1) {
    const Bearing heading = Bearing::from_degrees(30 + off);
    const terrain::AttitudeBox all =
        box.attitudes(HeadingArc{Bearing::from_degrees(30)}.opened_by(20));
    for (const Gradient here :
         {box.low, box.high, gradient(-0.1, 0.25), gradient(0.3, 0.2), gradient(0.1, 0.22)}) {
      CHECK(all.holds(attitude_of(here, heading)));
    }
  }
}

}  // namespace rimehaul
