// What must not matter: the datum, the way the map lies, and which end one starts from.
#include <doctest/doctest.h>

#include <vector>

#include "ground/surfaces.h"
#include "near.h"
#include "terrain/gradient.h"
#include "terrain/stretch.h"

namespace rimehaul {

namespace {

using geo::Polyline;
using terrain::AttitudeBox;
using terrain::ground_under;
using terrain::HeightMap;
using terrain::Walk;
using testing::map_of;
using testing::near;
using testing::point;
using testing::rough;
using units::Metres;

const Walk kUsual{
    .footprint = {Metres{2.5}, Metres{1.2}}, .line_error = Metres{0}, .step = Metres{5}};

}  // namespace

TEST_CASE("raising all heights by the same amount changes no slope") {
  const Polyline line{{point(-60, -33), point(10, 12), point(55, -8)}};
  const auto low = ground_under(map_of(rough(3, 0.5, 0.2, 0.0), 5.0), line, kUsual);
  const auto high = ground_under(map_of(rough(3, 0.5, 0.2, 2048.0), 5.0), line, kUsual);
  REQUIRE(low.size() == high.size());
  for (std::size_t i = 0; i < low.size(); ++i) {
    CHECK(near(low[i].attitude->grade_low.ratio(), high[i].attitude->grade_low.ratio(), 1e-11));
    CHECK(near(low[i].attitude->grade_high.ratio(), high[i].attitude->grade_high.ratio(), 1e-11));
    CHECK(near(low[i].attitude->cross_low.ratio(), high[i].attitude->cross_low.ratio(), 1e-11));
    CHECK(near(low[i].attitude->cross_high.ratio(), high[i].attitude->cross_high.ratio(), 1e-11));
    CHECK(near(*high[i].height - *low[i].height, Metres{2048}, Metres{1e-9}));
  }
}

TEST_CASE("ground and line turned together by 90 degrees: aspects turn, attitudes stay") {
  const auto ground = rough(5, 0.5, 0.2);
  // Turned clockwise: what lay north lies east.
  const auto turned_ground = [ground](double e, double n) { return ground(-n, e); };
  const auto turned = [](geo::MapPoint p) { return point(p.north.value(), -p.east.value()); };
  const HeightMap map = map_of(ground, 5.0);
  const HeightMap turned_map = map_of(turned_ground, 5.0);
  const std::vector<geo::MapPoint> points{point(-60, -33), point(10, 12), point(55, -8)};
  const auto pieces = ground_under(map, Polyline{points}, kUsual);
  const auto turned_pieces = ground_under(
      turned_map, Polyline{{turned(points[0]), turned(points[1]), turned(points[2])}}, kUsual);
  REQUIRE(pieces.size() == turned_pieces.size());
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    CHECK(near(pieces[i].attitude->grade_low.ratio(), turned_pieces[i].attitude->grade_low.ratio(),
               1e-6));
    CHECK(near(pieces[i].attitude->cross_high.ratio(),
               turned_pieces[i].attitude->cross_high.ratio(), 1e-6));
    const auto aspect = terrain::aspect_of(*terrain::surface_gradient(map, pieces[i].middle));
    const auto turned_aspect =
        terrain::aspect_of(*terrain::surface_gradient(turned_map, turned(pieces[i].middle)));
    CHECK(near(aspect->turn_to(*turned_aspect), 90.0, 1e-6));
  }
}

TEST_CASE("driven the other way, climbs become descents of the same size") {
  const HeightMap map = map_of(rough(9, 0.5, 0.2), 5.0);
  const Polyline line{{point(-60, -33), point(10, 12), point(55, -8)}};
  const auto there = ground_under(map, line, kUsual);
  const auto back = ground_under(map, line.reversed(), kUsual);
  REQUIRE(there.size() == back.size());
  for (std::size_t i = 0; i < there.size(); ++i) {
    const AttitudeBox& a = *there[i].attitude;
    const AttitudeBox& b = *back[there.size() - 1 - i].attitude;
    CHECK(near(a.grade_high.ratio(), -b.grade_low.ratio(), 1e-6));
    CHECK(near(a.cross_high.ratio(), -b.cross_low.ratio(), 1e-6));
  }
}

}  // namespace rimehaul
