// The list of checks: each one reason a rig might be unsafe at a place.
#pragma once

#include <string_view>

#include "rig/rig.h"

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
  order,
  zone,
  mark,
};
inline constexpr int kCheckCount = 40;

/// What a check is, for explaining it. All text is constant.
struct CheckFacts {
  std::string_view key;      ///< as in JSON, "climb_traction"
  std::string_view title;    ///< as on cards, "climb traction"
  std::string_view formula;  ///< demand and capacity in the symbols of its page
  std::string_view source;   ///< author, year, number; or "site rule"; or "estimate"
  std::string_view page;     ///< "docs/checks/climb-traction.md"
  std::string_view solo{};   ///< the formula where nothing is towed; empty: the same
};

[[nodiscard]] const CheckFacts& facts_of(Check check);

/// The formula of a check for a rig with a trailer, or without: what is held against what, then how
/// symbols come about that are no inputs. along(G) = G / sqrt(1 + G^2); |x| is the size of x; what
/// stands side by side is multiplied.
enum class Towing { no, yes };
[[nodiscard]] Towing towing_of(const rig::Rig& rig);
[[nodiscard]] std::string_view formula_of(Check check, Towing towing);
/// Whether what a check does not know is mostly something of the day, which a report or an option
/// can still tell: weather, the bulletin, the status of marks, grooming, help.
[[nodiscard]] bool is_of_the_day(Check check);

}  // namespace rimehaul::passage
