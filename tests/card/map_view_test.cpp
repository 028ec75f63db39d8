// The map of a sheet: round scales, what lies on the paper, and a hillshade that reaches its edges.
#include "card/map_view.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "near.h"
#include "passage/demo_scene.h"

namespace rimehaul::card {
namespace {

using testing::near;
using testing::place;
using units::Metres;

const MapPaper kPaper{Metres{0.186}, Metres{0.096}};

MapView map_over(double east_m, double north_m, MapPaper paper = kPaper) {
  const passage::Scene scene = testing::scene_of({testing::rolling()}, testing::two_ways());
  return map_of({{.points = {place(0, 0), place(east_m, north_m)},
                  .name = "A",
                  .verdict = passage::Verdict::open,
                  .number = 1}},
                scene, paper);
}

TEST_CASE("the map takes the largest round scale at which the way and a margin of 8 % fit") {
  // 84 % of 186 mm is 156.24 mm: 781.2 m at 1 : 5 000. Of 96 mm: 80.64 mm, 403.2 m.
  CHECK(map_over(781, 0).scale == 5000);
  CHECK(map_over(782, 0).scale == 7500);
  CHECK(map_over(0, 403).scale == 5000);
  CHECK(map_over(0, 404).scale == 7500);
}

TEST_CASE("a way of any length has a scale, beyond the list in steps of 50 000") {
  CHECK(map_over(1, 0).scale == 500);
  CHECK(map_over(12'000, 0).scale == 100'000);
}

TEST_CASE("the paper lies evenly around the way, and its sides are the paper's at that scale") {
  const MapView map = map_over(700, 300);
  const Metres width = map.frame.pixel * static_cast<double>(map.frame.columns);
  const Metres height = map.frame.pixel * static_cast<double>(map.frame.rows);
  CHECK(near(width.value(), 0.186 * map.scale, map.frame.pixel.value()));
  CHECK(near(height.value(), 0.096 * map.scale, map.frame.pixel.value()));
  const geo::MapPoint middle = place(350, 150);
  CHECK(near((map.frame.upper_left.east - middle.east).value(), -0.093 * map.scale, 1e-6));
  CHECK(near((map.frame.upper_left.north - middle.north).value(), 0.048 * map.scale, 1e-6));
}

TEST_CASE("asked for no more than needed, a map is as high as its ways and their margin") {
  const MapPaper low{kPaper.width, kPaper.height, PaperUse::height_needed};
  const MapView wide = map_over(781, 350, low);
  CHECK(wide.scale == 5000);
  // 350 m at 1 : 5 000 are 70 mm, and 84 % of the height.
  CHECK(near(wide.paper.height.value(), 0.070 / 0.84, 1e-9));
  CHECK(near((wide.frame.pixel * static_cast<double>(wide.frame.rows)).value(),
             wide.paper.height.value() * 5000, wide.frame.pixel.value()));
  CHECK(near((wide.frame.upper_left.north - place(0, 175).north).value(),
             wide.paper.height.value() * 2500, 1e-6));
  CHECK(map_over(781, 0, low).paper.height == Metres{0.06});  // the key needs some
  CHECK(near(map_over(100, 403, low).paper.height.value(), 0.0806 / 0.84, 1e-9));
  CHECK(map_over(781, 350).paper.height == kPaper.height);
}

TEST_CASE("stations on the paper are named, those off it are not, and all trails lie below") {
  const MapView map = map_over(700, 300);
  const auto named = [&](const std::string& name) {
    return std::ranges::count(map.places, name, &MapPlace::name) == 1;
  };
  CHECK(named("Depot"));
  CHECK(named("Lodge"));
  CHECK_FALSE(named("Hut"));  // 600 m north: the paper ends at 390 m
  CHECK(map.ways.size() == 5);
  CHECK(map.ways.back().number == 1);
}

TEST_CASE("the hillshade's pixels cover the paper and one more all round") {
  const MapView map = map_over(700, 300);
  const terrain::GridFrame grid{{}, {{Metres{5}, Metres{0}}, {Metres{0}, Metres{-5}}}};
  const terrain::ReliefFrame frame = relief_frame_of(map, grid);
  CHECK(frame.pixel >= terrain::smallest_pixel(grid));
  CHECK(
      near((map.frame.upper_left.east - frame.upper_left.east).value(), frame.pixel.value(), 1e-6));
  CHECK(near((frame.upper_left.north - map.frame.upper_left.north).value(), frame.pixel.value(),
             1e-6));
  const Metres light = frame.pixel * static_cast<double>(frame.columns - 2);
  CHECK(light >= map.frame.pixel * static_cast<double>(map.frame.columns));
  const Metres light_down = frame.pixel * static_cast<double>(frame.rows - 2);
  CHECK(light_down >= map.frame.pixel * static_cast<double>(map.frame.rows));
}

TEST_CASE("a map without a way is our own fault") {
  const passage::Scene scene = testing::scene_of({testing::rolling()}, testing::two_ways());
  CHECK_THROWS((void)map_of({}, scene, kPaper));
}

}  // namespace
}  // namespace rimehaul::card
