// All ground checks of one footing, in the order of Check.
#include "passage/forces.h"

namespace rimehaul::passage {

std::vector<Finding> judge_ground(const Footing& footing) {
  constexpr std::size_t kMost = 14;
  const bool towing = footing.rig.trailer.has_value();
  const Statics statics = statics_of(footing);
  std::vector<Finding> findings;
  findings.reserve(kMost);
  findings.push_back(judge_climb_rating(footing));
  findings.push_back(judge_descent_rating(footing));
  findings.push_back(judge_cross_rating(footing));
  if (towing) {
    findings.push_back(judge_trailer_rating(footing));
  }
  findings.push_back(judge_climb_traction(statics));
  findings.push_back(judge_engine_power(statics));
  findings.push_back(judge_descent_hold(statics));
  findings.push_back(judge_parking_hold(statics));
  findings.push_back(judge_carrier_roll_over(statics));
  if (towing) {
    findings.push_back(judge_trailer_roll_over(statics));
  }
  findings.push_back(judge_carrier_side_slip(statics));
  if (towing) {
    findings.push_back(judge_trailer_side_slip(statics));
    findings.push_back(judge_jackknife(statics));
    findings.push_back(judge_hitch_vertical(statics));
  }
  return findings;
}

}  // namespace rimehaul::passage
