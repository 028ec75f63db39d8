#include "day/fuel.h"

namespace rimehaul::day {

units::Litres fuel_to_spare(const rig::Rig& rig, const passage::Rules& rules) {
  return rig.load.fuel - rig.carrier.tank * rules.fuel_reserve;
}

}  // namespace rimehaul::day
