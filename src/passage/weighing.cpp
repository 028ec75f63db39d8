#include "passage/weighing.h"

namespace rimehaul::passage {

namespace {

WeighedOut weighing_of(const snow::GripLaw& law, const rig::Rig& rig, Tank tank) {
  const rig::Weighed weighed = rig::weigh(rig);
  return {tank, weighed, GripTable{law, rig, weighed}};
}

}  // namespace

std::vector<WeighedOut> weighings_of(const snow::GripLaw& law, const rig::Rig& rig) {
  std::vector<WeighedOut> weighings{weighing_of(law, rig, Tank::as_loaded)};
  if (rig.load.fuel > units::Litres{0}) {
    rig::Rig dry = rig;
    dry.load.fuel = units::Litres{0};
    weighings.push_back(weighing_of(law, dry, Tank::empty));
    weighings.back().grip.sinks_no_less_than(weighings.front().grip);
  }
  return weighings;
}

}  // namespace rimehaul::passage
