// The weather of the hours to come, as a forecaster gives it for one height.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "geo/point.h"
#include "units/clock.h"
#include "units/quantities.h"

namespace rimehaul::snow {

/// What holds from the start of an hour to its end.
struct ForecastHour {
  units::Instant start;
  units::Celsius air;                      ///< at the forecast's height
  std::optional<units::Oktas> cloud;       ///< none: clear for the sun, overcast for the night
  units::MillimetresPerHour rain;          ///< liquid; not below 0
  std::optional<units::Percent> humidity;  ///< none: saturated
};

/// 6.5 K colder a kilometre higher up: the International Standard Atmosphere (ISO 2533:1975).
inline constexpr units::CelsiusPerKilometre kStandardLapse{6.5};

struct Forecast {
  std::string source;     ///< whose forecast it is
  geo::Height reference;  ///< that its temperatures hold at
  units::CelsiusPerKilometre lapse = kStandardLapse;
  /// Mean of the top 10 cm when the report was observed, not above 0. None: at the melting point,
  /// the cautious side.
  std::optional<units::Celsius> snow_temperature{};
  std::vector<ForecastHour> hours;  ///< one after the other without a gap
};

inline constexpr std::int64_t kSecondsInHour = 3'600;

/// Which of some hours holds a moment, its first second included and its last; the first that does.
template <class Hours>
[[nodiscard]] std::optional<std::size_t> hour_holding(const Hours& hours, units::Instant moment) {
  for (std::size_t i = 0; i < hours.size(); ++i) {
    const std::int64_t into = moment.seconds - hours[i].start.seconds;
    if (into >= 0 && into < kSecondsInHour) {
      return i;
    }
  }
  return std::nullopt;
}

[[nodiscard]] units::Celsius air_at(const Forecast& forecast, units::Celsius at_reference,
                                    geo::Height height);

}  // namespace rimehaul::snow
