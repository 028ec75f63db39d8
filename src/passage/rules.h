// The site's rules: what the planner and the officer have laid down, with cautious defaults.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "passage/order.h"
#include "rig/provenance.h"
#include "snow/grip.h"
#include "trails/trail.h"
#include "units/local_clock.h"
#include "units/quantities.h"
#include "units/slope.h"

namespace rimehaul::passage {

/// What the site does at one level of the avalanche bulletin with legs near steep ground.
struct BulletinStep {
  units::Metres keep_off;            ///< least distance in plan from ground that may release
  bool decision_may_permit = false;  ///< nearer than that: a named person's decision, else closed
  bool all_closed = false;           ///< nothing is driven at this level

  friend bool operator==(const BulletinStep&, const BulletinStep&) = default;
};

/// A level of driver and what it may do.
struct DriverLevel {
  std::string name;
  double allowed_share = 0.7;  ///< never above the site's
  bool may_tow = true;
  bool may_carry_passengers = false;
  snow::Wetness wettest_towing = snow::Wetness::wet;
  std::optional<trails::OpenHours> hours{};  ///< of the day; nothing: at any hour

  friend bool operator==(const DriverLevel&, const DriverLevel&) = default;
};

/// Who may ride beside the driver.
struct PassengerRule {
  bool with_trailer = false;                   ///< whether anybody rides while towing
  snow::Wetness wettest = snow::Wetness::wet;  ///< wettest snow with passengers
  std::vector<std::string> who;                ///< in the site's own words, for cards

  friend bool operator==(const PassengerRule&, const PassengerRule&) = default;
};

/// What one rig may do with nobody trained in a second one or beside its driver.
struct AloneRule {
  bool allowed = true;
  units::Metres longest_dead_zone{0};  ///< longest stretch without radio

  friend bool operator==(const AloneRule&, const AloneRule&) = default;
};

/// The rig that tows others out.
struct TowOutRule {
  std::string rig;             ///< a rig of the rig sheets; empty: the site names none
  bool must_be_ready = false;  ///< nothing is driven unless today's report says it stands ready
};

struct Rules {
  double allowed_share = 0.7;            ///< (0, 1]
  double confidence_k = 1.645;           ///< 95 %, one-sided
  double roll_over_reserve = 0.6;        ///< of the static tip angle; estimate
  units::Metres low_side_sinkage{0.05};  ///< the low side sinks so much deeper; estimate
  /// Tangent of the angle that carrier and trailer may stand at when the brake is used: 30 degrees;
  /// estimate.
  units::Slope articulation = units::Slope::from_ratio(0.57735026918962584);
  units::Seconds reaction{2.0};  ///< estimate
  units::MetresPerSecond walking_pace{1.0};
  units::Metres sight{30.0};   ///< where a trail says nothing else
  units::Metres setback{3.0};  ///< least from the rig's side to a drop beside the trail
  /// The same to a cornice, which breaks farther back than it hangs over; estimate.
  units::Metres cornice_setback{10.0};
  double markers_in_sight = 2.0;  ///< visibility in marker spacings, at least
  std::optional<units::MetresPerSecond> most_wind;
  bool closed_in_rain = true;
  std::optional<units::Seconds> grooming_set;        ///< that groomed snow sets before it is driven
  std::optional<units::Metres> longest_single_lane;  ///< both ways, nowhere to pass, no radio gate
  snow::Wetness wettest_creek_bridge = snow::Wetness::dry;
  PassengerRule passengers;
  AloneRule alone;
  units::Metres strap_check{500};  ///< after so far the load's straps are looked at again; estimate
  std::string control;             ///< whom to call and how; empty: not said
  units::Seconds overdue{1800};    ///< after so long past the arrival a rig is looked for; estimate
  TowOutRule tow_out;
  units::Kilograms passenger_mass{90};
  double fuel_reserve = 1.0 / 3.0;  ///< of the tank, kept for the unexpected
  units::Slope start_slope_dry = units::Slope::from_percent(0);  ///< set by default_rules()
  units::Slope start_slope_wet = units::Slope::from_percent(0);  ///< set by default_rules()
  std::array<BulletinStep, 5> bulletin{};
  snow::Wetness wettest_towing = snow::Wetness::very_wet;  ///< slush with a trailer is closed
  std::vector<DriverLevel> driver_levels;
  snow::GripLaw grip;
  units::LocalClock local_clock{};  ///< of the site's local time
  units::Metres piece_length{5.0};  ///< greatest length of a judged piece
  Orders orders;
  /// Keys that the site's own rules say ("setback_m", "passengers.wettest"): no estimates, also
  /// where they say what the defaults do.
  std::vector<std::string> said;
};

/// The defaults, all cautious; those without a source are marked "estimate" where shown.
[[nodiscard]] Rules default_rules();

/// No more than this share is allowed any more, of the site and of every driver's level.
void lower_allowed_share(Rules& rules, double share);

/// The allowed share for a driver's level: the lower of the site's and the level's; nothing when
/// the level is not in the rules.
[[nodiscard]] std::optional<double> allowed_share_for(const Rules& rules,
                                                      const std::string& driver_level);

}  // namespace rimehaul::passage
