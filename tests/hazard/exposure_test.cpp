// Exposure to steep ground: distances in closed form, against brute force, and at holes.
#include "hazard/exposure.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <thread>
#include <vector>

#include "base/require.h"
#include "ground/surfaces.h"
#include "near.h"
#include "terrain/gradient.h"

namespace rimehaul {

namespace {

using geo::Polyline;
using hazard::Exposure;
using hazard::ExposureQuestion;
using hazard::SteepGround;
using terrain::HeightMap;
using testing::map_of;
using testing::near;
using testing::near_degrees;
using testing::point;
using testing::rough;
using testing::with_void;
using units::Metres;
using units::Slope;

constexpr double kFlank = 0.7;  // 35 degrees

/// Level ground west of E = 0, from there on a flank of 35 degrees.
double foot_of_a_flank(double east, double /*north*/) {
  return 1000.0 + kFlank * std::max(0.0, east);
}

ExposureQuestion question(double start_deg, double reach, double tolerance = 0.0) {
  return {.start_slope = Slope::from_degrees(start_deg),
          .reach = Metres{reach},
          .tolerance = Slope::from_ratio(tolerance)};
}

Exposure whole_line(const SteepGround& steep, const Polyline& line,
                    const std::vector<trails::Zone>& zones = {}) {
  return steep.exposure_of(line, {{Metres{0}, line.length()}, Metres{0}}, zones);
}

Polyline north_along(double east) {
  return Polyline{{point(east, -40), point(east, 40)}};
}

trails::Zone zone(trails::ZoneKind kind, double west, double east) {
  return {.name = "drawn",
          .kind = kind,
          .region = {{{point(west, -10), point(east, -10), point(east, 10), point(west, 10),
                       point(west, -10)}}},
          .speed = std::nullopt};
}

/// The same by the definition: every cell of the map, every metre of the piece.
Metres by_brute_force(const HeightMap& map, const Polyline& line, const ExposureQuestion& asked) {
  double nearest = asked.reach.value();
  for (std::int64_t row = -40; row < map.size().row + 40; ++row) {
    for (std::int64_t column = -40; column < map.size().column + 40; ++column) {
      const auto gradient = terrain::horn_gradient(map, {column, row});
      const bool gentle =
          gradient && slope_of(*gradient).raised_by(asked.tolerance) < asked.start_slope;
      if (!gentle) {
        const auto away = line.nearest(map.frame().centre_of({column, row})).away;
        nearest = std::min(nearest, std::max(0.0, (away - map.frame().half_diagonal()).value()));
      }
    }
  }
  return Metres{nearest};
}

}  // namespace

TEST_CASE(
    "the distance to the foot of a flank is never told longer than it is, nor a cell shorter") {
  const double cell = 5.0;
  const auto map = map_of(foot_of_a_flank, cell);
  const SteepGround steep{map, question(30, 200)};
  for (const double away : {20.0, 63.0, 111.0, 180.0}) {
    const Exposure found = whole_line(steep, north_along(-away));
    REQUIRE(found.to_steep_ground.has_value());
    // Horn sees half the flank's slope at E = 0 and all of it from E = 5 on.
    CHECK(found.to_steep_ground->value() <= away + cell / 2);
    CHECK(near(*found.to_steep_ground, Metres{away + cell - cell * std::sqrt(0.5)}, Metres{1e-6}));
    CHECK_FALSE(found.nothing_steep_within_reach);
  }
}

TEST_CASE("beyond the distance searched nothing is claimed but that distance") {
  const auto map = map_of(foot_of_a_flank, 5.0);
  // Nearest steep cell at E = 5, its reach 3.5355 m: 101.4645 m from E = -100.
  const Exposure within = whole_line(SteepGround{map, question(30, 101.47)}, north_along(-100));
  CHECK_FALSE(within.nothing_steep_within_reach);
  const Exposure beyond = whole_line(SteepGround{map, question(30, 101.46)}, north_along(-100));
  CHECK(beyond.nothing_steep_within_reach);
  CHECK(beyond.to_steep_ground == Metres{101.46});
}

TEST_CASE("ground exactly at the start slope releases, a hair below it does not") {
  const auto map = map_of(testing::plane(0.0, kFlank), 5.0);
  const Polyline line = north_along(0);
  const ExposureQuestion at{Slope::from_ratio(kFlank), Metres{100}, Slope{}};
  CHECK(whole_line(SteepGround{map, at}, line).to_steep_ground == Metres{0});
  const ExposureQuestion above{Slope::from_ratio(kFlank + 1e-6), Metres{100}, Slope{}};
  CHECK(whole_line(SteepGround{map, above}, line).nothing_steep_within_reach);
  // The tolerance counts as slope.
  const ExposureQuestion widened{Slope::from_ratio(kFlank + 0.1), Metres{100},
                                 Slope::from_ratio(0.1)};
  CHECK(whole_line(SteepGround{map, widened}, line).to_steep_ground == Metres{0});
  const ExposureQuestion short_of{Slope::from_ratio(kFlank + 0.1), Metres{100},
                                  Slope::from_ratio(0.0999)};
  CHECK(whole_line(SteepGround{map, short_of}, line).nothing_steep_within_reach);
}

TEST_CASE("a tolerance as large as the start slope makes all ground steep") {
  const auto map = map_of(testing::plane(0, 0), 5.0);
  CHECK(whole_line(SteepGround{map, question(30, 100, 0.6)}, north_along(0)).to_steep_ground ==
        Metres{0});
}

TEST_CASE("the own slope of a piece is the ground's, error added") {
  const auto map = map_of(testing::hillside(28, 90), 5.0);
  const Exposure plain = whole_line(SteepGround{map, question(30, 50)}, north_along(0));
  REQUIRE(plain.own_slope.has_value());
  CHECK(near_degrees(*plain.own_slope, 28.0, 1e-6));
  const Exposure widened = whole_line(SteepGround{map, question(40, 50, 0.05)}, north_along(0));
  CHECK(near(widened.own_slope->ratio(), std::tan(28 * 3.14159265358979323846 / 180) + 0.05, 1e-8));
}

TEST_CASE("ground up to 3 m beside a piece is its own, ground further off is not") {
  const auto map = map_of(foot_of_a_flank, 0.1, {-10, -10, 10, 10});
  const SteepGround steep{map, question(30, 1)};
  const auto own_slope_off = [&](double away) {
    return *whole_line(steep, Polyline{{point(-away, -5), point(-away, 5)}}).own_slope;
  };
  CHECK(near(own_slope_off(2.95).ratio(), kFlank, 1e-6));
  // Patches of 0.1 m: the last level one ends at the foot.
  CHECK(near(own_slope_off(3.05).ratio(), 0.0, 1e-6));
}

// Cell (c, r) stands at E = c, N = -r. A place in the last part of cell 16 lies in the second tile
// of 16, and the ground from cell 32 on in the third.
TEST_CASE("steep ground is found a tile further on, almost as near as the place searched from") {
  const testing::Extent extent{0, -64, 64, 0};
  const double away = 32 - 16.4 - std::sqrt(0.5);  // half a cell's diagonal before its centre
  const auto found = [&](const testing::Surface& ground, geo::MapPoint from, geo::MapPoint to) {
    const auto map = map_of(ground, 1.0, extent);
    return *whole_line(SteepGround{map, question(30, 15.1)}, Polyline{{from, to}}).to_steep_ground;
  };
  // Horn's slope is 0.7 at cell 32: level up to it, 1.4 from there on.
  const auto steep_from_32 = [](double at) { return 1000.0 + 1.4 * std::max(0.0, at - 32); };
  CHECK(near(found([&](double, double north) { return steep_from_32(-north); }, point(30, -16.4),
                   point(34, -16.4)),
             Metres{away}, Metres{1e-6}));
  CHECK(near(found([&](double east, double) { return steep_from_32(east); }, point(16.4, -30),
                   point(16.4, -34)),
             Metres{away}, Metres{1e-6}));
}

TEST_CASE(
    "of two holes less than a metre away the nearer counts, though it lies in the next tile") {
  // Their rings are unknown: cells 6 to 8 by 13 to 15, and 11 to 13 by 16 to 18.
  const auto map = map_of(
      with_void(testing::plane(0, 0),
                [](double e, double n) { return (e == 7 && n == -14) || (e == 12 && n == -17); }),
      1.0, {0, -64, 64, 0});
  const Polyline line{{point(9.6, -15.4), point(9.6, -10)}};
  const Exposure found =
      SteepGround{map, question(30, 10)}.exposure_of(line, {{Metres{0}, Metres{0}}, Metres{0}}, {});
  // Cell (8, 15) is hypot(1.6, 0.4) away, cell (11, 16) hypot(1.4, 0.6).
  CHECK(near(*found.to_steep_ground, Metres{std::hypot(1.4, 0.6) - std::sqrt(0.5)}, Metres{1e-9}));
}

TEST_CASE("who stands on a hole of one cell stands on steep ground") {
  const auto map =
      map_of(with_void(testing::plane(0, 0), [](double e, double n) { return e == 8 && n == -8; }),
             1.0, {0, -64, 64, 0});
  const Polyline line{{point(8, -8), point(8, -5)}};
  const Exposure found =
      SteepGround{map, question(30, 10)}.exposure_of(line, {{Metres{0}, Metres{0}}, Metres{0}}, {});
  CHECK(found.to_steep_ground == Metres{0});
}

TEST_CASE("a hole in the heights counts as steep, and under the piece the own slope is unknown") {
  const auto map = map_of(
      with_void(testing::plane(0, 0), [](double e, double n) { return e == 60 && n == 0; }), 5.0);
  const SteepGround steep{map, question(30, 200)};
  // Cells next to the hole have no slope either: the nearest stands at E = 55.
  const Exposure away = whole_line(steep, north_along(0));
  CHECK(near(*away.to_steep_ground, Metres{55 - 5 * std::sqrt(0.5)}, Metres{1e-6}));
  CHECK(away.own_slope.has_value());
  const Exposure on_it = whole_line(steep, north_along(57));
  CHECK(on_it.to_steep_ground == Metres{0});
  CHECK_FALSE(on_it.own_slope.has_value());
}

TEST_CASE("the edge of the heights counts as steep, whether the raster or the loading ends there") {
  const auto map = map_of(testing::plane(0, 0), 5.0);
  const SteepGround steep{map, question(30, 200)};
  // The last cells, at E = 500, have no ring around them.
  const Exposure found = whole_line(steep, north_along(400));
  CHECK(near(*found.to_steep_ground, Metres{100 - 5 * std::sqrt(0.5)}, Metres{1e-6}));
  CHECK(whole_line(steep, north_along(900)).to_steep_ground == Metres{0});

  testing::SurfaceSource wide = testing::source_of(testing::plane(0, 0), 1.0, {0, 0, 5000, 5000});
  const terrain::Corridor corridor{Polyline{{point(2500, 2400), point(2500, 2600)}}, Metres{20}};
  const HeightMap loaded = HeightMap::load(wide, std::span{&corridor, 1});
  REQUIRE(loaded.block_count() < 20);
  const Exposure at_edge = whole_line(SteepGround{loaded, question(30, 2000)}, corridor.line);
  CHECK_FALSE(at_edge.nothing_steep_within_reach);
  CHECK(at_edge.to_steep_ground->value() >= 15.0);
}

TEST_CASE("a question with an unknown in it is not answered") {
  const auto map = map_of(testing::plane(0, 0), 5.0);
  for (const ExposureQuestion& asked :
       {question(30, 100, NAN), question(30, NAN), question(NAN, 100), question(30, 100, -0.1),
        question(30, INFINITY), question(30, -1), question(30, 100, INFINITY)}) {
    const Exposure found = whole_line(SteepGround{map, asked}, north_along(0));
    CHECK_FALSE(found.own_slope.has_value());
    CHECK_FALSE(found.to_steep_ground.has_value());
    CHECK_FALSE(found.nothing_steep_within_reach);
  }
}

TEST_CASE("distances agree with every cell looked at, on rough ground and any lattice") {
  const auto step = [](double east, double north) {
    return terrain::GridStep{Metres{east}, Metres{north}};
  };
  const std::vector<terrain::GridFrame> frames{{point(-200, 200), {step(4, 0), step(0, -4)}},
                                               {point(-50, 330), {step(4, -3), step(-3, -4)}},
                                               {point(-300, -200), {step(3, 0), step(2, 5)}}};
  int near_enough = 0;
  for (std::uint64_t seed = 1; seed <= 4; ++seed) {
    CAPTURE(seed);
    for (const terrain::GridFrame& frame : frames) {
      // Bumps that pass 35 degrees at a few cells in ten thousand.
      testing::SurfaceSource source{frame, {100, 100}, rough(seed, 2.9, 0.05)};
      const HeightMap map = testing::whole_map(source);
      const ExposureQuestion asked = question(35, 70, 0.02);
      const SteepGround steep{map, asked};
      for (const double east : {-60.0, -20.0, 0.0, 35.0}) {
        const Polyline line{{point(east, -20), point(east + 3, 0), point(east + 1, 4)}};
        const Exposure found = whole_line(steep, line);
        REQUIRE(found.to_steep_ground.has_value());
        const Metres wanted = by_brute_force(map, line, asked);
        CHECK(near(*found.to_steep_ground, wanted, Metres{1e-9}));
        near_enough += wanted > Metres{0} && wanted < asked.reach ? 1 : 0;
      }
    }
  }
  CHECK(near_enough >= 16);
}

TEST_CASE("only pieces in a drawn release area or runout are told so") {
  const auto map = map_of(testing::plane(0, 0), 5.0);
  const SteepGround steep{map, question(30, 50)};
  const Polyline line{{point(-50, 0), point(50, 0)}};
  const std::vector<trails::Zone> zones{zone(trails::ZoneKind::release_area, 0, 10),
                                        zone(trails::ZoneKind::runout, 8, 30),
                                        zone(trails::ZoneKind::forbidden, -50, -40)};
  const auto at = [&](double from, double to) {
    return steep.exposure_of(line, {{Metres{from}, Metres{to}}, Metres{0}}, zones);
  };
  CHECK_FALSE(at(0, 45).in_release_area);
  CHECK_FALSE(at(0, 45).in_runout);
  CHECK(at(45, 51).in_release_area);
  CHECK_FALSE(at(45, 51).in_runout);
  CHECK(at(57, 60).in_release_area);
  CHECK(at(57, 60).in_runout);
  CHECK_FALSE(at(60.1, 70).in_release_area);
  CHECK(at(60.1, 70).in_runout);
  CHECK_FALSE(at(80.1, 100).in_runout);
  // A single place works as well, and so does an area that is crossed in the middle of a piece.
  CHECK(at(55, 55).in_release_area);
  CHECK_FALSE(at(49, 49).in_release_area);
  CHECK(at(0, 100).in_release_area);
}

TEST_CASE("a line that may be off stands so much nearer to steep ground and to drawn areas") {
  const auto map = map_of(foot_of_a_flank, 5.0);
  const SteepGround steep{map, question(30, 60)};
  const Polyline line = north_along(-40);
  const auto off_by = [&](double metres) {
    return steep.exposure_of(line, {{Metres{0}, line.length()}, Metres{metres}},
                             {zone(trails::ZoneKind::runout, -30, -20)});
  };
  const double as_drawn = off_by(0).to_steep_ground->value();
  REQUIRE(as_drawn > 20);
  CHECK(testing::near(off_by(7).to_steep_ground->value(), as_drawn - 7, 1e-9));
  CHECK(off_by(as_drawn + 1).to_steep_ground->value() == 0.0);
  CHECK_FALSE(off_by(9.99).in_runout);
  CHECK(off_by(10.01).in_runout);
  // Off by 40 m it may lie on the flank itself.
  CHECK(*off_by(0).own_slope < Slope::from_degrees(1));
  CHECK(*off_by(40).own_slope >= Slope::from_degrees(34.9));
  for (const double unknown : {std::nan(""), static_cast<double>(INFINITY)}) {
    CHECK_FALSE(off_by(unknown).own_slope.has_value());
    CHECK_FALSE(off_by(unknown).to_steep_ground.has_value());
    CHECK_FALSE(off_by(unknown).nothing_steep_within_reach);
    CHECK(off_by(unknown).in_runout);
  }
}

TEST_CASE("a single place stands as far off as the ground around it says") {
  const auto map = map_of(foot_of_a_flank, 5.0);
  const SteepGround steep{map, question(30, 200)};
  const Polyline towards{{point(-150, 0), point(50, 0)}};
  const auto at = [&](double chainage) {
    return steep.exposure_of(towards, {{Metres{chainage}, Metres{chainage}}, Metres{0}}, {});
  };
  // Nearest steep cell at E = 5, its reach 3.5355 m.
  CHECK(near(*at(50).to_steep_ground, Metres{105 - 5 * std::sqrt(0.5)}, Metres{1e-6}));
  CHECK(near(*at(130).to_steep_ground, Metres{25 - 5 * std::sqrt(0.5)}, Metres{1e-6}));
  CHECK(at(160).to_steep_ground == Metres{0});
  CHECK_FALSE(at(50).nothing_steep_within_reach);
}

TEST_CASE("a look no further than the line itself tells only whether that lies on steep ground") {
  const auto map = map_of(foot_of_a_flank, 5.0);
  const SteepGround steep{map, question(30, 0)};
  CHECK(whole_line(steep, north_along(-100)).to_steep_ground == Metres{0});
  CHECK(whole_line(steep, north_along(-100)).nothing_steep_within_reach);
  CHECK(whole_line(steep, north_along(10)).to_steep_ground == Metres{0});
  CHECK_FALSE(whole_line(steep, north_along(10)).nothing_steep_within_reach);
}

TEST_CASE("several threads get the answers that one gets") {
  const auto map = map_of(rough(4, 1.5, 0.1), 5.0);
  const ExposureQuestion asked = question(25, 100);
  const SteepGround shared{map, asked};
  const SteepGround alone{map, asked};
  std::vector<std::vector<double>> found(4);
  std::vector<std::thread> threads;
  for (auto& mine : found) {
    threads.emplace_back([&] {
      for (double east = -300; east <= 300; east += 7) {
        mine.push_back(whole_line(shared, north_along(east)).to_steep_ground->value());
      }
    });
  }
  for (std::thread& thread : threads) {
    thread.join();
  }
  std::vector<double> wanted;
  for (double east = -300; east <= 300; east += 7) {
    wanted.push_back(whole_line(alone, north_along(east)).to_steep_ground->value());
  }
  for (const auto& mine : found) {
    CHECK(mine == wanted);
  }
}

TEST_CASE("a piece that ends before it starts is our fault") {
  const auto map = map_of(testing::plane(0, 0), 5.0);
  const SteepGround steep{map, question(30, 50)};
  CHECK_THROWS_AS((void)steep.exposure_of(north_along(0), {{Metres{5}, Metres{4}}, Metres{0}}, {}),
                  base::OurFault);
}

}  // namespace rimehaul
