// What a strip of ground can be like: closed forms, and nothing where it leaves what is known.
#include "terrain/patch.h"

#include <doctest/doctest.h>

#include <cmath>

#include "ground/surfaces.h"
#include "near.h"

namespace rimehaul {

namespace {

using terrain::rises_under;
using terrain::Strip;
using testing::map_of;
using testing::near;
using testing::point;
using units::Metres;

/// A strip of 20 m to the east from a place, so far to each side.
Strip eastward(double east, double north, double each_side) {
  return {point(east, north), point(east + 20, north), Metres{1}, Metres{each_side}};
}

}  // namespace

TEST_CASE("on a plane every part of a strip rises as the plane does, by cell") {
  const auto map = map_of(testing::plane(0.3, -0.4), 5.0, {0, 0, 100, 100});
  const auto rises = rises_under(map, eastward(40, 50, 4));
  REQUIRE(rises.has_value());
  // E 39 to 61 lies over six columns of patches (35 to 65), N 46 to 54 over two rows.
  CHECK(rises->size() == 12);
  for (const terrain::PatchRises& rise : *rises) {
    CHECK(near(rise.per_column_low, Metres{1.5}, Metres{1e-9}));
    CHECK(near(rise.per_column_high, Metres{1.5}, Metres{1e-9}));
    CHECK(near(rise.per_row_low, Metres{2.0}, Metres{1e-9}));
    CHECK(near(rise.per_row_high, Metres{2.0}, Metres{1e-9}));
  }
}

TEST_CASE("a strip that leaves the heights on any side is unknown, one that just reaches is not") {
  const auto map = map_of(testing::plane(0.3, -0.4), 5.0, {0, 0, 100, 100});
  CHECK(rises_under(map, eastward(40, 95.99, 4)).has_value());
  CHECK_FALSE(rises_under(map, eastward(40, 96.01, 4)).has_value());
  CHECK(rises_under(map, eastward(40, 4.01, 4)).has_value());
  CHECK_FALSE(rises_under(map, eastward(40, 3.99, 4)).has_value());
  CHECK(rises_under(map, eastward(1.01, 50, 4)).has_value());
  CHECK_FALSE(rises_under(map, eastward(0.99, 50, 4)).has_value());
  CHECK(rises_under(map, eastward(78.99, 50, 4)).has_value());
  CHECK_FALSE(rises_under(map, eastward(79.01, 50, 4)).has_value());
}

TEST_CASE("a strip as wide as nobody knows, or without end, is unknown") {
  const auto map = map_of(testing::plane(0.3, -0.4), 5.0, {0, 0, 100, 100});
  CHECK_FALSE(rises_under(map, eastward(40, 50, NAN)).has_value());
  CHECK_FALSE(rises_under(map, eastward(40, 50, INFINITY)).has_value());
  Strip endless = eastward(40, 50, 4);
  endless.beyond = Metres{INFINITY};
  CHECK_FALSE(rises_under(map, endless).has_value());
  CHECK_FALSE(patch_under(map, point(50, NAN)).has_value());
}

}  // namespace rimehaul
