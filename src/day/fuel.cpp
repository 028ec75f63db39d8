#include "day/fuel.h"

#include <algorithm>
#include <variant>

namespace rimehaul::day {

units::Litres fuel_to_spare(const rig::Rig& rig, const passage::Rules& rules) {
  return rig.load.fuel - rig.carrier.tank * rules.fuel_reserve;
}

std::optional<units::Litres> fuel_back(const search::Route& route, const passage::Judge& judge,
                                       const search::RouteQuestion& question) {
  search::RouteQuestion back = question;
  back.stations = {question.stations.back(), question.stations.front()};
  back.depart = units::after(question.depart, route.time);
  back.most_alternatives = 0;
  const search::RouteAnswer answer = search::find_routes(judge.scene().network, judge, back);
  const auto* ways = std::get_if<std::vector<search::Route>>(&answer);
  return ways == nullptr ? std::nullopt : std::optional{ways->front().fuel};
}

std::vector<std::string> fuel_stations_on(const search::Route& route,
                                          const trails::Network& network) {
  std::vector<std::string> names;
  const auto add = [&](trails::JunctionId at) {
    const auto& station = network.junctions[static_cast<std::size_t>(at)].station;
    if (!station || network.stations[*station].kind != trails::StationKind::fuel) {
      return;
    }
    const std::string& name = network.stations[*station].name;
    if (std::ranges::find(names, name) == names.end()) {
      names.push_back(name);
    }
  };
  for (const search::RouteLeg& part : route.legs) {
    const trails::Leg& leg = network.legs[static_cast<std::size_t>(part.leg)];
    add(leg.from);
    add(leg.to);
  }
  return names;
}

}  // namespace rimehaul::day
