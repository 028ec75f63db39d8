// How a trip is named: the stations and junctions that it leads past, and a trail with its
// direction.
#pragma once

#include <string>
#include <vector>

#include "day/trip.h"

namespace rimehaul::card {

/// The stations asked for, or every station and junction along the way that was given.
[[nodiscard]] std::vector<std::string> places_of(const day::Trip& trip,
                                                 const trails::Network& network);

/// "Noon Run, from Col Hut to Cable House"; " (one way)" behind it where the trail may be driven no
/// other; a ring by how its line is drawn. Requires a leg or more.
[[nodiscard]] std::string trail_and_direction(const search::FixedWay& way,
                                              const trails::Network& network);

}  // namespace rimehaul::card
