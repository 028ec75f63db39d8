// Names that one file of a site uses for what another holds: each must be there.
#pragma once

#include <string>
#include <vector>

#include "base/fault.h"
#include "day/named_route.h"
#include "day/round.h"
#include "passage/scene.h"
#include "rig/rig.h"
#include "snow/snow.h"

namespace rimehaul::app {

/// One fault for every mark and trail that a snow report (`file`, as shown) speaks of and that the
/// site does not have: a status under a wrong name would leave its mark as nobody meant it.
[[nodiscard]] std::vector<base::Fault> unknown_names(const snow::SnowReport& report,
                                                     const std::string& file,
                                                     const trails::Network& network);

/// The tow-out rig of the rules is among the rig sheets.
[[nodiscard]] std::vector<base::Fault> unknown_names(const passage::Rules& rules,
                                                     const std::string& file,
                                                     const std::vector<rig::Rig>& rigs);

/// What named routes may name.
struct RouteNames {
  const trails::Network& network;
  const std::vector<rig::Rig>& rigs;
};
/// Stations and rigs of the named routes are there.
[[nodiscard]] std::vector<base::Fault> unknown_names(const std::vector<day::NamedRoute>& routes,
                                                     const std::string& file,
                                                     const RouteNames& names);

/// Stations of a round of errands are there.
[[nodiscard]] std::vector<base::Fault> unknown_names(const day::Round& round,
                                                     const std::string& file,
                                                     const trails::Network& network);

}  // namespace rimehaul::app
