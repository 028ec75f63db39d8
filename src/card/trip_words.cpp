#include "card/trip_words.h"

#include "base/require.h"
#include "card/notices.h"

namespace rimehaul::card {

std::vector<std::string> places_of(const day::Trip& trip, const trails::Network& network) {
  std::vector<std::string> places;
  if (const auto* stops = std::get_if<day::Stops>(&trip)) {
    for (const std::size_t station : stops->stations) {
      places.push_back(network.stations[station].name);
    }
    return places;
  }
  for (const trails::LegId id : std::get<search::FixedWay>(trip).legs) {
    const trails::Leg& leg = network.legs[static_cast<std::size_t>(id)];
    if (places.empty()) {
      places.push_back(name_of(network, leg.from));
    }
    places.push_back(name_of(network, leg.to));
  }
  return places;
}

std::string trail_and_direction(const search::FixedWay& way, const trails::Network& network) {
  base::require(!way.legs.empty(), "a way has no legs");
  const trails::Leg& first = network.legs[static_cast<std::size_t>(way.legs.front())];
  const trails::Leg& last = network.legs[static_cast<std::size_t>(way.legs.back())];
  const trails::Trail& trail = network.trails[first.trail];
  const std::string from = name_of(network, first.from);
  std::string words = trail.name + ", from " + from;
  if (first.from == last.to) {
    words += first.way == trails::Way::as_drawn ? " round as drawn" : " round against the drawing";
  } else {
    words += " to " + name_of(network, last.to);
  }
  const bool one_way = trail.direction && *trail.direction != trails::AllowedDirection::both;
  return words + (one_way ? " (one way)" : "");
}

}  // namespace rimehaul::card
