#include "day/trip.h"

#include <optional>

namespace rimehaul::day {

using search::FixedWay;
using trails::AllowedDirection;

namespace {

bool may_go(trails::Way way, std::optional<AllowedDirection> allowed) {
  const auto against =
      way == trails::Way::as_drawn ? AllowedDirection::backward : AllowedDirection::forward;
  return allowed != against;
}

}  // namespace

Trip back_of(const Trip& trip) {
  if (const auto* way = std::get_if<FixedWay>(&trip)) {
    return search::back_along(*way);
  }
  const std::vector<std::size_t>& stations = std::get<Stops>(trip).stations;
  return Stops{{stations.rbegin(), stations.rend()}};
}

std::vector<Stops> all_pairs(const trails::Network& network) {
  std::vector<std::optional<trails::JunctionId>> at;
  for (std::size_t station = 0; station < network.stations.size(); ++station) {
    at.push_back(network.junction_of(station));
  }
  std::vector<Stops> pairs;
  for (std::size_t from = 0; from < at.size(); ++from) {
    for (std::size_t to = 0; to < at.size(); ++to) {
      if (at[from].has_value() && at[to].has_value() && at[from] != at[to]) {
        pairs.push_back({{from, to}});
      }
    }
  }
  return pairs;
}

std::vector<FixedWay> marked_trails(const trails::Network& network) {
  std::vector<FixedWay> ways;
  for (std::size_t trail = 0; trail < network.trails.size(); ++trail) {
    for (const trails::Way way : {trails::Way::as_drawn, trails::Way::against}) {
      if (network.trails[trail].marked && may_go(way, network.trails[trail].direction)) {
        ways.push_back({trails::legs_along(network, trail, way)});
      }
    }
  }
  return ways;
}

}  // namespace rimehaul::day
