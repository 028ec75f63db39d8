#include "search/stops.h"

#include <string>

namespace rimehaul::search {

using trails::JunctionId;

std::variant<std::vector<JunctionId>, NoRoute> stops_of(const trails::Network& network,
                                                        const RouteQuestion& question) {
  if (question.stations.size() < 2) {
    return NoRoute{.why = "a route needs a station to start from and one to reach",
                   .obstacles = {}};
  }
  std::vector<JunctionId> stops;
  for (const std::size_t station : question.stations) {
    if (station >= network.stations.size()) {
      return NoRoute{
          .why = "there is no station number " + std::to_string(station) + " at this site",
          .obstacles = {}};
    }
    const std::string& name = network.stations[station].name;
    const std::optional<JunctionId> junction = network.junction_of(station);
    if (!junction.has_value()) {
      return NoRoute{.why = "no trail reaches " + name, .obstacles = {}};
    }
    if (!stops.empty() && stops.back() == *junction) {
      return NoRoute{.why = "the way to " + name + " starts where it ends", .obstacles = {}};
    }
    stops.push_back(*junction);
  }
  return stops;
}

}  // namespace rimehaul::search
