#include "snow/sunshine.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numbers>

namespace rimehaul::snow {

using units::WattsPerSquareMetre;

namespace {

constexpr double kDegree = std::numbers::pi / 180.0;

/// Degrees from the nearest of the aspects to the sun's azimuth, 0 to 180.
double turned_away(const std::optional<AspectSpan>& aspect, double azimuth_deg) {
  if (!aspect) {
    return 0.0;
  }
  const double off = std::abs(std::remainder(aspect->middle_deg - azimuth_deg, 360.0));
  return std::max(0.0, off - aspect->half_width_deg);
}

struct Angles {
  double from = 0.0;
  double to = 0.0;
};

Angles slopes_of(const SlopeRange& slope) {
  return {.from = std::atan(slope.least.ratio()), .to = std::atan(slope.most.ratio())};
}

/// Share of the light that is diffuse where so much of it comes through the air.
double diffuse_share(double clearness) {
  if (clearness <= 0.22) {
    return 1.0 - 0.09 * clearness;
  }
  if (clearness > 0.8) {
    return 0.165;
  }
  return 0.9511 +
         clearness * (-0.1604 + clearness * (4.388 + clearness * (-16.638 + clearness * 12.336)));
}

}  // namespace

WattsPerSquareMetre clear_sky(double zenith_deg) {
  const double cosine = std::cos(zenith_deg * kDegree);
  return WattsPerSquareMetre{cosine > 0.0 ? 1098.0 * cosine * std::exp(-0.059 / cosine) : 0.0};
}

double share_through(units::Oktas cloud) {
  return 1.0 - 0.75 * std::pow(cloud.value() / 8.0, 3.4);
}

WattsPerSquareMetre above_the_air(units::Instant when) {
  constexpr double kSecondsInYear = 365.0 * 86'400.0;
  const double turn = 2.0 * std::numbers::pi * static_cast<double>(when.seconds) / kSecondsInYear;
  return WattsPerSquareMetre{1367.0 * (1.0 + 0.033 * std::cos(turn))};
}

Sunlight split(WattsPerSquareMetre level, double zenith_deg, WattsPerSquareMetre outside) {
  const double cosine = std::cos(zenith_deg * kDegree);
  if (!(cosine > 0.0)) {
    return {.level = level, .diffuse = level, .beam = {}};
  }
  const double share = diffuse_share(level / (outside * cosine));
  return {.level = level,
          .diffuse = level * share,
          .beam = std::min(level * (1.0 - share) / cosine, outside)};
}

double most_facing(const SunnyGround& ground, const SunPosition& sun) {
  if (!ground.slope) {
    return 1.0;
  }
  const double zenith = sun.apparent_zenith_deg * kDegree;
  // cos Z cos b + sin Z cos d sin b is a wave in b, whose crest may lie within the slopes.
  const double upright = std::cos(zenith);
  const double aslant =
      std::sin(zenith) * std::cos(turned_away(ground.aspect, sun.true_azimuth_deg) * kDegree);
  const Angles slopes = slopes_of(*ground.slope);
  const double crest = std::clamp(std::atan2(aslant, upright), slopes.from, slopes.to);
  double most = 0.0;
  for (const double slope : {slopes.from, crest, slopes.to}) {
    most = std::max(most, upright * std::cos(slope) + aslant * std::sin(slope));
  }
  return most;
}

WattsPerSquareMetre most_on(const SunnyGround& ground, const Sunlight& light,
                            const SunPosition& sun, Shade shade) {
  constexpr double kThrownBack = 0.9;
  const Angles slopes =
      ground.slope ? slopes_of(*ground.slope) : Angles{.from = 0.0, .to = std::numbers::pi / 2.0};
  WattsPerSquareMetre scattered;
  for (const double slope : {slopes.from, slopes.to}) {
    const double sky = (1.0 + std::cos(slope)) / 2.0;
    scattered = std::max(scattered, light.diffuse * sky + light.level * kThrownBack * (1.0 - sky));
  }
  return shade == Shade::in_shadow ? scattered : scattered + light.beam * most_facing(ground, sun);
}

}  // namespace rimehaul::snow
