// What lies outside a command: where it prints, what time it is, and who walks a route again.
#pragma once

#include <iosfwd>
#include <string>

#include "audit/rewalk.h"
#include "units/clock.h"

namespace rimehaul::app {

struct Outside {
  std::ostream& out;  ///< answers
  std::ostream& err;  ///< faults
  units::Instant now;
  audit::WalkAgain rewalk = audit::rewalk;
  bool err_is_terminal = false;  ///< whether a person watches faults and progress come
  bool out_takes_colour = false;
  std::string account = "unknown";  ///< of the machine, for the log
};

}  // namespace rimehaul::app
