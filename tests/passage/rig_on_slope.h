// A rig stood on a slope for the tests of the ground checks: every number within reach.
#pragma once

#include <limits>
#include <string_view>

#include "passage/footing.h"

namespace rimehaul::testing {

inline constexpr double kNoNumber = std::numeric_limits<double>::quiet_NaN();

/// A box that holds one attitude only.
inline terrain::AttitudeBox exactly(double grade, double cross) {
  using units::Slope;
  return {Slope::from_ratio(grade), Slope::from_ratio(grade), Slope::from_ratio(cross),
          Slope::from_ratio(cross)};
}

/// Everything a footing refers to. Weights are set by themselves, not weighed out of the sheets.
struct RigOnSlope {
  rig::Rig rig;
  rig::Weighed weighed;
  snow::GripRow grip;
  passage::Rules rules;
  terrain::AttitudeBox carrier = exactly(0.0, 0.0);
  terrain::AttitudeBox trailer = exactly(0.0, 0.0);

  [[nodiscard]] passage::Footing footing() const {
    return {rig, weighed, grip, rules, carrier, trailer};
  }
  /// Both boxes hold this one attitude, grade and cross-slope by their tangents.
  RigOnSlope& on(double grade, double cross) {
    carrier = exactly(grade, cross);
    trailer = carrier;
    return *this;
  }
  RigOnSlope& on_degrees(double grade_deg, double cross_deg) {
    return on(units::Slope::from_degrees(grade_deg).ratio(),
              units::Slope::from_degrees(cross_deg).ratio());
  }
  RigOnSlope& without_trailer() {
    rig.trailer.reset();
    weighed.trailer = {};
    weighed.tongue_mass = {};
    return *this;
  }
};

inline rig::SlopeRatings ratings_of(double climb_deg, double descent_deg, double cross_deg) {
  const auto rating = [](double degrees) {
    return rig::Rating{units::Slope::from_degrees(degrees), {rig::Standing::maker, "manual"}};
  };
  return {rating(climb_deg), rating(descent_deg), rating(cross_deg)};
}

inline rig::Trailer sled() {
  using units::Metres;
  rig::Trailer trailer;
  trailer.name = "Sled";
  trailer.gauge = Metres{1.0};
  trailer.contact_length = Metres{1.6};
  trailer.drawbar_length = Metres{2.0};
  trailer.overall_width = Metres{1.2};
  trailer.payload_rating = units::Kilograms{350};
  trailer.tongue_share = 0.1;
  return trailer;
}

/// Carrier of 700 kg and trailer of 400 kg, 40 of them on the hitch.
inline RigOnSlope loaded_rig() {
  using units::ForceRatio;
  using units::Kilograms;
  using units::Metres;
  RigOnSlope stand;
  rig::Carrier& carrier = stand.rig.carrier;
  carrier.name = "Carrier";
  carrier.support = {{Metres{0}, Metres{-0.6}},
                     {Metres{1.4}, Metres{-0.6}},
                     {Metres{1.4}, Metres{0.6}},
                     {Metres{0}, Metres{0.6}}};
  carrier.contact_length = Metres{1.4};
  carrier.gauge = Metres{1.2};
  carrier.overall_length = Metres{2.8};
  carrier.overall_width = Metres{1.3};
  carrier.turning_radius = Metres{3.0};
  carrier.hitch_at = {Metres{-0.2}, Metres{0}, Metres{0.4}};
  carrier.hitch_vertical_rating = Kilograms{120};
  carrier.towed_mass_rating = Kilograms{600};
  carrier.payload_rating = Kilograms{300};
  carrier.bed_rating = Kilograms{200};
  carrier.seats.resize(2);
  carrier.solo_empty = ratings_of(30, 30, 20);
  carrier.solo_loaded = ratings_of(25, 25, 17);
  carrier.towing = ratings_of(20, 18, 14);
  carrier.engine_power = units::Watts{40'000};
  carrier.driveline_efficiency = 0.65;
  carrier.brake_force = units::Newtons{6'000};
  carrier.parking_brake_force = units::Newtons{5'000};
  carrier.top_speed = units::MetresPerSecond{8.0};
  stand.rig.trailer = sled();
  stand.weighed = {.carrier = {Kilograms{700}, {Metres{0.7}, Metres{0}, Metres{0.7}}},
                   .trailer = {Kilograms{400}, {Metres{1.0}, Metres{0}, Metres{0.5}}},
                   .tongue_mass = Kilograms{40},
                   .payload = Kilograms{200}};
  stand.grip = {.traction = ForceRatio{0.45},
                .brake = ForceRatio{0.35},
                .lateral = ForceRatio{0.40},
                .trailer_lateral = ForceRatio{0.30},
                .carrier_resistance = {ForceRatio{0.05}, ForceRatio{0.05}},
                .trailer_resistance = {ForceRatio{0.06}, ForceRatio{0.06}},
                .trailer_start = ForceRatio{0.06},
                .standing = snow::GripStanding::estimate,
                .source = "test"};
  return stand;
}

/// The same with hitch and trailer's weight on the snow, so that no load shifts to or off the
/// hitch: what the closed forms of the worked examples assume.
inline RigOnSlope rig_without_shift() {
  RigOnSlope stand = loaded_rig();
  constexpr double kOnTheSnow = 1e-12;
  stand.rig.carrier.hitch_at.up = units::Metres{kOnTheSnow};
  stand.weighed.trailer.centre.up = units::Metres{kOnTheSnow};
  stand.weighed.tongue_mass = units::Kilograms{0};
  return stand;
}

/// An input of a finding by its symbol; NaN when it has none of that name.
inline double input_of(const passage::Finding& finding, std::string_view name) {
  for (const passage::Input& input : finding.inputs.all()) {
    if (input.name == name) {
      return input.value.value;
    }
  }
  return kNoNumber;
}

/// The share, NaN when there is none, so that every comparison with it fails.
inline double share_of(const passage::Finding& finding) {
  return finding.share.value_or(kNoNumber);
}

}  // namespace rimehaul::testing
