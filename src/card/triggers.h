// When to turn back: the reasons of one route, with its own numbers.
#pragma once

#include <string>
#include <vector>

#include "card/route_card.h"

namespace rimehaul::card {

/// Turn-back triggers of a route, the ones with numbers first.
[[nodiscard]] std::vector<std::string> turn_back_triggers(const search::Route& route,
                                                          const CardContext& context);

/// Least visibility that the route was judged to need: enough trail markers, and the sight that
/// stopping was reckoned with as far as today's visibility gives it.
[[nodiscard]] units::Metres least_visibility(const search::Route& route,
                                             const CardContext& context);

/// Every snow state met on the route, sorted, each once.
[[nodiscard]] std::vector<snow::SnowState> snow_on(const search::Route& route);

/// Fuel that must stay in the tank.
[[nodiscard]] units::Litres fuel_reserve(const CardContext& context);
/// What is wrong or short about the fuel; empty when there is enough to go and come back.
[[nodiscard]] std::vector<std::string> fuel_warnings(const search::Route& route,
                                                     const CardContext& context);

}  // namespace rimehaul::card
