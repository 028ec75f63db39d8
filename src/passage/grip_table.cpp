// The grip of every snow state for one rig, looked up once: a leg asks thousands of times.
#include "passage/grip_table.h"

#include <cmath>
#include <limits>

#include "passage/tilt.h"

namespace rimehaul::passage {

namespace {

constexpr double kUnknown = std::numeric_limits<double>::quiet_NaN();

std::size_t index_of(snow::SnowState state) {
  return static_cast<std::size_t>(state.wetness) * snow::kSurfaceCount +
         static_cast<std::size_t>(state.surface);
}

snow::TrackPrint print_of(units::Newtons weight, units::SquareMetres area, units::Metres length) {
  return {.pressure = weight / area,
          .width = units::Metres{area.value() / length.value()},
          .length = length};
}

/// 0 without a trailer; NaN where its sheet leaves it open.
units::Metres trailer_sinkage(const snow::GripLaw& law, const rig::Rig& rig,
                              const rig::Weighed& weighed, snow::SnowState state) {
  if (!rig.trailer) {
    return units::Metres{0};
  }
  const rig::Trailer& trailer = *rig.trailer;
  const auto row = law.row(state, print_of(units::weight_of(weighed.trailer.mass),
                                           trailer.contact_area, trailer.contact_length));
  return row ? row->side_sinkage : units::Metres{kUnknown};
}

}  // namespace

GripTable::GripTable(const snow::GripLaw& law, const rig::Rig& rig, const rig::Weighed& weighed) {
  const units::Newtons on_tracks =
      units::weight_of(weighed.carrier.mass) * rig.carrier.track_weight_share;
  const snow::TrackPrint print =
      print_of(on_tracks, rig.carrier.contact_area, rig.carrier.contact_length);
  for (int wetness = 0; wetness < snow::kWetnessCount; ++wetness) {
    for (int surface = 0; surface < snow::kSurfaceCount; ++surface) {
      const snow::SnowState state{static_cast<snow::Wetness>(wetness),
                                  static_cast<snow::Surface>(surface)};
      std::optional<snow::GripRow>& row = rows_.at(index_of(state));
      row = law.row(state, print);
      if (row) {
        row->trailer_side_sinkage = trailer_sinkage(law, rig, weighed, state);
      }
    }
  }
}

const std::optional<snow::GripRow>& GripTable::row(snow::SnowState state) const {
  return rows_.at(index_of(state));
}

void GripTable::sinks_no_less_than(const GripTable& heavier) {
  for (std::size_t state = 0; state < kStates; ++state) {
    std::optional<snow::GripRow>& row = rows_.at(state);
    const std::optional<snow::GripRow>& other = heavier.rows_.at(state);
    if (row) {
      units::ForceRatio& high = row->carrier_resistance.high;
      const double other_high = other ? other->carrier_resistance.high.value() : kUnknown;
      const double other_sinkage = other ? other->side_sinkage.value() : kUnknown;
      high = units::ForceRatio{larger(high.value(), other_high)};
      row->side_sinkage = units::Metres{larger(row->side_sinkage.value(), other_sinkage)};
    }
  }
}

}  // namespace rimehaul::passage
