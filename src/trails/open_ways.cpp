// Ways over open ground joined to the trails, so that both are one network.
#include "trails/open_ways.h"

#include <utility>

namespace rimehaul::trails {

namespace {

/// Where the trails of a network are cut already.
std::vector<Cut> cuts_of(const Network& network) {
  std::vector<Cut> cuts;
  for (const Leg& leg : network.legs) {
    if (leg.way != Way::as_drawn) {
      continue;
    }
    const Junction& from = network.junctions[static_cast<std::size_t>(leg.from)];
    const Junction& to = network.junctions[static_cast<std::size_t>(leg.to)];
    cuts.push_back({leg.trail, leg.span.from, from.place, from.station});
    cuts.push_back({leg.trail, leg.span.to, to.place, to.station});
  }
  return cuts;
}

Cut cut_at(const Network& network, const OnTrail& place) {
  return {place.trail, place.at, network.trails[place.trail].line.at(place.at), std::nullopt};
}

}  // namespace

Network joined_with(const Network& network, std::vector<OpenWay> ways) {
  std::vector<Cut> cuts = cuts_of(network);
  std::vector<Trail> trails = network.trails;
  for (OpenWay& way : ways) {
    const std::size_t number = trails.size();
    const geo::Polyline& line = way.as_trail.line;
    cuts.push_back(cut_at(network, way.from));
    cuts.push_back(cut_at(network, way.to));
    cuts.push_back({number, units::Metres{0}, line.points().front(), std::nullopt});
    cuts.push_back({number, line.length(), line.points().back(), std::nullopt});
    trails.push_back(std::move(way.as_trail));
  }
  return make_network(std::move(trails), network.stations, network.zones, network.marks, cuts);
}

}  // namespace rimehaul::trails
