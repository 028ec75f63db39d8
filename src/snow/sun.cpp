#include "snow/sun.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace rimehaul::snow {

namespace {

constexpr double kDegree = std::numbers::pi / 180.0;

/// Brought into [0, 360).
double round_the_circle(double degrees) {
  const double rest = std::fmod(degrees, 360.0);
  return rest < 0.0 ? rest + 360.0 : rest;
}

/// Of the date, radians.
struct Equatorial {
  double right_ascension = 0.0;
  double declination = 0.0;
};

/// Ascending node of the moon's mean orbit, by which the earth's axis nods.
double moon_node(double century) {
  return (125.04 - 1934.136 * century) * kDegree;
}

double obliquity(double century) {
  const double mean_deg =
      23.4392911 - century * (0.0130042 + century * (1.64e-7 - century * 5.04e-7));
  return (mean_deg + 0.00256 * std::cos(moon_node(century))) * kDegree;
}

Equatorial sun_in_the_sky(double century) {
  const double t = century;
  const double mean_longitude = 280.46646 + t * (36000.76983 + t * 0.0003032);
  const double anomaly = (357.52911 + t * (35999.05029 - t * 0.0001537)) * kDegree;
  const double centre = (1.914602 - t * (0.004817 + t * 0.000014)) * std::sin(anomaly) +
                        (0.019993 - t * 0.000101) * std::sin(2.0 * anomaly) +
                        0.000289 * std::sin(3.0 * anomaly);
  const double longitude =
      (mean_longitude + centre - 0.00569 - 0.00478 * std::sin(moon_node(t))) * kDegree;
  const double tilt = obliquity(t);
  return {.right_ascension = std::atan2(std::cos(tilt) * std::sin(longitude), std::cos(longitude)),
          .declination = std::asin(std::sin(tilt) * std::sin(longitude))};
}

/// Apparent, at Greenwich, degrees.
// The same time in two units.
// NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
double sidereal_time(double days, double century) {
  const double mean = 280.46061837 + 360.98564736629 * days + century * century * 0.000387933;
  return mean - 0.00478 * std::sin(moon_node(century)) * std::cos(obliquity(century));
}

/// How far the air lifts a light of so much height, degrees.
double refraction(double height_deg, const BendingAir& air) {
  constexpr double kAtHorizon = 0.5667;
  if (!(height_deg >= -(kSunRadiusDeg + kAtHorizon))) {
    return 0.0;
  }
  return air.pressure_hpa / 1010.0 * 283.0 / (273.0 + air.temperature.value()) * 1.02 /
         (60.0 * std::tan((height_deg + 10.3 / (height_deg + 5.11)) * kDegree));
}

}  // namespace

SunPosition sun_at(geo::GlobePoint place, units::Instant when, const BendingAir& air) {
  constexpr double kSecondsInDay = 86'400.0;
  constexpr double kDaysTo2000 = 10957.5;  // from 1970-01-01T00 to 2000-01-01T12
  constexpr double kUniformAhead = 69.0;   // s, of uniform time before UT, about 2020
  constexpr double kParallaxDeg = 8.794 / 3600.0;
  const double days = static_cast<double>(when.seconds) / kSecondsInDay - kDaysTo2000;
  const double century = (days + kUniformAhead / kSecondsInDay) / 36525.0;
  const Equatorial sun = sun_in_the_sky(century);
  const double latitude = place.latitude_deg * kDegree;
  const double hour_angle =
      round_the_circle(sidereal_time(days, century) + place.longitude_deg) * kDegree -
      sun.right_ascension;
  const double cosine = std::sin(latitude) * std::sin(sun.declination) +
                        std::cos(latitude) * std::cos(sun.declination) * std::cos(hour_angle);
  const double zenith = std::acos(std::clamp(cosine, -1.0, 1.0)) / kDegree;
  const double from_south =
      std::atan2(std::sin(hour_angle), std::cos(hour_angle) * std::sin(latitude) -
                                           std::tan(sun.declination) * std::cos(latitude));
  SunPosition seen;
  seen.zenith_deg = zenith + kParallaxDeg * std::sin(zenith * kDegree);
  seen.apparent_zenith_deg = seen.zenith_deg - refraction(90.0 - seen.zenith_deg, air);
  seen.true_azimuth_deg = round_the_circle(from_south / kDegree + 180.0);
  return seen;
}

}  // namespace rimehaul::snow
