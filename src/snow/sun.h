// Where the sun stands in the sky.
#pragma once

#include "geo/point.h"
#include "units/clock.h"
#include "units/quantities.h"

namespace rimehaul::snow {

/// The middle of the sun's disc seen from a place, degrees.
struct SunPosition {
  double zenith_deg = 0.0;           ///< from straight overhead, [0, 180], without refraction
  double apparent_zenith_deg = 0.0;  ///< as the air bends its light
  double true_azimuth_deg = 0.0;     ///< clockwise from true north, [0, 360)
};

/// The air that bends the light.
struct BendingAir {
  double pressure_hpa = 1010.0;
  units::Celsius temperature{10.0};
};

/// Meeus (1998), Astronomical Algorithms, chapters 12, 13, 22 and 25 ("low accuracy", 0.01 deg of
/// the sun's longitude), with the sun's parallax; refraction as in Reda and Andreas (2004), eq. 42,
/// which is 0 once the disc is wholly under the horizon. Within 0.02 deg in this and the last
/// century. NaN where the place is no number.
[[nodiscard]] SunPosition sun_at(geo::GlobePoint place, units::Instant when,
                                 const BendingAir& air = {});

/// Half the sun's disc, with which it still shines when its middle has set.
inline constexpr double kSunRadiusDeg = 0.2667;

}  // namespace rimehaul::snow
