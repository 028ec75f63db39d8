// How a leg is driven: the speed the snow, the engine and the bends leave, its time and its fuel.
#include "passage/drive.h"

#include <cmath>
#include <limits>

namespace rimehaul::passage {

using units::LitresPerHour;
using units::Metres;
using units::MetresPerSecond;
using units::Newtons;

namespace {

constexpr double kSidewaysShareOfWeight = 0.1;
constexpr double kWattsPerKilowatt = 1000.0;

}  // namespace

Newtons pull_needed(const rig::Weighed& weighed, const snow::GripRow& grip, units::Slope grade) {
  const double along = 1.0 / std::hypot(1.0, grade.ratio());
  const double up = grade.ratio() * along;
  const Newtons drag = grip.carrier_resistance.high * units::weight_of(weighed.carrier.mass) +
                       grip.trailer_resistance.high * units::weight_of(weighed.trailer.mass);
  return drag * along + units::weight_of(weighed.total()) * up;
}

MetresPerSecond speed_of_power(const rig::Carrier& carrier, Newtons pull) {
  if (pull <= Newtons{0}) {
    return MetresPerSecond{std::numeric_limits<double>::infinity()};
  }
  return MetresPerSecond{carrier.engine_power.value() * carrier.driveline_efficiency /
                         pull.value()};
}

MetresPerSecond speed_of_bend(Metres radius) {
  return MetresPerSecond{std::sqrt(kSidewaysShareOfWeight * units::kGravity * radius.value())};
}

LitresPerHour fuel_rate(const rig::Carrier& carrier, Newtons pull, MetresPerSecond speed) {
  const units::Watts at_snow = pull * speed;
  const double crankshaft_kw = at_snow.value() / carrier.driveline_efficiency / kWattsPerKilowatt;
  const double grams_per_hour = crankshaft_kw * carrier.consumption.value();
  // A density in kilograms per cubic metre is the same number of grams per litre.
  const LitresPerHour working{grams_per_hour / carrier.fuel_density.value()};
  return working < carrier.idle_consumption ? carrier.idle_consumption : working;
}

Metres over_snow(Metres in_plan, units::Slope grade) {
  return in_plan * std::hypot(1.0, grade.ratio());
}

}  // namespace rimehaul::passage
