// The sun over a site through the hours of a forecast, worked out once.
#pragma once

#include <array>
#include <vector>

#include "snow/melt.h"
#include "snow/sunshine.h"

namespace rimehaul::snow {

/// Where the sun is seen from: one place stands for the whole site, since ten kilometres move it by
/// a tenth of a degree.
struct SunSite {
  geo::GlobePoint at;
  double convergence_deg = 0.0;  ///< true bearing = map bearing + this
};

/// Length of a step.
inline constexpr units::Seconds kStep{600};
inline constexpr int kStepsInHour = 6;

/// How much more light there is a kilometre above the sea than Haurwitz found: an estimate.
inline constexpr double kMoreLightPerKilometre = 0.1;

/// The sun in the middle of a step.
struct SunStep {
  SunPosition sun;
  Sunlight light;  ///< through the cloud that is forecast
  /// No sky of so many oktas to one more lets through more, each part for itself.
  std::array<Sunlight, 8> most_by_cloud;
};

/// Steps of an hour of the forecast.
[[nodiscard]] std::vector<SunStep> sun_steps(const SunSite& site, const ForecastHour& hour);

/// Light on some ground of a height, and the most that its snow could keep of it. No cloud is
/// trusted for the latter: the sky that lets most remain counts.
struct LightOn {
  units::WattsPerSquareMetre sun;
  units::WattsPerSquareMetre most_gain;
};
struct LitGround {
  SunnyGround ground;
  geo::Height height;
  Shade shade = Shade::none;
};
[[nodiscard]] LightOn light_on(const SunStep& step, const LitGround& ground, const NightSky& sky);

}  // namespace rimehaul::snow
