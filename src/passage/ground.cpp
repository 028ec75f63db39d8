// All ground checks of one footing, in the order of Check.
#include "passage/footing.h"

namespace rimehaul::passage {

std::vector<Finding> judge_ground(const Footing& footing) {
  constexpr std::size_t kMost = 14;
  const bool towing = footing.rig.trailer.has_value();
  std::vector<Finding> findings;
  findings.reserve(kMost);
  findings.push_back(judge_climb_rating(footing));
  findings.push_back(judge_descent_rating(footing));
  findings.push_back(judge_cross_rating(footing));
  if (towing) {
    findings.push_back(judge_trailer_rating(footing));
  }
  findings.push_back(judge_climb_traction(footing));
  findings.push_back(judge_engine_power(footing));
  findings.push_back(judge_descent_hold(footing));
  findings.push_back(judge_parking_hold(footing));
  findings.push_back(judge_carrier_roll_over(footing));
  if (towing) {
    findings.push_back(judge_trailer_roll_over(footing));
  }
  findings.push_back(judge_carrier_side_slip(footing));
  if (towing) {
    findings.push_back(judge_trailer_side_slip(footing));
    findings.push_back(judge_jackknife(footing));
    findings.push_back(judge_hitch_vertical(footing));
  }
  return findings;
}

}  // namespace rimehaul::passage
