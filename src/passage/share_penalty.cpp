#include "passage/share_penalty.h"

#include <limits>

namespace rimehaul::passage {

// A share and what it is held against, as in the formula.
// NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
double share_penalty(double share, double allowed) {
  if (0.0 <= share && share <= allowed && 0.0 < allowed) {
    const double part = share / allowed;
    return 1.0 / (1.0 - part * part / 2.0);
  }
  return std::numeric_limits<double>::infinity();
}

}  // namespace rimehaul::passage
