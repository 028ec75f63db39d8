// A small site in memory for tests: ground by a formula, a plausible rig, and everything said that
// a site must say, so that a test changes the one thing it speaks of.
#pragma once

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "ground/surfaces.h"
#include "passage/scene.h"
#include "rig/rig.h"
#include "snow/snow.h"

namespace rimehaul::testing {

/// Where the tests' own east and north of 0 lie on the map: large numbers, as real frames have.
inline constexpr double kEastOfTests = 500'000.0;
inline constexpr double kNorthOfTests = 5'100'000.0;

/// A place by metres east and north of the tests' own origin.
inline geo::MapPoint place(double east_m, double north_m) {
  return {units::Metres{kEastOfTests + east_m}, units::Metres{kNorthOfTests + north_m}};
}

/// Square ground, north up, given over the tests' own metres.
struct TestGround {
  Surface ground = plane(0.0, 0.0);
  double cell_m = 5.0;
  Extent extent{-600, -600, 1600, 1600};
};

/// All heights of a test ground, loaded.
inline terrain::HeightMap heights_of(const TestGround& test) {
  const Surface on_map = [ground = test.ground](double east, double north) {
    return ground(east - kEastOfTests, north - kNorthOfTests);
  };
  return map_of(on_map, test.cell_m,
                {kEastOfTests + test.extent.west, kNorthOfTests + test.extent.south,
                 kEastOfTests + test.extent.east, kNorthOfTests + test.extent.north});
}

/// Errors as of a lidar survey; cells wider than the rig hide no more than 0.5 %.
inline terrain::HeightTrust plain_trust() {
  return {.errors = {{units::Metres{0.05}, units::Metres{20}}},
          .sub_cell = units::Slope::from_percent(0.5),
          .sub_cell_is_estimate = true};
}

/// A trail of which everything was said: two-way, wide, marked, groomed, open all day.
inline trails::Trail plain_trail(std::string name, std::vector<geo::MapPoint> points) {
  return {.name = std::move(name),
          .line = geo::Polyline{std::move(points)},
          .direction = trails::AllowedDirection::both,
          .width = units::Metres{6},
          .lanes = 2,
          .groomed = true,
          .shared_with_skiers = false,
          .hours = trails::OpenHours{{0}, {1440}},
          .line_error = units::Metres{1},
          .sight = units::Metres{60},
          .marker_spacing = units::Metres{20},
          .file = "trails.gpkg"};
}

inline trails::Station plain_station(std::string name, geo::MapPoint where) {
  return {.name = std::move(name),
          .kind = trails::StationKind::hut,
          .place = where,
          .turning_radius = units::Metres{15}};
}

/// Trails, stations, zones and marks, cut into legs wherever trails share a point of their lines,
/// end, or pass a station exactly.
struct TestTrails {
  std::vector<trails::Trail> trails;
  std::vector<trails::Station> stations;
  std::vector<trails::Zone> zones;
  std::vector<trails::Mark> marks;
};

inline std::vector<trails::Cut> cuts_of(const TestTrails& all) {
  std::vector<trails::Cut> cuts;
  const auto shared = [&](std::size_t own, geo::MapPoint point) {
    for (std::size_t i = 0; i < all.trails.size(); ++i) {
      const auto points = all.trails[i].line.points();
      if (i != own && std::find(points.begin(), points.end(), point) != points.end()) {
        return true;
      }
    }
    return false;
  };
  for (std::size_t t = 0; t < all.trails.size(); ++t) {
    const geo::Polyline& line = all.trails[t].line;
    for (std::size_t i = 0; i < line.points().size(); ++i) {
      const geo::MapPoint point = line.points()[i];
      std::optional<std::size_t> station;
      for (std::size_t s = 0; s < all.stations.size(); ++s) {
        station = all.stations[s].place == point ? std::optional{s} : station;
      }
      const bool at_end = i == 0 || i + 1 == line.points().size();
      if (at_end || station.has_value() || shared(t, point)) {
        cuts.push_back({t, line.chainage(i), point, station});
      }
    }
  }
  return cuts;
}

inline trails::Network network_of(const TestTrails& all) {
  return trails::make_network(all.trails, all.stations, all.zones, all.marks, cuts_of(all));
}

/// A twin-track carrier that climbs well: loaded with 150 kg and a driver, no passengers.
inline rig::Carrier plain_carrier() {
  using units::Kilograms;
  using units::Metres;
  const rig::Provenance manual{rig::Standing::maker, "operator's manual, page 41"};
  const auto rated = [&](double climb_deg, double cross_deg) {
    return rig::SlopeRatings{.climb = rig::Rating{units::Slope::from_degrees(climb_deg), manual},
                             .descent = rig::Rating{units::Slope::from_degrees(climb_deg), manual},
                             .cross = rig::Rating{units::Slope::from_degrees(cross_deg), manual}};
  };
  return {.name = "Twin-track",
          .kind = rig::CarrierKind::twin_track,
          .empty = {Kilograms{620}, {Metres{0.9}, Metres{0}, Metres{0.55}}},
          .driver_mass = Kilograms{90},
          .driver_at = {Metres{1.0}, Metres{0}, Metres{0.9}},
          .seats = {{Metres{0.6}, Metres{0}, Metres{0.9}}},
          .bed_at = {Metres{0.5}, Metres{0}, Metres{0.7}},
          .bed_rating = Kilograms{250},
          .payload_rating = Kilograms{340},
          .support = {{Metres{0}, Metres{-0.7}},
                      {Metres{1.8}, Metres{-0.7}},
                      {Metres{1.8}, Metres{0.7}},
                      {Metres{0}, Metres{0.7}}},
          .contact_length = Metres{1.8},
          .gauge = Metres{1.4},
          .overall_length = Metres{3.0},
          .overall_width = Metres{1.5},
          .contact_area = units::SquareMetres{1.4},
          .track_weight_share = 1.0,
          .turning_radius = Metres{3.0},
          .hitch_at = {Metres{-0.3}, Metres{0}, Metres{0.4}},
          .hitch_vertical_rating = Kilograms{60},
          .towed_mass_rating = Kilograms{600},
          .solo_empty = rated(28, 18),
          .solo_loaded = rated(25, 16),
          .towing = rated(20, 13),
          .engine_power = units::Watts{36'000},
          .driveline_efficiency = 0.65,
          .consumption = units::GramsPerKilowattHour{400},
          .idle_consumption = units::LitresPerHour{1.2},
          .tank = units::Litres{40},
          .fuel_density = units::KilogramsPerCubicMetre{741},
          .brake_force = units::Newtons{6'000},
          .parking_brake_force = units::Newtons{5'000},
          .top_speed = units::MetresPerSecond{7.0},
          .provenance = manual};
}

/// A braked sled on runners.
inline rig::Trailer plain_trailer() {
  using units::Kilograms;
  using units::Metres;
  const rig::Provenance manual{rig::Standing::maker, "trailer sheet, page 3"};
  const rig::Rating steepest{units::Slope::from_degrees(20), manual};
  return {.name = "Sled",
          .running = rig::TrailerRunning::runners,
          .empty = {Kilograms{110}, {Metres{0.8}, Metres{0}, Metres{0.35}}},
          .bed_at = {Metres{0.8}, Metres{0}, Metres{0.5}},
          .payload_rating = Kilograms{300},
          .tongue_share = 0.1,
          .gauge = Metres{1.2},
          .contact_length = Metres{1.6},
          .drawbar_length = Metres{2.2},
          .overall_width = Metres{1.3},
          .contact_area = units::SquareMetres{0.5},
          .hitch_free_to_roll = false,
          .brake_force = units::Newtons{1'000},
          .climb = steepest,
          .descent = steepest,
          .cross = steepest,
          .provenance = manual};
}

inline rig::Rig solo_rig() {
  return {.name = "solo",
          .carrier = plain_carrier(),
          .trailer = {},
          .driver_level = "seasoned",
          .load = {.bed = units::Kilograms{150},
                   .towed = units::Kilograms{0},
                   .passengers = 0,
                   .passenger_mass = units::Kilograms{90},
                   .fuel = units::Litres{30}}};
}

inline rig::Rig towing_rig() {
  rig::Rig rig = solo_rig();
  rig.name = "with sled";
  rig.trailer = plain_trailer();
  rig.load.towed = units::Kilograms{100};
  return rig;
}

/// The defaults, with two levels of driver and a policy for every level of the bulletin.
inline passage::Rules plain_rules() {
  passage::Rules rules = passage::default_rules();
  rules.driver_levels = {{"seasoned", 0.7, true, true, snow::Wetness::very_wet},
                         {"new", 0.5, false, false, snow::Wetness::wet}};
  rules.passengers = {.with_trailer = true, .wettest = snow::Wetness::slush, .who = {}};
  rules.bulletin = {{{units::Metres{10}, true, false},
                     {units::Metres{20}, true, false},
                     {units::Metres{40}, true, false},
                     {units::Metres{80}, false, false},
                     {units::Metres{80}, false, true}}};
  rules.most_wind = units::MetresPerSecond{20};
  return rules;
}

/// A clear, calm day with bulletin level 1.
inline snow::DayWeather plain_weather() {
  return {.visibility = units::Metres{2'000},
          .wind = units::MetresPerSecond{4},
          .bulletin_level = 1,
          .bulletin_source = "avalanche service, morning",
          .new_snow = units::Metres{0},
          .rain = false,
          .temperature = units::Celsius{-4},
          .site = {.marks = {},
                   .grooming = {},
                   .last_weather = units::parse_instant("2026-01-30T18:00:00Z")}};
}

inline snow::ConstantSnow snow_of(snow::Wetness wetness,
                                  snow::Surface surface = snow::Surface::groomed) {
  return {{wetness, surface}, plain_weather(), "assumed for planning"};
}

/// 2026-02-01T09:00:00Z, mid-morning at the site, whose local time is UTC here.
inline units::Instant mid_morning() {
  return *units::parse_instant("2026-02-01T09:00:00Z");
}

inline passage::Scene scene_of(const TestGround& ground, const TestTrails& all) {
  return {.site_name = "Test Fell",
          .frame = {"", "test frame", "test datum"},
          .heights = heights_of(ground),
          .trust = plain_trust(),
          .network = network_of(all),
          .rules = plain_rules()};
}

/// One straight trail, 300 m from (0, 0) towards a map bearing: leg 0 as drawn, leg 1 against.
inline TestTrails straight_trail(double bearing_deg) {
  const geo::MapPoint start = place(0, 0);
  const geo::MapPoint end =
      geo::moved(start, units::Bearing::from_degrees(bearing_deg), units::Metres{300});
  return {.trails = {plain_trail("Straight", {start, end})},
          .stations = {plain_station("Start", start), plain_station("End", end)},
          .zones = {},
          .marks = {}};
}

/// Gentle fellside that rises to the north and rolls a little to the east.
inline Surface rolling() {
  return [](double east_m, double north_m) {
    return 1200.0 + 0.02 * north_m + 1.0 * std::sin(east_m / 90.0);
  };
}

/// The same line with its corners cut round and round again (Chaikin 1974), ends kept.
inline std::vector<geo::MapPoint> rounded(std::vector<geo::MapPoint> points) {
  for (int round = 0; round < 4; ++round) {
    std::vector<geo::MapPoint> cut{points.front()};
    for (std::size_t i = 0; i + 1 < points.size(); ++i) {
      cut.push_back(geo::between({points[i], points[i + 1]}, 0.25));
      cut.push_back(geo::between({points[i], points[i + 1]}, 0.75));
    }
    cut.push_back(points.back());
    points = std::move(cut);
  }
  return points;
}

inline std::vector<geo::MapPoint> followed_by(std::vector<geo::MapPoint> points,
                                              const std::vector<geo::MapPoint>& next) {
  points.insert(points.end(), next.begin(), next.end());
  return points;
}

/// Depot and Lodge joined by a Lower and an Upper Way, a Link that leaves the Lower Way at the ford
/// gently for who comes from the Depot and meets the Upper Way squarely at the col, and a dead end
/// straight on from the Link to the Hut. All legs are open to both rigs in dry groomed snow on
/// rolling(); the Link's turns at the col are for the solo rig only.
inline TestTrails two_ways() {
  const geo::MapPoint depot = place(100, 100);
  const geo::MapPoint ford = place(300, 120);
  const geo::MapPoint lodge = place(600, 150);
  const geo::MapPoint col = place(400, 420);
  const geo::MapPoint hut = place(400, 600);
  const auto up = rounded({depot, place(100, 300), place(200, 420), place(300, 420), col});
  const auto down = rounded({col, place(500, 420), place(600, 350), lodge});
  trails::Trail link = plain_trail("Link", rounded({ford, place(400, 130), place(400, 250), col}));
  link.width = units::Metres{5.8};
  return {.trails = {plain_trail("Lower Way", {depot, ford, lodge}),
                     plain_trail("Upper Way", followed_by(up, down)), link,
                     plain_trail("Hut Spur", {col, hut})},
          .stations = {plain_station("Depot", depot), plain_station("Lodge", lodge),
                       plain_station("Hut", hut)},
          .zones = {},
          .marks = {}};
}

}  // namespace rimehaul::testing
