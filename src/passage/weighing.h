// The rig weighed out with the tank as loaded and with it empty, and the grip its weight leaves it.
#pragma once

#include <vector>

#include "passage/finding.h"
#include "passage/grip_table.h"

namespace rimehaul::passage {

struct WeighedOut {
  Tank tank = Tank::as_loaded;
  rig::Weighed weighed;
  GripTable grip;
};

/// As loaded first; then with the tank empty, if fuel is aboard. Fuel burns as the rig drives, and
/// a card is used with less aboard than it was made for. Shares are made of terms linear in the
/// masses over others linear in them, so none in between is larger than the larger of both;
/// sinkage, which is not linear, is that of the full tank in both.
[[nodiscard]] std::vector<WeighedOut> weighings_of(const snow::GripLaw& law, const rig::Rig& rig);

}  // namespace rimehaul::passage
