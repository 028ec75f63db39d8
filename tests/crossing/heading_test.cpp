#include "crossing/heading.h"

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

#include "near.h"

using namespace rimehaul::crossing;
using rimehaul::testing::near;
using rimehaul::units::Bearing;
using rimehaul::units::Metres;

namespace {

Heading heading(int index) {
  return turned(Heading{}, index);
}

double degrees_of_tangent(double tangent) {
  return std::atan(tangent) * 180.0 / std::numbers::pi;
}

}  // namespace

TEST_CASE("moves lie along 0, atan 1/2, 45 and atan 2 degrees, and so on round the circle") {
  for (int quarter = 0; quarter < 4; ++quarter) {
    CAPTURE(quarter);
    const double from = 90.0 * quarter;
    CHECK(near(bearing_of(heading(4 * quarter)).degrees(), from, 1e-12));
    CHECK(near(bearing_of(heading(4 * quarter + 1)).degrees(), from + degrees_of_tangent(0.5),
               1e-12));
    CHECK(near(bearing_of(heading(4 * quarter + 2)).degrees(), from + 45.0, 1e-12));
    CHECK(near(bearing_of(heading(4 * quarter + 3)).degrees(), from + degrees_of_tangent(2.0),
               1e-12));
  }
}

TEST_CASE("no move lies more than 4.07 degrees beside what its heading is called") {
  for (int index = 0; index < 16; ++index) {
    CAPTURE(index);
    const Bearing named = Bearing::from_degrees(22.5 * index);
    CHECK(std::abs(named.turn_to(bearing_of(heading(index)))) < 4.07);
  }
}

TEST_CASE("a move is one pitch, the square root of two or that of five long") {
  const Metres pitch{3.0};
  CHECK(length_of(heading(0), pitch) == Metres{3.0});
  CHECK(near(length_of(heading(2), pitch), Metres{3.0 * std::sqrt(2.0)}, Metres{1e-12}));
  for (int odd = 1; odd < 16; odd += 2) {
    CHECK(near(length_of(heading(odd), pitch), Metres{3.0 * std::sqrt(5.0)}, Metres{1e-12}));
  }
}

TEST_CASE("turning by a quarter turns the step by a quarter, by a half it leads back") {
  for (int index = 0; index < 16; ++index) {
    CAPTURE(index);
    const CellStep step = step_of(heading(index));
    CHECK(step_of(turned(heading(index), 4)) == CellStep{-step.rows, step.columns});
    CHECK(step_of(turned(heading(index), -8)) == CellStep{-step.columns, -step.rows});
  }
}

TEST_CASE("the sectors of the headings fill the circle and each holds its own moves") {
  double whole = 0.0;
  for (int index = 0; index < 16; ++index) {
    CAPTURE(index);
    const Sector sector = sector_of(heading(index));
    CHECK(near(sector.to.degrees(), sector_of(heading(index + 1)).from.degrees(), 1e-9));
    CHECK(sector.from.turn_to(bearing_of(heading(index))) > 9.0);
    CHECK(bearing_of(heading(index)).turn_to(sector.to) > 9.0);
    whole += sector.from.turn_to(sector.to);
  }
  CHECK(near(whole, 360.0, 1e-9));
}

TEST_CASE("a bearing belongs to the heading in whose sector it lies") {
  for (int index = 0; index < 16; ++index) {
    CAPTURE(index);
    const Sector sector = sector_of(heading(index));
    CHECK(heading_of(bearing_of(heading(index))) == heading(index));
    CHECK(heading_of(Bearing::from_degrees(sector.from.degrees() + 0.01)) == heading(index));
    CHECK(heading_of(Bearing::from_degrees(sector.to.degrees() - 0.01)) == heading(index));
  }
  CHECK(heading_of(Bearing::from_degrees(359.999)) == heading(0));
}
