// A site's standing routes: driven day after day under one name.
#pragma once

#include <string>
#include <vector>

#include "units/quantities.h"

namespace rimehaul::day {

/// Names are those of the site's stations and rigs.
struct NamedRoute {
  std::string name;
  std::vector<std::string> stations;  ///< in driving order, two or more
  std::string rig;                    ///< that usually drives it
  units::Kilograms bed{0};            ///< that it usually carries
  units::Kilograms towed{0};
  int passengers = 0;
  bool accompanied = false;
};

}  // namespace rimehaul::day
