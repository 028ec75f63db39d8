// The grip of every snow state for one rig, looked up once: a leg asks thousands of times.
#include "passage/grip_table.h"

namespace rimehaul::passage {

namespace {

std::size_t index_of(snow::SnowState state) {
  return static_cast<std::size_t>(state.wetness) * snow::kSurfaceCount +
         static_cast<std::size_t>(state.surface);
}

}  // namespace

GripTable::GripTable(const snow::GripLaw& law, const rig::Rig& rig, const rig::Weighed& weighed) {
  const units::Newtons on_tracks =
      units::weight_of(weighed.carrier.mass) * rig.carrier.track_weight_share;
  const units::Kilopascals pressure = on_tracks / rig.carrier.contact_area;
  for (int wetness = 0; wetness < snow::kWetnessCount; ++wetness) {
    for (int surface = 0; surface < snow::kSurfaceCount; ++surface) {
      const snow::SnowState state{static_cast<snow::Wetness>(wetness),
                                  static_cast<snow::Surface>(surface)};
      rows_.at(index_of(state)) = law.row(state, pressure);
    }
  }
}

const std::optional<snow::GripRow>& GripTable::row(snow::SnowState state) const {
  return rows_.at(index_of(state));
}

}  // namespace rimehaul::passage
