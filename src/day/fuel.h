// How much fuel a way may take.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "passage/judge.h"
#include "passage/rules.h"
#include "rig/rig.h"
#include "search/route.h"

namespace rimehaul::day {

/// What is aboard above the site's reserve. A way that needs more is not driven.
[[nodiscard]] units::Litres fuel_to_spare(const rig::Rig& rig, const passage::Rules& rules);

/// Fuel of the best way back from the end of a route to its start: the same rig, load and
/// permission, leaving when it arrives. Nothing: no way back is open then.
[[nodiscard]] std::optional<units::Litres> fuel_back(const search::Route& route,
                                                     const passage::Judge& judge,
                                                     const search::RouteQuestion& question);

/// Names of the stations on a route, its ends included, at which a rig is refuelled; in driving
/// order, each once.
[[nodiscard]] std::vector<std::string> fuel_stations_on(const search::Route& route,
                                                        const trails::Network& network);

}  // namespace rimehaul::day
