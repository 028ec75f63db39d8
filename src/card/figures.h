// Numbers as they stand on a card: demands rounded up, capacities rounded down, units written out.
#pragma once

#include <string>

#include "geo/region.h"
#include "passage/judgement.h"
#include "snow/snow.h"
#include "units/amount.h"
#include "units/local_clock.h"
#include "units/quantities.h"

namespace rimehaul::card {

/// "62 %", rounded up. A share under 1 never reads 100 %, nor does one over it: 0.996 is "99.6 %",
/// 1.004 is "101 %".
[[nodiscard]] std::string share_text(double share);
/// Of a share that another is no less than: rounded down.
[[nodiscard]] std::string least_share_text(double share);
/// "70 %", rounded down.
[[nodiscard]] std::string allowed_text(double allowed_share);

/// "812 m", or "3.42 km" from 1000 m on; rounded up.
[[nodiscard]] std::string distance_text(units::Metres length);
/// "at 340 m", or "from 120 m to 560 m", or "all along" when it covers the whole leg.
[[nodiscard]] std::string where_text(const geo::Span& span, units::Metres leg_length);
/// "14 km/h", rounded down; below 10 km/h with one decimal.
[[nodiscard]] std::string speed_limit_text(units::MetresPerSecond speed);
/// "3 min 28 s" or "45 s", rounded up to the second.
[[nodiscard]] std::string duration_text(units::Seconds time);
/// "22 min" or "1 h 05 min", rounded up to the minute.
[[nodiscard]] std::string minutes_text(units::Seconds time);
/// "1.9 L", rounded up: fuel that is needed.
[[nodiscard]] std::string fuel_needed_text(units::Litres fuel);
/// "30.0 L", rounded down: fuel that is there.
[[nodiscard]] std::string fuel_there_text(units::Litres fuel);
/// "1240 kg", rounded up.
[[nodiscard]] std::string mass_text(units::Kilograms mass);
/// "7.2 deg (12.7 %), up to 9.1 deg (16.1 %) at 340 m", rounded up. Steepness is counted in its own
/// direction: where all ground goes the other way, "none, up to 1.4 deg (2.5 %) at 340 m", and only
/// "none" when not even the error can turn it.
[[nodiscard]] std::string steepness_text(const passage::Steepness& steepness);
/// Its two parts, for a table: "7.2 deg (12.7 %)", or "none", and "9.1 deg (16.1 %)", or nothing.
[[nodiscard]] std::string found_text(const passage::Steepness& steepness);
[[nodiscard]] std::string up_to_text(const passage::Steepness& steepness);
/// "45 deg", three digits before the unit: "045 deg".
[[nodiscard]] std::string bearing_text(units::Bearing bearing);
/// "2026-02-01 07:30", local time at a fixed offset from UTC.
[[nodiscard]] std::string local_text(units::Instant moment, const units::LocalClock& local_clock);
/// "2026-02-01 07:30 (local time, UTC-10:00)": once on everything that tells times.
[[nodiscard]] std::string local_and_zone_text(units::Instant moment,
                                              const units::LocalClock& local_clock);
/// "UTC-10:00"
[[nodiscard]] std::string zone_text(int offset_minutes);
/// "observed by N. N., 2026-02-01 06:30", local time.
[[nodiscard]] std::string told_text(const snow::Told& told, const units::LocalClock& local_clock);
/// The one-sided confidence that k standard deviations stand for, percent, rounded down: "95 %".
[[nodiscard]] std::string confidence_text(double k);

/// Which side of a finding an amount stands on: demands are rounded up, capacities down, inputs to
/// the nearest.
enum class Side { demand, capacity, input };

/// An amount with its unit, for a quick look: "7.2 deg (12.7 %)", "4105 N", "unknown".
[[nodiscard]] std::string amount_text(const units::Amount& amount, Side side);
/// The same with digits enough to work with: "0.12633 = 7.2 deg (12.7 %)", "4104.7 N".
[[nodiscard]] std::string exact_text(const units::Amount& amount, Side side);

}  // namespace rimehaul::card
