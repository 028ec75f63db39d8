// The list of checks: each one reason a rig might be unsafe at a place.
#pragma once

#include <string_view>

namespace rimehaul::passage {

enum class Check {
  heights_known,     ///< the ground under the rig is known
  snow_known,        ///< somebody has said what the snow is like
  trail_attributes,  ///< everything that bears on safety was said of the trail
  climb_rating,
  descent_rating,
  cross_rating,
  trailer_rating,
  climb_traction,
  engine_power,
  descent_hold,
  parking_hold,
  stopping,
  carrier_roll_over,
  trailer_roll_over,
  carrier_side_slip,
  trailer_side_slip,
  jackknife,
  hitch_vertical,
  towed_mass,
  payload,
  trailer_payload,
  seats,
  turning,
  off_tracking,
  avalanche,
  visibility,
  direction,
  hours,
  driver_level,
  passengers,
  alone,
  towing_in_wet_snow,
  wind,
  rain,
  grooming,
  single_lane,
  tow_out,
  zone,
  mark,
};
inline constexpr int kCheckCount = 39;

/// What a check is, for explaining it. All text is constant.
struct CheckFacts {
  std::string_view key;      ///< as in JSON, "climb_traction"
  std::string_view title;    ///< as on cards, "climb traction"
  std::string_view formula;  ///< demand and capacity in the symbols of its page
  std::string_view source;   ///< author, year, number; or "site rule"; or "estimate"
  std::string_view page;     ///< "docs/checks/climb-traction.md"
};

[[nodiscard]] const CheckFacts& facts_of(Check check);

}  // namespace rimehaul::passage
