// The grip law: built-in rows, replaced by what a site has measured, never better when wetter.
#include "snow/grip.h"

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <utility>

#include "base/require.h"
#include "snow/built_in_grip.h"

namespace rimehaul::snow {

namespace {

using units::ForceRatio;

bool usable(std::optional<ForceRatio> ratio) {
  return !ratio || (std::isfinite(ratio->value()) && *ratio > ForceRatio{0});
}

bool usable(std::optional<ForceRange> range) {
  return !range || (usable(range->low) && usable(range->high) && range->low <= range->high);
}

bool usable(std::optional<SnowStrength> strength) {
  constexpr TrackPrint kAny{units::Kilopascals{1}, units::Metres{1}, units::Metres{1}};
  return !strength || std::isfinite(sinkage_of(*strength, kAny).value());
}

bool usable(const MeasuredGrip& entry) {
  return usable(entry.traction) && usable(entry.brake) && usable(entry.lateral) &&
         usable(entry.trailer_lateral) && usable(entry.carrier_resistance) &&
         usable(entry.trailer_resistance) && usable(entry.trailer_start) && usable(entry.strength);
}

bool is_whole_for_carriers(const MeasuredGrip& entry) {
  return entry.traction && entry.brake && entry.lateral &&
         (entry.carrier_resistance || entry.strength);
}

bool is_whole(const MeasuredGrip& entry) {
  return is_whole_for_carriers(entry) && entry.trailer_lateral && entry.trailer_resistance &&
         entry.trailer_start;
}

/// Measured itself; else what compaction adds to hard ground.
std::optional<ForceRange> resistance_by(const MeasuredGrip& entry, const TrackPrint& print) {
  if (entry.carrier_resistance || !entry.strength) {
    return entry.carrier_resistance;
  }
  return ForceRange{.low = kHardGroundResistance.low,
                    .high = kHardGroundResistance.high + compaction_of(*entry.strength, print)};
}

units::Metres side_sinkage_by(const MeasuredGrip& entry, const TrackPrint& print) {
  if (!entry.strength) {
    return units::Metres{0};
  }
  TrackPrint one_side = print;
  one_side.pressure = print.pressure * 2.0;
  return sinkage_of(*entry.strength, one_side);
}

bool is_print(const TrackPrint& print) {
  const auto above_zero = [](double number) { return number > 0.0 && std::isfinite(number); };
  return above_zero(print.pressure.value()) && above_zero(print.width.value()) &&
         above_zero(print.length.value());
}

/// The built-in row with a site's numbers in place of its own. Where a site measured less traction
/// than is built in, what it did not measure is not thought to hold better than that.
GripRow overridden(const GripRow& built_in, const MeasuredGrip& entry, const TrackPrint& print) {
  GripRow row = built_in;
  row.traction = entry.traction.value_or(row.traction);
  row.brake = entry.brake.value_or(std::min(row.brake, row.traction));
  row.lateral = entry.lateral.value_or(std::min(row.lateral, row.traction));
  row.trailer_lateral = entry.trailer_lateral.value_or(std::min(row.trailer_lateral, row.lateral));
  row.carrier_resistance = resistance_by(entry, print).value_or(row.carrier_resistance);
  row.side_sinkage = side_sinkage_by(entry, print);
  row.trailer_resistance = entry.trailer_resistance.value_or(row.trailer_resistance);
  row.trailer_start = entry.trailer_start.value_or(row.trailer_start);
  // A row is as well founded as the weakest of its numbers.
  row.standing = is_whole(entry) ? entry.standing : built_in.standing;
  row.source = is_whole(entry) ? entry.source : entry.source + "; rest: " + built_in.source;
  return entry.standing == GripStanding::site_measured ? row : row.limited_by(built_in);
}

}  // namespace

const char* words_for(GripStanding standing) {
  switch (standing) {
    case GripStanding::published:
      return "published";
    case GripStanding::site_measured:
      return "measured by the site";
    case GripStanding::estimate:
      break;
  }
  return "estimate";
}

GripRow GripRow::limited_by(const GripRow& other) const {
  GripRow cautious = *this;
  cautious.traction = std::min(traction, other.traction);
  cautious.brake = std::min(brake, other.brake);
  cautious.lateral = std::min(lateral, other.lateral);
  cautious.trailer_lateral = std::min(trailer_lateral, other.trailer_lateral);
  const auto wider = [](ForceRange a, ForceRange b) {
    return ForceRange{.low = std::min(a.low, b.low), .high = std::max(a.high, b.high)};
  };
  cautious.carrier_resistance = wider(carrier_resistance, other.carrier_resistance);
  cautious.trailer_resistance = wider(trailer_resistance, other.trailer_resistance);
  cautious.trailer_start = std::max(trailer_start, other.trailer_start);
  cautious.side_sinkage = std::max(side_sinkage, other.side_sinkage);
  return cautious;
}

GripLaw::GripLaw() = default;

GripLaw::GripLaw(std::vector<MeasuredGrip> measured) : measured_{std::move(measured)} {
  for (const MeasuredGrip& entry : measured_) {
    base::require(usable(entry), "a site's grip is finite, above 0, and low <= high");
    base::require(std::ranges::count(measured_, entry.state, &MeasuredGrip::state) == 1,
                  "a site's grip has one entry for each snow state");
  }
}

GripRow GripLaw::own_row(SnowState state, const TrackPrint& print) const {
  GripRow row = built_in_grip(state, print.pressure);
  const auto entry = std::ranges::find(measured_, state, &MeasuredGrip::state);
  return entry == measured_.end() ? row : overridden(row, *entry, print);
}

std::optional<GripRow> GripLaw::row(SnowState state, const TrackPrint& print) const {
  if (!is_print(print)) {
    return std::nullopt;
  }
  GripRow row = own_row(state, print);
  for (int wetness = 0; wetness < static_cast<int>(state.wetness); ++wetness) {
    const SnowState drier{.wetness = static_cast<Wetness>(wetness), .surface = state.surface};
    row = row.limited_by(own_row(drier, print));
  }
  return row;
}

bool GripLaw::all_measured(SnowState state, Runners runners) const {
  return std::ranges::any_of(measured_, [&](const MeasuredGrip& entry) {
    return entry.state == state && entry.standing == GripStanding::site_measured &&
           (runners == Runners::towed ? is_whole(entry) : is_whole_for_carriers(entry));
  });
}

}  // namespace rimehaul::snow
