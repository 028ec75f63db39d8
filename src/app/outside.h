// What lies outside a command: where it prints, what time it is, and who walks a route again.
#pragma once

#include <iosfwd>
#include <vector>

#include "audit/rewalk.h"
#include "units/clock.h"

namespace rimehaul::app {

/// The re-walk; a test puts one in its place that finds fault.
using Rewalker = audit::Rewalk (*)(const passage::Scene& scene, const rig::Rig& rig,
                                   const snow::SnowAt& snow,
                                   const std::vector<audit::PromisedLeg>& promise);

struct Outside {
  std::ostream& out;  ///< answers
  std::ostream& err;  ///< faults
  units::Instant now;
  Rewalker rewalk = audit::rewalk;
  bool err_is_terminal = false;  ///< whether a person watches faults and progress come
};

}  // namespace rimehaul::app
