// Rigs thrown by dice on ground thrown by dice, for what must hold of all of them.
#pragma once

#include <algorithm>
#include <random>

#include "rig_on_slope.h"

namespace rimehaul::testing {

/// A number from a range.
class Dice {
 public:
  explicit Dice(unsigned seed) : engine_{seed} {}

  double between(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(engine_);
  }
  terrain::AttitudeBox box(double steepest) {
    const auto [grade_low, grade_high] = std::minmax({side(steepest), side(steepest)});
    const auto [cross_low, cross_high] = std::minmax({side(steepest), side(steepest)});
    using units::Slope;
    return {Slope::from_ratio(grade_low), Slope::from_ratio(grade_high),
            Slope::from_ratio(cross_low), Slope::from_ratio(cross_high)};
  }

 private:
  double side(double steepest) { return between(-steepest, steepest); }

  std::mt19937 engine_;
};

inline RigOnSlope any_rig(Dice& dice, double steepest) {
  using units::ForceRatio;
  using units::Kilograms;
  using units::Metres;
  RigOnSlope stand = loaded_rig();
  rig::Carrier& carrier = stand.rig.carrier;
  carrier.track_weight_share = dice.between(0.6, 1.0);
  carrier.hitch_at = {Metres{dice.between(-0.5, 0.1)}, Metres{dice.between(-0.2, 0.2)},
                      Metres{dice.between(0.2, 0.6)}};
  carrier.brake_force = units::Newtons{dice.between(500, 6'000)};
  const rig::Rating rated{units::Slope::from_degrees(15), {rig::Standing::maker, "manual"}};
  stand.rig.trailer->climb = rated;
  stand.rig.trailer->descent = rated;
  stand.rig.trailer->cross = rated;
  stand.rig.trailer->drawbar_length = Metres{dice.between(1.0, 3.0)};
  rig::Weighed& weighed = stand.weighed;
  weighed.carrier = {Kilograms{dice.between(400, 900)},
                     {Metres{dice.between(0.4, 1.0)}, Metres{dice.between(-0.1, 0.1)},
                      Metres{dice.between(0.4, 1.1)}}};
  weighed.trailer = {Kilograms{dice.between(50, 500)},
                     {Metres{dice.between(0.6, 1.2)}, Metres{dice.between(-0.1, 0.1)},
                      Metres{dice.between(0.2, 0.9)}}};
  weighed.tongue_mass = weighed.trailer.mass * dice.between(0.0, 0.2);
  snow::GripRow& grip = stand.grip;
  grip.traction = ForceRatio{dice.between(0.2, 0.6)};
  grip.brake = ForceRatio{dice.between(0.2, 0.5)};
  grip.lateral = ForceRatio{dice.between(0.3, 0.7)};
  grip.trailer_lateral = ForceRatio{dice.between(0.2, 0.5)};
  grip.carrier_resistance.high = ForceRatio{dice.between(0.02, 0.2)};
  grip.trailer_resistance = {ForceRatio{dice.between(0.01, 0.06)},
                             ForceRatio{dice.between(0.06, 0.12)}};
  grip.trailer_start = ForceRatio{dice.between(0.05, 0.15)};
  stand.carrier = dice.box(steepest);
  stand.trailer = dice.box(steepest);
  return stand;
}

}  // namespace rimehaul::testing
