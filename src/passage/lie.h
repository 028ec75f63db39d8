// How the ground under one body may lie: as found, and with its error counted.
#pragma once

#include "terrain/attitude.h"

namespace rimehaul::passage {

/// How the ground may lie one body: as found, and with the error counted.
struct Lie {
  terrain::AttitudeBox found;
  terrain::AttitudeBox up_to;
};

}  // namespace rimehaul::passage
