// How a leg is driven: the speed the snow, the engine and the bends leave, its time and its fuel.
#pragma once

#include "rig/rig.h"
#include "snow/grip.h"
#include "units/quantities.h"
#include "units/slope.h"

namespace rimehaul::passage {

/// Force that holds a rig back on a grade, along the snow: R cos(theta) + W sin(theta), carrier and
/// trailer each with the high side of their own motion resistance. Below 0: the hill drives.
[[nodiscard]] units::Newtons pull_needed(const rig::Weighed& weighed, const snow::GripRow& grip,
                                         units::Slope grade);

/// Speed at which the engine's power at the snow just gives that pull; infinite when no pull is
/// needed, NaN when anything is unknown.
[[nodiscard]] units::MetresPerSecond speed_of_power(const rig::Carrier& carrier,
                                                    units::Newtons pull);

/// Speed at which a bend asks a tenth of the weight sideways, v^2 = 0.1 g R: an estimate, far below
/// what tips a rig over on level ground, so that bends leave the cross-slope checks their reserve.
[[nodiscard]] units::MetresPerSecond speed_of_bend(units::Metres radius);

/// Fuel burnt in an hour of such a pull at such a speed, never less than idle; no recovery
/// downhill. Power at the crankshaft = pull x speed / driveline efficiency; grams = power x
/// consumption.
[[nodiscard]] units::LitresPerHour fuel_rate(const rig::Carrier& carrier, units::Newtons pull,
                                             units::MetresPerSecond speed);

/// A length in plan, as driven over the snow of a grade.
[[nodiscard]] units::Metres over_snow(units::Metres in_plan, units::Slope grade);

}  // namespace rimehaul::passage
