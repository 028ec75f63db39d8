// What must hold of trails, stations, zones and marks, from whatever file they were read.
#pragma once

#include <array>
#include <set>
#include <string>

#include "fuzz/expect.h"
#include "ports/gdal/layers.h"

namespace rimehaul::fuzz {

inline geo::MapFrame fuzz_frame() {
  return {.horizontal = "EPSG:32605",
          .horizontal_name = "WGS 84 / UTM zone 5N",
          .vertical_name = "sea level"};
}

inline void expect_above_zero(std::optional<units::Metres> length, const char* words) {
  expect(!length || *length > units::Metres{0}, words);
}

inline void look_at_trails(const std::vector<trails::Trail>& found, bool /*has_fault*/) {
  std::set<std::string> names;
  for (const trails::Trail& trail : found) {
    expect_name(trail.name);
    expect(names.insert(trail.name).second, "a trail's name is its own", trail.name);
    expect(trail.line.points().size() >= 2, "a trail has two points");
    for (const geo::MapPoint point : trail.line.points()) {
      expect_on_map(point);
    }
    expect(trail.line.length() > units::Metres{0}, "a trail has a length");
    expect_above_zero(trail.width, "a width is above 0");
    expect_above_zero(trail.sight, "a sight is above 0");
    expect_above_zero(trail.marker_spacing, "markers have a distance");
    expect(!trail.line_error || *trail.line_error >= units::Metres{0}, "an error is not below 0");
    expect(!trail.lanes || *trail.lanes >= 1, "a trail has a lane");
    expect(!trail.hours || trail.hours->from <= trail.hours->to, "hours begin before they end");
  }
}

inline void look_at_stations(const std::vector<trails::Station>& found, bool /*has_fault*/) {
  for (const trails::Station& station : found) {
    expect_name(station.name);
    expect_on_map(station.place);
    expect(!station.turning_radius || *station.turning_radius >= units::Metres{0},
           "room to turn is not below 0");
  }
}

inline void look_at_zones(const std::vector<trails::Zone>& found, bool /*has_fault*/) {
  for (const trails::Zone& zone : found) {
    expect_name(zone.name);
    expect(!zone.region.rings.empty(), "a zone has an outline");
    for (const auto& ring : zone.region.rings) {
      expect(ring.size() >= 4 && ring.front() == ring.back(), "an outline is closed");
      for (const geo::MapPoint point : ring) {
        expect_on_map(point);
      }
    }
    expect(!zone.speed || *zone.speed > units::MetresPerSecond{0}, "a speed is above 0");
  }
}

inline void look_at_marks(const std::vector<trails::Mark>& found, bool /*has_fault*/) {
  for (const trails::Mark& mark : found) {
    expect_name(mark.name);
    expect_name(mark.trail);
    expect_finite(mark.span.from.value(), "a mark begins somewhere");
    expect(mark.span.from <= mark.span.to, "a mark ends after it begins");
    expect(!mark.survey || mark.survey->standard_deviation > units::Slope::from_ratio(0),
           "a survey has a deviation");
    expect(!mark.most_mass || *mark.most_mass > units::Kilograms{0}, "a bridge carries something");
  }
}

/// A trail for marks to lie on, where those of the demo's corner do.
inline std::vector<trails::Trail> trail_for_marks() {
  constexpr units::Metres kEast{500'000};
  return {{.name = "T",
           .line = geo::Polyline{{{kEast, units::Metres{5'093'000}},
                                  {kEast, units::Metres{5'095'000}}}},
           .direction = {},
           .width = {},
           .lanes = {},
           .groomed = {},
           .shared_with_skiers = {},
           .hours = {},
           .line_error = {},
           .sight = {},
           .marker_spacing = {},
           .file = "trails.geojson"}};
}

/// Reads one file as the kind of layer that a number stands for.
inline void read_and_look(const ports::gdal::LayerFile& file, int kind) {
  namespace gdal = ports::gdal;
  switch (kind % 4) {
    case 0:
      return try_to_read([&] { return gdal::read_trails(file, fuzz_frame()); }, look_at_trails);
    case 1:
      return try_to_read([&] { return gdal::read_stations(file, fuzz_frame()); }, look_at_stations);
    case 2:
      return try_to_read([&] { return gdal::read_zones(file, fuzz_frame()); }, look_at_zones);
    default:
      return try_to_read([&] { return gdal::read_marks(file, fuzz_frame(), trail_for_marks()); },
                         look_at_marks);
  }
}

}  // namespace rimehaul::fuzz
