// Walking a way again, counted, or finding it worse than promised whatever it is.
#pragma once

#include <vector>

#include "audit/rewalk.h"

namespace rimehaul::testing {

inline std::size_t walks = 0;  ///< how often a way was walked again

inline audit::Rewalk counted(const passage::Scene& scene, const rig::Rig& rig,
                             const snow::SnowAt& snow,
                             const std::vector<audit::PromisedLeg>& promise) {
  ++walks;
  return audit::rewalk(scene, rig, snow, promise);
}

inline audit::Rewalk finds_fault(const passage::Scene& /*scene*/, const rig::Rig& /*rig*/,
                                 const snow::SnowAt& /*snow*/,
                                 const std::vector<audit::PromisedLeg>& /*promise*/) {
  return {.discrepancies = {{0, "climb traction comes to 0.8, promised 0.6"}},
          .worst_share = 0.8,
          .places_judged = 10};
}

}  // namespace rimehaul::testing
