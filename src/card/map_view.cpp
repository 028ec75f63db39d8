#include "card/map_view.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "base/require.h"

namespace rimehaul::card {

using units::Metres;

namespace {

/// Round scales, between which a map reader can still reckon.
constexpr std::array<double, 17> kScales{500,   1000,  1500,  2000,  2500,  4000,
                                         5000,  7500,  10000, 12500, 15000, 20000,
                                         25000, 30000, 40000, 50000, 75000};
/// Room around the ways, as a part of each side.
constexpr double kMargin = 0.08;
/// Half a printed dot of a coarse office printer would be finer than anybody sees: 0.25 mm.
constexpr Metres kDotOnPaper{0.00025};

struct Extent {
  Metres west{std::numeric_limits<double>::infinity()};
  Metres east{-std::numeric_limits<double>::infinity()};
  Metres south{std::numeric_limits<double>::infinity()};
  Metres north{-std::numeric_limits<double>::infinity()};

  void take(geo::MapPoint place) {
    west = std::min(west, place.east);
    east = std::max(east, place.east);
    south = std::min(south, place.north);
    north = std::max(north, place.north);
  }
};

/// The largest scale at which an extent and its margin lie on the paper.
double scale_for(const Extent& extent, MapPaper paper) {
  const double needed =
      std::max((extent.east - extent.west) / (paper.width * (1 - 2 * kMargin)),
               (extent.north - extent.south) / (paper.height * (1 - 2 * kMargin)));
  for (const double scale : kScales) {
    if (needed <= scale) {
      return scale;
    }
  }
  return std::ceil(needed / 50000.0) * 50000.0;
}

/// Room for ways and margin at a scale; key and north need some in any case.
MapPaper taken_of(MapPaper paper, const Extent& extent, double scale) {
  constexpr Metres kLeastHeight{0.06};
  if (paper.use == PaperUse::height_needed) {
    const Metres needed = (extent.north - extent.south) / (scale * (1 - 2 * kMargin));
    paper.height = std::min(paper.height, std::max(kLeastHeight, needed));
  }
  return paper;
}

terrain::ReliefFrame frame_around(const Extent& extent, MapPaper paper, double scale) {
  const geo::MapPoint upper_left{(extent.west + extent.east) / 2 - paper.width * (scale / 2),
                                 (extent.south + extent.north) / 2 + paper.height * (scale / 2)};
  const Metres pixel = kDotOnPaper * scale;
  return {upper_left, pixel, static_cast<std::int64_t>(std::ceil(paper.width * scale / pixel)),
          static_cast<std::int64_t>(std::ceil(paper.height * scale / pixel))};
}

bool lies_on(const terrain::ReliefFrame& frame, geo::MapPoint place) {
  const Metres right = place.east - frame.upper_left.east;
  const Metres down = frame.upper_left.north - place.north;
  return right >= Metres{0} && right <= frame.pixel * static_cast<double>(frame.columns) &&
         down >= Metres{0} && down <= frame.pixel * static_cast<double>(frame.rows);
}

std::vector<MapWay> trails_beside(const trails::Network& network) {
  std::vector<MapWay> ways;
  for (const trails::Trail& trail : network.trails) {
    const auto points = trail.line.points();
    ways.push_back({.points = {points.begin(), points.end()}, .name = trail.name, .verdict = {}});
  }
  return ways;
}

std::optional<PlaceKind> place_kind(trails::MarkKind kind) {
  switch (kind) {
    case trails::MarkKind::refuge:
      return PlaceKind::refuge;
    case trails::MarkKind::turning_room:
      return PlaceKind::turning_room;
    default:
      return std::nullopt;
  }
}

std::vector<MapPlace> places_on(const terrain::ReliefFrame& frame, const trails::Network& network) {
  std::vector<MapPlace> places;
  for (const trails::Station& station : network.stations) {
    if (lies_on(frame, station.place)) {
      const bool refuge = station.kind == trails::StationKind::refuge;
      places.push_back(
          {station.place, station.name, refuge ? PlaceKind::refuge : PlaceKind::station});
    }
  }
  for (const trails::Mark& mark : network.marks) {
    const auto kind = place_kind(mark.kind);
    const auto trail = network.trail_named(mark.trail);
    if (kind && trail) {
      const geo::MapPoint place =
          network.trails[*trail].line.at((mark.span.from + mark.span.to) / 2);
      if (lies_on(frame, place)) {
        places.push_back({place, mark.name, *kind});
      }
    }
  }
  return places;
}

}  // namespace

MapView map_of(std::vector<MapWay> ways, const passage::Scene& scene, MapPaper paper) {
  base::require(!ways.empty() && paper.width > Metres{0} && paper.height > Metres{0},
                "a map shows ways on paper");
  Extent extent;
  for (const MapWay& way : ways) {
    for (const geo::MapPoint place : way.points) {
      extent.take(place);
    }
  }
  MapView map;
  map.scale = scale_for(extent, paper);
  map.paper = taken_of(paper, extent, map.scale);
  map.frame = frame_around(extent, map.paper, map.scale);
  map.ways = trails_beside(scene.network);
  std::ranges::move(ways, std::back_inserter(map.ways));
  map.places = places_on(map.frame, scene.network);
  return map;
}

terrain::ReliefFrame relief_frame_of(const MapView& map, const terrain::GridFrame& grid) {
  const Metres pixel = std::max(map.frame.pixel, terrain::smallest_pixel(grid));
  // The outermost pixels have no light, as they lack neighbours: they lie beyond the paper.
  const auto count = [&](std::int64_t dots) {
    return 2 + static_cast<std::int64_t>(
                   std::ceil(map.frame.pixel * static_cast<double>(dots) / pixel));
  };
  const geo::MapPoint corner = map.frame.upper_left;
  return {{corner.east - pixel, corner.north + pixel},
          pixel,
          count(map.frame.columns),
          count(map.frame.rows)};
}

}  // namespace rimehaul::card
