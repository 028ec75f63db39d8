#include "passage/weighing.h"

namespace rimehaul::passage {

namespace {

WeighedOut weighing_of(const snow::GripLaw& law, const rig::Rig& rig, Tank tank) {
  const rig::Weighed weighed = rig::weigh(rig);
  WeighedOut weighing{tank, weighed, GripTable{law, rig, weighed}};
  // What the hitch carries presses the tracks down too.
  rig::Weighed laden = weighed;
  laden.carrier.mass = laden.carrier.mass + laden.tongue_mass;
  weighing.grip.sinks_no_less_than(GripTable{law, rig, laden});
  return weighing;
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
