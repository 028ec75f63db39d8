// A card's route as a GPX file.
#pragma once

#include <string>

#include "card/route_card.h"

namespace rimehaul::app {

/// The card's legs as waypoints of a route and its line as a track, brought to the globe. The
/// description states the vertical datum, which GPX itself cannot.
[[nodiscard]] std::string route_gpx(const card::RouteCard& card, const geo::MapFrame& frame);

}  // namespace rimehaul::app
