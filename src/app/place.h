// A place that was asked for: on a trail, or anywhere on the map.
#pragma once

#include "app/options.h"
#include "card/explanation.h"
#include "trails/network.h"

namespace rimehaul::app {

// Each throws WrongUsage that says which option would tell what is missing.

/// A point stands for the nearest place of a trail within 100 m.
[[nodiscard]] card::TrailPlace place_on_trail(const trails::Network& network,
                                              const PlaceOptions& options);

/// Where it is on the map; a point is taken as it is.
struct MapPlace {
  geo::MapPoint at;
  std::optional<card::TrailPlace> on_trail;  ///< nothing: given as a point
};
[[nodiscard]] MapPlace place_on_map(const trails::Network& network, const PlaceOptions& options);

}  // namespace rimehaul::app
