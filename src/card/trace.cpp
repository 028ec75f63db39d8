#include "card/trace.h"

#include <cmath>
#include <cstdint>

namespace rimehaul::card {

namespace {

constexpr double kFurthestApartMetres = 25.0;

/// Chainages of a line's points, and of as many between them as are needed.
std::vector<units::Metres> stops_along(const geo::Polyline& line) {
  std::vector<units::Metres> stops{units::Metres{0}};
  for (std::size_t i = 0; i < line.segment_count(); ++i) {
    const units::Metres from = line.chainage(i);
    const units::Metres length = line.chainage(i + 1) - from;
    const int pieces = static_cast<int>(std::ceil(length.value() / kFurthestApartMetres));
    for (int piece = 1; piece < pieces; ++piece) {
      stops.push_back(from + length * (static_cast<double>(piece) / pieces));
    }
    stops.push_back(line.chainage(i + 1));
  }
  return stops;
}

}  // namespace

std::vector<TracePoint> trace_of(const search::Route& route, const passage::Scene& scene) {
  std::vector<TracePoint> trace;
  units::Metres before{0};
  int index = 0;
  for (const search::RouteLeg& part : route.legs) {
    const geo::Polyline& line = scene.network.legs[static_cast<std::uint32_t>(part.leg)].line;
    for (const units::Metres stop : stops_along(line)) {
      const bool joins = index > 0 && stop == units::Metres{0};
      if (!joins) {
        const geo::MapPoint place = line.at(stop);
        trace.push_back({place, scene.heights.at(place), before + stop, index});
      }
    }
    before += line.length();
    ++index;
  }
  return trace;
}

}  // namespace rimehaul::card
